import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { inOrder, type LogEvent } from "../../../src/core/log/event.ts";
import { damageIn, EMPTY_LOG, logOf, mergeLogs } from "../../../src/core/log/merge.ts";
import { verifyChain } from "../../../src/core/log/verify-chain.ts";
import { deviceCalled, notes, sealed } from "./some-events.ts";

const one = notes("tablet-1", "a", "b", "c", "d");
const two = notes("tablet-2", "e", "f", "g");
/** The third of tablet 1 under the same id, saying something else. */
const other = sealed({ ...(one[2] as LogEvent), payload: { item: "B-002", part: "", text: "x" } });
const pool = [...one, ...two, other];
const someLog = fc
  .subarray(pool)
  .chain((some) => fc.shuffledSubarray(some, { minLength: some.length }))
  .map(logOf);

describe("merging logs", () => {
  test("the order of merging makes no difference, nor does merging twice", () =>
    fc.assert(
      fc.property(someLog, someLog, someLog, (a, b, c) => {
        expect(mergeLogs(a, b)).toEqual(mergeLogs(b, a));
        expect(mergeLogs(mergeLogs(a, b), c)).toEqual(mergeLogs(a, mergeLogs(b, c)));
        expect(mergeLogs(a, a)).toEqual(a);
        expect(mergeLogs(a, EMPTY_LOG)).toEqual(a);
      }),
    ));

  test("nothing is lost, and the events stand by clock, then id", () => {
    const { events, aside } = mergeLogs(logOf(one), logOf(two));
    expect(events).toHaveLength(7);
    expect(aside).toEqual([]);
    expect([...events].sort(inOrder)).toEqual(events);
  });

  test("two entries under one id are damage: both set aside, said once", () => {
    const log = mergeLogs(logOf(one), logOf([other]));
    expect(log.events).toHaveLength(3);
    expect(log.aside).toHaveLength(2);
    expect(damageIn(log)).toMatchObject([{ code: "event-twice", got: other.id, expected: "tablet-1" }]);
  });
});

describe("the chain of a device", () => {
  test("holds for whole logs of several devices, in any order", () =>
    fc.assert(
      fc.property(fc.shuffledSubarray([...one, ...two], { minLength: 7 }), (events) => {
        expect(verifyChain(events)).toEqual([]);
      }),
    ));

  test("names how many are missing, and before which", () => {
    expect(verifyChain([one[0], one[3], ...two] as LogEvent[])).toMatchObject([
      { code: "chain-gap", got: "2", expected: "number 4 of tablet-1" },
    ]);
    expect(verifyChain(one.slice(2))).toMatchObject([{ code: "chain-gap", got: "2" }]);
  });

  test("names an entry that was altered", () => {
    const altered = { ...(one[1] as LogEvent), payload: { item: "B-009", part: "", text: "b" } };
    expect(verifyChain([one[0], altered, one[2], one[3]] as LogEvent[])).toMatchObject([
      { code: "event-altered", got: altered.id },
    ]);
  });

  test("names an entry that was exchanged for another with a right hash", () => {
    const exchanged = sealed({ ...(one[1] as LogEvent), payload: { item: "B-009", part: "", text: "b" } });
    expect(verifyChain([one[0], exchanged, one[2]] as LogEvent[])).toMatchObject([
      { code: "chain-torn", got: "number 3", expected: "tablet-1" },
    ]);
  });

  test("names a fork: a device that went on from an old copy", () => {
    const again = deviceCalled("tablet-1");
    const copy = ["a", "b", "z"].map((text) => again.write({ payload: { item: "B-001", part: "", text } }));
    expect(copy[1]).toEqual(one[1]);
    expect(copy[2]?.id).toBe(one[2]?.id); // same time, same dice in this test; a real device rolls anew
    const forked = sealed({ ...(copy[2] as LogEvent), id: "01KT26DM80QQQQQQQQQQQQQQQQ" });
    expect(verifyChain([...one, forked])).toMatchObject([
      { code: "chain-fork", got: "2 entries", expected: "number 3 of tablet-1" },
    ]);
  });
});
