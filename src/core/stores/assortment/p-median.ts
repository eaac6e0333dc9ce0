import type { Solve } from "../../plan/programme.ts";
import { exactSites } from "./exact-sites.ts";
import { interchange } from "./interchange.ts";
import { lagrangian } from "./lagrangian.ts";
import type { MedianProblem } from "./median-problem.ts";

export interface MedianAnswer {
  readonly chosen: readonly number[];
  readonly cost: number;
  /** No choice costs less. */
  readonly bound: number;
  readonly proved: boolean;
}

export interface MedianEffort {
  /** Steps of the price search. */
  readonly steps: number;
  /** Two choices differ by this at least, or need not be told apart: 1 where all costs are whole numbers. */
  readonly step: number;
}
/** So often at most a better choice is looked for exactly; each ends the search or betters the choice. */
const MOST_ROUNDS = 20;

/**
 * The best sites. Prices of the clients give a bound and a guide; exchanging one chosen site for another betters each guess; what the
 * bound leaves open is solved exactly.
 * Sources: Lagrangian bound and reduction, Christofides and Beasley, European Journal of OR 10 (1982); exchange, Teitz and Bart, Operations
 * Research 16 (1968); both from memory.
 * @param solve the optimiser; without it the choice stands beside its bound
 */
export async function chooseSites(
  problem: MedianProblem,
  solve: Solve | null,
  { steps, step }: MedianEffort,
): Promise<MedianAnswer> {
  let best = interchange(problem, firstChoice(problem));
  const found = lagrangian(problem, steps, best.cost, (chosen) => {
    const better = interchange(problem, chosen);
    if (better.cost < best.cost) best = better;
    return best.cost;
  });
  let bound = Math.ceil(found.bound / step - 1e-6) * step;
  for (let round = 0; solve !== null && round < MOST_ROUNDS && bound < best.cost - 1e-9; round++) {
    const aim = best.cost - step * (1 - 1e-6);
    const answer = await exactSites(problem, { ...found.leftOpen(aim), aim }, solve);
    if (answer === "none") bound = best.cost;
    else if ("bound" in answer) {
      bound = Math.max(bound, Math.min(best.cost, Math.ceil(answer.bound / step - 1e-6) * step));
      break;
    } else {
      const better = interchange(problem, answer.chosen);
      if (better.cost >= best.cost - 1e-9) break;
      best = better;
      bound = Math.max(bound, Math.min(best.cost, bound));
    }
  }
  return { ...best, bound: Math.min(bound, best.cost), proved: bound >= best.cost - 1e-9 };
}

/** One after the other, whichever lowers the cost most. */
function firstChoice({ clients, sites, costs, without, choose }: MedianProblem): number[] {
  const least = Float64Array.from(without, (cost) => Math.min(cost, 1e15));
  const chosen: number[] = [];
  while (chosen.length < Math.min(choose, sites)) {
    let [best, most] = [-1, -1];
    for (let site = 0; site < sites; site++) {
      if (chosen.includes(site)) continue;
      let gain = 0;
      for (let client = 0, at = site * clients; client < clients; client++, at++)
        gain += Math.max(0, (least[client] as number) - (costs[at] as number));
      if (gain > most) [best, most] = [site, gain];
    }
    if (best === -1) break;
    chosen.push(best);
    for (let client = 0; client < clients; client++)
      least[client] = Math.min(least[client] as number, costs[best * clients + client] as number);
  }
  return chosen;
}
