import { companyNeededUntil } from "../../../core/plan/company.ts";
import type { Plan } from "../../../core/plan/plan.ts";
import { sheets } from "../../../core/say/page.ts";
import { Empty, Section } from "../frame/section.tsx";
import { PersonSheet } from "./person-sheet.tsx";
import "./sheets.css";

/** Each person's first day in the clock, which can be folded away. */
export function Sheets({ plan }: { plan: Plan }) {
  const people = plan.people.flatMap(({ code, name }) => {
    const own = plan.clock.filter((row) => row.person === code);
    const day = own[0]?.day;
    if (!day) return [];
    const rows = own.filter((row) => row.day === day);
    const counted = plan.personDays.find((each) => each.day === day && each.person === code);
    return [{ code, name, day, rows, counted, company: companyNeededUntil(rows, plan.clock) }];
  });
  return (
    <Section id="sheets" heading={sheets.heading} intro={sheets.intro}>
      {people.length === 0 ? (
        <Empty title={sheets.empty} help={sheets.emptyHelp} />
      ) : (
        <div className="sheets">
          {people.map(({ code, ...sheet }) => (
            <PersonSheet key={code} {...sheet} />
          ))}
        </div>
      )}
    </Section>
  );
}
