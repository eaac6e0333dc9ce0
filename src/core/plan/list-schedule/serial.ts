import type { Network, TightWay } from "./project.ts";

/** What is in use of each resource at each moment; kept between schedules so that nothing is allocated in the search. */
export interface UseProfile {
  used: Int32Array;
  /** Moments written to since the last clearing. */
  written: number;
}

export const emptyProfile = (): UseProfile => ({ used: new Int32Array(0), written: 0 });

/** A way not chosen beforehand: the one that ends the task earliest is taken, the shorter of equals. */
export const EARLIEST_WAY = -1;

/**
 * Serial list scheduling: each task of the list as early as its predecessors and the resources allow.
 * @param list every task once, none before one it follows
 * @param ways of each task; those that are `EARLIEST_WAY` are chosen and written back
 * @param starts filled in   @returns the makespan
 * Source: Kelley 1963; Kolisch, EJOR 90 (1996), both from memory.
 */
export function scheduleList(
  network: Network,
  list: Int32Array,
  ways: Int32Array,
  starts: Int32Array,
  profile: UseProfile,
): number {
  profile.used.fill(0, 0, profile.written * network.capacities.length);
  profile.written = 0;
  let makespan = 0;
  for (let place = 0; place < list.length; place++) {
    const task = list[place] as number;
    const options = network.ways[task] as readonly TightWay[];
    let ready = 0;
    const before = network.before[task] as Int32Array;
    for (let n = 0; n < before.length; n++) {
      const one = before[n] as number;
      const way = (network.ways[one] as readonly TightWay[])[ways[one] as number] as TightWay;
      ready = Math.max(ready, (starts[one] as number) + way.duration);
    }
    if (ways[task] === EARLIEST_WAY) ways[task] = quickestEnd(network, options, ready, profile);
    const way = options[ways[task] as number] as TightWay;
    const start = earliestFit(network, way, ready, profile);
    occupy(network, way, start, profile);
    starts[task] = start;
    makespan = Math.max(makespan, start + way.duration);
  }
  return makespan;
}

function quickestEnd(
  network: Network,
  options: readonly TightWay[],
  ready: number,
  profile: UseProfile,
): number {
  let best = -1;
  let soonest = Number.POSITIVE_INFINITY;
  for (let at = 0; at < options.length; at++) {
    const way = options[at] as TightWay;
    if (!fitsAtAll(network, way)) continue;
    const end = earliestFit(network, way, ready, profile) + way.duration;
    const shorter = way.duration < ((options[best] as TightWay | undefined)?.duration ?? 0);
    if (end < soonest || (end === soonest && shorter)) [best, soonest] = [at, end];
  }
  return best;
}

const fitsAtAll = (network: Network, way: TightWay): boolean =>
  way.needs.every((need, n) => need <= (network.capacities[way.resources[n] as number] ?? 0));

/** First moment from `ready` on from which the way has all it needs for its whole length. Looks at no moment twice. */
function earliestFit(network: Network, way: TightWay, ready: number, profile: UseProfile): number {
  let start = ready;
  let seen = ready; // from start to here there is room
  for (;;) {
    const end = start + way.duration;
    let moment = Math.min(end, profile.written) - 1;
    while (moment >= seen && hasRoom(network, way, moment, profile)) moment--;
    if (moment < seen) return start;
    start = moment + 1;
    seen = end;
  }
}

function hasRoom({ capacities }: Network, way: TightWay, moment: number, { used }: UseProfile): boolean {
  const { resources, needs } = way;
  const row = moment * capacities.length;
  for (let n = 0; n < resources.length; n++) {
    const r = resources[n] as number;
    if ((used[row + r] as number) + (needs[n] as number) > (capacities[r] as number)) return false;
  }
  return true;
}

function occupy({ capacities }: Network, way: TightWay, start: number, profile: UseProfile): void {
  const { resources, needs, duration } = way;
  const end = start + duration;
  const width = capacities.length;
  if (end * width > profile.used.length) {
    const larger = new Int32Array(2 * end * width);
    larger.set(profile.used);
    profile.used = larger;
  }
  if (end > profile.written) profile.written = end;
  for (let moment = start; moment < end; moment++)
    for (let n = 0; n < resources.length; n++) {
      const cell = moment * width + (resources[n] as number);
      profile.used[cell] = (profile.used[cell] as number) + (needs[n] as number);
    }
}
