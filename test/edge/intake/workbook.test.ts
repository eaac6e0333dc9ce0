import { strToU8, zipSync } from "fflate";
import { describe, expect, test } from "vitest";
import writeXlsxFile from "write-excel-file/node";
import { codes, readWith, the } from "./campaign-folder.ts";

/** A workbook made by hand, so that it can have what writers of workbooks do not write. Sheets are rows of cell XML. */
function workbook(
  sheets: Readonly<Record<string, { cells: string; merges?: readonly string[] }>>,
): Uint8Array {
  const names = Object.keys(sheets);
  const xml = (text: string) => strToU8(`<?xml version="1.0" encoding="UTF-8" standalone="yes"?>${text}`);
  const main = 'xmlns="http://schemas.openxmlformats.org/spreadsheetml/2006/main"';
  const links = "http://schemas.openxmlformats.org/officeDocument/2006/relationships";
  const parts: Record<string, Uint8Array> = {
    "[Content_Types].xml": xml(
      '<Types xmlns="http://schemas.openxmlformats.org/package/2006/content-types"/>',
    ),
    "xl/workbook.xml": xml(
      `<workbook ${main} xmlns:r="${links}"><sheets>${names.map((name, i) => `<sheet name="${name}" sheetId="${i + 1}" r:id="rId${i + 1}"/>`).join("")}</sheets></workbook>`,
    ),
    "xl/_rels/workbook.xml.rels": xml(
      `<Relationships xmlns="http://schemas.openxmlformats.org/package/2006/relationships">${names.map((_, i) => `<Relationship Id="rId${i + 1}" Type="${links}/worksheet" Target="worksheets/sheet${i + 1}.xml"/>`).join("")}</Relationships>`,
    ),
  };
  names.forEach((name, i) => {
    const { cells, merges = [] } = sheets[name] ?? { cells: "" };
    const merged =
      merges.length === 0
        ? ""
        : `<mergeCells count="${merges.length}">${merges.map((ref) => `<mergeCell ref="${ref}"/>`).join("")}</mergeCells>`;
    parts[`xl/worksheets/sheet${i + 1}.xml`] = xml(
      `<worksheet ${main}><sheetData>${cells}</sheetData>${merged}</worksheet>`,
    );
  });
  return zipSync(parts);
}

const text = (ref: string, value: string): string =>
  `<c r="${ref}" t="inlineStr"><is><t>${value}</t></is></c>`;
const row = (n: number, ...values: (string | null)[]): string =>
  `<row r="${n}">${values.map((value, i) => (value === null ? "" : value.startsWith("<") ? value : text(`${"ABCDEFGH"[i]}${n}`, value))).join("")}</row>`;

const WITHOUT = { "items.csv": null, "parts.csv": null, "findings.csv": null, "sessions.csv": null };
const HEAD = row(1, "item", "title", "format", "leaves");
const withItems = (cells: string, merges?: readonly string[]) =>
  readWith({ ...WITHOUT, "survey.xlsx": workbook({ items: merges ? { cells, merges } : { cells } }) });

