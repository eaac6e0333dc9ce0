import { cpSync, existsSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { Ajv } from "ajv";
import Papa from "papaparse";
import { afterAll, describe, expect, test } from "vitest";
import type { Campaign } from "../../../src/core/items/campaign.ts";
import { csvText } from "../../../src/edge/handover/csv-text.ts";
import { PLAN_FIELDS } from "../../../src/edge/handover/plan-schemas.ts";
import { tablePackage } from "../../../src/edge/handover/table-package.ts";
import { readCampaignFolder } from "../../../src/edge/intake/read-campaign.ts";
import { projectFolder } from "../../../src/edge/published.ts";
import { campaign, plan } from "../papers/print-source.ts";

interface Field {
  readonly name: string;
  readonly type: string;
  readonly description: string;
}
interface Resource {
  readonly name: string;
  readonly path: string;
  readonly schema: {
    readonly fields: readonly Field[];
    readonly foreignKeys?: readonly { readonly reference: { readonly resource: string } }[];
  };
}

const files = new Map(tablePackage(campaign, plan).map(({ name, text }) => [name, text]));
const descriptor = JSON.parse(files.get("datapackage.json") ?? "{}");
const resources: readonly Resource[] = descriptor.resources;
const rowsOf = (path: string) =>
  Papa.parse<Record<string, string>>((files.get(path) ?? "").replace(/^\uFEFF/, ""), {
    header: true,
    skipEmptyLines: true,
  });

describe("the package describes what it holds", () => {
  test("every table has a file, every file but the description a table", () => {
    expect(resources.map(({ path }) => path).sort()).toEqual(
      [...files.keys()].filter((name) => name.endsWith(".csv")).sort(),
    );
  });
  test.each(resources)(
    "$name: columns stand in the file as in the schema, each with its meaning",
    ({ path, schema }) => {
      const { meta, errors } = rowsOf(path);
      expect(errors).toEqual([]);
      expect(meta.fields).toEqual(schema.fields.map(({ name }) => name));
      for (const { name, description } of schema.fields) expect(description, name).not.toBe("");
    },
  );
  test.each(resources)("$name: every cell is of its column's type", ({ path, schema }) => {
    // Table Schema of Frictionless, types as its lexical forms say
    const fits: Readonly<Record<string, RegExp>> = {
      string: /^/,
      integer: /^-?\d+$/,
      number: /^-?\d+(\.\d+)?(e-?\d+)?$/,
      date: /^\d{4}-\d{2}-\d{2}$/,
      year: /^\d{1,4}$/,
      datetime: /^\d{4}-\d{2}-\d{2}T\d{2}:\d{2}:\d{2}$/,
      boolean: /^(yes|no)$/, // trueValues and falseValues of these schemas
    };
    for (const row of rowsOf(path).data)
      for (const { name, type } of schema.fields)
        if (row[name]) expect(row[name], name).toMatch(fits[type] ?? /^$/);
  });
  test("a link leads to a table of the package", () => {
    const names = resources.map(({ name }) => name);
    for (const { schema } of resources)
      for (const { reference } of schema.foreignKeys ?? []) expect(names).toContain(reference.resource);
  });
  test("every column of the plan's tables is described", () => {
    for (const { name, path } of resources.filter((each) => each.name.startsWith("plan-")))
      expect(rowsOf(path).meta.fields?.filter((field) => !PLAN_FIELDS[name.slice(5)]?.[field])).toEqual([]);
  });
});

const profile = join(
  projectFolder(),
  "..",
  "shared",
  "data",
  "schemas",
  "frictionless",
  "tabular-data-package.json",
);
const hasProfile = existsSync(profile);
if (!hasProfile)
  console.warn("../shared/data/schemas is not here: the claim on the package's profile is skipped.");
test.skipIf(!hasProfile)("the description is valid by the published profile of Tabular Data Package", () => {
  const { $schema: _, ...schema } = JSON.parse(readFileSync(profile, "utf8"));
  const validate = new Ajv({ strict: false, validateFormats: false, allErrors: true }).compile(schema);
  validate(descriptor);
  expect(validate.errors ?? []).toEqual([]);
});

describe("nothing in a table runs in a spreadsheet", () => {
  // OWASP, CSV Injection: = + - @ tab and return begin a formula
  test.each(["=1+1", "+1", "-1 item", "@sum(a1)", "\tx", "\rx"])(
    "%j gets an apostrophe before it",
    (title) => {
      const { data } = Papa.parse<string[]>(csvText(["title"], [{ title }]).slice(1));
      expect(data[1]?.[0]).toBe(`'${title}`);
    },
  );
  test("a number below zero stays a number", () => {
    expect(csvText(["t"], [{ t: -4.5 }])).toContain("\r\n-4.5\r\n");
  });
});

describe("the tables of a campaign can be read as a campaign again", () => {
  const demo = join(projectFolder(), "demo", "nine-lamps");
  const folder = mkdtempSync(join(tmpdir(), "leafward-tables-"));
  afterAll(() => rmSync(folder, { recursive: true, force: true }));

  test("with the same items, findings, work, Ward log and deliveries", async () => {
    const { campaign: before } = await readCampaignFolder(demo);
    if (before === null) throw new Error("The demo cannot be read.");
    for (const name of ["campaign.json", "people.csv", "calendar.csv"])
      cpSync(join(demo, name), join(folder, name));
    for (const { name, text } of tablePackage(before, plan))
      if (name.endsWith(".csv") && !name.startsWith("plan-") && name !== "readings.csv")
        writeFileSync(join(folder, name), text);
    const { campaign: after } = await readCampaignFolder(folder);
    const told = ({ items, findings, sessions, ward, deliveries }: Campaign) => ({
      items,
      findings,
      sessions,
      ward,
      deliveries,
    });
    expect(after && told(after)).toEqual(told(before));
    expect(after?.stores.map(({ id, onHand, leadDays }) => [id, onHand, leadDays])).toEqual(
      before.stores.map(({ id, onHand, leadDays }) => [id, onHand, leadDays]),
    );
  });
});
