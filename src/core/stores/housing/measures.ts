import type { Problem } from "../../outcome/problem.ts";

/** A book as measured with what it wears when it goes in: mm. */
export interface Book {
  /** Along the spine. */
  readonly height: number;
  /** From spine to fore-edge. */
  readonly width: number;
  /** The largest of those measured, best at three places. */
  readonly thickness: number;
}

/** A measure that a person gives, and between what it makes sense, mm. */
export interface Span {
  readonly name: string;
  readonly low: number;
  readonly high: number;
  readonly remedy: string;
}

const AGAIN = "Measure again in millimetres; a wrapped book with its wrapper on.";
/** What a hand can wrap on a table; beyond it a maker's advice is wanted. Common practice, no source. */
export const BOOK_SPANS = {
  height: { name: "height", low: 30, high: 1000, remedy: AGAIN },
  width: { name: "width", low: 30, high: 1000, remedy: AGAIN },
  thickness: { name: "thickness", low: 1, high: 250, remedy: AGAIN },
} as const satisfies Readonly<Record<string, Span>>;

/** The problem with a measure outside its span; none inside. */
export const outside = (span: Span, got: number): Problem[] =>
  got >= span.low && got <= span.high
    ? []
    : [
        {
          code: "housing-measure",
          severity: "stop",
          got: `the ${span.name} is ${tenths(got)} mm`,
          expected: `${tenths(span.low)} to ${tenths(span.high)} mm`,
          remedy: span.remedy,
        },
      ];

export const bookProblems = (book: Book): Problem[] => [
  ...outside(BOOK_SPANS.height, book.height),
  ...outside(BOOK_SPANS.width, book.width),
  ...outside(BOOK_SPANS.thickness, book.thickness),
];

/** A length to a tenth of a millimetre, as a rule and a knife can follow it: `32.5`, `648`. */
export const tenths = (mm: number): string => String(Math.round(mm * 10 + 1e-6) / 10);
