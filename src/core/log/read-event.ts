import { z } from "zod";
import { type Outcome, type Problem, refused } from "../outcome/problem.ts";
import { isJson } from "./canonical-json.ts";
import { LAST_WALL, MOST_COUNTER } from "./clock.ts";
import { hashOf, type LogEvent } from "./event.ts";
import { ROLES } from "./roles.ts";
import { ULID } from "./ulid.ts";
import { unfitIn } from "./unfit.ts";

const hash = z.string().regex(/^[0-9a-f]{64}$/);
const whole = z.number().int().min(0);
/** PostgreSQL can hold neither the letter NUL in a text nor a greater number in an integer. Source: its documentation, "Character Types" and "Numeric Types". */
const code = z
  .string()
  .min(1)
  .max(80)
  .refine((text) => !text.includes("\0"), "letters");
const MOST_NUMBER = 2 ** 31 - 1;

/** What a newer version adds beside these fields is kept: the hash covers it. */
const envelope = z.looseObject({
  id: z.string().regex(ULID),
  campaign: code,
  device: code,
  number: whole.min(1).max(MOST_NUMBER),
  clock: z.looseObject({ wall: whole.max(LAST_WALL), counter: whole.max(MOST_COUNTER) }),
  who: z.looseObject({ role: z.enum(ROLES), person: code.exactOptional() }),
  kind: z.string().regex(/^[a-z][A-Za-z]{1,59}$/),
  version: whole.min(1),
  payload: z.record(z.string(), z.unknown()),
  seen: z.array(z.string().regex(ULID)).max(1000),
  before: z.union([z.literal(""), hash]),
  hash,
});

/** Reads one event from a file or the network: its envelope, its hash, and its payload if the kind and version are known here. What was read
 *  or written once is trusted from then on, so that a stored log need not be read this way again. */
export function readEvent(given: unknown, file?: string, line?: number): Outcome<LogEvent> {
  const where = { ...(file === undefined ? {} : { file }), ...(line === undefined ? {} : { line }) };
  const parsed = envelope.safeParse(given);
  if (!parsed.success || !isJson(given)) return refused({ ...where, ...notAnEvent(parsed.error) });
  const event = parsed.data as unknown as LogEvent; // checked field by field just now
  const problem = hashOf(event) === event.hash ? unfitIn(event) : altered(event);
  return problem === null ? { ok: true, value: event } : refused({ ...where, ...problem });
}

const notAnEvent = (error: z.ZodError | undefined): Problem => {
  const [first] = error?.issues ?? [];
  return {
    code: "not-an-event",
    severity: "ask",
    got: first?.path.join(".") || "the entry as a whole",
    expected: first?.message ?? "plain JSON",
    remedy: "It was set aside. Take the log again from the device that wrote it, or from a copy.",
  };
};

/** What is said of an event whose content is not what its hash says. */
export const altered = ({ id, device }: LogEvent): Problem => ({
  code: "event-altered",
  severity: "ask",
  got: id,
  expected: device,
  remedy: "It was set aside. Take the log again from that device, or from a copy.",
});
