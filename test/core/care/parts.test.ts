import { describe, expect, test } from "vitest";
import { careOfCampaign } from "../../../src/core/care/item-care.ts";
import { loadNorms } from "../../../src/core/care/norms.ts";
import { routeOf } from "../../../src/core/care/route.ts";
import type { Finding, Item } from "../../../src/core/items/campaign.ts";
import { benchCardView } from "../../../src/edge/papers/bench-card-view.ts";
import { readPublished } from "../../../src/edge/published.ts";
import { publishedRuleBook } from "../../../src/edge/rule-book.ts";
import { campaignOf, SAMPLES } from "../say/sample-campaign.ts";

const book = publishedRuleBook();
const norms = loadNorms(readPublished("norms.json"));
const sample = campaignOf(SAMPLES);

const NO = ["wet", "damp_to_touch", "growth_visible", "live_insects", "rodent_signs", "guano"]
  .concat(["powder_between", "fragments_fall", "leaf_delaminates", "devotional_deposit"])
  .concat(["media_flakes", "order_uncertain"]);
const bundle: Item = {
  id: "PL-1",
  title: "Sixty leaves, the outer two painted",
  facts: { format: "palm_leaf_bundle", support: "palm_leaf", media: ["incised_inked"], leaves: 60 },
  parts: [{ name: "painted outer leaves", facts: { media: ["painted", "incised_inked"], leaves: 2 } }],
  priority: "want",
};
const findingsOf = (item: string, more: readonly Omit<Finding, "item">[]): Finding[] => {
  const given = [
    ...NO.map((test) => ({ part: "", test, answer: "no" })),
    { part: "", test: "writing_raised_or_cut", answer: "cut" },
  ];
  const own = new Set(more.filter((each) => each.part === "").map((each) => each.test));
  return [...given.filter((each) => !own.has(each.test)), ...more].map((each) => ({ item, ...each }));
};
const careOf = (item: Item, more: readonly Omit<Finding, "item">[] = []) => {
  const campaign = { ...sample, items: [item], findings: findingsOf(item.id, more), sessions: [] };
  const [care] = careOfCampaign(book, campaign);
  if (!care) throw new Error("no care");
  return { care, route: routeOf(norms, care) };
};

describe("a bundle with plain inner and painted outer leaves", () => {
  const { care, route } = careOf(bundle);
  const painted = care.parts[0]?.care;
  test("may have its plain leaves sponged and vacuumed, never its painted ones", () => {
    expect(care.whole.banned.has("clean_sponge")).toBe(false);
    expect(painted?.banned.has("clean_sponge")).toBe(true);
    expect(painted?.banned.has("clean_vacuum_mesh")).toBe(true);
  });
  test("gets two Bench steps on one card, each with its own methods", () => {
    const context = { campaign: "", endings: book.endings, families: book.families, storeWords: norms.what };
    const steps = benchCardView(care, route, context).steps.filter((step) => step.act.startsWith("Clean"));
    expect(steps.map((step) => step.act)).toEqual(["Clean: the rest", "Clean: painted outer leaves"]);
    expect(steps[0]?.methods.join()).toContain("sponge");
    expect(steps[1]?.methods.join()).not.toContain("Pat with a dry rubber sponge");
    expect(steps[1]?.methods.join()).toContain("Air bulb");
  });
});

describe("what one part has, the whole item answers for", () => {
  test("growth on the painted leaves alone keeps the whole bundle from Bench and camera, and people protected", () => {
    const { care, route } = careOf(bundle, [
      { part: "painted outer leaves", test: "growth_visible", answer: "yes" },
    ]);
    expect(care.whole.banned.has("image")).toBe(true);
    expect(care.whole.banned.has("clean_any")).toBe(true);
    expect(care.whole.require.map((each) => each.action)).toContain("ppe_mould_base");
    expect(route.steps[0]?.act).toBe("admit");
  });
  test("poison powder in an insert sets the whole item aside", () => {
    const { route } = careOf({ ...bundle, parts: [{ name: "insert", facts: { format: "loose_sheets" } }] }, [
      { part: "insert", test: "powder_between", answer: "yes" },
      { part: "insert", test: "rusted_fasteners", answer: "no" },
    ]);
    expect(route.destiny).toBe("set aside");
  });
  test("an insert with a must-ask test open keeps the whole item at the Door", () => {
    const { route } = careOf({ ...bundle, parts: [{ name: "insert", facts: { format: "loose_sheets" } }] });
    expect(route.destiny).toBe("at the Door");
  });
});

describe("a red-rotted cover recorded as a part of its own", () => {
  const book1: Item = {
    id: "B-1",
    title: "Ledger",
    facts: { format: "bound_volume", support: "paper_rag", media: ["ink_carbon"], leaves: 100 },
    parts: [{ name: "cover", facts: { cover: "leather_calf" } }],
    priority: "want",
  };
  const more = [
    { part: "", test: "bright_green", answer: "no" },
    { part: "", test: "opening_angle", answer: 110 },
    { part: "", test: "leaves_stuck", answer: "no" },
    { part: "", test: "rub_mark", answer: "none" },
    { part: "cover", test: "rub_mark", answer: "clear" },
  ];
  const { care, route } = careOf(book1, more);
  test("keeps the leaves from the Bench until it is wrapped", () => {
    expect(care.whole.banned.get("clean_pages")?.until).toContain("wrapped");
  });
  test("puts pictures of the cover and a wrapper on the item's way", () => {
    expect(route.steps.map((step) => step.act)).toEqual(["covers", "wrap", "clean", "image", "box"]);
  });
  test("leaves the leather without sponge, the leaves with one", () => {
    expect(care.parts[0]?.care.banned.has("clean_sponge_leather")).toBe(true);
    expect(care.whole.banned.has("clean_sponge_leather")).toBe(false);
  });
});
