import { describe, expect, test } from "vitest";
import { campaignOf, disagreementsOf } from "../../../src/core/log/campaign-of.ts";
import type { LogEvent } from "../../../src/core/log/event.ts";
import { historyOf } from "../../../src/core/log/item-history.ts";
import { standingOf } from "../../../src/core/log/standing.ts";
import { eventsAbout } from "../../../src/core/log/state.ts";
import { correctionOf } from "../../../src/core/log/subjects.ts";
import { unfitIn } from "../../../src/core/log/unfit.ts";
import { stateWith, TODAY, tablet, told } from "./a-campaign.ts";
import { day, EXAMPLES } from "./examples.ts";
import { deviceCalled } from "./some-events.ts";

const growth = { item: "SR-0031", part: "", test: "growth_visible" } as const;
const second = day("2026-06-02");
const fifth = day("2026-06-05");
const answersIn = (findings: readonly { readonly answer: unknown }[]) => findings.map(({ answer }) => answer);

describe("findings that contradict", () => {
  const one = tablet("one");
  const two = tablet("two");
  const yes = one.write("findingRecorded", { ...growth, answer: "yes", day: second, by: "MQ" });
  const no = two.write("findingRecorded", { ...growth, answer: "no", day: second, by: "PA" });
  const erh = { ...growth, test: "erh" } as const;

  test("are both kept and named where neither writer saw the other's", () => {
    const [found, ...rest] = disagreementsOf(stateWith(yes, no));
    expect(rest).toEqual([]);
    expect(found).toMatchObject({ item: "SR-0031", part: "", test: "growth_visible" });
    expect(found?.answers.map(({ payload }) => payload.answer)).toEqual(["yes", "no"]);
    expect(answersIn(told(yes, no).findings)).toEqual(["yes", "no"]);
  });

  test("still stand where one of them says that it saw itself", () => {
    expect(answersIn(told({ ...yes, seen: [yes.id] }, no).findings)).toEqual(["yes", "no"]);
  });

  test("all stand that claim to have seen each other in a circle, beside a third as well, in whatever order they come", () => {
    const round = [
      { ...yes, seen: [no.id] },
      { ...no, seen: [yes.id] },
    ];
    const third = tablet("three").write("findingRecorded", { ...growth, answer: "unsure", day: second });
    for (const all of [round, [...round, third], [third, ...round].reverse()])
      expect(disagreementsOf(stateWith(...all))[0]?.answers).toHaveLength(all.length);
    const knowing = { ...third, seen: [yes.id] };
    expect(disagreementsOf(stateWith(...round, knowing)), "who saw one of them saw what it saw").toEqual([]);
  });

  test("of two days are unsure for care until they are settled", () => {
    const later = tablet("two").write("findingRecorded", { ...growth, answer: "no", day: fifth, by: "PA" });
    expect(told(yes, later).findings).toMatchObject([
      { answer: "yes", day: second },
      { answer: "no", day: fifth },
      { answer: "unsure", day: fifth },
    ]);
  });

  test("are replaced, and kept as history, by one who saw them", () => {
    const third = tablet("three");
    third.take(yes, no);
    const settled = third.write("disagreementSettled", {
      ...growth,
      answer: "no",
      day: fifth,
      by: ["MQ", "PA"],
    });
    const state = stateWith(yes, no, settled);
    expect(disagreementsOf(state)).toEqual([]);
    expect(answersIn(told(yes, no, settled).findings)).toEqual(["yes", "no", "no"]);
    const { matters } = standingOf(eventsAbout(state, "item:SR-0031"));
    expect(matters.get("finding growth_visible ")?.replaced.map(({ id }) => id)).toEqual([yes.id, no.id]);
  });

  test("come up again when one more arrives that nobody had seen", () => {
    const third = tablet("three");
    third.take(yes, no);
    const settled = third.write("disagreementSettled", {
      ...growth,
      answer: "no",
      day: fifth,
      by: ["MQ", "PA"],
    });
    const late = tablet("four").write("findingRecorded", { ...growth, answer: "yes", day: fifth, by: "TL" });
    expect(disagreementsOf(stateWith(yes, no, settled, late))).toHaveLength(1);
  });

  test("on one day by one who saw the first are no disagreement, and the first is not handed on", () => {
    const again = tablet("one");
    const first = again.write("findingRecorded", { ...growth, answer: "yes", day: second });
    const better = again.write("findingRecorded", { ...growth, answer: "no", day: second });
    expect(answersIn(told(first, better).findings)).toEqual(["no"]);
    expect(disagreementsOf(stateWith(first, better))).toEqual([]);
  });

  test("numbers of two days are two measurements; on one day they contradict", () => {
    const at = (name: string, on: typeof second, answer: number) =>
      tablet(name).write("findingRecorded", { ...erh, answer, day: on });
    expect(disagreementsOf(stateWith(at("one", second, 67), at("two", fifth, 58)))).toEqual([]);
    expect(disagreementsOf(stateWith(at("one", second, 67), at("two", second, 58)))).toHaveLength(1);
  });
});

