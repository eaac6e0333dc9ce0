import type { MedianProblem } from "../../src/core/stores/assortment/median-problem.ts";

/** What it costs to open one best site after the other: the plain way. */
export function firstSites({ clients, sites, costs, choose }: MedianProblem): number {
  let nearest = new Float64Array(clients).fill(Number.POSITIVE_INFINITY);
  for (let n = 0; n < choose; n++) {
    let best = { cost: Number.POSITIVE_INFINITY, nearest };
    for (let site = 0; site < sites; site++) {
      const next = nearest.map((cost, client) => Math.min(cost, costs[site * clients + client] ?? 0));
      const cost = next.reduce((sum, each) => sum + each, 0);
      if (cost < best.cost) best = { cost, nearest: next };
    }
    nearest = best.nearest;
  }
  return nearest.reduce((sum, each) => sum + each, 0);
}
