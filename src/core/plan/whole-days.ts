import type { CampaignProgramme } from "./campaign-programme.ts";
import type { Programme, Solve, Solved } from "./programme.ts";

/** An answer with whole exposed days, the bound it is held against, and the prices of the relaxed programme. */
export interface WholeAnswer {
  readonly values: Float64Array;
  readonly objective: number;
  readonly bound: number;
  readonly duals: Float64Array;
}

/**
 * Solves the relaxed programme for the bound, rounds each person's running total of exposed days, and solves again with those days fixed.
 * Rounding the running total keeps every limit on consecutive days: a sum of at most n before is a sum of at most n after.
 * When the gap is still over `gap`, the mixed-integer solver takes over.
 */
export async function solveWholeDays(
  parts: CampaignProgramme,
  solve: Solve,
  gap: number,
): Promise<WholeAnswer> {
  const { programme } = parts;
  const relaxed = await solve(programme, { relaxed: true, gap: 0 });
  if (relaxed.status !== "optimal") throw new Error(`The relaxed programme ended as "${relaxed.status}".`);
  let best: Solved | null = null;
  for (const carry of [0.95, 0.5]) {
    const fixed = withDays(programme, roundedDays(parts, relaxed.values, carry));
    const answer = await solve(fixed, { relaxed: true, gap: 0 });
    if (answer.status === "optimal" && (!best || answer.objective < best.objective)) best = answer;
    if (best && gapOf(best.objective, relaxed.objective) <= gap) break;
  }
  let bound = relaxed.objective;
  if (!best || gapOf(best.objective, bound) > gap) {
    const searched = await solve(programme, { relaxed: false, gap });
    bound = Math.max(bound, searched.bound);
    if (searched.values.length > 0 && (!best || searched.objective < best.objective)) best = searched;
  }
  // Stopped before whole days were found: the guide follows shares of days.
  best ??= relaxed;
  return { values: best.values, objective: best.objective, bound, duals: relaxed.duals };
}

export const gapOf = (objective: number, bound: number): number =>
  objective <= 0 ? 0 : Math.max(0, (objective - bound) / objective);

function roundedDays(parts: CampaignProgramme, values: Float64Array, carry: number): Map<number, number> {
  const days = new Map<number, number>();
  for (const columns of parts.exposedDays) {
    let total = 0;
    let given = 0;
    for (const column of columns) {
      if (column < 0) continue;
      total += values[column] ?? 0;
      const whole = Math.floor(total + carry + 1e-6);
      days.set(column, whole - given);
      given = whole;
    }
  }
  return days;
}

function withDays(programme: Programme, days: ReadonlyMap<number, number>): Programme {
  const lower = programme.lower.slice();
  const upper = programme.upper.slice();
  for (const [column, whole] of days) {
    lower[column] = whole;
    upper[column] = whole;
  }
  return { ...programme, lower, upper };
}
