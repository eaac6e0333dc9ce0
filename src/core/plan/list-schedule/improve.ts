import { seeded } from "../chance.ts";
import { type ListedSchedule, PASSES, scheduledBothWays, type Workbench, workbenchOf } from "./justify.ts";
import {
  leastMakespan,
  type Network,
  networksOf,
  type Project,
  type ProjectSchedule,
  tailsOf,
} from "./project.ts";
import { EARLIEST_WAY } from "./serial.ts";

export interface SearchSettings {
  /** List schedules built at most; the search is counted, not timed, so that it ends alike everywhere. */
  readonly schedules: number;
  readonly population: number;
  readonly seed: number;
  /** Asked once a generation; false ends the search. */
  readonly mayGoOn?: () => boolean;
}

/** The best schedule found, a makespan nothing can beat, and the list schedules built on the way. */
export interface FoundSchedule extends ProjectSchedule {
  readonly floor: number;
  readonly schedules: number;
}

interface Search {
  readonly bench: Workbench;
  readonly settings: SearchSettings;
  readonly floor: number;
  readonly draw: () => number;
  /** Longest chain from each task to the end: who has the longest goes first. */
  readonly tails: Int32Array;
  best: ListedSchedule | null;
  built: number;
}

/** Generations without a shorter schedule after which the population is drawn anew. */
const PATIENCE = 12;
/** Chance that two neighbours of a child's list change places, and that a task with several ways forgets the one it has. */
const SWAP = 0.05;
const FORGET = 0.05;

/**
 * A short schedule: lists drawn by slack, then bred: each child takes a middle piece of one parent's order, every schedule is pushed to
 * and fro, and the shortest live on; a population that stands still is drawn anew around the best.
 * Source: Hartmann, Naval Research Logistics 45 (1998), for the crossing of lists; from memory. The rest is our own tuning.
 */
export function scheduleProject(project: Project, settings: SearchSettings): FoundSchedule {
  const bench = workbenchOf(networksOf(project));
  const search: Search = {
    bench,
    settings,
    floor: leastMakespan(bench.forwards),
    draw: seeded(settings.seed),
    tails: tailsOf(bench.forwards),
    best: null,
    built: 0,
  };
  let best = firstBest(search);
  while (!isOver(search)) best = breed(search);
  return {
    starts: [...best.starts],
    ways: [...best.ways],
    makespan: best.makespan,
    floor: search.floor,
    schedules: search.built,
  };
}

const isOver = (search: Search): boolean =>
  search.built >= search.settings.schedules ||
  (search.best?.makespan ?? Number.POSITIVE_INFINITY) <= search.floor ||
  search.settings.mayGoOn?.() === false;

/** The plainest list: longest chain to the end first. */
function firstBest(search: Search): ListedSchedule {
  const list = drawnList(search.bench.forwards, (task) => search.tails[task] as number);
  return tried(search, list, freeWays(search));
}

function tried(search: Search, list: Int32Array, ways: Int32Array): ListedSchedule {
  const schedule = scheduledBothWays(search.bench, list, ways);
  search.built += PASSES;
  if (!search.best || schedule.makespan < search.best.makespan) search.best = schedule;
  return schedule;
}

const freeWays = ({ bench: { forwards } }: Search): Int32Array =>
  Int32Array.from(forwards.ways, (ways) => (ways.length === 1 ? 0 : EARLIEST_WAY));

/** Draws a population and breeds it until it stands still. */
function breed(search: Search): ListedSchedule {
  const { population: size } = search.settings;
  let population: ListedSchedule[] = [];
  while (population.length < size && !isOver(search)) population.push(drawn(search, population.length));
  for (let still = 0; still < PATIENCE && !isOver(search); still++) {
    const before = search.best?.makespan ?? 0;
    population = nextGeneration(search, population);
    if ((search.best?.makespan ?? 0) < before) still = -1;
  }
  return search.best as ListedSchedule;
}

