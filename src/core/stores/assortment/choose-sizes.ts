import type { Solve } from "../../plan/programme.ts";
import { type BoxCosts, type Boxed, type BoxSize, boxFor, holds, paddingMinutes } from "./box-need.ts";
import { candidateSizes, type Need } from "./candidate-sizes.ts";
import type { MedianProblem } from "./median-problem.ts";
import { chooseSites } from "./p-median.ts";

export interface SizesAsked {
  /** mm in each direction. */
  readonly clearance: number;
  readonly costs: BoxCosts;
  /** Of the items, that must fit a box, 0 to 1. */
  readonly share: number;
  /** Numbers of sizes looked at: 1 to this. */
  readonly most: number;
}

/** The best few sizes of one number. */
export interface SizeChoice {
  readonly sizes: readonly BoxSize[];
  /** Of the items that fit one of them, 0 to 1. */
  readonly share: number;
  readonly paddingMinutes: number;
  readonly ownMinutes: number;
  /** Of padding and boxes made to measure; no choice among the sizes tried costs less than `bound`. */
  readonly minutes: number;
  readonly bound: number;
  readonly proved: boolean;
}

export interface Assortment {
  readonly choices: readonly SizeChoice[];
  /** Sizes that were tried. */
  readonly candidates: number;
}

/** Sizes tried at most: with more the proof takes long, and the choice hardly betters. */
const MOST_CANDIDATES = 120;

/** For one size, two, three …: which to order so that the team pads and makes to measure as little as can be. */
export async function chooseSizes(
  items: readonly Boxed[],
  asked: SizesAsked,
  solve: Solve | null,
): Promise<Assortment> {
  const needs = needsOf(items, asked.clearance);
  const candidates = candidateSizes(needs, MOST_CANDIDATES);
  const choices: SizeChoice[] = [];
  for (let count = 1; count <= Math.min(asked.most, candidates.length); count++)
    choices.push(await choiceOf(needs, candidates, count, asked, solve));
  return { choices, candidates: candidates.length };
}

/** Every size needed with how many need it; those of a kind that are measured stand for all of it. */
export function needsOf(items: readonly Boxed[], clearance: number): Need[] {
  const kinds = new Map<string, { all: number; measured: number }>();
  for (const { kind, size } of items) {
    const of = kinds.get(kind) ?? { all: 0, measured: 0 };
    kinds.set(kind, { all: of.all + 1, measured: of.measured + (size === null ? 0 : 1) });
  }
  const needs = new Map<string, Need>();
  for (const { kind, size: own } of items) {
    if (own === null) continue;
    const size = boxFor(own, clearance);
    const { all = 1, measured = 1 } = kinds.get(kind) ?? {};
    const key = `${size.length}:${size.width}:${size.depth}`;
    needs.set(key, { size, weight: (needs.get(key)?.weight ?? 0) + all / measured });
  }
  return [...needs.values()];
}

/** Costs are rounded to this, minutes: it makes the proof short. */
const GRAIN = 0.01;
const rounded = (minutes: number): number => Math.round(minutes / GRAIN) * GRAIN;

/** Boxes made to measure are reckoned dearer until enough fit. */
const DEARER = [1, 1.5, 2, 3, 5, 8, 13, 21, 34, 100];

async function choiceOf(
  needs: readonly Need[],
  candidates: readonly BoxSize[],
  count: number,
  { costs, share }: SizesAsked,
  solve: Solve | null,
): Promise<SizeChoice> {
  let last: SizeChoice | null = null;
  for (const times of DEARER) {
    const problem = medianOf(needs, candidates, count, { ...costs, ownMinutes: costs.ownMinutes * times });
    const found = await chooseSites(problem, solve, { steps: 300, step: GRAIN });
    const sizes = found.chosen.map((site) => candidates[site] as BoxSize);
    const sum = sumOf(needs, sizes, costs);
    last = { sizes, ...sum, bound: found.bound, proved: found.proved };
    if (times > 1) last = { ...last, bound: Math.min(last.minutes, found.bound) };
    if (sum.share >= share - 1e-9) break;
  }
  return last as SizeChoice; // there is at least one price
}

function medianOf(
  needs: readonly Need[],
  candidates: readonly BoxSize[],
  choose: number,
  costs: BoxCosts,
): MedianProblem {
  const table = new Float64Array(needs.length * candidates.length);
  candidates.forEach((box, site) => {
    needs.forEach(({ size, weight }, client) => {
      table[site * needs.length + client] = holds(box, size)
        ? rounded(weight * paddingMinutes(box, size, costs))
        : Number.POSITIVE_INFINITY;
    });
  });
  return {
    clients: needs.length,
    sites: candidates.length,
    costs: table,
    without: Float64Array.from(needs, ({ weight }) => rounded(weight * costs.ownMinutes)),
    choose,
  };
}

/** The box an item goes into: the one that leaves least empty; null when none holds it. */
export function boxOf(need: BoxSize, sizes: readonly BoxSize[], costs: BoxCosts): BoxSize | null {
  let best: BoxSize | null = null;
  for (const box of sizes)
    if (
      holds(box, need) &&
      (best === null || paddingMinutes(box, need, costs) < paddingMinutes(best, need, costs))
    )
      best = box;
  return best;
}

function sumOf(
  needs: readonly Need[],
  sizes: readonly BoxSize[],
  costs: BoxCosts,
): Pick<SizeChoice, "share" | "paddingMinutes" | "ownMinutes" | "minutes"> {
  let [all, fit, padding] = [0, 0, 0];
  for (const { size, weight } of needs) {
    all += weight;
    const box = boxOf(size, sizes, costs);
    if (box === null) continue;
    fit += weight;
    padding += weight * paddingMinutes(box, size, costs);
  }
  const ownMinutes = (all - fit) * costs.ownMinutes;
  return {
    share: all === 0 ? 1 : fit / all,
    paddingMinutes: padding,
    ownMinutes,
    minutes: padding + ownMinutes,
  };
}
