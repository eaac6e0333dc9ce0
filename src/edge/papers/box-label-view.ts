import type { Route } from "../../core/care/care.ts";
import type { ItemCare } from "../../core/care/item-care.ts";
import { sayDay } from "../../core/say/dates.ts";
import { TWO_CARRY_KG, BOX_LABEL as words } from "../../core/say/papers/box-label.ts";
import { HAZARDS } from "../../core/say/papers/hazards.ts";
import { addDays, type Day } from "../../core/units/day.ts";
import { hadGrowth } from "./had-growth.ts";
import { hazardsOf } from "./hazard-label-view.ts";
import type { LabelView } from "./label-view.ts";

/** A box as it was filled, or as it will be: then what the way to it ends is ended. */
export interface FilledBox {
  /** The box's number; an item that has a box of its own lends it its number. */
  readonly box: string;
  readonly items: readonly string[];
  /** Day of the last item in it; absent: not boxed yet. */
  readonly day?: Day;
  readonly shelf?: string;
}

const NAMED = 6;
/** Days after boxing on which an item that had growth or insects is looked at again; norm `d-lookback`. */
const LOOK_AGAIN = [14, 30] as const;
/** Labels without any person's name: numbers and formats, never titles, which may hold one. */
export function boxLabelViews(
  campaign: string,
  boxes: readonly FilledBox[],
  { care, routes }: { readonly care: readonly ItemCare[]; readonly routes: readonly Route[] },
  locale = "en-GB",
): LabelView[] {
  const careOf = new Map(care.map((each) => [each.item.id, each]));
  const cleaned = new Set(
    routes.flatMap(({ item, steps }) => (steps.some(({ act }) => act === "clean") ? [item] : [])),
  );
  return boxes.map(({ box, items, day, shelf }) => {
    const inside = items.flatMap((item) => careOf.get(item) ?? []);
    const hazards = inside.flatMap((each) => {
      const { found, doubtful } = hazardsOf(each, day === undefined && cleaned.has(each.item.id));
      return [...found, ...doubtful];
    });
    const signs = [...new Set(hazards.flatMap((name) => HAZARDS[name]?.signs ?? []))];
    return {
      kind: words.kind,
      campaign,
      number: box,
      head: contentsOf(inside, items, box),
      signs,
      lines: [
        ...handlingOf(inside),
        [words.open, openOnlyBy(hazards)],
        ...(day && inside.some(hadGrowth)
          ? [[words.lookAgain, LOOK_AGAIN.map((n) => sayDay(addDays(day, n), locale)).join(", ")] as const]
          : []),
        ...(shelf ? [[words.shelf, shelf] as const] : []),
      ],
      toWrite: [
        ...(day ? [] : [inside.some(hadGrowth) ? words.boxedThenLook : words.boxedOn]),
        ...(shelf ? [] : [words.shelf]),
      ],
    };
  });
}

function contentsOf(inside: readonly ItemCare[], items: readonly string[], box: string): string {
  const counts = new Map<string, number>();
  for (const { item } of inside) {
    const format = String(item.facts.format ?? "").replaceAll("_", " ");
    counts.set(format, (counts.get(format) ?? 0) + 1);
  }
  const formats = [...counts].map(([format, n]) => (n === 1 ? format : `${n} × ${format}`)).join(", ");
  if (items.length === 1) return items[0] === box ? formats : `${formats}, ${items[0]}`;
  const more = items.length - NAMED;
  return `${formats}: ${items.slice(0, NAMED).join(", ")}${more > 0 ? ` ${words.more(more)}` : ""}`;
}

function handlingOf(inside: readonly ItemCare[]): [string, string][] {
  const wants = (action: string): boolean =>
    inside.some(({ whole }) => [...whole.require, ...whole.prefer].some((each) => each.action === action));
  const mass = inside.reduce((sum, { item }) => sum + Number(item.facts.mass_kg ?? 0), 0);
  return [
    ...(wants("own_box") ? [[words.own, ""] as [string, string]] : []),
    ...(wants("second_person") || mass >= TWO_CARRY_KG ? [[words.two, ""] as [string, string]] : []),
  ];
}

const openOnlyBy = (hazards: readonly string[]): string =>
  hazards.some((name) => HAZARDS[name]?.endsWithCleaning === false && name !== "broken_glass")
    ? words.advised
    : hazards.some((name) => HAZARDS[name]?.endsWithCleaning)
      ? words.mouldOnly
      : words.anyone;
