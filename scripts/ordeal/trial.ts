/** What a trial showed. */
export interface Shown {
  /** What was done and found, in one line. */
  readonly line: string;
  /** What ought not to be; none: it was passed. */
  readonly faults: readonly string[];
  /** Why it could not be tried here. */
  readonly skipped?: true;
}

/** How much of it: the whole ordeal, or the short one among the claims. */
export interface Size {
  readonly serverKills: number;
  readonly tabletKills: number;
  /** Kills of the server over PostgreSQL, and of PostgreSQL itself. */
  readonly overDatabase: number;
  readonly databaseKills: number;
  readonly outbox: number;
  readonly linkDropsMs: number;
}

export interface Ground {
  /** An empty folder. */
  readonly folder: string;
  readonly size: Size;
  readonly seed: number;
}

export interface Trial {
  readonly name: string;
  run(ground: Ground): Promise<Shown>;
}

export const skipped = (why: string): Shown => ({ line: why, faults: [], skipped: true });

/** @returns the words when it is not so */
export const unless = (isSo: boolean, words: string): string[] => (isSo ? [] : [words]);
