import { readFile, writeFile } from "node:fs/promises";
import { join } from "node:path";
import { describe, expect, test } from "vitest";
import { air } from "../../../src/apps/cli/damp/air.ts";
import { airOut } from "../../../src/apps/cli/damp/air-out.ts";
import { answer, folder, loggerFile, said } from "./said.ts";

const damp = () => loggerFile("attic.csv", () => ({ T: 24, RH: 88 }), { days: 60 });
const dry = () => loggerFile("store.csv", () => ({ T: 19, RH: 48 }));

describe("leafward air", () => {
  test("says what was understood, then the verdict, then what to do, then figures, then what to mind", async () => {
    const { text, code } = await said(air, await damp());
    const places = ["I read", "Mould can be growing in 'attic'", "Do now", "Figures", "Mind"].map((part) =>
      text.indexOf(part),
    );
    expect(places.every((at) => at >= 0)).toBe(true);
    expect([...places].sort((a, b) => a - b)).toEqual(places);
    expect(code).toBe(1);
  });
  test("a dry store is no danger, and no all-clear either", async () => {
    const { flat, code } = await said(air, await dry());
    expect(code).toBe(0);
    expect(flat).toContain(
      "No lamp is lit in 'store', and that is no all-clear: it was never at 65 % or more.",
    );
    expect(flat).toContain("65 % or more never in 20 days");
  });
  test("the mould index of very sensitive wood at 24 °C and 88 % passes 1 within 60 days", async () => {
    const { watch } = (await answer(air, await damp())) as unknown as {
      watch: { index: { highest: number } };
    };
    expect(watch.index.highest).toBeGreaterThan(1);
  });
  test("two days at 65 % light the first lamp; a quarter of a day less does not", async () => {
    const until = (hours: number) => loggerFile("bay.csv", (at) => ({ T: 20, RH: at < hours ? 66 : 50 }));
    expect((await said(air, await until(49))).flat).toContain("Watch 'bay'");
    expect((await said(air, await until(42))).flat).toContain("No lamp is lit in 'bay'");
  });
  test("an hour above the critical humidity is watched, three days are acted on", async () => {
    const until = (hours: number) => loggerFile("bay.csv", (at) => ({ T: 20, RH: at < hours ? 79 : 50 }));
    expect((await said(air, await until(1))).flat).toContain(
      "Watch 'bay', damp enough for mould for short spells",
    );
    expect((await said(air, await until(72))).flat).toContain("Mould can have grown in 'bay'");
  });
  test("hours at 60 and 65 % are counted as they stand", async () => {
    const file = await loggerFile("bay.csv", (at) => ({ T: 20, RH: at < 10 ? 66 : at < 30 ? 62 : 50 }));
    const { above60, above65, knownHours } = (await answer(air, file)) as Record<string, number>;
    expect([above60, above65, knownHours]).toEqual([30, 10, 479]);
  });
  test("a wall 5 K colder makes harmless air dangerous", async () => {
    const file = await loggerFile("wall.csv", () => ({ T: 20, RH: 62 }));
    expect((await said(air, file)).code).toBe(0);
    const { code, flat } = await said(air, `${file} --surface-offset -5`);
    expect(code).toBe(1);
    expect(flat).toContain("Mould can be growing in 'wall'");
    expect(flat).not.toContain("Only the air was measured");
  });
  test("a file of the surface says the same as an offset of the same kelvin", async () => {
    const file = await loggerFile("wall.csv", () => ({ T: 20, RH: 62 }));
    const wall = await loggerFile("coldest.csv", () => ({ T: 15, RH: 50 }));
    const [byFile, byOffset] = [
      await answer(air, `${file} --surface ${wall}`),
      await answer(air, `${file} --surface-offset -5`),
    ];
    expect(byFile.watch).toEqual(byOffset.watch);
  });
  test("a surface warmer than the air is refused with what was meant", async () => {
    const { code, complaints } = await said(air, `${await dry()} --surface-offset 3`);
    expect(code).toBe(2);
    expect(complaints).toContain("write --surface-offset -3");
  });
  test("several files end in a comparison, the worst first", async () => {
    const { text, code } = await said(air, `${await dry()} ${await damp()}`);
    const table = text.slice(text.indexOf("Side by side"));
    expect(table).toContain("'attic' needs you first.");
    expect(table.indexOf("attic ")).toBeLessThan(table.indexOf("store "));
    expect(code).toBe(1);
  });
  test("a file that cannot be read is named, and the others are still judged", async () => {
    const { flat, complaints, code } = await said(air, `nowhere.csv ${await dry()}`);
    expect(complaints).toContain("nowhere.csv: there is no such file.");
    expect(flat).toContain("No lamp is lit in 'store'");
    expect(code).toBe(1);
  });
  test("no file at all, and only unreadable files, could not be done", async () => {
    expect((await said(air, "")).code).toBe(2);
    expect((await said(air, "nowhere.csv")).code).toBe(2);
  });
  test("dates are read as they are told", async () => {
    const file = join(await folder(), "days.csv");
    await writeFile(
      file,
      "Date,Temp,RH\n05/04/2026 00:00,20,50\n05/04/2026 01:00,20,50\n06/04/2026 01:00,20,50\n",
    );
    expect((await said(air, `${file} --date-order mdy`)).flat).toContain("2026-05-04");
    expect((await said(air, `${file} --date-order dmy`)).flat).toContain("2026-04-05");
  });
  test("Fahrenheit is understood when told", async () => {
    const file = await loggerFile("warm.csv", () => ({ T: 30, RH: 50 }), { heading: "time,temp,rh" });
    expect((await said(air, `${file} --unit F`)).flat).toContain("-1.1 to -1.1 °C");
  });
  test("a part of the file can be judged, the last day to its end", async () => {
    const { from, to } = (await answer(air, `${await dry()} --from 2026-06-03 --to 2026-06-04`)) as Record<
      string,
      string
    >;
    expect([from, to]).toEqual(["3 June 2026, 00:00", "4 June 2026, 23:00"]);
    expect((await said(air, `${await dry()} --from 2031-01-01`)).complaints).toContain(
      "no reading lies between",
    );
  });
  test("what is mistyped is named together: got, expected, what to do", async () => {
    const { code, complaints } = await said(
      air,
      `${await dry()} --offset noon --unit X --column q --class soft --from yesterday`,
    );
    expect(code).toBe(2);
    for (const part of ['"noon"', '"X"', '"q"', '"soft"', '"yesterday"']) expect(complaints).toContain(part);
  });
  test("a gap of more than six hours is told", async () => {
    const file = await loggerFile("gap.csv", (at) => (at > 100 && at < 150 ? null : { T: 20, RH: 50 }));
    expect((await said(air, file)).flat).toContain("1 longer than 6 h, 2.1 days in all without readings");
  });
});

