import type { Problem } from "../outcome/problem.ts";

/** Hybrid logical clock: the wall clock, and a count where it stands still or runs back.
 *  Source: Kulkarni, Demirbas, Madappa, Avva and Leone, Logical Physical Clocks (2014), from memory. */
export interface Clock {
  /** Milliseconds since 1970. */
  readonly wall: number;
  readonly counter: number;
}

export const CLOCK_START: Clock = { wall: 0, counter: 0 };
/** A clock further ahead than this is not followed. Time zones do not matter to it, so a day is a clock set wrong. */
export const MOST_AHEAD_MS = 86_400_000;

/** The last of what a ULID can hold: a stamp beyond it is no time. Source: ULID specification (github.com/ulid/spec), section Encoding. */
export const LAST_WALL = 2 ** 48 - 1;
export const MOST_COUNTER = 2 ** 32 - 1;

export const compareClocks = (a: Clock, b: Clock): number => a.wall - b.wall || a.counter - b.counter;

/** The stamp after `last`: always later than it, whatever the wall clock says. */
export function tick(last: Clock, now: number): Clock {
  const least = last.counter < MOST_COUNTER ? last.wall : last.wall + 1;
  const wall = Math.max(least, Math.floor(now));
  return { wall, counter: wall === last.wall ? last.counter + 1 : 0 };
}

export interface Heard {
  readonly clock: Clock;
  /** Devices whose clock is more than a day ahead of ours: their events count, their clock does not. */
  readonly problems: readonly Problem[];
}

/** What our clock is after seeing others' events: never behind a stamp we saw, and never dragged by a clock more than a day ahead of ours. */
export function hear(
  own: Clock,
  events: Iterable<{ readonly device: string; readonly clock: Clock }>,
  now: number,
): Heard {
  let clock = own;
  const ahead = new Map<string, number>();
  for (const event of events)
    if (event.clock.wall > now + MOST_AHEAD_MS)
      ahead.set(event.device, Math.max(ahead.get(event.device) ?? 0, event.clock.wall));
    else if (compareClocks(event.clock, clock) > 0) clock = event.clock;
  const problems = [...ahead]
    .sort(([a], [b]) => (a < b ? -1 : 1))
    .map(([device, wall]) => clockAhead(device, wall, now));
  return { clock, problems };
}

const clockAhead = (device: string, wall: number, now: number): Problem => ({
  code: "clock-ahead",
  severity: "note",
  got: device,
  expected: `${dayOf(wall)} there, ${dayOf(now)} here`,
  remedy:
    "Its entries are kept. Look at both clocks and set the wrong one right; if it was the other, begin there as a new device.",
});

const dayOf = (ms: number): string => new Date(ms).toISOString().slice(0, 10);
