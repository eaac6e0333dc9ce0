import type { Route } from "../../care/care.ts";
import type { Act, Campaign } from "../../items/campaign.ts";
import { addDays, type Day } from "../../units/day.ts";
import type { Trial } from "../improve/best-manner.ts";
import type { Pace } from "../pace.ts";
import type { Job, PlanProblem, Task } from "../problem.ts";
import type { Piece } from "../walk.ts";
import { type AcceptedPlan, type Begun, begunFrom, itemAct } from "./accepted.ts";
import { type Candidate, mustLeftOf } from "./nearest-plan.ts";
import {
  brokenDueDays,
  CALM_DAYS,
  changedNearDays,
  changedPromises,
  type Promised,
  type Promises,
  promisedSoon,
} from "./promises.ts";
import { type WhyChanged, whyNear, whyOf } from "./why-changed.ts";

/** What a person's day is like. */
export type DayWork = "near mould" | "clean work" | "away";

/** Who begins an act, and when. */
export interface Told {
  readonly person: string;
  readonly day: Day;
}

export type ReplanChange =
  | {
      readonly item: string;
      readonly act: Act;
      readonly from: Told;
      /** null: not before the end, or no longer on a route. */
      readonly to: Told | null;
      readonly why: WhyChanged;
    }
  | {
      readonly person: string;
      readonly day: Day;
      readonly from: DayWork;
      readonly to: DayWork;
      readonly why: WhyChanged;
    };

/** What matters most about a plan when two are compared. */
export interface Essentials {
  readonly mustLeft: number;
  readonly left: number;
  /** Day the last item it reaches is boxed. */
  readonly lastBox: Day | null;
  /** Weighted item-days of waiting. */
  readonly cost: number;
  /** Promises it does not keep. */
  readonly moved: number;
}

/** What became of the accepted plan. */
export interface Replan {
  /** The morning the accepted plan was made for. */
  readonly acceptedFrom: Day;
  readonly planFrom: Day;
  /** Last of the days whose promises are counted. */
  readonly until: Day;
  /**
   * Acts that were promised for these days and are still to do: kept when the same person begins (or goes on with) the same act of the
   * same item on the same day, else moved.
   */
  readonly kept: number;
  readonly moved: number;
  readonly changes: readonly ReplanChange[];
  /** Days that were promised and are held whatever they cost: 10, or fewer where holding less gained more. */
  readonly heldDays: number;
  /** Items with a due day that the accepted plan met and this one does not. */
  readonly dueBroken: readonly { readonly item: string; readonly due: Day; readonly boxed: Day | null }[];
  readonly dueKept: number;
  /** Items the accepted plan did not know. */
  readonly arrived: readonly string[];
  /** Rates of the team that the plan reckons with instead of the norms. */
  readonly paces: readonly Pace[];
  readonly now: Essentials;
  /** A plan that ignores the accepted one. */
  readonly afresh: Essentials;
  /** What the changes cost, in weighted item-days. */
  readonly churn: number;
}

interface Replanning {
  readonly campaign: Campaign;
  readonly routes: readonly Route[];
  readonly paces: readonly Pace[];
  readonly problem: PlanProblem;
  readonly accepted: AcceptedPlan;
  readonly promises: Promises;
  readonly fresh: Trial;
  readonly chosen: Candidate;
}

export function changesOf(its: Replanning): Replan {
  const { campaign, paces, problem, accepted, promises, fresh, chosen } = its;
  const soon = promisedSoon(promises);
  const changed = changedPromises(soon, chosen.day);
  const gone = goneActs(its);
  const changes = [...itemChanges(its, changed), ...gone, ...personChanges(problem, promises, chosen)];
  const broken = brokenDueDays(problem, accepted, chosen.day);
  const known = new Set([...accepted.itemDays, ...accepted.left].map(({ item }) => item));
  return {
    acceptedFrom: accepted.planFrom,
    planFrom: campaign.planFrom,
    until: addDays(campaign.planFrom, CALM_DAYS - 1),
    kept: soon.length - changed.length,
    moved: changed.length + gone.length,
    changes,
    heldDays: chosen.hold.days,
    dueBroken: broken.map((job) => ({
      item: job.item.id,
      due: job.item.due as Day,
      boxed: boxDay(problem, chosen, job),
    })),
    dueKept: problem.jobs.filter((job) => job.item.due && isBoxedBy(problem, chosen, job)).length,
    arrived: problem.jobs.map(({ item }) => item.id).filter((item) => !known.has(item)),
    paces,
    now: essentialsOf(problem, chosen, soon),
    afresh: essentialsOf(problem, fresh, soon),
    churn: chosen.churn,
  };
}

