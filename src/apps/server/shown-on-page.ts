import type { Assignment, Plan } from "../../core/plan/plan.ts";
import { addDays } from "../../core/units/day.ts";

/** Days the page's picture of people covers. */
const DAYS_SHOWN = 14;

/** The plan without what the page does not show: 20,000 items have some hundred thousand assignments. */
export const shownOnPage = (plan: Plan): Plan => ({
  ...plan,
  assignments: firstDays(plan.assignments),
  personDays: plan.personDays.filter(
    ({ day }) => day >= plan.planFrom && day < addDays(plan.planFrom, DAYS_SHOWN),
  ),
  itemDays: [],
  stores: [],
});

/** Each person's earliest day with work. */
function firstDays(assignments: readonly Assignment[]): Assignment[] {
  const first = new Map<string, string>();
  for (const { person, day } of assignments) {
    const known = first.get(person);
    if (known === undefined || day < known) first.set(person, day);
  }
  return assignments.filter(({ person, day }) => first.get(person) === day);
}
