import type { DecimalMark } from "./logger-reading.ts";

const [MINUS, PLUS, DOT, COMMA] = [45, 43, 46, 44];
const POWERS = Array.from({ length: 23 }, (_, n) => 10 ** n);
/** What loggers write when they have no value; from memory. */
const NO_VALUE =
  /^(?:[-–—_.*?#\s]*|nan|null|nil|none|n\/?[ad]\.?|na|missing|err(?:or)?|ofl|ufl|over|under|open|short|inf(?:inity)?|invalid|fault|fehler|kein wert|-?1\.?#.*|#.*)$/i;

/** Reads numbers from bytes without making a string; a decimal point and a decimal comma are both understood. */
export class NumberCell {
  points = 0;
  commas = 0;
  /** Cells with letters in them that are no known mark of a missing value, and the first of them. */
  odd = 0;
  oddExample = "";
  /** Cells that had `°F` or the like behind the number. */
  fahrenheit = 0;
  /** Digits after the decimal mark of the last number. */
  decimals = 0;

  constructor(private readonly settled: DecimalMark | null) {}

  read(bytes: Uint8Array, from: number, to: number): number {
    let i = from;
    const sign = bytes[from];
    if (sign === MINUS || sign === PLUS) i++;
    let whole = 0;
    let mark = 0;
    let markAt = to;
    const firstDigit = i;
    for (; i < to; i++) {
      const c = bytes[i] as number; // i stays below to
      const digit = c - 48;
      if (digit >= 0 && digit <= 9) whole = whole * 10 + digit;
      else if ((c === DOT || c === COMMA) && mark === 0) {
        mark = c;
        markAt = i;
      } else return this.slow(bytes, from, to);
    }
    if (mark === 0) {
      this.decimals = 0;
      return to === firstDigit || to - firstDigit > 15
        ? this.slow(bytes, from, to)
        : sign === MINUS
          ? -whole
          : whole;
    }
    if (to - firstDigit < 2 || to - firstDigit > 16) return this.slow(bytes, from, to);
    if (mark === DOT) this.points++;
    else this.commas++;
    if (this.settled !== null && (mark === DOT) !== (this.settled === ".")) return this.slow(bytes, from, to);
    const decimals = to - markAt - 1;
    this.decimals = decimals;
    const value = whole / (POWERS[decimals] as number); // one rounding: both sides are exact
    return sign === MINUS ? -value : value;
  }

  /** Units behind the number, thousands, exponents, typographic minus; NaN for a missing value or for words. */
  private slow(bytes: Uint8Array, from: number, to: number): number {
    if (to <= from) return Number.NaN;
    const text = Buffer.from(bytes.subarray(from, to))
      .toString("utf8")
      .replace(/\u2212/g, "-")
      .replace(/[\s\u00a0\u202f]+/g, " ")
      .trim();
    if (NO_VALUE.test(text)) return Number.NaN;
    const bare = text.replace(
      /\s?(?:[°º\uFFFD]?\s?(?:[CFK]|deg ?[CF]))$|\s?%\s?(?:r\.?h\.?|r\.?f\.?|h\.?r\.?)?$/i,
      "",
    );
    const value = numberFromText(bare, this.settled);
    if (Number.isNaN(value)) {
      this.odd++;
      if (this.oddExample === "") this.oddExample = text.slice(0, 40);
    } else {
      if (/F$/i.test(text)) this.fahrenheit++;
      const mark = /[.,](?=\d*$)/.exec(bare)?.[0];
      if (mark === ".") this.points++;
      else if (mark === ",") this.commas++;
    }
    this.decimals = /[.,](\d+)$/.exec(bare)?.[1]?.length ?? 0;
    return value;
  }
}

/** `1,234.5`, `1.234,5`, `1 234,5`, `2.5e1`; with one mark only it is the decimal mark, unless the other is settled. */
export function numberFromText(text: string, settled: DecimalMark | null): number {
  const plain = text.replace(/(\d)[ '’](?=\d{3}(?:\D|$))/g, "$1");
  if (!/^[-+]?(?:\d[\d.,]*|[.,]\d+)(?:e[-+]?\d{1,2})?$/i.test(plain)) return Number.NaN;
  const last = Math.max(plain.lastIndexOf("."), plain.lastIndexOf(","));
  const mark = settled ?? (last < 0 ? "." : (plain[last] as DecimalMark));
  const other = mark === "." ? "," : ".";
  if (plain.split(mark).length > 2) return Number.NaN;
  const grouped = plain.split(other);
  if (grouped.slice(1).some((group) => !/^\d{3}(?:\D|$)/.test(group))) return Number.NaN;
  return Number(grouped.join("").replace(mark, "."));
}
