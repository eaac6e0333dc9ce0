import { describe, expect, test } from "vitest";
import type { Station } from "../../../src/core/items/campaign.ts";
import type { LogEvent } from "../../../src/core/log/event.ts";
import { minutesNearMould } from "../../../src/core/log/minutes-near-mould.ts";
import { recentItems } from "../../../src/core/log/recent-items.ts";
import { stateWith, tablet } from "./a-campaign.ts";
import { EXAMPLES } from "./examples.ts";

const { actDone, itemReleased, sessionWorked, stationWiped } = EXAMPLES;
const stations: Station[] = [
  { id: "mould-bench", kind: "mould bench", places: 2, minutesADay: 420 },
  { id: "camera", kind: "camera", places: 1, minutesADay: 540 },
];
const nearOf = (...events: readonly LogEvent[]) => {
  const state = stateWith(...events);
  return minutesNearMould(state, stations, recentItems(state, 0)).get("MQ");
};
const { day } = actDone;

describe("a person's minutes near mould", () => {
  test("a spell and the act it was written with are the same minutes", () => {
    const bench = tablet("bench");
    const near = nearOf(bench.write("sessionWorked", sessionWorked), bench.write("actDone", actDone));
    expect(near?.days.get(day)).toBe(55);
  });

  test("an act that nobody wrote a spell for counts by itself: the release look, beside the cleaning", () => {
    const bench = tablet("bench");
    const near = nearOf(
      bench.write("sessionWorked", sessionWorked),
      bench.write("actDone", actDone),
      bench.write("itemReleased", { ...itemReleased, day }),
    );
    expect(near?.days.get(day)).toBe(55 + 12);
  });

  test("two sittings and the act that ends them count once", () => {
    const bench = tablet("bench");
    const sitting = { ...sessionWorked, minutes: 30, exposedMinutes: 30 };
    const near = nearOf(
      bench.write("sessionWorked", sitting),
      bench.write("sessionWorked", { ...sitting, minute: 600, minutes: 25, exposedMinutes: 25 }),
      bench.write("actDone", { ...actDone, minutes: 55 }),
    );
    expect(near?.days.get(day)).toBe(55);
  });

  test("what another device wrote is added: too much rather than too little", () => {
    const near = nearOf(
      tablet("bench").write("sessionWorked", sessionWorked),
      tablet("office").write("actDone", actDone),
    );
    expect(near?.days.get(day)).toBe(55 + 55);
  });

  test("wiping down where mould is worked on is work near mould, wiping the camera is not", () => {
    const bench = tablet("bench");
    const near = nearOf(
      bench.write("stationWiped", stationWiped),
      bench.write("stationWiped", { ...stationWiped, station: "camera", minutes: 12 }),
    );
    expect(near?.days.get(day)).toBe(6); // norm s-change: 4 to 10 min an item, exposed
  });

  test("what was taken back does not count", () => {
    const bench = tablet("bench");
    const done = bench.write("actDone", actDone);
    const back = bench.write("eventCorrected", { event: done.id, about: [`item:${actDone.item}`] });
    expect(nearOf(done, back)).toBeUndefined();
  });

  test("items nobody has written about for long are not read again", () => {
    const done = tablet("bench").write("actDone", actDone);
    expect(recentItems(stateWith(done), done.clock.wall)).toHaveLength(1);
    expect(recentItems(stateWith(done), done.clock.wall + 1)).toHaveLength(0);
  });

  test("clean work is not counted", () => {
    expect(nearOf(tablet("bench").write("actDone", { ...actDone, exposed: false }))).toBeUndefined();
  });
});
