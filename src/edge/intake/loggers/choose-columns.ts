import type { Outcome, Problem } from "../../../core/outcome/problem.ts";
import { done, refused } from "../../../core/outcome/problem.ts";
import { problem } from "../problem.ts";
import { type ColumnFacts, columnFacts } from "./column-facts.ts";
import type { DateShape, LoggerColumns, LoggerCorrections, LoggerSensor } from "./logger-reading.ts";
import type { TableShape } from "./table-shape.ts";
import { countedBy, isPartOfDay, nameOf, type TimeColumns, timeColumns } from "./time-columns.ts";
import { bestSensor, guessedSensor, type LongTable, longTable, sensorsOf } from "./value-columns.ts";

export interface ChosenColumns {
  readonly columns: LoggerColumns;
  readonly counted: Extract<DateShape, "serial days" | "unix seconds" | "unix milliseconds"> | null;
  /** The time of day is a part of a day, 0.25 for 6 o'clock. */
  readonly isPartOfDay: boolean;
  readonly sensors: readonly LoggerSensor[];
  readonly sensor: LoggerSensor;
  /** Text of the sensor's cell, when a column says which sensor a row is from. */
  readonly rowsOf: string | null;
  /** What the rows of temperature and of humidity are called, when each is in a row of its own. */
  readonly quantities: LongTable["words"] | null;
  /** Words about the column of each quantity, for its unit. */
  readonly words: { readonly temperature: string; readonly relHum: string; readonly time: string };
  readonly doubts: readonly Problem[];
}

/** Which cells of a row are read; `given` wins over what the headings say. */
export function chooseColumns(
  shape: TableShape,
  given: LoggerCorrections,
  file: string,
): Outcome<ChosenColumns> {
  const facts = columnFacts(shape);
  const wished = wishedColumns(facts, given, file);
  if (!wished.ok) return wished;
  const time = timeOf(facts, wished.value, file);
  if (time === null) return refused(noTime(facts, shape, file));
  const timeAt = new Set(Object.values(time.columns));
  const isTime = (index: number): boolean => timeAt.has(index);
  const byRow = sensorColumn(facts, isTime, wished.value.sensor);
  const named = sensorsOf(facts, isTime);
  const long = named.length === 0 ? longTable(facts, isTime) : null;
  const guessed = named.length === 0 && long === null ? guessedSensor(facts, isTime, file) : null;
  const sensors = long !== null ? [sensorOf(long)] : guessed !== null ? [guessed.sensor] : named;
  const picked = pickedSensor(sensors, byRow === null ? given.sensor : undefined, file);
  if (!picked.ok) return picked;
  const sensor = withWishes(picked.value, wished.value);
  if (sensor === undefined) return refused(noValues(facts, file));
  const { name: _, ...values } = sensor;
  const rowsOf = byRow === null ? null : rowSensor(byRow, given.sensor);
  const columns = {
    ...time.columns,
    ...values,
    ...(byRow === null ? {} : { sensor: byRow.index }),
    ...(long === null ? {} : { quantity: long.quantity }),
  };
  return done({
    columns,
    counted: time.counted,
    isPartOfDay: isPartOfDay(facts[time.columns.clock ?? -1]),
    sensors: byRow === null ? sensors : distinctOf(byRow).map((name) => ({ ...values, name })),
    sensor: rowsOf === null ? sensor : { ...sensor, name: rowsOf },
    rowsOf,
    quantities: long?.words ?? null,
    words: { ...wordsOf(facts, columns), ...(long?.words ?? {}) },
    doubts: [
      ...time.doubts,
      ...(guessed?.doubts ?? []),
      ...(given.sensor !== undefined || wished.value.temperature !== undefined
        ? []
        : severalSensors(
            byRow === null ? sensors.filter(isChoice) : distinctOf(byRow).map((name) => ({ name })),
            rowsOf ?? sensor.name,
            file,
          )),
    ],
  });
}

const sensorOf = ({ value }: LongTable): LoggerSensor => ({
  name: "rows by quantity",
  temperature: value,
  relHum: value,
});

/** Column numbers for what the user chose by number or heading. */
function wishedColumns(
  facts: readonly ColumnFacts[],
  given: LoggerCorrections,
  file: string,
): Outcome<LoggerColumns> {
  const found: Record<string, number> = {};
  const problems: Problem[] = [];
  for (const [role, choice] of Object.entries(given.columns ?? {})) {
    const column =
      facts.find(({ index, heading }) => index === choice || heading === choice) ??
      facts.find(({ heading }) => sameWords(heading, choice));
    if (column !== undefined) found[role] = column.index;
    else
      problems.push(
        problem(
          "logger-column-unknown",
          "stop",
          { file, column: role },
          {
            got: String(choice),
            expected: facts.map(nameOf).join(", "),
            remedy: "Choose one of these, by its heading or its number (0 is the first).",
          },
        ),
      );
  }
  return problems.length > 0 ? refused(...problems) : done(found);
}

const sameWords = (heading: string, choice: number | string): boolean =>
  typeof choice === "string" && heading.trim().toLowerCase() === choice.trim().toLowerCase();

const TIME_ROLES = ["time", "date", "clock", "year", "month", "day", "dayOfYear", "hour", "minute"] as const;

