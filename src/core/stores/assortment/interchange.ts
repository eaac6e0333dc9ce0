import type { MedianProblem } from "./median-problem.ts";

export interface Choice {
  readonly chosen: readonly number[];
  readonly cost: number;
}

/** Exchanges a chosen site for another as long as the best exchange lowers the cost.
 *  Source: Whitaker, INFOR 21 (1983): gain of a site and loss of each chosen one in one pass over the clients; from memory. */
export function interchange(problem: MedianProblem, start: readonly number[]): Choice {
  const { clients, sites, costs } = problem;
  const chosen = [...start];
  for (;;) {
    const near = nearest(problem, chosen);
    const loss = new Float64Array(chosen.length);
    let [into, out, most] = [-1, -1, 1e-9 * Math.max(1, near.cost)];
    for (let site = 0; site < sites; site++) {
      if (chosen.includes(site)) continue;
      let gain = 0;
      loss.fill(0);
      for (let client = 0, at = site * clients; client < clients; client++, at++) {
        const own = costs[at] as number;
        const first = near.first[client] as number;
        const who = near.who[client] as number;
        if (own < first) gain += first - own;
        else if (who !== -1)
          loss[who] = (loss[who] as number) + Math.min(own, near.second[client] as number) - first;
      }
      for (let n = 0; n < chosen.length; n++)
        if (gain - (loss[n] as number) > most) [into, out, most] = [site, n, gain - (loss[n] as number)];
    }
    if (into === -1) return { chosen: chosen.sort((a, b) => a - b), cost: near.cost };
    chosen[out] = into;
  }
}

const FAR = 1e15;

/** What each client costs at its nearest and its second nearest chosen site, and which the nearest is; −1: it goes without. */
function nearest(
  { clients, costs, without }: MedianProblem,
  chosen: readonly number[],
): { first: Float64Array; second: Float64Array; who: Int32Array; cost: number } {
  const first = Float64Array.from(without, (cost) => Math.min(cost, FAR));
  const second = Float64Array.from(first);
  const who = new Int32Array(clients).fill(-1);
  chosen.forEach((site, n) => {
    for (let client = 0, at = site * clients; client < clients; client++, at++) {
      const own = costs[at] as number;
      if (own < (first[client] as number)) {
        second[client] = first[client] as number;
        first[client] = own;
        who[client] = n;
      } else if (own < (second[client] as number)) second[client] = own;
    }
  });
  return { first, second, who, cost: first.reduce((sum, each) => sum + each, 0) };
}

/** What a choice costs. */
export const costOfChoice = (problem: MedianProblem, chosen: readonly number[]): number =>
  nearest(problem, chosen).cost;
/** Which of the chosen each client goes to; −1: it goes without. */
export const assignedTo = (problem: MedianProblem, chosen: readonly number[]): Int32Array =>
  nearest(problem, chosen).who;
