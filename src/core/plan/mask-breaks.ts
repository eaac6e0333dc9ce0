import type { PlanProblem } from "./problem.ts";

/** Minutes of break on a day with so many minutes of work near mould: one between any two spells with a mask, clearing up being worn too. */
export function breakMinutes(
  { campaign, overhead }: Pick<PlanProblem, "campaign" | "overhead">,
  near: number,
): number {
  const { maskMinutes, maskBreakMinutes } = campaign.limits;
  if (maskMinutes.value <= 0) return 0;
  const spells = Math.ceil((near + overhead.exposed) / maskMinutes.value - 1e-9);
  return Math.max(0, spells - 1) * maskBreakMinutes.value;
}

/** Work near mould that fills whole spells, and the most there may be: between them a day's worth rises evenly. */
export function wholeSpells({ campaign, overhead }: PlanProblem, most: number): number[] {
  const spell = campaign.limits.maskMinutes.value;
  const whole: number[] = [];
  for (let near = spell - overhead.exposed; spell > 0 && near < most; near += spell)
    if (near > 0) whole.push(near);
  return [...whole, most];
}
