import { seeded } from "../chance.ts";
import { type ListedSchedule, PASSES, scheduledBothWays, type Workbench, workbenchOf } from "./justify.ts";
import { childOf, type Draft, forgetful, listByMerit } from "./offspring.ts";
import { leastMakespan, networksOf, type Project, type ProjectSchedule, tailsOf } from "./project.ts";
import { EARLIEST_WAY } from "./serial.ts";

export interface SearchSettings {
  /** List schedules built at most; the search is counted, not timed, so that it ends alike everywhere. */
  readonly schedules: number;
  readonly population: number;
  readonly seed: number;
  /** Asked before each new list; false ends the search. */
  readonly mayGoOn?: () => boolean;
}

/** Tried on published projects of 30 to 120 tasks: of populations of 20 to 200 the largest found most with so many schedules. */
export const SEARCH_DEFAULTS: SearchSettings = { schedules: 120_000, population: 200, seed: 1 };

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
  best: ListedSchedule;
  built: number;
}

/** Generations without a shorter schedule after which the population is drawn anew. */
const PATIENCE = 60;

/**
 * A short schedule: lists drawn by slack, then bred. Every schedule is pushed to and fro and the shortest live on; a population that
 * stands still is drawn anew, half of it near the best. Ends early at a makespan that nothing can beat.
 * Throws when a task can never be done: it needs more than there is, or follows itself.
 */
export function scheduleProject(project: Project, settings: SearchSettings = SEARCH_DEFAULTS): FoundSchedule {
  const search = searchOf(project, settings);
  while (!isOver(search)) breed(search);
  const { best, floor, built } = search;
  return { starts: [...best.starts], ways: [...best.ways], makespan: best.makespan, floor, schedules: built };
}

/** The search, begun with the plainest list: longest chain to the end first. */
function searchOf(project: Project, settings: SearchSettings): Search {
  const bench = workbenchOf(networksOf(project));
  const tails = tailsOf(bench.forwards);
  const list = listByMerit(bench.forwards, (task) => tails[task] as number);
  return {
    bench,
    settings,
    floor: leastMakespan(bench.forwards),
    draw: seeded(settings.seed),
    tails,
    best: scheduledBothWays(bench, list, freeWays(bench)),
    built: PASSES,
  };
}

const isOver = ({ built, best, floor, settings }: Search): boolean =>
  built >= settings.schedules || best.makespan <= floor || settings.mayGoOn?.() === false;

const freeWays = ({ forwards }: Workbench): Int32Array =>
  Int32Array.from(forwards.ways, (ways) => (ways.length === 1 ? 0 : EARLIEST_WAY));

function tried(search: Search, { list, ways }: Draft): ListedSchedule {
  const schedule = scheduledBothWays(search.bench, list, ways);
  search.built += PASSES;
  if (schedule.makespan < search.best.makespan) search.best = schedule;
  return schedule;
}

/** Draws a population and breeds it until it stands still. */
function breed(search: Search): void {
  let population: ListedSchedule[] = [];
  while (population.length < search.settings.population && !isOver(search))
    population.push(
      tried(search, population.length % 2 === 0 ? drawnBySlack(search) : drawnNearBest(search)),
    );
  for (let still = 0; still < PATIENCE && !isOver(search); still++) {
    const before = search.best.makespan;
    population = nextGeneration(search, population);
    if (search.best.makespan < before) still = -1;
  }
}

/** Longest chain first, each chain taken up to three tenths longer or shorter than it is. */
function drawnBySlack({ bench, draw, tails }: Search): Draft {
  const list = listByMerit(bench.forwards, (task) => (tails[task] as number) * (0.7 + 0.6 * draw()));
  return { list, ways: freeWays(bench) };
}

/** The best list, each task moved by up to a fifth of the list. */
function drawnNearBest({ bench, draw, best }: Search): Draft {
  const places = new Int32Array(best.list.length);
  best.list.forEach((task, place) => {
    places[task] = place;
  });
  const list = listByMerit(
    bench.forwards,
    (task) => -(places[task] as number) - draw() * 0.2 * places.length,
  );
  return { list, ways: forgetful(bench.forwards, best.ways, draw) };
}

function nextGeneration(search: Search, population: readonly ListedSchedule[]): ListedSchedule[] {
  const { draw, settings, bench } = search;
  const mixed = shuffled(population, draw);
  const all = [...population];
  for (let n = 0; n + 1 < mixed.length && !isOver(search); n += 2) {
    const [mother, father] = [mixed[n] as ListedSchedule, mixed[n + 1] as ListedSchedule];
    all.push(tried(search, childOf(bench.forwards, mother, father, draw)));
    all.push(tried(search, childOf(bench.forwards, father, mother, draw)));
  }
  all.sort((a, b) => a.makespan - b.makespan);
  return distinct(all).slice(0, settings.population);
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
