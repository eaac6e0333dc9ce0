import { type ChooseStock, type Filled, fillSheets, type Manner } from "./fill-sheet.ts";
import { FITTING_RULES } from "./free-space.ts";
import type { PlainItem, PlainProblem } from "./sheet-problem.ts";

/** All sheets with what lies on them, and what found no room. */
export interface Packing {
  readonly filled: readonly Filled[];
  readonly left: readonly number[];
}

const ORDERS: readonly ((item: PlainItem) => number)[] = [
  ({ width, height }) => width * height,
  ({ width, height }) => Math.max(width, height) + 1e-4 * Math.min(width, height),
  ({ height, width }) => height + 1e-4 * width,
  ({ width, height }) => width + 1e-4 * height,
  ({ width, height }) => width + height,
];

/** The best of the usual orders and rules, largest first. */
export function firstPacking(problem: PlainProblem, items: readonly number[]): Packing {
  const free = problem.stocks.map(({ count }) => count);
  let best: Packing | null = null;
  for (const size of ORDERS) {
    const order = [...items].sort(
      (a, b) => size(problem.items[b] as PlainItem) - size(problem.items[a] as PlainItem) || a - b,
    );
    for (const rule of FITTING_RULES)
      for (const along of problem.edgeToEdge ? (["short", "long"] as const) : (["short"] as const))
        for (const choose of choicesOf(problem)) {
          const manner: Manner = { rule, along };
          const found = fillSheets(problem, order, free, choose, () => manner);
          if (best === null || isBetter(problem, found, best)) best = found;
        }
  }
  return best ?? { filled: [], left: items };
}

/** The cheapest for its area first, or the largest first, or the smallest that could hold all that is left. */
function choicesOf({ stocks, items }: PlainProblem): readonly ChooseStock[] {
  const area = (n: number): number => (stocks[n]?.width ?? 0) * (stocks[n]?.height ?? 0);
  const first =
    (by: (n: number) => number): ChooseStock =>
    (_, free) =>
      [...free.keys()].filter((n) => (free[n] as number) > 0).sort((a, b) => by(a) - by(b))[0] ?? null;
  if (stocks.length === 1) return [first(() => 0)];
  return [
    first((n) => (stocks[n]?.cost ?? 0) / area(n)),
    first((n) => -area(n)),
    smallestForAll(stocks, items),
  ];
}

export const smallestForAll =
  (stocks: PlainProblem["stocks"], items: PlainProblem["items"]): ChooseStock =>
  (left, free) => {
    const all = left.reduce((sum, n) => sum + (items[n]?.width ?? 0) * (items[n]?.height ?? 0), 0);
    const area = (n: number): number => (stocks[n]?.width ?? 0) * (stocks[n]?.height ?? 0);
    const sorted = [...free.keys()].filter((n) => (free[n] as number) > 0).sort((a, b) => area(a) - area(b));
    return sorted.find((n) => area(n) >= all) ?? sorted.at(-1) ?? null;
  };

const leftArea = ({ items }: PlainProblem, { left }: Packing): number =>
  left.reduce((sum, n) => sum + (items[n]?.width ?? 0) * (items[n]?.height ?? 0), 0);
export const costOfPacking = ({ stocks }: PlainProblem, { filled }: Packing): number =>
  filled.reduce((sum, { stock }) => sum + (stocks[stock]?.cost ?? 0), 0);
/** Full sheets beside empty ones are nearer to one sheet less than all half full. */
export const fullness = ({ filled }: Packing): number =>
  filled.reduce((sum, { share }) => sum + share * share, 0);

/** Less is left over; then less is used; then the sheets are fuller. */
export function isBetter(problem: PlainProblem, one: Packing, other: Packing): boolean {
  const [left, leftOther] = [leftArea(problem, one), leftArea(problem, other)];
  if (Math.abs(left - leftOther) > 1e-6) return left < leftOther;
  const [cost, costOther] = [costOfPacking(problem, one), costOfPacking(problem, other)];
  if (Math.abs(cost - costOther) > 1e-6) return cost < costOther;
  return fullness(one) > fullness(other) + 1e-12;
}
