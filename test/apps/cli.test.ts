import { spawnSync } from "node:child_process";
import { existsSync, mkdtempSync, readdirSync, readFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { projectFolder } from "../../src/edge/published.ts";

const root = projectFolder();
const leafward = (args: string[], input = "") =>
  spawnSync(process.execPath, [join(root, "bin", "leafward.mjs"), ...args], {
    input,
    encoding: "utf8",
    cwd: root,
  });

test("help names every command and the exit codes", () => {
  const { stdout, status } = leafward(["help"]);
  for (const word of ["start", "plan", "check", "new", "decide", "ask", "why", "prove", "Exit codes"])
    expect(stdout).toContain(word);
  expect(status).toBe(0);
});

test("decide answers one case as JSON, with rule and source for each act", () => {
  const given = {
    item: { format: "bound_volume", cover: "leather_calf" },
    obs: { rub_mark: "heavy" },
    plan: { step: "clean" },
  };
  const { stdout, status } = leafward(["decide"], JSON.stringify(given));
  const answer = JSON.parse(stdout);
  expect(status).toBe(0);
  expect(answer.conditions).toContain("red_rot");
  expect(answer.forbid).toEqual(expect.arrayContaining(["clean_cover_direct", "image", "clean_any"]));
  expect(answer.until.clean_cover_direct).toBe("never by this team");
  expect(answer.order).toContainEqual(["image_covers", "wrap_cover"]);
  expect(answer.hold).toBe(true);
  expect(answer.missingTests).toContain("growth_visible");
  expect(answer.reasons.every((reason: { source: string }) => reason.source.length > 0)).toBe(true);
});

test("decide refuses what is not JSON, says so, and exits with 2", () => {
  const { stderr, status } = leafward(["decide"], "growth: yes");
  expect(stderr).toContain("not JSON");
  expect(status).toBe(2);
});

test.each([
  [["plan"]],
  [["fly", "away"]],
  [["plan", "a", "b"]],
  [["plan", "x", "--sheet", "A3"]],
  [["plan", "x", "--today", "2026-02-30"]],
])("%j is refused with a sentence and exit code 2", (args) => {
  const { stderr, status } = leafward(args);
  expect(stderr.length).toBeGreaterThan(20);
  expect(stderr).not.toContain("    at ");
  expect(status).toBe(2);
});

test("plan writes plan, papers and tables of a campaign folder whose path has spaces and other letters", () => {
  const out = join(mkdtempSync(join(tmpdir(), "leafward é ")), "Σ plan");
  const { stdout, status, stderr } = leafward(["plan", join(root, "demo", "nine-lamps"), "--out", out]);
  expect([0, 1], stderr).toContain(status);
  expect(stdout).toContain("Finish");
  expect(stdout.split("\n").filter((line) => line.trim() !== "").length).toBeLessThanOrEqual(12);
  const plan = JSON.parse(readFileSync(join(out, "plan.json"), "utf8"));
  expect(plan.proof.gap).toBeLessThanOrEqual(0.02);
  expect(
    readdirSync(join(out, "papers")).filter((name) => name.endsWith(".pdf")).length,
  ).toBeGreaterThanOrEqual(3);
  for (const table of ["work", "people-days", "item-days", "left", "orders", "stores"])
    expect(existsSync(join(out, "tables", `${table}.csv`))).toBe(true);
});
