import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import type { Problem } from "../../../src/core/outcome/problem.ts";
import { problemCodes, sayProblem } from "../../../src/core/say/problems.ts";
import { projectFolder } from "../../../src/edge/published.ts";

const source = (folder: string): string =>
  readdirSync(folder, { withFileTypes: true })
    .map((entry) =>
      entry.isDirectory() ? source(join(folder, entry.name)) : readFileSync(join(folder, entry.name), "utf8"),
    )
    .join("\n");
const intake = ["edge", "core/care", "core/log", "core/stores", "apps/cli", "apps/server", "apps/web"]
  .map((folder) => source(join(projectFolder(), "src", folder)))
  .join("\n");

describe("every problem has its sentence", () => {
  test("as a person reads it", () => {
    const problem: Problem = {
      code: "not-a-number",
      severity: "stop",
      file: "items.csv",
      line: 14,
      column: "leaves",
      got: "forty",
      remedy: "Write digits, e.g. 40.",
    };
    expect(sayProblem(problem)).toBe(
      'items.csv, line 14, column leaves: "forty" is not a number. Write digits, e.g. 40.',
    );
  });
  test("without a place it begins with a capital", () => {
    expect(sayProblem({ code: "empty-folder", severity: "stop", got: "a", remedy: "Fill it." })).toBe(
      'The folder "a" is empty. Fill it.',
    );
  });
  test.each(problemCodes())("%s", (code) => {
    const said = sayProblem({
      code,
      severity: "stop",
      file: "a.csv",
      line: 2,
      got: "GOT",
      expected: "EXPECTED",
      remedy: "Mend it.",
    });
    expect(said).toMatch(/^a\.csv, line 2: .+[.] Mend it\.$/);
    expect(said).not.toMatch(/undefined|\[object/);
  });
  test("every code that the reading of folders and rules names has one", () => {
    const named = [...intake.matchAll(/(?:problem|refused)\(\s*"([a-z0-9-]+)"/g)].map(([, code]) => code);
    expect(named.length).toBeGreaterThan(50);
    expect(named.filter((code) => !problemCodes().includes(code ?? ""))).toEqual([]);
  });
  test("no sentence is kept that nobody says", () => {
    expect(problemCodes().filter((code) => !intake.includes(`"${code}"`))).toEqual([]);
  });
  test("a code without a sentence is still said", () => {
    expect(sayProblem({ code: "quite-new", severity: "note", got: "x", remedy: "Look." })).toContain(
      "Quite new",
    );
  });
});
