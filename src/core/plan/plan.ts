import type { Reason } from "../care/reason.ts";
import type { Act, Limit, StationKind } from "../items/campaign.ts";
import type { Day } from "../units/day.ts";
import type { ClockRow } from "./day-clock.ts";

/** One piece of work on a day sheet. */
export interface Assignment {
  readonly day: Day;
  readonly person: string;
  readonly station: string;
  readonly item: string;
  readonly act: Act;
  readonly minutes: number;
  /** These minutes go on the person's mould account. */
  readonly exposed: boolean;
  readonly dirt: 0 | 1 | 2 | 3 | 4;
  /** Place in the person's day, 1 first: clean to dirty. */
  readonly order: number;
  /** Wipe the station down after this piece of work. */
  readonly wipeAfter: boolean;
}

/** A row of a person's day in the clock; each follows the one before without a hole. */
export interface SheetRow {
  readonly day: Day;
  readonly person: string;
  /** Minutes after midnight, whole. */
  readonly from: number;
  readonly to: number;
  readonly kind: ClockRow["kind"];
  /** What is worked on, wiped down after or waited for: several items where short pieces alike stand together; empty: nothing. */
  readonly items: readonly string[];
  /** Null where there is no item. */
  readonly act: Act | null;
  readonly station: string;
  readonly dirt: 0 | 1 | 2 | 3 | 4;
  readonly exposed: boolean;
  /** It is cut by a break and goes on in a later row. */
  readonly goesOn: boolean;
  /** The limit that asks for a mask break; null for every other row. */
  readonly limit: Limit | null;
}

/** A person's day as the limits see it. */
export interface PersonDay {
  readonly day: Day;
  readonly person: string;
  readonly presentMinutes: number;
  readonly workMinutes: number;
  /** All minutes near mould, taking off, washing tools and waste among them. */
  readonly exposedMinutes: number;
  /** Changing, laying out, washing and clearing on an exposed day. */
  readonly overheadMinutes: number;
}

/** The days an item passes each act; an act it does not need is absent. */
export interface ItemDays {
  readonly item: string;
  readonly days: Readonly<Partial<Record<Act, Day>>>;
}

export interface Left {
  readonly item: string;
  readonly title: string;
  readonly must: boolean;
  /** `no time`: the plan cannot reach it; `set aside`: a rule stops it; `at the Door`: tests are missing. */
  readonly kind: "no time" | "set aside" | "at the Door";
  readonly why: string;
  readonly reasons: readonly Reason[];
  readonly askWho: readonly string[];
}

export interface Bind {
  /** `mould minutes`, `clean hands`, `camera`, `boxing`, `ward`, a store id … */
  readonly resource: string;
  /** Per cent of the campaign's waiting days that one per cent more of it would save, from the programme's prices; for ranking. */
  readonly weight: number;
  /** Use over what there is, 0 to 1, between today and the typical finish; 0 for what is not used by the minute (stores, Ward). */
  readonly load: number;
  readonly sentence: string;
}

/** The packs that make an order up. */
export interface Packing {
  readonly packs: readonly { readonly size: number; readonly count: number; readonly price?: number }[];
  /** Units in them. */
  readonly quantity: number;
  /** Units over what is needed. */
  readonly leftover: number;
  /** null: not every pack has a price, and the fewest packs were taken. */
  readonly cost: number | null;
}

export interface Order {
  readonly store: string;
  readonly name: string;
  readonly unit: string;
  readonly packs: number;
  readonly quantity: number;
  /** Which packs, where there are several sizes or prices. */
  readonly packing?: Packing;
  /** Last day on which what comes may be used, where it does not keep to the end. */
  readonly keepsUntil?: Day;
  readonly route: string;
  /** Last day to send the order so that it is here in time. */
  readonly orderBy: Day;
  readonly neededBy: Day;
  /** True: even ordered today it comes too late for the plan without it. */
  readonly late: boolean;
  readonly why: string;
}

export interface StoreLine {
  readonly store: string;
  readonly name: string;
  readonly unit: string;
  readonly onHand: number;
  readonly expected: number;
  readonly used: number;
  /** First day on which it would be gone with nothing more ordered; null: lasts. */
  readonly runsOut: Day | null;
}

