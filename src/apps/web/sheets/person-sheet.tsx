import type { PersonDay, SheetRow } from "../../../core/plan/plan.ts";
import { sayDay, sayMinutes } from "../../../core/say/dates.ts";
import {
  CHANGE_OVER,
  sayClock,
  sayClockRange,
  sayCompany,
  sayItems,
  sayPause,
} from "../../../core/say/day-sheet.ts";
import { sheets } from "../../../core/say/page.ts";
import type { Day } from "../../../core/units/day.ts";
import { LOCALE } from "../frame/reader.ts";

/** Up to so many rows a sheet lies open; a longer one is folded until it is wanted. */
const SHORT = 20;
/** From this dirt on the station is wiped after every item (S01). */
const WIPED_FROM = 2;

interface Sheet {
  readonly name: string;
  readonly day: Day;
  readonly rows: readonly SheetRow[];
  /** The day as the limits see it; undefined beyond the fortnight the page is given. */
  readonly counted: PersonDay | undefined;
  /** Somebody stays for this person until then, in minutes after midnight; null: company is there anyway. */
  readonly company: number | null;
}

/** One person's first day in the clock, breaks and wipe-downs between. */
export function PersonSheet({ name, day, rows, counted, company }: Sheet) {
  const [first, last] = [rows[0], rows.at(-1)];
  return (
    <details className="sheet" open={rows.length <= SHORT}>
      <summary>
        <strong>{name}</strong>{" "}
        <span className="quiet">
          {sheets.day(sayDay(day, LOCALE, "short"))}
          {first && last && ` · ${sayClockRange({ from: first.from, to: last.to }, LOCALE)}`}
          {counted && ` · ${sheets.total(sayMinutes(counted.workMinutes, LOCALE))}`}
          {counted &&
            counted.exposedMinutes > 0 &&
            ` · ${sheets.exposed(sayMinutes(counted.exposedMinutes, LOCALE))}`}
        </span>
      </summary>
      {company !== null && <p className="sheet-company">{sayCompany(company, LOCALE)}</p>}
      <ol>
        {rows.map((row) => (
          <li key={row.from}>
            <span className="sheet-clock">{sayClock(row.from, LOCALE)}</span>
            {row.kind === "work" ? <Work row={row} /> : <Pause row={row} />}
          </li>
        ))}
      </ol>
    </details>
  );
}

function Work({ row }: { row: SheetRow }) {
  const [item] = row.items;
  const isOne = row.items.length === 1;
  return (
    <>
      <p className="sheet-act">
        <strong>
          {row.act && sheets.acts[row.act]}{" "}
          <span className="sheet-item">{isOne ? item : sayItems(row.items.length)}</span>
        </strong>
        <span>{sayMinutes(row.to - row.from, LOCALE)}</span>
      </p>
      {!isOne && (
        <p className="sheet-items">
          {row.items.map((each) => (
            <span key={each} className="sheet-item">
              {each}
            </span>
          ))}
        </p>
      )}
      <p className="quiet">
        {row.station && sheets.at(row.station)}{" "}
        {row.exposed && <span className="sheet-mould">{sheets.mould}</span>}{" "}
        {row.dirt >= WIPED_FROM && CHANGE_OVER}
      </p>
    </>
  );
}

const Pause = ({ row }: { row: SheetRow }) => (
  <p className={`sheet-act ${row.kind === "wipe-down" ? "sheet-wipe" : "sheet-pause"}`}>
    <span>{sayPause(row)}</span>
    <span>{sayMinutes(row.to - row.from, LOCALE)}</span>
  </p>
);
