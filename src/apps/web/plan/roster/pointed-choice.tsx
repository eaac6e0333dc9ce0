import { endPhrase, latePhrase, personPhrase, stationPhrase } from "../../../../core/plan/what-if/phrases.ts";
import { sayDay, sayDayRange } from "../../../../core/say/dates.ts";
import { days as words } from "../../../../core/say/rooms/plan.ts";
import { LOCALE } from "../../frame/reader.ts";
import { type Calendar, dayAt, type Row } from "./calendar.ts";
import "./pointed-choice.css";
import { type Held, heldSpan } from "./pointing.ts";
import { deliveryWords, rowName } from "./spot-words.ts";

interface PointedChoiceProps {
  readonly held: Held;
  readonly rows: readonly Row[];
  readonly calendar: Calendar;
  /** What is supposed of it, in words; null: nothing. */
  readonly done: (said: string | null) => void;
}

/** What can be supposed of the days or the mark that is held. */
export function PointedChoice({ held, rows, calendar, done }: PointedChoiceProps) {
  const row = rows[held.row];
  if (row === undefined) return null;
  const { title, choices } = offered(held, row, calendar);
  return (
    <div className="pointed-choice" role="group" aria-label={title}>
      <p role="status">
        <strong>{title}</strong>
      </p>
      {choices.length > 0 && <span>{words.suppose}</span>}
      {choices.map(([label, said]) => (
        <button key={label} type="button" onClick={() => done(said)}>
          {label}
        </button>
      ))}
      <button type="button" className="pointed-choice-go" onClick={() => done(null)}>
        {words.letGo}
      </button>
    </div>
  );
}

interface Offered {
  readonly title: string;
  readonly choices: readonly (readonly [label: string, said: string])[];
}

function offered(held: Held, row: Row, calendar: Calendar): Offered {
  const span = heldSpan(held);
  const days = { from: dayAt(calendar, span.from), to: dayAt(calendar, span.to) };
  const title = words.stretch(rowName(row), sayDayRange(days.from, days.to, LOCALE));
  if (row.kind === "person") {
    const { code } = row.person;
    return {
      title,
      choices: [
        [words.supposeAway, personPhrase(code, "away", days)],
        [words.supposeClean, personPhrase(code, "on clean work", days)],
      ],
    };
  }
  if (row.kind === "station") {
    const { id, isHired } = row.station;
    const open = [words.supposeOpen, stationPhrase(id, "open", days)] as const;
    return {
      title,
      choices: [[words.supposeClosed, stationPhrase(id, "closed", days)], ...(isHired ? [open] : [])],
    };
  }
  const mark = held.kind === "mark" ? row.marks[held.mark] : undefined;
  if (held.kind !== "mark" || mark === undefined) return { title, choices: [] };
  const name = mark.kind === "end" ? words.end : deliveryWords(mark);
  if (held.to === held.from) return { title: words.picked(name), choices: [] };
  const said = mark.kind === "end" ? endPhrase(days.from) : latePhrase(mark.store, held.to - held.from);
  return {
    title: words.moved(name, sayDay(days.from, LOCALE, "full")),
    choices: [[words.supposeMove, said]],
  };
}
