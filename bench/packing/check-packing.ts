import type { LengthCut, LengthProblem } from "../../src/core/stores/cutting/lengths/length-problem.ts";

/** Reads a finished packing by itself: what overlaps, lies outside, is cut twice or not at all. */

interface Placed {
  readonly x: number;
  readonly y: number;
  readonly width: number;
  readonly height: number;
}

export function faultsOfLayout(placed: readonly Placed[], width: number, height: number): string[] {
  const faults: string[] = [];
  placed.forEach((a, n) => {
    if (a.x < -1e-6 || a.y < -1e-6 || a.x + a.width > width + 1e-6 || a.y + a.height > height + 1e-6)
      faults.push(`a piece at ${a.x}, ${a.y} lies outside`);
    for (const b of placed.slice(n + 1))
      if (
        a.x < b.x + b.width - 1e-6 &&
        b.x < a.x + a.width - 1e-6 &&
        a.y < b.y + b.height - 1e-6 &&
        b.y < a.y + a.height - 1e-6
      )
        faults.push(`pieces at ${a.x}, ${a.y} and ${b.x}, ${b.y} overlap`);
  });
  return faults;
}

/** Sizes wanted and sizes laid, both as a sorted list. */
export const faultsOfSizes = (
  wanted: readonly (readonly [number, number])[],
  laid: readonly Placed[],
): string[] => {
  const list = (sizes: readonly (readonly [number, number])[]): string =>
    sizes
      .map(([width, height]) => `${Math.round(width * 1e3)}x${Math.round(height * 1e3)}`)
      .sort()
      .join();
  return list(wanted) === list(laid.map(({ width, height }) => [width, height] as const))
    ? []
    : ["the pieces laid are not the pieces wanted"];
};

export function faultsOfLengths({ stocks, pieces }: LengthProblem, { patterns }: LengthCut): string[] {
  const cut = pieces.map((_, n) =>
    patterns.reduce((sum, { counts, times }) => sum + times * (counts[n] ?? 0), 0),
  );
  const tooLong = patterns.filter(
    ({ counts, stock }) =>
      counts.reduce((sum, count, n) => sum + count * (pieces[n]?.length ?? 0), 0) >
      (stocks[stock]?.length ?? 0),
  );
  return [
    ...tooLong.map(() => "a pattern is longer than its stock"),
    ...(cut.every((count, n) => count === pieces[n]?.count)
      ? []
      : ["the pieces cut are not the pieces wanted"]),
  ];
}
