import { done, type Outcome, type Problem, refused } from "../../outcome/problem.ts";
import type { Blank } from "./blank.ts";
import { fourFlapBlank, phaseBoxBlank } from "./cross.ts";
import { type DropBack, dropBackBlanks, dropBackFrom } from "./drop-back.ts";
import { FLAP_FROM_HINGE, jacketBlank } from "./jacket.ts";
import { type Book, bookProblems, outside, type Span } from "./measures.ts";
import { OVERLAP, twoStripBlanks } from "./two-strip.ts";

export const HOUSING_KINDS = ["jacket", "four-flap", "two-strip", "phase-box", "drop-back"] as const;
export type HousingKind = (typeof HOUSING_KINDS)[number];

/** What may be chosen, mm; each kind reads its own. */
export interface Choices {
  /** Thickness of the paper, card or board it is made of. */
  readonly stock: number;
  /** Room beyond the book; play in a drop-back box. */
  readonly clearance: number;
  /** Thickness of the book's own cover boards. */
  readonly boardThickness: number;
  readonly flap: number;
  readonly turnIn: number;
  readonly heightEase: number;
  /** Of the base's height, each of head and tail flap: one half or one. */
  readonly headFraction: number;
  readonly overlap: number;
  readonly cloth: number;
  readonly lining: number;
  readonly square: number;
}

export interface Housing {
  readonly kind: HousingKind;
  readonly book: Book;
  readonly choices: Choices;
  readonly blanks: readonly Blank[];
  /** Trays, case and the closed size, of a drop-back box. */
  readonly dropBack?: DropBack;
}

/** Usual stock and clearance of each kind. Clearances: common practice, no source; a jacket has none but its ease in height. */
const USUAL: Readonly<Record<HousingKind, { readonly stock: number; readonly clearance: number }>> = {
  jacket: { stock: 0.15, clearance: 0 },
  "four-flap": { stock: 0.5, clearance: 1 },
  "two-strip": { stock: 0.5, clearance: 1 },
  "phase-box": { stock: 0.4, clearance: 2.5 },
  "drop-back": { stock: 2.5, clearance: 1.5 },
};

/** Everything that was not chosen, as common practice has it (no source). */
export const usualChoices = (kind: HousingKind, book: Book): Choices => ({
  ...USUAL[kind],
  boardThickness: 3,
  flap: Math.max(book.width - FLAP_FROM_HINGE, book.width / 2),
  turnIn: 40,
  heightEase: 1,
  headFraction: 0.5,
  overlap: OVERLAP.usual,
  cloth: 0.4,
  lining: 0,
  square: 3,
});

const THINNER = "Give the thickness of one sheet in mm, measured with a caliper.";
const STOCK: Readonly<Record<HousingKind, Span>> = {
  jacket: { name: "thickness of the paper or film", low: 0.02, high: 0.4, remedy: THINNER },
  "four-flap": { name: "thickness of the stock", low: 0.1, high: 1.6, remedy: THINNER },
  "two-strip": { name: "thickness of the stock", low: 0.1, high: 2.5, remedy: THINNER },
  "phase-box": {
    name: "thickness of the card",
    low: 0.2,
    high: 0.8,
    remedy: "Thicker board does not fold four times in one piece: make it of two strips.",
  },
  "drop-back": { name: "thickness of the board", low: 1, high: 4, remedy: THINNER },
};
const span = (name: string, low: number, high: number, remedy: string): Span => ({ name, low, high, remedy });

/** The pieces of a housing for a book, or every measure that cannot be. */
export function housingFor(kind: HousingKind, book: Book, chosen: Partial<Choices> = {}): Outcome<Housing> {
  const choices = { ...usualChoices(kind, book), ...chosen };
  const first = [...bookProblems(book), ...outside(STOCK[kind], choices.stock)];
  // what depends on a wrong measure would only puzzle
  const problems = first.length > 0 ? first : ownProblems(kind, book, choices);
  if (problems.length > 0) return refused(...problems);
  if (kind !== "drop-back") return done({ kind, book, choices, blanks: folded[kind](book, choices) });
  const dropBack = dropBackFrom(book, { ...choices, board: choices.stock, play: choices.clearance });
  return done({ kind, book, choices, blanks: dropBackBlanks(dropBack), dropBack });
}

const folded: Readonly<Record<Exclude<HousingKind, "drop-back">, (book: Book, choices: Choices) => Blank[]>> =
  {
    jacket: (book, choices) => [jacketBlank(book, choices)],
    "four-flap": (book, choices) => [fourFlapBlank(book, choices)],
    "two-strip": twoStripBlanks,
    "phase-box": (book, choices) => [phaseBoxBlank(book, choices)],
  };

function ownProblems(kind: HousingKind, book: Book, choices: Choices): Problem[] {
  const roomy = "Too tight rubs the book, too loose lets it slide.";
  switch (kind) {
    case "jacket":
      return [
        ...outside(
          span("cover board", 0, 15, "Measure one board; 0 for a book without."),
          choices.boardThickness,
        ),
        ...outside(
          span(
            "flap",
            Math.min(20, book.width / 2),
            book.width,
            "A flap holds from 20 mm on, and must not reach the hinge.",
          ),
          choices.flap,
        ),
        ...(choices.turnIn === 0
          ? []
          : outside(
              span("turn-in", 10, Math.min(100, book.height / 2), "30 to 50 mm is usual; 0 for film."),
              choices.turnIn,
            )),
        ...outside(span("ease in height", 0, 3, "1 mm is usual for paper, 0 for film."), choices.heightEase),
      ];
    case "phase-box":
      // three flaps lie inside the last wall, which has the clearance and its extra
      return outside(span("clearance", Math.max(0, 3 * choices.stock - 1), 5, roomy), choices.clearance);
    case "drop-back":
      return [
        ...outside(span("play", 0.5, 5, roomy), choices.clearance),
        ...outside(span("cloth", 0, 1.5, THINNER), choices.cloth),
        ...outside(span("lining", 0, 10, THINNER), choices.lining),
        ...outside(span("square", 0, 10, "3 mm is usual."), choices.square),
      ];
    case "two-strip":
      return [
        ...outside(span("clearance", 0, 5, roomy), choices.clearance),
        ...outside(
          span("overlap", OVERLAP.low, OVERLAP.high, "The published rule has 50 to 100 mm."),
          choices.overlap,
        ),
      ];
    case "four-flap":
      return outside(span("clearance", 0, 5, roomy), choices.clearance);
  }
}
