import type { Solve } from "../../../plan/programme.ts";
import { cutCost, descend, type Standing } from "./descend.ts";
import { exactLengths, patternsBelow } from "./exact-lengths.ts";
import { greedyLengths } from "./greedy-lengths.ts";
import { gathered, type LengthCut, type LengthProblem, patternsCost } from "./length-problem.ts";
import { PatternLp } from "./pattern-lp.ts";

/** How much is looked at; counts, so that the answer does not hang on the clock. */
export interface LengthEffort {
  /** Programmes of the first, short descent, and of the last with detours. */
  readonly shortSolves: number;
  readonly longSolves: number;
  readonly detours: number;
  /** Patterns given to the exact search at most. */
  readonly patterns: number;
}
export const LENGTH_EFFORT: LengthEffort = {
  shortSolves: 250,
  longSolves: 1500,
  detours: 2,
  patterns: 10_000,
};
/** So few patterns are searched at once, without a descent before. */
const FEW_PATTERNS = 1500;
const PRICE_LOOKS = 8;

/**
 * The cheapest way found to cut all pieces, with a proved bound from below: longest first into the tightest room, then a descent by the
 * programme of patterns, then, with a solver at hand, every pattern that a better way could contain.
 * @param solve the optimiser; without it nothing is searched exactly
 */
export async function cutLengths(
  problem: LengthProblem,
  solve: Solve | null = null,
  effort: LengthEffort = LENGTH_EFFORT,
): Promise<LengthCut> {
  const longest = Math.max(0, ...problem.stocks.filter(({ count }) => count > 0).map(({ length }) => length));
  const fits = problem.pieces.map(({ length }) => length <= longest);
  const wanted = Int32Array.from(problem.pieces, ({ count }, n) => (fits[n] ? count : 0));
  if (wanted.every((count) => count === 0)) return nothing(problem);
  const { best, bound } = await search(problem, wanted, solve, effort);
  const cost = patternsCost(best.patterns, problem.stocks);
  const all = best.missing.every((count) => count === 0);
  return {
    patterns: gathered(best.patterns),
    cost,
    bound: Math.min(cost, bound),
    proved: all && cost <= bound + 1e-6,
    missing: best.missing.map((count, n) => count + (fits[n] ? 0 : (problem.pieces[n]?.count ?? 0))),
  };
}

const nothing = ({ pieces }: LengthProblem): LengthCut => ({
  patterns: [],
  cost: 0,
  bound: 0,
  proved: pieces.every(({ count }) => count === 0),
  missing: Int32Array.from(pieces, ({ count }) => count),
});

async function search(
  problem: LengthProblem,
  wanted: Int32Array,
  solve: Solve | null,
  effort: LengthEffort,
): Promise<Standing> {
  const lp = new PatternLp(problem, wanted);
  const best = greedyLengths(problem, wanted);
  const bestCost = cutCost(best, problem, lp.lastResort);
  const standing: Standing = { best, bestCost, bound: lp.floorOf(wanted, []) };
  const isDone = (): boolean => standing.bestCost <= standing.bound + 1e-9;
  const exact = async (most: number): Promise<void> => {
    if (solve === null || isDone()) return;
    const target = standing.bestCost - lp.step;
    const patterns = patternsBelow(target, problem, wanted, lp.middlePrices(wanted, PRICE_LOOKS), most);
    if (patterns === null) return;
    const found =
      patterns.length === 0 ? "none" : await exactLengths(target, patterns, problem, wanted, solve);
    if (found === "none") standing.bound = Math.max(standing.bound, standing.bestCost);
    else if (found !== "unknown") {
      standing.best = { patterns: found, missing: new Int32Array(wanted.length) };
      standing.bestCost = patternsCost(found, problem.stocks);
    }
  };
  await exact(FEW_PATTERNS);
  if (!isDone()) descend(lp, standing, wanted, { detours: 1, solves: effort.shortSolves });
  await exact(effort.patterns);
  if (!isDone()) descend(lp, standing, wanted, { detours: effort.detours, solves: effort.longSolves });
  return standing;
}
