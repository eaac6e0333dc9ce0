import { describe, expect, test } from "vitest";
import { type Refusal, readScenario } from "../../../../src/core/plan/what-if/read-scenario.ts";
import { dated, dayIn, numberIn, weekdaysIn } from "../../../../src/core/plan/what-if/spoken.ts";
import { sayRefusal } from "../../../../src/core/say/what-if-refusals.ts";
import { day, smallCampaign } from "./small-campaign.ts";

const campaign = smallCampaign({
  calendar: [{ from: day("2026-06-01"), to: day("2026-08-19"), who: "camera", what: "open" }],
});
const mouldy = campaign.items.slice(0, 4).map((each) => each.id);
const read = (said: string) => readScenario(said, campaign, (words) => (words === "mouldy" ? mouldy : null));
const today = campaign.planFrom;
const end = campaign.end;
const toTheEnd = (from: string) => ({ from, to: end });

describe("what is understood", () => {
  test.each([
    ["P0 on clean work from 2026-07-06", { change: "clean work", person: "P0", ...toTheEnd("2026-07-06") }],
    ["Pia is unfit from Monday", { change: "clean work", person: "P2", ...toTheEnd("2026-06-01") }],
    [
      "pia ember-lund away from 2026-07-01 to 2026-07-20",
      { change: "away", person: "P2", from: "2026-07-01", to: "2026-07-20" },
    ],
    ["What if P1 is away on 6 July?", { change: "away", person: "P1", from: "2026-07-06", to: "2026-07-06" }],
    ["P1 leaves 6 July", { change: "away", person: "P1", from: "2026-07-06", to: "2026-07-06" }],
    [
      "one more cleaner from 2026-07-06",
      { change: "more people", role: "cleaner", count: 1, mouldWork: true, ...toTheEnd("2026-07-06") },
    ],
    [
      "another cleaner without mould work from 6 July",
      { change: "more people", role: "cleaner", count: 1, mouldWork: false, ...toTheEnd("2026-07-06") },
    ],
    [
      "2 more boxers",
      { change: "more people", role: "boxer", count: 2, mouldWork: false, ...toTheEnd(today) },
    ],
    ["masks 21 days late", { change: "late", stores: ["masks"], days: 21 }],
    ["k-mask three weeks late", { change: "late", stores: ["masks"], days: 21 }],
    ["boxes come 1 week early", { change: "late", stores: ["boxes"], days: -7 }],
    ["40 more boxes on 2026-07-06", { change: "delivery", store: "boxes", day: "2026-07-06", quantity: 40 }],
    [
      "camera closed 2026-08-01 to 2026-08-14",
      { change: "closed", station: "camera", from: "2026-08-01", to: "2026-08-14" },
    ],
    [
      "camera open 2026-08-20 to 2026-08-21",
      { change: "open", station: "camera", from: "2026-08-20", to: "2026-08-21" },
    ],
    ["free camera days Mon-Thu", { change: "weekdays", station: "camera", weekdays: [0, 1, 2, 3] }],
    ["second camera", { change: "more stations", kind: "camera", count: 1, ...toTheEnd(today) }],
    [
      "one more camera from 2026-07-06",
      { change: "more stations", kind: "camera", count: 1, ...toTheEnd("2026-07-06") },
    ],
    [
      "everyone 5 hours from 2026-06-10 to 2026-06-30",
      { change: "hours", who: "everyone", hours: 5, from: "2026-06-10", to: "2026-06-30" },
    ],
    [
      "mouldy items from 2026-07-20",
      { change: "hold back", items: mouldy, words: "mouldy items", until: "2026-07-20" },
    ],
    ["mouldy books last", { change: "order", items: mouldy, words: "mouldy", place: "last" }],
    ["mouldy items first", { change: "order", items: mouldy, words: "mouldy", place: "first" }],
    ["camera 10 hours a day", { change: "longer at", station: "camera", hours: 10 }],
    ["rains start on 2026-07-20", { change: "end", day: "2026-07-19" }],
    ["everything boxed by 20 July", { change: "end", day: "2026-07-20" }],
    [
      "room at 33 C and 70 % until 2026-06-30",
      { change: "room heat", dryBulb: 33, relHum: 0.7, from: today, to: "2026-06-30" },
    ],
    ["Ward 800 litres", { change: "ward", litres: 800 }],
    ["ward 1,200 l", { change: "ward", litres: 1200 }],
    ["end 2026-07-31", { change: "end", day: "2026-07-31" }],
    ["120 mould minutes a day", { change: "tighter", limit: "exposedMinutesADay", value: 120 }],
    ["two exposed days a week", { change: "tighter", limit: "exposedDaysAWeek", value: 2 }],
  ])("%s", (said, expected) => {
    const { scenario, refusals } = read(said);
    expect(refusals).toEqual([]);
    expect(scenario.changes).toEqual([expected]);
  });
  test("items like a format, and like one item", () => {
    const like = read("400 more like loose sheets from 2026-06-15").scenario.changes[0];
    expect(like).toMatchObject({ change: "more items", count: 400, day: "2026-06-15" });
    const one = read("3 more like B00007 from 2026-06-15").scenario.changes[0];
    expect(one).toMatchObject({ change: "more items", like: ["B00007"], count: 3 });
  });
  test("several changes joined by a semicolon, each on top of the one before", () => {
    const { scenario, refusals } = read("end 2026-10-30; P0 away from 2026-09-07 to 2026-09-11");
    expect(refusals).toEqual([]);
    expect(scenario.changes.map((each) => each.change)).toEqual(["end", "away"]);
  });
  test("only one person releases: asked of the plan, no change", () => {
    expect(read("only Pia releases").scenario).toMatchObject({ changes: [], releasesAlone: "P2" });
  });
  test("an item already begun is not held back", () => {
    const [first = ""] = mouldy;
    const begun = {
      ...campaign,
      sessions: [{ day: today, item: first, act: "admit", person: "P0", minutes: 5, exposed: true } as const],
    };
    const { scenario } = readScenario("mouldy items from 2026-07-20", begun, () => mouldy);
    expect(scenario.changes[0]).toMatchObject({ items: mouldy.slice(1) });
  });
});

