import { existsSync, readFileSync } from "node:fs";
import { fileURLToPath } from "node:url";
import { describe, expect, test } from "vitest";
import { faultsOfSchedule } from "../../../../bench/rcpsp/check-schedule.ts";
import { patterson, readProblems } from "../../../../bench/rcpsp/read-problems.ts";
import { seeded } from "../../../../src/core/plan/chance.ts";
import { scheduledBothWays, workbenchOf } from "../../../../src/core/plan/list-schedule/justify.ts";
import { listByMerit } from "../../../../src/core/plan/list-schedule/offspring.ts";
import {
  leastMakespan,
  networksOf,
  type Project,
  tailsOf,
} from "../../../../src/core/plan/list-schedule/project.ts";
import {
  SEARCH_DEFAULTS,
  scheduleProject,
} from "../../../../src/core/plan/list-schedule/schedule-project.ts";
import { EARLIEST_WAY, emptyProfile, scheduleList } from "../../../../src/core/plan/list-schedule/serial.ts";

const SHORT = { ...SEARCH_DEFAULTS, schedules: 3000, population: 20 };

function inventedProject(seed: number, count: number, mostWays = 1): Project {
  const draw = seeded(seed);
  const below = (n: number): number => Math.floor(draw() * n);
  const capacities = [2 + below(4), 3 + below(3)];
  const tasks = Array.from({ length: count }, (_, at) => ({
    ways: Array.from({ length: 1 + below(mostWays) }, () => ({
      duration: below(7),
      demand: capacities.map((most) => below(most + 1)),
    })),
    successors: Array.from({ length: count - at - 1 }, (_, n) => at + 1 + n).filter(() => draw() < 0.25),
  }));
  return { capacities, tasks };
}

/** Least makespan over every start time up to a bound, found by trying: no list, no search of ours. */
function leastByTrying(project: Project, most: number): number {
  const starts: number[] = [];
  let best = most;
  const used = project.capacities.map(() => new Int32Array(most + 8));
  const tryTask = (task: number, ends: number): void => {
    if (ends >= best && task > 0) return;
    if (task === project.tasks.length) {
      best = ends;
      return;
    }
    const { duration = 0, demand = [] } = project.tasks[task]?.ways[0] ?? {};
    const ready = project.tasks.reduce(
      (latest, { successors, ways }, at) =>
        successors.includes(task) ? Math.max(latest, (starts[at] ?? 0) + (ways[0]?.duration ?? 0)) : latest,
      0,
    );
    for (
      let start = ready;
      start + duration < best || (start === ready && start + duration <= best);
      start++
    ) {
      const moments = Array.from({ length: duration }, (_, n) => start + n);
      const fits = moments.every((moment) =>
        demand.every((need, r) => (used[r]?.[moment] ?? 0) + need <= (project.capacities[r] ?? 0)),
      );
      if (!fits) continue;
      const book = (sign: number): void => {
        for (const moment of moments)
          demand.forEach((need, r) => {
            const row = used[r] as Int32Array;
            row[moment] = (row[moment] ?? 0) + sign * need;
          });
      };
      starts[task] = start;
      book(1);
      tryTask(task + 1, Math.max(ends, start + duration));
      book(-1);
    }
  };
  tryTask(0, 0);
  return best;
}

