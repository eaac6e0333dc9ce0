import type { Campaign, Item, Part, WardNote } from "../../core/items/campaign.ts";
import type { Facts } from "../../core/items/facts.ts";
import { sayClock } from "../../core/say/day-sheet.ts";
import { tableSchemaOf } from "../intake/table-schema.ts";
import { deliveriesTable } from "../intake/tables/deliveries.ts";
import { findingsTable } from "../intake/tables/findings.ts";
import { itemsTable } from "../intake/tables/items.ts";
import { partsTable } from "../intake/tables/parts.ts";
import { sessionsTable } from "../intake/tables/sessions.ts";
import { storesTable } from "../intake/tables/stores.ts";
import { wardTable } from "../intake/tables/ward.ts";
import type { CsvCell } from "./csv-text.ts";
import type { HandedTable } from "./handed-table.ts";

type Row = Readonly<Record<string, CsvCell>>;

/** What a campaign knows, in the columns its own folder is written in, and what its readers measured. People and their calendar are not handed on. */
export const campaignTables = (campaign: Campaign): HandedTable[] => [
  handed(itemsTable, campaign.items.map(itemRow)),
  handed(
    partsTable,
    campaign.items.flatMap((item) => item.parts.map((part) => partRow(item, part))),
  ),
  handed(
    findingsTable,
    campaign.findings.map(({ item, part, test, answer, day, by }) => ({
      ...{ item, part, test, by },
      answer: String(answer),
      date: day,
    })),
  ),
  handed(
    sessionsTable,
    campaign.sessions.map(({ day, ...rest }) => ({ ...rest, date: day })),
  ),
  handed(wardTable, campaign.ward.map(wardRow)),
  handed(
    storesTable,
    campaign.stores.map(({ id, name, use, unit, onHand, pack, leadDays, route, expires, orderBy }) => ({
      ...{ store: id, name, use, unit, pack, route, expires },
      on_hand: onHand,
      lead_days: leadDays,
      order_by: orderBy,
    })),
  ),
  handed(
    deliveriesTable,
    campaign.deliveries.map(({ day, ...rest }) => ({ ...rest, date: day })),
  ),
  readings(campaign),
];

/** Only links to tables that are handed over too. */
const LINKED = new Set(["items", "parts", "stores"]);

function handed(table: Parameters<typeof tableSchemaOf>[0], rows: readonly Row[]): HandedTable {
  const links = Object.fromEntries(Object.entries(table.links).filter(([, to]) => LINKED.has(to)));
  return { name: table.name, schema: tableSchemaOf({ ...table, links }), rows };
}

const list = (value: Facts[string]): CsvCell => (Array.isArray(value) ? value.join("|") : (value as CsvCell)); // what is no list is a cell already

const listed = (facts: Facts, names: readonly string[]): Row =>
  Object.fromEntries(names.map((name) => [name, facts[name] === undefined ? undefined : list(facts[name])]));

const OF_PARTS = ["format", "support", "media", "cover", "has", "leaves"] as const;
const OF_ITEMS = [
  ...OF_PARTS,
  "process",
  "mass_kg",
  "date_earliest",
  "date_latest",
  "restricted_view",
  "neighbours_unchecked",
] as const;

const itemRow = (item: Item): Row => ({
  ...listed(item.facts, OF_ITEMS),
  item: item.id,
  title: item.title,
  height_mm: item.heightMm,
  width_mm: item.widthMm,
  thickness_mm: item.thicknessMm,
  arrives: item.arrives,
  due: item.due,
  priority: item.priority,
  found_in: item.foundIn,
  custodian_rule: item.custodianRule,
});

const partRow = (item: Item, { name, facts }: Part): Row => ({
  ...listed(facts, OF_PARTS),
  item: item.id,
  part: name,
});

const wardRow = ({ day, minute, item, what, value, dryBulb }: WardNote): Row => ({
  ...{ date: day, item, what },
  time: sayClock(minute, "en-GB"),
  value: value === undefined ? undefined : what === "read" ? rounded(value * 100) : value,
  temperature_c: dryBulb,
});

const rounded = (value: number): number => Math.round(value * 1e6) / 1e6;

const readings = ({ climate }: Campaign): HandedTable => ({
  name: "readings",
  schema: {
    title: "Readings",
    description: "What the readers in rooms and stores showed.",
    fields: [
      { name: "reader", type: "string", description: "Name of the reader.", constraints: { required: true } },
      {
        name: "at",
        type: "datetime",
        format: "%Y-%m-%dT%H:%M:%S",
        description: "Moment of the reading, on the clock of the house.",
        constraints: { required: true },
      },
      { name: "temperature_c", type: "number", description: "Air temperature. Unit: °C." },
      { name: "rel_hum_percent", type: "number", description: "Relative humidity. Unit: %." },
    ],
    missingValues: [""],
  },
  rows: climate.flatMap(({ name, readings: all }) =>
    all.map(({ at, dryBulb, relHum }) => ({
      reader: name,
      at,
      temperature_c: dryBulb,
      rel_hum_percent: relHum === undefined ? undefined : rounded(relHum * 100),
    })),
  ),
});
