import type { Replan, ReplanChange } from "../../core/plan/replan/changes.ts";
import {
  type CampaignWords,
  sayAfresh,
  sayArrived,
  sayDueDays,
  sayKept,
  sayMoved,
  sayNearDays,
  sayPaces,
  sayWhyChanged,
} from "../../core/say/replan.ts";
import type { Day } from "../../core/units/day.ts";

/** What became of the accepted plan, in sentences, with the first of all changes one by one. */
export interface ReplanTold {
  readonly kept: string;
  readonly moved: readonly string[];
  readonly near: readonly string[];
  readonly due: string;
  readonly dueBroken: number;
  readonly arrived: string;
  readonly paces: string;
  readonly afresh: string;
  readonly changes: readonly ChangeTold[];
  /** How many there are in all. */
  readonly allChanges: number;
}

/** One change; an item's has an act, a person's none. */
export interface ChangeTold {
  readonly what: string;
  readonly act: string | null;
  readonly day: Day;
  readonly from: string;
  readonly to: string | null;
  readonly toDay: Day | null;
  readonly why: string;
}

/** The rest stands in changes.csv. */
const MOST_CHANGES = 200;

export const replanTold = (its: Replan, words: CampaignWords): ReplanTold => ({
  kept: sayKept(its),
  moved: sayMoved(its, words),
  near: sayNearDays(its, words),
  due: sayDueDays(its),
  dueBroken: its.dueBroken.length,
  arrived: sayArrived(its),
  paces: sayPaces(its),
  afresh: sayAfresh(its),
  changes: its.changes.slice(0, MOST_CHANGES).map((each) => changeTold(each, words)),
  allChanges: its.changes.length,
});

function changeTold(each: ReplanChange, words: CampaignWords): ChangeTold {
  const name = (code: string): string => words.people.find((person) => person.code === code)?.name ?? code;
  const why = sayWhyChanged(each.why, words);
  if ("person" in each)
    return {
      ...{ what: name(each.person), act: null, day: each.day, toDay: each.day },
      ...{ from: each.from, to: each.to, why },
    };
  const { item, act, from, to } = each;
  return {
    ...{ what: item, act, day: from.day, from: name(from.person), why },
    ...{ to: to && name(to.person), toDay: to && to.day },
  };
}
