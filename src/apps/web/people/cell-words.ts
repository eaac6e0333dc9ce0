import type { PersonDay, Plan } from "../../../core/plan/plan.ts";
import { sayMinutes } from "../../../core/say/dates.ts";
import { people } from "../../../core/say/page.ts";
import type { Day } from "../../../core/units/day.ts";
import { LOCALE } from "../frame/reader.ts";

export type Person = Plan["people"][number];

/** A person's days by date. */
export const daysOf = (plan: Plan, person: Person): ReadonlyMap<Day, PersonDay> =>
  new Map(plan.personDays.filter((each) => each.person === person.code).map((each) => [each.day, each]));

/** One cell in words, the same for picture, table and screen reader; never why somebody is on clean work. */
export function cellWords(person: Person, day: PersonDay | undefined): string {
  if (!day) return people.away;
  if (!person.mouldLimit) return people.cleanWork;
  return people.cell(
    sayMinutes(day.exposedMinutes, LOCALE),
    sayMinutes(person.mouldLimit.minutesADay, LOCALE),
  );
}

export const limitWords = (person: Person): string =>
  person.mouldLimit
    ? people.ceiling(sayMinutes(person.mouldLimit.minutesADay, LOCALE), {
        n: person.mouldLimit.daysAWeek,
        text: String(person.mouldLimit.daysAWeek),
      })
    : people.cleanWork;
