import type { Table } from "../columns.ts";
import { calendarTable } from "./calendar.ts";
import { deliveriesTable } from "./deliveries.ts";
import { findingsTable } from "./findings.ts";
import { itemsTable } from "./items.ts";
import { partsTable } from "./parts.ts";
import { peopleTable } from "./people.ts";
import { sessionsTable } from "./sessions.ts";
import { storesTable } from "./stores.ts";
import { wardTable } from "./ward.ts";

/** The tables of a campaign, in the order they are read and listed. */
export const allTables: readonly Table[] = [
  itemsTable,
  partsTable,
  findingsTable,
  peopleTable,
  calendarTable,
  storesTable,
  deliveriesTable,
  sessionsTable,
  wardTable,
];
