import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll } from "vitest";
import { type LogServer, type LogServerOptions, startLogServer } from "../../../src/apps/server/serve-log.ts";
import type { Json } from "../../../src/core/log/canonical-json.ts";
import { type Clock, tick } from "../../../src/core/log/clock.ts";
import type { LogEvent } from "../../../src/core/log/event.ts";
import type { Kind } from "../../../src/core/log/kinds.ts";
import type { Role } from "../../../src/core/log/roles.ts";
import { nextUlid } from "../../../src/core/log/ulid.ts";
import type { Keep } from "../../../src/edge/keep/keep.ts";
import { openFileKeep } from "../../../src/edge/keep/open-keep.ts";
import { EXAMPLES } from "../../core/log/examples.ts";
import { NOON, sealed } from "../../core/log/some-events.ts";

export const CAMPAIGN = "saltmere";

/** A server on this machine, with a log in a SQLite file of its own. */
export interface AHouse {
  readonly server: LogServer;
  readonly keep: Keep;
  readonly folder: string;
  /** What time it is there. */
  readonly clock: { now: number };
  /** Lets a device in, by a code that the lead made. */
  enter(device: string, role: Role, person?: string): Promise<ADevice>;
}

export async function aHouse(options: Partial<LogServerOptions> = {}): Promise<AHouse> {
  const folder = mkdtempSync(join(tmpdir(), "leafward-house-"));
  const opened = await openFileKeep(join(folder, "log.leafward.db"));
  if (!opened.ok) throw new Error("A new folder has no log.");
  const keep = opened.value;
  const clock = { now: NOON };
  const server = await startLogServer({
    ...{ folder, keep, campaign: CAMPAIGN, port: 0, now: () => clock.now, requestsAMinute: 1_000_000 },
    ...options,
  });
  const lead = aDevice(server, "laptop", "lead");
  await lead.pair(server.leadCode("laptop").code);
  afterAll(async () => {
    await server.close();
    await keep.close();
    rmSync(folder, { recursive: true, force: true });
  });
  return {
    ...{ server, keep, folder, clock },
    enter: async (device, role, person) => {
      if (device === "laptop") return lead;
      const asked = await lead.post("/api/pairings", { device, role, ...(person ? { person } : {}) });
      const { code } = (await asked.json()) as { code: string };
      const entered = aDevice(server, device, role, person);
      await entered.pair(code);
      return entered;
    },
  };
}

export type ADevice = ReturnType<typeof aDevice>;

/** A device as it asks over the network: a cookie, a pen, and nothing else. */
export function aDevice(server: LogServer, device: string, role: Role, person?: string) {
  const own = { cookie: "" };
  const write = penFor(device, role, person);
  const ask = (path: string, more: RequestInit = {}): Promise<Response> =>
    fetch(server.address + path, {
      ...more,
      headers: { ...(more.headers as Record<string, string>), cookie: own.cookie },
    });
  const post = (path: string, body: unknown): Promise<Response> =>
    ask(path, {
      method: "POST",
      headers: { "content-type": "application/json" },
      body: JSON.stringify(body),
    });
  return {
    ...{ device, role, own, ask, post, write },
    /** An event of this device, with the example's payload unless told another. */
    example: (kind: Kind, payload: object = EXAMPLES[kind], more: object = {}): LogEvent =>
      write(kind, payload as { [key: string]: Json }, more),
    send: async (...events: readonly unknown[]): Promise<Sent> => {
      const answered = await post("/api/events", { events });
      return { status: answered.status, ...((await answered.json()) as Omit<Sent, "status">) };
    },
    pair: async (code: string): Promise<Response> => {
      const answered = await post("/api/pair", { code });
      const [cookie] = answered.headers.getSetCookie();
      if (cookie !== undefined) own.cookie = cookie.slice(0, cookie.indexOf(";"));
      return answered;
    },
  };
}

export interface Sent {
  readonly status: number;
  readonly answers: readonly {
    readonly id: string | null;
    readonly answer: string;
    readonly problem?: { code: string; remedy: string };
  }[];
  readonly place: number;
  readonly problem?: { readonly code: string };
}

/** Writes one right event after the other; what is more than that is put in before it is sealed. */
function penFor(device: string, role: Role, person?: string) {
  let clock: Clock = { wall: NOON, counter: 0 };
  let [number, before, last] = [0, "", ""];
  const chance = Uint8Array.from(
    { length: 10 },
    (_, i) => (device.charCodeAt(i % device.length) * (i + 3)) % 256,
  );
  return (kind: string, payload: { [key: string]: Json }, more: object = {}): LogEvent => {
    clock = tick(clock, clock.wall + 1000);
    last = nextUlid(clock.wall, chance, last);
    number++;
    const who = { role, ...(person === undefined ? {} : { person }) };
    const event = sealed({
      ...{
        id: last,
        campaign: CAMPAIGN,
        device,
        number,
        clock,
        who,
        kind,
        version: 1,
        payload,
        seen: [],
        before,
      },
      ...more,
    });
    before = event.hash;
    return event;
  };
}
