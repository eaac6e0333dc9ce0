import { seeded } from "../../../plan/chance.ts";
import { down, scalesFor, tenths } from "./area-bound.ts";
import type { PlainItem } from "./sheet-problem.ts";
import { type Laid, layOnRoll } from "./skyline.ts";

export interface RollCut {
  readonly laid: readonly Laid[];
  /** Of the roll, mm. */
  readonly length: number;
  readonly bound: number;
  readonly proved: boolean;
}

export interface RollEffort {
  /** Items laid at most, over all layings: how many are tried falls with the number of items. */
  readonly steps: number;
  readonly seed: number;
}
export const ROLL_EFFORT: RollEffort = { steps: 1_000_000, seed: 1 };

/**
 * The shortest stretch of a roll found for all items; each must fit across it. Orders by size first, then two change places at a time.
 * @param width of the roll, mm
 */
export function cutRoll(
  items: readonly PlainItem[],
  width: number,
  { steps, seed }: RollEffort = ROLL_EFFORT,
): RollCut {
  const bound = rollBound(items, width);
  if (items.length === 0) return { laid: [], length: 0, bound: 0, proved: true };
  const draw = seeded(seed);
  const starts = startingOrders(items).map((order) => ({ order, ...layOnRoll(items, order, width) }));
  starts.sort((a, b) => a.length - b.length);
  let best = starts[0] as (typeof starts)[number];
  let now = best;
  const tries = Math.max(200, Math.floor(steps / items.length));
  for (let n = 0; n < tries && best.length > bound + 1e-6; n++) {
    const order = exchanged(now.order, draw);
    const next = { order, ...layOnRoll(items, order, width) };
    const allowed = best.length * (1 + 0.02 * (1 - n / tries) ** 2);
    if (next.length <= now.length || next.length < allowed) now = next;
    if (next.length < best.length - 1e-9) best = next;
  }
  return { laid: best.laid, length: best.length, bound, proved: best.length <= bound + 1e-6 };
}

function startingOrders(items: readonly PlainItem[]): Int32Array[] {
  const keys: readonly ((item: PlainItem) => number)[] = [
    ({ width, height }) => width * height,
    ({ width }) => width,
    ({ height }) => height,
    ({ width, height }) => Math.max(width, height),
  ];
  return keys.map((key) =>
    Int32Array.from(
      [...items.keys()].sort((a, b) => key(items[b] as PlainItem) - key(items[a] as PlainItem)),
    ),
  );
}

function exchanged(order: Int32Array, draw: () => number): Int32Array {
  const next = Int32Array.from(order);
  const [a, b] = [Math.floor(draw() * next.length), Math.floor(draw() * next.length)];
  [next[a], next[b]] = [next[b] as number, next[a] as number];
  return next;
}

/** No shorter stretch can hold them: by their areas with the widths stretched, and by the longest of them. mm */
export function rollBound(items: readonly PlainItem[], width: number): number {
  const lengths = items.flatMap((item) =>
    item.mayTurn ? [down(item.width), down(item.height)] : [down(item.width)],
  );
  const whole = tenths(width);
  const areas = scalesFor(whole, lengths).map((scale) =>
    items.reduce((sum, item) => {
      const upright =
        down(item.width) <= whole ? scale(down(item.width)) * item.height : Number.POSITIVE_INFINITY;
      const turned =
        item.mayTurn && down(item.height) <= whole
          ? scale(down(item.height)) * item.width
          : Number.POSITIVE_INFINITY;
      return sum + Math.min(upright, turned);
    }, 0),
  );
  const tallest = Math.max(
    0,
    ...items.map((item) => (item.mayTurn ? Math.min(item.width, item.height) : item.height)),
  );
  return Math.max(tallest, ...areas);
}
