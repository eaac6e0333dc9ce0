import type { ListedSchedule } from "./justify.ts";
import type { Network } from "./project.ts";
import { EARLIEST_WAY } from "./serial.ts";

/** A list to schedule, with the way of each task or `EARLIEST_WAY`. */
export interface Draft {
  readonly list: Int32Array;
  readonly ways: Int32Array;
}

/** Chance that two neighbours of a list change places. */
const SWAP = 0.1;
/** Chance that a task with several ways forgets the one it has. */
const FORGET = 0.15;
/** Share of the list that comes from the father: this much, and up to so much more. */
const MIDDLE = { least: 0.2, more: 0.4 };

/**
 * The mother's list with a middle piece in the father's order, then a few neighbours swapped; each task brings its way along.
 * No arrow is crossed, because none is in either parent.
 * Source: two-point crossover of activity lists, Hartmann, Naval Research Logistics 45 (1998), from memory.
 */
export function childOf(
  network: Network,
  mother: ListedSchedule,
  father: ListedSchedule,
  draw: () => number,
): Draft {
  const { count } = network;
  const from = Math.floor(draw() * count);
  const to = Math.min(count, from + Math.floor(count * (MIDDLE.least + MIDDLE.more * draw())));
  const taken = new Uint8Array(count);
  const list = new Int32Array(count);
  const ways = new Int32Array(count);
  let place = 0;
  const take = (parent: ListedSchedule, upTo: number): void => {
    for (let n = 0; n < count && place < upTo; n++) {
      const task = parent.list[n] as number;
      if (taken[task]) continue;
      taken[task] = 1;
      ways[task] = parent.ways[task] as number;
      list[place++] = task;
    }
  };
  take(mother, from);
  take(father, to);
  take(mother, count);
  swapSome(network, list, draw);
  return { list, ways: forgetful(network, ways, draw) };
}

function swapSome({ after }: Network, list: Int32Array, draw: () => number): void {
  for (let n = 1; n < list.length; n++) {
    if (draw() >= SWAP) continue;
    const [left, right] = [list[n - 1] as number, list[n] as number];
    if ((after[left] as Int32Array).includes(right)) continue;
    list[n - 1] = right;
    list[n] = left;
  }
}

/** A few tasks with several ways will choose again. */
export const forgetful = (network: Network, ways: Int32Array, draw: () => number): Int32Array =>
  ways.map((way, task) => ((network.ways[task]?.length ?? 1) > 1 && draw() < FORGET ? EARLIEST_WAY : way));

/** The tasks by merit, the highest first among those whose predecessors stand already. */
export function listByMerit(network: Network, merit: (task: number) => number): Int32Array {
  const waits = Int32Array.from(network.before, (tasks) => tasks.length);
  const merits = Float64Array.from(network.ways.keys(), merit);
  const open = [...waits.keys()].filter((task) => waits[task] === 0);
  const list = new Int32Array(network.count);
  for (let place = 0; place < list.length; place++) {
    let best = 0;
    for (let n = 1; n < open.length; n++)
      if ((merits[open[n] as number] as number) > (merits[open[best] as number] as number)) best = n;
    const [task = 0] = open.splice(best, 1);
    list[place] = task;
    for (const next of network.after[task] as Int32Array) {
      waits[next] = (waits[next] as number) - 1;
      if (waits[next] === 0) open.push(next);
    }
  }
  return list;
}
