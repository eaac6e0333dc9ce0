import type { StationKind } from "../../items/campaign.ts";
import type { Day } from "../../units/day.ts";

/** Roles a scenario can add a person of; the others bring no hands to the plan. */
export const ADDABLE_ROLES = ["lead", "cleaner", "photographer", "boxer", "scribe"] as const;
export type AddableRole = (typeof ADDABLE_ROLES)[number];

/** Limits a scenario may make tighter, never looser. */
export const TIGHTENABLE = ["exposedMinutesADay", "exposedDaysAWeek", "exposedDaysInARow"] as const;
export type Tightenable = (typeof TIGHTENABLE)[number];

/** Days `from` to `to`, both counted. */
export interface Span {
  readonly from: Day;
  readonly to: Day;
}

/** One thing that would be different. Whatever it is, no limit that guards people gets looser by it. */
export type Change =
  | (Span & { readonly change: "clean work" | "away"; readonly person: string })
  /** `who`: a person's code or `everyone`. Shorter days only. */
  | (Span & { readonly change: "hours"; readonly who: string; readonly hours: number })
  | (Span & {
      readonly change: "more people";
      readonly role: AddableRole;
      readonly count: number;
      readonly mouldWork: boolean;
    })
  /** What is on its way and what is ordered from now on comes so many days later (less than 0: what is on its way comes earlier). */
  | { readonly change: "late"; readonly stores: readonly string[]; readonly days: number }
  | {
      readonly change: "delivery";
      readonly store: string;
      readonly day: Day;
      readonly quantity: number;
    }
  | (Span & { readonly change: "closed"; readonly station: string })
  | (Span & { readonly change: "open"; readonly station: string })
  /** The station is there on these weekdays (0 Monday … 6 Sunday) instead of the days given for it, in the same stretch of time. */
  | { readonly change: "weekdays"; readonly station: string; readonly weekdays: readonly number[] }
  | (Span & { readonly change: "more stations"; readonly kind: StationKind; readonly count: number })
  /** Copies of items already surveyed, arriving on a day; `words` is how they were asked for. */
  | {
      readonly change: "more items";
      readonly like: readonly string[];
      readonly words: string;
      readonly count: number;
      readonly day: Day;
    }
  /** These items are not begun before the day. */
  | {
      readonly change: "hold back";
      readonly items: readonly string[];
      readonly words: string;
      readonly until: Day;
    }
  /** What these items wait counts for much less (`last`) or much more (`first`) than what others wait. */
  | {
      readonly change: "order";
      readonly items: readonly string[];
      readonly words: string;
      readonly place: "first" | "last";
    }
  /** So many hours at a station on each day it is there; never fewer than now. */
  | { readonly change: "longer at"; readonly station: string; readonly hours: number }
  /** The work rooms are so warm (°C) and damp (0 to 1); it takes hours or mould work away, it gives none. */
  | (Span & { readonly change: "room heat"; readonly dryBulb: number; readonly relHum: number })
  | { readonly change: "ward"; readonly litres: number }
  | { readonly change: "end"; readonly day: Day }
  | { readonly change: "tighter"; readonly limit: Tightenable; readonly value: number };
