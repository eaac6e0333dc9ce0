import { createHash } from "node:crypto";
import { readdirSync, readFileSync, statSync } from "node:fs";
import { request } from "node:http";
import { join } from "node:path";
import { beforeAll, describe, expect, test } from "vitest";
import { fold } from "../../../src/core/log/fold.ts";
import { resume, snapshotOf } from "../../../src/core/log/snapshot.ts";
import { namesOn } from "../../../src/core/log/state.ts";
import { allEvents } from "../../../src/edge/keep/keep.ts";
import { openFileKeep } from "../../../src/edge/keep/open-keep.ts";
import { type ADevice, type AHouse, aDevice, aHouse, CAMPAIGN } from "./a-house.ts";

let house: AHouse;
let lead: ADevice;
let scribe: ADevice;
beforeAll(async () => {
  house = await aHouse();
  lead = await house.enter("laptop", "lead");
  scribe = await house.enter("tablet-1", "scribe");
});

const kept = async () => {
  const all = [];
  for await (const { event } of allEvents(house.keep, CAMPAIGN)) all.push(event);
  return all;
};

const placeIn = async (who: ADevice): Promise<number> =>
  Number.parseInt((await who.ask("/api/state")).headers.get("leafward-place") ?? "", 10);

describe("entries are kept", () => {
  test("what is answered as kept is in the file before the answer; sent twice it is no harm", async () => {
    const events = [scribe.example("noteWritten"), scribe.example("findingRecorded")];
    const sent = await scribe.send(...events);
    expect(sent.status).toBe(200);
    expect(sent.answers.map(({ id, answer }) => [id, answer])).toEqual(events.map(({ id }) => [id, "kept"]));
    const beside = await openFileKeep(join(house.folder, "log.leafward.db"), "read");
    expect(beside.ok && (await beside.value.after(CAMPAIGN, 0, 10)).map(({ event }) => event)).toEqual(
      events,
    );
    if (beside.ok) await beside.value.close();
    expect(await scribe.send(...events)).toMatchObject({ status: 200, place: sent.place });
  });

  test("where one of a batch is refused nothing of it is kept, and each says how it fares", async () => {
    const before = (await kept()).length;
    const good = scribe.example("noteWritten");
    const sent = await scribe.send(good, scribe.example("itemReleased"), { not: "an entry" });
    expect(sent.status).toBe(422);
    expect(sent.answers).toMatchObject([
      { id: good.id, answer: "waits" },
      { answer: "refused", problem: { code: "not-your-role" } },
      { id: null, answer: "refused", problem: { code: "not-an-event" } },
    ]);
    expect((await kept()).length).toBe(before);
    expect((await scribe.send(good)).status).toBe(200);
  });

  test("another entry under a known id is refused as such", async () => {
    const first = scribe.example("noteWritten");
    await scribe.send(first);
    const other = scribe.example(
      "noteWritten",
      { item: "SR-0031", part: "", text: "Other." },
      { id: first.id },
    );
    expect(await scribe.send(other)).toMatchObject({
      status: 409,
      answers: [{ id: first.id, answer: "refused", problem: { code: "event-twice" } }],
    });
  });

  test("a log that cannot be written says so, with what to do, and gives back what it has", async () => {
    const reading = await openFileKeep(join(house.folder, "log.leafward.db"), "read");
    if (!reading.ok) throw new Error("It can be read.");
    const shut = await aHouse({ keep: reading.value });
    const own = await shut.enter("laptop", "lead");
    expect(await own.send(own.example("noteWritten"))).toMatchObject({
      status: 503,
      answers: [{ answer: "refused", problem: { code: "keep-read-only" } }],
    });
    expect(await placeIn(own)).toBe((await kept()).length);
    await shut.server.close();
    await reading.value.close();
  });

  test("an altered entry is refused", async () => {
    const event = {
      ...scribe.example("noteWritten"),
      payload: { item: "SR-0031", part: "", text: "Other." },
    };
    expect((await scribe.send(event)).answers[0]?.problem?.code).toBe("event-altered");
  });

  test("an entry of another campaign, device, role or person is refused", async () => {
    const own = await house.enter("tablet-mq", "cleaner", "MQ");
    expect((await own.send(own.example("noteWritten"))).status).toBe(200);
    const code = async (more: object) =>
      (await own.send(own.example("noteWritten", undefined, more))).answers[0]?.problem?.code;
    expect(await code({ campaign: "marabelle" })).toBe("other-campaign");
    expect(await code({ device: "tablet-1" })).toBe("not-your-entry");
    expect(await code({ who: { role: "lead", person: "MQ" } })).toBe("not-your-entry");
    expect(await code({ who: { role: "cleaner", person: "ID" } })).toBe("not-your-entry");
  });

  test("a shared device may name any writer", async () => {
    const event = scribe.example("noteWritten", undefined, { who: { role: "scribe", person: "ID" } });
    expect((await scribe.send(event)).status).toBe(200);
  });

  test("a correction is of the own device's entry; the lead corrects any", async () => {
    const [mine, others] = [scribe.example("noteWritten"), lead.example("noteWritten")];
    await scribe.send(mine);
    await lead.send(others);
    const about = ["item:SR-0031"];
    const correct = (who: ADevice, event: string, at = about) =>
      who.send(who.example("eventCorrected", { event, about: at }));
    expect((await correct(scribe, mine.id)).status).toBe(200);
    expect((await correct(scribe, others.id)).answers[0]?.problem?.code).toBe("not-your-role");
    expect((await correct(scribe, mine.id, ["item:elsewhere"])).status, "not found there").toBe(422);
    expect((await correct(lead, mine.id)).status).toBe(200);
    const both = [scribe.example("noteWritten")];
    const [fresh] = both;
    both.push(scribe.example("eventCorrected", { event: fresh?.id, about }));
    expect((await scribe.send(...both)).status, "in one batch").toBe(200);
  });
});

