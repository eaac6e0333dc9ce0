/** What is used of the package `pg`, which has no types of its own. */
declare module "pg" {
  import type { PostgresPool } from "kysely";

  interface Line {
    on(event: "error", listener: (error: Error) => void): this;
  }
  export interface Pool extends PostgresPool {
    on(event: "error", listener: (error: Error) => void): this;
    on(event: "connect", listener: (line: Line) => void): this;
  }
  export const Client: new (settings: {
    connectionString: string;
  }) => {
    connect(): Promise<void>;
    query(text: string, values?: readonly unknown[]): Promise<unknown>;
    end(): Promise<void>;
  };
  export const Pool: new (settings: {
    connectionString: string;
    max: number;
    connectionTimeoutMillis: number;
  }) => Pool;
}
