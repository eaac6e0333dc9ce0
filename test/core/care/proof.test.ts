import { afterEach, describe, expect, test } from "vitest";
import { verdictLines } from "../../../src/apps/cli/prove.ts";
import { loadRuleBook } from "../../../src/core/care/load-rules.ts";
import { loadNorms } from "../../../src/core/care/norms.ts";
import { type Proof, prove, type Verdict } from "../../../src/core/care/proof/prove.ts";
import { proveRoutes } from "../../../src/core/care/proof/routes.ts";
import type { RuleBook, RuleTables } from "../../../src/core/care/rule-book.ts";
import { readPublished } from "../../../src/edge/published.ts";
import { publishedRuleBook, publishedTables } from "../../../src/edge/rule-book.ts";
import { startSat } from "../../../src/edge/solve/sat.ts";

const open: { close: () => void }[] = [];
afterEach(() => {
  for (const each of open.splice(0)) each.close();
});
async function proofOf(book: RuleBook): Promise<Proof> {
  const sat = await startSat();
  open.push(sat);
  return prove(book, sat);
}
const published = publishedRuleBook();
const { verdicts, spaceDigits } = await proofOf(published);

describe("over every set of facts the rules can tell apart", () => {
  test.each(verdicts.map((each) => [each.says, each] as const))("%s", (_, verdict) => {
    expect(verdictLines(published, verdict).join("\n")).toMatch(/^holds/);
  });
  test("the space is too large to be walked: more than 10^60", () => {
    expect(spaceDigits).toBeGreaterThan(60);
  });
  test("No route offers a forbidden act or skips an order, whatever was found and done before.", async () => {
    const sat = await startSat();
    open.push(sat);
    const walked = proveRoutes(published, loadNorms(readPublished("norms.json")), sat);
    expect(verdictLines(published, walked).join("\n")).toMatch(/^holds/);
    expect(walked.questions).toBeGreaterThan(10_000);
  });
});

/** The published rules with one of them changed. */
function changed(
  id: string,
  change: (rule: Record<string, unknown>) => Record<string, unknown> | null,
): RuleBook {
  const tables = publishedTables();
  const rules = Object.fromEntries(
    Object.entries(tables.rules).map(([theme, file]) => [
      theme,
      (file as Record<string, unknown>[]).flatMap((rule) => {
        const now = rule.id === id ? change(rule) : rule;
        return now ? [now] : [];
      }),
    ]),
  );
  const book = loadRuleBook({ ...tables, rules } as RuleTables);
  if (!book.ok) throw new Error(book.problems.map((each) => each.got).join());
  return book.value;
}
const without = (id: string): RuleBook => changed(id, () => null);
const verdictOf = async (book: RuleBook, id: string): Promise<Verdict> => {
  const found = (await proofOf(book)).verdicts.find((each) => each.id === id);
  if (!found) throw new Error(`no claim ${id}`);
  return found;
};

describe("a rule taken away or weakened is found, with an item that shows it", () => {
  test.each([
    ["C20", "no-alcohol-on-items"],
    ["Q06", "no-mould-at-camera"],
    ["B06", "covers-before-wrapper"],
    ["F02", "images-never-touched"],
    ["P04", "unfit-never-exposed"],
    ["P15", "heat-never-traded"],
    ["H12", "stops-stop"],
    ["N01", "untested-at-the-door"],
    ["Q01", "growth-means-protection"],
  ])("without %s the claim %s is broken", async (rule, claim) => {
    const verdict = await verdictOf(without(rule), claim);
    expect(verdict.holds).toBe(false);
    expect(verdictLines(published, verdict).join("\n")).toContain("For example this item");
  });

  test("a protective rule that waits on an unsure makes unsure milder than yes", async () => {
    const book = changed("P01", (rule) => ({
      ...rule,
      unsure: "fire",
      when: { f: "obs.growth_visible", op: "eq", v: "yes" },
      examples: [
        { given: { "obs.growth_visible": "yes" }, expect: "yes" },
        { given: { "obs.growth_visible": "no" }, expect: "no" },
        { given: { "obs.growth_visible": "unsure" }, expect: "unsure" },
      ],
    }));
    expect((await verdictOf(book, "growth-means-protection")).holds).toBe(false);
  });

  test("a command that would lift a ban of a lower tier is found", async () => {
    const book = changed("I07", (rule) => ({
      ...rule,
      tier: 1,
      then: [{ verb: "require", action: "clean_frass" }],
    }));
    const verdict = await verdictOf(book, "custodian-only-adds");
    expect(verdict.holds).toBe(false);
  });

  test("two orders that go round in a circle are found and named", async () => {
    const book = changed("B01", (rule) => ({
      ...rule,
      then: [...(rule.then as object[]), { verb: "require", action: "image_covers", after: "clean_edges" }],
    }));
    const verdict = await verdictOf(book, "no-order-circle");
    expect(verdict.holds).toBe(false);
    expect(verdict.about).toContain(
      "image covers before wrap cover"
        .replaceAll(" covers", "_covers")
        .replaceAll("wrap cover", "wrap_cover"),
    );
  });
});
