import type { Act } from "../items/campaign.ts";
import type { Facts } from "../items/facts.ts";
import type { Firing } from "./evaluate.ts";
import type { Reason, Until } from "./reason.ts";
import type { Rest } from "./rule-book.ts";

export interface Ruling {
  readonly action: string;
  readonly reasons: readonly Reason[];
  /** Extra words of the rule: codes of signs, days, minutes, protection … */
  readonly details: Readonly<Record<string, unknown>>;
}

export interface Forbid extends Ruling {
  readonly until: readonly Until[];
}

/** The decided outcome for one set of facts. */
export interface Care {
  /** What was known when it was decided. */
  readonly facts: Facts;
  readonly conditions: readonly string[];
  /** Conditions that an `unsure` leaves open; protective rules act on them as if present. */
  readonly unsureConditions: readonly string[];
  readonly require: readonly Ruling[];
  readonly forbid: readonly Forbid[];
  readonly prefer: readonly Ruling[];
  readonly warn: readonly Ruling[];
  readonly escalate: readonly Ruling[];
  /** Required acts that a forbid keeps back for now. */
  readonly later: readonly Ruling[];
  /** Pairs: the first before the second. */
  readonly order: readonly (readonly [string, string])[];
  /** True: the item rests where it is until someone decides or a wait ends. */
  readonly hold: boolean;
  /** Must-ask tests without an answer. */
  readonly missingTests: readonly string[];
  /** Rules that wait on an `unsure`, with the facts that would settle them. */
  readonly waiting: readonly { readonly rule: string; readonly facts: readonly string[] }[];
  /** The rules this part's own facts fired. */
  readonly fired: readonly Firing[];
  /** Bans by action. */
  readonly banned: ReadonlyMap<string, Forbid>;
  /** Where it stays meanwhile; null would be a fault of the rules, proved not to happen. */
  readonly rest: Rest | null;
}

/** Low, typical, high minutes (or days) of one norm. */
export interface Band {
  readonly low: number;
  readonly typical: number;
  readonly high: number;
}

export interface Step {
  readonly act: Act;
  readonly room: "Door" | "Ward" | "Bench" | "Camera" | "Shelf";
  /** Norm ids the minutes come from. */
  readonly norms: readonly string[];
  readonly minutes: Band;
  /** Minutes count on the person's mould account. */
  readonly exposed: boolean;
  /** Working tools or methods allowed, gentlest first. */
  readonly methods: readonly string[];
  /** Parts that are done another way at the same sitting. */
  readonly parts: readonly StepPart[];
  readonly protection: readonly string[];
  /** Consumable norm id → quantity for this item. */
  readonly uses: Readonly<Record<string, number>>;
  /** How dirty the station is afterwards: 0 clean, 1 dusty, 2 red rot, 3 dormant mould, 4 poison. */
  readonly dirt: 0 | 1 | 2 | 3 | 4;
}

/** A part's own way of being cleaned. */
export interface StepPart {
  readonly name: string;
  readonly leaves: number;
  /** Allowed methods, gentlest first; empty: it is left as it is. */
  readonly methods: readonly string[];
}

/** What becomes of an item. */
export type Destiny =
  /** Has a route to the camera. */
  | "route"
  /** Must-ask tests are missing: stays at the Door. */
  | "at the Door"
  /** A rule stops the work until an adviser has answered. */
  | "set aside"
  /** Boxed already. */
  | "done";

export interface Route {
  readonly item: string;
  readonly destiny: Destiny;
  /** Acts still to be done, in order. */
  readonly steps: readonly Step[];
  /** Days in the Ward before release may be tried; null when it does not go there. */
  readonly wardDays: Band | null;
  readonly wardWhy: string;
  readonly wardLitres: number;
  /** Images the camera makes. */
  readonly images: number;
  /** Why it is not on a route: rule ids, worst first. */
  readonly stoppedBy: readonly Reason[];
  readonly askWho: readonly string[];
  readonly conditions: readonly string[];
}
