import { existsSync } from "node:fs";
import { MaxRectsPacker } from "maxrects-packer/dist/maxrects-packer.mjs";
import type { Solve } from "../src/core/plan/programme.ts";
import { cutLengths } from "../src/core/stores/cutting/lengths/cut-lengths.ts";
import { cutRoll } from "../src/core/stores/cutting/sheets/cut-roll.ts";
import { cutSheets } from "../src/core/stores/cutting/sheets/cut-sheets.ts";
import { startSolver } from "../src/edge/solve/solver.ts";
import { faultsOfLayout, faultsOfLengths, faultsOfSizes } from "./packing/check-packing.ts";
import { filesOf, type PackingProblem, readPacking } from "./packing/read-packing.ts";

interface Packed {
  readonly problem: PackingProblem;
  readonly ours: number;
  readonly bound: number;
  /** First fit decreasing for lengths, maxrects-packer for sheets; none for a roll. */
  readonly plain: number;
  readonly seconds: number;
  readonly faults: readonly string[];
}

/** Cuts every published problem of a file or folder, and prints how far ours and a plain way lie over the best known. */
export async function benchPacking(path: string): Promise<void> {
  if (!existsSync(path)) {
    console.log(
      `  Skipped: there is no file ${path}. Give the path of a file or folder of packing problems (.json).`,
    );
    return;
  }
  const solver = startSolver();
  for (const file of filesOf(path, /\.json$/)) {
    const packed: Packed[] = [];
    for (const problem of readPacking(file)) packed.push(await pack(problem, solver.solve));
    console.log(`Packing problems of ${file}`);
    for (const [name, set] of setsOf(packed)) summary(name, set);
    const faulty = packed.filter(({ faults }) => faults.length > 0);
    for (const { problem, faults } of faulty) console.log(`  FAULT ${problem.name}: ${faults.join("; ")}`);
    console.log(`  checked: ${packed.length} packings, ${faulty.length} with a fault`);
    if (faulty.length > 0) process.exitCode = 1;
  }
  await solver.close();
}

async function pack(problem: PackingProblem, solve: Solve): Promise<Packed> {
  const from = performance.now();
  const found = await answerTo(problem, solve);
  const seconds = (performance.now() - from) / 1000;
  const faults =
    found.ours < problem.lowerBound - 1e-6
      ? [...found.faults, `${found.ours} is below the proved bound ${problem.lowerBound}`]
      : found.faults;
  return { problem, ...found, seconds, faults, plain: plainAnswer(problem) };
}

async function answerTo(
  problem: PackingProblem,
  solve: Solve,
): Promise<Pick<Packed, "ours" | "bound" | "faults">> {
  if (problem.kind === "lengths") {
    const counts = new Map<number, number>();
    for (const length of problem.items) counts.set(length, (counts.get(length) ?? 0) + 1);
    const pieces = [...counts].map(([length, count]) => ({ length, count }));
    const asked = {
      stocks: [{ length: problem.capacity, count: Number.POSITIVE_INFINITY, cost: 1 }],
      pieces,
    };
    const cut = await cutLengths(asked, solve);
    return { ours: cut.cost, bound: cut.bound, faults: faultsOfLengths(asked, cut) };
  }
  if (problem.kind === "roll") {
    const items = problem.items.map(([width, height]) => ({ piece: 0, mayTurn: false, width, height }));
    const cut = cutRoll(items, problem.width);
    const faults = [
      ...faultsOfLayout(cut.laid, problem.width, cut.length),
      ...faultsOfSizes(problem.items, cut.laid),
    ];
    return { ours: cut.length, bound: cut.bound, faults };
  }
  const { width, height, items } = problem;
  const cut = cutSheets({
    stocks: [{ name: "bin", width, height, count: Number.POSITIVE_INFINITY }],
    pieces: items.map(([wide, high]) => ({ name: "", width: wide, height: high, count: 1, mayTurn: false })),
    kerf: 0,
    trim: 0,
    edgeToEdge: false,
  });
  const faults = [
    ...cut.layouts.flatMap(({ placed }) => faultsOfLayout(placed, width, height)),
    ...faultsOfSizes(
      items,
      cut.layouts.flatMap(({ placed }) => placed),
    ),
  ];
  return { ours: cut.layouts.length, bound: Math.round(cut.bound / (width * height)), faults };
}

function plainAnswer(problem: PackingProblem): number {
  if (problem.kind === "lengths") return firstFitDecreasing(problem.items, problem.capacity);
  if (problem.kind === "roll") return Number.NaN;
  const packer = new MaxRectsPacker(problem.width, problem.height, 0, {
    smart: false,
    pot: false,
    square: false,
    allowRotation: false,
  });
  // largest side first, as its own addArray has it
  const items = [...problem.items].sort((a, b) => Math.max(...b) - Math.max(...a));
  for (const [width, height] of items) packer.add(width, height, null);
  return packer.bins.length;
}

function firstFitDecreasing(items: readonly number[], capacity: number): number {
  const rooms: number[] = [];
  for (const item of [...items].sort((a, b) => b - a)) {
    const into = rooms.findIndex((room) => room >= item);
    if (into === -1) rooms.push(capacity - item);
    else rooms[into] = (rooms[into] ?? 0) - item;
  }
  return rooms.length;
}

/** Problems whose names differ in their last figures only. */
function setsOf(packed: readonly Packed[]): (readonly [string, readonly Packed[]])[] {
  const sets = new Map<string, Packed[]>();
  for (const each of packed) {
    const set = each.problem.name.replace(/([_-]\d+){2}$|[_-]?\d+[A-Z]?$/, "");
    sets.set(set, [...(sets.get(set) ?? []), each]);
  }
  return sets.size > 1 ? [...sets, ["all", packed]] : [...sets];
}

const PLAIN = { lengths: "first fit decreasing", sheets: "maxrects-packer", roll: "" } as const;
const percent = (share: number): string => `${(100 * share).toFixed(2)} %`;

function summary(name: string, packed: readonly Packed[]): void {
  const [first] = packed;
  if (first === undefined) return;
  const mean = (of: (one: Packed) => number): number =>
    packed.reduce((sum, one) => sum + of(one), 0) / packed.length;
  const over = ({ ours, problem }: Packed): number => ours / problem.known - 1;
  const { kind } = first.problem;
  const worst = packed.reduce((most, one) => (over(one) > over(most) ? one : most));
  console.log(
    `  ${name}: ${packed.length} problems, over the best known: mean ${percent(mean(over))}, worst ${percent(over(worst))} (${worst.problem.name}); reached by ${packed.filter((one) => over(one) <= 1e-9).length}, proved by our own bound ${packed.filter(({ ours, bound }) => ours <= bound + 1e-6).length}, over our bound ${percent(mean(({ ours, bound }) => ours / bound - 1))}`,
  );
  console.log(
    `    ${kind === "roll" ? "" : `${PLAIN[kind]}: mean ${percent(mean(({ plain, problem }) => plain / problem.known - 1))}; `}seconds: mean ${mean(({ seconds }) => seconds).toFixed(2)}, longest ${Math.max(...packed.map(({ seconds }) => seconds)).toFixed(2)}`,
  );
}
