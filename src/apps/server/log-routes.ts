import { z } from "zod";
import { KINDS } from "../../core/log/kinds.ts";
import { answerBatch, batchSchema, statusOf } from "./batch-answer.ts";
import { beyondTheLog, cursorSchema, placeOf } from "./cursor.ts";
import { noteRefusal } from "./door.ts";
import { type Api, type House, insider } from "./house.ts";
import { type Judged, judgeBatch } from "./judge-batch.ts";
import { refusalSchema } from "./problem-schema.ts";

const MOST_EVENTS = 500;
const MOST_BYTES = 4 * 1024 * 1024;

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
          "2xx": batchSchema,
          409: batchSchema,
          422: batchSchema,
          503: batchSchema,
          507: batchSchema,
        },
      },
    },
    async (request, reply) => {
      const device = insider(request);
      const { events } = request.body;
      const judged = await judgeBatch(events, {
        ...{ campaign: desk.campaign, device, roles: house.roles },
        former: house.devices.former(device.device, house.now()),
        state: async () => (await desk.state()).state,
      });
      for (const each of judged) note(each, request);
      const isFit = judged.every(({ problem }) => problem === null);
      const appended = isFit ? await desk.append(judged.flatMap(({ event }) => event ?? [])) : null;
      return reply.code(statusOf(appended)).send(answerBatch(judged, appended));
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
          after: cursorSchema.default("0"),
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
      const found = await desk.after(placeOf(after), most + 1);
      return { events: found.slice(0, most), more: found.length > most };
    },
  );
}
