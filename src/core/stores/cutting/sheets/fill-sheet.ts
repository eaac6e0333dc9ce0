import type { Sheet } from "../../housing/sheets.ts";
import {
  bestSpot,
  EdgeToEdge,
  type FittingRule,
  type FreeSpace,
  LargestRectangles,
  type Spot,
} from "./free-space.ts";
import { fitsOn, type PlainItem, type PlainProblem, SLACK } from "./sheet-problem.ts";

/** A sheet with pieces on it. */
export interface Filled {
  readonly stock: number;
  readonly items: readonly number[];
  readonly spots: readonly Spot[];
  /** Share of its area that is covered. */
  readonly share: number;
}

/** How a sheet is filled: by which rule, and along which way it is parted. */
export interface Manner {
  readonly rule: FittingRule;
  readonly along: "short" | "long";
}

const spaceOf = (sheet: Sheet, edgeToEdge: boolean, { along }: Manner): FreeSpace =>
  edgeToEdge ? new EdgeToEdge(sheet, along) : new LargestRectangles(sheet);

/** Lays the items on one sheet in their order, each where it fits best; those that do not fit are passed over. */
export function fillSheet(
  { stocks, items, edgeToEdge }: PlainProblem,
  stock: number,
  order: readonly number[],
  manner: Manner,
): Filled {
  const sheet = stocks[stock] as Sheet;
  const space = spaceOf(sheet, edgeToEdge, manner);
  const [laid, spots]: [number[], Spot[]] = [[], []];
  const all = sheet.width * sheet.height;
  let covered = 0;
  for (const item of order) {
    const { width, height, mayTurn } = items[item] as PlainItem;
    if (covered + width * height > all + SLACK) continue;
    const spot = bestSpot(space, items[item] as PlainItem, mayTurn, manner.rule);
    if (spot === null) continue;
    space.take(spot);
    laid.push(item);
    spots.push(spot);
    covered += width * height;
  }
  return { stock, items: laid, spots, share: covered / all };
}

/** Chooses the next sheet for what is left; null when there is none it could lie on. */
export type ChooseStock = (left: readonly number[], free: readonly number[]) => number | null;

/** Sheet after sheet until all is laid or the stock is used up.
 *  @param free how many of each stock there are */
export function fillSheets(
  problem: PlainProblem,
  order: readonly number[],
  free: readonly number[],
  choose: ChooseStock,
  manner: () => Manner,
): { readonly filled: Filled[]; readonly left: readonly number[] } {
  const counts = [...free];
  const filled: Filled[] = [];
  let left = order;
  while (left.length > 0) {
    const usable = counts.map((count, n) =>
      left.some((item) => fitsOn(problem.items[item] as PlainItem, problem.stocks[n] as Sheet)) ? count : 0,
    );
    const stock = choose(left, usable);
    if (stock === null) break;
    const sheet = fillSheet(problem, stock, left, manner());
    counts[stock] = (counts[stock] as number) - 1;
    filled.push(sheet);
    const laid = new Set(sheet.items);
    left = left.filter((item) => !laid.has(item));
  }
  return { filled, left };
}
