import { type GreedyCut, greedyLengths } from "./greedy-lengths.ts";
import { type LengthPattern, type LengthProblem, patternsCost } from "./length-problem.ts";
import type { PatternLp, UsedPattern } from "./pattern-lp.ts";

/** The best way of cutting so far and what none can be cheaper than. */
export interface Standing {
  best: GreedyCut;
  bestCost: number;
  bound: number;
}

interface Walk {
  readonly lp: PatternLp;
  readonly standing: Standing;
  readonly lastSolve: number;
}

/**
 * Fixes the most used pattern of the programme again and again; where that cannot end well, another one, as often as there are detours.
 * @param solves programmes solved at most
 * Source: diving with limited discrepancies, Sadykov et al., INFORMS Journal on Computing 31 (2019), from memory.
 */
export function descend(
  lp: PatternLp,
  standing: Standing,
  wanted: Int32Array,
  { detours, solves }: { readonly detours: number; readonly solves: number },
): void {
  step({ lp, standing, lastSolve: lp.solves + solves }, wanted, [], detours, new Set());
}

/** @returns whether the search is over */
function step(
  walk: Walk,
  wanted: Int32Array,
  fixed: readonly LengthPattern[],
  detours: number,
  passedOver: ReadonlySet<number>,
): boolean {
  const { lp, standing } = walk;
  if (isOver(walk)) return true;
  const floor = patternsCost(fixed, lp.problem.stocks) + lp.floorOf(wanted, fixed);
  if (floor >= standing.bestCost - 1e-9) return false;
  const used = lp.used().sort((a, b) => b.amount - a.amount || a.column - b.column);
  keepIfBetter(walk, fixed, wanted);
  const whole = used.filter(({ amount }) => amount > 1 - 1e-6);
  const open = used.filter(({ column }) => !passedOver.has(column)).slice(0, detours + 1);
  const ways = whole.length > 0 ? [whole] : open.map((each) => [{ ...each, amount: 1 }]);
  const passed = new Set(passedOver);
  for (const [n, choice] of ways.entries()) {
    const { left, more } = fix(choice, wanted);
    if (more.length > 0 && step(walk, left, [...fixed, ...more], detours - n, passed)) return true;
    for (const { column } of choice) passed.add(column);
  }
  return isOver(walk);
}

const isOver = ({ standing, lp, lastSolve }: Walk): boolean =>
  standing.bestCost <= standing.bound + 1e-9 || lp.solves >= lastSolve;

/** Takes the patterns as often as they are used whole, without pieces that are no longer wanted. */
function fix(
  choices: readonly UsedPattern[],
  wanted: Int32Array,
): { readonly left: Int32Array; readonly more: LengthPattern[] } {
  const left = Int32Array.from(wanted);
  const more: LengthPattern[] = [];
  for (const { stock, counts: full, amount } of choices)
    for (let n = 0; n < Math.floor(amount + 1e-6); n++) {
      const counts = full.map((count, piece) => Math.min(count, left[piece] as number));
      if (counts.every((count) => count === 0)) break;
      counts.forEach((count, piece) => {
        left[piece] = (left[piece] as number) - count;
      });
      more.push({ stock, counts, times: 1 });
    }
  return { left, more };
}

/** Cuts what is left the plain way and keeps the whole when it is the best so far. */
function keepIfBetter({ lp, standing }: Walk, fixed: readonly LengthPattern[], wanted: Int32Array): void {
  const stocks = lp.problem.stocks.map((stock, n) => ({
    ...stock,
    count: stock.count - fixed.reduce((sum, each) => sum + (each.stock === n ? each.times : 0), 0),
  }));
  const rest = greedyLengths({ ...lp.problem, stocks }, wanted);
  const cut = { patterns: [...fixed, ...rest.patterns], missing: rest.missing };
  const cost = cutCost(cut, lp.problem, lp.lastResort);
  if (cost < standing.bestCost - 1e-9) Object.assign(standing, { best: cut, bestCost: cost });
}

/** With what goes without at the price of the last resort. */
export const cutCost = (
  { patterns, missing }: GreedyCut,
  { stocks }: LengthProblem,
  lastResort: number,
): number => patternsCost(patterns, stocks) + missing.reduce((sum, each) => sum + each, 0) * lastResort;