/** Half of a new population by slack, half near the best schedule so far. */
function drawn(search: Search, at: number): ListedSchedule {
  const { bench, draw, tails, best } = search;
  const near = best && at % 2 === 1 ? placesIn(best.list) : null;
  const merit = near
    ? (task: number): number => -(near[task] as number) - draw() * 0.2 * tails.length
    : (task: number): number => (tails[task] as number) * (0.7 + 0.6 * draw());
  return tried(
    search,
    drawnList(bench.forwards, merit),
    near && best ? forgetful(search, best.ways) : freeWays(search),
  );
}

function placesIn(list: Int32Array): Int32Array {
  const places = new Int32Array(list.length);
  list.forEach((task, place) => {
    places[task] = place;
  });
  return places;
}

/** The tasks by merit, the highest first among those whose predecessors stand already. */
function drawnList(network: Network, merit: (task: number) => number): Int32Array {
  const waits = Int32Array.from(network.before, (tasks) => tasks.length);
  const merits = Float64Array.from(network.ways.keys(), merit);
  const open = [...waits.keys()].filter((task) => waits[task] === 0);
  const list = new Int32Array(network.count);
  for (let place = 0; place < list.length; place++) {
    let at = 0;
    for (let n = 1; n < open.length; n++)
      if ((merits[open[n] as number] as number) > (merits[open[at] as number] as number)) at = n;
    const [task = 0] = open.splice(at, 1);
    list[place] = task;
    for (const next of network.after[task] as Int32Array) {
      waits[next] = (waits[next] as number) - 1;
      if (waits[next] === 0) open.push(next);
    }
  }
  return list;
}

function nextGeneration(search: Search, population: readonly ListedSchedule[]): ListedSchedule[] {
  const { draw } = search;
  const mixed = shuffled(population, draw);
  const all = [...population];
  for (let n = 0; n + 1 < mixed.length && !isOver(search); n += 2) {
    const [mother, father] = [mixed[n] as ListedSchedule, mixed[n + 1] as ListedSchedule];
    all.push(child(search, mother, father), child(search, father, mother));
  }
  all.sort((a, b) => a.makespan - b.makespan);
  return distinct(all).slice(0, search.settings.population);
}

function shuffled<T>(list: readonly T[], draw: () => number): T[] {
  const mixed = [...list];
  for (let n = mixed.length - 1; n > 0; n--) {
    const other = Math.floor(draw() * (n + 1));
    [mixed[n], mixed[other]] = [mixed[other] as T, mixed[n] as T];
  }
  return mixed;
}

/** One of each: schedules with the same starts are the same. */
function distinct(schedules: readonly ListedSchedule[]): ListedSchedule[] {
  const seen = new Set<string>();
  return schedules.filter(({ starts }) => {
    const key = starts.join();
    if (seen.has(key)) return false;
    seen.add(key);
    return true;
  });
}

function child(search: Search, mother: ListedSchedule, father: ListedSchedule): ListedSchedule {
  const { draw } = search;
  const count = mother.list.length;
  const from = Math.floor(draw() * count);
  const length = Math.floor(count * (0.2 + 0.4 * draw()));
  const to = Math.min(count, from + length);
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
  swapSome(search, list);
  return tried(search, list, forgetful(search, ways));
}

function swapSome({ bench, draw }: Search, list: Int32Array): void {
  for (let n = 1; n < list.length; n++) {
    if (draw() >= SWAP) continue;
    const [left, right] = [list[n - 1] as number, list[n] as number];
    if ((bench.forwards.after[left] as Int32Array).includes(right)) continue;
    list[n - 1] = right;
    list[n] = left;
  }
}

function forgetful({ bench, draw }: Search, ways: Int32Array): Int32Array {
  return ways.map((way, task) =>
    (bench.forwards.ways[task]?.length ?? 1) > 1 && draw() < FORGET ? EARLIEST_WAY : way,
  );
}
