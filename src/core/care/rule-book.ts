import type { FactValue } from "../items/facts.ts";
import type { Reason, Until, Verb } from "./reason.ts";
import type { Check, Condition } from "./truth.ts";

export interface Consequence {
  readonly verb: Verb;
  readonly action: string;
  readonly until: Until;
  readonly before?: string;
  readonly after?: string;
  readonly details: Readonly<Record<string, unknown>>;
  /** `part`: for the part whose findings fired it; `item`: for the whole item and all its parts. */
  readonly reach: "part" | "item";
  /** The action itself and, of a family, every member. */
  readonly members: readonly string[];
}

/** One row of a rule's tests: facts, and whether the rule then holds. */
export interface RuleExample {
  readonly given: Readonly<Record<string, FactValue>>;
  readonly expect: "yes" | "no" | "unsure";
}

export interface Rule {
  readonly id: string;
  /** Place in the book. */
  readonly at: number;
  /** File it stands in, without its ending: `cleaning`, `people` … */
  readonly theme: string;
  readonly when: Condition;
  readonly holds: Check;
  readonly reads: readonly string[];
  /** `fire`: an unsure counts as yes; `hold`: the rule waits. */
  readonly unsure: "fire" | "hold";
  readonly consequences: readonly Consequence[];
  readonly reason: Omit<Reason, "fromUnsure">;
  readonly examples: readonly RuleExample[];
  /** True for a rule of the campaign folder. */
  readonly local: boolean;
}

export interface Derivation {
  readonly id: string;
  readonly condition: string;
  readonly when: Condition;
  readonly holds: Check;
  readonly reads: readonly string[];
  readonly note: string;
  readonly source: string;
  readonly sourceStatus: string;
}

/** How bad a condition is by the findings, worst first. */
export interface Grading {
  readonly condition: string;
  readonly grades: readonly {
    readonly severity: 0 | 1 | 2 | 3 | 4;
    readonly when: Condition;
    readonly holds: Check;
  }[];
}

/** Where an item may safely stay on any day, whatever was found; the first of the list that applies is its resting state. */
export interface Rest {
  readonly id: string;
  readonly says: string;
  readonly when: Condition;
  readonly holds: Check;
  /** Acts it stands for: none of them may be forbidden. */
  readonly acts: readonly string[];
}

/** One fact the rules may read: how it is said, and the values it can take. */
export interface FactKind {
  readonly says: string;
  readonly type: "yesNo" | "choice" | "list" | "number" | "text";
  readonly values: readonly string[];
  readonly unit: string;
}

/** A test of the vocabulary: what to ask, how, and what the asking costs. */
export interface Test {
  readonly id: string;
  readonly short: string;
  readonly question: string;
  readonly how: string;
  readonly answers: string;
  readonly who: string;
  readonly note: string;
  /** How near the test comes to the item, gentlest first: `notice`, `look`, `wait`, `handle`, `touch`, `wetting`. */
  readonly by: string;
  readonly minutes: number;
  /** Hours until the answer can be read; 0: at once. */
  readonly waitHours: number;
  /** A yes stops all work on the item until someone outside the team has answered. */
  readonly stop: boolean;
  /** Formats it is worth asking of; empty: every format. */
  readonly formats: readonly string[];
}

/** The rules ready to run: conditions in an order in which each is derived before it is read. */
export interface RuleBook {
  readonly derivations: readonly Derivation[];
  readonly rules: readonly Rule[];
  readonly rests: readonly Rest[];
  readonly gradings: readonly Grading[];
  /** Family name → its members, the family itself not among them. */
  readonly families: ReadonlyMap<string, readonly string[]>;
  /** Actions whose ban frees instead of guarding, e.g. a ban on quarantining what is no mould. */
  readonly freeing: ReadonlySet<string>;
  readonly requiredTests: Readonly<Record<string, readonly string[]>>;
  readonly endings: Readonly<Record<string, string>>;
  readonly facts: ReadonlyMap<string, FactKind>;
  readonly tests: ReadonlyMap<string, Test>;
  /** Condition → what its severity 0 to 4 looks like. */
  readonly severities: Readonly<Record<string, readonly string[]>>;
  /** Fact → its place among the values a check reads. */
  readonly places: ReadonlyMap<string, number>;
}

/** The published tables, as parsed JSON of whatever shape. */
export interface RuleTables {
  readonly derivations: unknown;
  /** Theme → the rules of its file. */
  readonly rules: Readonly<Record<string, unknown>>;
  readonly actions: unknown;
  readonly endings: unknown;
  readonly vocabulary: unknown;
  readonly sources: unknown;
  readonly facts: unknown;
  readonly rests: unknown;
  readonly severities: unknown;
}
