import { describe, expect, test } from "vitest";
import type { LogEvent } from "../../../src/core/log/event.ts";
import type { Payload } from "../../../src/core/log/kinds.ts";
import { standingOf } from "../../../src/core/log/standing.ts";
import { eventsAbout } from "../../../src/core/log/state.ts";
import { wardStayOf } from "../../../src/core/log/ward-stay.ts";
import { stateWith, tablet } from "./a-campaign.ts";
import { day } from "./examples.ts";

const item = "SR-0031";
const june = (n: number) => day(`2026-06-${String(n).padStart(2, "0")}`);
const stay = (events: readonly LogEvent[], cuts: readonly Payload<"powerCut">[] = []) =>
  wardStayOf(standingOf(eventsAbout(stateWith(...events), `item:${item}`)), cuts);
const signed = [
  { person: "MQ", role: "lead" },
  { person: "PA", role: "cleaner" },
] as const;
const to = (room: "Ward" | "Bench", n: number, more: Partial<Payload<"itemMoved">> = {}) =>
  ({ item, room, day: june(n), minute: 540, ...more }) as const;

describe("an item's stay in the Ward", () => {
  test("begins when it is put there, in the bag and on the shelf that were written last", () => {
    const ward = tablet("ward");
    const events = [
      ward.write("itemMoved", to("Ward", 2, { bag: "B-1", shelf: "2" })),
      ward.write("bagClosed", { bag: "B-4", items: [item], day: june(3), minute: 600 }),
    ];
    expect(stay(events)).toEqual({ since: june(2), bag: "B-4", shelf: "2", freezer: null });
  });
  test("ends with its release, and begins anew when it is put in again", () => {
    const ward = tablet("ward");
    const events = [
      ward.write("bagClosed", { bag: "B-1", items: [item], day: june(2), minute: 600 }),
      ward.write("itemReleased", { item, day: june(9), person: "MQ", minutes: 3, exposed: true, signed }),
    ];
    expect(stay(events)).toBeNull();
    events.push(ward.write("itemMoved", to("Ward", 12, { bag: "B-7" })));
    expect(stay(events)).toMatchObject({ since: june(12), bag: "B-7" });
  });
  test("a reading typed up from paper after the release does not bring it back", () => {
    const ward = tablet("ward");
    const events = [
      ward.write("bagClosed", { bag: "B-1", items: [item], day: june(2), minute: 600 }),
      ward.write("itemReleased", { item, day: june(9), person: "MQ", minutes: 3, exposed: true, signed }),
      ward.write("bagRead", { bag: "B-1", items: [item], day: june(5), minute: 600, relHum: 0.5 }),
    ];
    expect(stay(events)).toBeNull();
  });
  test("counts freezing from the last power cut of four hours or more, and from none after it came out", () => {
    const ward = tablet("ward");
    const events = [ward.write("itemMoved", to("Ward", 2, { bag: "B-1", freezer: true }))];
    const cut = (n: number, hours: number) => ({ day: june(n), hours });
    expect(stay(events, [cut(4, 3)])?.freezer).toEqual({
      countedFrom: june(2),
      isRestarted: false,
      out: null,
    });
    expect(stay(events, [cut(4, 5), cut(6, 1)])?.freezer).toMatchObject({
      countedFrom: june(4),
      isRestarted: true,
    });
    events.push(ward.write("itemMoved", to("Ward", 11, { bag: "B-1", freezer: false })));
    expect(stay(events, [cut(12, 9)])?.freezer).toEqual({
      countedFrom: june(2),
      isRestarted: false,
      out: { day: june(11), minute: 540 },
    });
  });
});
