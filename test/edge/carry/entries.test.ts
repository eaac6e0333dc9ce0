import { describe, expect, test } from "vitest";
import type { LogEvent } from "../../../src/core/log/event.ts";
import { toldBeyond } from "../../../src/core/log/told-of-health.ts";
import { blocksOf } from "../../../src/edge/carry/blocks.ts";
import { carryBytes } from "../../../src/edge/carry/carry-file.ts";
import { sealManifest } from "../../../src/edge/carry/manifest.ts";
import { takeBlocks } from "../../../src/edge/carry/take-blocks.ts";
import { deviceCalled, NOON, notes, sealed } from "../../core/log/some-events.ts";
import { eventsOf } from "../keep/keep-claims.ts";
import { keepOf, newKey, read } from "./some-carries.ts";

/** A rightly signed file of whatever its writer put into it. */
async function signedFile(...given: readonly unknown[]): Promise<Buffer> {
  async function* events() {
    for (const event of given) yield event as LogEvent; // the point of these tests is that it is none
  }
  const blocks = [];
  for await (const block of blocksOf(events())) blocks.push(block);
  const manifest = {
    campaign: "saltmere",
    made: NOON,
    all: true,
    reach: [],
    blocks: blocks.map(({ row }) => row),
  };
  return carryBytes(
    sealManifest(manifest, newKey()),
    blocks.map(({ body }) => body),
  );
}

const writer = deviceCalled("tablet-1");
const note = (text: string): LogEvent => writer.write({ payload: { item: "B-001", part: "", text } });
const [good, better] = [note("one"), note("two")];

describe("an entry that cannot be taken is set aside by name, and the rest of its block comes in", () => {
  test.each<[string, unknown, string]>([
    ["altered after it was written", { ...note("three"), device: "tablet-9" }, "event-altered"],
    ["of another campaign", sealed({ ...note("four"), campaign: "marabelle" }), "carry-entry-of-another"],
    ["not fit for its kind", writer.write({ kind: "noteWritten", payload: { text: 3 } }), "event-unfit"],
    ["no entry at all", { device: "tablet-1", number: 4, and: "so on" }, "not-an-event"],
    [
      "another one under a known id",
      sealed({ ...good, payload: { item: "B-001", part: "", text: "!" } }),
      "event-twice",
    ],
  ])("%s", async (_, bad, code) => {
    const keep = await keepOf(good);
    const taken = await takeBlocks(read(await signedFile(good, bad, better)), keep, "a.carry");
    expect(taken).toMatchObject({ added: 1, aside: [{ line: JSON.stringify(bad), problem: { code } }] });
    expect((await eventsOf(keep)).filter(({ kind }) => kind === "noteWritten")).toEqual([good, better]);
  });

  test("but what a newer Leafward wrote is kept", async () => {
    const newer = [
      writer.write({ kind: "leafPressed", payload: { hours: 3 } }),
      writer.write({ version: 9, payload: { text: 3 } }),
      sealed({ ...note("x"), ...{ stamp: "new" } }),
    ];
    const keep = await keepOf();
    expect(await takeBlocks(read(await signedFile(...newer)), keep, "a.carry")).toMatchObject({
      added: 3,
      aside: [],
    });
    expect(await eventsOf(keep)).toEqual(newer);
  });
});

describe("nothing smuggles in why somebody does not do a work", () => {
  const REASON = "MQ is pregnant";
  const newer: readonly (readonly [string, () => LogEvent])[] = [
    ["in a kind not known here", () => writer.write({ kind: "leafPressed", payload: { text: REASON } })],
    ["in the name of such a kind", () => writer.write({ kind: "mqIsPregnant", payload: {} })],
    ["in a name of its fields", () => writer.write({ kind: "leafPressed", payload: { mqIsPregnant: 1 } })],
    ["in a newer version of a kind", () => writer.write({ version: 9, payload: { why: [{ so: REASON }] } })],
    ["beside the payload", () => sealed({ ...note("x"), ...{ reason: REASON } })],
    ["in the name of a field beside it", () => sealed({ ...note("x"), ...{ mq_is_pregnant: 1 } })],
    ["in who", () => sealed({ ...note("x"), who: { role: "scribe", ...{ reason: REASON } } })],
    ["in the clock", () => sealed({ ...note("x"), clock: { wall: NOON, counter: 0, ...{ why: REASON } } })],
  ];

  test.each(newer)(
    "%s: it is set aside, counted and told, and its words are kept nowhere",
    async (_, write) => {
      const bad = write();
      const keep = await keepOf();
      const taken = await takeBlocks(read(await signedFile(good, bad, better)), keep, "a.carry");
      expect(taken).toMatchObject({ added: 2, aside: [{ problem: { code: "health-words", got: bad.id } }] });
      expect(taken.aside[0]?.line).toBe(JSON.stringify({ id: bad.id, problem: "health-words" }));
      expect(JSON.stringify(taken)).not.toMatch(/pregnant/i);
    },
  );

  test.each<[string, unknown]>([
    ["altered", { ...note("x"), payload: { item: "B-001", part: "", text: REASON } }],
    ["of another campaign", sealed({ ...note(REASON), campaign: "marabelle" })],
    ["no entry", { device: "tablet-1", number: 4, and: [REASON] }],
    [
      "no entry, and deeper than one",
      { device: "tablet-1", number: 4, and: JSON.parse(`${"[".repeat(500)}"${REASON}"${"]".repeat(500)}`) },
    ],
  ])("nor in the lines set aside for another reason: %s", async (_, bad) => {
    const taken = await takeBlocks(read(await signedFile(good, bad, better)), await keepOf(), "a.carry");
    expect(taken.aside).toHaveLength(1);
    expect(JSON.stringify(taken.aside.map(({ line }) => line))).not.toMatch(/pregnant/i);
  });

  test("a campaign of a hospital's papers keeps what is newer all the same", async () => {
    const other = deviceCalled("tablet-3");
    const pressed = other.write({ kind: "leafPressed", payload: { hours: 3 } });
    const here = sealed({ ...pressed, campaign: "Harbour hospital" });
    expect(toldBeyond(here)).toBe(false);
  });
});

test("an entry that does not follow on the one before it is kept and told of, as on every way into the log", async () => {
  const [one, two, three] = notes("tablet-2", ..."123") as [LogEvent, LogEvent, LogEvent];
  const torn = sealed({ ...three, before: one.hash });
  const keep = await keepOf();
  expect(await takeBlocks(read(await signedFile(one, two, torn)), keep, "a.carry")).toMatchObject({
    added: 3,
    aside: [],
    problems: [{ code: "chain-torn", got: "number 3", expected: "tablet-2" }],
  });
});
