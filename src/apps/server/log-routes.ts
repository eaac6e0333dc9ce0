import { z } from "zod";
import { KINDS } from "../../core/log/kinds.ts";
import { shownTo } from "../../core/log/may-do.ts";
import type { Role } from "../../core/log/roles.ts";
import { snapshotOf } from "../../core/log/snapshot.ts";
import { EMPTY_STATE } from "../../core/log/state.ts";
import type { Problem } from "../../core/outcome/problem.ts";
import type { Appended } from "../../edge/keep/keep.ts";
import type { LogDesk, StateAt } from "../../edge/serve/log-desk.ts";
import { type Refusal, refusal } from "./answers.ts";
import { noteRefusal } from "./door.ts";
import { type Api, type House, insider } from "./house.ts";
import { type Judged, judgeBatch } from "./judge-batch.ts";
import { problemSchema, refusalSchema } from "./problem-schema.ts";

const MOST_EVENTS = 500;
const MOST_BYTES = 4 * 1024 * 1024;

const place = z.coerce.number().int().min(0).max(Number.MAX_SAFE_INTEGER);
const answer = z.object({
  id: z.string().nullable().describe("null: it could not be read"),
  answer: z
    .enum(["kept", "refused", "waits"])
    .describe(
      "kept: it is on the disk, now or before; waits: nothing of this batch was kept, others were refused",
    ),
  problem: problemSchema.exactOptional(),
});
const batchAnswer = z.object({
  answers: z.array(answer),
  place: z
    .number()
    .describe("the last place of all that is kept here; to go on from, take those of the entries"),
  noted: z.array(problemSchema).describe("kept, but to be looked at"),
});

export function serveLog(api: Api, house: House): void {
  const { desk } = house;
  api.post(
    "/api/events",
    {
      bodyLimit: MOST_BYTES,
      schema: {
        summary: "Keeps a batch of entries, all or none",
        body: z.strictObject({ events: z.array(z.unknown()).min(1).max(MOST_EVENTS) }),
        response: {
          "2xx": batchAnswer,
          409: batchAnswer,
          422: batchAnswer,
          503: batchAnswer,
          507: batchAnswer,
        },
      },
    },
    async (request, reply) => {
      const device = insider(request);
      const { events } = request.body;
      const { place, state } = corrects(events) ? await desk.state() : { place: 0, state: EMPTY_STATE };
      const judged = judgeBatch(events, { campaign: desk.campaign, device, roles: house.roles, state });
      for (const each of judged) note(each, request);
      const isFit = judged.every(({ problem }) => problem === null);
      const appended = isFit ? await desk.append(judged.flatMap(({ event }) => event ?? [])) : null;
      return reply.code(statusOf(appended)).send({
        answers: judged.map((each) => answerTo(each, appended)),
        place: appended?.place ?? place,
        noted: [...(appended?.noted ?? [])],
      });
    },
  );

  function note({ event, problem }: Judged, request: Parameters<typeof noteRefusal>[1]): void {
    if (problem === null || event === null) return;
    const kind = Object.hasOwn(KINDS, event.kind) ? event.kind : "of an unknown kind";
    noteRefusal(house, request, `POST /api/events ${kind}`, problem.code);
  }

  api.get(
    "/api/events",
    {
      schema: {
        summary: "The entries after a place, in the order in which they came here",
        querystring: z.strictObject({
          after: place.default(0),
          most: z.coerce.number().int().min(1).max(2000).default(500),
        }),
        response: {
          200: z.object({
            events: z.array(z.object({ place: z.number(), event: z.unknown() })),
            more: z.boolean(),
          }),
          409: refusalSchema,
        },
      },
    },
    async ({ query: { after, most } }, reply) => {
      const beyond = await beyondTheLog(desk, after);
      if (beyond) return reply.code(409).send(beyond);
      const found = await desk.after(after, most + 1);
      return { events: found.slice(0, most), more: found.length > most };
    },
  );

  const stateText = lastOfEachSight(house);
  api.get(
    "/api/state",
    {
      schema: {
        summary:
          "The state of everything that is kept now, as a snapshot: one line for each item, bag, person, store",
        response: {
          200: z.string().describe("text; the header leafward-place says up to which place"),
          304: z.null().describe("it is still what if-none-match says"),
        },
      },
    },
    async (request, reply) => {
      const now = await desk.state();
      const { role } = insider(request);
      const tag = `"${now.place} ${sightOf(house, role)}"`;
      reply.header("leafward-place", String(now.place)).header("etag", tag);
      if (request.headers["if-none-match"] === tag) return reply.code(304).send(null);
      return reply.type("text/plain; charset=utf-8").send(stateText(now, role));
    },
  );
}

/** After a backup was put back the log may be shorter than what a device knows of it: it would wait for ever. */
export async function beyondTheLog(desk: LogDesk, after: number): Promise<Refusal | null> {
  if (after === 0 || after <= (await desk.state()).place) return null;
  return refusal(
    "beyond-the-log",
    String(after),
    "a place that this log has",
    "The log was put back from a backup. Take the state again, and send every entry of this device again.",
  );
}

const corrects = (events: readonly unknown[]): boolean =>
  events.some((each) => (each as { readonly kind?: unknown } | null)?.kind === "eventCorrected"); // of anything but an object it is undefined

/** What became of one entry, after what the keep said of the batch. */
function answerTo({ event, problem }: Judged, appended: Appended | null): z.infer<typeof answer> {
  const id = event?.id ?? null;
  const why = problem ?? appended?.refused.find((each) => isAbout(each, id)) ?? null;
  if (why !== null) return { id, answer: "refused", problem: answered(why) };
  return { id, answer: appended !== null && appended.refused.length === 0 ? "kept" : "waits" };
}

/** Of two entries with one id the keep names the id; what stands in the way of writing at all stands in the way of each. */
const isAbout = ({ code, got }: Problem, id: string | null): boolean => code !== "event-twice" || got === id;

/** Without line, column and rule: an entry has none. */
const answered = ({
  code,
  severity,
  got,
  expected,
  remedy,
  file,
}: Problem): z.infer<typeof problemSchema> => ({
  ...{ code, severity, remedy },
  ...(got === undefined ? {} : { got }),
  ...(expected === undefined ? {} : { expected }),
  ...(file === undefined ? {} : { file }),
});

function statusOf(appended: Appended | null): 200 | 409 | 422 | 503 | 507 {
  if (appended === null) return 422;
  const [first] = appended.refused;
  if (first === undefined) return 200;
  if (first.code === "keep-full") return 507;
  return first.code.startsWith("keep-") ? 503 : 409;
}

/** Roles that see the same share one text. */
const sightOf = ({ roles }: House, role: Role): string => String(roles.sees[role]);

/** The text of the state, made once for each place and sight. */
function lastOfEachSight(house: House): (now: StateAt, role: Role) => string {
  const made = new Map<string, { readonly place: number; readonly text: string }>();
  return ({ place, state }, role) => {
    const sight = sightOf(house, role);
    const before = made.get(sight);
    if (before?.place === place) return before.text;
    const text = snapshotOf(shownTo(house.roles, role, state));
    made.set(sight, { place, text });
    return text;
  };
}
