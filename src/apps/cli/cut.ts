import { CUT_HELP, CUT_REFUSALS, CUT_WORDS } from "../../core/say/cutting.ts";
import { HOUSING_CAUTIONS } from "../../core/say/housing.ts";
import { type LayoutGroup, layoutGroups } from "../../core/stores/cutting/layout-groups.ts";
import { cutLengths } from "../../core/stores/cutting/lengths/cut-lengths.ts";
import { cutOrder } from "../../core/stores/cutting/sheets/cut-order.ts";
import { cutRoll } from "../../core/stores/cutting/sheets/cut-roll.ts";
import { cutSheets } from "../../core/stores/cutting/sheets/cut-sheets.ts";
import {
  areaOf,
  plainProblem,
  type SheetCut,
  type SheetProblem,
  type StockSheet,
  type WantedPiece,
} from "../../core/stores/cutting/sheets/sheet-problem.ts";
import { HOUSING_KINDS } from "../../core/stores/housing/housing.ts";
import { type IsoSeries, isoSheet, type Sheet } from "../../core/stores/housing/sheets.ts";
import { startSolver } from "../../edge/solve/solver.ts";
import { drawCuts } from "./cut-drawings.ts";
import { type WantedCut, wantedCut } from "./cut-pieces.ts";
import { type Given, Refusal } from "./damp/given.ts";
import { lengthsFrom, MEASURES } from "./damp/quantity.ts";
import { answered, type DampCommand, type Figure, type Report } from "./damp/report.ts";

const OPTIONS = {
  stock: "texts",
  roll: "text",
  kind: "text",
  grain: "text",
  knife: "flag",
  kerf: "text",
  trim: "text",
  out: "text",
  sheet: "text",
} as const;
/** Layouts told on the screen. */
const SHOWN = 3;
/** Pieces that are not cut, told by name. */
const NAMED = 5;

/** `leafward cut`: all wanted pieces on the sheets in stock. */
export const cut: DampCommand = (...to) =>
  answered({ name: "cut", help: CUT_HELP, options: OPTIONS }, to, async (given) => {
    const [path] = given.files;
    if (path === undefined || given.files.length > 1) given.refuseInWords(CUT_REFUSALS.arguments);
    const kind = given.oneOf("kind", HOUSING_KINDS, "Which wrapper or box is made?", "jacket");
    const length = (name: string, high: number, fallback: number): number =>
      given.quantity(name, "length", { low: 0, high, remedy: "Give it in mm." }, fallback);
    const asked = {
      kerf: length("kerf", 20, 0),
      trim: length("trim", 200, 5),
      edgeToEdge: !given.has("knife"),
      roll: given.has("roll") ? length("roll", 5000, 0) : null,
      paper:
        given.oneOf("sheet", ["a4", "letter"], "The paper in the printer.", "a4") === "a4" ? "A4" : "Letter",
      out: given.text("out"),
    } as const;
    const stocks = stocksFrom(given, asked.roll !== null);
    given.settle();
    const wanted = await wantedCut(path ?? "", kind, to[2]);
    if (wanted.isStrips) return stripsReport(wanted, stocks);
    if (asked.roll !== null) return rollReport(wanted, asked.roll, asked.kerf);
    const problem = { ...asked, stocks, pieces: wanted.pieces };
    const found = cutSheets(problem);
    const groups = layoutGroups(found.layouts, problem.pieces);
    const files =
      asked.out === undefined || groups.length === 0
        ? []
        : await drawCuts(groups, problem, asked.out, asked.paper);
    return sheetsReport({ wanted, problem, found, groups, files, isGrainKnown: given.has("grain") });
  });

/** Every sheet with its grain along its height. */
function stocksFrom(given: Given, isRoll: boolean): StockSheet[] {
  const grain = given.oneOf("grain", ["long", "short"], "Bend the sheet both ways.", "long");
  const texts = given.texts("stock");
  if (texts.length === 0 && !isRoll)
    given.refuse({
      option: "--stock",
      got: undefined,
      expected: "a sheet such as 815x1100:40 or B1",
      remedy: "Measure the sheets and count them.",
    });
  return texts.map((text) => {
    const [sides = "", count] = text.split(":");
    const sheet = sheetFrom(sides);
    const number = count === undefined ? Number.POSITIVE_INFINITY : Number(count);
    if (sheet === null || !(number >= 1) || (count !== undefined && !Number.isInteger(number)))
      given.refuse({
        option: "--stock",
        got: text,
        expected: "two sides in mm or an ISO name, then a colon and how many, such as 815x1100:40",
        remedy: "For strips give one length, such as 1500:20.",
      });
    const [short, long] = [sheet?.width ?? 1, sheet?.height ?? 1].sort((a, b) => a - b) as [number, number];
    const [width, height] = grain === "long" ? [short, long] : [long, short];
    return { name: sides, width, height, count: number };
  });
}

