import { type Day, dayNumber, dayOfNumber } from "../../../units/day.ts";
import { finishCost, undoneCost } from "../../campaign-programme.ts";
import { firstDayOf, lagAfter } from "../../classes.ts";
import type { Bind, Left } from "../../plan.ts";
import type { Job, PlanProblem } from "../../problem.ts";
import type { Walk } from "../../walk.ts";
import { type AsItIs, type Case, type Means, proved } from "../answers.ts";
import { changedBy } from "../changes.ts";
import { type Difference, differenceOf, type Outlook } from "../compare.ts";
import { type Ask, asksFor, laterEnd, laterEnds, usualAsks } from "./asks.ts";

/** An ask as it came out when the campaign was planned anew with it. */
export interface Eased extends Ask {
  readonly outlook: Outlook;
  readonly difference: Difference;
  /** Days an item waits less, the weighted mean over the plan as it is and its end; less than 0: more. */
  readonly savedDays: number;
  /** The same of what no plan can beat; null where another end makes the two unlike. */
  readonly savedAtBest: number | null;
  /** Must-do items that come in, and that fall out. */
  readonly mustIn: readonly Left[];
  readonly mustOut: readonly Left[];
  /** More than the noise of making plans. */
  readonly helps: boolean;
}

/** What holds the plan back, what was tried, and what becomes of the must-do items left out. */
export interface Ease {
  readonly binds: readonly Pick<Bind, "resource" | "weight" | "load">[];
  /** Best first: days saved for the effort of asking; what does not help last. */
  readonly tried: readonly Eased[];
  /** Must-do items the plan as it is leaves out for want of time, each with the easiest tried ask that brings it in. */
  readonly mustLeft: readonly MustLeft[];
}

export interface MustLeft {
  readonly left: Left;
  /** Day on which its waits alone, with all hands free, would let it into its box. */
  readonly soonest: Day;
  /** Its waits alone run past the end: no hands and no stores can bring it in. */
  readonly tooLate: boolean;
  readonly by: Ask | null;
}

/** Savings below this share of the wait are noise; so small a share at best is none. From trials. */
const NOISE = 0.005;
const NONE = 0.0005;
/** Re-solves kept for what no listed ask brings in: the two best asks together, then a much later end. */
const RUNGS = 2;
const RUNG_DAYS = 84;

/**
 * Ranks what binds by the programme's prices, asks for the one or two easiest changes to each, a later end where something is left over,
 * and what is usually asked for; each is planned anew with the same seeds. Must-do items still out are tried with a small ladder: the two
 * best asks together, then an end twelve weeks later. The easiest rung that brings an item in is named; it is not proved to be the least.
 * @param most plans made at most
 */
export async function* ease(
  base: AsItIs,
  means: Means,
  most: number,
): AsyncGenerator<{ readonly ask: Ask; readonly number: number; readonly of: number }, Ease, undefined> {
  const must = base.outlook.left.filter((each) => each.must);
  const rungs = must.length > 0 ? Math.min(RUNGS, most - 1) : 0;
  const asks = chosen(base, most - rungs);
  const tried: Eased[] = [];
  for (const ask of asks) {
    yield { ask, number: tried.length + 1, of: asks.length + rungs };
    tried.push(await easedBy(base, ask, means));
  }
  for (let rung = 0; rung < rungs && stillOut(must, tried).length > 0; rung++) {
    const ask = rung === 0 ? bestTwo(tried) : laterEnd(base.campaign, RUNG_DAYS);
    if (!ask) continue;
    yield { ask, number: tried.length + 1, of: asks.length + rungs };
    tried.push(await easedBy(base, ask, means));
  }
  const { plan, problem } = base.supposed;
  return {
    binds: plan.binds.map(({ resource, weight, load }) => ({ resource, weight, load })),
    tried: tried.sort((a, b) => Number(b.helps) - Number(a.helps) || worth(b) - worth(a)),
    mustLeft: must.map((left) => mustLeft(problem, left, tried)),
  };
}

const worth = ({ savedDays, effort }: Eased): number => savedDays / effort;

