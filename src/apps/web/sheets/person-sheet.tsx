import type { Assignment } from "../../../core/plan/plan.ts";
import { sayDay, sayMinutes } from "../../../core/say/dates.ts";
import { sheets } from "../../../core/say/page.ts";
import { LOCALE } from "../frame/reader.ts";

/** Up to so many pieces of work a sheet lies open; a longer one is folded until it is wanted. */
const SHORT = 8;

/** One person's first day in order, wipe-downs between. */
export function PersonSheet({ name, pieces }: { name: string; pieces: readonly Assignment[] }) {
  const sum = (some: readonly Assignment[]): string =>
    sayMinutes(Math.round(some.reduce((all, each) => all + each.minutes, 0)), LOCALE);
  const near = pieces.filter((piece) => piece.exposed);
  const day = pieces[0]?.day;
  return (
    <details className="sheet" open={pieces.length <= SHORT}>
      <summary>
        <strong>{name}</strong>{" "}
        <span className="quiet">
          {day && sheets.day(sayDay(day, LOCALE, "short"))} · {sheets.total(sum(pieces))}
          {near.length > 0 && ` · ${sheets.exposed(sum(near))}`}
        </span>
      </summary>
      <ol>
        {pieces.map((piece) => (
          <li key={piece.order}>
            <p className="sheet-act">
              <strong>
                {sheets.acts[piece.act]} <span className="sheet-item">{piece.item}</span>
              </strong>
              <span>{sayMinutes(Math.max(1, Math.round(piece.minutes)), LOCALE)}</span>
            </p>
            <p className="quiet">
              {piece.station && sheets.at(piece.station)}{" "}
              {piece.exposed && <span className="sheet-mould">{sheets.mould}</span>}
            </p>
            {piece.wipeAfter && <p className="sheet-wipe">{sheets.wipe(piece.station)}</p>}
          </li>
        ))}
      </ol>
    </details>
  );
}