describe("a workbook with sheets named like the tables", () => {
  test("numbers, dates, truth values and texts come over as what they are", async () => {
    const bytes = await writeXlsxFile(
      [
        [{ value: "Survey" }, null, null, null, null, null],
        [null],
        ["item", "title", "format", "leaves", "due", "restricted_view"].map((value) => ({ value })),
        [
          { value: 7 },
          { value: "One" },
          { value: "album" },
          { value: 12 },
          { value: new Date(Date.UTC(2026, 6, 2)), format: "dd/mm/yyyy" },
          { value: true },
        ],
        [
          { value: "8" },
          { value: "Two" },
          { value: "album" },
          { value: "12.5" },
          { value: "2.7.2026" },
          { value: "nein" },
        ],
      ],
      { sheet: "Items" },
    ).toBuffer();
    const read = await readWith({ ...WITHOUT, "survey.xlsx": bytes });
    expect(read.campaign?.items[0]).toMatchObject({
      id: "7",
      due: "2026-07-02",
      facts: { leaves: 12, restricted_view: true },
    });
    expect(the("not-whole", read)).toMatchObject({
      file: "survey.xlsx (Items)",
      line: 5,
      column: "leaves",
      got: "12.5",
    });
  });
  test("a formula gives its stored result; one without is a problem, and the rest of the workbook is read", async () => {
    const read = await withItems(
      HEAD +
        row(2, "A-1", "One", "album", '<c r="D2"><f>3*4</f><v>12</v></c>') +
        row(3, "A-2", "Two", "album", '<c r="D3"><f>SUM(D2:D2)</f></c>') +
        row(4, "A-3", '<c r="B4" t="str"><f>A4&amp;"x"</f></c>', "album") +
        row(5, "A-4", '<c r="B5" t="str"><f>A5</f><v>Four</v></c>', "album"),
    );
    expect(read.campaign?.items.map(({ id, title, facts }) => [id, title, facts.leaves])).toEqual([
      ["A-1", "One", 12],
      ["A-4", "Four", undefined],
    ]);
    const found = read.problems.filter(({ code }) => code === "formula-without-value");
    expect(found.map(({ line, column, got }) => `${line} ${column} ${got}`)).toEqual([
      "3 leaves =SUM(D2:D2)",
      '4 title =A4&"x"',
    ]);
  });
  test("an error cell is a problem of its row", async () => {
    const read = await withItems(
      HEAD + row(2, "A-1", "One", "album", '<c r="D2" t="e"><f>1/0</f><v>#DIV/0!</v></c>'),
    );
    expect(the("cell-error", read)).toMatchObject({ line: 2, column: "leaves", got: "#DIV/0!" });
  });
  test("a value merged down counts for each of its rows, and is noted; a title merged above is no matter", async () => {
    const read = await withItems(
      row(1, "Survey of the press room") +
        row(2, "item", "title", "format", "found_in") +
        row(3, "A-1", "One", "album", "shelf 3") +
        row(4, "A-2", "Two", "album") +
        row(5, "A-3", "Three", "album", "shelf 4"),
      ["A1:D1", "D3:D4"],
    );
    expect(read.campaign?.items.map(({ foundIn }) => foundIn)).toEqual(["shelf 3", "shelf 3", "shelf 4"]);
    expect(the("merged-filled", read)).toMatchObject({ severity: "note", got: "D3:D4" });
    expect(codes(read)).not.toContain("merged-across");
  });
  test("a title merged across among the data is a problem, not an item", async () => {
    const read = await withItems(HEAD + row(2, "Shelf 3") + row(3, "A-1", "One", "album"), ["A2:D2"]);
    expect(the("merged-across", read)).toMatchObject({ line: 2, got: "Shelf 3" });
    expect(read.campaign?.items).toHaveLength(1);
  });
  test("a number that the program has turned into a date is said", async () => {
    const cell = { value: new Date(Date.UTC(2026, 2, 4)), format: "dd/mm/yyyy" };
    const bytes = await writeXlsxFile(
      [["item", "title", "format"].map((value) => ({ value })), [cell, { value: "One" }, { value: "album" }]],
      { sheet: "items" },
    ).toBuffer();
    expect(the("date-cell-in-text", await readWith({ ...WITHOUT, "survey.xlsx": bytes }))).toMatchObject({
      column: "item",
      got: "2026-03-04",
    });
  });
  test("rows keep their number when rows between are empty", async () => {
    const read = await withItems(HEAD + row(6, "A-1", "One", "album", "x"));
    expect(the("not-a-number", read).line).toBe(6);
  });
  test("a sheet of another name is noted; a table both here and as CSV is asked about", async () => {
    const sheet = { cells: HEAD + row(2, "A-1", "One", "album") };
    const read = await readWith({ "survey.xlsx": workbook({ items: sheet, Prices: sheet }) });
    expect(the("unread-file", read)).toMatchObject({ got: "Prices", severity: "note" });
    expect(the("table-twice", read)).toMatchObject({ severity: "ask", file: "survey.xlsx (items)" });
  });
  test("a workbook that is none, or is cut off, is a problem and not a crash", async () => {
    const whole = workbook({ items: { cells: HEAD } });
    for (const bytes of [Buffer.from("no workbook"), whole.slice(0, whole.length / 2), new Uint8Array()]) {
      const read = await readWith({ ...WITHOUT, "survey.xlsx": bytes });
      the("workbook-unreadable", read);
      expect(read.campaign).toBeNull();
    }
  });
});
