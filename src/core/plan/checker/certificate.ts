import { addDays, type Day, daysBetween } from "../../units/day.ts";
import { type MouldOutlook, mouldOutlooks } from "../../ward/mould-outlook.ts";
import type { Plan } from "../plan.ts";
import { conditionsOf } from "./contamination.ts";
import type { Fault } from "./fault.ts";
import type { PlanOnPaper } from "./plan-on-paper.ts";

/* The certificate: what the plan costs in weighted item-days, and how far that is over a bound no plan can beat. */

/** Share of a value that may be lost in the solver's own tolerance and in rounding. */
const TOLERANCE = 1e-3;
/** A must-do item counts four times, one that gets worse while it waits twice more. Common practice, no source. */
const MUST = 4;
const WORSENING = 2;
/** A day late costs so many ordinary days more; an item never boxed half the campaign more than one boxed the day after its end. */
const LATE = 5;
const NEVER = 0.5;
/** Conditions that get worse while an item waits, unsure ones among them. */
const WORSENS = ["brittle", "nitrate_suspected", "mould_active", "wet", "damp"];
/** The same, where only a sure finding counts. */
const WORSENS_IF_SURE = ["acetate_degrading", "ink_corrosion"];

/** Share of the value by which it lies over the bound, 0 to 1. */
export const gapOver = (value: number, bound: number): number =>
  value > 0 ? Math.max(0, (value - bound) / value) : 0;

/** Weighted item-days of the plan, from the days its items are boxed. */
export function planValue(paper: PlanOnPaper): number {
  const { planFrom, end } = paper.campaign;
  const length = Math.max(0, daysBetween(planFrom, end) + 1);
  const after = addDays(planFrom, length);
  const mould = mouldOutlooks(paper.campaign);
  let value = 0;
  for (const { item, days } of paper.plan.itemDays) {
    const outlook = mould.get(item);
    const [due] = [paper.items.get(item)?.due, sureDay(outlook, planFrom)].filter((each) => each).sort();
    const boxed = days.box ?? after;
    const late = due && boxed > due ? daysBetween(due, boxed) : 0;
    const never = days.box ? 0 : NEVER * length;
    value += weightOf(paper, item) * mouldOf(outlook) * (daysBetween(planFrom, boxed) + LATE * late + never);
  }
  return value;
}

/** A day on which mould is sure to begin is as strict as the custodian's. */
const sureDay = (outlook: MouldOutlook | undefined, planFrom: Day): Day | undefined =>
  outlook?.known && outlook.isSure ? addDays(planFrom, outlook.days.low ?? 0) : undefined;

/** Once more the share of the campaign after mould begins, mean of the three days it is foretold for, by quarters. Common practice, no source. */
function mouldOf(outlook: MouldOutlook | undefined): number {
  if (!outlook?.known) return 1;
  const { days, horizon } = outlook;
  const after = [days.low, days.typical, days.high].map((day) => Math.max(0, horizon - (day ?? horizon)));
  const quarters = Math.round((4 * after.reduce((sum, each) => sum + each, 0)) / (3 * horizon));
  return 1 + quarters / 4;
}

function weightOf(paper: PlanOnPaper, item: string): number {
  const care = paper.care.get(item);
  if (!care) return 0;
  const all = conditionsOf(care);
  const sure = [care.whole, ...care.parts.map((part) => part.care)].flatMap((each) => each.conditions);
  const worsens =
    WORSENS.some((each) => all.has(each)) || WORSENS_IF_SURE.some((each) => sure.includes(each));
  return (care.item.priority === "must" ? MUST : 1) * (worsens ? WORSENING : 1);
}

/** The value is what the items' days make it, the gaps what value and bound make them, and no bound lies above its plan. */
export function certificateFaults(paper: PlanOnPaper): Fault[] {
  const { proof } = paper.plan;
  const { objective, bound, itemObjective } = proof;
  const faults: Fault[] = [];
  const source = "the plan's own work";
  const value = planValue(paper);
  if (Math.abs(value - itemObjective) > 0.5 + TOLERANCE * value)
    faults.push({ code: "plan-value", got: itemObjective, limit: value, source });
  const proofs: readonly (readonly [string, number, number, number])[] = [
    ["gap", proof.gap, objective, bound],
    ["itemGap", proof.itemGap, itemObjective, itemBoundOf(proof)],
  ];
  for (const [figure, got, cost, least] of proofs) {
    const limit = gapOver(cost, least);
    if (!(Math.abs(got - limit) <= 1e-6)) faults.push({ code: "gap", figure, got, limit, source });
    if (!(least <= cost * (1 + TOLERANCE) + 1e-6))
      faults.push({
        code: "bound",
        figure,
        got: least,
        limit: cost,
        source: "a bound is never above a plan",
      });
  }
  return faults;
}

/** The bound for plans of items and days; a plan kept from before it was told apart has one bound for both. */
export const itemBoundOf = (proof: Plan["proof"]): number =>
  (proof as { readonly itemBound?: number }).itemBound ?? proof.bound;
