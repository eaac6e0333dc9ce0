import type { Plan } from "../../../core/plan/plan.ts";
import { sayDay, sayDayOfMonth, sayDayRange, sayWeekday } from "../../../core/say/dates.ts";
import { people as words } from "../../../core/say/page.ts";
import type { Day } from "../../../core/units/day.ts";
import { LOCALE } from "../frame/reader.ts";
import { cellWords, daysOf, limitWords, type Person } from "./cell-words.ts";

const NAME = 270;
const CELL = 54;
const ROW = 64;
const HEAD = 48;

/** People down, days across; in each cell a bar that is full at the day's limit, with its number. */
export function PeoplePicture({
  plan,
  people,
  days,
}: {
  plan: Plan;
  people: readonly Person[];
  days: readonly Day[];
}) {
  const width = NAME + CELL * days.length;
  const height = HEAD + ROW * people.length;
  return (
    <>
      <div className="wide" tabIndex={0} role="group" aria-label={words.heading}>
        <svg
          className="people-picture"
          viewBox={`0 0 ${width} ${height}`}
          role="img"
          aria-label={pictureWords(plan, people, days)}
        >
          <defs>
            <pattern
              id="away"
              width="8"
              height="8"
              patternUnits="userSpaceOnUse"
              patternTransform="rotate(45)"
            >
              <line x1="0" y1="0" x2="0" y2="8" className="people-hatch" />
            </pattern>
          </defs>
          {days.map((day, d) => (
            <text key={day} x={NAME + CELL * (d + 0.5)} y="18" textAnchor="middle">
              <tspan>{sayWeekday(day, LOCALE)}</tspan>
              <tspan x={NAME + CELL * (d + 0.5)} dy="20">
                {sayDayOfMonth(day, LOCALE)}
              </tspan>
            </text>
          ))}
          {people.map((person, p) => (
            <PersonRow key={person.code} plan={plan} person={person} days={days} y={HEAD + ROW * p} />
          ))}
        </svg>
      </div>
      <p className="quiet">
        {words.key}: {words.keyBar}; ▨ {words.keyAway}; – {words.keyClean}.
      </p>
    </>
  );
}

function PersonRow({
  plan,
  person,
  days,
  y,
}: {
  plan: Plan;
  person: Person;
  days: readonly Day[];
  y: number;
}) {
  const own = daysOf(plan, person);
  return (
    <g>
      <line className="people-rule" x1="0" x2={NAME + CELL * days.length} y1={y} y2={y} />
      <text x="0" y={y + 26} className="people-name">
        {person.name}
      </text>
      <text x="0" y={y + 48} className="people-limit">
        {limitWords(person)}
      </text>
      {days.map((day, d) => {
        const today = own.get(day);
        const x = NAME + CELL * d + 4;
        if (!today)
          return <rect key={day} x={x} y={y + 6} width={CELL - 8} height={ROW - 12} fill="url(#away)" />;
        const share = person.mouldLimit
          ? Math.min(1, today.exposedMinutes / person.mouldLimit.minutesADay)
          : 0;
        const full = ROW - 34;
        return (
          <g key={day}>
            <rect className="people-cell" x={x} y={y + 6} width={CELL - 8} height={full} />
            <rect
              className="people-bar"
              x={x}
              y={y + 6 + full * (1 - share)}
              width={CELL - 8}
              height={full * share}
            />
            <text x={x + (CELL - 8) / 2} y={y + ROW - 8} textAnchor="middle">
              {person.mouldLimit ? today.exposedMinutes : "–"}
            </text>
          </g>
        );
      })}
    </g>
  );
}

function pictureWords(plan: Plan, people: readonly Person[], days: readonly Day[]): string {
  const range = sayDayRange(days[0] as Day, days[days.length - 1] as Day, LOCALE);
  return people
    .map((person) => {
      const own = daysOf(plan, person);
      const near = days.filter((day) => (own.get(day)?.exposedMinutes ?? 0) > 0);
      const told = person.mouldLimit
        ? near.map((day) => words.inWords(sayDay(day, LOCALE, "tiny"), cellWords(person, own.get(day))))
        : [limitWords(person)];
      return `${words.pictureOf(person.name, range)}: ${told.join(" ")}`;
    })
    .join(" ");
}
