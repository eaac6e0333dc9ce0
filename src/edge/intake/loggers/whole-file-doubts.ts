import type { Problem } from "../../../core/outcome/problem.ts";
import { problem } from "../problem.ts";
import type { LeftOutReason, LoggerReading, LoggerSilence } from "./logger-reading.ts";
import type { NumberCell } from "./number-cell.ts";
import { hoursInWords, howMany, offsetInWords, stepInWords, thousands } from "./tell-quantities.ts";

/** What was noticed on the way and is no part of the answer. */
export interface Noticed {
  readonly numbers: NumberCell;
  readonly openQuotes: number;
  readonly isTwelve: boolean;
  readonly areOffsetsChanging: boolean;
}

/** What is odd about the file as a whole, once every row is known. */
export function wholeFileDoubts(reading: LoggerReading, noticed: Noticed): Problem[] {
  return [
    ...aboutRows(reading, noticed),
    ...aboutNumbers(reading, noticed),
    ...aboutTime(reading, noticed),
    ...aboutClaims(reading),
  ];
}

/** Reasons in words; those that other sentences tell are left out here. */
const REASONS: Partial<Record<LeftOutReason, string>> = {
  "time-unreadable": "the time cannot be read",
  "no-such-day": "there is no such day",
  "row-short": "the row ends too early",
  "no-value": "there is neither temperature nor humidity",
};

function aboutRows(reading: LoggerReading, { openQuotes }: Noticed): Problem[] {
  const { file, rowsLeftOut, silences, duplicates, outOfOrder } = reading;
  const found: Problem[] = laterSensors(reading);
  for (const { reason, count: all, lines, example } of rowsLeftOut) {
    const words = REASONS[reason];
    const count = reason === "no-value" ? all - silences.rows : all;
    const [line] = count === all ? lines : [];
    if (words !== undefined && count > 0)
      found.push(
        problem(
          "logger-rows-left-out",
          "note",
          { file, ...(line === undefined ? {} : { line }) },
          {
            got: howMany(count, "row"),
            expected: example === undefined ? words : `${words}, e.g. "${example}"`,
            remedy:
              count < 10
                ? "Nothing needs to be done if these are lines of the logger itself."
                : "Look at these rows.",
          },
        ),
      );
  }
  if (silences.count > 0) found.push(silent(file, silences));
  if (duplicates.count > 0)
    found.push(
      problem(
        "logger-duplicates",
        duplicates.differing > 0 ? "ask" : "note",
        { file },
        {
          got: howMany(duplicates.count, "row"),
          remedy:
            duplicates.differing > 0
              ? `${thousands(duplicates.differing)} of them have other values: look whether two loggers are in one file.`
              : "Nothing needs to be done.",
        },
      ),
    );
  if (outOfOrder > 0)
    found.push(
      problem(
        "logger-order",
        "note",
        { file },
        { got: howMany(outOfOrder, "row"), remedy: "Look at the clock of the logger." },
      ),
    );
  if (openQuotes > 0)
    found.push(
      problem(
        "logger-quote-open",
        "note",
        { file },
        { got: howMany(openQuotes, "row"), remedy: "Look at these rows." },
      ),
    );
  return found;
}

function silent(file: string, { count, rows, longest }: LoggerReading["silences"]): Problem {
  const lengthOf = ({ from, to }: LoggerSilence): number => Date.parse(to) - Date.parse(from);
  const [first] = [...longest].sort((a, b) => lengthOf(b) - lengthOf(a));
  const span = `from ${spaced(first?.from)} to ${spaced(first?.to)}`;
  return problem(
    "logger-silent",
    "note",
    { file },
    {
      got: howMany(rows, "row"),
      expected: count === 1 ? span : `in ${thousands(count)} stretches, the longest ${span}`,
      remedy: "Look at the logger and its battery.",
    },
  );
}

/** Sensors that come so far down in the file that they could not be named when it was opened. */
function laterSensors({ file, sensors, sensor, rowsLeftOut }: LoggerReading): Problem[] {
  const others = rowsLeftOut.find(({ reason }) => reason === "other-sensor");
  if (others === undefined || sensors.length > 1) return [];
  const [line] = others.lines;
  return [
    problem(
      "logger-several-sensors",
      "ask",
      { file, ...(line === undefined ? {} : { line }) },
      {
        got: `${howMany(others.count, "row is", "rows are")} of others`,
        expected: `"${sensor}"`,
        remedy: "Choose another sensor by its name if this is the wrong one.",
      },
    ),
  ];
}

