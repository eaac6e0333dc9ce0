import { describe, expect, test } from "vitest";
import { dry } from "../../../src/apps/cli/damp/dry.ts";
import { dryingCourse } from "../../../src/core/physics/drying/drying.ts";
import { bookPaper, closedBook } from "../../../src/core/physics/drying/drying-body.ts";
import { answer, said } from "./said.ts";

const BOOK = "--what book --size 300x220x45 --temp 26";
const hours = async (typed: string) =>
  ((await answer(dry, typed)) as unknown as { hours: { fast: number; usual: number; slow: number } }).hours;

describe("leafward dry", () => {
  test("a closed book takes weeks, told as a band with its cautions and never as a date", async () => {
    const { flat, code } = await said(dry, `${BOOK} --start 80 --room 50`);
    expect(flat).toMatch(/It takes \d+ to \d+ days until a reading of 55 %/);
    expect(flat).toContain("only two readings in a closed bag release an item");
    expect(flat).not.toMatch(/\b20\d\d\b/);
    expect(code).toBe(0);
  });
  test("fanned it takes a hundredth of the time or less", async () => {
    const [closed, fanned] = [
      await hours(`${BOOK} --start 80 --room 50`),
      await hours(`${BOOK} --start 80 --room 50 --fanned`),
    ];
    expect(fanned.usual).toBeLessThan(closed.usual / 100);
  });
  test("a fanned damp book dries within a week, as is met in practice", async () => {
    // Cornell University Library, emergency guidance: a day to a week in moving air; as quoted
    expect((await hours(`${BOOK} --start 90 --room 50 --fanned`)).slow).toBeLessThan(7 * 24);
  });
  test("a damper room never dries it sooner, nor a larger book", async () => {
    const [drier, damper] = [
      await hours(`${BOOK} --start 80 --room 40`),
      await hours(`${BOOK} --start 80 --room 52`),
    ];
    expect(drier.usual).toBeLessThan(damper.usual);
    const small = await hours("--what book --size 200x140x45 --start 80 --room 50 --temp 26");
    expect(small.usual).toBeLessThan((await hours(`${BOOK} --start 80 --room 50`)).usual);
  });
  test("in a room too damp it says never, what to do, and ends in 1", async () => {
    const { flat, code } = await said(dry, `${BOOK} --start 80 --room 60`);
    expect(flat).toContain("It will never get down to 55 % in a room at 60 %.");
    expect(flat).toContain("npx leafward gel");
    expect(code).toBe(1);
  });
  test("too little gel is said, and enough gel is told in days", async () => {
    expect((await said(dry, `${BOOK} --start 80 --gel 50g --bag 12L`)).flat).toContain("comes down to about");
    expect((await said(dry, `${BOOK} --start 80 --gel 0.5kg --bag 12L`)).flat).toMatch(/It takes .* days/);
  });
  test("what lies at 55 % or less already still needs its two readings", async () => {
    expect((await said(dry, `${BOOK} --start 54 --room 50`)).flat).toContain("read the closed bag twice");
  });
  test("damp enough for mould is said first of what to do", async () => {
    expect((await said(dry, `${BOOK} --start 80 --room 50`)).flat).toContain(
      "Do now 1. It is damp enough for mould",
    );
    expect((await said(dry, `${BOOK} --start 60 --room 50`)).flat).not.toContain("damp enough for mould");
  });
  test("palm leaves are never fanned", async () => {
    const { code, complaints } = await said(
      dry,
      "--what palm-leaf --size 40x400x60 --start 80 --room 50 --fanned",
    );
    expect(code).toBe(2);
    expect(complaints).toContain("splits them");
  });
  test("every kind of thing has its answer", async () => {
    for (const what of ["book", "file", "palm-leaf", "leather-board", "loose-leaves"])
      expect((await said(dry, `--what ${what} --size 300x220x20 --start 75 --room 45`)).code).toBe(0);
  });
  test("all that is mistyped is named at once, with what was got", async () => {
    const { code, complaints } = await said(
      dry,
      "--what scroll --size 300x220 --start 0.8 --room 50 --temp 90",
    );
    expect(code).toBe(2);
    for (const part of ['"scroll"', '"300x220"', '"0.8"; expected 20 to 98.5 %', '"90"'])
      expect(complaints).toContain(part);
  });
  test("without a place, a bag or a size of bag that holds the item it asks for it", async () => {
    expect((await said(dry, `${BOOK} --start 80`)).complaints).toContain("--room 50");
    expect((await said(dry, `${BOOK} --start 80 --gel 500g`)).complaints).toContain("--bag 12L");
    expect((await said(dry, `${BOOK} --start 80 --gel 500g --bag 2L`)).complaints).toContain(
      "the item alone fills 3.0 L",
    );
  });
});

describe("leafward dry with readings", () => {
  const SHEAF = "--what file --size 300x220x10 --temp 22 --room 45";

  test("weighings that follow the usual run bring a band around the usual run's own day", async () => {
    const body = closedBook({ height: 0.3, width: 0.22, thickness: 0.045 }, bookPaper(26));
    const days = [0, 30, 60, 90, 120];
    const room = { kind: "room", relHum: 0.45 } as const;
    const { points } = dryingCourse(
      body,
      26,
      0.8,
      room,
      days.map((day) => 24 * day),
    );
    const grams = points.map((point) => (1000 * body.dryMass * (1 + point.moistureContent)).toFixed(0));
    const typed = `${BOOK} --start 80 --room 45`;
    const { flat, code } = await said(
      dry,
      `${typed} --weighings ${days.map((day, i) => `${day}:${grams[i]}`).join(",")}`,
    );
    const [, early, late] = /between day (\d+) and day (\d+)/.exec(flat) ?? [];
    const own = (await hours(typed)).usual / 24;
    expect(Number(early)).toBeLessThan(own);
    expect(Number(late)).toBeGreaterThan(own);
    expect(code).toBe(0);
  });
  test("one look brings no date but the reason", async () => {
    const { flat } = await said(dry, `${SHEAF} --readings 0:80`);
    expect(flat).toContain("No date can be known yet.");
    expect(flat).toContain("at least a day after the first");
  });
  test("a band that is not yet a date is for planning only, and says so", async () => {
    const { flat } = await said(dry, `${BOOK} --room 45 --readings 0:80,3:79`);
    expect(flat).toContain("No date can be known yet.");
    expect(flat).toContain("For planning only");
  });
  test("in a room that never dries it the reason ends in 1", async () => {
    const { flat, code } = await said(dry, `${BOOK} --room 60 --readings 0:80,10:74,30:68`);
    expect(flat).toContain("Here it never gets dry enough");
    expect(code).toBe(1);
  });
  test("days that do not rise, and pairs that are none, are refused with an example", async () => {
    expect((await said(dry, `${SHEAF} --readings 3:80,0:72`)).complaints).toContain("must rise");
    expect((await said(dry, `${SHEAF} --readings 80,72`)).complaints).toContain("0:80,3:72");
  });
});
