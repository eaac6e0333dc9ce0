/** One thing that stands in the way, as data: the sentence is made from it in `say/`. */
export interface Problem {
  /** Stable code, one sentence in the catalogue for each, e.g. `unknown-word`. */
  readonly code: string;
  /** `stop`: the row or file cannot be used until mended; `ask`: it was set aside until a person decides; `note`: used, but look. */
  readonly severity: "stop" | "ask" | "note";
  /** Where: file, then line (1 is the first line of the file), then column heading; what is not known is left out. */
  readonly file?: string;
  readonly line?: number;
  readonly column?: string;
  /** The rule or table entry, where a fault stands in the rules. */
  readonly rule?: string;
  /** The value as it was received, always kept. */
  readonly got?: string;
  /** What would have been right, in plain words. */
  readonly expected?: string;
  /** What to do now, in plain words. */
  readonly remedy: string;
}

/** An expected failure is a value; an exception means a fault of ours. */
export type Outcome<T> =
  | { readonly ok: true; readonly value: T }
  | { readonly ok: false; readonly problems: readonly Problem[] };

export const done = <T>(value: T): Outcome<T> => ({ ok: true, value });
export const refused = (...problems: Problem[]): Outcome<never> => ({ ok: false, problems });
