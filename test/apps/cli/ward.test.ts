import { cpSync, mkdtempSync, readFileSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { checkFolder } from "../../../src/apps/cli/check.ts";
import { wardOfFolder } from "../../../src/apps/cli/ward.ts";
import type { Day } from "../../../src/core/units/day.ts";
import { projectFolder } from "../../../src/edge/published.ts";

const saltmere = join(projectFolder(), "demo", "saltmere");
async function ward(folder: string, item?: string, today?: string) {
  const said: string[] = [];
  const out = (line: string): void => void said.push(line);
  const status = await wardOfFolder({ folder, item, today: today as Day | undefined, out, complain: out });
  return { status, text: said.join("\n") };
}

describe("leafward ward", () => {
  test("names each bag, what it reads, what is missing, and from when to look", async () => {
    const { text, status } = await ward(saltmere);
    expect(status).toBe(0);
    expect(text).toContain("6 items in it");
    expect(text).toContain("release earned by its readings");
    expect(text).toContain("Take the gel out, close the bag");
    expect(text).toMatch(/Look from 2026-06-\d\d on \(likeliest/);
    expect(text).toContain("Readings release, never a date.");
  });
  test("of one item says every condition of its release, met or not, and what to mind", async () => {
    const { text } = await ward(saltmere, "SR-0402");
    expect(text).toContain("A release asks for");
    expect(text).toContain("no   No gel lies in the bag while it is read.");
    expect(text).toContain("The readings earn a release; a person who looked at the item gives it.");
  });
  test("asked for an earlier morning it knows less", async () => {
    expect((await ward(saltmere, undefined, "2026-05-15")).text).toContain("2 items in it");
  });
  test("an item that lies in no bag is refused in words", async () => {
    const { status, text } = await ward(saltmere, "SR-0001");
    expect(status).toBe(2);
    expect(text).toContain("no bag was closed for it");
  });
});

describe("the Ward log as a table", () => {
  const folder = join(mkdtempSync(join(tmpdir(), "leafward ward ")), "saltmere");
  cpSync(saltmere, folder, { recursive: true });
  const table = readFileSync(join(saltmere, "ward.csv"), "utf8");
  test.each([
    ["2026-05-25,10:00,SR-0402,read,,", "the cell is empty"],
    ["2026-05-25,10:00,SR-0402,read,140,", "140"],
    ["2026-05-25,ten,SR-0402,read,50,", "09:30"],
    ["2026-05-25,10:00,SR-9999,read,50,", "SR-9999"],
    ["2026-05-25,10:00,SR-0402,sniffed,50,", "sniffed"],
  ])("a row %s is named and left out", async (row, words) => {
    writeFileSync(join(folder, "ward.csv"), `${table}${row}\n`);
    const said: string[] = [];
    await checkFolder(folder, (line) => void said.push(line));
    expect(said.join("\n")).toMatch(/ward\.csv\n.*line \d+/);
    expect(said.join("\n")).toContain(words);
  });
});
