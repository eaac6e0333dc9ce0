import type { ItemCare } from "../../care/item-care.ts";
import type { Finding, Item } from "../../items/campaign.ts";

/** A trouble whose share is asked for: the test that looks for it, and the conditions that say it is there. */
export interface Trouble {
  readonly id: "mould" | "red rot" | "insects" | "wet";
  readonly test: string;
  readonly conditions: readonly string[];
  /** Conditions that leave it open. */
  readonly perhaps: readonly string[];
  /** Whether the trouble can be there at all. */
  readonly canHave: (item: Item) => boolean;
}

const any = (): boolean => true;
/** Vegetable-tanned leather and leather of an unknown tannage powder; alum-tawed skin does not. */
const inLeather = ({ facts, parts }: Item): boolean =>
  [facts, ...parts.map((part) => part.facts)].some(({ cover }) =>
    /^leather_(calf|goat|sheep|unknown)$/.test(String(cover)),
  );

export const TROUBLES: readonly Trouble[] = [
  {
    id: "mould",
    test: "growth_visible",
    conditions: ["mould_active", "mould_dormant"],
    perhaps: ["mould_suspected"],
    canHave: any,
  },
  { id: "red rot", test: "rub_mark", conditions: ["red_rot"], perhaps: [], canHave: inLeather },
  {
    id: "insects",
    test: "live_insects",
    conditions: ["insect_active"],
    perhaps: ["insect_uncertain"],
    canHave: any,
  },
  { id: "wet", test: "wet", conditions: ["wet"], perhaps: [], canHave: any },
];

/** One item as the sample sees it; `unseen` is not looked at, which is never "no". */
export type Seen = "yes" | "unsure" | "no" | "unseen";

/** What is known of each item for each trouble it can have, in the order of the campaign. */
export function surveyed(
  care: readonly ItemCare[],
  findings: readonly Finding[],
): Map<ItemCare, Map<Trouble, Seen>> {
  const tested = new Set(findings.map(({ item, test }) => `${item}|${test}`));
  return new Map(
    care.map((each) => [
      each,
      new Map(
        TROUBLES.filter(({ canHave }) => canHave(each.item)).map((trouble) => [
          trouble,
          tested.has(`${each.item.id}|${trouble.test}`) ? seenIn(each, trouble) : "unseen",
        ]),
      ),
    ]),
  );
}

function seenIn(care: ItemCare, { conditions, perhaps }: Trouble): Seen {
  const all = [care.whole, ...care.parts.map((part) => part.care)];
  const has = (wanted: readonly string[], of: readonly string[]): boolean =>
    wanted.some((each) => of.includes(each));
  if (all.some((each) => has(conditions, each.conditions))) return "yes";
  const open = [...conditions, ...perhaps];
  return all.some((each) => has(perhaps, each.conditions) || has(open, each.unsureConditions))
    ? "unsure"
    : "no";
}
