/**
 * What each printed paper shows. Every sentence arrives finished, in the reader's language; a paper only lays it out.
 * Days arrive as they are to be read ("Tuesday 2 June 2026"), minutes as whole numbers.
 */

/** Work, a wipe-down of the station, or a break, in the order they are done; `time` is `08:30–09:05`. */
export type DayRow =
  | {
      readonly kind: "work";
      readonly time: string;
      /** The item's number, or `12 items`. */
      readonly item: string;
      /** The item's title; empty where several stand together. */
      readonly title: string;
      /** Numbers of several short items alike, in order; empty for one. */
      readonly items: readonly string[];
      /** The act in plain words: `Clean the leaves`. */
      readonly act: string;
      /** How, in a few words: `air bulb, then soft brush; edges first`; empty when the bench card says it all. */
      readonly how: string;
      /** Where, when the person works at more than one station; empty otherwise. */
      readonly station: string;
      /** What the item carries: `clean`, `red rot`, `dormant mould` …; empty when unknown. */
      readonly dirt: string;
      readonly minutes: number;
      /** The minutes go on the person's mould account. */
      readonly exposed: boolean;
    }
  | {
      readonly kind: "wipe-down" | "break";
      readonly time: string;
      readonly text: string;
      readonly minutes: number;
    };

/** One person's day. */
export interface DaySheetView {
  readonly campaign: string;
  readonly day: string;
  readonly person: string;
  readonly role: string;
  readonly stations: readonly string[];
  readonly rows: readonly DayRow[];
  /** `08:00–16:15`; empty on a day without work. */
  readonly hours: string;
  /** `work 307 min · lunch 45 min`; empty on a day without work. */
  readonly sums: string;
  /** What the day as a whole asks for: company, a day too long. */
  readonly notes: readonly string[];
  /** How far the clock times are meant. */
  readonly clockNote: string;
  /** All minutes near mould, changing and washing among them; null: the person is on clean work this week, and nothing more is shown. */
  readonly mould: {
    readonly today: number;
    readonly limitToday: number;
    /** This week with today, in words: `318 min on 2 of 3 days`. */
    readonly week: string;
  } | null;
  /** `After 75 min of mask: off, and 30 min outside`; empty when no mask is worn. */
  readonly maskRule: string;
  readonly protection: readonly string[];
  /** ISO 7010 codes, most important first. */
  readonly signs: readonly string[];
  /** What ends the work at once: `colour or fibre on the tool`. */
  readonly stops: readonly string[];
  readonly askWho: string;
}

/** One act of a bench card. */
export interface BenchStep {
  readonly room: string;
  readonly act: string;
  /** Tools or methods allowed, gentlest first. */
  readonly methods: readonly string[];
  /** `25` or `20 to 35`. */
  readonly minutes: string;
  readonly exposed: boolean;
  readonly protection: readonly string[];
  /** `1 wrapper sheet`, `2 pairs of gloves`. */
  readonly uses: readonly string[];
}

/** One item: what it has, what to do, what never to do, and why. */
export interface BenchCardView {
  readonly campaign: string;
  readonly item: string;
  readonly title: string;
  /** `Bound volume, 320 leaves, 380 × 250 × 60 mm`. */
  readonly format: string;
  readonly parts: readonly string[];
  readonly where: string;
  /** What was found, in plain words; an `unsure` says so. */
  readonly conditions: readonly string[];
  readonly steps: readonly BenchStep[];
  readonly never: readonly string[];
  /** `action`: what is forbidden for now; `until`: what ends it, `until the covers are pictured`. */
  readonly notYet: readonly { readonly action: string; readonly until: string }[];
  readonly stops: readonly string[];
  readonly askWho: readonly string[];
  readonly lookBefore: readonly string[];
  readonly lookAfter: readonly string[];
  /** Empty: the owner gave none. */
  readonly custodianRule: string;
  readonly signs: readonly string[];
  readonly reasons: readonly { readonly rule: string; readonly text: string; readonly source: string }[];
}

/** A closed bag, box or tent of the Ward. */
export interface BagTagView {
  readonly campaign: string;
  /** The large number: the item's, or the bag's when several items share it. */
  readonly number: string;
  readonly title: string;
  /** Other items inside, when the bag holds more than one. */
  readonly alsoInside: readonly string[];
  readonly dateIn: string;
  readonly reason: string;
  readonly openOnlyBy: string;
  readonly signs: readonly string[];
  /** `Not before 16 June, and then only on two readings of 55 % or less, a day apart`. */
  readonly release: string;
}

export interface OrderLine {
  readonly store: string;
  readonly packs: number;
  /** `5 packs of 20 = 100 masks`. */
  readonly quantity: string;
  readonly orderBy: string;
  readonly neededBy: string;
  readonly route: string;
  readonly why: string;
  /** Empty when in time; otherwise what the lateness means: `Late by 12 days even if ordered today`. */
  readonly late: string;
}

export interface OrderListView {
  readonly campaign: string;
  readonly day: string;
  readonly lines: readonly OrderLine[];
  /** What else the reader should know, under the list. */
  readonly notes: readonly string[];
}
