import type { Assignment, Plan, SheetRow } from "../../../core/plan/plan.ts";
import { factOf, putFact, type TabletDatabase } from "./database.ts";
import { ask } from "./server-line.ts";

/** What the last plan has people do in its first days: what Bench, Camera and Shelf lay out. */
export interface PlannedWork extends Pick<Plan, "planFrom" | "personDays" | "itemDays"> {
  readonly assignments: readonly Assignment[];
  readonly clock: readonly SheetRow[];
}

/** The planned work as last heard, asked for anew where the server is reached; null: there is no plan, or it was never heard. */
export async function heardWork(database: TabletDatabase): Promise<PlannedWork | null> {
  const reached = await ask<PlannedWork | "">("/api/work");
  if (reached.kind !== "answer") return savedWork(database);
  const work = reached.value === "" ? null : reached.value; // nothing: there is no plan yet
  await putFact(database, "work", work);
  return work;
}

export const savedWork = (database: TabletDatabase): Promise<PlannedWork | null> =>
  factOf<PlannedWork>(database, "work");
