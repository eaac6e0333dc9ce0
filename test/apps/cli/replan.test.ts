import { mkdtemp, rm, writeFile } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import { replanCommand } from "../../../src/apps/cli/replan.ts";
import { openCampaign } from "../../../src/edge/keep/open-campaign.ts";
import { projectFolder } from "../../../src/edge/published.ts";

const lamps = join(projectFolder(), "demo", "nine-lamps");
let folder: string;
beforeAll(async () => {
  folder = await mkdtemp(join(tmpdir(), "leafward-replan-"));
});
afterAll(() => rm(folder, { recursive: true }));

async function run(...args: string[]) {
  const said: string[] = [];
  const complained: string[] = [];
  const status = await replanCommand(
    args,
    (line) => void said.push(line),
    (line) => void complained.push(line),
  );
  return { status, text: said.join("\n"), fault: complained.join("\n") };
}
const nothing = { assignments: [], itemDays: [], left: [], people: [] };
async function planFile(name: string, plan: object): Promise<string> {
  const path = join(folder, name);
  await writeFile(path, JSON.stringify(plan));
  return path;
}

describe("leafward replan", () => {
  test("without a folder, or with a day that is none, it says how it is asked", async () => {
    expect((await run()).fault).toContain("needs one campaign folder");
    expect(await run(lamps, "--today", "2026-02-30")).toMatchObject({ status: 2 });
    expect(await run("--help")).toMatchObject({ status: 0, fault: "" });
  });
  test("a file that is no plan, the plan of another campaign and a plan of a later morning are refused, each with what to do", async () => {
    const other = await planFile("other.json", { ...nothing, campaign: "Elsewhere", planFrom: "2026-09-01" });
    const { campaign } = await namesOf();
    const late = await planFile("late.json", { ...nothing, campaign, planFrom: "2027-01-04" });
    const none = await planFile("none.json", { name: "no plan" });
    const refused = await run(lamps, "--from", none);
    expect(refused.status).toBe(2);
    expect(refused.fault).toMatch(/is no plan of Leafward's/);
    expect((await run(lamps, "--from", other)).fault).toMatch(/"Elsewhere".*Name the plan of this campaign/);
    expect((await run(lamps, "--from", late)).fault).toMatch(/after the morning to plan for/);
  });
  test("a plan that told nothing leaves nothing to keep, and everything is planned", async () => {
    const { campaign, planFrom } = await namesOf();
    const empty = await planFile("empty.json", { ...nothing, campaign, planFrom });
    const { status, text } = await run(lamps, "--from", empty, "--json");
    expect(status).toBe(0);
    const its = JSON.parse(text);
    expect(its).toMatchObject({ kept: 0, moved: 0, changes: [] });
    expect(its.arrived.length).toBeGreaterThan(50);
  });
});

async function namesOf(): Promise<{ campaign: string; planFrom: string }> {
  const { campaign } = await openCampaign(lamps);
  return { campaign: campaign?.name ?? "", planFrom: campaign?.planFrom ?? "" };
}
