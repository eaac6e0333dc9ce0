import { describe, expect, test } from "vitest";
import { loadGoods } from "../../../../src/core/stores/goods/goods.ts";
import { readPublished } from "../../../../src/edge/published.ts";

type Entry = {
  readonly id: string;
  readonly uses: readonly string[];
  readonly source: string;
  readonly status: string;
};
const { keeps, carriage } = readPublished("goods.json") as {
  keeps: readonly Entry[];
  carriage: readonly Entry[];
};
const { substitutes } = readPublished("substitutes.json") as { substitutes: readonly Entry[] };
const norms = readPublished("norms.json") as { consumables: readonly { id: string }[] };
const goods = loadGoods(readPublished("goods.json"), readPublished("substitutes.json"));

describe("what is published of stores", () => {
  test.each([...keeps, ...carriage, ...substitutes])(
    "$id names its source, its trust and consumables there are",
    (entry) => {
      expect(entry.source.trim()).not.toBe("");
      expect(["seen", "seen in part", "from memory", "common practice"]).toContain(entry.status);
      const known = norms.consumables.map(({ id }) => id);
      for (const use of entry.uses) expect(known).toContain(use);
    },
  );
  test("nothing stands in for a mask but another mask, and bleach, rice and an ordinary vacuum are never fine", () => {
    expect(goods.substitute("k-mask")?.never).toContain("cloth or surgical mask");
    expect(goods.substitute("k-eth")?.never).toContain("bleach on benches near items");
    expect(goods.substitute("k-gel")?.never).toContain("rice");
    expect(goods.substitute("k-hepa")?.never).toContain("ordinary vacuum cleaner");
    expect(goods.substitute("k-gloves")).toBeNull();
  });
  test("a rubber sponge is reckoned by its shorter year, table paper keeps", () => {
    expect(goods.keepsDays("k-sponge-light")).toBe(365);
    expect(goods.keepsDays("k-cover")).toBeNull();
  });
  test("alcohol and lithium come with what carriers ask", () => {
    expect(
      goods
        .carriage("k-eth")
        .map(({ text }) => text)
        .join(" "),
    ).toContain("UN 1170");
    expect(goods.carriage("k-reader").map(({ status }) => status)).toEqual(["from memory"]);
  });
});
