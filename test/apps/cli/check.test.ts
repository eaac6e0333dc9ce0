import { readdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { checkFolder } from "../../../src/apps/cli/check.ts";
import { newFolder } from "../../../src/apps/cli/new.ts";
import { emptyFolder, folderWith, rows } from "../../edge/intake/campaign-folder.ts";

async function said(work: (out: (line: string) => void) => Promise<number>) {
  const lines: string[] = [];
  const code = await work((line) => lines.push(line));
  return { code, text: lines.join("\n") };
}
const check = (folder: string, all = false) => said((out) => checkFolder(folder, out, { all }));

describe("leafward new", () => {
  test("writes a campaign that has nothing to mend, in a folder that need not be there", async () => {
    const folder = join(await emptyFolder(), "deep", "ein Ort – இடம்");
    expect((await said((out) => newFolder(folder, out))).code).toBe(0);
    const { code, text } = await check(folder);
    expect(text).toContain("Nothing to mend: 0 to mend, 0 to decide, 0 to note.");
    expect(code).toBe(0);
  });
  test("never writes into a folder with anything in it", async () => {
    const folder = await emptyFolder();
    await writeFile(join(folder, "mine.txt"), "mine");
    const { code, text } = await said((out) => newFolder(folder, out));
    expect(code).toBe(2);
    expect(text).toContain("nothing was written");
    expect(await readdir(folder)).toEqual(["mine.txt"]);
  });
  test("says so when the folder cannot be made", async () => {
    const file = join(await emptyFolder(), "file");
    await writeFile(file, "");
    expect((await said((out) => newFolder(join(file, "inside"), out))).code).toBe(2);
  });
});

describe("leafward check", () => {
  test("a folder that cannot be used: 2", async () => {
    const { code, text } = await check(await emptyFolder());
    expect(code).toBe(2);
    expect(text).toContain('The folder "campaign" is empty. Fill it with: leafward new <folder>');
    expect(text).toContain("This folder cannot be used yet");
  });
  test("only notes: 0", async () => {
    expect((await check(await folderWith({ "deliveries.csv": null }))).code).toBe(0);
  });
  test("something to mend or to decide: 1, grouped by file, with rows read and used", async () => {
    const folder = await folderWith({
      "items.csv": rows(
        "item,title,format,leaves,due",
        "B-001,One,other,forty,",
        "B-002,Two,other,4,02/07/2026",
        "B-003,Three,other,4,",
      ),
      "parts.csv": null,
      "sessions.csv": null,
      "ward.csv": null,
    });
    const { code, text } = await check(folder);
    expect(code).toBe(1);
    expect(text).toContain(
      'items.csv\n  MEND    line 2, column leaves: "forty" is not a number. Write digits, e.g. 120.',
    );
    expect(text).toMatch(/ {2}DECIDE {2}line 3, column due: "02\/07\/2026" can be read in two ways/);
    expect(text).toMatch(/items +3 +1 +2/);
    expect(text).toContain("1 to mend, 2 to decide, 2 to note.");
  });
  test("forty and more of a kind are shown in part, unless all are asked for", async () => {
    const bad = Array.from({ length: 1200 }, (_, i) => `A-${i},T,other,x`);
    const folder = await folderWith({
      "items.csv": rows("item,title,format,leaves", "B-001,One,other,1", "B-002,Two,other,1", ...bad),
    });
    const short = await check(folder);
    expect(short.text.match(/is not a number/g)).toHaveLength(10);
    expect(short.text).toContain("… and 1,190 more like the last; --all shows every one.");
    expect((await check(folder, true)).text.match(/is not a number/g)).toHaveLength(1200);
  });
});
