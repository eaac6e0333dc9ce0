import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { careOfCampaign } from "../../../../src/core/care/item-care.ts";
import type { Campaign } from "../../../../src/core/items/campaign.ts";
import { type CampaignSample, sampleOfCampaign } from "../../../../src/core/plan/sample/strata.ts";
import { readCampaignFolder } from "../../../../src/edge/intake/read-campaign.ts";
import { projectFolder } from "../../../../src/edge/published.ts";
import { publishedRuleBook } from "../../../../src/edge/rule-book.ts";

const { campaign: read } = await readCampaignFolder(join(projectFolder(), "demo", "saltmere"));
const campaign = read as Campaign;
const of = (some: Campaign): CampaignSample =>
  sampleOfCampaign(some, careOfCampaign(publishedRuleBook(), some));
/** The campaign as if only each seventh item had been looked at. */
const seventh = new Set(campaign.items.filter((_, at) => at % 7 === 0).map(({ id }) => id));
const partly = { ...campaign, findings: campaign.findings.filter(({ item }) => seventh.has(item)) };
const [whole, part] = [of(campaign), of(partly)];
const stratum = (sample: CampaignSample, trouble: string, by: string, name: string) =>
  sample.strata.find((each) => each.trouble === trouble && each.by === by && each.name === name);

describe("a survey as a sample", () => {
  test("what was looked at whole is known exactly", () => {
    expect(stratum(whole, "wet", "format", "bound_volume")).toMatchObject({
      found: 9,
      lowItems: 9,
      highItems: 9,
    });
  });
  test("of a seventh looked at, each interval holds the share of the whole", () => {
    for (const trouble of ["mould", "red rot", "insects", "wet"]) {
      const [truth, guess] = [stratum(whole, trouble, "all", ""), stratum(part, trouble, "all", "")];
      expect(guess?.lowItems, trouble).toBeLessThanOrEqual(truth?.lowItems ?? -1);
      expect(guess?.highItems, trouble).toBeGreaterThanOrEqual(truth?.highItems ?? Number.POSITIVE_INFINITY);
    }
  });
  test("red rot is asked of leather alone", () => {
    expect(stratum(whole, "red rot", "all", "")?.items).toBeLessThan(211);
    expect(stratum(whole, "red rot", "format", "film_negative")).toBeUndefined();
  });
  test("unsure is neither yes nor no: it widens the interval", () => {
    const files = stratum(whole, "mould", "format", "loose_sheets");
    expect(files?.unsure).toBeGreaterThan(0);
    expect((files?.highItems ?? 0) - (files?.lowItems ?? 0)).toBe(files?.unsure);
  });
  test("shelves and formats each add up to the whole", () => {
    for (const by of ["format", "shelf"] as const) {
      const rows = part.strata.filter((each) => each.by === by && each.trouble === "mould");
      expect(rows.reduce((sum, each) => sum + each.items, 0)).toBe(1480);
      expect(rows.reduce((sum, each) => sum + each.looked, 0)).toBe(part.looked);
    }
  });
});

describe("what to look at next", () => {
  test("kinds of which few were looked at come up to thirty or all of them", () => {
    const films = part.next.find((each) => each.format === "newspaper");
    expect(films).toMatchObject({ why: "few" });
    expect(
      (films?.more ?? 0) + (stratum(part, "mould", "format", "newspaper")?.looked ?? 0),
    ).toBeGreaterThanOrEqual(30);
  });
  test("the items named were not looked at, are each named once, and are as many as asked for", () => {
    for (const each of part.next) {
      expect(new Set(each.items).size).toBe(each.more);
      expect(each.more).toBeLessThanOrEqual(each.unseen);
      expect(each.items.filter((id) => seventh.has(id))).toEqual([]);
    }
  });
  test("nothing is asked once all is known", () => {
    expect(whole.next.filter((each) => each.more > 4)).toEqual([]);
  });
  test("a campaign without one finding is looked at from nought", () => {
    const none = of({ ...campaign, findings: [] });
    expect(none.looked).toBe(0);
    expect(none.next.reduce((sum, each) => sum + each.more, 0)).toBeGreaterThan(300);
    expect(stratum(none, "mould", "all", "")).toMatchObject({ low: 0, high: 1 });
  });
});
