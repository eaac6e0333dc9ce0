import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { lackedBy, unbroken } from "../../../src/core/log/carry-reach.ts";
import type { LogEvent } from "../../../src/core/log/event.ts";
import { fold } from "../../../src/core/log/fold.ts";
import { snapshotOf } from "../../../src/core/log/snapshot.ts";
import { readCarry } from "../../../src/edge/carry/carry-file.ts";
import type { KnownDevice } from "../../../src/edge/carry/known-devices.ts";
import { takeBlocks } from "../../../src/edge/carry/take-blocks.ts";
import type { Keep } from "../../../src/edge/keep/keep.ts";
import { deviceCalled, notes, sealed } from "../../core/log/some-events.ts";
import { eventsOf } from "../keep/keep-claims.ts";
import { bytesOf, keepOf, knownBy, newKey, noise, read } from "./some-carries.ts";

/** Entries of a kind nobody knows, each so long that a block holds three. */
function longChain(device: string, length: number): LogEvent[] {
  const writer = deviceCalled(device);
  return Array.from({ length }, (_, at) =>
    writer.write({ kind: "leafPressed", payload: { how: noise(at, 90_000) } }),
  );
}

/** A device that went on from an old copy: two ways on from its third entry. */
function forkedChain(chain: readonly LogEvent[]): LogEvent[] {
  const [, , , fourth, fifth] = chain as [LogEvent, LogEvent, LogEvent, LogEvent, LogEvent];
  const other = sealed({ ...fourth, id: `${fourth.id.slice(0, -1)}Z`, payload: { how: "!" } });
  return [...chain, other, sealed({ ...fifth, id: `${fifth.id.slice(0, -1)}Z`, before: other.hash })];
}

const all = [
  ...longChain("tablet-1", 8),
  ...forkedChain(longChain("tablet-2", 6)),
  ...notes("tablet-3", "one", "two"),
];
const stateIn = async (keep: Keep): Promise<string> => snapshotOf(fold(await eventsOf(keep)));

interface Side {
  readonly keep: Keep;
  readonly key: ReturnType<typeof newKey>;
  other: KnownDevice | undefined;
}

/** Carries a file from one to the other, cut after some share of it; a file for somebody is what they may lack. */
async function carry(from: Side, to: Side, isFor: boolean, share = 1): Promise<void> {
  const bytes = await bytesOf(from.keep, from.key, isFor ? from.other : undefined);
  const file = readCarry(bytes.subarray(0, Math.ceil(bytes.length * share)), "a.carry");
  if (!file.ok) return;
  const { aside } = await takeBlocks(file.value, to.keep, "a.carry");
  expect(aside).toEqual([]);
  to.other = file.value.manifest;
}

describe("two logs that carry to each other", () => {
  test("in any order, torn or for each other, end as one", async () => {
    const some = fc.shuffledSubarray([...all.keys()]);
    const steps = fc.array(
      fc.record({ there: fc.boolean(), isFor: fc.boolean(), share: fc.constantFrom(0.3, 0.7, 1) }),
      { maxLength: 5 },
    );
    await fc.assert(
      fc.asyncProperty(some, some, steps, async (mine, yours, way) => {
        const [these, those] = [mine, yours].map((ats) => ats.map((at) => all[at] as LogEvent)) as [
          LogEvent[],
          LogEvent[],
        ];
        const here: Side = { keep: await keepOf(...these), key: newKey(), other: undefined };
        const there: Side = { keep: await keepOf(...those), key: newKey(), other: undefined };
        for (const step of way)
          await (step.there
            ? carry(here, there, step.isFor, step.share)
            : carry(there, here, step.isFor, step.share));
        await carry(here, there, true);
        await carry(there, here, true);
        const state = await stateIn(here.keep);
        expect(state).toBe(await stateIn(there.keep));
        expect(state).toBe(snapshotOf(fold([...these, ...those])));
      }),
      { numRuns: 12, seed: 3 },
    );
  });

  test("the file for somebody holds what they may lack, and no more", async () => {
    const chain = notes("tablet-1", ..."123456");
    const own = notes("tablet-3", "one");
    const theirs = await bytesOf(await keepOf(...chain.slice(0, 4)));
    const file = read(await bytesOf(await keepOf(...chain, ...own), newKey(), knownBy(theirs)));
    expect(file.manifest.all).toBe(false);
    expect(file.manifest.blocks).toMatchObject([
      {
        events: 3,
        holds: [
          { device: "tablet-1", from: 5, to: 6 },
          { device: "tablet-3", from: 1, to: 1 },
        ],
      },
    ]);
  });

  test("who lost what they were thought to have is told so", async () => {
    const chain = notes("tablet-1", ..."123456");
    const theirs = await bytesOf(await keepOf(...chain.slice(0, 4)));
    const bytes = await bytesOf(await keepOf(...chain), newKey(), knownBy(theirs));
    const restored = await keepOf(...chain.slice(0, 2));
    expect(await takeBlocks(read(bytes), restored, "a.carry")).toMatchObject({
      added: 2,
      problems: [{ code: "carry-entries-missing", got: "tablet-1", expected: "some of the numbers 3 to 6" }],
    });
  });
});

describe("how far a chain is certain", () => {
  const events = forkedChain(notes("tablet-2", ..."123456"));

  test("ends before a gap and before a fork", () => {
    expect([...unbroken(events)]).toEqual([["tablet-2", { number: 3, hash: events[2]?.hash }]]);
    const chain = notes("tablet-1", ..."12345");
    expect([...unbroken(chain.filter(({ number }) => number !== 4))]).toEqual([
      ["tablet-1", { number: 3, hash: chain[2]?.hash }],
    ]);
    expect([...unbroken(chain.slice(1))]).toEqual([]);
  });

  test("where the ways part everything of the device is sent", () => {
    const one = events.slice(0, 6);
    const other = [...events.slice(0, 3), ...events.slice(6)];
    expect(one.filter(lackedBy(unbroken(other), one))).toEqual(one);
    expect(events.filter(lackedBy(unbroken(events), events)).map(({ number }) => number)).toEqual([
      4, 5, 6, 4, 5,
    ]);
  });
});
