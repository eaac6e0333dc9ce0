import type { Campaign, Finding, Item } from "../../../items/campaign.ts";
import { addDays } from "../../../units/day.ts";
import type { Change } from "../change.ts";

/** Copies of surveyed items, spread evenly over those they are like; nothing has been done to a copy, and no day is promised for it. */
export function withCopies(campaign: Campaign, change: Change & { change: "more items" }): Campaign {
  const byId = new Map(campaign.items.map((item) => [item.id, item]));
  const pool = change.like.flatMap((id) => byId.get(id) ?? []).sort((a, b) => (a.id < b.id ? -1 : 1));
  if (pool.length === 0) return campaign;
  const findings = new Map<string, Finding[]>();
  for (const each of campaign.findings) {
    const known = findings.get(each.item);
    if (known) known.push(each);
    else findings.set(each.item, [each]);
  }
  const made: Item[] = [];
  const answers: Finding[] = [];
  for (let n = 0; n < change.count; n++) {
    const model = pool[Math.floor(((n + 0.5) * pool.length) / change.count) % pool.length] as Item;
    const id = freeId(byId, model.id);
    const copy = copyOf(model, id, change);
    byId.set(id, copy);
    made.push(copy);
    for (const each of findings.get(model.id) ?? []) answers.push({ ...each, item: id });
  }
  return {
    ...campaign,
    items: [...campaign.items, ...made],
    findings: [...campaign.findings, ...answers],
  };
}

function copyOf(model: Item, id: string, change: Change & { change: "more items" }): Item {
  const { due: _, ...rest } = model;
  return { ...rest, id, title: `like ${model.id}, ${model.title}`, arrives: change.day };
}

function freeId(known: ReadonlyMap<string, Item>, id: string): string {
  let n = 1;
  while (known.has(`${id}+${n}`)) n++;
  return `${id}+${n}`;
}

/** An item is worked on from the day after its arrival: held back until a day, it arrives the day before. */
export function heldBack(campaign: Campaign, { items, until }: Change & { change: "hold back" }): Campaign {
  const held = new Set(items);
  const eve = addDays(until, -1);
  return {
    ...campaign,
    items: campaign.items.map((item) =>
      held.has(item.id) && (item.arrives ?? "") < eve ? { ...item, arrives: eve } : item,
    ),
  };
}
