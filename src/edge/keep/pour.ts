import type { LogEvent } from "../../core/log/event.ts";
import type { Problem } from "../../core/outcome/problem.ts";
import { allEvents, type Keep, KeepFault } from "./keep.ts";

export interface Poured {
  readonly added: number;
  readonly known: number;
  /** What was not taken, or could not be read. */
  readonly problems: readonly Problem[];
}

const BATCH = 500;

/** Takes over from one keep whatever the other has not. An entry that is refused is left out, and those around it are taken. */
export async function pour(from: Keep, to: Keep): Promise<Poured> {
  let [added, known] = [0, 0];
  const problems: Problem[] = [];
  async function take(events: readonly LogEvent[]): Promise<void> {
    const answer = await to.append(events);
    added += answer.added;
    known += answer.known;
    if (answer.refused.length === 0) return;
    const [first] = answer.refused;
    if (first?.code.startsWith("keep-")) throw new KeepFault(first, null); // of the place, not of an entry
    if (events.length === 1) problems.push(...answer.refused);
    else for (const event of events) await take([event]);
  }
  try {
    for (const campaign of await from.campaigns()) {
      let batch: LogEvent[] = [];
      for await (const { event } of allEvents(from, campaign)) {
        batch.push(event);
        if (batch.length === BATCH) {
          await take(batch);
          batch = [];
        }
      }
      if (batch.length > 0) await take(batch);
    }
  } catch (error) {
    if (!(error instanceof KeepFault)) throw error;
    problems.push(error.problem);
  }
  return { added, known, problems };
}
