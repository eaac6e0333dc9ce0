import { expect, test } from "vitest";
import { makeCampaign } from "../../../bench/make-campaign.ts";
import type { Campaign } from "../../../src/core/items/campaign.ts";
import { campaignOf } from "../../../src/core/log/campaign-of.ts";
import { eventsFrom } from "../../../src/core/log/events-from.ts";
import { fold } from "../../../src/core/log/fold.ts";
import { newPen } from "../../../src/core/log/pen.ts";
import { addDays } from "../../../src/core/units/day.ts";
import { sheetChanges, sheetsDevice } from "../../../src/edge/keep/sheet-changes.ts";
import { publishedRuleBook } from "../../../src/edge/rule-book.ts";

const book = publishedRuleBook();
const made = makeCampaign({ items: 5, people: 2, weeks: 20, seed: 1 });
const sheets = (onHand: number, day?: number): Campaign => ({
  ...{ ...made, deliveries: [], people: [] },
  stores: [
    { id: "masks", name: "masks", use: "k-mask", unit: "pc", onHand, pack: 20, leadDays: 42, route: "air" },
  ],
  ...(day === undefined
    ? {}
    : { stockCounts: [{ store: "masks", day: addDays(made.start, day), quantity: onHand, came: 0 }] }),
});
const first = eventsFrom(
  sheets(160, 0),
  newPen(made.name, sheetsDevice(new Uint8Array(4))),
  { role: "lead" },
  { now: Date.UTC(2026, 5, 1, 12), random: new Uint8Array(10).fill(9) },
  book.tests,
).events;
const kindsOf = (campaign: Campaign) => sheetChanges(first, campaign).entries.map(({ kind }) => kind);

test("the log tells when a store was counted as the sheets do", () => {
  const told = campaignOf(fold(first), addDays(made.start, 9));
  expect(told?.stockCounts).toEqual(sheets(160, 0).stockCounts);
});
test("a later count is written beside the one before it, though it found the same number", () => {
  expect(kindsOf(sheets(84, 19))).toEqual(["stockCounted"]);
  expect(kindsOf(sheets(160, 19))).toEqual(["stockCounted"]);
});
test("another number for the same day puts the count right", () => {
  expect(kindsOf(sheets(150, 0))).toEqual(["eventCorrected", "stockCounted"]);
});
test("without a day a count is the same on whatever morning the sheets are read", () => {
  expect(kindsOf(sheets(160))).toEqual([]);
});
