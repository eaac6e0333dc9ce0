import type { PersonDay, Plan } from "../../../core/plan/plan.ts";
import { sayDay } from "../../../core/say/dates.ts";
import { people as words } from "../../../core/say/page.ts";
import type { Day } from "../../../core/units/day.ts";
import { LOCALE } from "../frame/reader.ts";
import { cellWords, type Person } from "./cell-words.ts";
import { columnOf } from "./column.ts";
import { DayCell } from "./day-cell.tsx";

interface PersonStripProps {
  readonly plan: Plan;
  readonly person: Person;
  readonly own: ReadonlyMap<Day, PersonDay>;
  readonly days: readonly Day[];
}

/** One person's fourteen days. */
export const PersonStrip = ({ plan, person, own, days }: PersonStripProps) => (
  <svg className="people-strip" role="img" aria-label={stripWords(person, own, days)}>
    {days.map((day, at) => (
      <svg key={day} {...columnOf(at, days.length)}>
        <DayCell state={stateOf(plan, person, own.get(day), day)} />
      </svg>
    ))}
  </svg>
);

function stateOf(plan: Plan, person: Person, own: PersonDay | undefined, day: Day) {
  if (!own) return plan.personDays.some((each) => each.day === day) ? "away" : "closed";
  return person.mouldLimit ? { minutes: own.exposedMinutes, limit: person.mouldLimit.minutesADay } : "clean";
}

const stripWords = (person: Person, own: ReadonlyMap<Day, PersonDay>, days: readonly Day[]): string =>
  `${person.name}. ${days
    .map((day) => words.inWords(sayDay(day, LOCALE, "short"), cellWords(person, own.get(day))))
    .join(" ")}`;
