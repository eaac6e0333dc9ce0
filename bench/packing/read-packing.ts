import { readdirSync, readFileSync, statSync } from "node:fs";
import { basename, join } from "node:path";

/** A published packing problem: bins of one length, bins of one size, or a roll. */
export type PackingProblem = {
  readonly name: string;
  /** Best known number of bins or length of the roll, and the proved bound. */
  readonly known: number;
  readonly lowerBound: number;
} & (
  | { readonly kind: "lengths"; readonly capacity: number; readonly items: readonly number[] }
  | {
      readonly kind: "sheets";
      readonly width: number;
      readonly height: number;
      readonly items: readonly (readonly [number, number])[];
    }
  | {
      readonly kind: "roll";
      readonly width: number;
      readonly items: readonly (readonly [number, number])[];
    }
);

/** The files named, or those of a folder that end as they should. */
export const filesOf = (path: string, ending: RegExp): string[] =>
  statSync(path).isDirectory()
    ? readdirSync(path)
        .filter((name) => ending.test(name))
        .sort()
        .map((name) => join(path, name))
    : [path];

/** @throws Error when the file is of another shape */
export function readPacking(path: string): PackingProblem[] {
  const { instances } = JSON.parse(readFileSync(path, "utf8")) as { instances?: Record<string, unknown>[] };
  if (!Array.isArray(instances)) throw new Error(`${basename(path)} has no list "instances".`);
  return instances.map((each) => problemOf(each, path));
}

function problemOf(each: Record<string, unknown>, path: string): PackingProblem {
  const number = (...names: readonly string[]): number | undefined =>
    names.map((name) => each[name]).find((value): value is number => typeof value === "number");
  const name = String(each.name);
  const known = number("optimal", "bestKnown", "upperBound", "optimalHeight") ?? Number.NaN;
  const lowerBound = number("optimal", "optimalHeight", "lowerBound", "areaBound") ?? 0;
  const [capacity, width, height] = [
    number("capacity"),
    number("binWidth", "stripWidth"),
    number("binHeight"),
  ];
  const own = { name, known, lowerBound };
  if (capacity !== undefined) return { ...own, kind: "lengths", capacity, items: each.items as number[] };
  const items = each.items as [number, number][];
  if (width !== undefined && height !== undefined) return { ...own, kind: "sheets", width, height, items };
  if (width !== undefined) return { ...own, kind: "roll", width, items };
  throw new Error(`${basename(path)}, ${name}: neither capacity nor binWidth nor stripWidth.`);
}
