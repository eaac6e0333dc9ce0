import type { Forbid } from "../care/care.ts";
import type { Reason } from "../care/reason.ts";
import type { BagState, ReleaseCheck } from "./bag-state.ts";

/* What keeps an item in the Ward now: readings still missing, days of a watch or of freezing, the freezer itself, rules, tests. */

/** A wait that ends by days and a look, not by a reading. */
export interface DaysWait {
  readonly kind: "freezing" | "watch for insects" | "second look at mould";
  /** Days gone, and how many are asked for; never fewer than `least`. */
  readonly gone: number;
  readonly least: number;
  /** Where conditions are less good: a domestic freezer, a doubtful find. */
  readonly most: number;
}

export type Hold =
  | { readonly kind: "reading"; readonly check: ReleaseCheck }
  | { readonly kind: "no bag" }
  | { readonly kind: "days"; readonly wait: DaysWait }
  | { readonly kind: "in the freezer" }
  /** Out of the freezer, still to come to the warmth of the room, sealed. */
  | { readonly kind: "warming up"; readonly hoursLeft: number }
  | { readonly kind: "rule"; readonly reason: Reason }
  /** Must-ask tests without an answer: not tested is never no. */
  | { readonly kind: "tests" };

export interface LeaveWard {
  /** Everything that can be shown is shown; two people look and sign. */
  readonly isEarned: boolean;
  readonly holds: readonly Hold[];
}

export interface StayFacts {
  /** Bans on leaving, of the item and its parts. */
  readonly bans: readonly Forbid[];
  /** Of its bag; null: in none. */
  readonly bag: BagState | null;
  readonly waits: readonly DaysWait[];
  readonly isInFreezer: boolean;
  /** Hours since it came out of the freezer; null: never was in it. */
  readonly hoursSinceFreezer: number | null;
  readonly hasTestsOpen: boolean;
}

/** Bags stay shut until at room temperature, a full day or two (rule I04); hours. */
export const WARM_UP_HOURS = 24;
/** Bans that the readings, and the days of freezing or watching, bring to an end. */
const ENDED_HERE = new Set(["dry_shown", "insects_gone"]);

export const leaveWard = (stay: StayFacts): LeaveWard => {
  const holds = holdsOf(stay);
  return { isEarned: holds.length === 0, holds };
};

function holdsOf({ bans, bag, waits, isInFreezer, hoursSinceFreezer, hasTestsOpen }: StayFacts): Hold[] {
  const others = bans.filter(({ until }) => !until.some((end) => ENDED_HERE.has(end)));
  const warmsFor = hoursSinceFreezer === null ? 0 : WARM_UP_HOURS - hoursSinceFreezer;
  return [
    ...others.flatMap(({ reasons }) => reasons.map((reason): Hold => ({ kind: "rule", reason }))),
    ...(hasTestsOpen ? [{ kind: "tests" } as const] : []),
    ...(isInFreezer ? [{ kind: "in the freezer" } as const] : []),
    ...(!isInFreezer && warmsFor > 0 ? [{ kind: "warming up", hoursLeft: warmsFor } as const] : []),
    ...waits.flatMap((wait): Hold[] => (wait.gone < wait.least ? [{ kind: "days", wait }] : [])),
    ...(asksReadings(bans) ? readingHolds(bag) : []),
  ];
}

/** Whether dryness must be shown; unsure hazards ban as the sure ones do. */
export const asksReadings = (bans: readonly Forbid[]): boolean =>
  bans.some(({ until }) => until.includes("dry_shown"));

const readingHolds = (bag: BagState | null): Hold[] =>
  bag === null
    ? [{ kind: "no bag" }]
    : bag.release.checks.flatMap((check): Hold[] => (check.met ? [] : [{ kind: "reading", check }]));
