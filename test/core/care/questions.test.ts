import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { decide } from "../../../src/core/care/decide.ts";
import { nextQuestion, soundAnswer } from "../../../src/core/care/questions.ts";
import type { Facts, FactValue } from "../../../src/core/items/facts.ts";
import { publishedRuleBook } from "../../../src/edge/rule-book.ts";

const book = publishedRuleBook();
const around: Facts = {
  "plan.step": ["clean", "image", "rehouse"],
  "site.climate": "hot_humid",
  "site.freezer": "no",
  "site.hepa_vacuum": "yes",
  "state.dry_verified": "no",
  "state.covers_imaged": "no",
  "state.wrapped": "no",
  "state.cleaned": "no",
};
const LEDGER: Facts = {
  "item.format": "bound_volume",
  "item.support": "paper_rag",
  "item.media": ["ink_iron_gall"],
  "item.cover": "leather_sheep",
};

/** Asks until settled, answering from the truth, and as a sound item would where it says nothing. */
function askedOf(item: Facts, truth: Readonly<Record<string, FactValue>>) {
  const facts: Record<string, FactValue> = { ...around, ...item };
  const asked: string[][] = [];
  for (;;) {
    const next = nextQuestion(book, facts);
    if (next.settled) return { asked, facts, next };
    asked.push(next.tests.map(({ id }) => id));
    for (const each of next.tests) facts[`obs.${each.id}`] = truth[each.id] ?? soundAnswer(each);
  }
}

describe("what is asked next", () => {
  test("comes to an end with every must-ask test of a sound ledger answered", () => {
    const { facts } = askedOf(LEDGER, {});
    expect(decide(book, facts).missingTests).toEqual([]);
  });
  test("stop tests come before anything that opens, turns or touches", () => {
    const order = askedOf(LEDGER, {}).asked.flat();
    const lastStop = Math.max(
      ...["rodent_signs", "guano", "powder_between"].map((each) => order.indexOf(each)),
    );
    for (const near of ["fragments_fall", "rub_mark", "damp_to_touch", "opening_angle"])
      expect(order.indexOf(near)).toBeGreaterThan(lastStop);
  });
  test("poison powder ends the questions: nothing else is touched", () => {
    const { asked } = askedOf(LEDGER, { powder_between: "yes" });
    expect(asked.at(-1)).toEqual(["powder_between"]);
  });
  test("a bud is asked for only where growth is seen, and a warm finger before it on leather", () => {
    expect(askedOf(LEDGER, {}).asked.flat()).not.toContain("growth_smears");
    const order = askedOf(LEDGER, { growth_visible: "yes" }).asked.flat();
    expect(order).toContain("growth_smears");
    expect(order.indexOf("bloom_melts_warm")).toBeLessThan(order.indexOf("growth_smears"));
  });
  test("no bud on a photograph: the rule that forbids it is named", () => {
    const print = { "item.format": "photo_print", "item.media": ["photographic"] };
    const { asked, next } = askedOf(print, { growth_visible: "yes" });
    expect(asked.flat()).not.toContain("growth_smears");
    expect(next.forbidden.find(({ test: each }) => each.id === "growth_smears")?.rule).toBe("T03");
  });
  test("nothing of film is asked of a book", () => {
    expect(
      askedOf(LEDGER, {})
        .asked.flat()
        .filter((each) => each.startsWith("film") || each === "acrid_odour"),
    ).toEqual([]);
  });
  test("a drop test is never asked of the team", () => {
    const palm = { "item.format": "palm_leaf_bundle", "item.media": ["incised_inked"] };
    const { asked, next } = askedOf(palm, {});
    expect(asked.flat()).not.toContain("water_spot_moves");
    expect(next.later.map(({ id }) => id)).toContain("water_spot_moves");
  });
});

const answers = (id: string): FactValue[] => {
  const found = book.tests.get(id);
  if (!found) return [];
  return found.answers.includes("/") ? found.answers.split("/") : [soundAnswer(found), 1, 70];
};
const anyTruth = fc.record(
  Object.fromEntries(
    [...book.tests.keys()].map((id) => [
      id,
      fc.constantFrom(...(answers(id) as [FactValue, ...FactValue[]])),
    ]),
  ),
);
const anyFormat = fc.constantFrom(...(book.facts.get("item.format")?.values ?? []));
const anyMedia = fc.constantFrom(
  "ink_carbon",
  "ink_iron_gall",
  "pencil",
  "incised_inked",
  "painted",
  "photographic",
);

describe("nothing you could still find would change this", () => {
  test("holds for any item: once settled, no allowed test at the Door changes a ban, a requirement, a hold or whom to ask", () => {
    fc.assert(
      fc.property(anyFormat, anyMedia, anyTruth, (format, media, truth) => {
        const { facts, next } = askedOf({ "item.format": format, "item.media": [media] }, truth);
        const before = rulings(facts);
        if (before.stopped) return;
        const barred = new Set([
          ...next.forbidden.map((each) => each.test.id),
          ...next.later.map(({ id }) => id),
        ]);
        for (const each of book.tests.values()) {
          if (facts[`obs.${each.id}`] !== undefined || barred.has(each.id) || each.waitHours > 0) continue;
          if (each.formats.length > 0 && !each.formats.includes(format)) continue;
          if (each.by === "touch" || each.by === "handle" || each.answers.startsWith("number")) continue;
          expect({
            test: each.id,
            ...rulings({ ...facts, [`obs.${each.id}`]: truth[each.id] as FactValue }),
          }).toEqual({
            test: each.id,
            ...before,
          });
        }
      }),
      { numRuns: 60, seed: 7 },
    );
  });
});

function rulings(facts: Facts) {
  const care = decide(book, { ...facts, "state.required_tests_missing": "no" });
  const names = (list: readonly { action: string }[]): string[] => list.map((each) => each.action).sort();
  return {
    stopped:
      care.banned.has("clean_any") &&
      care.banned.get("image")?.reasons.some((each) => each.tier === 1) === true,
    forbid: names(care.forbid),
    require: names([...care.require, ...care.later]),
    escalate: names(care.escalate),
    hold: care.hold,
  };
}
