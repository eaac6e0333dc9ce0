import type { Guide } from "../guide.ts";
import type { Job, PlanProblem } from "../problem.ts";

/**
 * The guide of one plan for the people, days and items of another. Items that are new follow known ones with the same kinds of work, in
 * turn; days past the old end go on as the last ones; a new person is near mould as often as it is worth while.
 */
export function following(problem: PlanProblem, guide: Guide, before: PlanProblem): Guide {
  const length = problem.days.length;
  const known = new Map(before.jobs.map((job) => [job.item.id, job]));
  const alike = new Map<string, Job[]>();
  for (const job of before.jobs) alike.set(kindsOf(job), [...(alike.get(kindsOf(job)) ?? []), job]);
  const turns = new Map<string, number>();
  const model = (job: Job): Job | undefined => {
    const same = known.get(job.item.id);
    if (same?.tasks.length === job.tasks.length) return same;
    const kinds = kindsOf(job);
    const turn = turns.get(kinds) ?? 0;
    turns.set(kinds, turn + 1);
    const all = alike.get(kinds) ?? [];
    return all[turn % Math.max(1, all.length)];
  };
  const wanted = new Map<Job, Float64Array>();
  for (const job of problem.jobs) {
    const days = guide.wanted.get(model(job) as Job);
    wanted.set(job, days ?? new Float64Array(job.tasks.length).fill(length));
  }
  const hands = new Map(before.hands.map((hand, p) => [hand.person.code, guide.exposedBy[p]]));
  return {
    ...guide,
    wanted,
    worth: guide.worth.map((series) => stretched(series, length, series.at(-1) ?? 0)),
    exposedBy: problem.hands.map((hand) =>
      stretched(hands.get(hand.person.code) ?? new Float64Array(0), length, length),
    ),
  };
}

const kindsOf = (job: Job): string => job.tasks.map((task) => task.kind).join("-");

function stretched(series: Float64Array, length: number, after: number): Float64Array {
  if (series.length === length) return series;
  const made = new Float64Array(length).fill(after);
  made.set(series.subarray(0, length));
  return made;
}
