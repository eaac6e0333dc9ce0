import type { Plan } from "../../../core/plan/plan.ts";
import { sayDay } from "../../../core/say/dates.ts";
import { people as words } from "../../../core/say/page.ts";
import type { Day } from "../../../core/units/day.ts";
import { LOCALE } from "../frame/reader.ts";
import { cellWords, daysOf, limitWords, type Person } from "./cell-words.ts";

export const PeopleTable = ({
  plan,
  people,
  days,
}: {
  plan: Plan;
  people: readonly Person[];
  days: readonly Day[];
}) => (
  <div className="wide" tabIndex={0} role="group" aria-label={words.heading}>
    <table>
      <thead>
        <tr>
          <th scope="col">{words.person}</th>
          {days.map((day) => (
            <th scope="col" key={day}>
              {sayDay(day, LOCALE, "short")}
            </th>
          ))}
        </tr>
      </thead>
      <tbody>
        {people.map((person) => {
          const own = daysOf(plan, person);
          return (
            <tr key={person.code}>
              <th scope="row">
                {person.name} <span className="quiet">{limitWords(person)}</span>
              </th>
              {days.map((day) => (
                <td key={day}>{cellWords(person, own.get(day))}</td>
              ))}
            </tr>
          );
        })}
      </tbody>
    </table>
  </div>
);
