import { type RawRow, shown } from "./raw-table.ts";
import { comparable } from "./words.ts";

/** Where the columns of a climate file stand. */
export interface ClimateColumns {
  readonly line: number;
  readonly date: number;
  /** A column of its own for the time of day. */
  readonly clock?: number;
  readonly temperature?: number;
  readonly humidity?: number;
  readonly isFahrenheit: boolean;
}

type Role = "date" | "clock" | "temperature" | "humidity";

/** Headings of climate readers in some languages; from memory. */
const ROLES: readonly (readonly [Role, RegExp])[] = [
  ["humidity", /(?:^|_)(?:rh|hr|r_h|humid\w*|luftf\w*|feucht\w*|hum\w*|umidit\w*)(?:_|$)/],
  ["temperature", /(?:^|_)(?:temp\w*|t|dry_bulb|lufttemp\w*)(?:_|$)/],
  ["date", /(?:^|_)(?:date\w*|datum|fecha|data|datetime|timestamp|time_?stamp|zeitpunkt)(?:_|$)/],
  ["clock", /(?:^|_)(?:time|uhrzeit|zeit|hora|heure|clock)(?:_|$)/],
];

const NOT_MEASURED = /dew|tau|punkt|absolut|wet_bulb|alarm|set_point/;

function roleOf(heading: string): Role | null {
  const plain = comparable(heading).slice(0, 60);
  if (NOT_MEASURED.test(plain) && !/zeitpunkt/.test(plain)) return null;
  return ROLES.find(([, pattern]) => pattern.test(plain))?.[0] ?? null;
}

export const isClimateHeading = (heading: string): boolean => roleOf(heading) !== null;

/** The columns when the row is one of headings: a time, and temperature or humidity; null otherwise. */
export function climateColumns({ cells, line }: RawRow): ClimateColumns | null {
  const at = new Map<Role, number>();
  cells.forEach((cell, i) => {
    const role = typeof cell === "string" ? roleOf(cell) : null;
    if (role !== null && !at.has(role)) at.set(role, i);
  });
  const [date, clock] = [at.get("date"), at.get("clock")];
  const [temperature, humidity] = [at.get("temperature"), at.get("humidity")];
  const first = date ?? clock;
  if (first === undefined || (temperature === undefined && humidity === undefined)) return null;
  const unit = temperature === undefined ? "" : shown(cells[temperature]);
  return {
    line,
    date: first,
    ...(date !== undefined && clock !== undefined ? { clock } : {}),
    ...(temperature === undefined ? {} : { temperature }),
    ...(humidity === undefined ? {} : { humidity }),
    isFahrenheit: /°\s?F|fahrenheit|_f$|\bF\b/i.test(unit),
  };
}
