import { type Day, daysBetween } from "../../units/day.ts";
import type { Bind, Finish, Left, Order, Proof } from "../plan.ts";
import type { PlanProblem } from "../problem.ts";
import type { Piece } from "../walk.ts";
import type { FirstLook } from "./relaxed-case.ts";
import type { FirstPlan, Made, Supposed } from "./supposed-plan.ts";

/** Minutes used and minutes there. */
export interface Share {
  readonly used: number;
  readonly there: number;
}

/** What a lead compares, of one campaign as planned; all that a first answer knows. */
export interface FirstOutlook {
  readonly end: Day;
  readonly routed: number;
  readonly finish: Finish;
  /** Not boxed by the end though a route leads there, must-do items first. */
  readonly left: readonly Left[];
  /** Set aside by a rule or at the Door: no scenario of time and hands moves these. */
  readonly stopped: number;
  /** Mould minutes planned and allowed in the four weeks to come, and to the end. */
  readonly mouldSoon: Share;
  readonly mould: Share;
  /** Camera minutes used and there (open, and somebody to stand at it) until the last image. */
  readonly camera: Share;
  /** Day of the last image planned; null: none. */
  readonly lastImage: Day | null;
  /** Hours of work planned in the four weeks to come, near mould and away from it. */
  readonly workSoon: { readonly near: number; readonly clean: number };
  /** Stores whose order comes too late even if sent today. */
  readonly lateOrders: readonly string[];
}

/** The same with what holds it back and how good it is known to be. */
export interface Outlook extends FirstOutlook {
  /** What holds the plan back most; null: every shared resource has room. */
  readonly binds: Pick<Bind, "resource" | "load"> | null;
  /** What no plan can beat. */
  readonly atBest: FirstLook;
  readonly proof: Pick<Proof, "gap" | "itemGap">;
}

const SOON_DAYS = 28;

export function outlookOf(made: Supposed, atBest: FirstLook, orders: readonly Order[]): Outlook {
  const { plan } = made;
  const [first] = plan.binds;
  return {
    ...firstOutlookOf(made, orders),
    binds: first ? { resource: first.resource, load: first.load } : null,
    atBest,
    proof: plan.proof,
  };
}

export function firstOutlookOf(made: Made<FirstPlan>, orders: readonly Order[]): FirstOutlook {
  const { problem, plan } = made;
  return {
    end: plan.end,
    routed: plan.routed,
    finish: plan.finish,
    left: plan.left.filter((each) => each.kind === "no time"),
    stopped: plan.left.filter((each) => each.kind !== "no time").length,
    mouldSoon: mouldOf(problem, plan, SOON_DAYS),
    mould: mouldOf(problem, plan, problem.days.length),
    camera: cameraOf(made),
    lastImage: lastImageOf(made),
    workSoon: workSoonOf(made),
    lateOrders: [...new Set(orders.filter((each) => each.late).map((each) => each.name))],
  };
}

/** Allowed: in each week the exposed days a person could have, all minutes of each. */
function mouldOf(problem: PlanProblem, plan: FirstPlan, days: number): Share {
  const { exposedMinutesADay, exposedDaysAWeek, weekday } = problem;
  let there = 0;
  for (const hand of problem.hands) {
    let week = 0;
    for (let d = 0; d < Math.min(days, problem.days.length); d++) {
      if (weekday[d] === 0) week = 0;
      if (!hand.mayMould[d] || (hand.minutes[d] ?? 0) <= 0 || week >= exposedDaysAWeek) continue;
      week++;
      there += exposedMinutesADay;
    }
  }
  const used = plan.personDays
    .filter((each) => daysBetween(plan.planFrom, each.day) < days)
    .reduce((sum, each) => sum + each.exposedMinutes, 0);
  return { used, there };
}

const imagesOf = ({ day }: Made<FirstPlan>): readonly Piece[] =>
  day.pieces.filter(({ job, task }) => job.tasks[task]?.act === "image");

const lastImageOf = (made: Made<FirstPlan>): Day | null =>
  made.problem.days[imagesOf(made).reduce((last, { day }) => Math.max(last, day), -1)] ?? null;

function workSoonOf({ day }: Made<FirstPlan>): FirstOutlook["workSoon"] {
  const hours = (exposed: boolean): number =>
    day.pieces.reduce(
      (sum, each) =>
        each.day < SOON_DAYS && each.job.tasks[each.task]?.exposed === exposed ? sum + each.minutes : sum,
      0,
    ) / 60;
  return { near: hours(true), clean: hours(false) };
}

function cameraOf(made: Made<FirstPlan>): Share {
  const images = imagesOf(made);
  const last = images.reduce((latest, { day }) => Math.max(latest, day), -1);
  const open = made.problem.stations.get("camera") ?? new Float64Array(0);
  return {
    used: images.reduce((sum, each) => sum + each.minutes, 0),
    there: open.subarray(0, last + 1).reduce((sum, minutes) => sum + minutes, 0),
  };
}

/** How a scenario differs from the plan as it is; both were simulated with the same seeds. */
export interface Difference {
  /** Days later (less than 0: earlier); null when one of the two is not finished by its end. */
  readonly days: { readonly p10: number | null; readonly p50: number | null; readonly p90: number | null };
  /** Items boxed by the end in the typical simulated campaign. */
  readonly boxed: number;
  /** Items of the plan as it is that fall out, and that come in, must-do items first. */
  readonly fallOut: readonly Left[];
  readonly comeIn: readonly Left[];
  /** Items there only in the scenario that are not boxed by the end. */
  readonly addedLeft: readonly Left[];
  /** Orders late only in the scenario. */
  readonly lateOrders: readonly string[];
}

/** @param known ids of the items of the plan as it is */
export function differenceOf(
  base: FirstOutlook,
  other: FirstOutlook,
  known: ReadonlySet<string>,
): Difference {
  const before = new Set(base.left.map((each) => each.item));
  const after = new Set(other.left.map((each) => each.item));
  const later = (share: "p10" | "p50" | "p90"): number | null => {
    const [from, to] = [base.finish[share], other.finish[share]];
    return from && to ? daysBetween(from, to) : null;
  };
  return {
    days: { p10: later("p10"), p50: later("p50"), p90: later("p90") },
    boxed: other.finish.boxed.p50 - base.finish.boxed.p50,
    fallOut: other.left.filter((each) => known.has(each.item) && !before.has(each.item)),
    comeIn: base.left.filter((each) => !after.has(each.item)),
    addedLeft: other.left.filter((each) => !known.has(each.item)),
    lateOrders: other.lateOrders.filter((each) => !base.lateOrders.includes(each)),
  };
}
