import { seeded } from "../chance.ts";
import type { Job, PlanProblem } from "../problem.ts";
import { type Trial, tryOut } from "./best-manner.ts";

/** Days of the stretch whose items change places, and how far, in days. From trials. */
const STRETCHES = [5, 10, 20, 40];
const SHARE = 0.35;

/**
 * Tries so many small changes of the order and keeps what is no worse: items that end within a stretch of days are wanted a little sooner
 * or later, and the plan is walked again. Seeded: the same plan every time.
 */
export function shaken(problem: PlanProblem, start: Trial, tries: number, seed: number): Trial {
  const draw = seeded(seed);
  let best = start;
  for (let round = 0; round < tries; round++) {
    const stretch = STRETCHES[Math.floor(draw() * STRETCHES.length)] as number;
    const from = Math.floor(draw() * (best.day.lastDay + stretch)) - stretch;
    const wanted = new Map<Job, Float64Array>(best.guide.wanted);
    for (const [job, ends] of best.day.ends) {
      const end = ends[ends.length - 1] as number;
      const at = end < 0 ? problem.days.length : end;
      if (at < from || at > from + stretch || draw() > SHARE) continue;
      const by = (draw() - 0.5) * stretch;
      const days = wanted.get(job) as Float64Array;
      wanted.set(
        job,
        days.map((day) => day + by),
      );
    }
    const other = tryOut(problem, { ...best.guide, wanted });
    if (other.cost <= best.cost) best = other;
  }
  return best;
}
