import type { Driver, Finish, ItemChance, Luck, Plan } from "../plan/plan.ts";
import type { Day } from "../units/day.ts";

/* What chance does to the plan, in words. */

const LUCK: Readonly<Record<Luck, string>> = {
  minutes: "minutes from item to item",
  waits: "drying and watching",
  absence: "people away",
  deliveries: "late deliveries",
  pace: "the team's own pace",
};
/** An item this often late is worth its number; else those boxed last are named. */
const WORTH_NAMING = 0.05;
/** A must-do item boxed in fewer campaigns than this is not sure. */
const SURE = 0.9;
const NAMED = 4;

/** When it is done, and what is left where it is not. */
export function sayFinish(plan: Pick<Plan, "finish" | "end" | "routed">, say: (day: Day) => string): string {
  const { p10, p50, p90, boxed, draws } = plan.finish;
  const { routed } = plan;
  const left = `${sayUnfinished(plan.finish)} something is left over on ${say(plan.end)}`;
  const first = p10 ? `1 in 10 by ${say(p10)}` : "";
  const half = p50 ? `${say(p50)} (half of ${draws} simulated campaigns)` : "";
  const last = p90 ? `9 in 10 by ${say(p90)}` : left;
  const days = (p50 ? [half, first, last] : [left, first]).filter((each) => each !== "").join("; ");
  const range =
    boxed.p10 === boxed.p90
      ? ""
      : ` (1 in 10: ${boxed.p10} or fewer; 1 in 10: ${boxed.p90 === routed ? "all" : `${boxed.p90} or more`})`;
  return `${days}. Boxed by the end: ${boxed.p50} of ${routed}${range}.`;
}

/** `in 6 of 10 simulated campaigns`. */
export function sayUnfinished({ unfinished, draws }: Finish): string {
  if (unfinished === draws) return `in all ${draws} simulated campaigns`;
  const tenths = Math.round((10 * unfinished) / draws);
  if (tenths === 0) return "in fewer than 1 of 10 simulated campaigns";
  return tenths === 10 ? "in nearly all simulated campaigns" : `in ${tenths} of 10 simulated campaigns`;
}

/** What chance does, in one sentence without its full stop. */
export const sayRisk = (plan: Plan): string =>
  [sayDrivers(plan), sayWatch(plan), sayMust(plan)].filter((words) => words !== "").join("; ");

/** The same for the page, with how often something is left where that is more than rare. */
export const saySpread = (plan: Plan, end: string): string =>
  `${plan.finish.p90 ? "" : `${upper(sayUnfinished(plan.finish))} something is left over on ${end}. `}What moves the finish: ${sayRisk(plan)}.`;

/** What makes the finish uncertain, widest first; in items where more than half of the campaigns leave something. */
export function sayDrivers({ finish, risk }: Pick<Plan, "finish" | "risk">): string {
  const size = ({ days, items }: Driver): number => (finish.p50 ? days : items);
  const words = [...risk.drivers]
    .sort((a, b) => size(b) - size(a))
    .filter((each) => size(each) > 0)
    .slice(0, 2)
    .map((each) => `${LUCK[each.luck]} (${finish.p50 ? sayDays(each.days) : count(each.items, "item")})`);
  if (words.length === 0) return "chance hardly moves it";
  return `mostly ${words.join(", then ")}`;
}

/** The items to watch, each with its chance. */
export function sayWatch({ risk }: Pick<Plan, "risk">): string {
  const lines = new Map(risk.items.map((each) => [each.item, each]));
  const watched = risk.watch.flatMap((item) => lines.get(item) ?? []);
  const late = watched.filter((each) => each.late >= WORTH_NAMING);
  const [words, share] =
    late.length > 0
      ? ["most often late", (each: ItemChance) => each.late]
      : ["most often boxed last", (each: ItemChance) => each.last];
  const named = (late.length > 0 ? late : [...watched].sort((a, b) => b.last - a.last)).map(
    (each) => `${each.item} (${percent(share(each))})`,
  );
  if (named.length === 0) return "no item is ever late";
  return `${words}: ${named.slice(0, NAMED).join(", ")}${named.length > NAMED ? " …" : ""}`;
}

/** How sure the must-do items are of their box. */
export function sayMust({ risk }: Pick<Plan, "risk">): string {
  const must = risk.items.filter((each) => each.must);
  const unsure = must.filter((each) => each.boxed < SURE).length;
  if (must.length === 0) return "";
  return unsure === 0
    ? `each of ${count(must.length, "must-do item")} on a route is boxed in 9 of 10 or more`
    : `${unsure} of ${count(must.length, "must-do item")} on a route ${unsure === 1 ? "is" : "are"} not sure of a box (in fewer than 9 of 10)`;
}

const upper = (words: string): string => words.charAt(0).toUpperCase() + words.slice(1);
const sayDays = (days: number): string =>
  days < 14 ? count(days, "day") : count(Math.round(days / 7), "week");
const count = (n: number, word: string): string => `${n} ${word}${n === 1 ? "" : "s"}`;
const percent = (share: number): string => `${Math.round(100 * share)} %`;
