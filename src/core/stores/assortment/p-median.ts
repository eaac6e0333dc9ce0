import { interchange } from "./interchange.ts";
import { lagrangian } from "./lagrangian.ts";

/**
 * Clients that each go to the cheapest of a few chosen sites, or without one at a price of their own.
 * `costs[site × clients + client]`, 0 or more; a client's weight is in its costs already.
 */
export interface MedianProblem {
  readonly clients: number;
  readonly sites: number;
  readonly costs: Float64Array;
  /** What a client costs that no site serves; endless where each must be served. */
  readonly without: Float64Array;
  /** Sites chosen at most. */
  readonly choose: number;
}

export interface MedianAnswer {
  readonly chosen: readonly number[];
  readonly cost: number;
  /** No choice costs less. */
  readonly bound: number;
  readonly proved: boolean;
}

export interface MedianEffort {
  /** Steps of the price search at the root and at each branch. */
  readonly rootSteps: number;
  readonly branchSteps: number;
  readonly branches: number;
  /** Every cost is a whole number, so a bound may be rounded up. */
  readonly wholeCosts: boolean;
}
export const MEDIAN_EFFORT: MedianEffort = {
  rootSteps: 600,
  branchSteps: 100,
  branches: 400,
  wholeCosts: false,
};

/** A choice with every site open, shut, or not yet decided. */
interface Branch {
  readonly state: Int8Array;
  readonly prices: Float64Array;
  readonly bound: number;
}
export const OPEN = 1;
export const SHUT = -1;

/**
 * The best sites, proved where the branches last. Prices of the clients give a bound and a guide; exchanging one chosen site for another
 * betters each guess; sites that the bound shuts out or holds fast are never asked again.
 * Sources: Lagrangian bound and reduction, Christofides and Beasley, European Journal of OR 10 (1982); exchange, Teitz and Bart, Operations
 * Research 16 (1968), in the form of Whitaker, INFOR 21 (1983); all from memory.
 */
export function chooseSites(problem: MedianProblem, effort: MedianEffort = MEDIAN_EFFORT): MedianAnswer {
  let best = interchange(problem, firstChoice(problem));
  const isShort = (bound: number): boolean => rounded(bound) < best.cost - tolerance(best.cost);
  const rounded = (bound: number): number => (effort.wholeCosts ? Math.ceil(bound - 1e-6) : bound);
  const tolerance = (cost: number): number => (effort.wholeCosts ? 1e-6 : 1e-6 * Math.max(1, cost));
  const root: Branch = {
    state: new Int8Array(problem.sites),
    prices: new Float64Array(0),
    bound: 0,
  };
  const waiting = [root];
  let shut = Number.POSITIVE_INFINITY;
  let branches = 0;
  while (waiting.length > 0 && branches < effort.branches) {
    const branch = waiting.pop() as Branch;
    if (!isShort(branch.bound)) {
      shut = Math.min(shut, branch.bound);
      continue;
    }
    const steps = branches++ === 0 ? effort.rootSteps : effort.branchSteps;
    const worthwhile = effort.wholeCosts ? 1 - 1e-6 : tolerance(best.cost);
    const found = lagrangian(problem, branch.state, branch.prices, steps, best.cost, worthwhile, (chosen) => {
      const better = interchange(problem, chosen);
      if (better.cost < best.cost) best = better;
      return best.cost;
    });
    if (!isShort(found.bound)) {
      shut = Math.min(shut, found.bound);
      continue;
    }
    const next = mostDoubtful(found.state, found.shares, problem.choose);
    if (next === -1) {
      shut = Math.min(shut, found.bound);
      continue;
    }
    const child = (as: number): Branch => {
      const state = Int8Array.from(found.state);
      state[next] = as;
      return { state, prices: found.prices, bound: found.bound };
    };
    // the likelier branch is looked at first
    waiting.push(child(SHUT), child(OPEN));
  }
  const bound = Math.min(best.cost, ...waiting.map((each) => rounded(each.bound)), rounded(shut));
  return { chosen: best.chosen, cost: best.cost, bound, proved: bound >= best.cost - tolerance(best.cost) };
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
      for (let client = 0, at = site * clients; client < clients; client++, at++) {
        const saved = (least[client] as number) - (costs[at] as number);
        if (saved > 0) gain += saved;
      }
      if (gain > most) [best, most] = [site, gain];
    }
    if (best === -1) break;
    chosen.push(best);
    for (let client = 0; client < clients; client++)
      least[client] = Math.min(least[client] as number, costs[best * clients + client] as number);
  }
  return chosen;
}

/** The undecided site that was taken nearest to every other time; −1 when all is decided. */
function mostDoubtful(state: Int8Array, shares: Float64Array, choose: number): number {
  const open = state.reduce((sum, each) => sum + (each === OPEN ? 1 : 0), 0);
  if (open >= choose) return -1;
  const doubt = (site: number): number => Math.abs((shares[site] as number) - 0.5);
  return [...state.keys()]
    .filter((site) => state[site] === 0)
    .reduce((best, site) => (best === -1 || doubt(site) < doubt(best) ? site : best), -1);
}
