import type { Problem } from "../../../core/outcome/problem.ts";
import { problem } from "../problem.ts";
import { type ColumnFacts, isRowNumber, within } from "./column-facts.ts";
import { humidityUnitIn, meaningOf, rankOf, sensorNameIn, temperatureUnitIn } from "./heading-words.ts";
import type { LoggerSensor } from "./logger-reading.ts";
import { nameOf } from "./time-columns.ts";

type Quantity = "temperature" | "relHum" | "dewPoint";

/** Pairs of temperature and humidity in a row, the first complete one first to be chosen. */
export function sensorsOf(facts: readonly ColumnFacts[], isTime: (index: number) => boolean): LoggerSensor[] {
  const open = facts.filter(({ index, kind }) => !isTime(index) && (kind === "number" || kind === "blank"));
  const of = (quantity: Quantity): ColumnFacts[] =>
    plainest(open.filter((each) => quantityOf(each) === quantity));
  const [temperatures, humidities, dewPoints] = [of("temperature"), of("relHum"), of("dewPoint")];
  if (temperatures.length === 0 && humidities.length === 0) return [];
  const pairs = paired(temperatures, humidities);
  const names = distinctNames(
    pairs.map(({ temperature, humidity }, i) => sensorName(temperature, humidity, i)),
  );
  return pairs.map(({ temperature, humidity }, i) => {
    const dew =
      dewPoints.find((each) => keyOf(each) === keyOf(temperature ?? humidity)) ??
      (pairs.length === 1 ? dewPoints[0] : undefined);
    return {
      name: names[i] ?? "",
      ...(temperature === undefined ? {} : { temperature: temperature.index }),
      ...(humidity === undefined ? {} : { relHum: humidity.index }),
      ...(dew === undefined ? {} : { dewPoint: dew.index }),
    };
  });
}

/** Sensors of one name are counted. */
const distinctNames = (names: readonly string[]): string[] =>
  names.map((name, i) => {
    const before = names.slice(0, i).filter((each) => each === name).length;
    return before === 0 ? name : `${name} ${before + 1}`;
  });

function quantityOf({ meaning, words }: ColumnFacts): Quantity | null {
  if (meaning === "temperature" || meaning === "relHum" || meaning === "dewPoint") return meaning;
  if (meaning !== null && meaning !== "sensor" && meaning !== "number") return null;
  if (temperatureUnitIn(words) !== null) return "temperature"; // a heading in a language not known here, but with its unit
  return humidityUnitIn(words) === "%" ? "relHum" : null;
}

/** Of means, least and most of one sensor the mean is read; filled columns before empty ones. */
function plainest(columns: readonly ColumnFacts[]): ColumnFacts[] {
  const filled = columns.filter(({ kind }) => kind === "number");
  const all = filled.length > 0 ? filled : columns;
  const least = Math.min(...all.map(({ words }) => rankOf(words)));
  return all.filter(({ words }) => rankOf(words) === least);
}

interface Pair {
  readonly temperature?: ColumnFacts;
  readonly humidity?: ColumnFacts;
}

/** By the name left when quantity and unit are taken away; what has no partner of its name takes the next one beside it. */
function paired(temperatures: readonly ColumnFacts[], humidities: readonly ColumnFacts[]): Pair[] {
  const left = new Set(humidities);
  const partner = new Map<ColumnFacts, ColumnFacts>();
  const take = (temperature: ColumnFacts, fits: (humidity: ColumnFacts) => boolean): void => {
    const found = partner.has(temperature) ? undefined : [...left].find(fits);
    if (found === undefined) return;
    partner.set(temperature, found);
    left.delete(found);
  };
  for (const each of temperatures) take(each, (humidity) => keyOf(humidity) === keyOf(each));
  for (const each of temperatures) take(each, ({ index }) => index === each.index + 1);
  for (const each of temperatures)
    if (temperatures.length === humidities.length || temperatures.length === 1) take(each, () => true);
  return [
    ...temperatures.map((temperature): Pair => {
      const humidity = partner.get(temperature);
      return humidity === undefined ? { temperature } : { temperature, humidity };
    }),
    ...[...left].map((humidity): Pair => ({ humidity })),
  ];
}

const keyOf = (column: ColumnFacts | undefined): string =>
  column === undefined ? "" : sensorNameIn(column.words).toLowerCase();

