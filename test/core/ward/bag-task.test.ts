import { describe, expect, test } from "vitest";
import {
  type BagEvent,
  type BagReading,
  bagStateFromLog,
  type Spared,
} from "../../../src/core/ward/bag-state.ts";
import { bagDue } from "../../../src/core/ward/bag-task.ts";

/* Every third day, gel out at 40 to 45 %: common practice, no source. 65 %: the line of the mould watch's first lamp. */

const CLOSED: BagEvent[] = [{ hours: 100, what: "closed" }];
const WITH_GEL: BagEvent[] = [...CLOSED, { hours: 100, what: "gel put in" }];
const read = (hours: number, percent: number): BagReading => ({ hours, relHum: percent / 100, error: 0.02 });

function due(
  events: readonly BagEvent[],
  readings: readonly BagReading[],
  now: number,
  material: Spared = "paper",
) {
  const state = bagStateFromLog({ material, events, readings, asks48HoursBelow50: false }, now);
  const quiet = events.map(({ hours }) => hours);
  return bagDue(state, readings, quiet.length > 0 ? Math.max(...quiet) : null, now);
}

describe("what a bag asks next", () => {
  test("an open bag is to be closed, and so is one nobody closed", () => {
    expect(due([...CLOSED, { hours: 105, what: "opened" }], [], 106)).toEqual({
      task: "close",
      fromHours: 105,
    });
    expect(due([], [], 50).task).toBe("close");
  });
  test("a bag just closed is read at once", () => {
    expect(due(CLOSED, [], 101)).toEqual({ task: "read", fromHours: 100 });
  });
  test("with gel inside it is read, and its gel seen to, every third day", () => {
    expect(due(WITH_GEL, [read(101, 60), read(120, 30)], 130)).toEqual({
      task: "read-and-change-gel",
      fromHours: 192,
    });
  });
  test("a palm leaf at 44 % beside gel loses its gel now, paper does not", () => {
    const readings = [read(101, 60), read(120, 44)];
    expect(due(WITH_GEL, readings, 130, "palm leaf").task).toBe("take-gel-out-now");
    expect(due(WITH_GEL, readings, 130, "paper").task).toBe("read-and-change-gel");
  });
  test("at 65 % without gel it is for the lead today, at 64 % it dries on", () => {
    expect(due(CLOSED, [read(101, 65)], 130).task).toBe("too-damp-without-gel");
    expect(due(CLOSED, [read(101, 64)], 130).task).toBe("keep-dry-on");
  });
  test("after a passing reading at closing the next one counts two days after closing, not sooner", () => {
    expect(due(CLOSED, [read(101, 52)], 110)).toEqual({ task: "read", fromHours: 148 });
  });
  test("a bag that came back dries on", () => {
    expect(due(CLOSED, [read(101, 48), read(150, 53)], 160).task).toBe("keep-dry-on");
  });
  test("one that passed two days later is for release", () => {
    expect(due(CLOSED, [read(101, 52), read(150, 53)], 160).task).toBe("release");
  });
});
