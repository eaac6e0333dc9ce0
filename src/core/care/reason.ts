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
  /** True when an `unsure` was acted on as the safer side. */
  readonly fromUnsure: boolean;
}

/** `never`: not by this team; otherwise what ends the ban, an id of `data/endings.json`. */
export type Until = "never" | (string & {});
