import { describe, expect, test } from "vitest";
import type { Forbid } from "../../../src/core/care/care.ts";
import { sayHold } from "../../../src/core/say/rooms/ward-holds.ts";
import { type BagState, bagStateFromLog } from "../../../src/core/ward/bag-state.ts";
import { type DaysWait, leaveWard, type StayFacts } from "../../../src/core/ward/leave-ward.ts";

const ban = (until: string, rule = "Q06"): Forbid => ({
  action: "release_from_quarantine",
  until: [until],
  details: {},
  reasons: [
    {
      rule,
      tier: 2,
      text: "Not yet.",
      why: "",
      source: "CP",
      sourceStatus: "common practice",
      fromUnsure: false,
    },
  ],
});
const bagWith = (...percents: readonly number[]): BagState =>
  bagStateFromLog(
    {
      material: "paper",
      events: [{ hours: 0, what: "closed" }],
      readings: percents.map((percent, at) => ({ hours: 1 + at * 50, relHum: percent / 100 })),
      asks48HoursBelow50: false,
    },
    200,
  );
const leave = (more: Partial<StayFacts>) =>
  leaveWard({
    ...{ bans: [], bag: null, waits: [], isInFreezer: false, hoursSinceFreezer: null, hasTestsOpen: false },
    ...more,
  });
const freezing = (gone: number): DaysWait => ({ kind: "freezing", gone, least: 7, most: 14 });

describe("an item leaves the Ward", () => {
  test("by readings where it was damp or mouldy, never without a bag", () => {
    expect(leave({ bans: [ban("dry_shown")], bag: bagWith(51, 52) }).isEarned).toBe(true);
    expect(leave({ bans: [ban("dry_shown")], bag: bagWith(51, 57) }).isEarned).toBe(false);
    expect(leave({ bans: [ban("dry_shown")] }).holds).toEqual([{ kind: "no bag" }]);
  });
  test("not by readings alone while another rule bans it, or a must-ask test has no answer", () => {
    const dry = { bans: [ban("dry_shown"), ban("conservator", "H02")], bag: bagWith(51, 52) };
    expect(leave(dry).holds.map(sayHold)).toEqual(["Not yet. Rule H02."]);
    expect(leave({ bag: bagWith(51, 52), hasTestsOpen: true }).isEarned).toBe(false);
  });
  test("after freezing only when the days are over, it is out, and a day of warming up sealed lies behind", () => {
    // Rules I03, I04 and norm d-freeze20: Conserve O Gram 3/6, as the tables of the project quote it.
    const bans = [ban("insects_gone", "I10")];
    const held = (more: Partial<StayFacts>) => leave({ bans, ...more }).holds.map(({ kind }) => kind);
    expect(held({ waits: [freezing(6)], isInFreezer: true })).toEqual(["in the freezer", "days"]);
    expect(held({ waits: [freezing(7)], isInFreezer: true })).toEqual(["in the freezer"]);
    expect(held({ waits: [freezing(7)], hoursSinceFreezer: 23 })).toEqual(["warming up"]);
    expect(held({ waits: [freezing(7)], hoursSinceFreezer: 24 })).toEqual([]);
  });
  test("frozen and dry are two things: one does not stand for the other", () => {
    const bans = [ban("insects_gone", "I10"), ban("dry_shown")];
    expect(leave({ bans, waits: [freezing(9)], hoursSinceFreezer: 40, bag: bagWith(58) }).isEarned).toBe(
      false,
    );
  });
});
