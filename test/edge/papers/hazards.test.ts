import { describe, expect, test } from "vitest";
import type { ItemCare } from "../../../src/core/care/item-care.ts";
import { careOfCampaign } from "../../../src/core/care/item-care.ts";
import type { Campaign, Finding } from "../../../src/core/items/campaign.ts";
import { HAZARDS } from "../../../src/core/say/papers/hazards.ts";
import { boxLabelViews } from "../../../src/edge/papers/box-label-view.ts";
import { hazardLabelViews } from "../../../src/edge/papers/hazard-label-view.ts";
import { HAZARD_CODES, hazardSays, hazardSvg } from "../../../src/edge/papers/hazard-signs.ts";
import { signSays } from "../../../src/edge/papers/signs.ts";
import { book, campaign } from "./print-source.ts";

/** A book in boards, of which no other finding tells, once with the answers given. */
function careWith(answers: Readonly<Record<string, string>>, done: readonly "clean"[] = []): ItemCare {
  const findings: Finding[] = Object.entries(answers).map(([test, answer]) => ({
    item: "G-1",
    part: "",
    test,
    answer,
  }));
  const one: Campaign = {
    ...campaign,
    items: [
      {
        id: "G-1",
        title: "Marta Ilvane, her letters",
        facts: { format: "bound_volume", support: "paper_rag", cover: "paper", leaves: 40, mass_kg: 11 },
        parts: [],
        priority: "want",
      },
    ],
    findings,
    sessions: done.map((act) => ({
      day: campaign.planFrom,
      item: "G-1",
      act,
      person: "AA",
      minutes: 30,
      exposed: true,
    })),
  };
  const [care] = careOfCampaign(book, one);
  if (!care) throw new Error("no care");
  return care;
}
const labelOf = (care: ItemCare) =>
  hazardLabelViews("An invented campaign", [care], [], campaign.planFrom)[0];

describe("the hazard label", () => {
  const droppings = careWith({ guano: "yes", growth_visible: "no", wet: "no" });
  test("says what it holds, by which signs, whom to ask and since when", () => {
    const label = labelOf(droppings);
    expect(label?.head).toBe("Ask before opening");
    expect(label?.signs).toEqual(expect.arrayContaining(["W009", "M017", "M009"])); // ISO 7010; droppings as biological matter: common practice, no source
    expect(JSON.stringify(label?.lines)).toContain("bat or bird droppings");
  });
  test("takes what nobody is sure of for something it may hold", () => {
    const label = labelOf(careWith({ guano: "unsure", growth_visible: "no" }));
    expect(JSON.stringify(label?.lines)).toMatch(/May hold.*droppings/);
  });
  test("is printed for no item without danger", () => {
    expect(
      labelOf(
        careWith({ guano: "no", growth_visible: "no", bright_green: "no", powder_or_poison_label: "no" }),
      ),
    ).toBeUndefined();
  });
});

test("cleaning ends the warning of mould, never that of poison", () => {
  for (const [name, { endsWithCleaning }] of Object.entries(HAZARDS))
    expect(endsWithCleaning, name).toBe(/mould|guano|rodent|flood/.test(name));
});

test("every sign a label can ask for is drawn", () => {
  for (const { signs } of Object.values(HAZARDS))
    for (const code of signs) expect(signSays(code) ?? hazardSays(code), code).not.toBeNull();
});

describe("the hazard pictograms of chemicals", () => {
  test.each(HAZARD_CODES)("%s is a black figure on white in a red square set on its corner", (code) => {
    // UN, Globally Harmonized System, annex 1: frame and colours; from memory
    expect(hazardSvg(code)).toMatch(/<path d="M50 4 L96 50 L50 96 L4 50 Z" fill="#ffffff" stroke="#b02318"/);
    expect(hazardSvg(code)).toContain('<g fill="#1a1a1a">');
  });
  test("a code without a drawing gives null", () => expect(hazardSvg("GHS99")).toBeNull());
});

describe("the box label", () => {
  const care = careWith({ growth_visible: "no", wet: "no" });
  const [label] = boxLabelViews("An invented campaign", [{ box: "BX-07", items: ["G-1"] }], {
    care: [care],
    routes: [],
  });
  test("holds number, contents and handling", () => {
    expect(label?.number).toBe("BX-07");
    expect(label?.head).toBe("bound volume, G-1");
    expect(JSON.stringify(label?.lines)).toContain("Two people carry it"); // 11 kg; from 10 kg on: common practice, no source
  });
  test("holds no person's name, as titles may", () => {
    expect(JSON.stringify(label)).not.toContain("Ilvane");
  });
  test("is opened only by people on mould work while what was not cleaned lies in it", () => {
    const grown = careWith({
      growth_visible: "yes",
      growth_smears: "no",
      wet: "no",
      growth_lifts_dry: "yes",
    });
    const [asFound] = boxLabelViews("C", [{ box: "1", items: ["G-1"], day: campaign.planFrom }], {
      care: [grown],
      routes: [],
    });
    expect(JSON.stringify(asFound?.lines)).toContain("a person on mould work, protected, in the dirty zone");
    expect(JSON.stringify(asFound?.lines)).toContain("Look again");
  });
});
