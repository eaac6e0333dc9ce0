import { sayDay, sayNumber, sayPercent } from "../../../core/say/dates.ts";
import { climate as words } from "../../../core/say/rooms/climate.ts";
import { LOCALE } from "../frame/reader.ts";
import type { AirDay } from "./air-points.ts";

const span = (reach: AirDay["relHum"], say: (n: number) => string): string =>
  reach === null ? "" : `${say(reach[0])} – ${say(reach[1])}`;

/** The curve as figures. */
export const AirTable = ({ days }: { readonly days: readonly AirDay[] }) => (
  <details className="climate-table">
    <summary>{words.table}</summary>
    <div className="wide" role="region" aria-label={words.table} tabIndex={0}>
      <table>
        <thead>
          <tr>
            <th scope="col">{words.columns.day}</th>
            <th scope="col">{words.columns.relHum}</th>
            <th scope="col">{words.columns.dryBulb}</th>
          </tr>
        </thead>
        <tbody>
          {days.map(({ day, relHum, dryBulb }) => (
            <tr key={day}>
              <th scope="row">{sayDay(day, LOCALE, "short")}</th>
              <td>{span(relHum, (n) => sayPercent(n / 100, LOCALE))}</td>
              <td>{span(dryBulb, (n) => `${sayNumber(n, LOCALE, 1)} °C`)}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  </details>
);
