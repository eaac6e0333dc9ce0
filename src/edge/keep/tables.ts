import type { Kysely, Transaction } from "kysely";
import type { Problem } from "../../core/outcome/problem.ts";

/** The tables, the same in either database. */
export interface KeepTables {
  leafward_event: {
    place: number;
    campaign: string;
    id: string;
    hash: string;
    device: string;
    number: number;
    /** The event whole, as JSON, its names in the order in which they came. */
    body: string;
  };
  leafward_snapshot: { campaign: string; place: number; bytes: Uint8Array };
  /** One row: the number of the last migration. */
  leafward_version: { number: number };
}

export type KeepDb = Kysely<KeepTables>;
export type KeepWork = Transaction<KeepTables>;

/** What the two databases do not have in common. */
export interface Base {
  readonly db: KeepDb;
  readonly where: string;
  /** The type of a column of bytes. */
  readonly bytes: "blob" | "bytea";
  /** Lets one writer at a time in, until its transaction ends. */
  enter(work: KeepWork): Promise<void>;
  /** What a failure of the disk or the line means for people; null: a fault of ours. */
  failureOf(error: unknown): Problem | null;
  close(): Promise<void>;
}
