import { beforeAll, describe, expect, test } from "vitest";
import type { LogEvent } from "../../../src/core/log/event.ts";
import type { Kind } from "../../../src/core/log/kinds.ts";
import { correctionOf } from "../../../src/core/log/subjects.ts";
import { EXAMPLES } from "../../core/log/examples.ts";
import { type ADevice, type AHouse, aHouse, type Sent } from "./a-house.ts";

let house: AHouse;
let lead: ADevice;
beforeAll(async () => {
  house = await aHouse();
  lead = await house.enter("laptop", "lead");
});

/** What is said against each entry of a batch. */
const said = ({ answers }: Sent): (string | undefined)[] => answers.map(({ problem }) => problem?.code);
const of = (kind: Kind, more: object, by = lead): LogEvent =>
  by.example(kind, { ...EXAMPLES[kind], ...more });

describe("a number that looks like a word of health", () => {
  const worked = () => [
    of("findingRecorded", { item: "ILL-12" }),
    of("itemMoved", { item: "ILL-12" }),
    of("actDone", { item: "ILL-12" }),
    of("questionAsked", { item: "ILL-12" }),
    of("bagClosed", { items: ["ILL-12"] }),
  ];

  test("is searched as long as nobody has listed a thing under it", async () => {
    expect(said(await lead.send(...worked()))).toEqual(worked().map(() => "health-words"));
  });

  test("passes once an item is listed under it, in the same batch or before, with all that is done to the item", async () => {
    expect((await lead.send(of("itemListed", { item: "ILL-12" }), ...worked())).status).toBe(200);
    const wrong = of("findingRecorded", { item: "ILL-12", answer: "no" });
    expect((await lead.send(...worked(), wrong)).status).toBe(200);
    expect((await lead.send(lead.example("eventCorrected", correctionOf(wrong)))).status).toBe(200);
  });

  test("passes for a box and a bag that the log knows already, by a carry file", async () => {
    const flu = { item: "SR-0099", box: "flu 3" };
    expect(said(await lead.send(of("itemBoxed", flu)))).toEqual(["health-words"]);
    await house.keep.append([
      of("itemBoxed", { ...flu, item: "SR-0001" }),
      of("bagClosed", { bag: "flu 4" }),
    ]);
    expect((await lead.send(of("itemBoxed", flu), of("bagRead", { bag: "flu 4" }))).status).toBe(200);
  });

  test("passes as the name of a part that is listed", async () => {
    const plate = { item: "SR-0031", part: "ill. 3" };
    expect(said(await lead.send(of("noteWritten", plate)))).toEqual(["health-words"]);
    expect((await lead.send(of("partListed", plate), of("noteWritten", plate))).status).toBe(200);
  });

  test("opens no way for free text, for a person's code or for a device's name", async () => {
    const sent = await lead.send(
      of("noteWritten", { item: "ILL-12", text: "ILL-12" }),
      of("actDone", { item: "ILL-12", person: "ILL-12" }),
      of("findingRecorded", { item: "ILL-12", by: "ILL-12" }),
      of("personListed", { person: "ILL-12" }),
    );
    expect(said(sent)).toEqual(sent.answers.map(() => "health-words"));
    expect((await lead.post("/api/pairings", { device: "ILL-12", role: "boxer" })).status).toBe(400);
  });
});

test("a kind called like a word of the language is unknown, and no fault", async () => {
  const odd = ["constructor", "toString", "hasOwnProperty"].map((kind) =>
    lead.example("noteWritten", EXAMPLES.noteWritten, { kind }),
  );
  expect(said(await lead.send(...odd))).toEqual(odd.map(() => "unknown-here"));
});

describe("a note beside days", () => {
  const days = { what: "away", note: "as said" };

  test("of somebody who is listed in the same batch, after it or before, is refused", async () => {
    const listed = of("personListed", { person: "TW" });
    const noted = of("calendarChanged", { ...days, who: "TW" });
    expect(said(await lead.send(noted, listed))).toEqual(["not-a-house-day", undefined]);
    expect(said(await lead.send(listed, noted))).toEqual([undefined, "not-a-house-day"]);
  });

  test("of somebody who may be listed later is refused too: days are everyone's or a station's", async () => {
    expect(said(await lead.send(of("calendarChanged", { ...days, who: "ZZ" })))).toEqual(["not-a-house-day"]);
    const stand = of("calendarChanged", { ...days, who: "stand" });
    expect((await lead.send(of("stationsChanged", {}), stand)).status).toBe(200);
  });

  test("is searched, whomever it is of", async () => {
    const noted = of("calendarChanged", { what: "closed", who: "everyone", note: "All in hospital" });
    expect(said(await lead.send(noted))).toEqual(["health-words"]);
  });
});

describe("a correction", () => {
  test("must name all that its target is about, or it would still count there", async () => {
    const closed = of("bagClosed", { bag: "N-77" });
    await lead.send(closed);
    const { event, about } = correctionOf(closed);
    for (const left of about)
      expect(
        said(
          await lead.send(
            lead.example("eventCorrected", { event, about: about.filter((each) => each !== left) }),
          ),
        ),
        left,
      ).toEqual(["half-a-correction"]);
    expect((await lead.send(lead.example("eventCorrected", { event, about }))).status).toBe(200);
  });
});

describe("a device that is let in again as somebody else", () => {
  test("may send what it wrote before, and nothing that it writes as that later", async () => {
    const tablet = await house.enter("tablet-9", "store keeper");
    house.clock.now += 3_600_000;
    const before = of("stockCounted", {}, tablet);
    const now = await house.enter("tablet-9", "boxer");
    expect(now.role).toBe("boxer");
    expect((await now.send(before)).status).toBe(200);
    const clock = { wall: house.clock.now + 60_000, counter: 0 };
    const sent = await now.send(tablet.example("stockCounted", EXAMPLES.stockCounted, { clock }));
    expect(said(sent)).toEqual(["not-your-entry"]);
    expect(sent.answers[0]?.problem?.remedy).toContain("let this device in again as store keeper");
  });

  test("for a fortnight, not for ever", async () => {
    const tablet = await house.enter("tablet-7", "store keeper");
    const [soon, late] = [of("stockCounted", {}, tablet), of("stockCounted", {}, tablet)];
    const DAY = 86_400_000;
    house.clock.now += DAY;
    const now = await house.enter("tablet-7", "boxer");
    house.clock.now += 13 * DAY;
    expect((await now.send(soon)).status).toBe(200);
    house.clock.now += 2 * DAY;
    expect(said(await now.send(late))).toEqual(["not-your-entry"]);
    house.clock.now -= 16 * DAY;
  });

  test("does not send what others wrote", async () => {
    const boxer = await house.enter("tablet-8", "boxer");
    expect(said(await boxer.send(lead.example("noteWritten")))).toEqual(["not-your-entry"]);
  });
});
