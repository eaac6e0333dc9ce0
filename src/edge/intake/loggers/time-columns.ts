import type { Problem } from "../../../core/outcome/problem.ts";
import { problem } from "../problem.ts";
import { type ColumnFacts, isRising, within } from "./column-facts.ts";
import type { DateShape, LoggerColumns } from "./logger-reading.ts";
import { NOMINAL_YEAR } from "./packed-date.ts";

type Counted = Extract<DateShape, "serial days" | "unix seconds" | "unix milliseconds">;

export interface TimeColumns {
  readonly columns: LoggerColumns;
  /** The time is a plain number. */
  readonly counted: Counted | null;
  readonly doubts: readonly Problem[];
}

/** Where the time stands: in one cell, in two, in parts, or as a number that counts. Null: nowhere. */
export function timeColumns(facts: readonly ColumnFacts[], file: string): TimeColumns | null {
  const whole = facts.filter(({ kind }) => kind === "datetime");
  const [first] = whole;
  if (first !== undefined) return inOneCell(whole, first, file);
  const parts = inParts(facts, file);
  const counted = asNumber(facts);
  const date = facts.find(({ kind }) => kind === "date");
  const clock = facts.find(({ kind }) => kind === "clock") ?? clockByHeading(facts);
  if (date !== undefined)
    return found({ date: date.index, ...(clock === undefined ? {} : { clock: clock.index }) });
  if (parts !== null) return parts;
  return counted;
}

const found = (columns: LoggerColumns): TimeColumns => ({ columns, counted: null, doubts: [] });

function inOneCell(whole: readonly ColumnFacts[], first: ColumnFacts, file: string): TimeColumns {
  if (whole.length === 1) return found({ time: first.index });
  const named = whole.filter(
    ({ meaning }) => meaning === "time" || meaning === "date" || meaning === "clock",
  );
  const local = whole.find(({ heading }) => /local|lokal|ortszeit|locale?\b/i.test(heading));
  const chosen = local ?? named[0] ?? first;
  const doubt = problem(
    "logger-several-times",
    "note",
    { file },
    {
      got: whole.map(nameOf).join(", "),
      expected: `${nameOf(chosen)}, ${local === undefined ? "the first" : "the local one,"}`,
      remedy: "Choose another column of time if this is not when it was measured.",
    },
  );
  return { columns: { time: chosen.index }, counted: null, doubts: [doubt] };
}

export const nameOf = ({ heading, index }: ColumnFacts): string =>
  heading === "" ? `cell ${index + 1}` : `"${heading}"`;

/** A time of day that looks like a number: `8`, `800`, `0.3333`. */
function clockByHeading(facts: readonly ColumnFacts[]): ColumnFacts | undefined {
  return facts.find(
    ({ meaning, kind, numbers }) =>
      kind === "number" && (meaning === "clock" || meaning === "hour") && within(numbers, 0, 235_959),
  );
}

function inParts(facts: readonly ColumnFacts[], file: string): TimeColumns | null {
  const at = (part: "year" | "month" | "day" | "dayOfYear" | "hour" | "minute"): number | undefined =>
    facts.find(
      ({ meaning, kind, heading }) =>
        kind === "number" && (meaning === part || (part === "hour" && /^hr$/i.test(heading))),
    )?.index;
  const [year, month, day, hour, minute] = [at("year"), at("month"), at("day"), at("hour"), at("minute")];
  const dayOfYear = month === undefined ? at("dayOfYear") : undefined;
  if (dayOfYear === undefined && (month === undefined || day === undefined)) return null;
  if (year === undefined && hour === undefined) return null;
  const columns = {
    ...(year === undefined ? {} : { year }),
    ...(dayOfYear === undefined ? {} : { dayOfYear }),
    ...(month === undefined ? {} : { month }),
    ...(day === undefined || dayOfYear !== undefined ? {} : { day }),
    ...(hour === undefined ? {} : { hour }),
    ...(minute === undefined ? {} : { minute }),
  };
  return { columns, counted: null, doubts: year === undefined ? [noYear(file)] : [] };
}

const noYear = (file: string): Problem =>
  problem(
    "logger-no-year",
    "ask",
    { file },
    { expected: String(NOMINAL_YEAR), remedy: "Add a column with the year if it is not a typical year." },
  );

/** Days of a spreadsheet (1954 to 2064), seconds or milliseconds from 1970 (1979 to 2103), never falling. */
const RANGES: readonly (readonly [Counted, number, number])[] = [
  ["unix milliseconds", 3e11, 4.2e12],
  ["unix seconds", 3e8, 4.2e9],
  ["serial days", 20_000, 60_000],
];

export const countedBy = (numbers: readonly number[]): Counted | null =>
  RANGES.find(([, least, most]) => within(numbers, least, most))?.[0] ?? null;

function asNumber(facts: readonly ColumnFacts[]): TimeColumns | null {
  const fits = facts.filter(({ numbers }) => countedBy(numbers) !== null);
  const named = fits.find(({ meaning }) => meaning === "time" || meaning === "date" || meaning === "clock");
  const chosen = named ?? fits.find(({ numbers, meaning }) => meaning === null && isRising(numbers));
  const counted = chosen === undefined ? null : countedBy(chosen.numbers);
  if (chosen === undefined || counted === null) return null;
  const clock = chosen.numbers.every(Number.isInteger) ? clockBeside(facts, chosen) : undefined;
  const columns = clock === undefined ? { time: chosen.index } : { date: chosen.index, clock: clock.index };
  return { columns, counted, doubts: [] };
}

export const isPartOfDay = (clock: ColumnFacts | undefined): boolean =>
  clock !== undefined && within(clock.numbers, 0, 1) && !clock.numbers.every(Number.isInteger);

/** A time of day in a column of its own, beside whole days. */
const clockBeside = (facts: readonly ColumnFacts[], day: ColumnFacts): ColumnFacts | undefined =>
  facts.find(({ kind }) => kind === "clock") ??
  facts.find(
    ({ index, meaning, numbers }) => index !== day.index && meaning === "clock" && within(numbers, 0, 1),
  );
