import { Readable } from "node:stream";
import { z } from "zod";
import type { Placed } from "../../edge/keep/keep.ts";
import { refusal } from "./answers.ts";
import { beyondTheLog, cursorOf, cursorSchema, placeOf } from "./cursor.ts";
import { whoAsks } from "./door.ts";
import { type Api, type House, insider } from "./house.ts";
import { refusalSchema } from "./problem-schema.ts";

/** Streams of one device at a time: a few windows, and some that fell away and are not known to be gone yet. */
const MOST_STREAMS = 6;

/** GET /api/live: server-sent events, one for each entry as it is kept, its cursor as its id; a browser goes on by itself from where it was. */
export function serveLive(api: Api, house: House): void {
  const open = new Map<string, number>();
  api.get(
    "/api/live",
    {
      schema: {
        summary: "Each entry as it is kept: text/event-stream, resumed by Last-Event-ID",
        querystring: z.strictObject({ after: cursorSchema.default("0") }),
        headers: z.looseObject({ "last-event-id": cursorSchema.exactOptional() }),
        response: {
          200: z
            .any()
            .describe(
              "one message for each entry: its id is the place and how its hash begins, its data the entry as JSON",
            ),
          409: refusalSchema,
          429: refusalSchema,
        },
      },
    },
    async (request, reply) => {
      const { device } = insider(request);
      const from = request.headers["last-event-id"] ?? request.query.after;
      const beyond = await beyondTheLog(house.desk, from);
      if (beyond) return reply.code(409).send(beyond);
      const streams = open.get(device) ?? 0;
      if (streams >= MOST_STREAMS)
        return reply
          .code(429)
          .send(
            refusal(
              "too-many-streams",
              String(streams + 1),
              `${MOST_STREAMS}`,
              "Close windows that are not used.",
            ),
          );
      open.set(device, streams + 1);
      const gone = new AbortController();
      reply.raw.once("close", () => {
        gone.abort();
        open.set(device, (open.get(device) ?? 1) - 1);
      });
      const pages = house.desk.follow(placeOf(from), gone.signal);
      const mayStay = (): boolean => whoAsks(request, house) !== null;
      return reply
        .type("text/event-stream")
        .header("x-accel-buffering", "no")
        .send(Readable.from(messages(pages, mayStay)));
    },
  );
}

async function* messages(
  pages: AsyncGenerator<readonly Placed[]>,
  mayStay: () => boolean,
): AsyncGenerator<string> {
  for await (const page of pages) {
    if (!mayStay()) return;
    yield page.length === 0 ? ":\n\n" : page.map(message).join(""); // a remark, so that a line that broke is found out
  }
}

/** JSON has no line breaks of its own. */
const message = (placed: Placed): string =>
  `id: ${cursorOf(placed)}\ndata: ${JSON.stringify(placed.event)}\n\n`;
