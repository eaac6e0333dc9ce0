import { expect, test } from "vitest";
import { planPicture } from "../../../src/core/plan/picture/plan-picture.ts";
import { planPicturePaper } from "../../../src/edge/papers/plan-picture-paper.ts";
import { keptCampaign, keptPlan } from "../../core/plan/checker/good-plan.ts";

const picture = planPicture({ plan: keptPlan(), campaign: keptCampaign(), routes: [], use: new Map() });
const said = { campaign: "An invented campaign", day: "1 June 2026" };

/** What a PDF says of itself, its streams left out. */
const plainText = (pdf: Uint8Array): string => Buffer.from(pdf).toString("latin1");

test("the plan drawn is one tagged sheet on its side, its fonts within, the same every time", async () => {
  const pdf = await planPicturePaper(picture, said, "A4");
  const text = plainText(pdf);
  expect(text).toContain("/StructTreeRoot");
  expect(text).toMatch(/\/FontFile[23]/);
  expect(text.match(/\/MediaBox\s*\[0 0 841\.8\d* 595\.2\d*\]/g)).toHaveLength(1); // A4, ISO 216: 297 × 210 mm
  expect(await planPicturePaper(picture, said, "A4")).toEqual(pdf);
});

test("on Letter it is 11 × 8.5 in", async () => {
  expect(plainText(await planPicturePaper(picture, said, "Letter"))).toMatch(/\/MediaBox\s*\[0 0 792 612\]/);
});
