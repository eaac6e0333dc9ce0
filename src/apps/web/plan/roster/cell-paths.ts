import type { StationDays } from "../views.ts";
import { type Mark, type Row, weekOf } from "./calendar.ts";
import { DAY, FRAME } from "./sizes.ts";

const INSET = 4;
const TOP = 6;
const STATION_TOP = 20;
const STATION_BAR = 16;

/** A rectangle as a piece of a path. */
const box = (day: number, top: number, height: number): string =>
  `M${day * DAY + INSET} ${top}h${DAY - 2 * INSET}v${height}h${2 * INSET - DAY}z`;

/** A person's week as four paths: frames of days that may be near mould, their bars, days on clean work, days away. */
export function cellPaths(row: Row & { kind: "person" }, week: number) {
  const { limit } = row.person;
  const isClean = limit === null || weekOf(row.near, week).days === 0;
  const paths = { near: "", bars: "", clean: "", away: "" };
  for (let n = 0; n < 7; n++) {
    const minutes = row.near[week * 7 + n] ?? -2;
    if (minutes === -2) continue;
    if (minutes === -1) paths.away += box(n, TOP, FRAME);
    else if (isClean) paths.clean += box(n, TOP, FRAME);
    else {
      const full = Math.min(1, minutes / Math.max(1, limit.minutesADay)) * FRAME;
      paths.near += box(n, TOP, FRAME);
      if (full > 0) paths.bars += box(n, TOP + FRAME - full, full);
    }
  }
  return paths;
}

/** The days a station is there. */
export function stationPath({ isOpen }: StationDays, week: number): string {
  let path = "";
  for (let n = 0; n < 7; n++)
    if (isOpen[week * 7 + n]) path += `M${n * DAY} ${STATION_TOP}h${DAY}v${STATION_BAR}h${-DAY}z`;
  return path;
}

/** A flag for the end, a parcel for a delivery, in the middle of its day. */
export function markPath({ at, kind }: Mark, height: number): string {
  const [x, y] = [(at % 7) * DAY + DAY / 2, height / 2];
  return kind === "end"
    ? `M${x - 8} ${y + 14}V${y - 14}l18 7l-18 7`
    : `M${x - 10} ${y - 8}h20v18h-20zM${x - 10} ${y - 2}h20`;
}
