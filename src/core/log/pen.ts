import { CLOCK_START, type Clock, compareClocks } from "./clock.ts";
import type { LogEvent } from "./event.ts";

/** What a device must know to write its next event. */
export interface Pen {
  readonly campaign: string;
  readonly device: string;
  /** Number, hash and id of its last event; 0 and empty before the first. */
  readonly number: number;
  readonly before: string;
  readonly lastId: string;
  readonly clock: Clock;
}

export const newPen = (campaign: string, device: string): Pen => ({
  campaign,
  device,
  number: 0,
  before: "",
  lastId: "",
  clock: CLOCK_START,
});

/** The pen of a device that wrote before, found again from its log. What it heard of other clocks is heard again with the next of their events. */
export function penOf(events: Iterable<LogEvent>, campaign: string, device: string): Pen {
  let last: LogEvent | undefined;
  let clock = CLOCK_START;
  for (const event of events)
    if (event.device === device) {
      if (last === undefined || event.number > last.number) last = event;
      if (compareClocks(event.clock, clock) > 0) clock = event.clock;
    }
  return last === undefined
    ? newPen(campaign, device)
    : { campaign, device, number: last.number, before: last.hash, lastId: last.id, clock };
}
