import { randomBytes } from "node:crypto";
import { CLOCK_START, hear } from "../../core/log/clock.ts";
import type { LogEvent } from "../../core/log/event.ts";
import { eventsOf } from "../../core/log/events-from.ts";
import type { ImportEntry } from "../../core/log/import-entries.ts";
import { newPen } from "../../core/log/pen.ts";
import type { Subject } from "../../core/log/state.ts";
import { subjectsOf } from "../../core/log/subjects.ts";
import type { Problem } from "../../core/outcome/problem.ts";
import type { Keep } from "../keep/keep.ts";
import { eventsIn } from "../keep/open-campaign.ts";

/** What one correction may name. */
const MOST_SUBJECTS = 200;

/**
 * Writes that of two entries with one id neither counts, unless the log says so already. Which of them is kept depends on which came first; that
 * neither counts does not, and the correction is carried on to every log that holds one of them.
 * @param twins entries that were set aside since another has their id   @param now milliseconds since 1970   @returns what went wrong
 */
export async function countNeither(
  keep: Keep,
  campaign: string,
  twins: readonly LogEvent[],
  now: number,
): Promise<readonly Problem[]> {
  if (twins.length === 0) return [];
  const known = await eventsIn(keep, campaign);
  const ids = new Set(twins.map(({ id }) => id));
  const same = [...known.filter(({ id }) => ids.has(id)), ...twins];
  const corrections = known.filter(({ kind }) => kind === "eventCorrected");
  const entries = [...ids].flatMap((id) => correctionsOf(id, same, corrections));
  const pen = {
    ...newPen(campaign, `twins-${randomBytes(4).toString("hex")}`),
    clock: hear(CLOCK_START, known, now).clock,
  };
  const written = eventsOf(entries, pen, { role: "lead" }, { now, random: randomBytes(10) }, new Map());
  const { refused } = await keep.append(written.events);
  return [...written.problems, ...refused];
}

/** What is not understood is filed nowhere that a correction could name. */
function correctionsOf(id: string, same: readonly LogEvent[], before: readonly LogEvent[]): ImportEntry[] {
  const said = new Set(
    before.flatMap(({ payload }) => (payload.event === id ? (payload.about as readonly Subject[]) : [])),
  );
  const subjects = new Set(same.filter((event) => event.id === id).flatMap(subjectsOf));
  const left = [...subjects].filter((subject) => !said.has(subject) && !subject.startsWith("strange:"));
  const corrections: ImportEntry[] = [];
  for (let at = 0; at < left.length; at += MOST_SUBJECTS)
    corrections.push({
      kind: "eventCorrected",
      payload: { event: id, about: left.slice(at, at + MOST_SUBJECTS) },
    });
  return corrections;
}
