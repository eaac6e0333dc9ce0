import { z } from "zod";
import { shownTo } from "../../core/log/may-do.ts";
import type { Role } from "../../core/log/roles.ts";
import { snapshotOf } from "../../core/log/snapshot.ts";
import type { StateAt } from "../../edge/serve/log-desk.ts";
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
          200: z.string().describe("text; the header leafward-place says up to which place"),
          304: z.null().describe("it is still what if-none-match says"),
        },
      },
    },
    async (request, reply) => {
      const now = await house.desk.state();
      const { role } = insider(request);
      const tag = `"${now.place} ${sightOf(house, role)}"`;
      reply.header("leafward-place", String(now.place)).header("etag", tag);
      if (request.headers["if-none-match"] === tag) return reply.code(304).send(null);
      return reply.type("text/plain; charset=utf-8").send(stateText(now, role));
    },
  );
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