/** The days by which one in ten, half and nine in ten of the simulated campaigns have done something; null: not by the end. */
export interface DayRange {
  readonly p10: Day | null;
  readonly p50: Day | null;
  readonly p90: Day | null;
}

/** When everything is boxed. */
export interface Finish extends DayRange {
  /** Items boxed by the end in those campaigns: one in ten boxes no more than p10, one in ten no fewer than p90. */
  readonly boxed: { readonly p10: number; readonly p50: number; readonly p90: number };
  readonly draws: number;
  /** How many of them leave something at the end. */
  readonly unfinished: number;
}

/** What is left to chance: minutes of each item, waits of the Ward, people away, deliveries late, the team's pace. */
export type Luck = "minutes" | "waits" | "absence" | "deliveries" | "pace";

/** What one kind of luck alone does, everything else as the plan expects it. */
export interface Driver {
  readonly luck: Luck;
  /** Days between the finishes of one campaign in ten and nine in ten; unfinished counts as the day after the end. */
  readonly days: number;
  /** Items between what one campaign in ten and nine in ten have boxed by the end. */
  readonly items: number;
}

/** How chance treats one item, over the simulated campaigns; shares 0 to 1. */
export interface ItemChance {
  readonly item: string;
  readonly must: boolean;
  /** Its day at the camera; null: it has no more images to come. */
  readonly image: DayRange | null;
  readonly box: DayRange;
  /** Share of campaigns in which it is boxed by the end. */
  readonly boxed: number;
  /** Share in which the camera comes after its due day, or which end before it is boxed. */
  readonly late: number;
  /** Share in which nothing is boxed after it. */
  readonly last: number;
}

export interface Risk {
  /** Widest first. */
  readonly drivers: readonly Driver[];
  /** Simulated campaigns behind each driver. */
  readonly driverDraws: number;
  /** Every item on a route. */
  readonly items: readonly ItemChance[];
  /** At most ten items that the plan boxes, those first that are most often late, then those most often boxed last. */
  readonly watch: readonly string[];
}

export interface Proof {
  /** Value of the aggregated plan found, and the least any aggregated plan can cost, both in weighted item-days. */
  readonly objective: number;
  readonly bound: number;
  /** (objective − bound) / objective, 0 to 1. */
  readonly gap: number;
  readonly classes: number;
  readonly rows: number;
  readonly columns: number;
  /** Weighted item-days of the day-by-day plan, the bound that no plan of items and days can beat, and how far the plan is over it. */
  readonly itemObjective: number;
  readonly itemBound: number;
  readonly itemGap: number;
}

export interface RoomCount {
  readonly room: "Door" | "Ward" | "Bench" | "Camera" | "Shelf";
  readonly now: number;
  readonly toCome: number;
  readonly wait: string;
}

export interface Plan {
  readonly campaign: string;
  readonly place: string;
  readonly start: Day;
  readonly end: Day;
  readonly planFrom: Day;
  readonly itemCount: number;
  readonly routed: number;
  readonly doneBefore: number;
  readonly finish: Finish;
  readonly risk: Risk;
  readonly proof: Proof;
  readonly binds: readonly Bind[];
  readonly left: readonly Left[];
  readonly assignments: readonly Assignment[];
  /** The first three working days, and each person's first, laid in the clock. */
  readonly clock: readonly SheetRow[];
  readonly personDays: readonly PersonDay[];
  readonly itemDays: readonly ItemDays[];
  readonly orders: readonly Order[];
  readonly stores: readonly StoreLine[];
  readonly rooms: readonly RoomCount[];
  readonly people: readonly {
    readonly code: string;
    readonly name: string;
    readonly role: string;
    /** Exposed minutes allowed a day and days a week; null: clean work. */
    readonly mouldLimit: { readonly minutesADay: number; readonly daysAWeek: number } | null;
  }[];
  readonly stations: readonly { readonly id: string; readonly kind: StationKind; readonly places: number }[];
}
