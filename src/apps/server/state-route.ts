import { createHash } from "node:crypto";
import { z } from "zod";
import { shownTo } from "../../core/log/may-do.ts";
import type { Role } from "../../core/log/roles.ts";
import { snapshotOf } from "../../core/log/snapshot.ts";
import type { StateAt } from "../../edge/serve/log-desk.ts";
import { cursorAt } from "./cursor.ts";
import { type Api, type House, insider } from "./house.ts";

/** GET /api/state: folded once for everyone, and shown to each as their role sees it. */
export function serveState(api: Api, house: House): void {
  const stateText = lastOfEachSight(house);
  api.get(
    "/api/state",
    {
      schema: {
        summary:
          "The state of everything that is kept now, as a snapshot: one line for each item, bag, person, store",
        response: {
          200: z.string().describe("text; the header leafward-place says up to which place, to go on after"),
          304: z.null().describe("it is still what if-none-match says"),
        },
      },
    },
    async (request, reply) => {
      const now = await house.desk.state();
      const { text, tag } = stateText(now, insider(request).role);
      reply.header("leafward-place", await cursorAt(house.desk, now.place)).header("etag", tag);
      if (request.headers["if-none-match"] === tag) return reply.code(304).send(null);
      return reply.type("text/plain; charset=utf-8").send(text);
    },
  );
}

/** Roles that see the same share one text. */
const sightOf = ({ roles }: House, role: Role): string => String(roles.sees[role]);

interface StateText {
  readonly text: string;
  /** By the text and not by the place, where after a backup was put back something else may stand. */
  readonly tag: string;
}

/** The text of the state, made once for each place and sight. */
function lastOfEachSight(house: House): (now: StateAt, role: Role) => StateText {
  const made = new Map<string, StateText & { readonly place: number }>();
  return ({ place, state }, role) => {
    const sight = sightOf(house, role);
    const before = made.get(sight);
    if (before?.place === place) return before;
    const text = snapshotOf(shownTo(house.roles, role, state));
    const now = { place, text, tag: `"${createHash("sha256").update(text).digest("hex")}"` };
    made.set(sight, now);
    return now;
  };
}
