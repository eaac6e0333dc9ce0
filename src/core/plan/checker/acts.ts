import type { Act } from "../../items/campaign.ts";
import type { Fault } from "./fault.ts";
import type { PlanOnPaper } from "./plan-on-paper.ts";

/** Acts on items that exist, within the plan's days, after arrival, each once, in their order, a working day apart. */
export function actFaults(paper: PlanOnPaper): Fault[] {
  const { planFrom, end } = paper.campaign;
  const faults: Fault[] = [];
  for (const { day, person, item, act, minutes } of paper.plan.assignments) {
    const add = (code: Fault["code"], got: number | string, limit: number | string, source: string): void => {
      faults.push({ code, day, person, item, act, got, limit, source });
    };
    if (!paper.items.has(item)) add("item-unknown", item, "items table", "items");
    if (day < planFrom || day > end) add("day-outside", day, `${planFrom} to ${end}`, "campaign");
    if (!(minutes >= 0)) add("no-minutes", minutes, "more than 0", "the sheet's own minutes");
    if (paper.care.get(item)?.done.has(act)) add("done-before", act, "not done yet", "sessions");
  }
  for (const item of paper.passings.keys()) faults.push(...orderFaults(paper, item));
  return faults;
}

/** Boxing may follow on the same day; everything else on a later day, which with people's own days is the next working day. */
function orderFaults(paper: PlanOnPaper, item: string): Fault[] {
  const passings = paper.passings.get(item) ?? [];
  const isHere = (paper.care.get(item)?.done.size ?? 0) > 0;
  const arrives = isHere ? undefined : paper.items.get(item)?.arrives;
  const faults: Fault[] = [];
  const early = passings.find(({ first }) => arrives !== undefined && first <= arrives);
  if (early && arrives)
    faults.push({
      code: "before-arrival",
      day: early.first,
      item,
      act: early.act,
      got: early.first,
      limit: arrives,
      source: "items",
    });
  for (const { act, first, pieces } of passings)
    if (pieces.every(({ minutes }) => minutes === 0))
      faults.push({
        code: "no-minutes",
        day: first,
        person: pieces[0]?.person ?? "",
        item,
        act,
        got: 0,
        limit: "more than 0",
        source: "the sheet's own minutes",
      });
  passings.forEach(({ act, first }, at) => {
    const before = passings[at - 1];
    if (!before) return;
    const inTime = before.ends !== undefined && (act === "box" ? first >= before.last : first > before.last);
    if (!inTime)
      faults.push({
        code: "act-order",
        day: first,
        item,
        act,
        got: first,
        limit: `${before.act} ${before.ends ? `ended ${before.last}` : "not ended"}`,
        source: sourceOfOrder(before.act, act),
      });
  });
  return faults;
}

const sourceOfOrder = (before: Act, act: Act): string =>
  before === "covers" && act === "wrap" ? "B06" : before === "wrap" ? "B07" : "order of the rooms";