function aboutNumbers({ file }: LoggerReading, { numbers }: Noticed): Problem[] {
  const { points, commas, odd, oddExample } = numbers;
  return [
    ...(points > 0 && commas > 0
      ? [
          problem(
            "logger-numbers-mixed",
            "ask",
            { file },
            {
              got: `${thousands(commas)} and ${thousands(points)}`,
              remedy: "Say which is the decimal mark if some values look wrong.",
            },
          ),
        ]
      : []),
    ...(odd > 0
      ? [
          problem(
            "logger-values-left-out",
            "note",
            { file },
            {
              got:
                odd === 1 ? `1 value, "${oddExample}",` : `${thousands(odd)} values such as "${oddExample}"`,
              expected: odd === 1 ? "a number" : "numbers",
              remedy: "Look at these rows.",
            },
          ),
        ]
      : []),
  ];
}

function aboutTime(reading: LoggerReading, { isTwelve, areOffsetsChanging }: Noticed): Problem[] {
  const { file, gaps, jumps, offset, summerTime } = reading;
  const found: Problem[] = [];
  if (isTwelve)
    found.push(
      problem(
        "logger-clock-twelve",
        "ask",
        { file },
        { remedy: "The second round of each day was read as afternoon; export with 24 hours next time." },
      ),
    );
  if (areOffsetsChanging)
    found.push(
      problem(
        "logger-zones-in-cells",
        "note",
        { file },
        {
          got: "summer and standard time",
          expected: offsetInWords(offset ?? 0),
          remedy: "Nothing needs to be done.",
        },
      ),
    );
  if (jumps.length > 0) found.push(aboutJumps(reading));
  if (gaps.count > 0) {
    const [longest] = [...gaps.longest].sort((a, b) => b.missing - a.missing);
    found.push(
      problem(
        "logger-gaps",
        "note",
        { file },
        {
          got: `${thousands(gaps.missing)} in ${thousands(gaps.count)} ${gaps.count === 1 ? "gap" : "gaps"}, ${hoursInWords(gaps.hours)} in all, the longest from ${spaced(longest?.from)} to ${spaced(longest?.to)}`,
          remedy: "Nothing needs to be done if the logger was being read out.",
        },
      ),
    );
  }
  return found;

  function aboutJumps({ jumps: [first] }: LoggerReading): Problem {
    const isOut = summerTime === "taken out";
    return problem(
      "logger-summer-time",
      jumps.length === 1 || !isOut ? "ask" : "note",
      { file, ...(first === undefined ? {} : { line: first.line }) },
      {
        got: jumps
          .map(({ at, kind }) => `${kind} at ${spaced(at)}`)
          .slice(0, 6)
          .join(", "),
        expected: isOut ? "the summer was put back to standard time" : "the times were left as they are",
        remedy: isOut
          ? "Say that there is no summer time if the clock was never changed."
          : "Say that summer time is to be taken out if the clock was changed.",
      },
    );
  }
}

const spaced = (at: string | undefined): string => (at ?? "").replace("T", " ");

function aboutClaims({ file, claims, rowsRead, rowsLeftOut, usualStepMinutes }: LoggerReading): Problem[] {
  const rows = rowsLeftOut.reduce((sum, { count }) => sum + count, rowsRead);
  const isOneExport = rowsLeftOut.every(({ reason }) => reason !== "headings-again");
  const samples = isOneExport ? claims.samples : undefined; // each export put into the file claims its own
  const { stepMinutes } = claims;
  return [
    ...(samples !== undefined && samples !== rows && samples !== rowsRead
      ? [
          problem(
            "logger-claim-samples",
            "note",
            { file },
            {
              got: thousands(samples),
              expected: thousands(rowsRead),
              remedy: "Look whether the export was cut short, or rows were deleted.",
            },
          ),
        ]
      : []),
    ...(stepMinutes !== undefined &&
    stepMinutes > 0 &&
    Math.abs(stepMinutes - usualStepMinutes) > 0.05 * stepMinutes
      ? [
          problem(
            "logger-claim-step",
            "note",
            { file },
            {
              got: stepInWords(stepMinutes),
              expected: stepInWords(usualStepMinutes),
              remedy: "Look whether the readings were thinned out.",
            },
          ),
        ]
      : []),
  ];
}
