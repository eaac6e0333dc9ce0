import type { Act } from "../../items/campaign.ts";
import type { Day } from "../../units/day.ts";

/** One limit that a plan breaks, as data; `say/plan-faults.ts` has a sentence for each code. */
export interface Fault {
  readonly code: /** People */
    | "person-unknown"
    | "not-present"
    | "over-hours"
    | "skill-missing"
    | "sheet-order"
    | "boxed-first"
    /** Near mould */
    | "not-booked"
    | "clean-work"
    | "mould-minutes"
    | "mould-week"
    | "mould-row"
    | "alone"
    | "mask-breaks"
    | "clean-after-mould"
    /** Stations */
    | "station-unknown"
    | "station-kind"
    | "station-closed"
    | "station-minutes"
    | "station-hours"
    | "not-wiped"
    /** Items and their acts */
    | "item-unknown"
    | "day-outside"
    | "before-arrival"
    | "no-minutes"
    | "done-before"
    | "act-order"
    | "forbidden"
    | "held"
    | "tests-missing"
    | "not-pictured"
    /** The Ward */
    | "ward-litres"
    | "ward-wait"
    /** Stores */
    | "store-short"
    | "store-line"
    | "order-missing"
    | "order-wrong"
    /** What the plan says of itself */
    | "item-days"
    | "person-day"
    | "figure"
    | "finish"
    | "chance"
    | "left-missing"
    | "left-twice"
    | "left-wrong"
    | "left-no-reason"
    /** The certificate */
    | "plan-value"
    | "gap"
    | "bound";
  readonly day?: Day;
  readonly person?: string;
  readonly item?: string;
  readonly station?: string;
  readonly store?: string;
  readonly act?: Act;
  /** Which of the plan's figures, where it has several: `routed`, `exposedMinutes`, `finish.p50` … */
  readonly figure?: string;
  /** What the plan has, and what it may have; minutes, days, litres or pieces as the code says, else words. */
  readonly got: number | string;
  readonly limit: number | string;
  /** Where the limit comes from: the campaign's own words, a rule's id, or the table. */
  readonly source: string;
}
