import type { ItemChance, Plan } from "../../core/plan/plan.ts";
import { csvText } from "./csv-text.ts";
import { PLAN_FIELDS } from "./plan-schemas.ts";

/** The plan as tables a spreadsheet opens: UTF-8 with a byte-order mark, comma, CRLF, one file a table. */
export function planTables(plan: Plan): { readonly name: string; readonly text: string }[] {
  const chances = new Map(plan.risk.items.map((each) => [each.item, each]));
  const personName = new Map(plan.people.map((person) => [person.code, person.name]));
  return [
    table(
      "work",
      plan.assignments.map((each) => ({
        day: each.day,
        person: each.person,
        name: personName.get(each.person) ?? "",
        order: each.order,
        station: each.station,
        item: each.item,
        act: each.act,
        minutes: each.minutes,
        mould_minutes: each.exposed ? each.minutes : 0,
        wipe_down_after: each.wipeAfter ? "yes" : "no",
      })),
    ),
    table(
      "people-days",
      plan.personDays.map((each) => ({
        day: each.day,
        person: each.person,
        present_minutes: each.presentMinutes,
        work_minutes: each.workMinutes,
        changing_minutes: each.overheadMinutes,
        mould_minutes: each.exposedMinutes,
      })),
    ),
    table(
      "item-days",
      plan.itemDays.map(({ item, days }) => ({
        item,
        admit: days.admit ?? "",
        release: days.release ?? "",
        covers: days.covers ?? "",
        wrap: days.wrap ?? "",
        clean: days.clean ?? "",
        image: days.image ?? "",
        box: days.box ?? "",
        ...chanceColumns(chances.get(item)),
      })),
    ),
    table(
      "left",
      plan.left.map((each) => ({
        item: each.item,
        title: each.title,
        must: each.must ? "yes" : "no",
        kind: each.kind,
        why: each.why,
        rules: each.reasons.map((reason) => reason.rule).join(" "),
        ask: each.askWho.join(" "),
      })),
    ),
    table(
      "orders",
      plan.orders.map((each) => ({
        order_by: each.orderBy,
        store: each.store,
        name: each.name,
        packs: each.packs,
        quantity: each.quantity,
        unit: each.unit,
        route: each.route,
        needed_by: each.neededBy,
        late: each.late ? "yes" : "no",
        why: each.why,
      })),
    ),
    table(
      "stores",
      plan.stores.map((each) => ({
        store: each.store,
        name: each.name,
        unit: each.unit,
        on_hand: each.onHand,
        expected: each.expected,
        used: Math.round(each.used * 10) / 10,
        runs_out: each.runsOut ?? "",
      })),
    ),
  ];
}

/** One in ten, half, nine in ten of the simulated campaigns by that day, empty: not by the end; per cent of the campaigns. */
const chanceColumns = (chance: ItemChance | undefined): Record<string, string | number> => ({
  camera_p10: chance?.image?.p10 ?? "",
  camera_p50: chance?.image?.p50 ?? "",
  camera_p90: chance?.image?.p90 ?? "",
  box_p10: chance?.box.p10 ?? "",
  box_p50: chance?.box.p50 ?? "",
  box_p90: chance?.box.p90 ?? "",
  boxed_percent: percent(chance?.boxed),
  late_percent: percent(chance?.late),
  last_percent: percent(chance?.last),
});
const percent = (share: number | undefined): number | string =>
  share === undefined ? "" : Math.round(100 * share);

/** A table without a row has its head all the same. */
function table(
  name: string,
  rows: readonly Record<string, string | number>[],
): { name: string; text: string } {
  return { name, text: csvText(Object.keys(rows[0] ?? PLAN_FIELDS[name] ?? {}), rows) };
}
