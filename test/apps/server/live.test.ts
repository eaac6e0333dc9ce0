import { get } from "node:http";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import type { LogEvent } from "../../../src/core/log/event.ts";
import type { Placed } from "../../../src/edge/keep/keep.ts";
import { openFileKeep } from "../../../src/edge/keep/open-keep.ts";
import { type ADevice, type AHouse, aHouse } from "./a-house.ts";

let house: AHouse;
let lead: ADevice;
let scribe: ADevice;
beforeAll(async () => {
  house = await aHouse();
  lead = await house.enter("laptop", "lead");
  scribe = await house.enter("tablet-1", "scribe");
});

/** A stream as a browser would hold it. */
function listen(who: ADevice, { last, after }: { last?: number | string; after?: number } = {}) {
  const got: { place: number; event: LogEvent }[] = [];
  let [rest, ended, wake] = ["", false, () => {}];
  const headers = {
    cookie: who.own.cookie,
    ...(last === undefined ? {} : { "last-event-id": String(last) }),
  };
  const asking = get(`${house.server.address}/api/live${after === undefined ? "" : `?after=${after}`}`, {
    headers,
    agent: false,
  });
  asking.on("error", () => {});
  const status = new Promise<number>((resolve) => {
    asking.on("response", (answered) => {
      resolve(answered.statusCode ?? 0);
      answered.on("close", () => {
        ended = true;
        wake();
      });
      answered.on("data", (bytes: Buffer) => {
        const messages = (rest + bytes.toString()).split("\n\n");
        rest = messages.pop() ?? "";
        for (const each of messages) {
          const [, place, data] = /^id: (\d+)-[0-9a-f]{12}\ndata: (.*)$/.exec(each) ?? [];
          if (data) got.push({ place: Number(place), event: JSON.parse(data) });
        }
        wake();
      });
    });
  });
  const until = async (isSo: () => boolean): Promise<void> => {
    while (!isSo())
      await new Promise<void>((resolve) => {
        wake = resolve;
      });
  };
  return {
    got,
    status,
    some: (count: number) => until(() => got.length >= count),
    end: () => until(() => ended),
    close: () => asking.destroy(),
  };
}

describe("live", () => {
  test("what one device sends another has at once, in the order in which it is kept", async () => {
    const stream = listen(lead);
    expect(await stream.status).toBe(200);
    const events = [
      scribe.example("noteWritten"),
      scribe.example("findingRecorded"),
      scribe.example("itemMoved"),
    ];
    for (const event of events) await scribe.send(event);
    await stream.some(3);
    expect(stream.got.map(({ event }) => event)).toEqual(events);
    stream.close();
  });

  test("it goes on after the last message that was had, with none left out and none twice", async () => {
    const first = listen(scribe);
    await first.some(3);
    first.close();
    await scribe.send(scribe.example("noteWritten"), scribe.example("noteWritten"));
    const on = listen(scribe, { last: 2 });
    await on.some(3);
    expect(on.got.map(({ place }) => place)).toEqual([3, 4, 5]);
    on.close();
    const after = listen(scribe, { after: 4 });
    await after.some(1);
    expect(after.got.map(({ place }) => place)).toEqual([5]);
    after.close();
  });

  test("what another program writes into the same log comes too", async () => {
    const stream = listen(lead, { after: 5 });
    await stream.status;
    const beside = await openFileKeep(join(house.folder, "log.leafward.db"));
    if (!beside.ok) throw new Error("It is open already.");
    await beside.value.append([scribe.example("noteWritten")]);
    await beside.value.close();
    await stream.some(1);
    expect(stream.got[0]?.place).toBe(6);
    stream.close();
  });

  test("it ends for a device that is shown out", async () => {
    const boxer = await house.enter("tablet-2", "boxer");
    const stream = listen(boxer, { after: 6 });
    await stream.status;
    await lead.ask("/api/devices/tablet-2", { method: "DELETE" });
    await scribe.send(scribe.example("noteWritten"));
    await stream.end();
    expect(stream.got).toEqual([]);
  });

  test("a device that knows more than the log, since a backup was put back, is told so and does not wait", async () => {
    expect(await listen(lead, { last: 1000 }).status).toBe(409);
    expect(await (await lead.ask("/api/events?after=1000")).json()).toMatchObject({
      problem: { code: "beyond-the-log" },
    });
  });

  test("nor does it pass over what stands there now, where others have written on since", async () => {
    const { events } = (await (await lead.ask("/api/events")).json()) as { events: Placed[] };
    const [, second] = events;
    if (!second) throw new Error("More than one was sent.");
    const mark = second.event.hash.slice(0, 12);
    const stream = listen(lead, { last: `2-${mark}` });
    await stream.some(1);
    expect(stream.got[0]?.place).toBe(3);
    stream.close();
    expect(await listen(lead, { last: `3-${mark}` }).status).toBe(409);
    expect((await lead.ask(`/api/events?after=1-${mark}`)).status).toBe(409);
    expect((await lead.ask("/api/state")).headers.get("leafward-place")).toBe(
      `${events.length}-${events.at(-1)?.event.hash.slice(0, 12)}`,
    );
  });

  test("one device has six streams and no more", async () => {
    const boxer = await house.enter("tablet-3", "boxer");
    const streams = Array.from({ length: 6 }, () => listen(boxer));
    for (const stream of streams) expect(await stream.status).toBe(200);
    expect(await listen(boxer).status).toBe(429);
    for (const stream of streams) stream.close();
  });
});