describe("the plot of leafward air", () => {
  test("has a title, a text for who cannot see it, axes with units, and its lamps told apart without colour", async () => {
    const out = join(await folder(), "attic.svg");
    await said(air, `${await damp()} --plot ${out}`);
    const svg = await readFile(out, "utf8");
    for (const part of [
      "<title",
      "<desc",
      'role="img"',
      "Temperature, °C",
      "Relative humidity, %",
      "Mould index",
      "url(#lamp1)",
      "url(#lamp2)",
    ])
      expect(svg).toContain(part);
    expect(svg.match(/#[0-9a-f]{3,6}(?=")/g)?.every((colour) => /^#(.)\1*$/.test(colour))).toBe(true);
  });
  test("stays small however long the series, and loses no spike", async () => {
    const spike = 1440 * 3 + 5;
    const file = await loggerFile(
      "long.csv",
      (at) => ({ T: Math.round(at * 60) === spike ? 41 : 20, RH: 50 }),
      { days: 200, stepMinutes: 5 },
    );
    const out = join(await folder(), "long.svg");
    await said(air, `${file} --plot ${out}`);
    const svg = await readFile(out, "utf8");
    expect(svg.length).toBeLessThan(150_000);
    expect(svg).toContain(">40</text>");
  });
  test("a name with letters of markup cannot break it", async () => {
    const file = await loggerFile("a<b&c.csv", () => ({ T: 20, RH: 50 }));
    const out = join(await folder(), "odd.svg");
    await said(air, `${file} --plot ${out}`);
    expect(await readFile(out, "utf8")).toContain("a&lt;b&amp;c");
  });
  test("several files give a plot each", async () => {
    const out = join(await folder(), "p.svg");
    const { flat } = await said(air, `${await dry()} ${await damp()} --plot ${out}`);
    expect(flat).toContain("p-store.svg");
    expect(flat).toContain("p-attic.svg");
  });
  test("a folder that is not there is said", async () => {
    const { code, complaints } = await said(air, `${await dry()} --plot /nowhere-at-all/p.svg`);
    expect(code).toBe(2);
    expect(complaints).toContain("could not be written");
  });
});

describe("leafward air-out", () => {
  test("damper in per cent can still be drier: cold air at 90 % dries a warm room at 60 %", async () => {
    expect((await said(airOut, '--inside "24 C 60 %" --outside "8 C 90 %"')).flat).toContain(
      "Open the windows now",
    );
  });
  test("drier in per cent can still be damper: hot air at 60 % wets a room at 70 %", async () => {
    const { flat } = await said(airOut, '--inside "26 C 70 %" --outside "31 C 60 %"');
    expect(flat).toContain("Keep the windows shut");
    // ASHRAE Fundamentals 2017 ch. 1: 26 °C 70 % holds 14.8 g/kg, 31 °C 60 % 17.0 g/kg (read off the chart, from memory)
    expect(flat).toContain("14.8 g");
    expect(flat).toContain("17.0 g");
  });
  test("a difference within what readers err is called so", async () => {
    expect((await said(airOut, '--inside "20 C 55 %" --outside "20 C 54 %"')).flat).toContain(
      "no sure difference",
    );
  });
  test("air that would leave dew on the coldest surface keeps windows shut", async () => {
    const typed = '--inside "24 C 75 %" --outside "18 C 80 %"';
    expect((await said(airOut, typed)).flat).toContain("Open the windows now");
    expect((await said(airOut, `${typed} --surface 12`)).flat).toContain("dew on the coldest surface");
  });
  test("cautions on rain, dust, pests and security always come along", async () => {
    for (const typed of [
      '--inside "24 C 60 %" --outside "8 C 90 %"',
      '--inside "26 C 70 %" --outside "31 C 60 %"',
    ]) {
      const { flat } = await said(airOut, typed);
      for (const part of ["rain", "dust", "insects", "lock"]) expect(flat).toContain(part);
    }
  });
  test("from two files it also says how many hours a week airing dries, and when", async () => {
    const inside = await loggerFile("inside.csv", () => ({ T: 22, RH: 65 }));
    const outside = await loggerFile("outside.csv", (at) => ({ T: at % 24 < 8 ? 8 : 30, RH: 70 }));
    const { flat } = await said(airOut, `${inside} ${outside}`);
    expect(flat).toContain("56 of 168 hours a week");
    expect(flat).toContain("00:00 to 08:00");
    expect(flat).toContain("Keep the windows shut");
  });
  test("files of different days cannot be compared", async () => {
    const inside = await loggerFile("inside.csv", (at) => (at < 100 ? { T: 22, RH: 65 } : null));
    const outside = await loggerFile("outside.csv", (at) => (at > 200 ? { T: 12, RH: 65 } : null));
    const { code, complaints } = await said(airOut, `${inside} ${outside}`);
    expect(code).toBe(2);
    expect(complaints).toContain("share no hours");
  });
  test("one file, one air, or an air without sense is refused with the way to write it", async () => {
    expect((await said(airOut, "one.csv")).complaints).toContain("inside file and the outside file");
    expect((await said(airOut, '--inside "26 C 70 %"')).complaints).toContain("both --inside and --outside");
    expect((await said(airOut, '--inside "26" --outside "31 C 160 %"')).complaints).toContain(
      'like "26 C 70 %"',
    );
  });
});
