import { seeded } from "../chance.ts";
import { USUAL_MANNER } from "../guide.ts";
import { type Trial, tryOut } from "../improve/best-manner.ts";
import type { PlanProblem } from "../problem.ts";
import type { AcceptedPlan } from "./accepted.ts";
import { churnOf } from "./churn.ts";
import { acceptedOrder, heldGuide, type Lead } from "./held-guide.ts";
import type { Hold } from "./keep.ts";
import { CALM_DAYS, changedPromises, type Promised, type Promises, promisedSoon } from "./promises.ts";

/** A walked plan, how it holds the accepted one, and what the changes to what was told cost. */
export interface Candidate extends Trial {
  readonly hold: Hold;
  readonly churn: number;
}

/** Items that fell behind: others give way to must-do and worsening ones, or to all. */
const RESCUES = [2, 0];
/** Fewer days held; 0: a fresh plan. */
const FEWER_DAYS = [6, 3, 0];
/** A promise that could not be held after all stands in the way of others: so often it is tried without those. */
const ROUNDS = 3;
/** Items walked again in search of fewer changes, all tries together; and how many tries. Seeded: the same plan every time. */
const TRY_WORK = 60_000;
const FEWEST_TRIES = 10;
const MOST_TRIES = 100;
const SEED = 1;

/**
 * The plan of least waiting and churn together: the accepted one held for all calm days or fewer, and after them a fresh plan's order or its own.
 * @param goesOn asked before each search for fewer changes, with the share of them that is done
 */
export function nearestPlan(
  problem: PlanProblem,
  accepted: AcceptedPlan,
  promises: Promises,
  fresh: Trial,
  goesOn: (done: number) => boolean = () => true,
): Candidate {
  const soon = promisedSoon(promises);
  const held = (hold: Hold, lead: Lead): Candidate => {
    const { problem: within, guide } = heldGuide(problem, promises, lead, hold);
    const trial = tryOut(within, guide);
    const churn = churnOf(problem, accepted, promises, trial.day);
    return { ...trial, hold, churn };
  };
  const order = { ...acceptedOrder(problem, promises, fresh.guide), manner: { ...USUAL_MANNER, fitting: 6 } };
  let lead: Lead = fresh;
  let best = held(
    { days: CALM_DAYS, rescue: Number.POSITIVE_INFINITY, lightened: false, without: new Set() },
    lead,
  );
  const offer = (hold: Partial<Hold>, next: Lead = lead): void => {
    const other = held({ ...best.hold, ...hold }, next);
    if (other.cost + other.churn >= best.cost + best.churn) return;
    best = other;
    lead = next;
  };
  offer({ lightened: true });
  offer({}, { problem, guide: order });
  for (const rescue of RESCUES) offer({ rescue });
  for (let round = 0; round < ROUNDS; round++) {
    const without = new Set([...best.hold.without, ...changedPromises(soon, best.day)]);
    if (without.size === best.hold.without.size) break;
    offer({ without });
  }
  for (const days of FEWER_DAYS) offer({ days });
  const draw = seeded(SEED);
  const tries = Math.round(Math.max(FEWEST_TRIES, Math.min(MOST_TRIES, TRY_WORK / problem.jobs.length)));
  for (let round = 0; round < tries && best.hold.days > 0 && goesOn(round / tries); round++) {
    const without = nextWithout(best, soon, draw);
    if (without) offer({ without });
  }
  return best;
}

/** One promise more that is let go, near one that could not be kept; now and then one is held again. */
function nextWithout(
  { day, hold }: Candidate,
  soon: readonly Promised[],
  draw: () => number,
): ReadonlySet<Promised> | null {
  const changed = changedPromises(soon, day);
  const broken = changed[Math.floor(draw() * changed.length)];
  if (!broken) return null;
  const without = new Set(hold.without);
  const near = soon.filter(
    ({ person, day: on }) => person === broken.person && on <= broken.day && on > broken.day - 3,
  );
  const one = near[Math.floor(draw() * near.length)];
  if (one === undefined) return null;
  if (!without.delete(one)) without.add(one);
  return without;
}

/** Must-do items that do not reach their box. */
export const mustLeftOf = ({ day }: Pick<Trial, "day">): number =>
  [...day.ends].filter(([job, ends]) => job.item.priority === "must" && (ends.at(-1) ?? -1) < 0).length;
