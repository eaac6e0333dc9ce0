import type { ClimateReading, ClimateSeries } from "../../core/items/campaign.ts";
import type { Problem } from "../../core/outcome/problem.ts";
import { type ClimateColumns, climateColumns, isClimateHeading } from "./climate-columns.ts";
import { openCsv } from "./csv.ts";
import { DateEvidence, type DateOrder } from "./dates.ts";
import { ROWS_BEFORE_HEADINGS } from "./headings.ts";
import { momentFrom } from "./moment.ts";
import { type NumberStyle, numberFrom, styleShownBy } from "./numbers.ts";
import { count, problem } from "./problem.ts";
import { type Cell, isBlank, type RawRow, type RowSource, shown } from "./raw-table.ts";
import { watchReader } from "./reader-watch.ts";

/** Most readings of one file: two years, one a minute. */
const MOST_READINGS = 1_000_000;
/** Rows that cannot be read are said one by one up to here, then counted. */
const MOST_SAID = 100;

interface ClimateRead {
  readonly series: ClimateSeries;
  readonly problems: readonly Problem[];
  readonly rowCount: number;
}

/** Reads one file of a climate reader: time, temperature in °C (or °F when the heading says so), humidity in per cent. */
export async function readClimateFile(
  path: string,
  file: string,
  settled: DateOrder | null,
): Promise<ClimateRead> {
  const name = file.replace(/^.*\//, "").replace(/\.[^.]+$/, "");
  const nothing = (...problems: Problem[]): ClimateRead => ({
    series: { name, readings: [] },
    problems,
    rowCount: 0,
  });
  const source = await openCsv(path, file, isClimateHeading);
  if ("code" in source) return nothing(source);
  const survey = await surveyOf(source, settled);
  if (survey === null)
    return nothing(
      problem(
        "climate-headings",
        "note",
        { file },
        {
          got: "no row of headings",
          expected: "time, temperature_c, rh_pct",
          remedy: "Put the headings time, temperature_c, rh_pct above the readings.",
        },
      ),
    );
  const reader = new ReadingReader(file, survey);
  for await (const batch of source.rows()) if (!batch.every((row) => reader.see(row))) break;
  return {
    series: { name, readings: reader.inOrder() },
    problems: [...source.notes, ...reader.allProblems()],
    rowCount: reader.rowCount,
  };
}

interface Survey {
  readonly columns: ClimateColumns;
  readonly order: DateOrder | null;
  readonly numbers: NumberStyle;
}

async function surveyOf(source: RowSource, settled: DateOrder | null): Promise<Survey | null> {
  const evidence = new DateEvidence();
  const styles = { point: 0, comma: 0 };
  let columns: ClimateColumns | null = null;
  let seen = 0;
  for await (const batch of source.rows()) {
    for (const row of batch) {
      seen++;
      if (columns === null) {
        columns = climateColumns(row);
        if (columns === null && seen > ROWS_BEFORE_HEADINGS) return null;
        continue;
      }
      evidence.see(shown(row.cells[columns.date]).replace(/[T\s].*$/, ""));
      for (const at of [columns.temperature, columns.humidity]) {
        const style = at === undefined ? null : styleShownBy(shown(row.cells[at]));
        if (style !== null) styles[style]++;
      }
    }
    if (seen > MOST_READINGS) break;
  }
  if (columns === null) return null;
  const order = evidence.order();
  const numbers = styles.comma > styles.point ? "comma" : "point";
  return { columns, order: settled ?? (order === "two orders" ? evidence.commoner() : order), numbers };
}

class ReadingReader {
  private readonly readings: ClimateReading[] = [];
  private readonly problems: Problem[] = [];
  private unsaid = 0;
  private highestHumidity = 0;
  rowCount = 0;

  constructor(
    private readonly file: string,
    private readonly survey: Survey,
  ) {}

  see(row: RawRow): boolean {
    if (row.line <= this.survey.columns.line || (row.fault === undefined && row.cells.every(isBlank)))
      return true;
    if (this.rowCount >= MOST_READINGS) {
      this.problems.push(
        problem(
          "too-many-rows",
          "note",
          { file: this.file, line: row.line },
          { expected: count(MOST_READINGS), remedy: "Split the file by year." },
        ),
      );
      return false;
    }
    this.rowCount++;
    const reading = this.readingFrom(row);
    if (typeof reading === "string") this.refuse(row, reading);
    else this.readings.push(reading);
    return row.fault !== "unclosed-quote";
  }

  /** The reading, or what is wrong with the row. */
  private readingFrom({ cells, fault }: RawRow): ClimateReading | string {
    if (fault !== undefined) return fault.replace("-", " ");
    const { columns, order } = this.survey;
    const written = [columns.date, columns.clock]
      .flatMap((at) => (at === undefined ? [] : [shown(cells[at])]))
      .join(" ");
    const at = momentFrom(written, order);
    if (at === null) return `time ${written || "empty"}`;
    const dryBulb = this.valueOf(cells, columns.temperature);
    const humidity = this.valueOf(cells, columns.humidity);
    if (dryBulb === null) return `temperature ${shown(cells[columns.temperature ?? 0])}`;
    if (humidity === null || (humidity !== undefined && (humidity < 0 || humidity > 100)))
      return `humidity ${shown(cells[columns.humidity ?? 0])}`;
    const celsius = dryBulb !== undefined && columns.isFahrenheit ? celsiusFromFahrenheit(dryBulb) : dryBulb;
    if (celsius !== undefined && (celsius < -60 || celsius > 90))
      return `temperature ${shown(cells[columns.temperature ?? 0])}`;
    this.highestHumidity = Math.max(this.highestHumidity, humidity ?? 0);
    return {
      at,
      ...(celsius === undefined ? {} : { dryBulb: celsius }),
      ...(humidity === undefined ? {} : { relHum: humidity / 100 }),
    };
  }

  /** Number in a cell; undefined: the reader gave none; null: it cannot be read. */
  private valueOf(cells: readonly Cell[], at: number | undefined): number | null | undefined {
    const written = at === undefined ? "" : shown(cells[at]).trim();
    if (/^(?:[-–—]*|nan|n\/?a|null|none|err(?:or)?)$/i.test(written)) return undefined;
    const value = numberFrom(written.replace(/\s*(?:°?\s?[CF]|%)$/i, ""), this.survey.numbers, false);
    return value === "two ways" ? null : value;
  }

  private refuse(row: RawRow, got: string): void {
    if (this.problems.length >= MOST_SAID) this.unsaid++;
    else
      this.problems.push(
        problem(
          "reading-unreadable",
          "note",
          { file: this.file, line: row.line },
          { got, remedy: "It was left out; nothing needs to be done if it is the only one." },
        ),
      );
  }

  /** Readings by time, and without those that only say a time twice. */
  inOrder(): readonly ClimateReading[] {
    const late = this.readings.filter(
      (reading, i) => i > 0 && reading.at < (this.readings[i - 1]?.at ?? ""),
    ).length;
    if (late === 0) return this.readings;
    this.problems.push(
      problem(
        "reading-order",
        "note",
        { file: this.file },
        { got: count(late), remedy: "Look at the clock of the reader." },
      ),
    );
    return this.readings.sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
  }

  allProblems(): readonly Problem[] {
    const more =
      this.unsaid === 0
        ? []
        : [
            problem(
              "reading-unreadable",
              "note",
              { file: this.file },
              {
                got: `${count(this.unsaid)} more rows`,
                remedy: "They were left out; look whether the file is whole.",
              },
            ),
          ];
    const fraction =
      this.readings.length > 5 && this.highestHumidity > 0 && this.highestHumidity <= 1
        ? [
            problem(
              "rh-fraction",
              "note",
              { file: this.file },
              { remedy: "If they are fractions, write per cent: 55, not 0.55." },
            ),
          ]
        : [];
    return [...this.problems, ...more, ...fraction, ...watchReader(this.file, this.readings)];
  }
}

const celsiusFromFahrenheit = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;
