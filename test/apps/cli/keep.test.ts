import { cpSync, mkdirSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { backupLog } from "../../../src/apps/cli/backup.ts";
import { checkFolder } from "../../../src/apps/cli/check.ts";
import { keepSheets } from "../../../src/apps/cli/keep.ts";
import { restoreLog } from "../../../src/apps/cli/restore.ts";
import { verifyLog } from "../../../src/apps/cli/verify.ts";
import { newCampaignFiles } from "../../../src/edge/intake/new-campaign.ts";

const root = mkdtempSync(join(tmpdir(), "leafward-log-"));
afterAll(() => rmSync(root, { recursive: true, force: true }));

type Out = (line: string) => void;
async function said(
  command: (args: string[], out: Out, complain: Out) => Promise<number>,
  ...args: string[]
) {
  const [out, complaints]: [string[], string[]] = [[], []];
  const status = await command(
    args,
    (line) => out.push(line),
    (line) => complaints.push(line),
  );
  return { status, out: out.join("\n"), complaints: complaints.join("\n") };
}

function newFolder(name: string): string {
  const folder = join(root, name);
  mkdirSync(folder);
  for (const [file, text] of newCampaignFiles()) writeFileSync(join(folder, file), text);
  return folder;
}

test("a log's life: begun, checked, copied, verified, spoilt, restored", async () => {
  const folder = newFolder("begun");
  const stick = join(root, "stick");
  mkdirSync(stick);
  expect(await said(keepSheets, folder)).toMatchObject({
    status: 0,
    out: expect.stringContaining("Backup of the day"),
  });
  const checked = await said((_, out) => checkFolder(folder, out));
  expect(checked.out).toMatch(/log\.leafward\.db: \d+ entries; this is what plans and advice go by/);
  const copied = await said(backupLog, folder, stick, "--daily");
  expect(copied).toMatchObject({ status: 0, out: expect.stringContaining("Read from end to end") });
  const backup = join(stick, readdirSync(stick).find((name) => name.endsWith(".leafward.db")) ?? "");
  expect(await said(verifyLog, folder)).toMatchObject({ status: 0, out: expect.stringContaining("Whole") });
  writeFileSync(join(folder, "log.leafward.db"), "spoilt");
  expect(await said(verifyLog, folder)).toMatchObject({
    status: 2,
    complaints: expect.stringContaining("no log of Leafward"),
  });
  expect(await said(keepSheets, folder)).toMatchObject({
    status: 2,
    complaints: expect.stringContaining("restore"),
  });
  expect(await said(restoreLog, backup, folder)).toMatchObject({
    status: 0,
    out: expect.stringContaining("The log that was there"),
  });
  expect(await said(verifyLog, folder)).toMatchObject({ status: 0 });
});

test("what does not fit is said with the help, and nothing is done", async () => {
  for (const command of [keepSheets, backupLog, restoreLog, verifyLog]) {
    expect(await said(command)).toMatchObject({
      status: 2,
      complaints: expect.stringContaining("npx leafward"),
    });
    expect(await said(command, "a", "b", "--no-such")).toMatchObject({ status: 2 });
    expect(await said(command, "--help")).toMatchObject({ status: 0, complaints: "" });
  }
});

test("a folder without sheets or with sheets to mend says so", async () => {
  expect(await said(keepSheets, join(root, "nowhere"))).toMatchObject({
    status: 2,
    complaints: expect.stringContaining("no folder"),
  });
  const folder = newFolder("mend");
  cpSync(join(folder, "people.csv"), join(folder, "people.tsv"));
  writeFileSync(join(folder, "findings.csv"), "item,part,test,answer\nB-001,,growth_visible,purple\n");
  expect(await said(keepSheets, folder)).toMatchObject({
    status: 1,
    out: expect.stringContaining("must be mended"),
  });
});