function sheetFrom(text: string): Sheet | null {
  const [, series, n] = /^(SRA|RA|A|B|C)(10|\d)$/i.exec(text.trim()) ?? [];
  if (series !== undefined) return isoSheet(series.toUpperCase() as IsoSeries, Number(n));
  const [width, height] = lengthsFrom(text, MEASURES.length, 2) ?? [];
  if (width !== undefined && height !== undefined) return { width, height };
  const [length] = lengthsFrom(text, MEASURES.length, 1) ?? [];
  return length === undefined ? null : { width: 1, height: length };
}

interface Cut {
  readonly wanted: WantedCut;
  readonly problem: SheetProblem;
  readonly found: SheetCut;
  readonly groups: readonly LayoutGroup[];
  readonly files: readonly string[];
  readonly isGrainKnown: boolean;
}

function sheetsReport({ wanted, problem, found, groups, files, isGrainKnown }: Cut): Report {
  const { stocks, pieces } = problem;
  const placed = found.layouts.flatMap((layout) => layout.placed);
  const used = found.area === 0 ? 0 : placed.reduce((sum, piece) => sum + areaOf(piece), 0) / found.area;
  const missing = found.missing.reduce((sum, count) => sum + count, 0);
  const shown = groups.slice(0, SHOWN);
  const turned = fitOtherwise(problem, found);
  return {
    exit: missing > 0 ? 1 : 0,
    sections: [
      {
        understood: [
          understood(wanted),
          ...(wanted.unmeasured > 0 ? [CUT_WORDS.unmeasured(wanted.unmeasured)] : []),
        ],
        verdict: [
          missing > 0
            ? CUT_WORDS.short(found.layouts.length, missing)
            : CUT_WORDS.verdict(found.layouts.length, used),
          ...(missing > 0
            ? []
            : [found.proved ? CUT_WORDS.proved : CUT_WORDS.bound(found.area, found.bound)]),
        ].join(" "),
        todo: [
          ...(isGrainKnown ? [] : [CUT_WORDS.grainUnknown]),
          ...(turned > 0 ? [CUT_WORDS.otherGrain(turned)] : []),
          ...shown.map(({ layout, times }, n) => {
            const stock = stocks[layout.stock] as StockSheet;
            const names = layout.placed.map(({ piece }) => pieces[piece]?.name ?? "");
            const cuts = cutOrder(layout.placed, stock, problem);
            return [
              CUT_WORDS.layout(n + 1, times, stock),
              `${CUT_WORDS.pieces(names)}.`,
              cuts === null ? CUT_WORDS.noOrder : `${cuts.map(CUT_WORDS.cut).join("; ")}.`,
            ].join(" ");
          }),
          ...(groups.length > SHOWN ? [CUT_WORDS.more(groups.length - SHOWN)] : []),
        ],
        figures: [
          ...stocks.flatMap((stock, n) => {
            const count = found.layouts.filter((layout) => layout.stock === n).length;
            const left = Number.isFinite(stock.count) ? stock.count - count : null;
            return count === 0 ? [] : [{ label: "sheets", value: CUT_WORDS.stock(count, stock, left) }];
          }),
          ...notCut(found.missing, pieces),
          ...(files.length === 0
            ? [{ label: "drawings", value: CUT_WORDS.draw }]
            : files.map((file) => ({ label: "written", value: file }))),
        ],
        cautions: cautions(),
        data: { ...found, stocks, pieces, files },
      },
    ],
  };
}

const understood = ({ pieces, from }: WantedCut): string =>
  CUT_WORDS.understood(
    pieces.reduce((sum, { count }) => sum + count, 0),
    new Set(pieces.map(({ width, height }) => `${width}:${height}`)).size,
    from,
  );

