import type { LogEvent } from "../../src/core/log/event.ts";
import { openFileKeep } from "../../src/edge/keep/open-keep.ts";
import { newWriter, noteOn } from "./writer.ts";

/** Makes a log file with notes of one tablet.   @returns what is in it */
export async function writtenLog(path: string, count: number): Promise<LogEvent[]> {
  const writer = newWriter("tablet-1");
  const events = Array.from({ length: count }, (_, i) => writer.write(noteOn(`B-${i % 40}`, 20)));
  const opened = await openFileKeep(path);
  if (!opened.ok) throw new Error(JSON.stringify(opened.problems));
  await opened.value.append(events);
  await opened.value.close();
  return events;
}
