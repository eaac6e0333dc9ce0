import type { Part } from "../stores/housing/blank.ts";
import type { Label } from "../stores/housing/drawing.ts";
import type { DropBack, Room } from "../stores/housing/drop-back.ts";
import type { Housing, HousingKind } from "../stores/housing/housing.ts";
import { type Book, tenths } from "../stores/housing/measures.ts";
import type { PieceYield } from "../stores/housing/on-sheets.ts";
import { type Sheet, tearFromGrammage } from "../stores/housing/sheets.ts";
import { phaseStripLengthFrom } from "../stores/housing/two-strip.ts";
import { expected, plain, type Sentence } from "./sentence.ts";

/* What is said of wrappers and boxes, and on their drawings. */

export const HOUSING_SENTENCES = {
  "housing-measure": (p) => `${plain(p)}; expected ${expected(p)}.`,
} satisfies Record<string, Sentence>;

export const HOUSING_NAMES: Readonly<Record<HousingKind, string>> = {
  jacket: "Wrapper of dust-jacket type",
  "four-flap": "Four-flap wrapper, one piece",
  "two-strip": "Four-flap wrapper, two strips",
  "phase-box": "Soft phase box",
  "drop-back": "Drop-back box",
};

export const PART_NAMES: Readonly<Record<Part, string>> = {
  jacket: "jacket",
  front: "front cover",
  back: "back cover",
  spine: "spine",
  flap: "flap",
  "turn-in": "turn-in",
  "four-flap": "four-flap wrapper",
  "phase-box": "phase box",
  "inner-strip": "inner strip, around head and tail",
  "outer-strip": "outer strip, around spine and fore-edge",
  base: "base",
  "head-flap": "head flap",
  "tail-flap": "tail flap",
  "fore-edge-flap": "fore-edge flap",
  "spine-flap": "spine flap",
  "inner-base": "inner tray, base",
  "inner-fore-wall": "inner tray, fore-edge wall",
  "inner-side-wall": "inner tray, head and tail wall",
  "outer-base": "outer tray, base",
  "outer-fore-wall": "outer tray, fore-edge wall",
  "outer-side-wall": "outer tray, head and tail wall",
  "case-board": "case board",
  "case-spine": "case spine",
};

export const sayLabel = ({ says }: Label): string => ("part" in says ? PART_NAMES[says.part] : says.figure);
export const saySheet = ({ width, height }: Sheet): string => `${tenths(width)} × ${tenths(height)} mm`;

/** The drawing's own words. */
export const DRAWING_WORDS = {
  cut: "cut",
  fold: "fold (crease, never cut)",
  measure: "measures in mm",
  grain: "grain",
  bar: "100 mm",
  seen: "Seen from inside; spine on the left, head at the top. Strips lie with the head or the spine on the left.",
} as const;

const NARROWER = "Head and tail flaps are 1 mm narrower on each side, so that they slip between the others.";

/** How the flaps or trays go together, and what to heed. */
const MAKE: Readonly<Record<HousingKind, readonly string[]>> = {
  jacket: ["Close the book on the jacket before you fold the flaps around the cover edges."],
  "four-flap": [
    NARROWER,
    "Close tail, head, fore-edge, spine, in this order: each wall is one thickness higher than the one before.",
  ],
  "two-strip": [
    "Lay the inner strip across the outer one and fix it under the base only, with an adhesive that passed the Photographic Activity Test or with a ladder of slits.",
    "Close tail, head, fore-edge, spine, in this order.",
  ],
  "phase-box": [NARROWER, "Close tail, head, fore-edge, and the spine flap last: its wall is 1 mm higher."],
  "drop-back": [
    "Every board is a rectangle: it can be cut from its measures, without the pages at true scale.",
    "Walls stand on their bases; cover each tray with cloth before you measure the case again.",
    "Boards are for the thicknesses given: measure board and cloth with a caliper first.",
  ],
};

/** Common practice, no source, but where one is named. */
export const sayMaking = ({ kind }: Housing): readonly string[] => [
  ...MAKE[kind],
  kind === "drop-back"
    ? "The grain of every board runs parallel to the spine; in walls at head and tail along the wall."
    : "Fold with the grain where you can: it runs parallel to the spine. Crease folds across it twice.",
];

export const HOUSING_CAUTIONS: readonly string[] = [
  "Knives and board cutters: a fresh blade, a steel rule with a guard, the free hand behind the blade, several light strokes. Close or cap the knife between cuts, and keep used blades in a lidded tin.",
  "Measure with the book supported, and cut a trial of waste card first where the book is fragile.",
  "Nothing mouldy or damp is wrapped or boxed: release from quarantine comes first.",
  "Follow local rules and licensed practice.",
];

