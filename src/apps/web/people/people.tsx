import { useState } from "react";
import { ToggleButton, ToggleButtonGroup } from "react-aria-components";
import type { Plan } from "../../../core/plan/plan.ts";
import { people } from "../../../core/say/page.ts";
import { addDays, type Day } from "../../../core/units/day.ts";
import { Empty, Section } from "../frame/section.tsx";
import "./people.css";
import { PeoplePicture } from "./people-picture.tsx";
import { PeopleTable } from "./people-table.tsx";

const DAYS = 14;

/** The coming two weeks: every person's mould minutes against the limit, as a picture or a table. */
export function People({ plan }: { plan: Plan }) {
  const [view, setView] = useState<"picture" | "table">("picture");
  const days: Day[] = Array.from({ length: DAYS }, (_, n) => addDays(plan.planFrom, n));
  const shown = plan.people
    .filter((person) => plan.personDays.some((each) => each.person === person.code))
    .map((person) => (isNearMould(plan, person.code) ? person : { ...person, mouldLimit: null }));
  return (
    <Section id="people" heading={people.heading} intro={people.intro}>
      {shown.length === 0 ? (
        <Empty title={people.empty} help={people.emptyHelp} />
      ) : (
        <>
          <ToggleButtonGroup
            className="people-view"
            aria-label={people.view}
            selectionMode="single"
            disallowEmptySelection
            selectedKeys={[view]}
            onSelectionChange={(keys) => setView(keys.has("table") ? "table" : "picture")}
          >
            <ToggleButton id="picture">{people.picture}</ToggleButton>
            <ToggleButton id="table">{people.table}</ToggleButton>
          </ToggleButtonGroup>
          {view === "picture" ? (
            <PeoplePicture plan={plan} people={shown} days={days} />
          ) : (
            <PeopleTable plan={plan} people={shown} days={days} />
          )}
        </>
      )}
    </Section>
  );
}

/** Without mould work in these days everyone is shown alike, whatever the cause. */
const isNearMould = (plan: Plan, code: string): boolean =>
  plan.personDays.some((each) => each.person === code && each.exposedMinutes > 0);
