import type { Trouble } from "./surveyed.ts";

/** What a group of items tells of one trouble. */
export interface Stratum {
  readonly trouble: Trouble["id"];
  readonly by: "all" | "format" | "shelf";
  /** The format's id, the shelf as written, or empty for all. */
  readonly name: string;
  /** Items that can have it. */
  readonly items: number;
  readonly looked: number;
  readonly found: number;
  /** Looked at, and the answer was `unsure`: counted as none in the low end and as all in the high end. */
  readonly unsure: number;
  /** Share of all its items, 0 to 1, and the items that are. */
  readonly low: number;
  readonly high: number;
  readonly lowItems: number;
  readonly highItems: number;
}
