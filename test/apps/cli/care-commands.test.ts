import { cpSync, mkdtempSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { askFolder } from "../../../src/apps/cli/ask.ts";
import { checkFolder } from "../../../src/apps/cli/check.ts";
import { proveRules } from "../../../src/apps/cli/prove.ts";
import { whyItem } from "../../../src/apps/cli/why.ts";
import { projectFolder } from "../../../src/edge/published.ts";

const demo = (name: string): string => join(projectFolder(), "demo", name);
async function lines(command: (out: (line: string) => void) => Promise<number>) {
  const said: string[] = [];
  const status = await command((line) => said.push(line));
  return { status, text: said.join("\n") };
}
const why = (folder: string, item: string) => lines((out) => whyItem(folder, item, out, out));
const ask = (folder: string, item?: string) =>
  lines((out) => askFolder({ folder, item, all: false, out, complain: out }));

describe("leafward why", () => {
  test("says what was seen, what follows, what is forbidden until when, by which rule and source", async () => {
    const { text, status } = await why(demo("saltmere"), "SR-0006");
    expect(status).toBe(0);
    for (const words of [
      "growth seen: yes",
      "Dormant mould, severity 4 of 4",
      "Not yet: photographing, until two bag readings",
      "Never: damp swab",
      "Q06",
      "The National Archives (UK)",
      "follow local rules and licensed practice",
    ])
      expect(text).toContain(words);
    expect(text).not.toContain("undefined");
  });
  test("keeps to a hundred columns", async () => {
    const { text } = await why(demo("nine-lamps"), "NL-002");
    expect(text.split("\n").filter((line) => line.length > 100)).toEqual([]);
  });
  test("tells the parts of a bundle apart", async () => {
    expect((await why(demo("nine-lamps"), "NL-002")).text).toContain("PART: painted outer leaves");
  });
  test("says in the first lines why a poisoned item is set aside, where it stays and whom to ask", async () => {
    const { text } = await why(demo("nine-lamps"), "NL-238");
    const head = text.split("\n").slice(0, 6).join(" ");
    expect(head).toContain("set aside");
    expect(head).toContain("ask a health adviser");
    expect(head).toContain("bagged, marked as dangerous");
  });
  test("an item that is not there is refused, with what is near it", async () => {
    const { text, status } = await why(demo("saltmere"), "SR-00");
    expect(status).toBe(2);
    expect(text).toContain("Near it: SR-0001");
  });
});

describe("leafward ask", () => {
  test("names the next look, the items it is for, and what must still be asked after it", async () => {
    const { text, status } = await ask(demo("saltmere"));
    expect(status).toBe(0);
    expect(text).toContain("LOOK  One glance");
    expect(text).toContain("must-ask after it");
    expect(text).toMatch(/\d+ of \d+ items are settled/);
  });
  test("of one item it also names what waits and what is forbidden to try", async () => {
    const { text } = await ask(demo("nine-lamps"), "NL-002");
    expect(text).toContain("Later: What does the humidity reader in the closed bag say? It takes 24 hours.");
    expect(text).toContain("Rule T03 forbids the test.");
  });
});

describe("a campaign's own rules", () => {
  const folder = join(mkdtempSync(join(tmpdir(), "leafward rules ")), "nine lamps");
  cpSync(demo("nine-lamps"), folder, { recursive: true });
  const rule = {
    id: "X1",
    tier: 3,
    unsure: "fire",
    text: "No leaf is put in another order, whatever the numbers say.",
    when: { f: "item.format", op: "eq", v: "palm_leaf_bundle" },
    then: [{ verb: "forbid", action: "reorder", ends: "custodian" }],
    why: "The order as it came is the family's",
    source: "the family, 3 March",
    examples: [
      { given: { "item.format": "palm_leaf_bundle" }, expect: "yes" },
      { given: { "item.format": "newspaper" }, expect: "no" },
      { given: { "item.format": "unsure" }, expect: "unsure" },
    ],
  };
  const keep = (rules: unknown): void => writeFileSync(join(folder, "rules.json"), JSON.stringify(rules));

  test("are proved by check, and speak in why", async () => {
    keep([rule]);
    const { text } = await lines((out) => checkFolder(folder, out));
    expect(text).toMatch(/1 own rules; (\d+) of \1 safety claims hold/);
    expect((await why(folder, "NL-002")).text).toContain("[the family, 3 March; local rule]");
  });
  test("with a fault stop why, ask and prove, and name the rule", async () => {
    keep([{ ...rule, tier: 1, then: [{ verb: "require", action: "clean_frass" }] }]);
    for (const { status, text } of [await why(folder, "NL-002"), await ask(folder)]) {
      expect(status).toBe(2);
      expect(text).toContain("rules.json, rule X1");
    }
    expect((await lines((out) => proveRules(folder, out, out))).status).toBe(2);
  });
  test("that are no JSON are named as that", async () => {
    writeFileSync(join(folder, "rules.json"), "[{");
    expect((await lines((out) => checkFolder(folder, out))).text).toContain("a list of rules as JSON");
  });
});
