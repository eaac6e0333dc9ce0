import { randomBytes } from "node:crypto";
import type { LogEvent } from "../../src/core/log/event.ts";
import { newPen, type Pen } from "../../src/core/log/pen.ts";
import { type Entry, type Tests, writeEvent } from "../../src/core/log/write-event.ts";

export const CAMPAIGN = "ordeal";
const TESTS: Tests = new Map([["wet", { answers: "yes/no/unsure" }]]);

/** A device that writes. */
export interface Writer {
  readonly device: string;
  /** @param now what its clock says, ms since 1970 */
  write(entry: Entry, now?: number): LogEvent;
}

export const newWriter = (device: string): Writer => writerFrom(newPen(CAMPAIGN, device));

/** A device that goes on writing where it was. */
export function writerFrom(from: Pen): Writer {
  let pen = from;
  return {
    device: from.device,
    write: (entry, now = Date.now()) => {
      const written = writeEvent(pen, entry, { now, random: randomBytes(10) }, TESTS);
      if (!written.ok) throw new Error(JSON.stringify(written.problems));
      pen = written.value.pen;
      return written.value.event;
    },
  };
}

const WHO = { role: "scribe", person: "MQ" } as const;
const LINE = "A line of the harbour ledger. ";

export const noteOn = (item: string, lines = 2): Entry => ({
  kind: "noteWritten",
  payload: { item, part: "", text: LINE.repeat(lines).trim() },
  who: WHO,
});
