import { randomBytes } from "node:crypto";
import type { Campaign } from "../../core/items/campaign.ts";
import { disagreementsOf } from "../../core/log/campaign-of.ts";
import { CLOCK_START, hear } from "../../core/log/clock.ts";
import type { LogEvent } from "../../core/log/event.ts";
import { eventsOf } from "../../core/log/events-from.ts";
import type { Disagreement } from "../../core/log/findings-now.ts";
import { fold } from "../../core/log/fold.ts";
import { newPen } from "../../core/log/pen.ts";
import type { Tests } from "../../core/log/write-event.ts";
import type { Problem } from "../../core/outcome/problem.ts";
import { allEvents, type Keep } from "./keep.ts";
import { campaignHere, codeOf } from "./open-campaign.ts";
import { type SheetChanges, sheetChanges, sheetsDevice } from "./sheet-changes.ts";

export interface TakenIn {
  readonly changes: SheetChanges;
  /** Entries written now. */
  readonly added: number;
  /** Entries in the log then. */
  readonly entries: number;
  readonly refused: readonly Problem[];
  /** Answers in the log then that contradict and wait to be settled. */
  readonly disagreements: readonly Disagreement[];
  /** Words left out, clocks that do not fit. */
  readonly problems: readonly Problem[];
}

/** How often it is begun again where others write meanwhile. */
const MOST_TIMES = 20;

/** Writes into the log what the sheets say otherwise than when they were last taken in, all or none; two at once write it once.
 *  @param now milliseconds since 1970   @param look only tells what would be written */
export async function takeIn(
  keep: Keep,
  sheets: Campaign,
  tests: Tests,
  now: number,
  look = false,
): Promise<TakenIn> {
  for (let time = 1; ; time++) {
    const taken = await takeOnce(keep, sheets, tests, now, look);
    if (taken.refused[0]?.code !== "log-went-on" || time === MOST_TIMES) return taken;
  }
}

async function takeOnce(
  keep: Keep,
  sheets: Campaign,
  tests: Tests,
  now: number,
  look: boolean,
): Promise<TakenIn> {
  const campaign = (await campaignHere(keep, sheets)) ?? codeOf(sheets);
  const known: LogEvent[] = [];
  let last = 0;
  for await (const { place, event } of allEvents(keep, campaign)) {
    known.push(event);
    last = place;
  }
  const changes = sheetChanges(known, sheets);
  const state = fold(known);
  const stand = { disagreements: disagreementsOf(state), refused: [], problems: [] };
  const nothing = { ...stand, changes, added: 0, entries: known.length };
  if (look || changes.entries.length === 0) return nothing;
  const { clock, problems } = hear(CLOCK_START, known, now);
  const pen = { ...newPen(campaign, sheetsDevice(randomBytes(4))), clock };
  const written = eventsOf(changes.entries, pen, { role: "lead" }, { now, random: randomBytes(10) }, tests);
  const { added, refused } = await keep.append(written.events, last);
  return {
    changes,
    added,
    entries: known.length + added,
    disagreements: disagreementsOf(fold(written.events, state)),
    refused,
    problems: [...problems, ...written.problems],
  };
}