/** The asks to try: of what binds most the easiest first, a later end, and some that are usual although nothing says they help. */
function chosen({ campaign, supposed, outlook }: AsItIs, most: number): Ask[] {
  const byBind = supposed.plan.binds.map(({ resource }) => asksFor(campaign, resource));
  const binding = [0, 1].flatMap((turn) => byBind.flatMap((asks) => asks[turn] ?? []));
  const ends = outlook.left.length > 0 ? laterEnds(campaign) : [];
  const held = new Set(supposed.plan.binds.map((each) => each.resource));
  const usual = usualAsks(campaign).filter((each) => !held.has(each.resource));
  const kept = Math.min(usual.length, Math.max(1, Math.floor(most / 4)));
  const first = [...binding.slice(0, Math.max(1, most - kept - ends.length)), ...ends];
  const list = [...first, ...usual.slice(0, kept)].slice(0, most);
  const spare = [...binding, ...usual].filter((each) => !list.includes(each));
  return [...list, ...spare].slice(0, most);
}

async function easedBy(base: AsItIs, ask: Ask, means: Means): Promise<Eased> {
  const its: Case = {
    campaign: changedBy(base.campaign, ask.changes),
    routes: base.routes,
    scenario: { said: "", changes: ask.changes, releasesAlone: null, freezer: null },
  };
  const { supposed, outlook } = await proved(base, its, means);
  const known = new Set(base.campaign.items.map((each) => each.id));
  const difference = differenceOf(base.outlook, outlook, known);
  const days = base.supposed.problem.days.length;
  const now = waitOf(base.supposed.day, days);
  const savedDays = now - waitOf(supposed.day, days);
  const sameEnd = outlook.end === base.outlook.end;
  const savedAtBest = sameEnd ? base.outlook.atBest.waitingDays - outlook.atBest.waitingDays : null;
  const mustIn = difference.comeIn.filter((each) => each.must);
  const mustOut = difference.fallOut.filter((each) => each.must);
  const helps =
    (savedAtBest === null || savedAtBest > NONE * now) &&
    (savedDays > NOISE * now || mustIn.length > mustOut.length);
  return { ...ask, outlook, difference, savedDays, savedAtBest, mustIn, mustOut, helps };
}

/** Days an item waits for its box, by weight; what is not boxed counts as if left over after so many days. */
function waitOf(day: Walk, days: number): number {
  let cost = 0;
  let weights = 0;
  for (const [job, ends] of day.ends) {
    const end = ends.at(-1) ?? -1;
    cost += end < 0 ? undoneCost(days, job) : finishCost(job.weight, job.due, end);
    weights += job.weight;
  }
  return weights > 0 ? cost / weights : 0;
}

const stillOut = (must: readonly Left[], tried: readonly Eased[]): readonly Left[] =>
  must.filter(({ item }) => !tried.some((each) => each.mustIn.some((left) => left.item === item)));

/** The two best asks of different resources as one; a later end is a rung of its own. */
function bestTwo(tried: readonly Eased[]): Ask | null {
  const [one, ...others] = tried
    .filter((each) => each.helps && each.resource !== "time")
    .sort((a, b) => b.savedDays - a.savedDays);
  const two = others.find((each) => each.resource !== one?.resource);
  if (!one || !two) return null;
  return {
    changes: [...one.changes, ...two.changes],
    resource: one.resource,
    effort: one.effort > two.effort ? one.effort : two.effort,
  };
}

function mustLeft(problem: PlanProblem, left: Left, tried: readonly Eased[]): MustLeft {
  const job = problem.jobs.find((each) => each.item.id === left.item);
  const soonest = job ? soonestBox(job) : 0;
  const [by] = tried
    .filter((each) => each.helps && each.mustIn.some(({ item }) => item === left.item))
    .sort((a, b) => a.effort - b.effort || b.savedDays - a.savedDays);
  return {
    left,
    soonest: dayOfNumber(dayNumber(problem.campaign.planFrom) + soonest),
    tooLate: soonest >= problem.days.length,
    by: by ?? null,
  };
}

const soonestBox = (job: Job): number =>
  job.tasks.reduce((day, _, s) => day + lagAfter(job, s), firstDayOf(job));
