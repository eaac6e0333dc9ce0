import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Json } from "../../../src/core/log/canonical-json.ts";
import type { LogEvent } from "../../../src/core/log/event.ts";
import { fold } from "../../../src/core/log/fold.ts";
import { placeIn } from "../../../src/core/log/item-now.ts";
import type { Kind } from "../../../src/core/log/kinds.ts";
import { resume, snapshotOf } from "../../../src/core/log/snapshot.ts";
import { standingOf } from "../../../src/core/log/standing.ts";
import { eventsAbout, namesOn } from "../../../src/core/log/state.ts";
import { EXAMPLES } from "./examples.ts";
import { deviceCalled, NOON } from "./some-events.ts";

const plain = (value: object) => JSON.parse(JSON.stringify(value)) as { [key: string]: Json };
const KIND_NAMES = Object.keys(EXAMPLES) as Kind[];

/** A campaign written on three devices: which device writes what, when, and how far it looks back. */
const someEvents = fc
  .array(
    fc.record({
      device: fc.constantFrom("tablet-1", "tablet-2", "office"),
      kind: fc.constantFrom(...KIND_NAMES),
      item: fc.constantFrom("SR-0031", "SR-0032"),
      later: fc.integer({ min: -200_000, max: 200_000 }),
      looksBack: fc.nat(3),
      isStrange: fc.boolean(),
    }),
    { maxLength: 40 },
  )
  .map((steps) => {
    const devices = new Map<string, ReturnType<typeof deviceCalled>>();
    const written: LogEvent[] = [];
    for (const { device, kind, item, later, looksBack, isStrange } of steps) {
      const writer = devices.get(device) ?? deviceCalled(device);
      devices.set(device, writer);
      const example = plain(EXAMPLES[kind]);
      const payload = "item" in example ? { ...example, item } : example;
      const seen = written.slice(Math.max(0, written.length - looksBack)).map(({ id }) => id);
      written.push(
        writer.write({ kind, version: isStrange && later > 150_000 ? 9 : 1, payload, seen }, NOON + later),
      );
    }
    return written;
  });

const told = (events: readonly LogEvent[]): string => snapshotOf(fold(events));
const shuffled = (events: LogEvent[]) =>
  fc.tuple(
    fc.constant(events),
    fc.shuffledSubarray(events, { minLength: events.length }),
    fc.nat(events.length),
  );
const inTwoWays = someEvents.chain(shuffled);

