import type { Network, TightWay } from "./project.ts";
import { emptyProfile, scheduleList, type UseProfile } from "./serial.ts";

/** An order of the tasks with the schedule it gives. */
export interface ListedSchedule {
  /** The tasks by start. */
  readonly list: Int32Array;
  readonly ways: Int32Array;
  readonly starts: Int32Array;
  readonly makespan: number;
}

/** Both directions of a project and the space its schedules are built in. */
export interface Workbench {
  readonly forwards: Network;
  readonly backwards: Network;
  readonly profile: UseProfile;
}

export const workbenchOf = (networks: { forwards: Network; backwards: Network }): Workbench => ({
  ...networks,
  profile: emptyProfile(),
});

/** List schedules one call of `scheduledBothWays` builds. */
export const PASSES = 3;

/**
 * Schedules a list, then pushes every task as late as it will go, then as early: never longer than the first schedule, often shorter.
 * The ways chosen in the first pass are kept.
 * Source: forward-backward improvement, Tormos and Lova, Annals of OR 102 (2001); justification, Valls, Ballestín and Quintanilla,
 * EJOR 165 (2005); both from memory.
 */
export function scheduledBothWays(bench: Workbench, list: Int32Array, ways: Int32Array): ListedSchedule {
  const starts = new Int32Array(list.length);
  let order = list;
  let makespan = scheduleList(bench.forwards, order, ways, starts, bench.profile);
  for (const network of [bench.backwards, bench.forwards]) {
    order = latestEndFirst(network, order, ways, starts, makespan);
    makespan = scheduleList(network, order, ways, starts, bench.profile);
  }
  return { list: order, ways, starts, makespan };
}

/** The tasks from the last end to the first; equal ends in the list's order turned round, so that no arrow is crossed. */
function latestEndFirst(
  { ways: options }: Network,
  list: Int32Array,
  ways: Int32Array,
  starts: Int32Array,
  makespan: number,
): Int32Array {
  const endOf = (task: number): number =>
    (starts[task] as number) +
    ((options[task] as readonly TightWay[])[ways[task] as number] as TightWay).duration;
  const place = new Int32Array(makespan + 2);
  for (let n = 0; n < list.length; n++) {
    const bucket = makespan - endOf(list[n] as number) + 1;
    place[bucket] = (place[bucket] as number) + 1;
  }
  for (let end = 1; end <= makespan; end++) place[end] = (place[end] as number) + (place[end - 1] as number);
  const order = new Int32Array(list.length);
  for (let n = list.length - 1; n >= 0; n--) {
    const task = list[n] as number;
    const bucket = makespan - endOf(task);
    order[place[bucket] as number] = task;
    place[bucket] = (place[bucket] as number) + 1;
  }
  return order;
}