describe("what is refused, each with its reason", () => {
  const whyOf = (said: string): string[] => read(said).refusals.map((each) => each.because.why);
  test.each([
    "P2 on mould work from Monday",
    "P2 back to mould work",
    "Pia does mould work",
    "Pia fit again from 2026-07-06",
    "P2 not on clean work",
    "P0 on mould work",
    "everyone on mould work",
  ])("%s: no scenario gives anybody mould work", (said) => {
    expect(whyOf(said)).toEqual(["mould work"]);
  });
  test("the answer to that is word for word the same for a person on clean work and for one who is not", () => {
    const words = (code: string): string =>
      sayRefusal(read(`${code} on mould work`).refusals[0] as Refusal, []).replaceAll(code, "X");
    expect(words("P2")).toBe(words("P0"));
  });
  test.each([
    "fewer breaks",
    "skip the wipe-downs",
    "no masks",
    "P0 works alone",
    "without rest days",
    "more mould minutes",
  ])("%s: what guards people stays", (said) => {
    expect(whyOf(said)).toEqual(["guards people"]);
  });
  test.each(["240 mould minutes a day", "4 exposed days a week", "3 mould days in a row"])(
    "%s: a limit is not loosened",
    (said) => {
      expect(whyOf(said)).toEqual(["looser limit"]);
    },
  );
  test.each(["P0 pregnant", "P0 on clean work because of asthma", "Pia in hospital from Monday"])(
    "%s: reasons are not asked for, and not repeated",
    (said) => {
      const [refusal] = read(said).refusals;
      expect(refusal?.because.why).toBe("no reasons");
      expect(sayRefusal(refusal as Refusal, [])).not.toMatch(/pregnan|asthma|hospital|P0|Pia/i);
    },
  );
  test.each([
    ["paint it blue", "not understood"],
    ["", "not understood"],
    ["PX away", "unknown"],
    ["gondolas 3 days late", "unknown"],
    ["one more wizard", "unknown"],
    ["camara closed 2026-07-06 to 2026-07-10", "unknown"],
    ["P0 away from 2026-02-30", "no such day"],
    ["40 more boxes", "day missing"],
    ["mouldy items", "day missing"],
    ["end", "day missing"],
    ["P0 away from 2026-07-20 to 2026-07-01", "backwards"],
    ["P0 away from 2028-01-01", "outside"],
    ["end 2026-06-01", "end passed"],
    ["end 2026-08-23", "same end"],
    ["everyone 9 hours", "longer day"],
    ["clean bench open", "open already"],
    ["0 more boxes like loose_sheets from 2026-06-15", "unknown"],
    ["Ward 0 litres", "how many"],
    ["house open on 2026-07-10", "stays closed"],
    ["which box sizes", "not modelled"],
    ["freezer holds 60 items", "not understood"],
    ["a bigger budget", "not modelled"],
    ["how damp is the monsoon", "not modelled"],
    ["how sure are we of the sample", "not modelled"],
    ["gondolas last", "unknown"],
    ["camera 6 hours a day", "shorter opening"],
    ["camera 30 hours a day", "how many"],
    ["room 90 C and 70 %", "no such air"],
    ["mask time 90 minutes", "not modelled"],
  ])("%s: %s", (said, why) => {
    expect(whyOf(said)).toEqual([why]);
    const words = sayRefusal(read(said).refusals[0] as Refusal, []);
    expect(words).toMatch(/[.:]$|[.)]$/);
    expect(words).not.toContain("undefined");
  });
  test("everything that stands in the way is named at once", () => {
    expect(whyOf("PX away; fewer breaks; masks 3 days late; end")).toEqual([
      "unknown",
      "guards people",
      "day missing",
    ]);
  });
});