describe("a schedule of tasks that share resources", () => {
  test("breaks no arrow and no capacity, whatever the project, with one way of each task or several", () => {
    for (let seed = 1; seed <= 60; seed++) {
      const project = inventedProject(seed, 3 + (seed % 25), 1 + (seed % 3));
      const found = scheduleProject(project, { ...SHORT, schedules: 300, seed });
      expect(faultsOfSchedule(project, found), `seed ${seed}`).toEqual([]);
      expect(found.makespan).toBeGreaterThanOrEqual(found.floor);
    }
  });

  test("on 40 small projects it is the shortest there is", () => {
    for (let seed = 1; seed <= 40; seed++) {
      const project = inventedProject(seed, 3 + (seed % 4));
      const found = scheduleProject(project, { ...SHORT, seed });
      expect(found.makespan, `seed ${seed}`).toBe(leastByTrying(project, found.makespan));
    }
  });

  test("is never longer for being pushed to and fro", () => {
    for (let seed = 1; seed <= 40; seed++) {
      const bench = workbenchOf(networksOf(inventedProject(seed, 20)));
      const draw = seeded(seed);
      const list = listByMerit(bench.forwards, draw);
      const plain = scheduleList(
        bench.forwards,
        list,
        new Int32Array(20),
        new Int32Array(20),
        emptyProfile(),
      );
      expect(scheduledBothWays(bench, list, new Int32Array(20)).makespan).toBeLessThanOrEqual(plain);
    }
  });

  test("takes, of several ways, the one that ends first, and of two that end together the shorter", () => {
    const way = (duration: number, resource: number) => ({
      duration,
      demand: [0, 1, 2].map((r) => (r === resource ? 1 : 0)),
    });
    const project: Project = {
      capacities: [1, 1, 0],
      tasks: [
        { ways: [way(3, 0)], successors: [] },
        { ways: [way(2, 0), way(5, 1), way(1, 2)], successors: [] },
      ],
    };
    const ways = new Int32Array([0, EARLIEST_WAY]);
    const bench = networksOf(project).forwards;
    scheduleList(bench, new Int32Array([0, 1]), ways, new Int32Array(2), emptyProfile());
    expect([...ways]).toEqual([0, 0]);
  });

  test("the same seed gives the same schedule, and no task at all ends at once", () => {
    const project = inventedProject(3, 25);
    expect(scheduleProject(project, SHORT)).toEqual(scheduleProject(project, SHORT));
    expect(scheduleProject({ capacities: [1], tasks: [] }, SHORT).makespan).toBe(0);
  });

  test("what can never be done is refused by number", () => {
    const task = (need: number, successors: number[]) => ({
      ways: [{ duration: 1, demand: [need] }],
      successors,
    });
    expect(() => scheduleProject({ capacities: [2], tasks: [task(1, []), task(3, [])] }, SHORT)).toThrow(
      "Task 1 needs more",
    );
    expect(() => scheduleProject({ capacities: [2], tasks: [task(1, [1]), task(1, [0])] }, SHORT)).toThrow(
      "circle",
    );
  });
});

describe("the checker sees what it should", () => {
  const project: Project = {
    capacities: [1],
    tasks: [0, 1].map((at) => ({ ways: [{ duration: 2, demand: [1] }], successors: at === 0 ? [1] : [] })),
  };
  test("an arrow crossed, a capacity overdrawn, a wrong end", () => {
    expect(faultsOfSchedule(project, { starts: [0, 2], ways: [0, 0], makespan: 4 })).toEqual([]);
    expect(faultsOfSchedule(project, { starts: [0, 1], ways: [0, 0], makespan: 3 })).toEqual([
      "task 1 starts before 0 ends",
      "resource 0: 2 of 1 in use at 1",
    ]);
    expect(faultsOfSchedule(project, { starts: [0, 2], ways: [0, 0], makespan: 5 })).toEqual([
      "it ends at 4, not at 5",
    ]);
  });
});

describe("Patterson's text form", () => {
  test("is read whatever the line breaks, and a missing number is named", () => {
    const read = patterson("two.rcp", "2 1\n 3\n 4 2 1\n 2\n 5 1 0").project;
    expect(read.capacities).toEqual([3]);
    expect(read.tasks.map(({ successors }) => successors)).toEqual([[1], []]);
    expect(() => patterson("two.rcp", "2 1 3 4 2 1 2 5 1")).toThrow("the number of successors");
    expect(() => patterson("two.rcp", "1 1 3 4 2 1 2")).toThrow("task 2, but there are 1");
  });
});

/** PSPLIB, Kolisch and Sprecher, EJOR 96 (1996): 24 projects of 30 tasks, optima as published. */
const j30 = new URL("../../../../../shared/data/scheduling/psplib-j30.json", import.meta.url);
if (existsSync(j30))
  describe("published projects of 30 tasks", () => {
    const { instances } = JSON.parse(readFileSync(j30, "utf8")) as {
      instances: { name: string; criticalPath: number; optimal: number }[];
    };
    const problems = readProblems(fileURLToPath(j30));
    test("the longest chain is the published critical path", () => {
      const chains = problems.map((one) =>
        one.kind === "project" ? Math.max(...tailsOf(networksOf(one.project).forwards)) : 0,
      );
      expect(chains).toEqual(instances.map(({ criticalPath }) => criticalPath));
    });
    test("no bound of ours is above an optimum, and 3,000 schedules come within 1 per cent on average", () => {
      const over = problems.map((one, at) => {
        if (one.kind !== "project") return 0;
        const { optimal } = instances[at] ?? { optimal: 0 };
        expect(leastMakespan(networksOf(one.project).forwards)).toBeLessThanOrEqual(optimal);
        const found = scheduleProject(one.project, SHORT);
        expect(faultsOfSchedule(one.project, found)).toEqual([]);
        expect(found.makespan).toBeGreaterThanOrEqual(optimal);
        return found.makespan / optimal - 1;
      });
      expect(over.reduce((sum, one) => sum + one, 0) / over.length).toBeLessThan(0.01);
    });
  });
else
  test.skip("skipped: the published projects of ../shared/data/scheduling are not beside the project", () => {});
