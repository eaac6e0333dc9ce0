import type { LeftOpen } from "./exact-sites.ts";
import type { MedianProblem } from "./median-problem.ts";

interface Bounded {
  readonly bound: number;
  /** What can still be part of a choice that costs no more than is aimed at. */
  readonly leftOpen: (aim: number) => Pick<LeftOpen, "state" | "reach">;
}

interface Prices {
  readonly prices: Float64Array;
  /** What opening a site saves at these prices, 0 or less. */
  readonly gains: Float64Array;
  readonly bound: number;
}

/** Steps without a better bound after which they become smaller. */
const PATIENCE = 12;
const SMALLEST_PACE = 1e-4;

/**
 * Prices of the clients that make the bound high: each pays its price, and a site is worth what its clients would pay less.
 * @param known the least cost known   @param better is shown the sites that look best now and then; gives the least cost known
 * Source: subgradient steps, Held, Wolfe and Crowder, Mathematical Programming 6 (1974), from memory.
 */
export function lagrangian(
  problem: MedianProblem,
  steps: number,
  known: number,
  better: (chosen: readonly number[]) => number,
): Bounded {
  let now: Float64Array = startPrices(problem);
  let best: Prices = { prices: now, gains: gainsOf(problem, now), bound: Number.NEGATIVE_INFINITY };
  let [target, pace, still] = [known, 1.5, 0];
  for (let step = 0; step < steps && pace > SMALLEST_PACE; step++) {
    const gains = gainsOf(problem, now);
    const taken = bySaving(gains).slice(0, problem.choose);
    const bound = taken.reduce((sum, site) => sum + (gains[site] as number), sumOf(now));
    if (bound > best.bound + 1e-7 * Math.abs(bound)) {
      best = { prices: now, gains, bound };
      still = 0;
    } else if (++still >= PATIENCE) {
      [pace, still] = [pace / 1.6, 0];
      now = best.prices;
    }
    if (step % 50 === 10) target = better(taken);
    if (best.bound >= target - 1e-9 * Math.max(1, target)) break;
    const next = stepped(problem, now, taken, pace * Math.max(target * 1.002 - bound, 1e-9));
    if (next === null) break;
    now = next;
  }
  return { bound: best.bound, leftOpen: (aim) => leftOpen(problem, best, aim) };
}

/** Each client's second cheapest site, or what going without costs. */
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

function gainsOf({ clients, sites, costs }: MedianProblem, prices: Float64Array): Float64Array {
  const gains = new Float64Array(sites);
  for (let site = 0; site < sites; site++) {
    let gain = 0;
    for (let client = 0, at = site * clients; client < clients; client++, at++) {
      const less = (costs[at] as number) - (prices[client] as number);
      if (less < 0) gain += less;
    }
    gains[site] = gain;
  }
  return gains;
}

const bySaving = (gains: Float64Array): number[] =>
  [...gains.keys()].sort((a, b) => (gains[a] as number) - (gains[b] as number) || a - b);

/** A client served by none of the taken sites pays more, one served by several less; null when all are served once. */
function stepped(
  { clients, costs, without }: MedianProblem,
  prices: Float64Array,
  taken: readonly number[],
  stride: number,
): Float64Array | null {
  const slope = new Float64Array(clients).fill(1);
  for (const site of taken)
    for (let client = 0, at = site * clients; client < clients; client++, at++)
      if ((costs[at] as number) < (prices[client] as number)) slope[client] = (slope[client] as number) - 1;
  for (let client = 0; client < clients; client++)
    if (slope[client] === 1 && (prices[client] as number) >= (without[client] as number)) slope[client] = 0;
  const length = slope.reduce((sum, each) => sum + each * each, 0);
  if (length === 0) return null;
  return prices.map((price, client) =>
    Math.max(0, Math.min(without[client] as number, price + (stride / length) * (slope[client] as number))),
  );
}

/** A site whose opening lifts the bound over the aim is shut, one whose shutting does so is open; a client that pays so much over its
 *  price that the bound passes the aim is not served from so far. */
function leftOpen(
  { choose }: MedianProblem,
  { gains, bound, prices }: Prices,
  aim: number,
): Pick<LeftOpen, "state" | "reach"> {
  const order = bySaving(gains);
  const last = gains[order[choose - 1] ?? -1] ?? 0;
  const next = gains[order[choose] ?? -1] ?? 0;
  const state = new Int8Array(gains.length);
  order.forEach((site, place) => {
    const gain = gains[site] as number;
    if (place >= choose && bound + gain - last > aim + 1e-6) state[site] = -1;
    if (place < choose && bound - gain + next > aim + 1e-6) state[site] = 1;
  });
  return { state, reach: prices.map((price) => price + (aim - bound) + 1e-6) };
}

const sumOf = (values: Float64Array): number => values.reduce((sum, each) => sum + each, 0);
