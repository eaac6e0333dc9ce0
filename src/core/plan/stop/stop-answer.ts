import type { Day } from "../../units/day.ts";
import type { PlanProblem } from "../problem.ts";
import type { HoursLeft, Placed } from "./hours-left.ts";
import type { StopItem, StopLine, StopPerson, StopPlan, StopStore, StopVerdict } from "./stop-plan.ts";
import { driesInTime, type StopInput, type Stopping } from "./stopping.ts";

/** What was laid in, as the answer tells it. */
export function stopAnswer(
  { campaign }: StopInput,
  problem: PlanProblem,
  hours: HoursLeft,
  stopping: readonly Stopping[],
  closing: readonly Placed[],
): StopPlan {
  const items = stopping
    .map((each) => itemOf(problem, each))
    .sort((a, b) => (a.place ?? Number.POSITIVE_INFINITY) - (b.place ?? Number.POSITIVE_INFINITY) || 0);
  const days = items.flatMap(({ safeBy }) => safeBy ?? []).sort();
  const starts = stopping
    .filter(({ way, begun }) => way && !begun)
    .map(({ way }) => way?.placed[0]?.from ?? 0);
  const door = stopping.filter(
    ({ route, here }) => route.destiny === "at the Door" && here < problem.days.length,
  );
  const idsOf = (list: readonly Stopping[]): string[] => list.map(({ care }) => care.item.id);
  return {
    campaign: campaign.name,
    from: campaign.planFrom,
    stop: problem.campaign.end,
    workingDays: problem.days.filter((_, d) => problem.hands.some((hand) => (hand.minutes[d] ?? 0) > 0))
      .length,
    items,
    lines: linesOf(problem, stopping, closing),
    people: peopleOf(problem, hours),
    stores: storesOf(problem, hours, items),
    safeBy: days.at(-1) ?? null,
    lastStart: starts.length > 0 ? (problem.days[Math.max(...starts)] ?? null) : null,
    looked: idsOf(door.filter(({ look }) => look)),
    notLooked: idsOf(door.filter(({ look }) => !look)),
    bagLitres: stopping
      .filter(({ way, bagged, safe }) => !way && (bagged || safe?.work.act === "admit"))
      .reduce((sum, { route }) => sum + route.wardLitres, 0),
    wardLitres: problem.campaign.wardLitres,
    lookBacks: stopping.filter(({ way, need }) => way && need.exposed).length,
  };
}

function itemOf(problem: PlanProblem, each: Stopping): StopItem {
  const { care, route, need, safe, putBack, way } = each;
  const dayOf = (d: number | undefined): Day | null => (d === undefined ? null : (problem.days[d] ?? null));
  const near = [safe, putBack].filter((placed) => placed !== null);
  const placed = [...near, ...(way?.placed ?? [])];
  const minutesOf = (list: readonly Placed[]): number =>
    Math.round(list.reduce((sum, { bits }) => sum + bits.reduce((all, bit) => all + bit.minutes, 0), 0));
  const verdict = verdictOf(problem, each);
  return {
    item: care.item.id,
    title: care.item.title,
    must: care.item.priority === "must",
    begun: each.begun,
    verdict,
    rest: { id: need.rest.id, says: need.rest.says },
    conditions: route.conditions,
    place: each.place,
    safeBy: each.trouble
      ? null
      : dayOf(near.length > 0 ? Math.max(...near.map(({ until }) => until)) : undefined),
    boxedOn: dayOf(way?.boxedOn),
    safeMinutes: each.trouble ? Math.round(need.minutes) : minutesOf(near),
    boxMinutes: minutesOf(way?.placed ?? []),
    exposedMinutes: minutesOf(placed.filter(({ work }) => work.exposed)),
    protection: placed.length === 0 && !each.trouble ? [] : need.protection,
    uses: each.trouble === "no store" ? need.uses : usesOf(placed),
    people: [
      ...new Set(
        placed.flatMap(({ bits }) => bits.map((bit) => problem.hands[bit.person]?.person.code ?? "")),
      ),
    ],
    why: each.trouble,
    needsReader:
      verdict !== "done" && verdict !== "comes later" && !way && need.drying && !driesInTime(problem, each),
    mayFreeze:
      problem.campaign.place.freezer &&
      [care.whole, ...care.parts.map((part) => part.care)].every((part) => !part.banned.has("freeze_hold")),
  };
}

