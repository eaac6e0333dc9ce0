import { ProgrammeBuilder, type Solve } from "../../plan/programme.ts";
import type { MedianProblem } from "./median-problem.ts";

/** What the price search left open: only sites that are not shut, only clients' sites near enough. */
export interface LeftOpen {
  /** 1 open, −1 shut, 0 undecided. */
  readonly state: Int8Array;
  /** No client may cost more than this in a choice that is worth finding. */
  readonly reach: Float64Array;
  /** What such a choice costs at most. */
  readonly aim: number;
}

/** A choice that costs at most what is aimed at; "none" when it is proved that there is none; else a bound.
 *  Each client has a chain of distances, and pays each step of it within which no site is open.
 *  Source: Cornuejols, Nemhauser and Wolsey, SIAM Journal on Algebraic and Discrete Methods 1 (1980); García, Labbé and Marín, INFORMS
 *  Journal on Computing 23 (2011); both from memory. */
export async function exactSites(
  problem: MedianProblem,
  { state, reach, aim }: LeftOpen,
  solve: Solve,
): Promise<{ readonly chosen: readonly number[] } | { readonly bound: number } | "none"> {
  const { clients, sites, choose } = problem;
  const builder = new ProgrammeBuilder();
  const columns = Array.from(state, (each) =>
    builder.column(0, each === 1 ? 1 : 0, each === -1 ? 0 : 1, true),
  );
  builder.row(
    0,
    choose,
    columns.map((column) => [column, 1] as const),
  );
  const paid: (readonly [number, number])[] = [];
  let least = 0;
  for (let client = 0; client < clients; client++) {
    const chain = chainOf(problem, client, state, reach[client] as number);
    if (chain.length === 0) return "none";
    least += chain[0]?.cost ?? 0;
    const open: (readonly [number, number])[] = [];
    chain.forEach(({ cost, site }, n) => {
      if (site !== -1) open.push([columns[site] as number, 1]);
      const next = chain[n + 1];
      if (site === -1 || next?.cost === cost) return;
      if (next === undefined) {
        builder.row(1, clients + sites, open);
        return;
      }
      const goesOn = builder.column(next.cost - cost, 0, 1);
      paid.push([goesOn, next.cost - cost]);
      builder.row(1, clients + sites, [...open, [goesOn, 1]]);
    });
  }
  builder.row(0, aim - least + 1e-6, paid);
  const solved = await solve(builder.build(), { relaxed: false, gap: 0 });
  if (solved.status === "infeasible") return "none";
  const chosen = [...state.keys()].filter((site) => (solved.values[columns[site] as number] ?? 0) > 0.5);
  return solved.status === "optimal" || solved.status === "gap reached"
    ? { chosen }
    : { bound: Number.isFinite(solved.bound) ? least + solved.bound : 0 };
}

/** A client's sites from the nearest on, going without (−1) among them, as far as it may have to go. */
function chainOf(
  { clients, costs, without }: MedianProblem,
  client: number,
  state: Int8Array,
  reach: number,
): { readonly cost: number; readonly site: number }[] {
  const own = without[client] as number;
  const all = [...state.keys()]
    .filter((site) => state[site] !== -1)
    .map((site) => ({ cost: costs[site * clients + client] as number, site }))
    .filter(({ cost }) => cost < own && cost <= reach);
  if (own <= reach) all.push({ cost: own, site: -1 });
  return all.sort((a, b) => a.cost - b.cost);
}
