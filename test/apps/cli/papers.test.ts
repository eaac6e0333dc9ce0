import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { papers } from "../../../src/apps/cli/papers.ts";
import { PAPER_KINDS } from "../../../src/core/say/papers/command.ts";
import { projectFolder } from "../../../src/edge/published.ts";
import { readPdf } from "../../edge/papers/pdf-reader.ts";

const saltmere = join(projectFolder(), "demo", "saltmere");
const folder = mkdtempSync(join(tmpdir(), "leafward-printed-"));
afterAll(() => rmSync(folder, { recursive: true, force: true }));

async function run(...args: string[]) {
  const said: string[] = [];
  const complained: string[] = [];
  const status = await papers(
    args,
    (line) => void said.push(line),
    (line) => void complained.push(line),
  );
  return { status, text: said.join("\n"), fault: complained.join("\n") };
}

describe("leafward papers", () => {
  test("prints what was asked for, says where, and needs no plan for what the campaign alone tells", async () => {
    const out = join(folder, "some");
    const { status, text, fault } = await run(
      saltmere,
      "--only",
      "ward-sheet,stop",
      "--size",
      "letter",
      "--out",
      out,
    );
    expect(status).toBe(0);
    expect(fault).not.toContain("Planning");
    expect(readdirSync(out).sort()).toEqual(["stop.pdf", "ward-sheet.pdf"]);
    expect(text).toContain("ward-sheet.pdf, stop.pdf");
    expect(text).toContain("Follow local rules and licensed practice.");
    const { pages, size } = await readPdf(readFileSync(join(out, "ward-sheet.pdf")));
    expect(size).toEqual([792, 612]); // Letter on its side
    expect(pages[0]).toContain("SR-0402");
    const stop = await readPdf(readFileSync(join(out, "stop.pdf")));
    expect(stop.pages[0]).toContain("Friday, 19 June 2026"); // within three weeks of Monday 1 June, a day on which people work
    expect(stop.pages[0]).toContain("SR-1429");
  });
  test("prints all that belongs to one item, whatever letters its number was typed in", async () => {
    const out = join(folder, "one");
    const { status } = await run(saltmere, "--item", "sr-0402", "--out", out);
    expect(status).toBe(0);
    expect(readdirSync(out).sort()).toEqual([
      "bag-tag.pdf",
      "bench-card.pdf",
      "box-label.pdf",
      "hazard-labels.pdf",
      "item-SR-0402.pdf",
    ]);
    const { pages } = await readPdf(readFileSync(join(out, "item-SR-0402.pdf")));
    expect(pages.join(" ")).toContain("Bag closed, 12 L");
  });
  test("says of an unknown kind, item, size or day what is known", async () => {
    const refusals: readonly [string[], string][] = [
      [["--only", "posters"], "expected one of day-sheets"],
      [["--only", "week", "--item", "SR-0402"], "is not about one item"],
      [["--size", "a3"], "expected a4 or letter"],
      [["--stop", "soon"], "expected a day such as"],
      [["--only", "stop", "--stop", "2031-01-01"], "must lie between"],
      [["--item", "SR-99"], 'There is no item "SR-99"'],
    ];
    for (const [args, words] of refusals) {
      const { status, fault } = await run(saltmere, ...args);
      expect([status, fault]).toEqual([2, expect.stringContaining(words)]);
    }
  });
  test("names every kind in its help", async () => {
    const { status, text } = await run("--help");
    expect(status).toBe(0);
    for (const kind of Object.keys(PAPER_KINDS)) expect(text).toContain(kind);
  });
});
