import { seeded } from "../../plan/chance.ts";
import { quantileOf } from "../../plan/risk/quantile.ts";
import { type BoxCosts, type Boxed, type BoxSize, boxFor } from "./box-need.ts";
import { boxOf } from "./choose-sizes.ts";

export interface Range {
  readonly p10: number;
  readonly p50: number;
  readonly p90: number;
}

/** How many boxes of a size are wanted, in one of ten, half, nine of ten draws. */
export interface SizeWanted {
  readonly size: BoxSize;
  readonly wanted: Range;
}

export interface FitChance {
  /** Of all items, that fit one of the sizes. */
  readonly share: Range;
  readonly sizes: readonly SizeWanted[];
  /** Boxes to make to measure. */
  readonly own: Range;
}

/**
 * What the sizes would hold when every measure may be off and items without one are drawn from those of their kind.
 * The measured ones of a kind are drawn with replacement before they stand for the others: a small sample is a doubtful one.
 * @param tolerance each measure may be this far off, mm, all errors equally likely
 * Source: bootstrap, Efron, Annals of Statistics 7 (1979), from memory.
 */
export function fitChance(
  items: readonly Boxed[],
  sizes: readonly BoxSize[],
  {
    clearance,
    costs,
    tolerance,
    draws,
    seed,
  }: {
    readonly clearance: number;
    readonly costs: BoxCosts;
    readonly tolerance: number;
    readonly draws: number;
    readonly seed: number;
  },
): FitChance {
  const draw = seeded(seed);
  const shares: number[] = [];
  const owns: number[] = [];
  const wanted = sizes.map(() => [] as number[]);
  const off = (mm: number): number => mm + tolerance * (2 * draw() - 1);
  for (let n = 0; n < draws; n++) {
    const counts = new Map<BoxSize, number>();
    let own = 0;
    let all = 0;
    for (const { length, width, depth } of drawnSizes(items, draw)) {
      all++;
      const need = boxFor({ length: off(length), width: off(width), depth: off(depth) }, clearance);
      const box = boxOf(need, sizes, costs);
      if (box === null) own++;
      else counts.set(box, (counts.get(box) ?? 0) + 1);
    }
    shares.push(all === 0 ? 1 : 1 - own / all);
    owns.push(own);
    sizes.forEach((size, k) => {
      wanted[k]?.push(counts.get(size) ?? 0);
    });
  }
  return {
    share: rangeOf(shares),
    own: rangeOf(owns),
    sizes: sizes.map((size, k) => ({ size, wanted: rangeOf(wanted[k] ?? []) })),
  };
}

/** Every item's size: its own, or one of its kind; kinds nobody measured are left out. */
function drawnSizes(items: readonly Boxed[], draw: () => number): BoxSize[] {
  const some = <T>(list: readonly T[]): T => list[Math.floor(draw() * list.length)] as T;
  const samples = new Map<string, BoxSize[]>();
  const sampleOf = (kind: string): BoxSize[] => {
    const known = samples.get(kind);
    if (known) return known;
    const measured = items.flatMap((item) => (item.kind === kind && item.size ? [item.size] : []));
    const sample = measured.map(() => some(measured));
    samples.set(kind, sample);
    return sample;
  };
  return items.flatMap(({ size, kind }) => {
    if (size !== null) return [size];
    const sample = sampleOf(kind);
    return sample.length === 0 ? [] : [some(sample)];
  });
}

const rangeOf = (values: readonly number[]): Range => {
  const sorted = Float64Array.from(values).sort();
  return { p10: quantileOf(sorted, 0.1), p50: quantileOf(sorted, 0.5), p90: quantileOf(sorted, 0.9) };
};
