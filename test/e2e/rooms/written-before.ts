import { randomBytes } from "node:crypto";
import { CLOCK_START } from "../../../src/core/log/clock.ts";
import type { LogEvent } from "../../../src/core/log/event.ts";
import { newPen } from "../../../src/core/log/pen.ts";
import { type Entry, writeEvent } from "../../../src/core/log/write-event.ts";
import { publishedRuleBook } from "../../../src/edge/rule-book.ts";
import type { ARealHouse } from "./a-house.ts";

/** Writes entries into a house's log as another device, before anybody comes in. */
export async function writtenBefore(house: ARealHouse, ...entries: readonly Omit<Entry, "who">[]) {
  const [campaign = ""] = await house.keep.campaigns();
  let pen = { ...newPen(campaign, "earlier"), clock: CLOCK_START };
  const events: LogEvent[] = [];
  for (const entry of entries) {
    const full = { ...entry, who: { role: "lead" } } as Entry; // kind and payload belong together already
    const moment = { now: Date.now(), random: randomBytes(10) };
    const written = writeEvent(pen, full, moment, publishedRuleBook().tests);
    if (!written.ok) throw new Error(JSON.stringify(written.problems));
    events.push(written.value.event);
    pen = written.value.pen;
  }
  const { refused } = await house.keep.append(events);
  if (refused.length > 0) throw new Error(JSON.stringify(refused));
  await house.stop();
  await house.startAgain();
}
