import type { Route } from "../../core/care/care.ts";
import type { ItemCare } from "../../core/care/item-care.ts";
import { sayDo } from "../../core/say/actions.ts";
import { sayDay } from "../../core/say/dates.ts";
import { HAZARDS, HAZARD_LABEL as words } from "../../core/say/papers/hazards.ts";
import type { Day } from "../../core/units/day.ts";
import type { LabelView } from "./label-view.ts";

/** A label for every item that may hold something that harms; what is unsure counts as there. */
export function hazardLabelViews(
  campaign: string,
  care: readonly ItemCare[],
  routes: readonly Route[],
  day: Day,
  locale = "en-GB",
): LabelView[] {
  const routeOf = new Map(routes.map((route) => [route.item, route]));
  return care.flatMap((each) => {
    const { found, doubtful } = hazardsOf(each);
    if (found.length + doubtful.length === 0) return [];
    const held = [...found, ...doubtful].flatMap((name) => HAZARDS[name] ?? []);
    const who = (routeOf.get(each.item.id)?.askWho ?? []).map((one) => sayDo(one).replace(/^Ask /, ""));
    return [
      {
        kind: words.kind,
        campaign,
        number: each.item.id,
        head: words.ask,
        signs: [...new Set(held.flatMap(({ signs }) => signs))],
        lines: [
          ...(found.length > 0 ? [[words.holds, wordsOf(found)] as const] : []),
          ...(doubtful.length > 0 ? [[words.may, wordsOf(doubtful)] as const] : []),
          [who.length > 0 ? words.contactAdviser : words.contact, [...new Set(who)].join(", ")] as const,
          [words.labelled, sayDay(day, locale)] as const,
        ],
        toWrite: [],
      },
    ];
  });
}

const wordsOf = (names: readonly string[]): string =>
  names.flatMap((name) => HAZARDS[name]?.holds ?? []).join("; ");

/** Hazards still on an item or one of its parts, worst first; a suspicion is in doubt though no finding leaves it open. */
export function hazardsOf(
  { whole, parts, done }: ItemCare,
  isCleaned = done.has("clean"),
): {
  readonly found: readonly string[];
  readonly doubtful: readonly string[];
} {
  const all = [whole, ...parts.map(({ care }) => care)];
  const sure = new Set(all.flatMap(({ conditions }) => conditions));
  const unsure = new Set(all.flatMap(({ unsureConditions }) => unsureConditions));
  const still = Object.entries(HAZARDS)
    .filter(([, { endsWithCleaning }]) => !(endsWithCleaning && isCleaned))
    .map(([name]) => name);
  const isFound = (name: string): boolean => sure.has(name) && !name.endsWith("_suspected");
  return {
    found: still.filter(isFound),
    doubtful: still.filter((name) => !isFound(name) && (sure.has(name) || unsure.has(name))),
  };
}
