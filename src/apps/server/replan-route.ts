import { join } from "node:path";
import { Readable } from "node:stream";
import { z } from "zod";
import type { AcceptedPlan } from "../../core/plan/replan/accepted.ts";
import { REPLAN_REFUSALS } from "../../core/say/replan.ts";
import { type Day, dayFrom } from "../../core/units/day.ts";
import { whatIfService } from "../../edge/solve/what-if-service.ts";
import { refusal } from "./answers.ts";
import type { Api, House } from "./house.ts";
import type { PlanMaker } from "./plan-maker.ts";
import type { PlanLine } from "./plan-maker-messages.ts";
import type { PlanShelf } from "./plan-shelf.ts";
import { refusalSchema } from "./problem-schema.ts";

const day = z
  .string()
  .refine((text) => dayFrom(text) !== null, "a day such as 2026-06-01")
  .transform((text) => text as Day); // dayFrom has just said so
const lines = z.any().describe("JSON lines: reading, care, planning …, then ready, accepted or problem");

export interface Planning {
  readonly maker: PlanMaker;
  readonly shelf: PlanShelf;
  /** Folder the plan, its picture, tables and papers go to. */
  readonly outFolder: string;
}

/** A plan for a new morning, as near to the one on the shelf as it pays; the first where there is none. Nobody works by it before it is accepted. */
export function serveReplan(api: Api, house: House, { maker, shelf, outFolder }: Planning): void {
  api.addHook("onClose", () => maker.close());
  const accepted = (): AcceptedPlan | null => shelf.now()?.plan ?? null;
  api.post(
    "/api/replan",
    {
      schema: {
        summary: "Makes a plan for a morning, or tells how the one being made goes: application/x-ndjson",
        body: z.strictObject({
          morning: day,
          search: z
            .enum(["short", "long"])
            .default("short")
            .describe("a long search gains more for the whole campaign, and changes more of what was told"),
        }),
        response: { 200: lines, 422: refusalSchema },
      },
    },
    async ({ body: { morning, search } }, reply) => {
      const before = accepted();
      if (before !== null && before.planFrom > morning)
        return reply.code(422).send(tooEarly(before.planFrom, morning));
      maker.make(morning, before, search);
      return stream(reply.type("application/x-ndjson"), maker);
    },
  );
  api.get(
    "/api/replan",
    {
      schema: {
        summary: "Where the making of a plan stands",
        response: { 200: z.any().describe("the last line told"), 204: z.null().describe("none was begun") },
      },
    },
    async (_, reply) => {
      const last = maker.last();
      return last === null ? reply.code(204).send(null) : last;
    },
  );
  api.post(
    "/api/replan/stop",
    { schema: { summary: "Ends the making with the best plan so far", response: { 204: z.null() } } },
    async (_, reply) => {
      maker.stop();
      return reply.code(204).send(null);
    },
  );
  api.post(
    "/api/replan/accept",
    {
      schema: {
        summary: "The plan that is ready becomes the plan people work by; it is written, with its papers",
        body: z.strictObject({ plan: z.string().max(64) }),
        response: { 200: lines, 409: refusalSchema },
      },
    },
    async ({ body: { plan } }, reply) => {
      const began = maker.write(plan, outFolder, async (written) =>
        shelf.put({
          ...{ plan: written.plan, picture: written.picture },
          papersFolder: join(outFolder, "papers"),
          whatIf: whatIfService(house.folder, written.plan.planFrom),
        }),
      );
      if (!began) return reply.code(409).send(OTHER_PLAN);
      return stream(reply.type("application/x-ndjson"), maker);
    },
  );
}

const OTHER_PLAN = refusal(
  "another-plan",
  "another plan",
  "the plan that is ready",
  "Look at it again: it may have been made anew on another device.",
);
const tooEarly = (from: Day, morning: Day) =>
  refusal("morning-too-early", morning, `${from} or later`, REPLAN_REFUSALS.later("The plan", from, morning));

const stream = (
  reply: { header(name: string, value: string): { send(body: Readable): unknown } },
  maker: PlanMaker,
) => reply.header("x-accel-buffering", "no").send(Readable.from(textOf(maker.hear())));

async function* textOf(told: AsyncIterable<PlanLine>): AsyncGenerator<string> {
  for await (const line of told) yield `${JSON.stringify(line)}\n`;
}
