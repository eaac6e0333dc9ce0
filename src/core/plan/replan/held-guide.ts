import type { Guide } from "../guide.ts";
import type { Trial } from "../improve/best-manner.ts";
import type { Hand, Job, PlanProblem } from "../problem.ts";
import { type Hold, heldPromises } from "./keep.ts";
import type { Promises } from "./promises.ts";

/** What a plan follows once nothing is held any more. */
export type Lead = Pick<Trial, "problem" | "guide">;

/** The order of the accepted plan for all the days; what it did not know is taken from another guide. */
export function acceptedOrder(problem: PlanProblem, { told, near }: Promises, other: Guide): Guide {
  const never = problem.days.length;
  const wanted = new Map<Job, Float64Array>();
  for (const job of problem.jobs) {
    const own = told.get(job);
    const others = other.wanted.get(job);
    const dayOf = (s: number): number => own?.[s]?.order ?? others?.[s] ?? never + 1;
    wanted.set(
      job,
      Float64Array.from(job.tasks, (_, s) => dayOf(s)),
    );
  }
  const exposedBy = near.map((days, p) => (days ? summed(days) : (other.exposedBy[p] as Float64Array)));
  return { ...other, wanted, exposedBy, worth: [] };
}

/** Days near mould up to each day. */
function summed(minutes: Float64Array): Float64Array {
  let days = 0;
  return minutes.map((near) => {
    if (near > 0) days++;
    return days;
  });
}

/** What is not held is wanted just before the first day that is not held, in its own order: after what was promised, before the rest. */
const AFTER = 1e-4;
/** Days by which work near mould that was promised is wanted sooner, so that on its day people change into protection however little it is. */
const LONG_AWAITED = 100;

/** A guide that holds the accepted plan for some days and then follows another; all else waits for minutes nobody was promised. */
export function heldGuide(problem: PlanProblem, promises: Promises, lead: Lead, hold: Hold): Lead {
  if (hold.days === 0) return lead;
  const after = lead.guide;
  const kept = heldPromises(problem, promises, hold);
  const wanted = new Map<Job, Float64Array>();
  for (const job of problem.jobs) {
    const own = kept.get(job);
    const told = promises.told.get(job);
    const later = after.wanted.get(job) as Float64Array;
    wanted.set(
      job,
      later.map((day, s) => {
        const soonest = Math.min(day, told?.[s]?.order ?? day);
        const free = soonest >= hold.days ? soonest : hold.days - AFTER * (hold.days - soonest);
        const place = own?.[s];
        return place ? place.order - (place.near ? LONG_AWAITED : 0) : free;
      }),
    );
  }
  const worth = after.worth.map((series) => series.map((value, d) => (d < hold.days ? 0 : value)));
  const exposedBy = after.exposedBy.map((series, p) =>
    exposedAfter(series, promises.near[p] ?? null, hold.days),
  );
  return {
    problem: { ...problem, hands: heldHands(problem, promises, lead.problem, hold.days) },
    guide: { ...after, wanted, worth, exposedBy, kept },
  };
}

/** Near mould as promised while it is held, then as often as the lead says. */
function exposedAfter(series: Float64Array, near: Float64Array | null, days: number): Float64Array {
  if (!near) return series;
  const held = summed(near.subarray(0, days));
  const ahead = (held.at(-1) ?? 0) - (series[days - 1] ?? 0);
  return series.map((sum, d) => held[d] ?? sum + ahead);
}

/** While it is held, people are near mould on the days that were promised, as long as that, and on no others; then as the lead has it. */
const heldHands = (problem: PlanProblem, { near }: Promises, lead: PlanProblem, days: number): Hand[] =>
  problem.hands.map((hand, p) => {
    const told = near[p];
    const later = lead.hands[p]?.nearMinutes ?? hand.nearMinutes;
    const nearMinutes = later.map((minutes, d) => {
      if (d >= days || !told) return minutes;
      return Math.min(hand.nearMinutes[d] ?? 0, told[d] ?? 0);
    });
    return { ...hand, nearMinutes };
  });
