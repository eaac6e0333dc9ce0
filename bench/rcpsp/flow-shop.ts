import { seeded } from "../../src/core/plan/chance.ts";
import type { FlowShop } from "./published-problem.ts";

/** Rounds of taking out and putting back, jobs taken out in each, and how much worse a round may be, in shares of a mean operation. */
const SEARCH = { rounds: 12_000, out: 4, warmth: 0.05, seed: 1 };

/**
 * A short sequence for a flow shop with setups: a few jobs are taken out and each is put back where it costs least, round by round.
 * Source: iterated greedy, Ruiz and Stützle, EJOR 187 (2008), from memory.
 */
export function sequenceFlowShop(
  shop: FlowShop,
  mayGoOn: () => boolean,
): { sequence: number[]; makespan: number } {
  const draw = seeded(SEARCH.seed);
  const times = shop.processing.flat();
  const warmth = (SEARCH.warmth * times.reduce((sum, time) => sum + time, 0)) / times.length;
  const work = (job: number): number => (shop.processing[job] ?? []).reduce((sum, time) => sum + time, 0);
  let now = [...shop.processing.keys()]
    .sort((a, b) => work(b) - work(a))
    .reduce<number[]>((sequence, job) => putBack(shop, sequence, job), []);
  let length = makespanOf(shop, now);
  let best = { sequence: now, makespan: length };
  for (let round = 0; round < SEARCH.rounds && mayGoOn(); round++) {
    const left = [...now];
    const out = Array.from({ length: Math.min(SEARCH.out, left.length - 1) }, () =>
      left.splice(Math.floor(draw() * left.length), 1),
    ).flat();
    const next = out.reduce((sequence, job) => putBack(shop, sequence, job), left);
    const nextLength = makespanOf(shop, next);
    if (nextLength < best.makespan) best = { sequence: next, makespan: nextLength };
    if (nextLength <= length || draw() < Math.exp((length - nextLength) / warmth))
      [now, length] = [next, nextLength];
  }
  return best;
}

/** The sequence with the job where it makes it shortest; the first of equal places. */
function putBack(shop: FlowShop, sequence: readonly number[], job: number): number[] {
  let best: { sequence: number[]; makespan: number } | null = null;
  for (let place = 0; place <= sequence.length; place++) {
    const tried = sequence.toSpliced(place, 0, job);
    const makespan = makespanOf(shop, tried);
    if (!best || makespan < best.makespan) best = { sequence: tried, makespan };
  }
  return best?.sequence ?? [job];
}

/** Start of each job on each machine, as early as can be; a machine is set up while the job is still elsewhere. */
export function startsOf(shop: FlowShop, sequence: readonly number[]): number[][] {
  const starts: number[][] = shop.processing.map(() => []);
  walk(shop, sequence, (job, machine, start) => {
    (starts[job] as number[])[machine] = start;
  });
  return starts;
}

const makespanOf = (shop: FlowShop, sequence: readonly number[]): number => walk(shop, sequence);

function walk(
  { processing, setup }: FlowShop,
  sequence: readonly number[],
  told?: (job: number, machine: number, start: number) => void,
): number {
  const free = new Int32Array(setup.length);
  let before = -1;
  let end = 0;
  for (const job of sequence) {
    end = 0;
    for (let machine = 0; machine < setup.length; machine++) {
      const ready = (free[machine] as number) + (setup[machine]?.[before]?.[job] ?? 0);
      const start = Math.max(ready, end);
      told?.(job, machine, start);
      end = start + (processing[job]?.[machine] ?? 0);
      free[machine] = end;
    }
    before = job;
  }
  return end;
}
