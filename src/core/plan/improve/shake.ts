import type { DayModel } from "../bound/day-model.ts";
import type { PriceSearch } from "../bound/price-search.ts";
import { seeded } from "../chance.ts";
import type { Guide } from "../guide.ts";
import type { Job, PlanProblem } from "../problem.ts";
import { type Trial, tryOut } from "./best-manner.ts";
import type { Course } from "./course.ts";
import { bindingStores, keepSomeBack } from "./kept-back.ts";
import { wantedDays } from "./price-guide.ts";
import { spareSomeDays } from "./spared-days.ts";

/** Days of the stretch whose items change places, and how far, in days. From trials. */
const STRETCHES = [5, 10, 20, 40];
const SHARE = 0.35;
/** Shares of the items that are drawn towards their cheapest days. From trials. */
const DRAWN_SHARES = [0.02, 0.1, 0.3];

/** How much dearer than the best a plan may be from which the search goes on, at the start; nothing at the end. From trials. */
const DETOUR = 0.0002;

type Draw = () => number;
type Wanted = Guide["wanted"];

/**
 * Tries so many small changes and goes on from what is no worse, or hardly: items that end within a stretch of days are wanted a little sooner
 * or later; a few items are wanted nearer to the days that are cheapest for them at the prices; somebody is kept clean for some days; some of
 * a store that binds is kept back. Each time the plan is walked again. Seeded: the same plan every time.
 */
export function shaken(
  problem: PlanProblem,
  course: Course,
  model: DayModel,
  found: PriceSearch,
  tries: number,
  seed: number,
): void {
  const draw = seeded(seed);
  const cheapest = wantedDays(model, found.cheapestDay);
  const binding = bindingStores(found.prices);
  let at = course.best;
  for (let round = 0; round < tries && course.goesOn("changes", round / tries); round++) {
    const change = Math.floor(draw() * (binding.length > 0 ? 4 : 3));
    const changed =
      change === 0
        ? spareSomeDays(problem, at, draw)
        : change === 3
          ? keepSomeBack(problem, binding, at, draw)
          : at.problem;
    const wanted = change === 1 ? shifted(at, draw) : change === 2 ? nearer(at, cheapest, draw) : null;
    const other = tryOut(changed, wanted ? { ...at.guide, wanted } : at.guide);
    if (other.cost <= course.best.cost * (1 + DETOUR * (1 - round / tries))) at = other;
    course.offer(other);
  }
}

/** Some of the items that end within a stretch of days, wanted sooner or later. */
function shifted({ problem, day, guide }: Trial, draw: Draw): Wanted {
  const stretch = STRETCHES[Math.floor(draw() * STRETCHES.length)] as number;
  const from = Math.floor(draw() * (day.lastDay + stretch)) - stretch;
  const wanted = new Map<Job, Float64Array>(guide.wanted);
  for (const [job, ends] of day.ends) {
    const end = ends[ends.length - 1] as number;
    const at = end < 0 ? problem.days.length : end;
    if (at < from || at > from + stretch || draw() > SHARE) continue;
    const by = (draw() - 0.5) * stretch;
    const days = wanted.get(job) as Float64Array;
    wanted.set(
      job,
      days.map((each) => each + by),
    );
  }
  return wanted;
}

/** Some items, each wanted nearer to its cheapest days. */
function nearer({ guide }: Trial, cheapest: Wanted, draw: Draw): Wanted {
  const share = DRAWN_SHARES[Math.floor(draw() * DRAWN_SHARES.length)] as number;
  const wanted = new Map<Job, Float64Array>(guide.wanted);
  for (const [job, days] of guide.wanted) {
    if (draw() > share) continue;
    const towards = cheapest.get(job) as Float64Array;
    const by = draw();
    wanted.set(
      job,
      days.map((each, s) => each + by * ((towards[s] as number) - each)),
    );
  }
  return wanted;
}
