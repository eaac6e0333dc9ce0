import { mkdir, readdir, writeFile } from "node:fs/promises";
import { join } from "node:path";
import Papa from "papaparse";
import { CAMPAIGN_FILE, CAMPAIGN_VERSION } from "./campaign-file.ts";
import type { Table } from "./columns.ts";
import { startingLimits } from "./limits.ts";
import { allTables } from "./tables/all.ts";

/** Files a new campaign starts with: name → text. Everything in them is invented. */
export const newCampaignFiles = (): ReadonlyMap<string, string> =>
  new Map([
    [CAMPAIGN_FILE, `${JSON.stringify(exampleCampaign(), null, 2)}\n`],
    ...allTables.map((table) => [`${table.name}.csv`, exampleTable(table)] as const),
  ]);

/** Writes them into a folder that is new or empty; false when it is neither. */
export async function writeNewCampaign(folder: string): Promise<boolean> {
  await mkdir(folder, { recursive: true });
  if ((await readdir(folder)).length > 0) return false;
  for (const [name, text] of newCampaignFiles()) await writeFile(join(folder, name), text, { flag: "wx" });
  return true;
}

/** Headings and two example rows. The mark at the start lets spreadsheet programs see that it is UTF-8. */
function exampleTable({ columns }: Table): string {
  const all = Object.values(columns);
  const rows = [
    Object.keys(columns),
    all.map(({ examples }) => examples[0]),
    all.map(({ examples }) => examples[1]),
  ];
  return `\ufeff${Papa.unparse(rows)}\r\n`;
}

const exampleCampaign = () => ({
  leafward: CAMPAIGN_VERSION,
  name: "Example campaign",
  place: { name: "Old customs house", climate: "hot_humid", freezer: false, fineFilterVacuum: true },
  start: "2026-06-01",
  end: "2026-08-28",
  planFrom: "2026-06-02",
  rooms: { wardLitres: 600 },
  stations: [
    { id: "mould-bench", kind: "mould bench", places: 1, minutesADay: 360 },
    { id: "clean-bench", kind: "clean bench", places: 2, minutesADay: 360 },
    { id: "cover-stand", kind: "cover stand", places: 1, minutesADay: 240 },
    { id: "camera-1", kind: "camera", places: 1, minutesADay: 360 },
    { id: "boxing-table", kind: "boxing table", places: 1, minutesADay: 360 },
  ],
  limits: startingLimits(),
});
