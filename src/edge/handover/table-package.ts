import Papa from "papaparse";
import type { Campaign } from "../../core/items/campaign.ts";
import type { Plan } from "../../core/plan/plan.ts";
import { campaignTables } from "./campaign-tables.ts";
import { csvText } from "./csv-text.ts";
import type { HandedTable } from "./handed-table.ts";
import { planSchema } from "./plan-schemas.ts";
import { planTables } from "./plan-tables.ts";

export interface HandedFile {
  readonly name: string;
  readonly text: string;
}

/** Everything of a campaign and its plan as CSV files, and a `datapackage.json` (Frictionless Tabular Data Package) that describes them. */
export function tablePackage(campaign: Campaign, plan: Plan): HandedFile[] {
  const own = campaignTables(campaign).map(({ name, schema, rows }) => ({
    ...{ name, schema },
    text: csvText(fieldNames(schema), rows),
  }));
  const planned = planTables(plan).map(({ name, text }) => ({
    name: `plan-${name}`,
    schema: planSchema(name, headOf(text)),
    text,
  }));
  const all = [...own, ...planned];
  return [
    ...all.map(({ name, text }) => ({ name: `${name}.csv`, text })),
    { name: "datapackage.json", text: `${JSON.stringify(descriptor(campaign, all), null, 1)}\n` },
  ];
}

const fieldNames = (schema: HandedTable["schema"]): string[] =>
  (schema.fields as readonly { readonly name: string }[]).map(({ name }) => name); // as our own schemas are made

const headOf = (text: string): string[] => Papa.parse<string[]>(text.slice(1), { preview: 1 }).data[0] ?? [];

const descriptor = (
  { name, planFrom }: Campaign,
  tables: readonly { readonly name: string; readonly schema: HandedTable["schema"] }[],
) => ({
  profile: "tabular-data-package",
  name: nameOf(name),
  title: name,
  description: `As it stood on the morning of ${planFrom}. Text that a spreadsheet would take for a formula has an apostrophe before it. People and their calendar are not in it.`,
  created: `${planFrom}T00:00:00Z`,
  resources: tables.map((table) => ({
    profile: "tabular-data-resource",
    name: table.name,
    path: `${table.name}.csv`,
    format: "csv",
    mediatype: "text/csv",
    encoding: "utf-8",
    dialect: { delimiter: ",", lineTerminator: "\r\n", quoteChar: '"', doubleQuote: true, header: true },
    schema: table.schema,
  })),
});

/** Lower-case letters, digits and hyphens, as a package name is to be. */
const nameOf = (text: string): string =>
  text
    .normalize("NFKD")
    .toLowerCase()
    .replace(/[^a-z0-9]+/g, "-")
    .replace(/^-+|-+$/g, "") || "campaign";