/** The user's columns of time when there is one that holds a day; else what is found. */
function timeOf(facts: readonly ColumnFacts[], wished: LoggerColumns, file: string): TimeColumns | null {
  const entries = TIME_ROLES.flatMap((role) =>
    wished[role] === undefined ? [] : [[role, wished[role]] as const],
  );
  const dated = wished.time ?? wished.date ?? wished.month ?? wished.dayOfYear;
  if (dated === undefined) return timeColumns(facts, file);
  const isOneCell = wished.time !== undefined || wished.date !== undefined;
  const counted = isOneCell ? countedBy(facts[dated]?.numbers ?? []) : null;
  return { columns: Object.fromEntries(entries), counted, doubts: [] };
}

/** A column of words or codes that says which of several sensors the row is from. */
function sensorColumn(
  facts: readonly ColumnFacts[],
  isTime: (index: number) => boolean,
  wished?: number,
): ColumnFacts | null {
  if (wished !== undefined) return facts[wished] ?? null;
  const found = facts.find((column) => {
    if (isTime(column.index) || column.meaning !== "sensor" || column.texts.some((text) => text === ""))
      return false;
    const several = distinctOf(column).length;
    if (column.kind === "number" && !/\b(?:id|serial|sensor|logger|device|s\/n|sn)\b/i.test(column.heading))
      return false;
    return (
      several <= 50 &&
      several * 2 <= Math.max(column.texts.length, 2) &&
      column.texts.every((text) => text.length <= 60)
    );
  });
  return found ?? null;
}

const distinctOf = ({ texts }: ColumnFacts): string[] => [...new Set(texts)];

function rowSensor(column: ColumnFacts, wish: string | undefined): string {
  const all = distinctOf(column);
  if (wish === undefined) return all[0] ?? "";
  return all.find((name) => sameWords(name, wish)) ?? wish; // it may come further down in the file
}

function pickedSensor(
  sensors: readonly LoggerSensor[],
  wish: string | undefined,
  file: string,
): Outcome<LoggerSensor | undefined> {
  if (wish === undefined) return done(bestSensor(sensors));
  const found =
    sensors.find(({ name }) => sameWords(name, wish)) ?? (sensors.length === 1 ? sensors[0] : undefined);
  if (found !== undefined) return done(found);
  return refused(
    problem(
      "logger-column-unknown",
      "stop",
      { file, column: "sensor" },
      {
        got: wish,
        expected: sensors.map(({ name }) => `"${name}"`).join(", "),
        remedy: "Choose one of these sensors.",
      },
    ),
  );
}

/** A second temperature is a choice to be told, a second humidity alone is not. */
const isChoice = ({ temperature }: LoggerSensor): boolean => temperature !== undefined;

function withWishes(
  sensor: LoggerSensor | undefined,
  { temperature, relHum, dewPoint }: LoggerColumns,
): LoggerSensor | undefined {
  const wishes = {
    ...(temperature === undefined ? {} : { temperature }),
    ...(relHum === undefined ? {} : { relHum }),
    ...(dewPoint === undefined ? {} : { dewPoint }),
  };
  if (Object.keys(wishes).length === 0) return sensor;
  return { ...(sensor ?? {}), name: sensor?.name ?? "chosen", ...wishes };
}

function wordsOf(facts: readonly ColumnFacts[], columns: LoggerColumns): ChosenColumns["words"] {
  const at = (index: number | undefined): string => (index === undefined ? "" : (facts[index]?.words ?? ""));
  return {
    temperature: at(columns.temperature),
    relHum: at(columns.relHum),
    time: [columns.time, columns.date, columns.clock, columns.hour].map(at).filter(Boolean).join(" | "),
  };
}

function severalSensors(
  sensors: readonly { readonly name: string }[],
  chosen: string,
  file: string,
): Problem[] {
  if (sensors.length < 2) return [];
  return [
    problem(
      "logger-several-sensors",
      "ask",
      { file },
      {
        got: sensors.map(({ name }) => `"${name}"`).join(", "),
        expected: `"${chosen}", the first with temperature and humidity,`,
        remedy: "Choose another sensor if this is the wrong one.",
      },
    ),
  ];
}

function noTime(facts: readonly ColumnFacts[], { sample, preamble }: TableShape, file: string): Problem {
  const clock = facts.find(({ kind }) => kind === "clock");
  if (clock !== undefined)
    return problem(
      "logger-no-date",
      "stop",
      { file },
      {
        got: clock.texts[0] ?? "",
        expected: "a date in the same cell or in one of its own",
        remedy: "Export it once more with the date in each row.",
      },
    );
  return problem(
    "logger-no-rows",
    "stop",
    { file },
    {
      got: (sample[0]?.join(" ") ?? preamble[0]?.text ?? "").slice(0, 80),
      expected: "rows with a time, a temperature and a humidity",
      remedy: "Export the readings as a table with one row for each time, or choose the columns yourself.",
    },
  );
}

const noValues = (facts: readonly ColumnFacts[], file: string): Problem =>
  problem(
    "logger-no-values",
    "stop",
    { file },
    {
      got: facts.map(nameOf).join(", "),
      expected: "a heading with temperature or relative humidity, or its unit",
      remedy: "Choose the columns yourself.",
    },
  );