/** The first few by name. */
function notCut(missing: readonly number[], pieces: readonly WantedPiece[]): Figure[] {
  const named = missing.flatMap((count, n) => (count === 0 ? [] : [{ name: pieces[n]?.name ?? "", count }]));
  const shown = named.slice(0, NAMED).map(({ name, count }) => ({
    label: "not cut",
    value: CUT_WORDS.missing(name, count),
  }));
  const rest = named.length - shown.length;
  return rest > 0 ? [...shown, { label: "", value: CUT_WORDS.othersMissing(rest) }] : shown;
}

/** Pieces too large for every sheet that would lie on one whose grain ran the other way. */
const fitOtherwise = ({ stocks, pieces }: SheetProblem, { missing }: SheetCut): number =>
  pieces.filter(
    ({ width, height }, n) =>
      (missing[n] ?? 0) > 0 &&
      !stocks.some((sheet) => width <= sheet.width && height <= sheet.height) &&
      stocks.some((sheet) => width <= sheet.height && height <= sheet.width),
  ).length;

const cautions = () => HOUSING_CAUTIONS.map((sentence, n) => ({ code: `cutting-${n + 1}`, sentence }));

function rollReport(wanted: WantedCut, width: number, kerf: number): Report {
  const problem = { stocks: [], pieces: wanted.pieces, kerf, trim: 0, edgeToEdge: false };
  const { items } = plainProblem(problem);
  const tooWide = items.filter(
    (item) => Math.min(item.width, item.mayTurn ? item.height : item.width) > width + kerf,
  );
  if (tooWide.length > 0)
    throw new Refusal([
      ...new Set(tooWide.map(({ piece }) => CUT_WORDS.missing(wanted.pieces[piece]?.name ?? "", 1))),
    ]);
  const found = cutRoll(items, width + kerf);
  return {
    exit: 0,
    sections: [
      {
        understood: [understood(wanted)],
        verdict: `${CUT_WORDS.roll(found.length, width)} ${found.proved ? CUT_WORDS.proved : CUT_WORDS.rollBound(found.bound)}`,
        todo: [CUT_WORDS.noOrder],
        figures: found.laid.map(({ item, x, y, width: wide, height }) => ({
          label: wanted.pieces[items[item]?.piece ?? 0]?.name ?? "",
          value: `${wide - kerf} × ${height - kerf} mm, ${x} mm from the left, ${y} mm from the beginning`,
        })),
        cautions: cautions(),
        data: { ...found },
      },
    ],
  };
}

async function stripsReport(wanted: WantedCut, stocks: readonly StockSheet[]): Promise<Report> {
  const unit = 0.1;
  const solver = startSolver();
  const asked = {
    stocks: stocks.map(({ height, count }) => ({ length: Math.floor(height / unit + 1e-6), count })),
    pieces: wanted.pieces.map(({ height, count }) => ({ length: Math.ceil(height / unit - 1e-6), count })),
  };
  const found = await cutLengths(asked, solver.solve);
  await solver.close();
  const missing = found.missing.reduce((sum, count) => sum + count, 0);
  const lengths = found.patterns.reduce((sum, { times }) => sum + times, 0);
  const laid = found.patterns.reduce(
    (sum, { counts, times }) =>
      sum + times * counts.reduce((all, count, n) => all + count * (asked.pieces[n]?.length ?? 0), 0),
    0,
  );
  return {
    exit: missing > 0 ? 1 : 0,
    sections: [
      {
        understood: [understood(wanted)],
        verdict: [
          missing > 0
            ? CUT_WORDS.short(lengths, missing)
            : CUT_WORDS.lengths(lengths, laid / Math.max(1, found.cost)),
          ...(missing > 0
            ? []
            : [found.proved ? CUT_WORDS.proved : CUT_WORDS.bound(found.cost, found.bound)]),
        ].join(" "),
        todo: found.patterns.map(({ stock, counts, times }) => {
          const length = asked.stocks[stock]?.length ?? 0;
          const cutOff = counts.reduce((sum, count, n) => sum + count * (asked.pieces[n]?.length ?? 0), 0);
          const names = [...counts.entries()].flatMap(([n, count]) =>
            count === 0 ? [] : [`${count} ${wanted.pieces[n]?.name}`],
          );
          return CUT_WORDS.lengthPattern(times, length * unit, names, (length - cutOff) * unit);
        }),
        figures: notCut([...found.missing], wanted.pieces),
        cautions: cautions(),
        data: { ...found },
      },
    ],
  };
}
