import type { PlanProblem } from "../problem.ts";
import type { Trial } from "./best-manner.ts";

/** Share of the changes that give spared days back. */
const GIVEN_BACK = 0.25;
/** Days of the stretch in which somebody is spared. From trials. */
const STRETCHES = [1, 1, 7, 28];

/**
 * The trial's problem with somebody kept clean in a stretch of days, or given days near mould back: two photographers near mould on the same
 * day leave the camera idle, which nobody sees who decides for each alone. A plan of the stricter problem is a plan of the problem as it is.
 */
export function spareSomeDays(
  problem: PlanProblem,
  { problem: at, day }: Trial,
  draw: () => number,
): PlanProblem {
  const spared: [person: number, day: number][] = [];
  const exposed: [person: number, day: number][] = [];
  problem.hands.forEach(({ nearMinutes }, p) => {
    nearMinutes.forEach((minutes, d) => {
      if (minutes !== at.hands[p]?.nearMinutes[d]) spared.push([p, d]);
      else if (day.exposed[p]?.[d]) exposed.push([p, d]);
    });
  });
  const givenBack = spared.length > 0 && draw() < GIVEN_BACK;
  const among = givenBack ? spared : exposed;
  const chosen = among[Math.floor(draw() * among.length)];
  if (!chosen) return at;
  const [person, from] = chosen;
  const to = from + (STRETCHES[Math.floor(draw() * STRETCHES.length)] as number);
  const hands = at.hands.map((hand, p) => {
    if (p !== person) return hand;
    const whole = problem.hands[p]?.nearMinutes ?? hand.nearMinutes;
    const nearMinutes = hand.nearMinutes.map((minutes, d) =>
      d < from || d >= to ? minutes : givenBack ? (whole[d] as number) : 0,
    );
    return { ...hand, nearMinutes };
  });
  return { ...at, hands };
}
