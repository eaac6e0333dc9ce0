import type { Plan } from "../../../core/plan/plan.ts";
import { sheets } from "../../../core/say/page.ts";
import { Empty, Section } from "../frame/section.tsx";
import { PersonSheet } from "./person-sheet.tsx";
import "./sheets.css";

/** Each person's first day, which can be folded away. */
export function Sheets({ plan }: { plan: Plan }) {
  const people = plan.people.filter((person) => plan.assignments.some((each) => each.person === person.code));
  return (
    <Section id="sheets" heading={sheets.heading} intro={sheets.intro}>
      {people.length === 0 ? (
        <Empty title={sheets.empty} help={sheets.emptyHelp} />
      ) : (
        <div className="sheets">
          {people.map((person) => (
            <PersonSheet
              key={person.code}
              name={person.name}
              pieces={plan.assignments.filter((each) => each.person === person.code)}
            />
          ))}
        </div>
      )}
    </Section>
  );
}
