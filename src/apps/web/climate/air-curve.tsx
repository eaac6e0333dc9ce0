import { sayDay, sayPercent } from "../../../core/say/dates.ts";
import { climate as words } from "../../../core/say/rooms/climate.ts";
import { dayOfNumber } from "../../../core/units/day.ts";
import { LOCALE } from "../frame/reader.ts";
import type { AirPoint } from "./air-points.ts";
import type { ReaderView } from "./views.ts";

const WIDTH = 720;
const HEIGHT = 400;
const LEFT = 56;
const RIGHT = 8;
/** Room for a written day. */
const DAY_WIDTH = 64;
/** Two panels over one time axis. */
const DAMP = { top: 14, bottom: 240, low: 20, high: 100 };
const WARM = { top: 268, bottom: 366 };
/** Readings further apart than this are not joined, h: as long as a reading may stand. */
const GAP_HOURS = 6;

/** Relative humidity and temperature over time. */
export function AirCurve({ view, span }: { readonly view: ReaderView; readonly span: string }) {
  const { points } = view;
  const from = points[0]?.hours ?? 0;
  const to = Math.max(points.at(-1)?.hours ?? 0, from + 1);
  const x = (hours: number): number => LEFT + ((hours - from) / (to - from)) * (WIDTH - LEFT - RIGHT);
  const y = (percent: number): number =>
    DAMP.bottom - ((percent - DAMP.low) / (DAMP.high - DAMP.low)) * (DAMP.bottom - DAMP.top);
  const [cold, hot] = reachOf(
    points.flatMap(({ dryBulb }) => dryBulb ?? []),
    10,
    30,
  );
  const t = (dryBulb: number): number =>
    WARM.bottom - ((dryBulb - cold) / (hot - cold)) * (WARM.bottom - WARM.top);
  const damp = points.flatMap(({ relHum }) => relHum ?? []);
  const step = (to - from) / Math.max(1, points.length - 1);
  const parts = partsOf(points, Math.max(GAP_HOURS, 2 * step));
  return (
    <figure className="climate-curve">
      <svg
        viewBox={`0 0 ${WIDTH} ${HEIGHT}`}
        role="img"
        aria-label={words.picture(
          view.card.name,
          span,
          sayPercent(Math.min(...damp) / 100, LOCALE),
          sayPercent(Math.max(...damp) / 100, LOCALE),
        )}
      >
        {[40, 65, 80].map((percent) => (
          <g key={percent} className={percent === 65 ? "climate-curve-line" : "climate-curve-grid"}>
            <line x1={LEFT} x2={WIDTH - RIGHT} y1={y(percent)} y2={y(percent)} />
            <text x={LEFT - 8} y={y(percent) + 6} textAnchor="end">
              {percent} %
            </text>
          </g>
        ))}
        {[cold, hot].map((dryBulb) => (
          <g key={dryBulb} className="climate-curve-grid">
            <line x1={LEFT} x2={WIDTH - RIGHT} y1={t(dryBulb)} y2={t(dryBulb)} />
            <text x={LEFT - 8} y={t(dryBulb) + 6} textAnchor="end">
              {dryBulb} °C
            </text>
          </g>
        ))}
        {parts.map((part) => (
          <g key={part[0]?.hours}>
            <polyline className="climate-curve-damp" points={zigzag(part, (p) => p.relHum, x, y)} />
            <polyline className="climate-curve-warm" points={zigzag(part, (p) => p.dryBulb, x, t)} />
          </g>
        ))}
        {daysUnder(from, to - (DAY_WIDTH / WIDTH) * (to - from)).map((day) => (
          <text key={day} className="climate-curve-day" x={x(day * 24)} y={HEIGHT - 8}>
            {sayDay(dayOfNumber(day), LOCALE, "tiny")}
          </text>
        ))}
      </svg>
      <figcaption className="climate-key">
        <span data-key="damp">{words.relHum}</span>
        <span data-key="line">{words.sixtyFive}</span>
        <span data-key="warm">{words.dryBulb}</span>
      </figcaption>
    </figure>
  );
}

/** Ends in whole fives around the values. */
function reachOf(values: readonly number[], low: number, high: number): readonly [number, number] {
  if (values.length === 0) return [low, high];
  const [a, b] = [5 * Math.floor(Math.min(...values) / 5), 5 * Math.ceil(Math.max(...values) / 5)];
  return [a, a === b ? b + 5 : b];
}

function partsOf(points: readonly AirPoint[], most: number): AirPoint[][] {
  const parts: AirPoint[][] = [];
  for (const point of points) {
    const part = parts.at(-1);
    const last = part?.at(-1);
    if (part && last && point.hours - last.hours <= most) part.push(point);
    else parts.push([point]);
  }
  return parts;
}

/** Through the lowest and the highest of each point, so that no peak is lost. */
const zigzag = (
  part: readonly AirPoint[],
  of: (point: AirPoint) => AirPoint["relHum"],
  x: (hours: number) => number,
  y: (value: number) => number,
): string =>
  part
    .flatMap((point) => {
      const reach = of(point);
      if (reach === null) return [];
      const at = x(point.hours).toFixed(1);
      return (reach[0] === reach[1] ? [reach[0]] : reach).map((value) => `${at},${y(value).toFixed(1)}`);
    })
    .join(" ");

const MOST_DAYS_NAMED = 6;
function daysUnder(from: number, to: number): number[] {
  const [start, end] = [Math.ceil(from / 24), Math.floor(to / 24)];
  const step = Math.max(1, Math.ceil((end - start) / MOST_DAYS_NAMED));
  return Array.from({ length: Math.max(0, Math.ceil((end - start) / step)) }, (_, i) => start + i * step);
}
