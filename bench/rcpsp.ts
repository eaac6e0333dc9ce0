import { existsSync } from "node:fs";
import { leastSetups, MOST_JOBS } from "../src/core/plan/least-setups.ts";
import { networksOf, tailsOf } from "../src/core/plan/list-schedule/project.ts";
import { SEARCH_DEFAULTS, scheduleProject } from "../src/core/plan/list-schedule/schedule-project.ts";
import { faultsOfFlow, faultsOfSchedule } from "./rcpsp/check-schedule.ts";
import { sequenceFlowShop, startsOf } from "./rcpsp/flow-shop.ts";
import type { FlowShop, ProjectProblem, PublishedProblem } from "./rcpsp/published-problem.ts";
import { readProblems } from "./rcpsp/read-problems.ts";

/** Seconds a problem may take; the search is counted and ends before on an ordinary machine. */
const MOST_SECONDS = 4.5;

interface Solved {
  readonly name: string;
  readonly makespan: number;
  /** What it is held against, and whether that is the best known or only the longest chain of tasks. */
  readonly against: number;
  readonly isBestKnown: boolean;
  readonly seconds: number;
  /** The guard ended the search, so another machine may find another schedule. */
  readonly cutShort: boolean;
  readonly faults: readonly string[];
}

/** Schedules every problem of a file and prints how far the makespans lie over the best known; a separate checker reads every schedule. */
export async function benchRcpsp(path: string): Promise<void> {
  if (!existsSync(path)) {
    console.log(
      `  Skipped: there is no file ${path}. Give the path of a file of scheduling problems (.json or .rcp).`,
    );
    return;
  }
  const solved = readProblems(path).map(solve);
  console.log(
    `Scheduling problems of ${path}: each at most ${SEARCH_DEFAULTS.schedules} list schedules, ${MOST_SECONDS} s`,
  );
  summary(
    "over the best known",
    solved.filter(({ isBestKnown }) => isBestKnown),
  );
  summary(
    "over the longest chain of tasks (no best known in the file)",
    solved.filter(({ isBestKnown }) => !isBestKnown),
  );
  const faulty = solved.filter(({ faults }) => faults.length > 0);
  for (const { name, faults } of faulty) console.log(`  FAULT ${name}: ${faults.join("; ")}`);
  console.log(`  checked: ${solved.length} schedules, ${faulty.length} with a fault`);
  if (faulty.length > 0) process.exitCode = 1;
}

function solve(problem: PublishedProblem): Solved {
  const from = performance.now();
  let cutShort = false;
  const mayGoOn = (): boolean => {
    cutShort ||= performance.now() - from > MOST_SECONDS * 1000;
    return !cutShort;
  };
  const found = problem.kind === "project" ? solveProject(problem, mayGoOn) : solveFlow(problem, mayGoOn);
  const { best, lowerBound } = problem.known;
  const impossible = lowerBound !== null && found.makespan < lowerBound;
  return {
    name: problem.name,
    makespan: found.makespan,
    against: best ?? found.floor,
    isBestKnown: best !== null,
    seconds: (performance.now() - from) / 1000,
    cutShort,
    faults: impossible
      ? [...found.faults, `${found.makespan} is below the proved bound ${lowerBound}`]
      : found.faults,
  };
}

interface Found {
  readonly makespan: number;
  readonly floor: number;
  readonly faults: readonly string[];
}

function solveProject({ project }: ProjectProblem, mayGoOn: () => boolean): Found {
  const found = scheduleProject(project, { ...SEARCH_DEFAULTS, mayGoOn });
  const floor = Math.max(0, ...tailsOf(networksOf(project).forwards));
  return { makespan: found.makespan, floor, faults: faultsOfSchedule(project, found) };
}

function solveFlow(shop: FlowShop, mayGoOn: () => boolean): Found {
  const { sequence, makespan } = dayOrder(shop) ?? sequenceFlowShop(shop, mayGoOn);
  const longest = Math.max(...shop.processing.map((times) => times.reduce((sum, time) => sum + time, 0)));
  return {
    makespan,
    floor: longest,
    faults: faultsOfFlow(shop, sequence, startsOf(shop, sequence), makespan),
  };
}

/** One machine with few jobs is what the order of a day is: solved exactly, by the same function. */
function dayOrder({
  setup: [setup, second],
  processing,
}: FlowShop): ReturnType<typeof sequenceFlowShop> | null {
  if (!setup || second || processing.length > MOST_JOBS) return null;
  const found = leastSetups({
    count: processing.length,
    setup: (from, to) => (from === null || to === null ? 0 : (setup[from]?.[to] ?? 0)),
  });
  const work = processing.flat().reduce((sum, time) => sum + time, 0);
  return found && { sequence: [...found.order], makespan: work + found.cost };
}

const over = ({ makespan, against }: Solved): number => (against > 0 ? makespan / against - 1 : 0);
const percent = (share: number): string => `${(share * 100).toFixed(2)} %`;

function summary(against: string, solved: readonly Solved[]): void {
  if (solved.length === 0) return;
  const mean = (of: (one: Solved) => number): number =>
    solved.reduce((sum, one) => sum + of(one), 0) / solved.length;
  const worst = solved.reduce((most, one) => (over(one) > over(most) ? one : most));
  const reached = solved.filter((one) => over(one) <= 0).length;
  const slowest = Math.max(...solved.map(({ seconds }) => seconds));
  const cut = solved.filter(({ cutShort }) => cutShort).length;
  console.log(
    `  ${solved.length} problems, ${against}: mean ${percent(mean(over))}, worst ${percent(over(worst))} (${worst.name}: ${worst.makespan} against ${worst.against}), reached by ${reached}`,
  );
  console.log(
    `  time: mean ${mean(({ seconds }) => seconds).toFixed(2)} s, longest ${slowest.toFixed(2)} s, ${cut} ended by the clock`,
  );
}
