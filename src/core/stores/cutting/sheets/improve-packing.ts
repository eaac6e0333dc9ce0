import { seeded } from "../../../plan/chance.ts";
import { type ChooseStock, type Filled, fillSheets, type Manner } from "./fill-sheet.ts";
import { costOfPacking, fullness, isBetter, type Packing, smallestForAll } from "./first-packing.ts";
import { FITTING_RULES } from "./free-space.ts";
import type { PlainItem, PlainProblem } from "./sheet-problem.ts";

/** A packing may become this much less full on the way, at the beginning; at the end not at all. */
const DETOUR = 0.02;

/**
 * Clears one of the emptiest sheets and a few others, and fills as many anew in a shaken order, again and again.
 * Source: ruin and recreate, Schrimpf et al., Journal of Computational Physics 159 (2000), accepted as in record-to-record travel, Dueck
 * 1993; both from memory.
 */
export function improve(
  problem: PlainProblem,
  first: Packing,
  bound: number,
  { refills, seed }: { readonly refills: number; readonly seed: number },
): Packing {
  const draw = seeded(seed);
  let [now, best] = [first, first];
  for (let n = 0; n < refills; n++) {
    if (best.left.length === 0 && costOfPacking(problem, best) <= bound * (1 + 1e-9)) break;
    const next = refilled(problem, now, draw);
    const detour = DETOUR * (1 - n / refills) ** 2;
    if (isBetter(problem, next, now) || isNearly(problem, next, best, detour)) now = next;
    if (isBetter(problem, now, best)) best = now;
  }
  return best;
}

const isNearly = (problem: PlainProblem, next: Packing, best: Packing, detour: number): boolean =>
  next.left.length <= best.left.length &&
  costOfPacking(problem, next) <= costOfPacking(problem, best) + 1e-6 &&
  fullness(next) >= fullness(best) - detour;

function refilled(problem: PlainProblem, now: Packing, draw: () => number): Packing {
  const cleared = chosen(now.filled, draw);
  const kept = now.filled.filter((_, n) => !cleared.has(n));
  const pool = [...now.left, ...[...cleared].flatMap((n) => now.filled[n]?.items ?? [])];
  const free = problem.stocks.map(
    ({ count }, stock) => count - kept.filter((each) => each.stock === stock).length,
  );
  const order = shaken(problem, pool, draw);
  const before = [...cleared].map((n) => now.filled[n]?.stock ?? 0);
  const { filled, left } = fillSheets(problem, order, free, chooser(problem, before, draw), () =>
    manner(draw),
  );
  return { filled: [...kept, ...filled], left };
}

/** Two to four sheets, one of them among the emptier. */
function chosen(filled: readonly Filled[], draw: () => number): Set<number> {
  const byShare = [...filled.keys()].sort((a, b) => (filled[a]?.share ?? 0) - (filled[b]?.share ?? 0));
  const most = Math.min(filled.length, 2 + Math.floor(3 * draw()));
  const some = new Set([byShare[Math.floor(draw() ** 2 * byShare.length)] ?? 0]);
  while (some.size < most) some.add(Math.floor(draw() * filled.length));
  return filled.length === 0 ? new Set() : some;
}

/** Large before small, by area or by the longer side, each size taken up to a third larger or smaller than it is. */
function shaken(problem: PlainProblem, pool: readonly number[], draw: () => number): number[] {
  const [byArea, shake] = [draw() < 0.5, 0.6 * draw()];
  const keys = new Map(
    pool.map((n) => {
      const { width, height } = problem.items[n] as PlainItem;
      const size = byArea ? Math.sqrt(width * height) : Math.max(width, height);
      return [n, size * (1 + shake * (draw() - 0.5))];
    }),
  );
  return [...pool].sort((a, b) => (keys.get(b) ?? 0) - (keys.get(a) ?? 0));
}

const manner = (draw: () => number): Manner => ({
  rule: FITTING_RULES[Math.floor(draw() * FITTING_RULES.length)] ?? "area",
  along: draw() < 0.5 ? "short" : "long",
});

/** The stocks that were cleared, or the smallest that could hold the rest, or any. */
function chooser(problem: PlainProblem, before: readonly number[], draw: () => number): ChooseStock {
  const again = [...before].sort(() => draw() - 0.5);
  const smallest = smallestForAll(problem.stocks, problem.items);
  return (left, free) => {
    const usable = [...free.keys()].filter((n) => (free[n] as number) > 0);
    if (usable.length <= 1) return usable[0] ?? null;
    const luck = draw();
    const next = again.pop();
    if (luck < 0.5 && next !== undefined && usable.includes(next)) return next;
    return luck < 0.8 ? smallest(left, free) : (usable[Math.floor(draw() * usable.length)] ?? null);
  };
}