/** First the near days, in the order of the accepted plan; the same input gives the same list. */
function itemChanges(
  { problem, promises, chosen, accepted }: Replanning,
  changed: readonly Promised[],
): ReplanChange[] {
  const set = new Set(changed);
  const told = begunFrom(accepted, problem.campaign.planFrom);
  const first = firstPieces(chosen.day.pieces);
  const date = (d: number): Day => addDays(problem.campaign.planFrom, d);
  return [...changed]
    .sort((a, b) => a.day - b.day || a.job.item.id.localeCompare(b.job.item.id) || a.task - b.task)
    .map((promise) => {
      const { act } = promise.job.tasks[promise.task] as Task;
      const { id } = promise.job.item;
      const now = first.get(promise.job)?.get(promise.task);
      return {
        item: id,
        act,
        from: {
          person: (told.get(itemAct(id, act)) as Begun).person,
          day: date(promise.day),
        },
        to: now ? { person: problem.hands[now.person]?.person.code ?? "", day: date(now.day) } : null,
        why: whyOf(problem, promises, chosen.day, set, promise, chosen.hold.days),
      };
    });
}

function firstPieces(pieces: readonly Piece[]): Map<Job, Map<number, Piece>> {
  const first = new Map<Job, Map<number, Piece>>();
  for (const piece of pieces) {
    const tasks = first.get(piece.job) ?? new Map<number, Piece>();
    first.set(piece.job, tasks);
    if (!tasks.has(piece.task)) tasks.set(piece.task, piece);
  }
  return first;
}

/** Acts promised for the calm days that no route has any more, though nobody has done them. */
function goneActs({ campaign, routes, accepted }: Replanning): ReplanChange[] {
  const done = new Set(campaign.sessions.map(({ item, act }) => itemAct(item, act)));
  const byItem = new Map(routes.map((route) => [route.item, route]));
  return [...begunFrom(accepted, campaign.planFrom).values()].flatMap(({ item, act, person, day }) => {
    const route = byItem.get(item);
    if (day < 0 || day >= CALM_DAYS || done.has(itemAct(item, act)) || route?.destiny === "done") return [];
    if (route?.destiny === "route" && isAhead(route, act)) return [];
    const why =
      route?.destiny === "set aside" || route?.destiny === "at the Door" ? route.destiny : "not needed";
    const from = { person, day: addDays(campaign.planFrom, day) };
    return [{ item, act, from, to: null, why: { why } }];
  });
}

const isAhead = ({ steps }: Route, act: Act): boolean => steps.some((step) => step.act === act);

function personChanges(problem: PlanProblem, promises: Promises, { day, hold }: Candidate): ReplanChange[] {
  return changedNearDays(promises, day).map(({ person, day: d }) => {
    const near = day.exposed[person]?.[d] === 1;
    const away = !problem.hands[person]?.minutes[d];
    return {
      person: problem.hands[person]?.person.code ?? "",
      day: addDays(problem.campaign.planFrom, d),
      from: near ? "clean work" : "near mould",
      to: near ? "near mould" : away ? "away" : "clean work",
      why: whyNear(problem, person, d, hold.days),
    };
  });
}

const boxDay = ({ campaign }: PlanProblem, { day }: Pick<Trial, "day">, job: Job): Day | null => {
  const end = day.ends.get(job)?.at(-1) ?? -1;
  return end < 0 ? null : addDays(campaign.planFrom, end);
};

function isBoxedBy(problem: PlanProblem, trial: Pick<Trial, "day">, job: Job): boolean {
  const boxed = boxDay(problem, trial, job);
  return boxed !== null && job.item.due !== undefined && boxed <= job.item.due;
}

const essentialsOf = (
  { campaign, jobs }: PlanProblem,
  trial: Trial,
  soon: readonly Promised[],
): Essentials => ({
  mustLeft: mustLeftOf(trial),
  left: jobs.length - trial.day.boxed,
  lastBox: trial.day.lastDay < 0 ? null : addDays(campaign.planFrom, trial.day.lastDay),
  cost: trial.cost,
  moved: changedPromises(soon, trial.day).length,
});
