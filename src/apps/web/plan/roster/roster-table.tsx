import { sayDay } from "../../../../core/say/dates.ts";
import { days as words } from "../../../../core/say/rooms/plan.ts";
import { LOCALE } from "../../frame/reader.ts";
import { type Calendar, dayAt, type Row } from "./calendar.ts";
import { cellWords, rowName, weekWords } from "./spot-words.ts";

/** One week in words, for whoever reads or hears it. */
export function RosterTable(p: {
  readonly calendar: Calendar;
  readonly rows: readonly Row[];
  readonly week: number;
}) {
  const places = Array.from({ length: 7 }, (_, n) => p.week * 7 + n);
  return (
    <div className="wide" tabIndex={0} role="group" aria-label={words.region}>
      <table>
        <thead>
          <tr>
            <td />
            {places.map((at) => (
              <th scope="col" key={at}>
                {sayDay(dayAt(p.calendar, at), LOCALE, "short")}
              </th>
            ))}
            <th scope="col">{words.nearWeekHeading}</th>
          </tr>
        </thead>
        <tbody>
          {p.rows.map((row) => (
            <tr key={`${row.kind} ${rowName(row)}`}>
              <th scope="row">{rowName(row)}</th>
              {places.map((at) => (
                <td key={at}>{cellWords(row, at)}</td>
              ))}
              <td>{(row.kind === "person" ? weekWords(row, p.week) : null) ?? "–"}</td>
            </tr>
          ))}
        </tbody>
      </table>
    </div>
  );
}
