import { z } from "zod";
import type { Plan } from "../../core/plan/plan.ts";
import { addDays } from "../../core/units/day.ts";
import type { Api } from "./house.ts";

/** Days of work that a device takes along. */
const DAYS = 21;

/** GET /api/work: what the plan has people do in its first days.   @param plan null: none was made yet */
export function serveWork(api: Api, plan: Plan | null): void {
  const text = plan === null ? null : JSON.stringify(firstDays(plan));
  api.get(
    "/api/work",
    {
      schema: {
        summary: "What the plan has people do in its first three weeks",
        response: {
          200: z.string().describe("JSON: planFrom, assignments, clock, personDays, itemDays"),
          204: z.null().describe("there is no plan yet"),
        },
      },
    },
    async (_request, reply) =>
      text === null
        ? reply
            .code(404)
            .send(refusal("no-plan", "no plan", "a plan", "Make one: npx leafward plan <folder>."))
        : reply
            .type("application/json; charset=utf-8")
            .serializer((whole: string) => whole)
            .send(text),
  );
}

function firstDays({ planFrom, assignments, clock, personDays, itemDays }: Plan) {
  const end = addDays(planFrom, DAYS);
  const isSoon = ({ day }: { readonly day: string }): boolean => day < end;
  return {
    ...{ planFrom, clock, itemDays },
    assignments: assignments.filter(isSoon),
    personDays: personDays.filter(isSoon),
  };
}