describe("the state folded from the log", () => {
  test("is the same in whatever order the events come", () =>
    fc.assert(
      fc.property(inTwoWays, ([events, mixed]) => {
        expect(told(mixed)).toBe(told(events));
      }),
    ));

  test("is the same step by step as at once, and an event twice counts once", () =>
    fc.assert(
      fc.property(inTwoWays, ([events, mixed, cut]) => {
        const first = fold(mixed.slice(0, cut));
        const untouched = snapshotOf(first);
        expect(snapshotOf(fold([...mixed.slice(cut), ...mixed.slice(0, 3)], first))).toBe(told(events));
        expect(snapshotOf(first)).toBe(untouched);
      }),
    ));

  test("resumed from a snapshot and folded on is the same as folded anew", () =>
    fc.assert(
      fc.property(inTwoWays, ([events, mixed, cut]) => {
        const resumed = resume(told(mixed.slice(0, cut)));
        if (!resumed.ok) throw new Error("A snapshot just made could not be read.");
        expect(snapshotOf(resumed.value)).toBe(told(mixed.slice(0, cut)));
        const whole = fold(mixed.slice(cut), resumed.value);
        expect(snapshotOf(whole)).toBe(told(events));
        expect(eventsAbout(whole, "item:SR-0031")).toEqual(eventsAbout(fold(events), "item:SR-0031"));
        expect(whole.frontier).toEqual(fold(events).frontier);
      }),
    ));

  test("knows how far each device is here without a gap, and what lies beyond", () => {
    const writer = deviceCalled("tablet-1");
    const [a, b, c, d] = ["a", "b", "c", "d"].map((text) =>
      writer.write({ payload: { item: "B-001", part: "", text } }),
    ) as [LogEvent, LogEvent, LogEvent, LogEvent];
    const gapped = fold([a, d, c]);
    expect(gapped.frontier.get("tablet-1")).toMatchObject({ number: 1, hash: a.hash });
    expect([...(gapped.frontier.get("tablet-1")?.beyond.keys() ?? [])].sort()).toEqual([3, 4]);
    expect(fold([b], gapped).frontier.get("tablet-1")).toEqual({
      number: 4,
      hash: d.hash,
      beyond: new Map(),
    });
  });

  test("keeps and counts what it does not understand", () => {
    const writer = deviceCalled("newer");
    const events = [
      writer.write({ kind: "leafPressed", payload: { item: "B-001", kilos: 2 } }),
      writer.write({ kind: "leafPressed", payload: { item: "B-002", kilos: 3 } }),
      writer.write({ kind: "noteWritten", version: 2, payload: { item: "B-001" } }),
    ];
    const state = fold(events);
    expect(namesOn(state, "strange")).toEqual(["leafPressed 1", "noteWritten 2"]);
    expect(eventsAbout(state, "strange:leafPressed 1").map(({ payload }) => payload)).toEqual([
      { item: "B-001", kilos: 2 },
      { item: "B-002", kilos: 3 },
    ]);
    expect(namesOn(state, "item")).toEqual([]);
  });
});

describe("a snapshot", () => {
  const state = fold([deviceCalled("a").write({ payload: { item: "B\t1\n", part: "", text: "Ä\u2028" } })]);

  test("holds any letters a name can have", () => {
    const resumed = resume(snapshotOf(state));
    expect(resumed.ok && namesOn(resumed.value, "item")).toEqual(["B\t1\n"]);
    expect(resumed.ok && eventsAbout(resumed.value, "item:B\t1\n")).toEqual(
      eventsAbout(state, "item:B\t1\n"),
    );
  });

  test("that was cut short, or is of another version, is refused", () => {
    const text = snapshotOf(state);
    for (const unfit of [
      "",
      text.slice(0, -2),
      text.slice(0, 30),
      text.replace('"snapshot":1', '"snapshot":2'),
    ])
      expect(resume(unfit)).toMatchObject({ ok: false, problems: [{ code: "snapshot-unfit" }] });
  });

  test("with an event that is understood only now is refused, so that the log is folded again", () => {
    const strange = snapshotOf(
      fold([deviceCalled("a").write({ kind: "noteWritten", version: 9, payload: {} })]),
    );
    expect(resume(strange).ok).toBe(true);
    expect(resume(strange.replace("noteWritten 9", "noteWritten 1"))).toMatchObject({
      ok: false,
      problems: [{ code: "snapshot-unfit", expected: "noteWritten 1 is understood now" }],
    });
  });
});

describe("stamps that run ahead", () => {
  test("do not win over what was written by people who saw them", () => {
    const ahead = deviceCalled("ahead", NOON + 2 * 365 * 86_400_000);
    const right = deviceCalled("right");
    const move = plain(EXAMPLES.itemMoved);
    const first = ahead.write({ kind: "itemMoved", payload: { ...move, room: "Ward" } });
    const then = right.write({ kind: "itemMoved", payload: { ...move, room: "Bench" }, seen: [first.id] });
    const events = eventsAbout(fold([then, first]), "item:SR-0031");
    expect(events.map(({ id }) => id)).toEqual([then.id, first.id]);
    expect(placeOf([first, then])).toBe("Bench");
    expect(placeOf([then, first])).toBe("Bench");
  });
});

function placeOf(events: readonly LogEvent[]): string | undefined {
  return placeIn(standingOf(eventsAbout(fold(events), "item:SR-0031")))?.room;
}