describe("corrections", () => {
  const one = tablet("one");
  const wrong = one.write("findingRecorded", { ...growth, answer: "yes", day: second });
  const correction = one.write("eventCorrected", correctionOf(wrong));

  test("take an event out of what counts, and leave it in the log", () => {
    expect(told(wrong).findings).toHaveLength(1);
    expect(told(wrong, correction).findings).toEqual([]);
    expect(told(correction, wrong).findings).toEqual([]);
    expect(eventsAbout(stateWith(wrong, correction), "item:SR-0031")).toHaveLength(3);
  });

  test("can be corrected in turn", () => {
    const undone = tablet("two").write("eventCorrected", correctionOf(correction));
    expect(told(wrong, correction, undone).findings).toHaveLength(1);
  });

  test("one of the other, thousands deep, are counted out", () => {
    const long = deviceCalled("long");
    const chain = [wrong];
    for (let last = wrong; chain.length <= 4001; chain.push(last))
      last = long.write({ kind: "eventCorrected", payload: { event: last.id, about: ["item:SR-0031"] } });
    expect(told(...chain).findings).toHaveLength(0);
    expect(told(...chain.slice(0, -1)).findings).toHaveLength(1);
  });

  test("of each other in a circle leave everything else as it is", () => {
    const [a, b] = ["a", "b"].map((name) => tablet(name).write("eventCorrected", correctionOf(wrong)));
    if (!a || !b) throw new Error("Two were written.");
    const round = [a, b].map((each, at) => ({
      ...each,
      payload: { ...each.payload, event: [b, a][at]?.id ?? "" },
    }));
    expect(told(wrong, ...round).findings).toHaveLength(1);
  });

  test("are not written of what is not understood: it would be filed elsewhere once it is", () => {
    const strange = { id: wrong.id, kind: "leafPressed", version: 1, payload: {} };
    expect(unfitIn({ kind: "eventCorrected", version: 1, payload: correctionOf(strange) })).toMatchObject({
      code: "event-unfit",
      got: "eventCorrected.about.0",
    });
  });

  test("of the founding leave no campaign, whatever was changed since", () => {
    const office = tablet("office again");
    const changes = (["settingsChanged", "placeChanged", "stationsChanged"] as const).map((kind) =>
      office.write(kind, EXAMPLES[kind]),
    );
    const founded = eventsAbout(stateWith(), "campaign:").find(({ kind }) => kind === "campaignFounded");
    if (!founded) throw new Error("The campaign was founded.");
    const unfounded = office.write("eventCorrected", correctionOf(founded));
    expect(campaignOf(stateWith(...changes, unfounded), TODAY)).toBeNull();
  });

  test("bring back what the wrong event had replaced", () => {
    const two = tablet("two");
    const first = two.write("findingRecorded", { ...growth, answer: "no", day: second });
    const slip = two.write("findingRecorded", { ...growth, answer: "yes", day: second });
    expect(answersIn(told(first, slip).findings)).toEqual(["yes"]);
    const back = two.write("eventCorrected", correctionOf(slip));
    expect(answersIn(told(first, slip, back).findings)).toEqual(["no"]);
  });
});

describe("where two places set the same thing apart, the safer one stands", () => {
  test("mould work only where both say so", () => {
    const listed = (name: string, mouldWork: boolean) =>
      tablet(name).write("personListed", { ...EXAMPLES.personListed, mouldWork });
    expect(told(listed("one", false), listed("two", true)).people).toMatchObject([
      { code: "MQ", mouldWork: false },
    ]);
  });

  test("the stricter of two limits, the longer of two breaks", () => {
    const { limits } = EXAMPLES.limitsChanged;
    const set = (name: string, minutes: number, rest: number) =>
      tablet(name).write("limitsChanged", {
        limits: {
          ...limits,
          exposedMinutesADay: { value: minutes, source: name },
          maskBreakMinutes: { value: rest, source: name },
        },
      });
    expect(told(set("one", 120, 30), set("two", 150, 45)).limits).toMatchObject({
      exposedMinutesADay: { value: 120, source: "one" },
      maskBreakMinutes: { value: 45, source: "two" },
    });
  });
});