describe("entries are given back", () => {
  test("after a place, in pages", async () => {
    const all = await kept();
    const first = (await (await scribe.ask("/api/events?most=3")).json()) as {
      events: { place: number }[];
      more: boolean;
    };
    expect(first.more).toBe(true);
    const rest = await (await scribe.ask(`/api/events?after=${first.events[2]?.place}`)).json();
    const { events, more } = rest as { events: { event: unknown }[]; more: boolean };
    expect(more).toBe(false);
    expect(events.map(({ event }) => event)).toEqual(all.slice(3));
  });

  test("the state is the fold of everything kept, and says up to which place", async () => {
    const answered = await scribe.ask("/api/state");
    const all = await kept();
    expect(await placeIn(scribe)).toBe(all.length);
    expect(await answered.text()).toBe(snapshotOf(fold(all)));
    const again = await scribe.ask("/api/state", {
      headers: { "if-none-match": answered.headers.get("etag") ?? "" },
    });
    expect(again.status).toBe(304);
    await scribe.send(scribe.example("noteWritten"));
    expect(await placeIn(scribe)).toBe(all.length + 1);
  });

  test("who comes from outside is shown neither people nor stores", async () => {
    await lead.send(lead.example("personListed"), lead.example("personAway"), lead.example("storeListed"));
    const shelves = async (who: ADevice) => {
      const state = resume(await (await who.ask("/api/state")).text());
      if (!state.ok) throw new Error("It was just written.");
      return (["person", "store", "item"] as const).map((shelf) => namesOn(state.value, shelf).length > 0);
    };
    expect(await shelves(await house.enter("far-away", "conservator"))).toEqual([false, false, true]);
    expect(await shelves(await house.enter("eye", "custodian's person"))).toEqual([false, false, true]);
    expect(await shelves(scribe)).toEqual([true, true, true]);
  });
});

