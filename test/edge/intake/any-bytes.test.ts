import { writeFile } from "node:fs/promises";
import { join } from "node:path";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { sayProblem } from "../../../src/core/say/problems.ts";
import { dateFrom } from "../../../src/edge/intake/dates.ts";
import { decodeText } from "../../../src/edge/intake/decode.ts";
import { numberFrom } from "../../../src/edge/intake/numbers.ts";
import { readCampaignFolder } from "../../../src/edge/intake/read-campaign.ts";
import { allTables } from "../../../src/edge/intake/tables/all.ts";
import { folderWith } from "./campaign-folder.ts";

const anyTable = fc.constantFrom(...allTables);
const anyCell = fc.oneof(
  fc.string({ unit: "grapheme", maxLength: 12 }),
  fc.constantFrom(
    "",
    "B-001",
    "AN",
    "yes",
    "no",
    "?",
    "1,500",
    "02/07/2026",
    "25/06/2026",
    "06/27/2026",
    "album",
    "k-mask",
    "everyone",
    "-",
    "=1+1",
    '"',
    "12.5",
    "a|b",
  ),
);

describe("whatever stands in a table, nothing is thrown and no row is lost", () => {
  test("any bytes in place of a table or climate file", async () => {
    const folder = await folderWith({ "climate/a.csv": "" });
    const bytes = fc.oneof(
      fc.uint8Array({ maxLength: 400 }),
      fc.string({ unit: "binary", maxLength: 300 }).map((text) => Buffer.from(text)),
    );
    await fc.assert(
      fc.asyncProperty(anyTable, bytes, bytes, async ({ name }, table, climate) => {
        await writeFile(join(folder, `${name}.csv`), table);
        await writeFile(join(folder, "climate", "a.csv"), climate);
        const { problems } = await readCampaignFolder(folder);
        for (const problem of problems) expect(sayProblem(problem).length).toBeGreaterThan(10);
      }),
      { numRuns: 80 },
    );
  });
  test("any cells under the right headings: each row is used, or has a problem that stops or asks", async () => {
    const folder = await folderWith({});
    await fc.assert(
      fc.asyncProperty(
        anyTable,
        fc.array(fc.array(anyCell, { minLength: 3, maxLength: 8 }), { maxLength: 8 }),
        async (table, cells) => {
          const columns = Object.keys(table.columns);
          const quoted = (row: readonly string[]): string =>
            row.map((cell) => `"${cell.replaceAll('"', '""')}"`).join(",");
          const text = [columns.join(","), ...cells.map((row) => quoted(row.slice(0, columns.length)))].join(
            "\n",
          );
          await writeFile(join(folder, `${table.name}.csv`), text);
          const { problems, counts } = await readCampaignFolder(folder);
          const { rows, used } = counts[table.name] ?? { rows: 0, used: 0 };
          const own = problems.filter(
            ({ file, severity }) => file === `${table.name}.csv` && severity !== "note",
          );
          const waiting = own
            .filter(({ code }) => code === "waits-for")
            .reduce((sum, { got }) => sum + Number.parseInt(got ?? "0", 10), 0);
          const lines = new Set(own.filter(({ code }) => code !== "waits-for").map(({ line }) => line)).size;
          expect(rows - used).toBe(lines + waiting);
        },
      ),
      { numRuns: 80 },
    );
  });
  test("any workbook bytes", async () => {
    const folder = await folderWith({ "items.csv": null });
    await fc.assert(
      fc.asyncProperty(fc.uint8Array({ maxLength: 300 }), async (bytes) => {
        await writeFile(join(folder, "survey.xlsx"), Buffer.concat([Buffer.from("PK\u0003\u0004"), bytes]));
        expect((await readCampaignFolder(folder)).campaign).toBeNull();
      }),
      { numRuns: 40 },
    );
  });
  test("any bytes decode, and any text reads as number and date or as none", () => {
    fc.assert(
      fc.property(fc.uint8Array({ maxLength: 200 }), (bytes) => !decodeText(bytes).text.includes("\r")),
    );
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 20 }), (text) => {
        const n = numberFrom(text, "unknown", false);
        expect(n === null || n === "two ways" || Number.isFinite(n)).toBe(true);
        dateFrom(text);
      }),
    );
  });
  test("a number written out is read back in both styles", () => {
    fc.assert(
      fc.property(fc.double({ min: -1e6, max: 1e6, noNaN: true }), (n) => {
        const written = n.toFixed(2);
        expect(numberFrom(written, "point", false)).toBe(Number(written));
        expect(numberFrom(written.replace(".", ","), "comma", false)).toBe(Number(written));
      }),
    );
  });
});
