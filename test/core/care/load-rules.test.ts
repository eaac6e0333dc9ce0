import { describe, expect, test } from "vitest";
import { loadRuleBook } from "../../../src/core/care/load-rules.ts";
import type { RuleTables } from "../../../src/core/care/rule-book.ts";
import { sayProblem } from "../../../src/core/say/problems.ts";
import { publishedTables } from "../../../src/edge/rule-book.ts";

const tables = publishedTables();
const examples = (fact: string, yes: unknown, no: unknown) => [
  { given: { [fact]: yes }, expect: "yes" },
  { given: { [fact]: no }, expect: "no" },
  { given: { [fact]: "unsure" }, expect: "unsure" },
];
const GOOD = {
  id: "X1",
  tier: 3,
  unsure: "fire",
  text: "Bundles are untied in the presence of the family.",
  when: { f: "item.format", op: "eq", v: "palm_leaf_bundle" },
  then: [{ verb: "forbid", action: "reorder", ends: "custodian" }],
  why: "Asked for by the family",
  source: "the family, 3 March",
  examples: examples("item.format", "palm_leaf_bundle", "newspaper"),
};
const said = (rule: object, more: Partial<RuleTables> = {}): string => {
  const book = loadRuleBook({ ...tables, ...more }, { file: "rules.json", rules: [rule] });
  return book.ok ? "read" : book.problems.map(sayProblem).join("\n");
};

describe("a campaign's own rule", () => {
  test("is read when it adds a limit", () => {
    expect(said(GOOD)).toBe("read");
  });
  test.each([
    ["an unknown fact", { when: { f: "obs.colour", op: "eq", v: "yes" } }, "obs.colour"],
    [
      "a value that never occurs",
      { when: { f: "item.format", op: "eq", v: "palm_leave" } },
      "item.format = palm_leave",
    ],
    ["a word where a number belongs", { when: { f: "obs.erh", op: "gte", v: "damp" } }, "obs.erh = damp"],
    ["a condition it cannot read", { when: { fact: "obs.erh" } }, "all, any, not, or { f, op, v }"],
    ["an unknown act", { then: [{ verb: "forbid", action: "fly", ends: "never" }] }, "forbid fly"],
    ["a ban without an end", { then: [{ verb: "forbid", action: "reorder" }] }, "ends: undefined"],
    ["nothing to say", { then: [] }, "at least one consequence"],
    ["no tier", { tier: 5 }, "tier 1, 2, 3 or 4"],
    ["no source", { source: "" }, "who asked for it"],
    ["a ban that waits on an unsure", { unsure: "hold" }, "unsure: fire, for it guards"],
    ["a published id", { id: "Q06" }, "an id used once"],
    ["no example for unsure", { examples: GOOD.examples.slice(0, 2) }, "no example for unsure"],
    [
      "an example that comes out otherwise",
      { examples: examples("item.format", "newspaper", "palm_leaf_bundle") },
      "as its example says",
    ],
    [
      "a condition no item can meet",
      { when: { all: [GOOD.when, { f: "item.format", op: "eq", v: "newspaper" }] } },
      "yes, as its example says",
    ],
  ])("is refused with %s, and the fault is named", (_, change, words) => {
    expect(said({ ...GOOD, ...change })).toContain(words);
    expect(said({ ...GOOD, ...change })).toContain("rules.json, rule");
  });

  describe("never weakens what protects people and items", () => {
    test("no command in tier 1 or 2, which could lift a ban", () => {
      const rule = { ...GOOD, tier: 1, then: [{ verb: "require", action: "clean_frass" }] };
      expect(said(rule)).toContain("it may not lift a ban");
    });
    test("no ban on a safeguard", () => {
      const rule = {
        ...GOOD,
        unsure: "hold",
        then: [{ verb: "forbid", action: "quarantine_as_mould", ends: "never" }],
      };
      expect(said(rule)).toContain("local rules never lift a safeguard");
    });
  });
});

describe("the published tables are refused", () => {
  const derivations = tables.derivations as object[];
  test("with a condition that no rule reads", () => {
    const unused = {
      id: "D99",
      condition: "dusty",
      when: { f: "obs.soot", op: "eq", v: "yes" },
      source: "CP",
    };
    expect(said(GOOD, { derivations: [...derivations, unused] })).toContain("rule dusty");
  });
  test("with conditions that read each other in a circle", () => {
    const circle = [
      { id: "D98", condition: "a", when: { f: "cond.b", op: "eq", v: "yes" }, source: "CP" },
      { id: "D99", condition: "b", when: { f: "cond.a", op: "eq", v: "yes" }, source: "CP" },
    ];
    expect(said(GOOD, { derivations: [...derivations, ...circle] })).toContain("in a circle");
  });
  test("a file that is no list of rules says so", () => {
    const book = loadRuleBook(tables, { file: "rules.json", rules: { id: "X1" } });
    expect(book.ok ? "" : book.problems.map(sayProblem).join()).toContain("expected a list of rules");
  });
});
