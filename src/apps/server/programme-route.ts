import { z } from "zod";
import type { Programme } from "../../edge/programme/programme.ts";
import { refusal } from "./answers.ts";
import type { Api } from "./house.ts";
import { refusalSchema } from "./problem-schema.ts";

const day = z.string();
const tenths = z.object({ p10: z.number(), p50: z.number(), p90: z.number() });
const summary = z.object({
  name: z.string(),
  place: z.string(),
  planFrom: day,
  end: day,
  finish: z.object({
    p10: day.nullable(),
    p50: day.nullable(),
    p90: day.nullable(),
    boxed: tenths,
    draws: z.number(),
    unfinished: z.number().describe("of these draws: campaigns that leave something at their end"),
  }),
  routed: z.number(),
  nearMould: z
    .object({ planned: z.number(), allowed: z.number() })
    .describe("minutes of all people this week"),
  runOut: z.array(z.object({ name: z.string(), day })).readonly(),
  lateOrders: z.number(),
  questions: z.array(z.string()).readonly(),
  setAside: z.number(),
  disagreements: z.number(),
});
const rows = z
  .array(
    z.object({
      campaign: z.string(),
      last: z.object({ at: z.number().describe("ms since 1970"), kind: z.string(), device: z.string() }),
      summary: summary.nullable().describe("null: no worker has planned it yet"),
      behind: z.boolean().describe("entries came since"),
    }),
  )
  .readonly();

/** GET /api/programme: every campaign of the database this server's log is in.   @param programme null: the log is in a file */
export function serveProgramme(api: Api, programme: Programme | null): void {
  api.get(
    "/api/programme",
    {
      schema: {
        summary:
          "Every campaign of the programme: its finish and risk, what it lacks, what waits for an answer",
        response: { 200: z.object({ campaigns: rows }), 404: refusalSchema },
      },
    },
    async (_, reply) => {
      if (programme === null)
        return reply
          .code(404)
          .send(
            refusal(
              "programme-no-database",
              "a log in a file",
              "LEAFWARD_DATABASE_URL",
              "A single campaign needs no programme.",
            ),
          );
      return { campaigns: await programme.campaigns() };
    },
  );
}
