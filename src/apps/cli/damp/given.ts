import { parseArgs } from "node:util";
import { sayRefusal } from "../../../core/say/damp/faults.ts";
import { celsiusFrom, joined, MEASURES, type MeasureName, numberFrom, quantityFrom } from "./quantity.ts";

/* What was typed after a command, read option by option; every fault is collected, so that one run names them all. */

export type OptionKinds = Readonly<Record<string, "text" | "texts" | "flag">>;

/** Thrown when what was asked cannot be done; each line is a whole sentence for the person. */
export class Refusal extends Error {
  readonly lines: readonly string[];
  constructor(lines: readonly string[]) {
    super(lines.join("\n"));
    this.lines = lines;
  }
}

type Values = Readonly<Record<string, string | boolean | readonly string[] | undefined>>;

interface Range {
  readonly low: number;
  readonly high: number;
  /** What to do when it is outside. */
  readonly remedy: string;
}

export class Given {
  readonly files: readonly string[];
  readonly #values: Values;
  readonly #faults: string[] = [];

  /** @throws TypeError of parseArgs, with a code, for an unknown option or one without its value */
  constructor(args: readonly string[], kinds: OptionKinds) {
    const options = Object.fromEntries(
      Object.entries({ ...kinds, json: "flag", help: "flag" }).map(([name, kind]) => [
        name,
        kind === "flag"
          ? { type: "boolean" as const, ...(name === "help" ? { short: "h" } : {}) }
          : { type: "string" as const, multiple: kind === "texts" },
      ]),
    );
    const { values, positionals } = parseArgs({ args: joined(args), allowPositionals: true, options });
    this.#values = values as Values; // the options say what each can be
    this.files = positionals;
  }

  has(name: string): boolean {
    return this.#values[name] !== undefined && this.#values[name] !== false;
  }
  text(name: string): string | undefined {
    const value = this.#values[name];
    return typeof value === "string" ? value : undefined;
  }
  texts(name: string): readonly string[] {
    const value = this.#values[name];
    return Array.isArray(value) ? value : [];
  }

  /** Notes a fault; the value handed on is never used, as `settle` comes before any work. */
  refuse(what: { option: string; got: string | undefined; expected: string; remedy: string }): void {
    this.#faults.push(sayRefusal(what));
  }
  refuseInWords(sentence: string): void {
    this.#faults.push(sentence);
  }

  /** @throws Refusal when anything was at fault */
  settle(): void {
    if (this.#faults.length > 0) throw new Refusal(this.#faults);
  }

  /** A quantity in the unit the physics has; the fallback when nothing was typed, and a fault when there is none. */
  quantity(name: string, measureName: MeasureName, range: Range, fallback?: number): number {
    const measure = MEASURES[measureName];
    const { unit, times } = measure.shown;
    const span = `${shown(range.low * times)} to ${shown(range.high * times)}${unit === "" ? "" : ` ${unit}`}`;
    return this.#read(name, {
      read: (text) => quantityFrom(text, measure),
      range,
      span,
      expected: `${measure.name}, ${span}, such as ${measure.example}`,
      fallback,
    });
  }

  /** °C */
  temperature(name: string, range: Range, fallback?: number): number {
    const span = `${range.low} to ${range.high} °C`;
    const expected = `a temperature, ${span}, such as 26 or 79F`;
    return this.#read(name, { read: celsiusFrom, range, span, expected, fallback });
  }

  /** One of the words, or the fallback. */
  oneOf<T extends string>(name: string, words: readonly T[], remedy: string, fallback?: T): T {
    const text = this.text(name)?.toLowerCase().replaceAll(" ", "-");
    const found = words.find((word) => word === text);
    if (found !== undefined) return found;
    if (text === undefined && fallback !== undefined) return fallback;
    this.refuse({ option: `--${name}`, got: this.text(name), expected: words.join(", "), remedy });
    return words[0] as T; // settle comes before it is used
  }

  #read(
    name: string,
    how: {
      read: (text: string) => number | null;
      range: Range;
      span: string;
      expected: string;
      fallback: number | undefined;
    },
  ): number {
    const text = this.text(name);
    if (text === undefined && how.fallback !== undefined) return how.fallback;
    const value = text === undefined ? null : how.read(text);
    const { low, high, remedy } = how.range;
    const slack = 1e-9 * Math.max(1, Math.abs(high));
    if (value !== null && value >= low - slack && value <= high + slack) return value;
    const expected = value === null ? how.expected : how.span;
    this.refuse({
      option: `--${name}`,
      got: text,
      expected,
      remedy: value === null ? ambiguity(text) + remedy : remedy,
    });
    return how.fallback ?? low;
  }
}

const shown = (n: number): string => String(Number(n.toPrecision(6)));

/** Why a number such as 1,500 was not believed. */
const ambiguity = (text: string | undefined): string =>
  text !== undefined && /^\D*\d+,\d{3}\D*$/.test(text) && numberFrom(text.replace(/[^\d.,+-]/g, "")) === null
    ? "Write it without the comma, as the comma could part thousands or decimals. "
    : "";
