import type { MedianProblem } from "./p-median.ts";

interface Bounded {
  readonly bound: number;
  readonly prices: Float64Array;
  /** What opening a site saves at these prices, 0 or less. */
  readonly gains: Float64Array;
  /** How often each site was among the best of late, 0 to 1. */
  readonly shares: Float64Array;
  /** As given, with what the bound decided. */
  readonly state: Int8Array;
}

const [OPEN, SHUT] = [1, -1];

/**
 * Prices of the clients that make the bound high: each pays its price, and a site is worth what its clients would pay less.
 * @param state open, shut or undecided sites   @param prices to begin with; empty: each client's cheapest two sites
 * @param worthwhile by how much a better choice must be cheaper than the best known
 * @param better is shown the sites that look best now and then; gives the least cost known
 * Source: subgradient steps, Held, Wolfe and Crowder, Mathematical Programming 6 (1974), from memory.
 */
export function lagrangian(
  problem: MedianProblem,
  state: Int8Array,
  prices: Float64Array,
  steps: number,
  known: number,
  worthwhile: number,
  better: (chosen: readonly number[]) => number,
): Bounded {
  const { clients } = problem;
  let now = prices.length === clients ? Float64Array.from(prices) : startPrices(problem);
  let best = { bound: Number.NEGATIVE_INFINITY, prices: now, gains: new Float64Array(0) };
  const shares = new Float64Array(problem.sites);
  let [target, pace, still] = [known, steps > 100 ? 1.5 : 0.6, 0];
  for (let step = 0; step < steps && pace > 1e-4; step++) {
    const gains = gainsOf(problem, now, state);
    const taken = takenSites(gains, state, problem.choose);
    settle(shares, taken);
    const bound = sum(now) + taken.reduce((all, site) => all + (gains[site] as number), 0);
    if (bound > best.bound + 1e-7 * Math.abs(bound)) {
      best = { bound, prices: Float64Array.from(now), gains };
      still = 0;
    } else if (++still >= 12) {
      [pace, still] = [pace / 1.6, 0];
      now = Float64Array.from(best.prices);
    }
    if (best.bound >= target - 1e-9 * Math.max(1, target)) break;
    if (step % 50 === 40) target = better(taken);
    const slope = slopeOf(problem, now, taken);
    const length = slope.reduce((all, each) => all + each * each, 0);
    if (length === 0) break;
    const stride = (pace * Math.max(target * 1.002 - bound, 1e-9)) / length;
    for (let client = 0; client < clients; client++)
      now[client] = Math.max(
        0,
        Math.min(
          problem.without[client] as number,
          (now[client] as number) + stride * (slope[client] as number),
        ),
      );
  }
  const gains = best.gains.length === 0 ? gainsOf(problem, best.prices, state) : best.gains;
  return {
    ...best,
    gains,
    shares,
    state: decided(gains, state, problem.choose, best.bound, target - worthwhile),
  };
}

/** A running mean over some thirty steps. */
function settle(shares: Float64Array, taken: readonly number[]): void {
  for (let site = 0; site < shares.length; site++) shares[site] = 0.97 * (shares[site] as number);
  for (const site of taken) shares[site] = (shares[site] as number) + 0.03;
}

/** Between a client's cheapest and second cheapest site. */
function startPrices({ clients, sites, costs, without }: MedianProblem): Float64Array {
  const [first, second] = [new Float64Array(clients).fill(1e15), new Float64Array(clients).fill(1e15)];
  for (let site = 0, at = 0; site < sites; site++)
    for (let client = 0; client < clients; client++, at++) {
      const own = costs[at] as number;
      if (own < (first[client] as number)) {
        second[client] = first[client] as number;
        first[client] = own;
      } else if (own < (second[client] as number)) second[client] = own;
    }
  return second.map((cost, client) => Math.min(cost, without[client] as number, 1e12));
}

function gainsOf(
  { clients, sites, costs }: MedianProblem,
  prices: Float64Array,
  state: Int8Array,
): Float64Array {
  const gains = new Float64Array(sites);
  for (let site = 0; site < sites; site++) {
    if (state[site] === SHUT) continue;
    let gain = 0;
    for (let client = 0, at = site * clients; client < clients; client++, at++) {
      const less = (costs[at] as number) - (prices[client] as number);
      if (less < 0) gain += less;
    }
    gains[site] = gain;
  }
  return gains;
}

/** All that must be open, and of the others the most gainful. */
function takenSites(gains: Float64Array, state: Int8Array, choose: number): number[] {
  const must = [...state.keys()].filter((site) => state[site] === OPEN);
  return [...must, ...byGain(gains, state).slice(0, Math.max(0, choose - must.length))];
}

const byGain = (gains: Float64Array, state: Int8Array): number[] =>
  [...state.keys()]
    .filter((site) => state[site] === 0)
    .sort((a, b) => (gains[a] as number) - (gains[b] as number) || a - b);

/** For each client one, less the taken sites that would serve it below its price. */
function slopeOf(
  { clients, costs, without }: MedianProblem,
  prices: Float64Array,
  taken: readonly number[],
): Float64Array {
  const slope = new Float64Array(clients).fill(1);
  for (const site of taken)
    for (let client = 0, at = site * clients; client < clients; client++, at++)
      if ((costs[at] as number) < (prices[client] as number)) slope[client] = (slope[client] as number) - 1;
  for (let client = 0; client < clients; client++)
    if ((slope[client] as number) > 0 && (prices[client] as number) >= (without[client] as number))
      slope[client] = 0;
  return slope;
}

/** A site whose opening lifts the bound over the cost that is aimed at is shut; one whose shutting does so is opened. */
function decided(
  gains: Float64Array,
  state: Int8Array,
  choose: number,
  bound: number,
  aim: number,
): Int8Array {
  const result = Int8Array.from(state);
  const must = state.reduce((all, each) => all + (each === OPEN ? 1 : 0), 0);
  const order = byGain(gains, state);
  const room = Math.max(0, choose - must);
  const last = room > 0 ? (gains[order[room - 1] ?? -1] ?? 0) : 0;
  const next = gains[order[room] ?? -1] ?? 0;
  order.forEach((site, place) => {
    const gain = gains[site] as number;
    if (place >= room && bound + gain - last > aim) result[site] = SHUT;
    if (place < room && bound - gain + next > aim) result[site] = OPEN;
  });
  return result;
}

const sum = (values: Float64Array): number => values.reduce((all, each) => all + each, 0);
