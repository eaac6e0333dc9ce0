import { describe, expect, test } from "vitest";
import type { Limits } from "../../../src/core/items/campaign.ts";
import type { NearMould, Worn } from "../../../src/core/log/minutes-near-mould.ts";
import { mayWorkNearMould, mouldAccount } from "../../../src/core/log/mould-account.ts";
import { addDays } from "../../../src/core/units/day.ts";
import { day, EXAMPLES } from "./examples.ts";

// Wear 75 min, break 30 min of a filtering mask without valve: DGUV 112-190, current table (data/norms.json p-ffp-novalve).
// 180 min a day, 3 days a week, 2 in a row: common practice, no source (the same file).
const limits: Limits = EXAMPLES.campaignFounded.limits;
const thursday = day("2026-06-18");
const NEAR: NearMould = { days: new Map(), worn: [] };
const account = (more: Partial<Parameters<typeof mouldAccount>[0]> = {}) =>
  mouldAccount({ near: NEAR, limits, day: thursday, minute: 720, runsSince: null, mayMould: true, ...more });
const spell = (from: number | null, minutes: number): Worn => ({
  day: thursday,
  from,
  minutes,
  maskMinutes: minutes,
});
const daysNear = (...back: readonly number[]): NearMould => ({
  days: new Map(back.map((each) => [addDays(thursday, -each), 100])),
  worn: [],
});
const wearing = (...worn: readonly Worn[]): NearMould => ({
  days: new Map([[thursday, worn.reduce((sum, { minutes }) => sum + minutes, 0)]]),
  worn,
});

describe("the limits of work near mould", () => {
  test("nothing written, nothing stands against it", () => {
    expect(account().stop).toBeNull();
    expect(account({ near: undefined }).leftToday).toBe(180);
  });

  test("what runs now counts as it runs", () => {
    const now = account({ runsSince: 700 });
    expect([now.today, now.leftToday, now.maskWorn, now.maskLeft]).toEqual([20, 160, 20, 55]);
  });

  test("180 minutes are a day's worth", () => {
    const broken = wearing(spell(420, 75), spell(525, 75), spell(630, 30));
    expect(account({ near: broken, minute: 700 }).stop).toBe("day");
  });

  test("the fourth day of a week is clean work", () => {
    expect(account({ near: daysNear(1, 2, 3) }).stop).toBe("week");
    expect(account({ near: daysNear(2, 3), minute: 500 }).stop).toBeNull();
  });

  test("last week's days do not count for this week, and do for days in a row", () => {
    const monday = day("2026-06-15");
    const near: NearMould = {
      days: new Map([1, 2, 3].map((back) => [addDays(monday, -back), 60])),
      worn: [],
    };
    const now = account({ near, day: monday });
    expect([now.daysThisWeek, now.stop]).toEqual([0, "row"]);
  });

  test("after two days in a row one is off", () => {
    expect(account({ near: daysNear(1, 2) }).stop).toBe("row");
    expect(account({ near: daysNear(2) }).stop).toBeNull();
  });

  test("75 minutes in the mask, then 30 without it", () => {
    const near = wearing(spell(600, 75));
    expect(account({ near, minute: 680 })).toMatchObject({ stop: "mask", breakUntil: 705 });
    expect(account({ near, minute: 705 })).toMatchObject({ stop: null, maskWorn: 0, breakUntil: null });
  });

  test("a pause shorter than the break does not begin a new spell", () => {
    expect(account({ near: wearing(spell(600, 40), spell(660, 20)), minute: 690 }).maskWorn).toBe(60);
    expect(account({ near: wearing(spell(600, 40), spell(670, 20)), minute: 690 }).maskWorn).toBe(20);
  });

  test("work without a time is taken to follow at once, and nobody knows when its mask came off", () => {
    expect(account({ near: wearing(spell(600, 60), spell(null, 20)), minute: 690 })).toMatchObject({
      ...{ stop: "mask", maskWorn: 80, breakUntil: 710 },
    });
    expect(account({ near: wearing(spell(null, 80)), minute: 1000 })).toMatchObject({
      ...{ stop: "mask", breakUntil: null },
    });
  });

  test("a hood that asks for no break has none", () => {
    const hood = { ...limits, maskMinutes: { value: 0, source: "powered hood" } };
    expect(account({ near: wearing(spell(500, 150)), limits: hood }).maskLeft).toBeNull();
  });

  test("who is not listed for it, or on clean work these days, is on clean work", () => {
    const person = { ...EXAMPLES.personListed, code: "MQ" };
    const week = { ...EXAMPLES.cleanWorkThisWeek, who: "MQ", what: "clean work" as const };
    expect(mayWorkNearMould(person, [], thursday)).toBe(true);
    expect(mayWorkNearMould(person, [week], week.from)).toBe(false);
    expect(mayWorkNearMould({ ...person, mouldWork: false }, [], thursday)).toBe(false);
    expect(mayWorkNearMould(undefined, [], thursday)).toBe(false);
    expect(account({ mayMould: false }).stop).toBe("clean work");
  });
});
