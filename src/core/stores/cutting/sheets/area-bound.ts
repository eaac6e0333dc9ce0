import type { Sheet } from "../../housing/sheets.ts";
import { fitsOn, type PlainItem, type PlainProblem } from "./sheet-problem.ts";

/** Stretches lengths so that whatever fits side by side still does: f(a) + f(b) ≤ f(a + b). */
export type Scale = (length: number) => number;

/**
 * The least area of sheets in which the pieces can lie: by their own areas, and by areas with both sides stretched so that large pieces
 * count as what they leave unusable.
 * Sources: conservative scales, Fekete and Schepers, Mathematical Methods of OR 60 (2004); Carlier, Clautiaux and Moukrim, Computers & OR
 * 34 (2007); both from memory.
 * @returns in the unit of the sheets' cost
 */
export function areaBound({ stocks, items }: PlainProblem): number {
  const placeable = items.filter((item) => stocks.some((sheet) => fitsOn(item, sheet)));
  if (placeable.length === 0) return 0;
  const wide = Math.max(...stocks.map(({ width }) => tenths(width)));
  const high = Math.max(...stocks.map(({ height }) => tenths(height)));
  const turns = placeable.some(({ mayTurn }) => mayTurn);
  const lengths = (side: "width" | "height"): number[] =>
    placeable.flatMap((item) => (turns ? [down(item.width), down(item.height)] : [down(item[side])]));
  const across = scalesFor(wide, lengths("width"));
  const along = scalesFor(high, lengths("height"));
  let most = 0;
  for (const f of across)
    for (const g of along) {
      const total = placeable.reduce((sum, item) => sum + least(item, f, g, wide, high), 0);
      most = Math.max(most, cheapest(stocks, total, f, g));
    }
  return most;
}

/** Whole tenths of a millimetre; sheets are rounded up and pieces down, so that the bound stays one. */
export const tenths = (mm: number): number => Math.ceil(mm * 10 - 1e-4);
export const down = (mm: number): number => Math.floor(mm * 10 + 1e-4);

function least(item: PlainItem, f: Scale, g: Scale, wide: number, high: number): number {
  const [width, height] = [down(item.width), down(item.height)];
  const area = (w: number, h: number): number =>
    w <= wide && h <= high ? f(w) * g(h) : Number.POSITIVE_INFINITY;
  return item.mayTurn ? Math.min(area(width, height), area(height, width)) : area(width, height);
}

/** The sheets that give most for their cost first, the last one in part where sizes differ, whole where there is one size. */
function cheapest(
  stocks: readonly (Sheet & { readonly cost: number; readonly count: number })[],
  total: number,
  f: Scale,
  g: Scale,
): number {
  const worth = stocks
    .map(({ width, height, cost, count }) => ({ gives: f(tenths(width)) * g(tenths(height)), cost, count }))
    .filter(({ gives, count }) => gives > 0 && count > 0)
    .sort((a, b) => a.cost / a.gives - b.cost / b.gives);
  if (worth.length === 1) return Math.ceil(total / (worth[0]?.gives ?? 1) - 1e-9) * (worth[0]?.cost ?? 0);
  let [left, cost] = [total, 0];
  for (const each of worth) {
    const sheets = Math.min(each.count, left / each.gives);
    cost += sheets * each.cost;
    left -= sheets * each.gives;
  }
  return cost;
}

const MOST_STEPS = 60;

/** The identity, rounding to whole parts, leaving out the small, and counting what the large leave. */
export function scalesFor(whole: number, lengths: readonly number[]): Scale[] {
  const distinct = [...new Set(lengths)].filter((length) => length > 0 && length <= whole);
  const halves = [...new Set(distinct.flatMap((length) => [length, whole - length]))].filter(
    (length) => length > 0 && 2 * length <= whole,
  );
  const steps = halves.sort((a, b) => b - a).slice(0, MOST_STEPS);
  return [
    (length) => length / whole,
    ...steps.map(
      (step): Scale =>
        (length) =>
          length > whole - step ? 1 : length < step ? 0 : length / whole,
    ),
    ...[1, 2, 3, 4, 5].map(
      (parts): Scale =>
        (length) =>
          ((parts + 1) * length) % whole === 0
            ? length / whole
            : Math.floor(((parts + 1) * length) / whole) / parts,
    ),
    ...steps.map((step): Scale => {
      const all = 2 * Math.floor(whole / step);
      return (length) =>
        2 * length > whole
          ? (all - 2 * Math.floor((whole - length) / step)) / all
          : 2 * length === whole
            ? 0.5
            : (2 * Math.floor(length / step)) / all;
    }),
  ];
}