test("a note beside somebody's days is not handed on, whenever they were listed", () => {
  const office = tablet("office note");
  const noted = office.write("calendarChanged", {
    ...{ from: second, to: second, who: "MQ", what: "away", note: "as she said" },
  });
  const listed = office.write("personListed", EXAMPLES.personListed);
  for (const all of [
    [noted, listed],
    [listed, noted],
  ])
    expect(told(...all).calendar).toEqual([{ from: second, to: second, who: "MQ", what: "away" }]);
  expect(told(noted).calendar).toMatchObject([{ note: "as she said" }]);
});

describe("stores", () => {
  const office = tablet("store room");
  const counted = office.write("stockCounted", { store: "masks", day: second, quantity: 160 });
  const expected = office.write("deliveryExpected", {
    store: "masks",
    delivery: "M-1",
    day: fifth,
    quantity: 240,
  });
  const arrived = office.write("deliveryArrived", {
    store: "masks",
    delivery: "M-1",
    day: fifth,
    quantity: 230,
  });

  test("what arrived is added to the last count and no longer expected", () => {
    expect(told(counted, expected)).toMatchObject({
      stores: [{ onHand: 160 }],
      deliveries: [{ quantity: 240 }],
    });
    expect(told(counted, expected, arrived)).toMatchObject({ stores: [{ onHand: 390 }], deliveries: [] });
  });

  test("a later count already holds what had arrived", () => {
    const recount = office.write("stockCounted", { store: "masks", day: day("2026-06-09"), quantity: 371 });
    expect(told(counted, expected, arrived, recount).stores).toMatchObject([{ onHand: 371 }]);
  });
});

describe("what the log alone can tell of an item", () => {
  const one = tablet("one");
  const wet = (answer: string, on: typeof second, minute?: number) =>
    one.write("findingRecorded", {
      ...growth,
      test: "wet",
      answer,
      day: on,
      ...(minute === undefined ? {} : { minute }),
    });
  const stateOf = (...events: readonly LogEvent[]) => told(...events).items[0]?.state;
  const first = wet("yes", second, 600);

  test("hours wet run from the first answer to the end of today", () => {
    // 2 June 10:00 to 19 June 24:00: 17 days and 14 hours
    expect(stateOf(first)).toEqual({ hours_wet: 17 * 24 + 14 });
    expect(stateOf(first, wet("unsure", fifth))).toEqual({ hours_wet: 17 * 24 + 14 });
  });

  test("they end with a no, and begin anew with the next yes", () => {
    const dry = wet("no", fifth);
    expect(stateOf(first, dry)).toBeUndefined();
    expect(stateOf(first, dry, wet("yes", day("2026-06-19"), 720))).toEqual({ hours_wet: 12 });
  });

  test("a bag shut without gel is sealed until gel goes in or it is opened", () => {
    const two = tablet("two");
    const bag = { bag: "N-12", items: ["SR-0031"], day: day("2026-06-18"), minute: 720 } as const;
    const shut = two.write("bagClosed", bag);
    expect(stateOf(shut)).toEqual({ sealed_no_desiccant_hours: 36 });
    expect(
      stateOf(shut, two.write("gelChanged", { ...bag, minute: 730, way: "in", grams: 100 })),
    ).toBeUndefined();
    expect(stateOf(shut, two.write("bagOpened", { ...bag, minute: 740 }))).toBeUndefined();
  });

  test("a power cut counts for what was in the freezer then", () => {
    const two = tablet("two");
    const move = { item: "SR-0031", room: "Ward" } as const;
    const cut = (on: typeof second, hours: number) => two.write("powerCut", { day: on, hours });
    const early = cut(second, 9);
    const frozen = two.write("itemMoved", { ...move, freezer: true, day: fifth });
    const cuts = [cut(day("2026-06-07"), 2), cut(day("2026-06-07"), 3), cut(day("2026-06-10"), 4)];
    expect(stateOf(early, frozen)).toEqual({ in_freezer: "yes" });
    expect(stateOf(early, frozen, ...cuts)).toEqual({ in_freezer: "yes", power_cut_hours: 5 });
    const out = two.write("itemMoved", { ...move, freezer: false, day: day("2026-06-12") });
    expect(stateOf(early, frozen, ...cuts, out)).toEqual({ in_freezer: "no" });
  });

  test("days in the Ward and times held", () => {
    const two = tablet("two");
    const events = [
      two.write("itemMoved", { item: "SR-0031", room: "Ward", day: fifth }),
      two.write("bagWeighed", EXAMPLES.bagWeighed),
      two.write("actDone", EXAMPLES.actDone),
    ];
    const now = standingOf(eventsAbout(stateWith(...events), "item:SR-0031"));
    expect(historyOf(now, "SR-0031", [], TODAY)).toMatchObject({ wardDays: 14, timesHeld: 3 });
  });
});