describe("numbers and days as people write them", () => {
  test.each([
    ["400", 400],
    ["1,480", 1480],
    ["three", 3],
    ["another", 1],
    ["7.5", 7.5],
    ["1,5", null],
    ["many", null],
  ])("%s is %s", (text, n) => expect(numberIn(text)).toBe(n));
  test.each([
    ["2026-07-06", "2026-07-06"],
    ["6 july", "2026-07-06"],
    ["6 may", "2027-05-06"],
    ["6 may 2026", "2026-05-06"],
    ["wed", "2026-06-03"],
    ["monday", "2026-06-01"],
    ["today", "2026-06-01"],
    ["31 june", null],
  ])("on Monday 1 June 2026 %s is %s", (text, on) => expect(dayIn(text, today)).toBe(on));
  test.each([
    ["mon-fri", [0, 1, 2, 3, 4]],
    ["sat to mon", [0, 5, 6]],
    ["mondays, wed and friday", [0, 2, 4]],
    ["mon-moonday", null],
  ])("%s", (text, days) => expect(weekdaysIn(text)).toEqual(days));
  test.each([
    ["pa away from 2026-07-01 to 2026-07-20", "pa away", "2026-07-01", "2026-07-20"],
    ["pa away 2026-07-01 - 2026-07-20", "pa away", "2026-07-01", "2026-07-20"],
    ["pa away until 20 july", "pa away", null, "2026-07-20"],
    ["pa away since monday", "pa away", "2026-06-01", null],
    ["pa away on monday", "pa away", "2026-06-01", "2026-06-01"],
    ["second camera", "second camera", null, null],
    ["40 more boxes", "40 more boxes", null, null],
  ])("%s", (text, words, from, to) => expect(dated(text, today)).toMatchObject({ words, from, to }));
});
