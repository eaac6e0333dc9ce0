import type { Project, ProjectSchedule } from "../../src/core/plan/list-schedule/project.ts";
import type { FlowShop } from "./published-problem.ts";

/** Every fault of a project's schedule, from the problem as published and the start times alone; none of the scheduler's code is used. */
export function faultsOfSchedule(project: Project, schedule: ProjectSchedule): string[] {
  const faults: string[] = [];
  const chosen = project.tasks.map((task, at) => {
    const way = task.ways[schedule.ways[at] ?? -1];
    const start = schedule.starts[at] ?? -1;
    if (!way || !Number.isInteger(start) || start < 0) faults.push(`task ${at} has no way or no start`);
    return { start, end: start + (way?.duration ?? 0), demand: way?.demand ?? [] };
  });
  project.tasks.forEach((task, at) => {
    for (const next of task.successors)
      if ((chosen[next]?.start ?? -1) < (chosen[at]?.end ?? 0))
        faults.push(`task ${next} starts before ${at} ends`);
  });
  for (const [r, capacity] of project.capacities.entries())
    for (const { start: moment, end } of chosen) {
      if (moment === end) continue;
      const inUse = chosen
        .filter((task) => task.start <= moment && moment < task.end)
        .reduce((sum, task) => sum + (task.demand[r] ?? 0), 0);
      if (inUse > capacity) faults.push(`resource ${r}: ${inUse} of ${capacity} in use at ${moment}`);
    }
  const ends = Math.max(0, ...chosen.map(({ end }) => end));
  if (ends !== schedule.makespan) faults.push(`it ends at ${ends}, not at ${schedule.makespan}`);
  return faults;
}

/** Every fault of a flow shop's schedule: start times by job and machine against setups and the jobs' own order of machines. */
export function faultsOfFlow(
  shop: FlowShop,
  sequence: readonly number[],
  starts: readonly (readonly number[])[],
  makespan: number,
): string[] {
  const faults: string[] = [];
  if (new Set(sequence).size !== shop.processing.length)
    faults.push("not every job stands once in the sequence");
  const end = (job: number, machine: number): number =>
    (starts[job]?.[machine] ?? Number.NaN) + (shop.processing[job]?.[machine] ?? Number.NaN);
  sequence.forEach((job, place) => {
    for (const machine of shop.setup.keys()) {
      const start = starts[job]?.[machine] ?? Number.NaN;
      const before = sequence[place - 1];
      if (!(start >= 0)) faults.push(`job ${job} has no start on machine ${machine}`);
      if (machine > 0 && start < end(job, machine - 1)) faults.push(`job ${job} is on two machines at once`);
      if (before !== undefined && start < end(before, machine) + (shop.setup[machine]?.[before]?.[job] ?? 0))
        faults.push(`job ${job} starts on machine ${machine} before it is set up`);
    }
  });
  const ends = Math.max(...sequence.map((job) => end(job, shop.setup.length - 1)));
  if (ends !== makespan) faults.push(`it ends at ${ends}, not at ${makespan}`);
  return faults;
}