describe("pictures", () => {
  const JPEG = Buffer.concat([Buffer.from("ffd8ffe000104a464946", "hex"), Buffer.alloc(5000, 7)]);
  const send = (bytes: Uint8Array<ArrayBuffer>, name = "fol-001r.jpg", who = lead) => {
    const form = new FormData();
    form.append("picture", new Blob([bytes]), name);
    return who.ask("/api/pictures", { method: "POST", body: form });
  };

  test("come back as they were, under their SHA-256, whatever they were called", async () => {
    const answered = await send(new Uint8Array(JPEG), "../../MQ is unwell.exe");
    const picture = createHash("sha256").update(JPEG).digest("hex");
    expect(await answered.json()).toEqual({ picture, type: "image/jpeg", bytes: JPEG.length });
    expect(readdirSync(join(house.folder, "pictures"))).toEqual([`${picture}.jpg`]);
    const back = await scribe.ask(`/api/pictures/${picture}`);
    expect(back.headers.get("content-type")).toBe("image/jpeg");
    expect(Buffer.from(await back.arrayBuffer()).equals(JPEG)).toBe(true);
    expect((await send(new Uint8Array(JPEG))).status).toBe(200);
  });

  test.each([
    ["a page", "<html><script>", "a.jpg"],
    ["a drawing with scripts in it", "<svg xmlns='http://www.w3.org/2000/svg'/>", "a.png"],
    ["nothing", "", "a.jpg"],
  ])("%s is none, and nothing of it stays", async (_what, text, name) => {
    const answered = await send(new TextEncoder().encode(text) as Uint8Array<ArrayBuffer>, name);
    expect(answered.status).toBe(415);
    expect(readdirSync(join(house.folder, "pictures")).filter((each) => !each.endsWith(".jpg"))).toEqual([]);
  });

  test("more than 120 MB is too large, and nothing of it stays", async () => {
    const large = new Uint8Array(120 * 1024 * 1024 + 1);
    large.set(JPEG);
    expect((await send(large)).status).toBe(413);
    expect(readdirSync(join(house.folder, "pictures"))).toHaveLength(1);
  });

  test("a form that breaks off leaves nothing", async () => {
    const { hostname, port } = new URL(house.server.address);
    const form = `--b\r\nContent-Disposition: form-data; name="p"; filename="a.jpg"\r\n\r\n${"\u00ff".repeat(90_000)}`;
    const headers = { "content-type": "multipart/form-data; boundary=b", cookie: lead.own.cookie };
    const part = await lead.ask("/api/pictures", { method: "POST", headers, body: form });
    expect(part.status).toBe(400);
    await new Promise<void>((resolve) => {
      const sending = request({ hostname, port, path: "/api/pictures", method: "POST", headers });
      sending.on("error", () => resolve());
      sending.write(form);
      setTimeout(() => sending.destroy(), 100);
    });
    const left = () => readdirSync(join(house.folder, "pictures")).filter((each) => each.endsWith(".coming"));
    for (let n = 0; n < 50 && left().length > 0; n++) await new Promise((next) => setTimeout(next, 20));
    expect(left()).toEqual([]);
  });

  test("a body that is no form, and a picture nobody sent, are said", async () => {
    expect((await lead.post("/api/pictures", {})).status).toBe(400);
    expect((await lead.ask(`/api/pictures/${"0".repeat(64)}`)).status).toBe(404);
    expect((await lead.ask("/api/pictures/..%2flog.leafward.db")).status).toBe(400);
  });
});

