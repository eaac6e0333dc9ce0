import type { Item, Part } from "../../../core/items/campaign.ts";
import type { Facts, FactValue } from "../../../core/items/facts.ts";
import type { Problem } from "../../../core/outcome/problem.ts";
import type { Built, CampaignTables } from "../campaign-tables.ts";
import { problem } from "../problem.ts";
import { isThere, Register, Waiting, withoutDuplicates } from "../register.ts";

type ItemRow = CampaignTables["items"]["rows"][number];
type PartRow = CampaignTables["parts"]["rows"][number];

export interface BuiltItems {
  readonly items: Built<Item>;
  readonly parts: Pick<Built<Part>, "used" | "problems">;
  readonly itemNames: Register;
  /** Item and part with `\0` between. */
  readonly partNames: Register;
}

export const partKey = (item: string, part: string): string => `${item}\u0000${part}`;

/** Items with their parts; a row that repeats a name or points nowhere is set aside. */
export function buildItems({ items, parts }: CampaignTables): BuiltItems {
  const own = withoutDuplicates(items, (row) => row.cells.item, "item");
  const sound: ItemRow[] = [];
  const asideRows = [...items.aside];
  for (const row of own.rows)
    if (yearsInOrder(row, own.problems)) sound.push(row);
    else asideRows.push(asAside(row));
  const itemNames = new Register(
    "items",
    sound.map((row) => row.cells.item),
    asideRows,
    isThere(items),
  );
  const joined = joinParts(parts, itemNames);
  const byItem = new Map<string, Part[]>();
  for (const { item, row } of joined.rows) {
    const own = byItem.get(item);
    if (own) own.push(partFrom(row));
    else byItem.set(item, [partFrom(row)]);
  }
  const partNames = new Register(
    "parts",
    joined.rows.map((row) => partKey(row.item, row.row.cells.part)),
    parts.aside,
    true,
  );
  const values = sound.map((row) => itemFrom(row, byItem.get(row.cells.item) ?? []));
  return {
    items: { values, used: values.length, problems: own.problems },
    parts: { used: joined.rows.length, problems: joined.problems },
    itemNames,
    partNames,
  };
}

const asAside = ({ file, line, cells }: ItemRow) => ({ file, line, key: cells.item });

function yearsInOrder({ file, line, cells }: ItemRow, problems: Problem[]): boolean {
  const { date_earliest: first, date_latest: last } = cells;
  if (first === undefined || last === undefined || first <= last) return true;
  problems.push(
    problem(
      "first-after-last",
      "stop",
      { file, line, column: "date_earliest" },
      {
        got: String(first),
        expected: `date_latest ${last}`,
        remedy: "Put the years right.",
      },
    ),
  );
  return false;
}

function joinParts(parts: CampaignTables["parts"], itemNames: Register) {
  const waiting = new Waiting();
  const problems: Problem[] = [];
  const own = withoutDuplicates(parts, (row) => partKey(row.cells.item, row.cells.part), "part");
  const rows = own.rows.flatMap((row) => {
    const where = { file: row.file, line: row.line, column: "item" };
    const meant = itemNames.meant(row.cells.item);
    if (meant.kind === "known") return [{ item: meant.name, row }];
    if (meant.kind === "aside") waiting.add(meant.waitsFor, where);
    else problems.push(unknownItem(row.cells.item, itemNames, where));
    return [];
  });
  return { rows, problems: [...own.problems, ...problems, ...waiting.problems()] };
}

export const unknownItem = (
  item: string,
  names: Register,
  where: { file: string; line: number; column: string },
): Problem =>
  problem("unknown-item", "stop", where, {
    got: item,
    expected: "an item of the items table",
    remedy: names.remedy(item),
  });

const partFrom = ({ cells }: PartRow): Part => {
  const { format, support, media, cover, has, leaves } = cells;
  return { name: cells.part, facts: factsFrom({ format, support, media, cover, has, leaves }) };
};

function itemFrom({ cells }: ItemRow, parts: readonly Part[]): Item {
  return {
    id: cells.item,
    title: cells.title,
    facts: itemFacts(cells),
    parts,
    priority: cells.priority ?? "want",
    ...given("due", cells.due),
    ...given("arrives", cells.arrives),
    ...given("heightMm", cells.height_mm),
    ...given("widthMm", cells.width_mm),
    ...given("thicknessMm", cells.thickness_mm),
    ...given("foundIn", cells.found_in),
    ...given("custodianRule", cells.custodian_rule),
  };
}

/** Facts named as the rules read them, `item.…`. */
function itemFacts(cells: ItemRow["cells"]): Facts {
  const sizes = [cells.height_mm, cells.width_mm, cells.thickness_mm].filter((mm) => mm !== undefined);
  return factsFrom({
    format: cells.format,
    support: cells.support,
    media: cells.media,
    cover: cells.cover,
    process: cells.process,
    has: cells.has,
    leaves: cells.leaves,
    mass_kg: cells.mass_kg,
    date_earliest: cells.date_earliest,
    date_latest: cells.date_latest,
    restricted_view: cells.restricted_view,
    neighbours_unchecked: cells.neighbours_unchecked,
    longest_side_cm: sizes.length === 0 ? undefined : Math.max(...sizes) / 10,
    custodian_rule: cells.custodian_rule,
  });
}

function factsFrom(values: Readonly<Record<string, FactValue | undefined>>): Facts {
  const facts: Record<string, FactValue> = {};
  for (const [name, value] of Object.entries(values)) if (value !== undefined) facts[name] = value;
  return facts;
}

/** A property only when there is a value. */
export const given = <K extends string, T>(name: K, value: T | undefined): { readonly [P in K]?: T } =>
  value === undefined ? {} : ({ [name]: value } as { readonly [P in K]: T }); // a computed key widens to string
