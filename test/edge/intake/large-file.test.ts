import { once } from "node:events";
import { createWriteStream } from "node:fs";
import { join } from "node:path";
import { finished } from "node:stream/promises";
import { describe, expect, test } from "vitest";
import { readCampaignFolder } from "../../../src/edge/intake/read-campaign.ts";
import { folderWith, the } from "./campaign-folder.ts";

const MEGABYTES = 200;
/** Peak memory of this process, in MB; it only grows, so the last test sees all. */
const peak = (): number => process.resourceUsage().maxRSS / 1024;

/** A file of about 200 MB: a beginning, then the same block again and again. */
async function large(folder: string, name: string, beginning: string, block: string): Promise<void> {
  const file = createWriteStream(join(folder, name));
  file.write(beginning);
  const times = Math.ceil((MEGABYTES * 1e6) / Buffer.byteLength(block));
  for (let i = 0; i < times; i++) if (!file.write(block)) await once(file, "drain");
  file.end();
  await finished(file);
}

describe("a table of 200 MB is refused or read in plain words, within a minute and a gigabyte", () => {
  test("items: read up to the stated number of rows, then said", async () => {
    const folder = await folderWith({});
    const rows = Array.from(
      { length: 1000 },
      (_, i) => `B-001,Duplicate ${i},other,paper_rag,pencil|ink_carbon,,,,12,300,200,10,0.5`,
    ).join("\n");
    await large(
      folder,
      "items.csv",
      "item,title,format,support,media,cover,process,has,leaves,height_mm,width_mm,thickness_mm,mass_kg\nB-001,One,other,,,,,,,,,,\nB-002,Two,other,,,,,,,,,,\n",
      `${rows}\n`,
    );
    const read = await readCampaignFolder(folder);
    expect(the("too-many-rows", read)).toMatchObject({
      severity: "stop",
      line: 100_002,
      expected: "100,000",
    });
    expect(read.counts.items).toEqual({ rows: 100_000, used: 2 });
  });
  test("findings: half a million rows are taken in", async () => {
    const folder = await folderWith({});
    const rows = Array.from(
      { length: 1000 },
      () => `B-001,,growth_visible,no,2026-06-01,"${"somebody with a long name ".repeat(6)}"`,
    ).join("\n");
    await large(folder, "findings.csv", "item,part,test,answer,date,by\n", `${rows}\n`);
    const read = await readCampaignFolder(folder);
    expect(the("too-many-rows", read)).toMatchObject({ line: 500_002 });
    expect(read.campaign?.findings).toHaveLength(500_000);
  });
  test("nothing but nonsense: given up early", async () => {
    const folder = await folderWith({});
    await large(folder, "findings.csv", "item,part,test,answer\n", 'X,Y,Z,"W",too,many\n'.repeat(10_000));
    the("too-many-problems", await readCampaignFolder(folder));
  });
  test("a quotation mark that never closes", async () => {
    const folder = await folderWith({});
    await large(
      folder,
      "items.csv",
      'item,title,format\nB-001,One,other\nB-002,"Two,other\n',
      "B-003,Three,other\n".repeat(10_000),
    );
    expect(the("unclosed-quote", await readCampaignFolder(folder)).line).toBe(3);
  });
  test("no gigabyte was needed", () => expect(peak()).toBeLessThan(1000));
});
