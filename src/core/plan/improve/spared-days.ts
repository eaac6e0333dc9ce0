import type { PlanProblem } from "../problem.ts";
import type { Trial } from "./best-manner.ts";

/** Share of the changes that give a spared day back. */
const GIVEN_BACK = 0.25;

/**
 * The trial's problem with one more exposed day of somebody's kept clean, or one given back: two photographers near mould on the same day
 * leave the camera idle, which nobody sees who decides for each alone. A plan of the stricter problem is a plan of the problem as it is.
 */
export function spareADay(
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
  const [person, d] = chosen;
  const hands = at.hands.map((hand, p) => {
    if (p !== person) return hand;
    const nearMinutes = hand.nearMinutes.slice();
    nearMinutes[d] = givenBack ? (problem.hands[p]?.nearMinutes[d] ?? 0) : 0;
    return { ...hand, nearMinutes };
  });
  return { ...at, hands };
}
