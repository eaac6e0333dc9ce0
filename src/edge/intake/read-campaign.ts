import { readFile } from "node:fs/promises";
import { basename, join, resolve } from "node:path";
import type { Campaign, ClimateSeries, Item } from "../../core/items/campaign.ts";
import type { Problem } from "../../core/outcome/problem.ts";
import { buildCalendar } from "./build/calendar.ts";
import { buildFindings } from "./build/findings.ts";
import { buildItems } from "./build/items.ts";
import { isOutside, outside } from "./build/outside.ts";
import { buildPeople } from "./build/people.ts";
import { buildSessions } from "./build/sessions.ts";
import { buildDeliveries, buildStores } from "./build/stores.ts";
import { buildWard } from "./build/ward.ts";
import { checkCampaign } from "./campaign-checks.ts";
import { CAMPAIGN_FILE, type CampaignFile, campaignFileFrom } from "./campaign-file.ts";
import type { CampaignTables } from "./campaign-tables.ts";
import { readClimateFile } from "./climate.ts";
import type { Columns, Table } from "./columns.ts";
import { type FolderFiles, folderFiles } from "./folder-files.ts";
import { type OpenTables, openTables } from "./open-tables.ts";
import { problem } from "./problem.ts";
import { noTable, readTable, type TableRead } from "./read-table.ts";
import { allTables } from "./tables/all.ts";
import { calendarTable } from "./tables/calendar.ts";
import { deliveriesTable } from "./tables/deliveries.ts";
import { findingsTable } from "./tables/findings.ts";
import { itemsTable } from "./tables/items.ts";
import { partsTable } from "./tables/parts.ts";
import { peopleTable } from "./tables/people.ts";
import { sessionsTable } from "./tables/sessions.ts";
import { storesTable } from "./tables/stores.ts";
import { wardTable } from "./tables/ward.ts";

export type Counts = Readonly<Record<string, { readonly rows: number; readonly used: number }>>;

export interface CampaignRead {
  /** Null when nothing usable can be built. */
  readonly campaign: Campaign | null;
  readonly problems: readonly Problem[];
  readonly counts: Counts;
}

const unusable = (problems: readonly Problem[], counts: Counts = {}): CampaignRead => ({
  campaign: null,
  problems,
  counts,
});

/** Reads a campaign folder: campaign.json, the tables as CSV or sheets of a workbook, and climate files.
 *  Good rows go on; every other row has its problem. */
export async function readCampaignFolder(folder: string): Promise<CampaignRead> {
  const files = await folderFiles(
    folder,
    allTables.map(({ name }) => name),
  );
  if ("code" in files) return unusable([{ ...files, got: basename(resolve(folder)) }]);
  if (files.campaign === null) {
    const remedy = `Write it, or begin with: leafward new <folder>`;
    return unusable([
      problem("no-campaign-file", "stop", { file: CAMPAIGN_FILE }, { remedy }),
      ...files.problems,
    ]);
  }
  const file = campaignFileFrom(await readFile(join(folder, files.campaign)));
  if (file.value === null) return unusable([...file.problems, ...files.problems]);
  const opened = await openTables(folder, files);
  const before = [...file.problems, ...files.problems, ...opened.problems];
  if (!opened.sources.has("items")) return unusable(before);
  return readTables(folder, files, file.value, opened, before);
}

async function readTables(
  folder: string,
  files: FolderFiles,
  file: CampaignFile,
  opened: OpenTables,
  before: readonly Problem[],
): Promise<CampaignRead> {
  const read = <C extends Columns>(table: Table<C>): Promise<TableRead<C>> => readOne(table, opened, file);
  const tables: CampaignTables = {
    items: await read(itemsTable),
    parts: await read(partsTable),
    findings: await read(findingsTable),
    people: await read(peopleTable),
    calendar: await read(calendarTable),
    stores: await read(storesTable),
    deliveries: await read(deliveriesTable),
    sessions: await read(sessionsTable),
    ward: await read(wardTable),
  };
  if (tables.items.problems.some(({ code }) => code === "no-headings"))
    return unusable([...before, ...tables.items.problems]);
  const climate = await readClimate(folder, files, file);
  return assemble(file, tables, climate, before);
}

async function readOne<C extends Columns>(
  table: Table<C>,
  { sources }: OpenTables,
  { order }: CampaignFile,
): Promise<TableRead<C>> {
  const source = sources.get(table.name);
  if (source === undefined) return noTable;
  return readTable(table, source, order);
}

interface Climate {
  readonly series: readonly ClimateSeries[];
  readonly problems: readonly Problem[];
  readonly rows: number;
}

async function readClimate(
  folder: string,
  { climate }: FolderFiles,
  { order }: CampaignFile,
): Promise<Climate> {
  const series: ClimateSeries[] = [];
  const problems: Problem[] = [];
  let rows = 0;
  for (const file of climate) {
    const read = await readClimateFile(join(folder, file), file, order);
    if (read.series.readings.length > 0) series.push(read.series);
    problems.push(...read.problems);
    rows += read.rowCount;
  }
  return { series, problems, rows };
}

/** Joins the rows of all tables into the campaign; problems come in the order of the tables. */
function assemble(
  file: CampaignFile,
  tables: CampaignTables,
  climate: Climate,
  before: readonly Problem[],
): CampaignRead {
  const { start, end, planFrom, name, place, wardLitres, stations, limits } = file;
  const items = buildItems(tables);
  const findings = buildFindings(tables.findings, items);
  const people = buildPeople(tables.people, start, end);
  const calendar = buildCalendar(tables.calendar, { people: people.names, stations, start, end });
  const stores = buildStores(tables.stores);
  const deliveries = buildDeliveries(tables.deliveries, stores.names);
  const sessions = buildSessions(tables.sessions, { items: items.itemNames, people: people.names, planFrom });
  const ward = buildWard(tables.ward, items.itemNames);
  const built = {
    items: items.items,
    parts: items.parts,
    findings,
    people,
    calendar,
    stores,
    deliveries,
    sessions,
    ward,
  };
  const campaign: Campaign = {
    ...{ name, place, start, end, planFrom, wardLitres, stations, limits },
    items: items.items.values,
    findings: findings.values,
    people: people.values,
    calendar: calendar.values,
    stores: stores.values,
    deliveries: deliveries.values,
    ...(stores.stockCounts.length > 0 ? { stockCounts: stores.stockCounts } : {}),
    sessions: sessions.values,
    ward: ward.values,
    climate: climate.series,
  };
  const counts: Record<string, { rows: number; used: number }> = {};
  const problems: (readonly Problem[])[] = [before];
  for (const key of Object.keys(built) as (keyof typeof built)[]) {
    counts[key] = { rows: tables[key].rowCount, used: built[key].used };
    problems.push(
      tables[key].problems,
      built[key].problems,
      key === "items" ? daysOutside(tables.items, file) : [],
    );
  }
  const readings = climate.series.reduce((sum, each) => sum + each.readings.length, 0);
  if (climate.rows > 0) counts.climate = { rows: climate.rows, used: readings };
  problems.push(climate.problems, checkCampaign(campaign));
  return { campaign, problems: problems.flat(), counts };
}

function daysOutside({ rows }: CampaignTables["items"], file: CampaignFile): Problem[] {
  const problems: Problem[] = [];
  for (const { file: where, line, cells } of rows)
    for (const column of ["arrives", "due"] as const) {
      const day: Item["due"] = cells[column];
      if (day !== undefined && isOutside(day, file))
        problems.push(outside({ file: where, line, column }, day, file));
    }
  return problems;
}
