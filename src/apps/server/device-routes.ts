import { z } from "zod";
import { healthWords } from "../../core/log/health-words.ts";
import { KINDS } from "../../core/log/kinds.ts";
import { mayDo } from "../../core/log/may-do.ts";
import { ROLES } from "../../core/log/roles.ts";
import type { Admitted } from "../../edge/serve/device-book.ts";
import { spelled } from "../../edge/serve/pairing-codes.ts";
import { refusal } from "./answers.ts";
import { handToken, noteRefusal, takeToken } from "./door.ts";
import { type Api, type House, insider } from "./house.ts";
import { refusalSchema } from "./problem-schema.ts";

/** A short name for finding a thing again; it will stand in the log. */
const name = (most: number) =>
  z
    .string()
    .max(most)
    .regex(/^[\p{L}\p{N}][\p{L}\p{N} ._-]*$/u)
    .refine((text) => healthWords(text).length === 0, "a name without words of health");
const role = z.enum(ROLES);
const time = z.iso.datetime();
const admitted = z.object({ device: z.string(), role, person: z.string().nullable() });

/** Letting devices in, and showing them out.   @param triesAMinute codes that one address may try */
export function serveDevices(api: Api, house: House, triesAMinute: number): void {
  const { codes, devices, desk, roles, now } = house;
  api.post(
    "/api/pairings",
    {
      schema: {
        summary: "Makes a code that lets one device in: once, within ten minutes",
        body: z.strictObject({ device: name(40), role, person: name(20).exactOptional() }),
        response: { 200: z.object({ code: z.string(), until: time }) },
      },
    },
    async ({ body: { device, role, person = null } }) => {
      const { code, until } = codes.make({ device, role, person }, now());
      return { code: spelled(code), until: timeOf(until) };
    },
  );
  api.post(
    "/api/pair",
    {
      config: { rateLimit: { max: triesAMinute } },
      schema: {
        summary: "Lets this device in by a code; the answer sets its cookie",
        body: z.strictObject({ code: z.string().min(1).max(20) }),
        response: { 200: admitted.extend({ campaign: z.string() }), 401: refusalSchema, 429: refusalSchema },
      },
    },
    async (request, reply) => {
      const found = codes.use(request.body.code, request.ip, now());
      if (found === "wait") {
        noteRefusal(house, request, "POST /api/pair", "too-many-codes");
        return reply
          .code(429)
          .send(refusal("too-many-codes", "another code", "fewer wrong codes", WAIT_REMEDY));
      }
      if (found === null) {
        noteRefusal(house, request, "POST /api/pair", "not-a-code");
        return reply
          .code(401)
          .send(refusal("not-a-code", "another code", "a code of the last ten minutes", CODE_REMEDY));
      }
      handToken(reply, devices.admit(found, now()), house);
      return { ...found, campaign: desk.campaign };
    },
  );
  api.get(
    "/api/me",
    {
      schema: {
        summary: "Who this device is, and what it may write",
        response: {
          200: admitted.extend({
            campaign: z.string(),
            writes: z.array(z.string()),
            pretendDay: z.string().nullable().describe("the day it is taken to be in a demo"),
          }),
        },
      },
    },
    async (request) => {
      const own = insider(request);
      const writes = Object.keys(KINDS).filter((kind) => mayDo(roles, own.role, kind));
      return { ...whom(own), campaign: desk.campaign, writes, pretendDay: house.pretendDay };
    },
  );
  api.post(
    "/api/leave",
    { schema: { summary: "Shows this device out", response: { 204: z.null() } } },
    async (request, reply) => {
      devices.end(insider(request).device, now());
      return takeToken(reply).code(204).send(null);
    },
  );
  api.get(
    "/api/devices",
    {
      schema: {
        summary: "Every device that was ever let in",
        response: {
          200: z.array(admitted.extend({ paired: time, seen: time, ended: time.nullable() })),
        },
      },
    },
    async () =>
      devices.all().map((each) => ({
        ...whom(each),
        paired: timeOf(each.paired),
        seen: timeOf(each.seen),
        ended: each.ended === null ? null : timeOf(each.ended),
      })),
  );
  api.delete(
    "/api/devices/:device",
    {
      schema: {
        summary: "Shows a device out at once",
        params: z.strictObject({ device: z.string().max(40) }),
        response: { 204: z.null(), 404: refusalSchema },
      },
    },
    async ({ params: { device } }, reply) =>
      devices.end(device, now())
        ? reply.code(204).send(null)
        : reply
            .code(404)
            .send(
              refusal("no-such-device", device, "a device that may come in", "Look at the list of devices."),
            ),
  );
  api.get(
    "/api/refused",
    {
      schema: {
        summary: "Acts that were refused, the newest first: who, what, when",
        response: {
          200: z.array(
            z.object({ who: z.string(), what: z.string(), code: z.string(), at: time, times: z.number() }),
          ),
        },
      },
    },
    async () =>
      house.refusals
        .newest(MOST_REFUSALS)
        .map(({ minute, ...rest }) => ({ ...rest, at: timeOf(minute * 60_000) })),
  );
}

const MOST_REFUSALS = 500;
const CODE_REMEDY = "Look at it again, or ask the lead for a new code.";
const WAIT_REMEDY = "Wait ten minutes, or ask the lead for a new code and enter that.";
const timeOf = (ms: number): string => new Date(ms).toISOString();
const whom = ({ device, role, person }: Admitted): Admitted => ({ device, role, person });