describe("devices are let in", () => {
  const MINUTE = 60_000;
  const codeFor = async (device: string) => {
    const asked = await lead.post("/api/pairings", { device, role: "boxer" });
    return ((await asked.json()) as { code: string }).code;
  };

  test("by a code of eight letters without look-alikes, in whatever way it is typed, once", async () => {
    const code = await codeFor("tablet-2");
    expect(code).toMatch(/^[ACDEFHJKMNPRTWXY]{4}-[ACDEFHJKMNPRTWXY]{4}$/);
    const one = aDevice(house.server, "tablet-2", "boxer");
    const answered = await one.pair(` ${code.toLowerCase().replace("-", " ")} `);
    expect(await answered.json()).toEqual({
      device: "tablet-2",
      role: "boxer",
      person: null,
      campaign: CAMPAIGN,
    });
    expect((await one.ask("/api/me")).status).toBe(200);
    expect((await aDevice(house.server, "tablet-3", "boxer").pair(code)).status).toBe(401);
  });

  test("the cookie is out of reach of scripts and of other sites", async () => {
    const answered = await aDevice(house.server, "tablet-4", "boxer").pair(await codeFor("tablet-4"));
    expect(answered.headers.getSetCookie()[0]).toMatch(/; HttpOnly; SameSite=Strict$/);
  });

  test("not after ten minutes", async () => {
    const late = await codeFor("tablet-5");
    house.clock.now += 10 * MINUTE;
    expect((await aDevice(house.server, "tablet-5", "boxer").pair(late)).status).toBe(401);
  });

  test("not while their address has tried too many wrong codes; the code itself stays good", async () => {
    const tried = await codeFor("tablet-5");
    const guesser = aDevice(house.server, "tablet-5", "boxer");
    for (let n = 0; n < 6; n++) expect((await guesser.pair("AAAAAAAA")).status).toBe(401);
    const barred = await guesser.pair(tried);
    expect(barred.status).toBe(429);
    expect(await barred.json()).toMatchObject({ problem: { code: "too-many-codes" } });
    await codeFor("tablet-7"); // the lead makes another: all may try again
    expect((await guesser.pair(tried)).status).toBe(200);
    house.clock.now += MINUTE;
  });

  test("until they are away for a fortnight, half a year is over, they leave, or the lead shows them out", async () => {
    const DAY = 24 * 60 * MINUTE;
    const me = async (who: ADevice) => (await who.ask("/api/me")).status;
    const [a, b, c] = [
      await house.enter("a", "boxer"),
      await house.enter("b", "boxer"),
      await house.enter("c", "boxer"),
    ];
    expect((await lead.ask("/api/devices/a", { method: "DELETE" })).status).toBe(204);
    expect((await lead.ask("/api/devices/a", { method: "DELETE" })).status).toBe(404);
    expect((await b.ask("/api/leave", { method: "POST" })).status).toBe(204);
    expect([await me(a), await me(b), await me(c)]).toEqual([401, 401, 200]);
    const began = house.clock.now;
    house.clock.now += 13 * DAY;
    expect(await me(c)).toBe(200);
    house.clock.now += 13 * DAY;
    expect(await me(c), "the visit before counted").toBe(200);
    house.clock.now += 15 * DAY;
    expect(await me(c)).toBe(401);
    house.clock.now = began;
    const d = await house.enter("d", "boxer");
    for (let n = 0; n < 18; n++) {
      house.clock.now += 10 * DAY;
      expect(await me(d)).toBe(200);
    }
    house.clock.now += DAY;
    expect(await me(d)).toBe(401);
    house.clock.now = began;
  });

  test("a device that comes in again takes the place of the one before", async () => {
    const before = await house.enter("tablet-6", "cleaner");
    const after = await house.enter("tablet-6", "boxer");
    expect((await before.ask("/api/me")).status).toBe(401);
    expect(await (await after.ask("/api/me")).json()).toMatchObject({ role: "boxer" });
  });

  test("the token itself is written nowhere, and only its owner can read the file", async () => {
    const folder = join(house.folder, "server");
    const token = lead.own.cookie.split("=")[1] ?? "";
    expect(token.length).toBeGreaterThan(40);
    for (const name of readdirSync(folder)) {
      expect(readFileSync(join(folder, name)).includes(token)).toBe(false);
      if (process.platform !== "win32") expect(statSync(join(folder, name)).mode & 0o077).toBe(0);
    }
  });
});

describe("what is refused is noted", () => {
  test("who, what, when and how often; nothing of the content", async () => {
    await scribe.send(scribe.example("planAccepted"));
    await scribe.send(scribe.example("planAccepted"));
    await scribe.send(scribe.example("noteWritten", { item: "SR-0031", part: "", text: "MQ is unwell." }));
    await scribe.send(scribe.write("mqIsUnwell", { text: "so" }));
    await scribe.ask("/api/devices");
    await aDevice(house.server, "x", "lead").ask("/api/state?unwell=1");
    const list = (await (await lead.ask("/api/refused")).json()) as object[];
    const at = new Date(Math.floor(house.clock.now / 60_000) * 60_000).toISOString();
    expect(list.slice(0, 5)).toEqual([
      { who: "nobody let in", what: "GET /api/state", code: "not-let-in", at, times: 1 },
      { who: "tablet-1", what: "GET /api/devices", code: "not-your-role", at, times: 1 },
      { who: "tablet-1", what: "POST /api/events of an unknown kind", code: "unknown-here", at, times: 1 },
      { who: "tablet-1", what: "POST /api/events noteWritten", code: "health-words", at, times: 1 },
      { who: "tablet-1", what: "POST /api/events planAccepted", code: "not-your-role", at, times: 2 },
    ]);
  });
});
