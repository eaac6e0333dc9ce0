import { spawnSync } from "node:child_process";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { mix } from "../../../src/apps/cli/damp/mix.ts";
import { folder, said } from "./said.ts";

const withPoppler = spawnSync("pdftotext", ["-v"]).error === undefined ? test : test.skip;

/** The words of each page of what is written. */
async function pagesFor(typed: string): Promise<string[]> {
  const path = join(await folder(), "mix.pdf");
  const { code, flat } = await said(mix, `${typed} --made 2026-06-01 --label ${path}`);
  expect(code).toBe(0);
  expect(flat).toContain("the mix sheet and labels for the bottles");
  const { stdout } = spawnSync("pdftotext", ["-raw", path, "-"], { encoding: "utf8" });
  return stdout
    .split("\f")
    .slice(0, -1)
    .map((page) => page.replace(/\s+/g, " "));
}

describe("the sheet and labels of a solution", () => {
  withPoppler("a label a bottle of half a litre, with content, strength, dates and hazards", async () => {
    const labels = (await pagesFor("--want 70 --volume 1L --temp 31")).at(-1) ?? "";
    expect(labels.match(/Ethanol 70 % in water/g)).toHaveLength(2);
    for (const words of [
      "by volume",
      "Danger",
      "Made 1 June 2026",
      "Use by 30 November 2026",
      "never on an item",
    ])
      expect(labels).toContain(words);
    for (const code of ["H225", "H319", "P210", "P233", "P305"]) expect(labels).toContain(code);
  });
  withPoppler(
    "the sheet has the recipe of the answer, and what binds where nobody said the room",
    async () => {
      const [sheet = ""] = await pagesFor("--want 70 --volume 1000 --stock 96 --temp 20");
      expect(sheet).toContain("Weigh 589 g of the 96 % alcohol and add 297 g of clean water"); // OIML R 22 (1975), as in mix.test.ts
      expect(sheet).toContain("half a litre at a bench and one litre in the room");
      expect(sheet).toContain("100 mL of the mixture weighed");
    },
  );
  withPoppler("a can of five litres has a larger label of its own", async () => {
    expect((await pagesFor("--volume 5L")).at(-1)?.match(/Ethanol 70 % in water/g)).toHaveLength(1);
  });
  test("a folder that is not there is said, and nothing is written", async () => {
    const { code, complaints } = await said(mix, `--label ${join(await folder(), "not", "there.pdf")}`);
    expect(code).toBe(2);
    expect(complaints).toContain("could not be written");
  });
});
