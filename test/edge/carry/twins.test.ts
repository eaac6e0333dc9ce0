import { describe, expect, test } from "vitest";
import { campaignOf } from "../../../src/core/log/campaign-of.ts";
import type { LogEvent } from "../../../src/core/log/event.ts";
import { fold } from "../../../src/core/log/fold.ts";
import { logOf } from "../../../src/core/log/merge.ts";
import { correctionOf } from "../../../src/core/log/subjects.ts";
import { takeBlocks } from "../../../src/edge/carry/take-blocks.ts";
import type { Keep } from "../../../src/edge/keep/keep.ts";
import { day, EXAMPLES } from "../../core/log/examples.ts";
import { deviceCalled, NOON, sealed } from "../../core/log/some-events.ts";
import { eventsOf } from "../keep/keep-claims.ts";
import { bytesOf, keepOf, read } from "./some-carries.ts";

const TODAY = day("2026-06-19");
const office = deviceCalled("office");
const write = (kind: keyof typeof EXAMPLES, more: object = {}): LogEvent =>
  office.write({ kind, payload: { ...JSON.parse(JSON.stringify(EXAMPLES[kind])), ...more } });
const base = [write("campaignFounded"), write("itemListed"), write("itemListed", { item: "SR-0032" })];
const one = write("findingRecorded");
/** The same id, and another item and answer. */
const other = sealed({ ...one, payload: { ...one.payload, item: "SR-0032", answer: "no" } });

const carry = async (from: Keep, to: Keep) =>
  takeBlocks(read(await bytesOf(from)), to, "a.carry", NOON + 86_400_000);
const told = async (keep: Keep) => campaignOf(fold(await eventsOf(keep)), TODAY);
const merged = campaignOf(fold(logOf([...base, one, other]).events), TODAY);

describe("two entries with one id, in two places", () => {
  test("count in neither, whichever place carries first, as when both logs are merged", async () => {
    for (const isFirst of [true, false]) {
      const [here, there] = [await keepOf(...base, one), await keepOf(...base, other)];
      const [from, to] = isFirst ? [here, there] : [there, here];
      expect(await carry(from, to)).toMatchObject({
        aside: [{ problem: { code: "event-twice", got: one.id } }],
      });
      await carry(to, from);
      expect(await told(here)).toEqual(merged);
      expect(await told(there)).toEqual(merged);
    }
    expect(merged?.findings).toEqual([]);
  });

  test("count in a third place too, which had one of them or none", async () => {
    const [here, there] = [await keepOf(...base, one), await keepOf(...base, other)];
    await carry(here, there);
    for (const third of [await keepOf(...base, one), await keepOf(...base, other), await keepOf()]) {
      await carry(there, third);
      expect(await told(third)).toEqual(merged);
    }
  });

  test("it is written once, however often they are carried, and people may say otherwise", async () => {
    const [here, there] = [await keepOf(...base, one), await keepOf(...base, other)];
    for (let n = 0; n < 3; n++) {
      await carry(here, there);
      await carry(there, here);
    }
    const corrections = (await eventsOf(here)).filter(({ kind }) => kind === "eventCorrected");
    expect(corrections).toHaveLength(1);
    const [correction] = corrections;
    if (!correction) throw new Error("One was just found.");
    await here.append([office.write({ kind: "eventCorrected", payload: { ...correctionOf(correction) } })]);
    await carry(there, here);
    expect((await told(here))?.findings).toMatchObject([{ item: "SR-0031", answer: "yes" }]);
  });
});
