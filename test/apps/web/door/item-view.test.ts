import { describe, expect, test } from "vitest";
import { doorItem } from "../../../../src/apps/web/door/item-view.ts";
import type { Payload } from "../../../../src/core/log/kinds.ts";
import { aTablet, listed, TODAY } from "../a-now.ts";

const BOOK = listed("B-1", {
  format: "bound_volume",
  support: "paper_rag",
  media: ["ink_carbon"],
  cover: "leather_calf",
});
const found = (test: string, answer: string | number, part = ""): Payload<"findingRecorded"> => ({
  ...{ item: "B-1", part, test, answer, day: TODAY, by: "MQ" },
});

/** Answers whatever is asked with what a sound book gives, until nothing is asked.   @returns every test asked, in order */
function surveySoundBook(tablet: ReturnType<typeof aTablet>, skipped: readonly string[] = []): string[] {
  const asked: string[] = [];
  for (let turn = 0; turn < 60; turn++) {
    const ask = doorItem(tablet.now(), "B-1", skipped, "MQ").item?.ask;
    if (!ask || ask.tests.length === 0) return asked;
    for (const { id, choices } of ask.tests) {
      asked.push(id);
      const sound = choices.kind === "number" ? 120 : choices.words.includes("no") ? "no" : "none";
      tablet.write("findingRecorded", found(id, sound, ask.part));
    }
  }
  throw new Error("The survey does not end.");
}

describe("the survey at the Door", () => {
  test("a number nobody has listed is no item", () => {
    expect(doorItem(aTablet().now(), "B-9", [], "MQ").item).toBeNull();
  });

  test("begins with what can be noticed without touching, stop tests among it, and asks each thing once", () => {
    const tablet = aTablet();
    tablet.write("itemListed", BOOK);
    const [first = "", ...rest] = surveySoundBook(tablet);
    expect(["chemical_odour", "poison_label"]).toContain(first);
    expect(new Set([first, ...rest]).size).toBe(rest.length + 1);
  });

  test("a sound book leaves the Door with no must-ask answer missing", () => {
    const tablet = aTablet();
    tablet.write("itemListed", BOOK);
    surveySoundBook(tablet);
    const item = doorItem(tablet.now(), "B-1", [], "MQ").item;
    expect(item?.missing).toBe(0);
    expect(item?.follows.steps.map(({ room }) => room)).toContain("Camera");
  });

  test("a question put off is not asked, its answer stays missing, and not tested is not no", () => {
    const tablet = aTablet();
    tablet.write("itemListed", BOOK);
    const asked = surveySoundBook(tablet, [" live_insects"]);
    const item = doorItem(tablet.now(), "B-1", [" live_insects"], "MQ").item;
    expect(asked).not.toContain("live_insects");
    expect(item?.missing).toBe(1);
    expect(item?.follows.outcome).toContain("stays at the Door");
  });

  test("a painted outer leaf is asked about by itself", () => {
    const tablet = aTablet();
    const bundle = { format: "palm_leaf_bundle", support: "palm_leaf", media: ["incised_inked"] };
    tablet.write("itemListed", listed("B-1", bundle));
    tablet.write("partListed", {
      item: "B-1",
      part: "painted leaf",
      facts: { media: ["painted"], leaves: 2 },
    });
    surveySoundBook(tablet);
    const item = doorItem(tablet.now(), "B-1", [], "MQ").item;
    expect(item?.missing).toBe(0);
    tablet.write("findingRecorded", found("media_flakes", "yes", "painted leaf"));
    const flaking = doorItem(tablet.now(), "B-1", [], "MQ").item;
    expect(flaking?.answers.find(({ part }) => part === "painted leaf")?.test.id).toBe("media_flakes");
    expect(flaking?.follows.conditions.map(({ says }) => says).join()).toContain("Flaking ink or paint");
  });
});

describe("danger to people comes first", () => {
  test.each(["yes", "unsure"])("powder between the leaves answered %s stops everything", (answer) => {
    const tablet = aTablet();
    tablet.write("itemListed", BOOK);
    tablet.write("findingRecorded", found("powder_between", answer));
    const item = doorItem(tablet.now(), "B-1", [], "MQ").item;
    expect(item?.stops).toEqual([
      { part: "", short: "powder or crystals between leaves", unsure: answer === "unsure" },
    ]);
    expect(item?.follows.dangers[0]).toMatchObject({
      isDoubtful: true,
      signs: expect.arrayContaining(["W016"]),
    });
    expect(item?.isExposed).toBe(true);
  });

  test("a no to every stop test stops nothing", () => {
    const tablet = aTablet();
    tablet.write("itemListed", BOOK);
    tablet.write("findingRecorded", found("powder_between", "no"));
    expect(doorItem(tablet.now(), "B-1", [], "MQ").item?.stops).toEqual([]);
  });

  test("whoever has clean work today is told to hand a mouldy item on, and never why", () => {
    const tablet = aTablet();
    tablet.write("itemListed", BOOK);
    tablet.write("findingRecorded", found("growth_visible", "yes"));
    const before = doorItem(tablet.now(), "B-1", [], "MQ").item;
    tablet.write("cleanWorkThisWeek", { person: "MQ", from: TODAY, to: TODAY });
    const after = doorItem(tablet.now(), "B-1", [], "MQ").item;
    expect(before?.cleanWork).toBeNull();
    expect(after?.cleanWork).toBe("Mara Quelm");
  });
});

describe("two people", () => {
  test("who answer differently without seeing each other’s are shown side by side, until they settle it", () => {
    const [one, other] = [aTablet("one"), aTablet("two")];
    const base = one.write("itemListed", BOOK);
    other.take(base);
    const wet = one.write("findingRecorded", { ...found("wet", "yes"), by: "MQ" });
    other.write("findingRecorded", { ...found("wet", "no"), by: "TL" });
    other.take(wet);
    const shown = doorItem(other.now(), "B-1", [], "TL").item;
    expect(shown?.disagreements[0]?.answers.map(({ answer, by }) => `${by} ${answer}`)).toEqual(
      expect.arrayContaining(["MQ yes", "TL no"]),
    );
    expect(shown?.answers.some(({ test: { id } }) => id === "wet")).toBe(false);
    const settled = {
      item: "B-1",
      part: "",
      test: "wet",
      answer: "no",
      day: TODAY,
      by: ["MQ", "TL"],
    } as const;
    other.write("disagreementSettled", settled);
    const after = doorItem(other.now(), "B-1", [], "TL").item;
    expect(after?.disagreements).toEqual([]);
    expect(after?.answers.find(({ test: { id } }) => id === "wet")).toMatchObject({
      answer: "no",
      by: "MQ, TL",
    });
  });

  test("an answer taken back is not tested again, not no", () => {
    const tablet = aTablet();
    tablet.write("itemListed", BOOK);
    tablet.write("findingRecorded", found("wet", "no"));
    const [given] = doorItem(tablet.now(), "B-1", [], "MQ").item?.answers ?? [];
    expect(given?.isOwn).toBe(true);
    if (given) tablet.write("eventCorrected", given.correction);
    const item = doorItem(tablet.now(), "B-1", [], "MQ").item;
    expect(item?.answers).toEqual([]);
  });
});
