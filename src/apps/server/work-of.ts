import type { Plan } from "../../core/plan/plan.ts";
import { addDays } from "../../core/units/day.ts";

/** Days of work that a device takes along. */
const DAYS = 21;

/** What a plan has people do in its first days. */
export function workOf({ planFrom, assignments, clock, personDays, itemDays }: Plan) {
  const end = addDays(planFrom, DAYS);
  const isSoon = ({ day }: { readonly day: string }): boolean => day < end;
  return {
    ...{ planFrom, clock, itemDays },
    assignments: assignments.filter(isSoon),
    personDays: personDays.filter(isSoon),
  };
}
