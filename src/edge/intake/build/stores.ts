import type { Delivery, PackSize, StockCount, Store } from "../../../core/items/campaign.ts";
import type { Problem } from "../../../core/outcome/problem.ts";
import type { Built, CampaignTables } from "../campaign-tables.ts";
import { problem, type Where } from "../problem.ts";
import { isThere, Register, Waiting, withoutDuplicates } from "../register.ts";
import { given } from "./items.ts";

export interface BuiltStores extends Built<Store> {
  readonly names: Register;
  readonly stockCounts: readonly StockCount[];
}

export function buildStores(stores: CampaignTables["stores"]): BuiltStores {
  const own = withoutDuplicates(stores, (row) => row.cells.store, "store");
  const problems = [...own.problems];
  const values = own.rows.map(
    ({ file, line, cells }): Store => ({
      id: cells.store,
      name: cells.name,
      use: cells.use,
      unit: cells.unit,
      onHand: cells.on_hand,
      pack: cells.pack ?? 1,
      ...given("packs", packsOf(cells.packs, { file, line, column: "packs" }, problems)),
      leadDays: cells.lead_days,
      route: cells.route ?? "local",
      ...given("expires", cells.expires),
      ...given("orderBy", cells.order_by),
    }),
  );
  const names = new Register(
    "stores",
    values.map(({ id }) => id),
    stores.aside,
    isThere(stores),
  );
  const stockCounts = own.rows.flatMap(({ cells: { store, counted, on_hand } }) =>
    counted === undefined ? [] : [{ store, day: counted, quantity: on_hand, came: 0 }],
  );
  return { values, used: values.length, problems, names, stockCounts };
}

/** `20=8.50`: units, and what the pack costs. */
const PACK = /^\s*(\d+(?:[.,]\d{1,3})?)\s*(?:=\s*(\d+(?:[.,]\d{1,2})?)\s*)?$/;

/** `20=8.50 | 100=35`, in the order written; none of them when one cannot be read. */
function packsOf(cell: string | undefined, where: Where, problems: Problem[]): PackSize[] | undefined {
  const texts = cell?.split("|") ?? [];
  const packs = texts.flatMap((text): PackSize[] => {
    const [, units = "0", price] = PACK.exec(text) ?? [];
    const size = Number(units.replace(",", "."));
    return size > 0
      ? [{ size, ...given("price", price === undefined ? undefined : Number(price.replace(",", "."))) }]
      : [];
  });
  if (cell === undefined || packs.length < texts.length) {
    if (cell !== undefined)
      problems.push(problem("not-packs", "ask", where, { got: cell, remedy: PACKS_REMEDY }));
    return undefined;
  }
  return packs;
}

const PACKS_REMEDY =
  "Write units and price of each pack, as in 20=8.50 | 100=35. Until then the usual pack is reckoned with.";

export function buildDeliveries(deliveries: CampaignTables["deliveries"], stores: Register): Built<Delivery> {
  const problems: Problem[] = [];
  const waiting = new Waiting();
  const values = deliveries.rows.flatMap(({ file, line, cells }): Delivery[] => {
    const meant = stores.meant(cells.store);
    const where = { file, line, column: "store" };
    if (meant.kind === "known")
      return [{ store: meant.name, day: cells.date, quantity: cells.quantity, ...given("note", cells.note) }];
    if (meant.kind === "aside") waiting.add(meant.waitsFor, where);
    else
      problems.push(
        problem("unknown-store", "stop", where, { got: cells.store, remedy: stores.remedy(cells.store) }),
      );
    return [];
  });
  return { values, used: values.length, problems: [...problems, ...waiting.problems()] };
}
