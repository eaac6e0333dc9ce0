import { describe, expect, test } from "vitest";
import type { LogEvent } from "../../../src/core/log/event.ts";
import { recentItems } from "../../../src/core/log/recent-items.ts";
import { begunBy, runningWork, satAt } from "../../../src/core/log/running-work.ts";
import { sinceWiped } from "../../../src/core/log/since-wiped.ts";
import { stateWith, tablet } from "./a-campaign.ts";
import { EXAMPLES } from "./examples.ts";

const { actDone, itemMoved, itemWrapped, sessionStarted, sessionWorked, stationWiped } = EXAMPLES;
const begunIn = (...events: readonly LogEvent[]) => {
  const state = stateWith(...events);
  return begunBy(state, "MQ", recentItems(state, 0));
};
const toBench = { item: itemMoved.item, room: "Bench" as const, day: sessionStarted.day, minute: 480 };

describe("work that was begun", () => {
  test("runs until its end is written, with the item taken in hand for it", () => {
    const bench = tablet("bench");
    const begun = [bench.write("sessionStarted", sessionStarted), bench.write("itemMoved", toBench)];
    expect(runningWork(begunIn(...begun))).toMatchObject({ item: "SR-0031", minute: 480 });
    const ended = bench.write("sessionWorked", sessionWorked);
    expect(runningWork(begunIn(...begun, ended))).toBeNull();
  });

  test("runs again when its end is taken back", () => {
    const bench = tablet("bench");
    const begun = bench.write("sessionStarted", sessionStarted);
    const ended = bench.write("sessionWorked", sessionWorked);
    const back = bench.write("eventCorrected", { event: ended.id, about: ["person:MQ"] });
    expect(runningWork(begunIn(begun, ended, back))).not.toBeNull();
  });

  test("sittings on one item add up", () => {
    const bench = tablet("bench");
    const events = [480, 600].flatMap((minute) => [
      bench.write("sessionStarted", { ...sessionStarted, minute }),
      bench.write("itemMoved", toBench),
      bench.write("sessionWorked", { ...sessionWorked, minute, minutes: 25 }),
    ]);
    const begun = begunIn(...events);
    expect(satAt(begun, "SR-0031", "clean", sessionStarted.day)).toBe(50);
    expect(satAt(begun, "SR-0031", "wrap", sessionStarted.day)).toBe(0);
  });
});

describe("a station", () => {
  const left = (...events: readonly LogEvent[]) => {
    const state = stateWith(...events);
    return sinceWiped(state, recentItems(state, 0), () => ["mould-bench", "table"]);
  };

  test("keeps what was done at it until it is wiped down", () => {
    const bench = tablet("bench");
    const done = bench.write("actDone", actDone);
    expect(left(done).get("mould-bench")).toEqual([{ item: "SR-0031", act: "clean", exposed: true }]);
    expect(left(done, bench.write("stationWiped", stationWiped)).get("mould-bench")).toEqual([]);
  });

  test("may be any of its kind where the entry names none", () => {
    expect([...left(tablet("bench").write("itemWrapped", itemWrapped)).keys()]).toEqual([
      ...["mould-bench", "table"],
    ]);
  });
});
