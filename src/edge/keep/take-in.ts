import { randomBytes } from "node:crypto";
import type { Campaign } from "../../core/items/campaign.ts";
import { CLOCK_START, hear } from "../../core/log/clock.ts";
import { eventsOf } from "../../core/log/events-from.ts";
import { newPen } from "../../core/log/pen.ts";
import type { Tests } from "../../core/log/write-event.ts";
import type { Problem } from "../../core/outcome/problem.ts";
import type { Keep } from "./keep.ts";
import { campaignHere, codeOf, eventsIn } from "./open-campaign.ts";
import { type SheetChanges, sheetChanges, sheetsDevice } from "./sheet-changes.ts";

export interface TakenIn {
  readonly changes: SheetChanges;
  /** Entries written now. */
  readonly added: number;
  /** Entries in the log then. */
  readonly entries: number;
  readonly refused: readonly Problem[];
  /** Words left out, clocks that do not fit. */
  readonly problems: readonly Problem[];
}

/** Writes into the log what the sheets say otherwise than when they were last taken in, all or none.
 *  @param now milliseconds since 1970   @param look only tells what would be written */
export async function takeIn(
  keep: Keep,
  sheets: Campaign,
  tests: Tests,
  now: number,
  look = false,
): Promise<TakenIn> {
  const campaign = (await campaignHere(keep, sheets)) ?? codeOf(sheets);
  const known = await eventsIn(keep, campaign);
  const changes = sheetChanges(known, sheets);
  const nothing = { changes, added: 0, entries: known.length, refused: [], problems: [] };
  if (look || changes.entries.length === 0) return nothing;
  const { clock, problems } = hear(CLOCK_START, known, now);
  const pen = { ...newPen(campaign, sheetsDevice(randomBytes(4))), clock };
  const written = eventsOf(changes.entries, pen, { role: "lead" }, { now, random: randomBytes(10) }, tests);
  const { added, refused } = await keep.append(written.events);
  return {
    changes,
    added,
    entries: known.length + added,
    refused,
    problems: [...problems, ...written.problems],
  };
}
