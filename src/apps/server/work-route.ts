import { z } from "zod";
import type { Api } from "./house.ts";
import type { PlanShelf } from "./plan-shelf.ts";

/** GET /api/work: what the plan has people do in its first days. No plan is an answer too. */
export function serveWork(api: Api, shelf: PlanShelf): void {
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
    async (_request, reply) => {
      const texts = shelf.texts();
      if (texts === null) return reply.code(204).send(null);
      return reply
        .type("application/json; charset=utf-8")
        .serializer((whole: string) => whole)
        .send(texts.work);
    },
  );
}
