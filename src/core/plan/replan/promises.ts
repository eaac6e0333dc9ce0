import { addDays, type Day } from "../../units/day.ts";
import type { Job, PlanProblem } from "../problem.ts";
import type { Walk } from "../walk.ts";
import { type AcceptedPlan, begunFrom, itemAct, nearMinutesOf } from "./accepted.ts";

/** So many days from the first morning were told to people: a working week and a half. Common practice, no source. */
export const CALM_DAYS = 10;

/** Place in a day, 0 to 1, of what goes on the next day. */
const GOES_ON = 0.9999;

/** A task and the day and person it was promised for. */
export interface Promised {
  readonly job: Job;
  readonly task: number;
  /** −1: somebody who is no longer in the team. */
  readonly person: number;
  /** Negative: it should be done by now. */
  readonly day: number;
  /** Its key in a queue: the day and a fraction of it. */
  readonly order: number;
}

/** What the accepted plan says about the work that is still to do. */
export interface Promises {
  /** Job → for each of its tasks what the accepted plan said; null: nothing. */
  readonly told: ReadonlyMap<Job, readonly (Promised | null)[]>;
  /** [person] → minutes of work near mould told for each day; null: the accepted plan did not know the person. */
  readonly near: readonly (Float64Array | null)[];
}

export function promisesOf(problem: PlanProblem, accepted: AcceptedPlan): Promises {
  const begun = begunFrom(accepted, problem.campaign.planFrom);
  const hands = new Map(problem.hands.map((hand, p) => [hand.person.code, p]));
  const places = accepted.assignments.length + 1;
  const toldOf = (job: Job, task: number): Promised | null => {
    const act = job.tasks[task]?.act;
    const each = act && begun.get(itemAct(job.item.id, act));
    if (!each) return null;
    const { person, day, place, goesOn } = each;
    const order = day + (goesOn ? GOES_ON : (GOES_ON * place) / places);
    return { job, task, person: hands.get(person) ?? -1, day, order };
  };
  return {
    told: new Map(problem.jobs.map((job) => [job, job.tasks.map((_, task) => toldOf(job, task))])),
    near: nearToldIn(problem, accepted),
  };
}

function nearToldIn({ hands, days }: PlanProblem, accepted: AcceptedPlan): (Float64Array | null)[] {
  const near = nearMinutesOf(accepted);
  const known = new Set(accepted.people.map(({ code }) => code));
  const minutes = (code: string, day: Day): number => near.get(`${code} ${day}`) ?? 0;
  return hands.map(({ person: { code } }) =>
    known.has(code) ? Float64Array.from(days, (day) => minutes(code, day)) : null,
  );
}

/** What was promised for the calm days. */
export const promisedSoon = ({ told }: Promises): Promised[] =>
  [...told.values()].flatMap((tasks) =>
    tasks.filter((each): each is Promised => each !== null && each.day >= 0 && each.day < CALM_DAYS),
  );

/**
 * The promises that are changed. An act is kept when the same person begins it, or goes on with it, on the same day; how long it takes, its
 * place in the day, its station and the later days it goes on are no promise.
 */
export function changedPromises(soon: readonly Promised[], { pieces }: Walk): Promised[] {
  const begun = new Map<Job, Map<number, { readonly person: number; readonly day: number }>>();
  for (const piece of pieces) {
    if (piece.day >= CALM_DAYS) continue;
    const tasks = begun.get(piece.job) ?? new Map();
    begun.set(piece.job, tasks);
    if (!tasks.has(piece.task)) tasks.set(piece.task, piece);
  }
  return soon.filter((each) => {
    const now = begun.get(each.job)?.get(each.task);
    return now?.person !== each.person || now.day !== each.day;
  });
}

/** Person and day of the calm days where being near mould is not as it was told. */
export function changedNearDays({ near }: Promises, { exposed }: Walk): { person: number; day: number }[] {
  return near.flatMap((told, person) =>
    [...(told ?? []).slice(0, CALM_DAYS).keys()].flatMap((day) =>
      (told?.[day] ?? 0) > 0 !== (exposed[person]?.[day] === 1) ? [{ person, day }] : [],
    ),
  );
}

/** Items with a due day that the accepted plan met and the walk does not. */
export function brokenDueDays(problem: PlanProblem, accepted: AcceptedPlan, walk: Walk): Job[] {
  const boxed = new Map(accepted.itemDays.map(({ item, days }) => [item, days.box]));
  return problem.jobs.filter((job) => {
    const { due } = job.item;
    const before = boxed.get(job.item.id);
    if (!due || !before || before > due) return false;
    const end = walk.ends.get(job)?.at(-1) ?? -1;
    return end < 0 || addDays(problem.campaign.planFrom, end) > due;
  });
}
