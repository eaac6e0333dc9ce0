import type { Norms } from "../../care/norms.ts";
import type { Day } from "../../units/day.ts";
import { type PlanProblem, planProblem } from "../problem.ts";
import { closeDown } from "./close-down.ts";
import { HoursLeft, type NoPlace, wornBefore } from "./hours-left.ts";
import { layWay, WardFill } from "./laying.ts";
import { stopAnswer } from "./stop-answer.ts";
import type { StopPlan } from "./stop-plan.ts";
import { driesInTime, type StopInput, type Stopping, stoppingItems } from "./stopping.ts";

/**
 * The last days when work stops on a given one. First every item is brought to where it safely stays, the most pressing first; then what
 * is untested is looked at, what is begun is finished, and only what surely reaches its box is begun (N05). Where hours are missing to make
 * an item safe, none goes to the box.
 * @param stop last day of work, between the plan's morning and the campaign's end
 */
export function planStop(input: StopInput, stop: Day): StopPlan {
  const { campaign, routes, norms } = input;
  const problem = planProblem({ ...campaign, end: stop }, routes, norms);
  const hours = new HoursLeft(problem, wornBefore(problem));
  const ward = new WardFill(problem.days.length, campaign.wardLitres);
  const closing = closeDown(problem, hours, norms);
  const items = stoppingItems(input);
  for (const each of items.filter(({ bagged }) => bagged))
    ward.add(each.route.wardLitres, 0, problem.days.length - 1);
  makeSafe(problem, hours, norms, items);
  lookAt(problem, hours, norms, items);
  const short = items.some(({ trouble }) => trouble === "no hours");
  for (const each of short ? [] : inOrder(items)) toTheBox(problem, hours, ward, each);
  return stopAnswer(input, problem, hours, items, closing);
}

/** What endangers the house before all; wet next, for its clock runs in hours; then as the resting states are ranked; what lies open before what lies as found. */
function makeSafe(problem: PlanProblem, hours: HoursLeft, norms: Norms, items: readonly Stopping[]): void {
  const ranked = items
    .filter(
      ({ need, open, route, here }) =>
        route.destiny !== "done" &&
        here < problem.days.length &&
        (need.minutes > 0 || need.outsideHelp || need.wet || open),
    )
    .sort(
      (a, b) =>
        Number(b.need.outsideHelp) - Number(a.need.outsideHelp) ||
        Number(b.need.wet) - Number(a.need.wet) ||
        a.need.rank - b.need.rank ||
        Number(b.open) - Number(a.open) ||
        a.care.item.id.localeCompare(b.care.item.id),
    );
  ranked.forEach((each, at) => {
    each.place = at + 1;
    each.trouble = each.need.outsideHelp ? "outside help" : bring(hours, each);
    if (each.open && !each.trouble) each.trouble = putBack(hours, norms, each);
    if (!each.trouble && each.need.wet && !driesInTime(problem, each)) each.trouble = "still drying";
  });
}

function bring(hours: HoursLeft, each: Stopping): NoPlace | null {
  const { act, minutes, exposed, uses } = each.need;
  if (minutes === 0) return null;
  const spot = hours.place({ act, minutes, exposed, uses }, each.here);
  if (typeof spot === "string") return spot;
  each.safe = spot;
  return null;
}

/** Shut, tied, back in its place, and its row of the handover written. */
function putBack(hours: HoursLeft, norms: Norms, each: Stopping): NoPlace | null {
  const minutes = norms.band("t-record-short").typical;
  const spot = hours.place({ act: "survey", minutes, exposed: false, uses: {} }, each.here);
  if (typeof spot === "string") return spot;
  each.putBack = spot;
  return null;
}

/** What nobody has tested may be damp: the must-ask tests before anything is begun. */
function lookAt(problem: PlanProblem, hours: HoursLeft, norms: Norms, items: readonly Stopping[]): void {
  const minutes = norms.band("t-triage").typical;
  for (const each of items.filter(({ route }) => route.destiny === "at the Door")) {
    if (each.here >= problem.days.length) continue;
    const spot = hours.place({ act: "survey", minutes, exposed: false, uses: {} }, each.here);
    each.look = typeof spot === "string" ? null : spot;
  }
}

/** Begun before not begun, must-do before the rest, damp and growing before sound, short before long. */
function inOrder(items: readonly Stopping[]): Stopping[] {
  const minutes = (each: Stopping): number =>
    each.route.steps.reduce((sum, step) => sum + step.minutes.typical, 0);
  const must = (each: Stopping): number => Number(each.care.item.priority === "must");
  return items
    .filter(({ route, trouble }) => route.destiny === "route" && trouble === null)
    .sort(
      (a, b) =>
        Number(b.begun) - Number(a.begun) ||
        must(b) - must(a) ||
        Number(b.need.drying) - Number(a.need.drying) ||
        minutes(a) - minutes(b) ||
        a.care.item.id.localeCompare(b.care.item.id),
    );
}

/** Tries the whole way to the box; what only served the shelf is taken out for it, and laid in again where the way does not fit. */
function toTheBox(problem: PlanProblem, hours: HoursLeft, ward: WardFill, each: Stopping): void {
  const { route, safe, putBack: shut } = each;
  if (each.here >= problem.days.length) return;
  const admits = route.steps[0]?.act === "admit";
  const bag = admits && safe?.work.act === "admit" ? safe : null;
  const spare = [bag ? null : safe, shut].filter((placed) => placed !== null);
  for (const placed of spare) hours.remove(placed);
  const steps = bag ? route.steps.slice(1) : route.steps;
  const closed = bag ? bag.until : each.bagged ? 0 : null;
  const litres = each.bagged ? { ...route, wardLitres: 0 } : route; // its place in the Ward is taken already
  each.way = layWay(hours, ward, litres, steps, each.here, closed);
  if (!each.way) {
    for (const placed of spare) hours.restore(placed);
    return;
  }
  if (!bag) each.safe = null;
  each.putBack = null;
}
