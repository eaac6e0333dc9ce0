import { mkdtemp, readdir, rm } from "node:fs/promises";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { wrap } from "../../../src/apps/cli/house.ts";
import { answer, said } from "../damp/said.ts";

describe("leafward wrap", () => {
  test("names every board of a drop-back box with size, number and grain", async () => {
    const { text, code } = await said(wrap, "drop-back --size 240x165x32");
    expect(text).toMatch(/case board +2 of 177\.1 × 261\.7 mm, grain along the 261\.7 mm/);
    expect(text).toMatch(/inner tray, head and tail wall +2 of 33\.9 × 166\.9 mm, grain along the 166\.9 mm/);
    expect(code).toBe(0);
  });
  test("takes the largest of three thicknesses, and asks for three where one was given", async () => {
    const three = await answer(wrap, "four-flap --size 240x165 --thick 30,32,31");
    expect(three).toMatchObject({ book: { thickness: 32 } });
    expect((await said(wrap, "four-flap --size 240x165x32")).flat).toContain("at three places");
    expect((await said(wrap, "four-flap --size 240x165 --thick 30,32,31")).flat).not.toContain(
      "at three places",
    );
  });
  test("reads board by the point and sheets by their ISO name or in inches", async () => {
    const { flat } = await said(
      wrap,
      "drop-back --size 240x165x32 --stock 60pt --cut-from 32x40in --grain long",
    );
    expect(flat).toContain("board 1.52,");
    expect(flat).toContain("from a sheet of 812.8 × 1016 mm");
    expect((await said(wrap, "jacket --size 240x165x32 --cut-from B1")).flat).toContain(
      "jacket: 3 from a sheet of 707 × 1000 mm",
    );
  });
  test("warns of a sheet too small, and ends in 1", async () => {
    const { flat, code } = await said(wrap, "four-flap --size 240x165x32 --cut-from A3");
    expect(flat).toContain("the sheet in stock is too small");
    expect(flat).toContain("a sheet of 297 × 420 mm is too small for 565.5 × 547.5 mm");
    expect(code).toBe(1);
  });
  test("shows what knives ask for, and that nothing mouldy is wrapped", async () => {
    const { flat } = await said(wrap, "jacket --size 240x165x32");
    expect(flat).toContain("free hand behind the blade");
    expect(flat).toContain("Nothing mouldy or damp is wrapped or boxed");
    expect(flat).toContain("Follow local rules and licensed practice.");
  });
  test.each([
    ["", "is no kind of wrapper or box here; expected jacket, four-flap"],
    ["four-flap", "--size: it is missing; expected height x width x thickness"],
    ["four-flap --size 24x16.5x3.2", "The height is 24 mm; expected 30 to 1000 mm."],
    ["jacket --size 240x165x32 --flap 200", "The flap is 200 mm; expected 20 to 165 mm."],
    ["drop-back --size 240x165x32 --cut-from Z9", '--cut-from: it is "Z9"; expected an ISO name such as B1'],
    ["four-flap --size 240x165 --thick thin", '--thick: it is "thin"'],
    ["four-flap demo/saltmere SR-9999", 'there is no item "SR-9999"'],
  ])("refuses %j and says what is wrong", async (typed, sentence) => {
    const { code, complaints } = await said(wrap, typed);
    expect(complaints).toContain(sentence);
    expect(code).toBe(2);
  });
  test("takes the size of an item as surveyed, and names the files after it", async () => {
    const folder = await mkdtemp(join(tmpdir(), "leafward-wrap-"));
    const { code, flat } = await said(wrap, `four-flap demo/saltmere SR-0001 --out ${folder} --sheet Letter`);
    expect(code).toBe(0);
    expect(flat).toContain("SR-0001 of 465 × 280 × 24 mm");
    expect((await readdir(folder)).sort()).toEqual([
      "SR-0001-four-flap.dxf",
      "SR-0001-four-flap.pdf",
      "SR-0001-four-flap.svg",
    ]);
    await rm(folder, { recursive: true });
  });
});
