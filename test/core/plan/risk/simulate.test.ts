import { describe, expect, test } from "vitest";
import { plainOrder } from "../../../../src/core/plan/improve/plain-order.ts";
import { fortunesOf } from "../../../../src/core/plan/risk/fortunes.ts";
import { ItemDraws } from "../../../../src/core/plan/risk/item-chances.ts";
import { simulate } from "../../../../src/core/plan/risk/simulate.ts";
import { dayNumber } from "../../../../src/core/units/day.ts";
import { waitingProblem } from "./small-problems.ts";

const DRAWS = 2000;
/** Share of waits of 2, 12 or 22 days that are over after d days: Beta(3, 3), a binomial sum (Abramowitz and Stegun 26.5.24, from memory). */
const over = (d: number): number => {
  const x = Math.min(1, Math.max(0, (d - 2) / 20));
  return x ** 3 * (10 - 15 * x + 6 * x * x);
};
/** 3.3 standard errors of a share of 2,000 campaigns, and what the table of waits may be off. */
const WIDE = 3.3 * Math.sqrt(0.25 / DRAWS) + 0.003;

describe("waits of the Ward by chance alone, worked out by hand", () => {
  test("one item is boxed on the day its wait is over", () => {
    const problem = waitingProblem(1);
    const seen = new ItemDraws(problem, DRAWS);
    const fortunes = fortunesOf(problem, 5);
    const { days } = simulate(problem, plainOrder(problem), fortunes, ["waits"], DRAWS, (outcome, draw) =>
      seen.note(outcome, draw),
    );
    for (let d = 3; d <= 22; d++)
      expect(Math.abs(days.filter((day) => day <= d).length / DRAWS - over(d))).toBeLessThan(WIDE);
    const [chance] = seen.chances();
    // Beta(3, 3) reaches a tenth, half and nine tenths at 0.2466, 0.5 and 0.7534: the roots of the sum above.
    const expected = [2 + 20 * 0.2466, 12, 2 + 20 * 0.7534].map(Math.ceil);
    const from = dayNumber(problem.campaign.planFrom);
    const { p10, p50, p90 } = chance?.box ?? { p10: null, p50: null, p90: null };
    [p10, p50, p90].forEach((day, at) => {
      expect(Math.abs((day ? dayNumber(day) - from : 99) - (expected[at] ?? 0))).toBeLessThanOrEqual(1);
    });
    expect(chance).toMatchObject({ image: null, boxed: 1, late: 0, last: 1 });
  });

  test("the last of three: each goes with the season's air by half, so F³/2 + 3F²/8 + F/8", () => {
    // Largest of n: the product of their shares (David and Nagaraja, Order Statistics, 2.1; from memory). None or one of three with the air, half of the cases:
    // three waits apart; two with it, 3/8: two waits apart; all three, 1/8: one wait.
    const problem = waitingProblem(3);
    const { days } = simulate(problem, plainOrder(problem), fortunesOf(problem, 8), ["waits"], DRAWS);
    for (let d = 3; d <= 22; d++) {
      const f = over(d);
      const share = f ** 3 / 2 + (3 * f * f) / 8 + f / 8;
      expect(Math.abs(days.filter((day) => day <= d).length / DRAWS - share)).toBeLessThan(WIDE);
    }
  });

  test("a plan that ends before the wait may leave something, and says how often", () => {
    const whole = waitingProblem(1);
    const problem = { ...whole, days: whole.days.slice(0, 13) };
    const { left } = simulate(problem, plainOrder(problem), fortunesOf(problem, 5), ["waits"], DRAWS);
    expect(Math.abs(left.filter((count) => count > 0).length / DRAWS - (1 - over(12)))).toBeLessThan(WIDE);
  });
});
