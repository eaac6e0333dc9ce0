import type { Json } from "../../../src/core/log/canonical-json.ts";
import { type Clock, tick } from "../../../src/core/log/clock.ts";
import { hashOf, type LogEvent } from "../../../src/core/log/event.ts";
import { nextUlid } from "../../../src/core/log/ulid.ts";

export const NOON = Date.UTC(2026, 5, 1, 12);

/** An event with a right hash, whatever its payload says. */
export function sealed(event: Omit<LogEvent, "hash">): LogEvent {
  return { ...event, hash: hashOf(event) };
}

interface Written {
  readonly kind?: string;
  readonly version?: number;
  readonly payload: { readonly [key: string]: Json };
  readonly seen?: readonly string[];
}

/** A device that writes one event after the other, a minute apart unless told the time. */
export function deviceCalled(device: string, start = NOON) {
  let clock: Clock = { wall: 0, counter: 0 };
  let number = 0;
  let before = "";
  let last = "";
  let now = start;
  const chance = Uint8Array.from(
    { length: 10 },
    (_, i) => (device.charCodeAt(i % device.length) + 7 * i) % 256,
  );
  return {
    write({ kind = "noteWritten", version = 1, payload, seen = [] }: Written, at?: number): LogEvent {
      now = at ?? now + 60_000;
      clock = tick(clock, now);
      last = nextUlid(clock.wall, chance, last);
      number++;
      const event = sealed({
        id: last,
        campaign: "saltmere",
        device,
        number,
        clock,
        who: { role: "scribe", person: "MQ" },
        kind,
        version,
        payload,
        seen,
        before,
      });
      before = event.hash;
      return event;
    },
    hear(heard: Clock): void {
      clock = heard;
    },
  };
}

/** Notes on items, one for each text. */
export const notes = (device: string, ...texts: readonly string[]): LogEvent[] => {
  const writer = deviceCalled(device);
  return texts.map((text) => writer.write({ payload: { item: "B-001", part: "", text } }));
};
