import { mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { differencesFrom } from "../../scripts/checks/agree.ts";
import { rowsOfFolder } from "../../scripts/checks/rows.ts";
import { reportOf, tryRow } from "../../scripts/checks/run.ts";

const agrees = (expected: Record<string, unknown>, got: Record<string, unknown>, tolerance?: unknown) =>
  differencesFrom(expected, got, tolerance).length === 0;

describe("a tolerance", () => {
  test.each<[string, Record<string, unknown>, Record<string, unknown>, Record<string, unknown>, unknown]>([
    ["absolute for every key", { a: 10, b: 20 }, { a: 10.4, b: 19.6 }, { a: 10.6, b: 20 }, { abs: 0.5 }],
    ["relative for every key", { a: 200 }, { a: 201.9 }, { a: 202.1 }, { rel: 0.01 }],
    ["relative in full", { a: 200 }, { a: 198.1 }, { a: 197.9 }, { relative: 0.01 }],
    ["for each in a list", { a: [1, 2] }, { a: [1.04, 1.96] }, { a: [1.04, 2.06] }, { each: 0.05 }],
    ["the looser of two", { a: 10 }, { a: 10.9 }, { a: 11.1 }, { abs: 0.1, rel: 0.1 }],
    ["by key", { a: 10, b: 20 }, { a: 10.2, b: 20 }, { a: 10, b: 20.2 }, { a: 0.3 }],
    [
      "by key, one of each kind",
      { a: 10, b: 20 },
      { a: 10.2, b: 21 },
      { a: 10.4, b: 20 },
      { abs: { a: 0.3 }, rel: { b: 0.1 } },
    ],
    [
      "by the beginning of a key",
      { m_at_day: { "7": 9.6 } },
      { m_at_day: { "7": 9.62 } },
      { m_at_day: { "7": 9.7 } },
      { abs: { m: 0.03 } },
    ],
    [
      "none: equal",
      { a: null, b: "x", c: true, d: [1, null] },
      { a: null, b: "x", c: true, d: [1, null] },
      { a: 0, b: "x", c: true, d: [1, null] },
      {},
    ],
  ])("%s", (_, expected, near, far, tolerance) => {
    expect(agrees(expected, near, tolerance)).toBe(true);
    expect(agrees(expected, far, tolerance)).toBe(false);
  });
  test("of nought forgives rounding only", () => {
    expect(agrees({ a: 0.3 }, { a: 0.1 + 0.2 }, { a: 0 })).toBe(true);
    expect(agrees({ a: 0.3 }, { a: 0.30001 }, { a: 0 })).toBe(false);
  });
  test("never lets an absent, endless or missing value pass", () => {
    for (const got of [{}, { a: null }, { a: Number.NaN }, { a: Number.POSITIVE_INFINITY }, { a: "1" }])
      expect(agrees({ a: 1 }, got, { abs: 5 })).toBe(false);
  });
});

describe("a folder of check files", () => {
  const folder = mkdtempSync(join(tmpdir(), "checks-"));
  afterAll(() => rmSync(folder, { recursive: true }));
  test("is read to its end, and what is wrong in it is named with file and row", () => {
    writeFileSync(
      join(folder, "a.json"),
      `{"checks": [{"model": "double", "inputs": {"n": 2}, "expected": {"m": 4}}, {"expected": {}}]}`,
    );
    writeFileSync(
      join(folder, "b.json"),
      `[{"model": "other", "expected": {"m": 1}}, {"model": "double", "inputs": {"n": 3}, "expected": {"m": 5}}]`,
    );
    writeFileSync(join(folder, "c.json"), "{oh");
    const { rows, problems } = rowsOfFolder(folder);
    expect(rows.map((row) => row.model)).toEqual(["double", "other", "double"]);
    expect(problems[0]).toContain("a.json row 2: has no model");
    expect(problems[1]).toContain("c.json: cannot be read as JSON");
    const double = (inputs: { n?: unknown }) => ({ m: Number(inputs.n) * 2 });
    const report = reportOf(
      rows.map((row) => tryRow(row, row.model === "double" ? double : undefined)),
      problems,
    );
    expect(report).toContain("other: 1 not modelled");
    expect(report.join("\n")).toMatch(/b\.json row 2, inputs \{"n":3\}\n {4}m: expected 5 \(equal\), ours 6/);
    expect(report.at(-1)).toBe("1 passed, 3 failed");
  });
  test("that is absent is refused by name", () => {
    expect(() => rowsOfFolder(join(folder, "nowhere"))).toThrow(/nowhere/);
  });
});
