import type { MedianProblem } from "../../src/core/stores/assortment/median-problem.ts";

/** A p-median problem of the OR-Library: vertices, edges and p; then edges. An edge that comes twice counts as it came last; the cost
 *  of a client at a site is the shortest way. Source of the format: Beasley, EJOR 21 (1985), as described beside the files. */
export function readMedian(text: string): MedianProblem {
  const [head = [], ...edges] = text
    .trim()
    .split(/\r?\n/)
    .map((line) => line.trim().split(/\s+/).map(Number));
  const [count = 0, , choose = 0] = head;
  const costs = new Float64Array(count * count).fill(1e9);
  for (let n = 0; n < count; n++) costs[n * count + n] = 0;
  for (const [from = 0, to = 0, cost = 0] of edges) {
    costs[(from - 1) * count + to - 1] = cost;
    costs[(to - 1) * count + from - 1] = cost;
  }
  shorten(costs, count);
  const without = new Float64Array(count).fill(Number.POSITIVE_INFINITY);
  return { clients: count, sites: count, costs, without, choose };
}

/** All shortest ways. Source: Floyd 1962, from memory. */
function shorten(costs: Float64Array, count: number): void {
  for (let via = 0; via < count; via++)
    for (let from = 0; from < count; from++) {
      const half = costs[from * count + via] ?? 0;
      if (half >= 1e9) continue;
      for (let to = 0; to < count; to++) {
        const way = half + (costs[via * count + to] ?? 0);
        if (way < (costs[from * count + to] ?? 0)) costs[from * count + to] = way;
      }
    }
}
