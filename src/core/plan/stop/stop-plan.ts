import type { Act, Store } from "../../items/campaign.ts";
import type { Day } from "../../units/day.ts";

/** What becomes of an item when work stops on a day. */
export type StopVerdict =
  /** Begun, and boxed by the stop. */
  | "finish"
  /** Not begun, and boxed by the stop. */
  | "start"
  /** Brought to where it safely stays, and left there. */
  | "make safe"
  /** Lies safely already: not touched. */
  | "leave"
  /** Arrives after the stop: not fetched. */
  | "comes later"
  /** Boxed before. */
  | "done"
  /** Cannot be brought there in time by this team. */
  | "not safe in time";

/** Why an item cannot be made safe in time. */
export type NotSafe = "outside help" | "no person" | "no store" | "no hours" | "still drying";

export interface StopItem {
  readonly item: string;
  readonly title: string;
  readonly must: boolean;
  readonly begun: boolean;
  readonly verdict: StopVerdict;
  /** Where it lies after the stop, short of a box of its own. */
  readonly rest: { readonly id: string; readonly says: string };
  readonly conditions: readonly string[];
  /** Place in the order of making safe, 1 first; null: nothing to do. */
  readonly place: number | null;
  /** Day by which it lies so; null: it does already, or it will not. */
  readonly safeBy: Day | null;
  /** Day it is boxed. */
  readonly boxedOn: Day | null;
  /** Minutes of making safe, and of the way to the box. */
  readonly safeMinutes: number;
  readonly boxMinutes: number;
  readonly exposedMinutes: number;
  readonly protection: readonly string[];
  /** Consumable → quantity, for both. */
  readonly uses: Readonly<Record<string, number>>;
  readonly people: readonly string[];
  readonly why: NotSafe | null;
  /** It is not shown dry by the stop: it rests only while somebody reads it. */
  readonly needsReader: boolean;
  /** It could be frozen instead of drying on. */
  readonly mayFreeze: boolean;
}

/** One line of what is done until the stop. */
export interface StopLine {
  readonly day: Day;
  readonly person: string;
  /** Empty: not for one item. */
  readonly item: string;
  readonly what: "make safe" | "look" | "put back" | "close down" | Act;
  readonly minutes: number;
  readonly exposed: boolean;
}

export interface StopPerson {
  readonly code: string;
  readonly name: string;
  readonly presentMinutes: number;
  /** Changing on exposed days counted. */
  readonly usedMinutes: number;
  readonly exposedDays: number;
}

export interface StopStore {
  readonly use: string;
  readonly store: Pick<Store, "id" | "name" | "unit"> | null;
  readonly needed: number;
  /** On hand and arriving by the stop. */
  readonly there: number;
}

/** The answer to: we stop on that day. */
export interface StopPlan {
  readonly campaign: string;
  readonly from: Day;
  /** Last day of work. */
  readonly stop: Day;
  readonly workingDays: number;
  /** Every item, in the order in which it is dealt with. */
  readonly items: readonly StopItem[];
  readonly lines: readonly StopLine[];
  readonly people: readonly StopPerson[];
  readonly stores: readonly StopStore[];
  /** Day of the last making safe; null: nothing had to be. */
  readonly safeBy: Day | null;
  /** Last day on which an item is begun that will be boxed. */
  readonly lastStart: Day | null;
  /** Items at the Door whose must-ask tests are answered before the stop, and those for which there are no hours. */
  readonly looked: readonly string[];
  readonly notLooked: readonly string[];
  /** Litres of closed bags lying there after the stop, and what the Ward holds. */
  readonly bagLitres: number;
  readonly wardLitres: number;
  /** Boxed after growth or insects: to be looked at again after 14 and 30 days. */
  readonly lookBacks: number;
}
