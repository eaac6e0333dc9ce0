import type { Delivery, Store } from "../../../core/items/campaign.ts";
import type { Problem } from "../../../core/outcome/problem.ts";
import type { Built, CampaignTables } from "../campaign-tables.ts";
import { problem } from "../problem.ts";
import { isThere, Register, Waiting, withoutDuplicates } from "../register.ts";
import { given } from "./items.ts";

export function buildStores(stores: CampaignTables["stores"]): Built<Store> & { readonly names: Register } {
  const own = withoutDuplicates(stores, (row) => row.cells.store, "store");
  const values = own.rows.map(
    ({ cells }): Store => ({
      id: cells.store,
      name: cells.name,
      use: cells.use,
      unit: cells.unit,
      onHand: cells.on_hand,
      pack: cells.pack ?? 1,
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
  return { values, used: values.length, problems: own.problems, names };
}

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
