/** A sheet or a piece of one: mm. */
export interface Sheet {
  readonly width: number;
  readonly height: number;
}

export type IsoSeries = "A" | "B" | "C" | "RA" | "SRA";

/** Exponents of 2 in short and long side of size 0, sides in metres. Sources: ISO 216 (A, B), ISO 269 (C). */
const SIDES = { A: [-1 / 4, 1 / 4], B: [0, 1 / 2], C: [-1 / 8, 3 / 8] } as const;
/** Untrimmed sizes 0, mm; the next is half of the one before. Source: ISO 217. */
const UNTRIMMED = { RA: [860, 1220], SRA: [900, 1280] } as const;

/** A standard sheet, standing. Below whole millimetres sizes are cut off, after a fifth of one is given back (ISO 216).
 *  @param n 0 to 10 */
export function isoSheet(series: IsoSeries, n: number): Sheet {
  if (series === "RA" || series === "SRA") {
    const [width, height] = UNTRIMMED[series];
    return Array.from({ length: n }).reduce<Sheet>(
      (sheet) => ({ width: Math.floor(sheet.height / 2), height: sheet.width }),
      { width, height },
    );
  }
  const side = (exponent: number): number => Math.floor(1000 * 2 ** (exponent - n / 2) + 0.2);
  const [short, long] = SIDES[series];
  return { width: side(short), height: side(long) };
}

export const MM_PER_INCH = 25.4;
/** Board is sold by the point, a thousandth of an inch. */
export const mmFromPoints = (points: number): number => (points * MM_PER_INCH) / 1000;

/** Least tear resistance of permanent paper, mN.
 *  @param grammage 25 g/m² and over   Source: ISO 9706, as tabulated by the Library of Congress */
export const tearFromGrammage = (grammage: number): number => (grammage >= 70 ? 350 : 6 * grammage - 70);

/** How many pieces a sheet gives, in rows all one way. */
export interface Yield {
  /** The better of both ways to turn the piece. */
  readonly either: number;
  /** With the grain of both along their heights. */
  readonly withGrain: number;
}

export function yieldOf(piece: Sheet, sheet: Sheet): Yield {
  const withGrain = inRows(piece, sheet);
  return { withGrain, either: Math.max(withGrain, inRows(turned(piece), sheet)) };
}

export const turned = ({ width, height }: Sheet): Sheet => ({ width: height, height: width });

/** A millionth of a millimetre is forgiven: sizes are sums of fractions. */
const inRows = (piece: Sheet, sheet: Sheet): number =>
  Math.floor((sheet.width + 1e-6) / piece.width) * Math.floor((sheet.height + 1e-6) / piece.height);