function sensorName(
  temperature: ColumnFacts | undefined,
  humidity: ColumnFacts | undefined,
  at: number,
): string {
  const columns = [temperature, humidity].filter((column) => column !== undefined);
  const name = columns.map(({ words }) => sensorNameIn(words)).find((words) => words.length > 1);
  if (name !== undefined) return name;
  const heading = columns.find((column) => column.heading !== "")?.heading;
  if (heading !== undefined) return heading;
  return `sensor ${at + 1}`;
}

/** The first sensor with both values, else with temperature and dew point, else the first. */
export const bestSensor = (sensors: readonly LoggerSensor[]): LoggerSensor | undefined =>
  sensors.find(({ temperature, relHum }) => temperature !== undefined && relHum !== undefined) ??
  sensors.find(({ temperature, dewPoint }) => temperature !== undefined && dewPoint !== undefined) ??
  sensors[0];

export interface GuessedColumns {
  readonly sensor: LoggerSensor;
  readonly doubts: readonly Problem[];
}

/** Without headings the values tell: rows counted and constant columns are passed over, then damp is 0 to 100 and warmth -30 to 42. */
export function guessedSensor(
  facts: readonly ColumnFacts[],
  isTime: (index: number) => boolean,
  file: string,
): GuessedColumns | null {
  const open = facts.filter(
    ({ index, numbers, heading }) =>
      heading === "" && !isTime(index) && numbers.length > 0 && !isRowNumber(numbers),
  );
  const [first, second] = open;
  if (first === undefined) return null;
  const order = second === undefined ? null : orderOf(first.numbers, second.numbers);
  const [warm, damp] =
    second === undefined ? [first, undefined] : order === "damp first" ? [second, first] : [first, second];
  const both = second !== undefined && orderOf(second.numbers, first.numbers) === order;
  const why =
    damp === undefined
      ? `${nameOf(warm)} was read as temperature`
      : `${nameOf(warm)} was read as temperature and ${nameOf(damp)} as humidity, ${both ? "the usual order; the values would allow the other" : "the only order the values allow"}`;
  return {
    sensor: {
      name: "sensor 1",
      temperature: warm.index,
      ...(damp === undefined ? {} : { relHum: damp.index }),
    },
    doubts: [
      problem(
        "logger-no-headings",
        both || damp === undefined ? "ask" : "note",
        { file },
        { expected: why, remedy: "Choose the columns yourself if that is wrong." },
      ),
    ],
  };
}

/** Which of two columns without headings is damp: °C first, °C second, then °F in the same order. */
function orderOf(a: readonly number[], b: readonly number[]): "warm first" | "damp first" {
  const isDamp = (numbers: readonly number[]): boolean => within(numbers, 0, 105);
  const isWarm = (numbers: readonly number[]): boolean => within(numbers, -30, 42);
  const isFraction = (numbers: readonly number[]): boolean => within(numbers, 0, 1.05);
  if (isFraction(a) !== isFraction(b)) return isFraction(a) ? "damp first" : "warm first";
  if (isWarm(a) && isDamp(b)) return "warm first";
  if (isWarm(b) && isDamp(a)) return "damp first";
  return isDamp(b) ? "warm first" : "damp first";
}

export interface LongTable {
  readonly quantity: number;
  readonly value: number;
  readonly words: { readonly temperature: string; readonly relHum: string };
}

/** One column names the quantity, another holds its value: `temperature`, then `humidity`, each in a row of its own. */
export function longTable(
  facts: readonly ColumnFacts[],
  isTime: (index: number) => boolean,
): LongTable | null {
  for (const { index, kind, texts } of facts) {
    if (isTime(index) || kind !== "text") continue;
    const distinct = [...new Set(texts)];
    const temperature = distinct.find((text) => meaningOf(text) === "temperature");
    const relHum = distinct.find((text) => meaningOf(text) === "relHum");
    const values = facts.filter(
      (each) => !isTime(each.index) && each.kind === "number" && !isRowNumber(each.numbers),
    );
    const value =
      values.find(({ heading }) => /val|wert|mesure|medi|waarde|reading/i.test(heading)) ?? values.at(-1);
    if (temperature !== undefined && relHum !== undefined && value !== undefined)
      return { quantity: index, value: value.index, words: { temperature, relHum } };
  }
  return null;
}
