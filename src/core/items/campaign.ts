import type { Day } from "../units/day.ts";
import type { Facts, FactValue } from "./facts.ts";

/** One answer to one test on one part, as it was written down. */
export interface Finding {
  readonly item: string;
  /** Empty: the whole item. */
  readonly part: string;
  /** A test of `data/vocabulary.json`, e.g. `growth_visible`. */
  readonly test: string;
  readonly answer: FactValue;
  readonly day?: Day;
  readonly by?: string;
}

/** A piece of an item with rules of its own: cover, text block, painted outer leaf, seal, insert. */
export interface Part {
  readonly name: string;
  /** Properties that differ from the item's: format, support, media, cover, has, leaves … */
  readonly facts: Facts;
}

export interface Item {
  /** The number on the tag; unique in the campaign. */
  readonly id: string;
  readonly title: string;
  /** format, support, media, cover, process, has, leaves, mass_kg, date_earliest, date_latest … as the rules name them. */
  readonly facts: Facts;
  readonly parts: readonly Part[];
  readonly priority: "must" | "want";
  /** Camera wanted by this day. */
  readonly due?: Day;
  /** Day of arrival; absent: already here. */
  readonly arrives?: Day;
  readonly heightMm?: number;
  readonly widthMm?: number;
  readonly thicknessMm?: number;
  /** Box or shelf it was found in. */
  readonly foundIn?: string;
  /** The owner's handling rule, shown on the card; adds limits, never lifts one. */
  readonly custodianRule?: string;
  /** How it stands by the log, until it is released: hours_wet, in_freezer … as the rules name them under `state`. */
  readonly state?: Facts;
}

export type Skill = "lead" | "clean" | "image" | "box" | "write";

export interface Person {
  /** Short code used on papers. */
  readonly code: string;
  readonly name: string;
  readonly role: string;
  readonly skills: readonly Skill[];
  /** Whether this person may be given mould work; never why. Anything but a clear yes is no. */
  readonly mouldWork: boolean;
  /** Weekdays present, 0 Monday … 6 Sunday. */
  readonly weekdays: readonly number[];
  readonly hoursADay: number;
  readonly from?: Day;
  readonly until?: Day;
}

/** A stretch of days that differs from the ordinary. */
export interface CalendarEntry {
  readonly from: Day;
  readonly to: Day;
  /** A person's code, a station's id, or `everyone`. */
  readonly who: string;
  /** `away`/`closed`: not there; `clean work`: no mould work, whatever the cause; `open`: a station is there only on its open days; `hours`: that many hours a day. */
  readonly what: "away" | "clean work" | "closed" | "open" | "hours";
  readonly hours?: number;
  readonly note?: string;
}

export type StationKind = "mould bench" | "clean bench" | "cover stand" | "camera" | "boxing table";

export interface Station {
  readonly id: string;
  readonly kind: StationKind;
  /** How many people can work there at once (for a camera: how many cameras). */
  readonly places: number;
  readonly minutesADay: number;
}

/** A figure a person may have to answer for, with where it comes from. */
export interface Limit {
  readonly value: number;
  readonly source: string;
}

export interface Limits {
  /** Exposed minutes a person may be planned for in a day. */
  readonly exposedMinutesADay: Limit;
  readonly exposedDaysAWeek: Limit;
  readonly exposedDaysInARow: Limit;
  /** Minutes of continuous mask wear before a break. */
  readonly maskMinutes: Limit;
  /** Minutes of the break after it. */
  readonly maskBreakMinutes: Limit;
}

/** A thing in the store room. `use` names the consumable of `data/norms.json` it serves, e.g. `k-mask`. */
export interface Store {
  readonly id: string;
  readonly name: string;
  readonly use: string;
  readonly unit: string;
  readonly onHand: number;
  /** Units in the usual pack. */
  readonly pack: number;
  /** The packs it is sold in, and what they cost; absent: the usual pack alone, its price unknown. */
  readonly packs?: readonly PackSize[];
  readonly leadDays: number;
  readonly route: string;
  readonly expires?: Day;
  /** Last day on which it can still be ordered. */
  readonly orderBy?: Day;
}

/** A pack a store is sold in. */
export interface PackSize {
  /** Units in it. */
  readonly size: number;
  /** In the campaign's own money; absent: not known. */
  readonly price?: number;
}

/** A store as somebody counted it, on the morning of a day. */
export interface StockCount {
  readonly store: string;
  readonly day: Day;
  readonly quantity: number;
  /** What came since the count before. */
  readonly came: number;
}

export interface Delivery {
  readonly store: string;
  readonly day: Day;
  readonly quantity: number;
  readonly note?: string;
}

/** The acts of a route, in the order of the rooms. */
export const ACTS = ["survey", "admit", "release", "covers", "wrap", "clean", "image", "box"] as const;
export type Act = (typeof ACTS)[number];

/** Work already done: what was, by whom, how long. */
export interface Session {
  readonly day: Day;
  readonly item: string;
  readonly act: Act;
  readonly person: string;
  readonly minutes: number;
  readonly exposed: boolean;
}

/** What was written down about a bag in the Ward. */
export const WARD_ACTS = ["closed", "opened", "gel in", "gel out", "read", "weighed"] as const;
export type WardAct = (typeof WARD_ACTS)[number];

export interface WardNote {
  readonly item: string;
  readonly day: Day;
  /** Minutes after midnight; noon where no time was written. */
  readonly minute: number;
  readonly what: WardAct;
  /** `closed`: litres of the bag; `gel in`, `gel out`, `weighed`: grams; `read`: relative humidity as a fraction. */
  readonly value?: number;
  /** °C beside the reader. */
  readonly dryBulb?: number;
}

export interface ClimateReading {
  /** ISO 8601 local time without zone. */
  readonly at: string;
  /** °C; absent when the reader gave none. */
  readonly dryBulb?: number;
  /** Fraction 0 to 1. */
  readonly relHum?: number;
}

export interface ClimateSeries {
  readonly name: string;
  readonly readings: readonly ClimateReading[];
}

export interface Place {
  readonly name: string;
  /** `hot_humid`, `warm_wet_season`, `hot_dry` or `temperate`. */
  readonly climate: string;
  readonly freezer: boolean;
  readonly fineFilterVacuum: boolean;
}

export interface Campaign {
  readonly name: string;
  readonly place: Place;
  readonly start: Day;
  readonly end: Day;
  /** The morning the plan is made for; items done before it are done. */
  readonly planFrom: Day;
  readonly wardLitres: number;
  readonly stations: readonly Station[];
  readonly limits: Limits;
  readonly items: readonly Item[];
  readonly findings: readonly Finding[];
  readonly people: readonly Person[];
  readonly calendar: readonly CalendarEntry[];
  readonly stores: readonly Store[];
  readonly deliveries: readonly Delivery[];
  /** Counts of the stores in their order. While there are any, `Store.onHand` is the last of them with what has come since. */
  readonly stockCounts?: readonly StockCount[];
  /** Use → how much of it the team needs against the norm, where that was measured. */
  readonly useAgainstNorm?: Readonly<Record<string, number>>;
  readonly sessions: readonly Session[];
  readonly ward: readonly WardNote[];
  readonly climate: readonly ClimateSeries[];
}
