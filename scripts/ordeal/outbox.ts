import {
  closeSync,
  existsSync,
  fsyncSync,
  openSync,
  readFileSync,
  renameSync,
  truncateSync,
  writeSync,
} from "node:fs";
import type { LogEvent } from "../../src/core/log/event.ts";

/** Events of one device on its way to a server, in a file: one line each. What `put` has taken survives a kill. */
export interface Outbox {
  /** In the order in which they were written; the last one written is among them even when it was sent. */
  readonly events: readonly LogEvent[];
  put(event: LogEvent): void;
  /** Forgets all up to an event but the last one written, by which the device goes on. */
  sent(upTo: LogEvent): void;
}

export function openOutbox(path: string): Outbox {
  let events = readOutbox(path);
  let file = openSync(path, "a");
  return {
    get events() {
      return events;
    },
    put: (event) => {
      writeSync(file, lineOf(event));
      fsyncSync(file);
      events.push(event);
    },
    sent: (upTo) => {
      const last = events.length - 1;
      events = events.filter(({ number }, at) => number > upTo.number || at === last);
      const next = `${path}.next`;
      const fresh = openSync(next, "w");
      writeSync(fresh, events.map(lineOf).join(""));
      fsyncSync(fresh);
      renameSync(next, path);
      closeSync(file);
      file = fresh;
    },
  };
}

const lineOf = (event: LogEvent): string => `${JSON.stringify(event)}\n`;

/** A line without its end was cut off while it was written, and nobody was told it was taken: it is taken away. */
export function readOutbox(path: string): LogEvent[] {
  if (!existsSync(path)) return [];
  const text = readFileSync(path);
  const end = text.lastIndexOf(10) + 1;
  if (end < text.length) truncateSync(path, end);
  const lines = text.subarray(0, end).toString().split("\n");
  return lines.slice(0, -1).map((line) => JSON.parse(line) as LogEvent); // written by put
}
