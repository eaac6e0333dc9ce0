import fc from "fast-check";
import { expect, test } from "vitest";
import type { LogEvent } from "../../../src/core/log/event.ts";
import { verifyChain } from "../../../src/core/log/verify-chain.ts";
import { allEvents, type Keep } from "../../../src/edge/keep/keep.ts";
import { deviceCalled, notes, sealed } from "../../core/log/some-events.ts";

export async function eventsOf(keep: Keep, campaign = "saltmere"): Promise<LogEvent[]> {
  const events: LogEvent[] = [];
  for await (const { event } of allEvents(keep, campaign)) events.push(event);
  return events;
}

/** What is true of a keep, whatever it stands on.   @param fresh an empty keep */
export function keepClaims(fresh: () => Promise<Keep>): void {
  test("events come back as they were, in the order in which they came", async () => {
    const keep = await fresh();
    const [a, b, c] = notes("tablet-1", "one", "zwei, drei: \u0000 \u{1F4DC}", "three") as [
      LogEvent,
      LogEvent,
      LogEvent,
    ];
    expect(await keep.append([b, a])).toMatchObject({ added: 2, known: 0, refused: [], place: 2 });
    expect(await keep.append([c])).toMatchObject({ added: 1, place: 3 });
    expect(await eventsOf(keep)).toEqual([b, a, c]);
    expect((await keep.after("saltmere", 1, 1)).map(({ place }) => place)).toEqual([2]);
    expect(await keep.campaigns()).toEqual(["saltmere"]);
    await keep.close();
  });

  test("the same event twice is no harm, in one batch or in two", async () => {
    const keep = await fresh();
    const events = notes("tablet-1", "one", "two");
    expect(await keep.append([...events, ...events])).toMatchObject({ added: 2, known: 2, refused: [] });
    expect(await keep.append(events)).toMatchObject({ added: 0, known: 2, refused: [], place: 2 });
    await keep.close();
  });

  test("another event under a known id is refused, and nothing of its batch is taken", async () => {
    const keep = await fresh();
    const [one, two, three] = notes("tablet-1", "one", "two", "three") as [LogEvent, LogEvent, LogEvent];
    await keep.append([one]);
    const other = sealed({ ...one, payload: { item: "B-001", part: "", text: "other" } });
    const answer = await keep.append([two, other, three]);
    expect(answer).toMatchObject({ added: 0, refused: [{ code: "event-twice", got: one.id }], place: 1 });
    expect(await eventsOf(keep)).toEqual([one]);
    await keep.close();
  });

  test("who says how far they have read writes nothing where more has come since, of this campaign", async () => {
    const keep = await fresh();
    const [one, two, three] = notes("tablet-1", "one", "two", "three") as [LogEvent, LogEvent, LogEvent];
    const elsewhere = sealed({ ...one, campaign: "marabelle" });
    expect(await keep.append([one], 0)).toMatchObject({ added: 1, place: 1 });
    expect(await keep.append([elsewhere])).toMatchObject({ added: 1, place: 2 });
    expect(await keep.append([two], 0)).toMatchObject({
      added: 0,
      refused: [{ code: "log-went-on" }],
      place: 2,
    });
    const both = await Promise.all([keep.append([two], 1), keep.append([three], 1)]);
    expect(both.map(({ added }) => added).sort()).toEqual([0, 1]);
    await keep.close();
  });

  test("what is altered or does not fit its kind is refused; what a newer Leafward wrote is kept", async () => {
    const keep = await fresh();
    const writer = deviceCalled("tablet-1");
    const good = writer.write({ payload: { item: "B-001", part: "", text: "one" } });
    const unfit = writer.write({ kind: "noteWritten", payload: { text: 3 } });
    const newer = [
      writer.write({ kind: "leafPressed", payload: { hours: 3 } }),
      writer.write({ version: 9, payload: { text: 3 } }),
      sealed({ ...writer.write({ payload: { item: "B-001", part: "", text: "x" } }), ...{ stamp: "new" } }),
    ];
    expect((await keep.append([{ ...good, device: "tablet-2" }])).refused).toMatchObject([
      { code: "event-altered" },
    ]);
    expect((await keep.append([good, unfit])).refused).toMatchObject([
      { code: "event-unfit", got: "noteWritten.item" },
    ]);
    expect((await keep.append([{} as LogEvent])).refused).toMatchObject([{ code: "not-an-event" }]);
    expect(await keep.append([good, ...newer])).toMatchObject({ added: 4, refused: [] });
    expect(await eventsOf(keep)).toEqual([good, ...newer]);
    await keep.close();
  });

  test("a device that parted ways is kept and told; a gap that may still be filled is not", async () => {
    const keep = await fresh();
    const [one, two, three] = notes("tablet-1", "one", "two", "three") as [LogEvent, LogEvent, LogEvent];
    const branch = sealed({
      ...two,
      id: `${two.id.slice(0, -1)}Z`,
      payload: { item: "B-001", part: "", text: "!" },
    });
    expect((await keep.append([one, three])).noted).toEqual([]);
    expect((await keep.append([branch])).noted).toEqual([]);
    expect((await keep.append([two])).noted).toMatchObject([{ code: "chain-fork" }]);
    const torn = sealed({ ...three, id: `${three.id.slice(0, -1)}Z`, number: 4, before: one.hash });
    expect((await keep.append([torn])).noted).toMatchObject([{ code: "chain-torn", got: "number 4" }]);
    expect(verifyChain(await eventsOf(keep)).map(({ code }) => code)).toEqual(["chain-fork", "chain-torn"]);
    await keep.close();
  });

  test("many small wishes at once are each answered rightly, and together lose nothing", async () => {
    const keep = await fresh();
    const tablets = Array.from({ length: 20 }, (_, at) =>
      notes(`tablet-${at}`, ...Array.from({ length: 10 }, () => "x")),
    );
    const bad = { ...(tablets[0]?.[0] as LogEvent), number: 7 };
    const answers = await Promise.all([
      ...tablets.flatMap((events) => events.map((event) => keep.append([event]))),
      keep.append([bad]),
    ]);
    expect(answers.filter(({ added }) => added === 1)).toHaveLength(200);
    expect(answers.at(-1)).toMatchObject({ added: 0, refused: [{ code: "event-altered" }] });
    const placed = await keep.after("saltmere", 0, 1000);
    expect(placed.map(({ place }) => place)).toEqual(Array.from({ length: 200 }, (_, at) => at + 1));
    expect(verifyChain(placed.map(({ event }) => event))).toEqual([]);
    await keep.close();
  });

  test("a snapshot is a cache of bytes; the last one counts", async () => {
    const keep = await fresh();
    expect(await keep.snapshot("saltmere")).toBeNull();
    await keep.saveSnapshot("saltmere", 3, new Uint8Array([1, 2]));
    await keep.saveSnapshot("saltmere", 9, new Uint8Array([0, 255]));
    const found = await keep.snapshot("saltmere");
    expect(found?.place).toBe(9);
    expect([...(found?.bytes ?? [])]).toEqual([0, 255]);
    await keep.close();
  });

  test("in whatever order and batches events come, each is kept once", async () => {
    const all = ["a", "b", "c"].flatMap((device) => notes(device, "1", "2", "3", "4"));
    const shuffled = fc.shuffledSubarray(all, { minLength: all.length });
    await fc.assert(
      fc.asyncProperty(
        shuffled,
        fc.array(fc.integer({ min: 0, max: 11 }), { maxLength: 6 }),
        async (events, again) => {
          const keep = await fresh();
          const half = events.length / 2;
          const [first, second] = [events.slice(0, half), events.slice(half)];
          await keep.append([...first, ...again.map((at) => all[at] as LogEvent)]);
          await keep.append([...second, ...first]);
          const kept = await eventsOf(keep);
          await keep.close();
          expect(kept.map(({ id }) => id).sort()).toEqual(all.map(({ id }) => id).sort());
          expect(verifyChain(kept)).toEqual([]);
        },
      ),
      { numRuns: 15, seed: 7 },
    );
  });
}
