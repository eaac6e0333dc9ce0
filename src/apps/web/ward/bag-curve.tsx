import { sayDay, sayPercent } from "../../../core/say/dates.ts";
import { bag as words } from "../../../core/say/rooms/ward.ts";
import { type Day, dayNumber } from "../../../core/units/day.ts";
import { count, LOCALE } from "../frame/reader.ts";
import type { BagView } from "./bag-view.ts";
import "./bag-curve.css";
import { curveOf } from "./curve-points.ts";

const WIDTH = 720;
const HEIGHT = 300;
const LEFT = 52;
const TOP = 14;
const BOTTOM = 254;
/** Relative humidity the picture reaches from and to, per cent. */
const [LOW, HIGH] = [0, 100];

/** The readings over the days, the line that passes, gel, and the band in which it may be ready. */
export function BagCurve({ view }: { readonly view: BagView }) {
  const curve = curveOf(view);
  const x = (hours: number): number =>
    LEFT + ((hours - curve.from) / (curve.to - curve.from)) * (WIDTH - LEFT - 8);
  const y = (percent: number): number => BOTTOM - ((percent - LOW) / (HIGH - LOW)) * (BOTTOM - TOP);
  const last = view.entries.findLast(({ what }) => what === "read");
  const says = words.curveSays(
    count(curve.points.length),
    last ? `${sayPercent(last.value ?? 0, LOCALE)}, ${sayDay(last.day, LOCALE, "tiny")}` : "–",
  );
  return (
    <figure className="bag-curve">
      <svg viewBox={`0 0 ${WIDTH} ${HEIGHT}`} role="img" aria-label={says}>
        {curve.gel.map(({ from, to }) => (
          <rect
            key={from}
            className="bag-curve-gel"
            x={x(from)}
            y={TOP}
            width={Math.max(2, x(to) - x(from))}
            height={BOTTOM - TOP}
          />
        ))}
        {curve.ready && (
          <g className="bag-curve-ready">
            <rect
              x={x(curve.ready.from)}
              y={BOTTOM - 14}
              width={Math.max(4, x(curve.ready.to) - x(curve.ready.from))}
              height={14}
            />
            <line x1={x(curve.ready.likely)} x2={x(curve.ready.likely)} y1={BOTTOM - 20} y2={BOTTOM} />
          </g>
        )}
        {[20, 40, 60, 80].map((percent) => (
          <g key={percent} className="bag-curve-grid">
            <line x1={LEFT} x2={WIDTH - 8} y1={y(percent)} y2={y(percent)} />
            <text x={LEFT - 8} y={y(percent) + 6} textAnchor="end">
              {percent} %
            </text>
          </g>
        ))}
        <line className="bag-curve-pass" x1={LEFT} x2={WIDTH - 8} y1={y(55)} y2={y(55)} />
        <line className="bag-curve-now" x1={x(curve.now)} x2={x(curve.now)} y1={TOP} y2={BOTTOM} />
        <polyline
          className="bag-curve-line"
          points={curve.points.map((p) => `${x(p.hours)},${y(p.percent)}`).join(" ")}
        />
        {curve.points.map((p) => (
          <circle
            key={p.hours}
            className={p.isBesideGel ? "bag-curve-beside" : "bag-curve-point"}
            cx={x(p.hours)}
            cy={y(p.percent)}
            r={p.isBesideGel ? 5 : 6}
          />
        ))}
        {curve.days.map((day: Day) => (
          <text key={day} className="bag-curve-day" x={x(dayNumber(day) * 24)} y={BOTTOM + 24}>
            {sayDay(day, LOCALE, "tiny")}
          </text>
        ))}
      </svg>
      <figcaption className="bag-curve-key">
        <span data-key="point">{words.entry.read}</span>
        {curve.gel.length > 0 && <span data-key="gel">{words.gelSpan}</span>}
        <span data-key="pass">{words.passLine}</span>
        <span data-key="now">{words.today}</span>
        {curve.ready && (
          <span data-key="ready">{view.band?.from === "readings" ? words.band : words.bandPlanning}</span>
        )}
      </figcaption>
    </figure>
  );
}
