import type { EdgeCut } from "../stores/cutting/sheets/cut-order.ts";
import { tenths } from "../stores/housing/measures.ts";
import type { Sheet } from "../stores/housing/sheets.ts";

/* What is said of pieces laid on sheets, and on the plan of cuts. */

export const CUT_HELP = `leafward cut <folder> --stock WxH: pieces of all wrappers still to be made, laid on the sheets in stock with least waste
leafward cut <pieces.csv> --stock WxH: the same for a list with the columns piece, width_mm, height_mm, count, grain
                                       (grain: up = along the height, free = either way), or piece, length_mm, count for strips

  --stock 815x1100:40    a sheet in stock, mm or an ISO name (B1), and how many there are (without a number: enough);
                         may be given several times. For strips one length: --stock 1500:20
  --roll 1370            instead: from a roll so wide, as short a stretch as can be
  --kind jacket          folder: which wrapper (jacket, four-flap, phase-box, drop-back …)
  --grain long|short     the side of the sheets their grain follows
  --knife                cuts may turn corners; without it every cut goes from edge to edge, as a board cutter makes it
  --kerf 0               lost between two pieces to the blade, mm
  --trim 5               cut off along each edge of a sheet first, mm
  --out <folder>         write the plan of cuts as PDF, each layout as SVG and DXF at true scale
  --sheet A4|Letter      the printer's paper
  --json                 the same answer as JSON, mm

Exit codes: 0 well; 1 not all pieces can be cut from the stock; 2 it could not be done.`;

const size = ({ width, height }: Sheet): string => `${tenths(width)} × ${tenths(height)} mm`;
const sheets = (n: number): string => (n === 1 ? "one sheet" : `${n} sheets`);
const percent = (share: number): string => `${Math.round(100 * share)} %`;

export const CUT_WORDS = {
  title: "Plan of cuts",
  understood: (pieces: number, sizes: number, from: string): string =>
    `${from}: ${pieces} piece${pieces === 1 ? "" : "s"} of ${sizes} size${sizes === 1 ? "" : "s"}.`,
  verdict: (count: number, used: number): string =>
    `All lie on ${sheets(count)}; ${percent(used)} of them becomes pieces.`,
  short: (count: number, missing: number): string =>
    `Only part of them can be cut, from ${sheets(count)}; ${missing} piece${missing === 1 ? " is" : "s are"} left over.`,
  proved: "Nobody can do with less sheet: proved.",
  bound: (area: number, bound: number): string =>
    `At least ${percent(bound / area)} of this much sheet is needed, whoever lays it; the rest could not be proved or saved.`,
  stock: (used: number, stock: Sheet, left: number | null): string =>
    `${used} of ${size(stock)}${left === null ? "" : `, ${left} stay in stock`}`,
  missing: (name: string, count: number): string =>
    `${name}: ${count}, too large for the sheets or more than they give`,
  othersMissing: (n: number): string => `and ${n} others; all of them with --json`,
  otherGrain: (n: number): string =>
    `${n} of the pieces not cut would lie on these sheets if their grain ran the other way. Bend a sheet both ways; if its grain is the other, say --grain short or long.`,
  layout: (n: number, times: number, stock: Sheet): string =>
    `Layout ${n}: cut ${sheets(times)} of ${size(stock)} like this.`,
  pieces: (names: readonly string[]): string => names.join("; "),
  cut: ({ at, upright, of }: EdgeCut): string =>
    `${size(of)}: ${upright ? `upright, ${tenths(at)} mm from the left` : `across, ${tenths(at)} mm from the top`}`,
  noOrder: "These cuts turn corners: use a knife and a rule, the longest lines first.",
  more: (n: number): string => `${n} more layouts: add --out <folder> for all of them, drawn.`,
  draw: "add --out <folder> for the plan as PDF, and each layout as SVG and DXF",
  scale: (times: number): string =>
    `Drawn at 1 : ${times}. Arrows show the grain of pieces that must not be turned.`,
  sequence: "Cuts in their order, each from edge to edge of what it names",
  roll: (length: number, width: number): string =>
    `A stretch of ${tenths(length)} mm from the roll of ${tenths(width)} mm is enough.`,
  rollBound: (bound: number): string => `Nobody can do with less than ${tenths(bound)} mm.`,
  lengths: (count: number, used: number): string =>
    `${count} lengths are cut; ${percent(used)} of them becomes pieces.`,
  lengthPattern: (times: number, length: number, pieces: readonly string[], left: number): string =>
    `${times} × ${tenths(length)} mm: ${pieces.join(", ")}; ${tenths(left)} mm left`,
  grainUnknown:
    "The grain of the sheets is taken to follow their long side: bend one both ways first, it gives more easily along its grain; if it follows the short side, say --grain short.",
  unmeasured: (count: number): string =>
    `${count} item${count === 1 ? "" : "s"} to be wrapped ${count === 1 ? "has" : "have"} no size yet, or one that cannot be wrapped so: not on this plan.`,
} as const;

export const CUT_REFUSALS = {
  arguments:
    "leafward cut takes a campaign folder or a list of pieces, for example: npx leafward cut demo/saltmere --stock 815x1100",
  none: "No piece is wanted: no item of this folder is still to be wrapped. Give a list of pieces instead.",
  file: (path: string, why: string): string =>
    `${path} cannot be read (${why}). Give a campaign folder or a CSV file.`,
  row: (path: string, line: number, why: string): string => `${path}, line ${line}: ${why}`,
  columns: "expected the columns piece, width_mm, height_mm, count (and grain), or piece, length_mm, count",
  number: (column: string, got: string): string =>
    `${column} is ${got === "" ? "empty" : `"${got}"`}; expected a number above 0, decimals with a point`,
} as const;
