import type { Plan } from "../../../core/plan/plan.ts";
import type { Day } from "../../../core/units/day.ts";
import { daysOf, limitWords, type Person } from "./cell-words.ts";
import { DaysHead } from "./days-head.tsx";
import { Hatch } from "./hatch.tsx";
import "./people-picture.css";
import { PersonStrip } from "./person-strip.tsx";
import { PictureKey } from "./picture-key.tsx";

/** People down, days across; in each cell a bar that is full at the day's limit, with its number. */
export const PeoplePicture = (p: { plan: Plan; people: readonly Person[]; days: readonly Day[] }) => (
  <div className="people-picture">
    <Hatch />
    <DaysHead days={p.days} />
    <ul>
      {p.people.map((person) => (
        <li className="people-row" key={person.code}>
          <p>
            <strong>{person.name}</strong> <span className="quiet">{limitWords(person)}</span>
          </p>
          <PersonStrip plan={p.plan} person={person} own={daysOf(p.plan, person)} days={p.days} />
        </li>
      ))}
    </ul>
    <PictureKey />
  </div>
);