/** The paper's data sheet must show this. Source: ISO 9706, as tabulated by the Library of Congress; boards are outside its scope. */
export const sayPaper = (grammage: number): string =>
  `Paper to ISO 9706: pH 7.5 to 10, at least 20 g/kg of calcium carbonate, kappa number at most 5, tear at least ${tenths(tearFromGrammage(grammage))} mN at ${grammage} g/m².`;

export const sayFolds = (edges: readonly number[]): string => edges.slice(1, -1).map(tenths).join(", ");

/** A rule of thumb to hold beside ours. */
export function sayBeside({ kind, book }: Housing): string | null {
  if (kind === "jacket") return `rule of thumb: about four times the width, ${tenths(4 * book.width)} mm`;
  if (kind !== "two-strip") return null;
  const length = phaseStripLengthFrom(book.height, book.thickness);
  return `of 60-point board instead: inner strip ${tenths(length)} × ${tenths(book.width)} mm (Indiana University Libraries, Book Repair Manual)`;
}

export function sayYield({ blank, pieces, wanted, sheets, either }: PieceYield, sheet: Sheet): string {
  const piece = PART_NAMES[blank.part];
  const from = `a sheet of ${saySheet(sheet)}`;
  if (sheets !== null)
    return `${piece}: ${pieces} from ${from}, so ${sheets} sheet${sheets === 1 ? "" : "s"} for ${wanted} (a tenth for spoilage counted in).`;
  return either > 0
    ? `${piece}: none with the grain from ${from}, ${either} across it. Take a sheet whose grain runs the other way.`
    : `${piece}: ${from} is too small for ${saySheet(blank)}. Take a larger sheet, or another kind of housing.`;
}

/** The book and its size on a drawing: `SR-0402, 240 × 165 × 32 mm`. */
export const sayBookShort = (name: string, { height, width, thickness }: Book): string =>
  `${name === "" ? "" : `${name}, `}${tenths(height)} × ${tenths(width)} × ${tenths(thickness)} mm`;

/** @param places how many the thickness was measured at */
export function sayBook(name: string, { height, width, thickness }: Book, places: number): string {
  const size = `${name === "" ? "A book" : name} of ${tenths(height)} × ${tenths(width)} × ${tenths(thickness)} mm`;
  return places >= 3
    ? `${size} (height, width, thickness).`
    : `${size} (height, width, thickness). Measure the thickness at three places and give all with --thick: the largest counts.`;
}

/** What the sizes were made with. Usual values: common practice, no source. */
export function sayUsed({ kind, choices }: Housing): string {
  const { stock, clearance, boardThickness, flap, turnIn, headFraction, overlap, cloth, lining, square } =
    choices;
  const own: Readonly<Record<HousingKind, string>> = {
    jacket: `cover boards ${tenths(boardThickness)}, flaps ${tenths(flap)}, turn-in ${tenths(turnIn)} mm`,
    "four-flap": `stock ${hundredths(stock)}, clearance ${tenths(clearance)} mm, head and tail flaps ${headFraction === 1 ? "full" : "half"}`,
    "two-strip": `stock ${hundredths(stock)}, clearance ${tenths(clearance)}, flaps overlap by ${tenths(overlap)} mm`,
    "phase-box": `card ${hundredths(stock)}, clearance ${tenths(clearance)} mm`,
    "drop-back": `board ${hundredths(stock)}, cloth ${hundredths(cloth)}, play ${tenths(clearance)}, lining ${hundredths(lining)}, square ${tenths(square)} mm`,
  };
  return `Made with ${own[kind]}.`;
}
const hundredths = (mm: number): string => String(Math.round(mm * 100) / 100);

/** As the piece is drawn its grain runs along its height. */
export const sayGrain = ({ width, height }: Sheet): string =>
  `along the ${tenths(height)} mm${Math.abs(width - height) < 0.05 ? " as drawn" : ""}`;

export const sayTray = ({ inner, outer, overall }: DropBack): { label: string; value: string }[] => [
  { label: "inner tray, clear", value: sayRoom(inner.clear) },
  { label: "inner tray, outside", value: sayRoom(inner.outside) },
  { label: "outer tray, outside", value: sayRoom(outer.outside) },
  { label: "closed box", value: sayRoom(overall) },
];
const sayRoom = ({ W, H, D }: Room): string =>
  `${tenths(W)} × ${tenths(H)} × ${tenths(D)} mm (width, height, depth)`;
