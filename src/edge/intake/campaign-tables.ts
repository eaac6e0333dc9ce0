import type { Problem } from "../../core/outcome/problem.ts";
import type { Table } from "./columns.ts";
import type { TableRead } from "./read-table.ts";
import type { calendarTable } from "./tables/calendar.ts";
import type { deliveriesTable } from "./tables/deliveries.ts";
import type { findingsTable } from "./tables/findings.ts";
import type { itemsTable } from "./tables/items.ts";
import type { partsTable } from "./tables/parts.ts";
import type { peopleTable } from "./tables/people.ts";
import type { sessionsTable } from "./tables/sessions.ts";
import type { storesTable } from "./tables/stores.ts";
import type { wardTable } from "./tables/ward.ts";

type Read<T> = T extends Table<infer C> ? TableRead<C> : never;

/** Every table of the campaign as read, before rows are joined. */
export interface CampaignTables {
  readonly items: Read<typeof itemsTable>;
  readonly parts: Read<typeof partsTable>;
  readonly findings: Read<typeof findingsTable>;
  readonly people: Read<typeof peopleTable>;
  readonly calendar: Read<typeof calendarTable>;
  readonly stores: Read<typeof storesTable>;
  readonly deliveries: Read<typeof deliveriesTable>;
  readonly sessions: Read<typeof sessionsTable>;
  readonly ward: Read<typeof wardTable>;
}

/** Things built from rows, how many rows went into them, and what stood in the way. */
export interface Built<T> {
  readonly values: readonly T[];
  readonly used: number;
  readonly problems: readonly Problem[];
}
