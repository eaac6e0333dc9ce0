import type { LogEvent } from "../../core/log/event.ts";
import { readEvent } from "../../core/log/read-event.ts";
import type { Problem } from "../../core/outcome/problem.ts";

/** What stands against an event by itself: its envelope, its hash, and its payload where its kind is known in this version.
 *  What a newer Leafward wrote is kept as it is. */
export function faultsOf(event: LogEvent): readonly Problem[] {
  const read = readEvent(event);
  return read.ok ? [] : read.problems;
}

/** Another event has this id. */
export const idTaken = ({ id, device }: LogEvent): Problem => ({
  code: "event-twice",
  severity: "ask",
  got: id,
  expected: device,
  remedy:
    "The one that is kept stands; nothing of this batch was taken. Look on that device what was written, and write it again as a new entry.",
});

/** Somebody else wrote meanwhile; what was to be written may not be right any more. */
export const wentOn = (where: string): Problem => ({
  code: "log-went-on",
  severity: "stop",
  file: where,
  remedy: "Nothing of this was written. Do it again when nobody else writes.",
});

/** What is to be looked at among events just taken. Numbers that are missing are no fault: they may be on their way.
 *  @param events of one device   @param here number → hashes of what is kept of that device, these events among it */
export const chainNotes = (
  events: readonly LogEvent[],
  here: ReadonlyMap<number, readonly string[]>,
): Problem[] =>
  events.flatMap((event) => {
    const before = event.number === 1 ? [""] : here.get(event.number - 1);
    return [
      ...((here.get(event.number)?.length ?? 0) > 1 ? [forked(event)] : []),
      ...(before && !before.includes(event.before) ? [torn(event)] : []),
    ];
  });

const forked = ({ device, number }: LogEvent): Problem => ({
  code: "chain-fork",
  severity: "ask",
  got: "two entries",
  expected: `number ${number} of ${device}`,
  remedy:
    "Both are kept. Most likely a device went on from an old copy: give it a new device name before it writes again.",
});

const torn = ({ device, number }: LogEvent): Problem => ({
  code: "chain-torn",
  severity: "ask",
  got: `number ${number}`,
  expected: device,
  remedy:
    "It is kept. Take the log again from that device, or from a copy, so that the one before it is found.",
});
