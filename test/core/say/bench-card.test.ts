import { describe, expect, test } from "vitest";
import { careOfCampaign } from "../../../src/core/care/item-care.ts";
import { loadNorms } from "../../../src/core/care/norms.ts";
import { routeOf } from "../../../src/core/care/route.ts";
import { sayDo, sayNot } from "../../../src/core/say/actions.ts";
import { sayCondition, spokenConditions } from "../../../src/core/say/conditions.ts";
import { benchCardView } from "../../../src/edge/papers/bench-card-view.ts";
import { readPublished } from "../../../src/edge/published.ts";
import { publishedRuleBook } from "../../../src/edge/rule-book.ts";
import { campaignOf, SAMPLES } from "./sample-campaign.ts";

const book = publishedRuleBook();
const norms = loadNorms(readPublished("norms.json"));
const campaign = campaignOf(SAMPLES);
const context = {
  campaign: campaign.name,
  endings: book.endings,
  families: book.families,
  storeWords: norms.what,
};
const cards = careOfCampaign(book, campaign).map((care) => {
  const route = routeOf(norms, care);
  return { care, route, card: benchCardView(care, route, context) };
});
const cardOf = (id: string) => {
  const found = cards.find((each) => each.card.item === id);
  if (!found) throw new Error(`No sample "${id}".`);
  return found.card;
};

test("every condition of the vocabulary has words of its own", () => {
  const { conditions } = readPublished("vocabulary.json") as { conditions: Record<string, unknown> };
  expect(spokenConditions().sort()).toEqual(Object.keys(conditions).sort());
  for (const condition of Object.keys(conditions)) expect(sayCondition(condition)).not.toContain("_");
});

// Rules B02, B03, B06, B07 (red rot) and Q06 (dryness before the camera) of data/rules.
describe("a red-rotted ledger with dormant mould", () => {
  const card = cardOf("LDG-01");
  test("names both troubles", () => {
    expect(card.conditions.join()).toContain("Dormant mould");
    expect(card.conditions.join()).toContain("Red rot");
  });
  test("is released, then its covers are pictured, then it is wrapped, and only then cleaned", () => {
    const acts = card.steps.map((step) => `${step.room} ${step.act}`);
    const at = (words: RegExp): number => acts.findIndex((act) => words.test(act));
    const order = [
      at(/Ward .*release/),
      at(/covers/),
      at(/Bench Wrap/),
      at(/Bench Clean/),
      at(/Camera Photograph$/),
    ];
    expect(order).not.toContain(-1);
    expect(order).toEqual([...order].sort((a, b) => a - b));
  });
  test("never has its leather oiled, damped or sponged", () => {
    for (const action of ["leather_dressing", "clean_damp_swab", "clean_sponge_leather"])
      expect(card.never).toContain(sayNot(action));
  });
  test("has not yet its final wrapper, its leaves or its camera, and says what each waits for", () => {
    const until = new Map(card.notYet.map((each) => [each.action, each.until]));
    expect(until.get(sayNot("wrap_cover_final"))).toContain(book.endings.covers_pictured);
    expect(until.get(sayNot("clean_pages"))).toContain(book.endings.wrapped);
    expect(until.get(sayNot("image"))).toContain(book.endings.dry_shown);
  });
});

// Rules C04, L01, L04, L09 of data/rules.
describe("a painted palm-leaf bundle", () => {
  const card = cardOf("PLM-01");
  test("never meets water, alcohol, a bent leaf or a sponge on paint", () => {
    for (const action of ["clean_damp_swab", "clean_ethanol", "flex_leaf", "clean_sponge"])
      expect(card.never).toContain(sayNot(action));
  });
  test("shows the owner's rule word for word", () => {
    expect(card.custodianRule).toBe("Bring the bundle with the right hand, never by the cord.");
  });
  test("is numbered before it is untied", () => {
    expect(card.lookBefore).toContain(sayDo("number_leaves"));
  });
});

describe.each(cards)("the card of $card.item", ({ care, card }) => {
  test("offers no method that is forbidden for good", () => {
    const banned = care.whole.forbid
      .filter((ban) => ban.until.includes("never"))
      .map((ban) => sayDo(ban.action));
    for (const step of card.steps) for (const method of step.methods) expect(banned).not.toContain(method);
  });
  test("keeps never and not yet apart", () => {
    const notYet = card.notYet.map((each) => each.action);
    expect(card.never.filter((action) => notYet.includes(action))).toEqual([]);
    for (const each of card.notYet) expect(each.until).toMatch(/^until /);
  });
  test("says nothing of why a person may or may not do mould work", () => {
    expect(JSON.stringify(card)).not.toMatch(
      /asthma|allerg|pregnan|weak defences|illness|unfit|diagnos|medic|beard|fit for mould|under 18/i,
    );
  });
});

test("a card with possible poison has no step, and says who rules the poison out", () => {
  const card = cardOf("PSN-01");
  expect(card.steps).toEqual([]);
  expect(card.askWho.join()).toMatch(/conservator.*health adviser/);
  expect(card.notYet.map((each) => each.until)).toContain(book.endings.poison_ruled_out);
});
