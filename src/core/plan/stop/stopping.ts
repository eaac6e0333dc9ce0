import type { Route } from "../../care/care.ts";
import type { ItemCare } from "../../care/item-care.ts";
import type { Norms } from "../../care/norms.ts";
import type { RuleBook } from "../../care/rule-book.ts";
import type { Campaign } from "../../items/campaign.ts";
import { daysBetween } from "../../units/day.ts";
import type { PlanProblem } from "../problem.ts";
import type { Placed } from "./hours-left.ts";
import { type Way, waitOf } from "./laying.ts";
import { type RestingNeed, restingNeed } from "./resting-work.ts";
import type { NotSafe } from "./stop-plan.ts";

/** An item on its way to the stop. */
export interface Stopping {
  readonly care: ItemCare;
  readonly route: Route;
  readonly need: RestingNeed;
  /** Its bag is closed already. */
  readonly bagged: boolean;
  /** Taken in hand beyond survey and bag, not boxed. */
  readonly open: boolean;
  readonly begun: boolean;
  /** First day on which it is here. */
  readonly here: number;
  place: number | null;
  safe: Placed | null;
  putBack: Placed | null;
  look: Placed | null;
  way: Way | null;
  trouble: NotSafe | null;
}

/** What the campaign knows, decided before. */
export interface StopInput {
  readonly campaign: Campaign;
  readonly book: RuleBook;
  readonly norms: Norms;
  readonly care: readonly ItemCare[];
  readonly routes: readonly Route[];
}

/** Every item as it lies on the plan's morning. */
export function stoppingItems({ campaign, book, norms, care, routes }: StopInput): Stopping[] {
  return care.map((each, at) => {
    const { done, item } = each;
    const bagged = !done.has("release") && (done.has("admit") || bagIsClosed(campaign, item.id));
    const beyond = [...done].some((act) => act !== "survey" && act !== "admit");
    const boxed = done.has("box");
    return {
      care: each,
      route: routes[at] as Route,
      need: restingNeed(book, norms, each, bagged),
      bagged,
      open: beyond && !boxed && !bagged,
      begun: (beyond || bagged) && !boxed,
      here: item.arrives ? Math.max(0, daysBetween(campaign.planFrom, item.arrives) + 1) : 0,
      place: null,
      safe: null,
      putBack: null,
      look: null,
      way: null,
      trouble: null,
    };
  });
}

const bagIsClosed = ({ ward, planFrom }: Campaign, item: string): boolean =>
  ward
    .filter((note) => note.item === item && note.day < planFrom && /^(closed|opened)$/.test(note.what))
    .sort((a, b) => a.day.localeCompare(b.day) || a.minute - b.minute)
    .at(-1)?.what === "closed";

/** Whether the longest usual wait is over by the stop. */
export const driesInTime = (problem: PlanProblem, { safe, bagged, route }: Stopping): boolean =>
  (safe?.until ?? (bagged ? 0 : problem.days.length)) + waitOf(route.wardDays) < problem.days.length;
