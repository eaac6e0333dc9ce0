import type { FastifyInstance, FastifyReply, FastifyRequest } from "fastify";
import { mayOpen } from "../../core/log/may-do.ts";
import type { Device } from "../../edge/serve/device-book.ts";
import { refusal } from "./answers.ts";
import type { House } from "./house.ts";

const COOKIE = "leafward";
const COOKIE_SECONDS = 180 * 86_400;

/** Finds out for each request which device asks. */
export function recognise(server: FastifyInstance, house: House): void {
  server.decorateRequest("device", null);
  server.addHook("onRequest", async (request) => {
    request.device = whoAsks(request, house);
  });
}

/** The device whose token came with a request, while it may come in. */
export function whoAsks({ cookies }: FastifyRequest, { devices, now }: House): Device | null {
  const token = cookies[COOKIE];
  return token === undefined ? null : devices.find(token, now());
}

/** No script can read the token, and no other site's page can make a browser send it. */
export const handToken = (reply: FastifyReply, token: string, { secure }: House): FastifyReply =>
  reply.setCookie(COOKIE, token, {
    ...{ path: "/", httpOnly: true, sameSite: "strict", secure, maxAge: COOKIE_SECONDS },
  });

export const takeToken = (reply: FastifyReply): FastifyReply => reply.clearCookie(COOKIE, { path: "/" });

/** Lets through what the table of roles opens, and notes what it does not. */
export function guard(server: FastifyInstance, house: House): void {
  server.addHook("preParsing", async (request, reply) => {
    const { url } = request.routeOptions;
    if (url === undefined) return; // no such address: said by its own answer
    const route = `${request.method === "HEAD" ? "GET" : request.method} ${url}`;
    const role = request.device?.role ?? null;
    if (mayOpen(house.roles, role, route)) return;
    const code = role === null ? "not-let-in" : "not-your-role";
    noteRefusal(house, request, route, code);
    await (role === null
      ? reply.code(401).send(refusal(code, route, "a device that was let in", LET_IN))
      : reply.code(403).send(refusal(code, role, route, "Ask the lead to do it, or to change your role.")));
  });
}

const LET_IN = "Ask the lead for a code, and enter it on this device.";

/** @param what a route, and where it has one a kind that is known here: nothing that the asker wrote */
export const noteRefusal = (
  { refusals, now }: House,
  { device }: Pick<FastifyRequest, "device">,
  what: string,
  code: string,
): void => refusals.note({ who: device?.device ?? "nobody let in", what, code }, now());