function verdictOf(
  problem: PlanProblem,
  { route, trouble, way, begun, safe, putBack, here }: Stopping,
): StopVerdict {
  if (route.destiny === "done") return "done";
  if (here >= problem.days.length) return "comes later";
  if (trouble) return "not safe in time";
  if (way) return begun ? "finish" : "start";
  return safe || putBack ? "make safe" : "leave";
}

function usesOf(placed: readonly Placed[]): Record<string, number> {
  const uses: Record<string, number> = {};
  for (const { work } of placed)
    for (const [use, quantity] of Object.entries(work.uses)) uses[use] = (uses[use] ?? 0) + quantity;
  return uses;
}

/** Day by day and person by person, in the order in which it was laid in. */
function linesOf(
  problem: PlanProblem,
  stopping: readonly Stopping[],
  closing: readonly Placed[],
): StopLine[] {
  const of = (placed: Placed | null, item: string, what: StopLine["what"]): StopLine[] =>
    (placed?.bits ?? []).map((bit) => ({
      day: problem.days[bit.day] as Day,
      person: problem.hands[bit.person]?.person.code ?? "",
      item,
      what,
      minutes: Math.round(bit.minutes * 10) / 10,
      exposed: placed?.work.exposed ?? false,
    }));
  const inPlace = [...stopping].sort((a, b) => (a.place ?? 1e9) - (b.place ?? 1e9));
  return [
    ...inPlace.flatMap(({ care, safe, putBack }) => [
      ...of(safe, care.item.id, "make safe"),
      ...of(putBack, care.item.id, "put back"),
    ]),
    ...inPlace.flatMap(({ care, look }) => of(look, care.item.id, "look")),
    ...inPlace.flatMap(({ care, way }) =>
      (way?.placed ?? []).flatMap((placed) => of(placed, care.item.id, placed.work.act)),
    ),
    ...closing.flatMap((placed) => of(placed, "", "close down")),
  ].sort((a, b) => a.day.localeCompare(b.day) || a.person.localeCompare(b.person));
}

const peopleOf = (problem: PlanProblem, hours: HoursLeft): StopPerson[] =>
  problem.hands.map(({ person, minutes }, p) => {
    const present = minutes.reduce((sum, each) => sum + each, 0);
    const free = problem.days.reduce((sum, _, d) => sum + hours.free(p, d), 0);
    return {
      code: person.code,
      name: person.name,
      presentMinutes: Math.round(present),
      usedMinutes: Math.round(present - free),
      exposedDays: problem.days.filter((_, d) => hours.wornOn(p, d)).length,
    };
  });

/** Everything the works take, the protection of each exposed day with it, against what is there by the stop. */
function storesOf(problem: PlanProblem, hours: HoursLeft, items: readonly StopItem[]): StopStore[] {
  const needed = new Map<string, number>();
  const add = (use: string, quantity: number): void =>
    void needed.set(use, (needed.get(use) ?? 0) + quantity);
  for (const item of items) for (const [use, quantity] of Object.entries(item.uses)) add(use, quantity);
  const exposedDays = problem.hands.reduce(
    (sum, _, p) => sum + problem.days.filter((_, d) => hours.wornOn(p, d)).length,
    0,
  );
  for (const [store, quantity] of problem.sessionUses)
    if (exposedDays > 0) add(problem.stores[store]?.use ?? "", quantity * exposedDays);
  return [...needed].map(([use, quantity]) => {
    const row = problem.stores.find((each) => each.use === use);
    const store = problem.campaign.stores.find((each) => each.use === use);
    return {
      use,
      store: store ? { id: store.id, name: store.name, unit: store.unit } : null,
      needed: quantity,
      there: row ? row.onHand + row.arrivals.reduce((sum, each) => sum + each, 0) : 0,
    };
  });
}
