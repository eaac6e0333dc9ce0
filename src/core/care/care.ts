import type { Act } from "../items/campaign.ts";

/** People > object > evidence and custodian > pace. */
export type Tier = 1 | 2 | 3 | 4;
export type Verb = "require" | "forbid" | "prefer" | "warn" | "escalate";

/** Why something holds: the rule, and the findings that fired it. */
export interface Reason {
  readonly rule: string;
  readonly tier: Tier;
  readonly text: string;
  readonly why: string;
  readonly source: string;
  readonly sourceStatus: string;
  /** Facts the rule read, as `obs.rub_mark = clear`. */
  readonly because: readonly string[];
  /** True when an `unsure` was acted on as the safer side. */
  readonly fromUnsure: boolean;
}

/** `never`: not by this team; otherwise what ends the ban, an id of `data/endings.json`. */
export type Until = "never" | (string & {});

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
  readonly protection: readonly string[];
  /** Consumable norm id → quantity for this item. */
  readonly uses: Readonly<Record<string, number>>;
  /** How dirty the station is afterwards: 0 clean, 1 dusty, 2 red rot, 3 dormant mould, 4 poison. */
  readonly dirt: 0 | 1 | 2 | 3 | 4;
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
