import { type BoxSize, holds } from "./box-need.ts";

/** A size that some items need, and how many they are; a sampled kind counts for all it stands for. */
export interface Need {
  readonly size: BoxSize;
  readonly weight: number;
}

const SIDES = ["length", "width", "depth"] as const;
type Side = (typeof SIDES)[number];

/** Sizes worth ordering: each side is one that an item needs, and no smaller box would hold the same items.
 *  Where there would be more than `most`, sides are taken at fewer of the sizes, the largest always among them. */
export function candidateSizes(needs: readonly Need[], most: number): BoxSize[] {
  for (let levels = 24; ; levels--) {
    const found = tightSizes(needs, levels);
    if (found.length <= most || levels <= 2) return found;
  }
}

function tightSizes(needs: readonly Need[], levels: number): BoxSize[] {
  const [lengths, widths, depths] = SIDES.map((side) => levelsOf(needs, side, levels)) as [
    number[],
    number[],
    number[],
  ];
  const found = new Map<string, BoxSize>();
  for (const length of lengths)
    for (const width of widths)
      for (const depth of depths) {
        const tight = hullOf(needs.filter(({ size }) => holds({ length, width, depth }, size)));
        if (tight !== null) found.set(`${tight.length}:${tight.width}:${tight.depth}`, tight);
      }
  return [...found.values()];
}

/** Sizes of one side between which about as many items lie. */
function levelsOf(needs: readonly Need[], side: Side, levels: number): number[] {
  const sorted = [...needs].sort((a, b) => a.size[side] - b.size[side]);
  const all = sorted.reduce((sum, { weight }) => sum + weight, 0);
  const found = new Set<number>();
  let passed = 0;
  for (const { size, weight } of sorted) {
    const before = Math.floor((passed / all) * levels);
    passed += weight;
    if (Math.floor((passed / all) * levels) > before) found.add(size[side]);
  }
  const largest = sorted.at(-1)?.size[side];
  return [...(largest === undefined ? found : found.add(largest))];
}

const hullOf = (needs: readonly Need[]): BoxSize | null =>
  needs.length === 0
    ? null
    : needs.reduce<BoxSize>(
        (hull, { size }) => ({
          length: Math.max(hull.length, size.length),
          width: Math.max(hull.width, size.width),
          depth: Math.max(hull.depth, size.depth),
        }),
        { length: 0, width: 0, depth: 0 },
      );
