import { namesOn } from "../../../core/log/state.ts";
import { sayCondition } from "../../../core/say/conditions.ts";
import type { Now } from "../log/now.ts";
import { type NearView, nearOf } from "./bag-view.ts";
import { type When, wardItem, wardItems } from "./ward-items.ts";

export interface PutInItem {
  readonly id: string;
  readonly title: string;
  readonly conditions: readonly string[];
  /** Litres of bag space it wants. */
  readonly litres: number;
  /** Where it lies now; empty: in no bag. */
  readonly bag: string;
  readonly isAdmitted: boolean;
  readonly needsWard: boolean;
  readonly hasInsects: boolean;
}

export interface PutInView extends When {
  readonly items: readonly PutInItem[];
  /** What lies in the bag already, and whether it is shut. */
  readonly inside: readonly string[];
  readonly isClosed: boolean;
  readonly shelf: string;
  /** Troubles that do not belong in one bag. */
  readonly isMixed: boolean;
  readonly bags: readonly string[];
  readonly shelves: readonly string[];
  /** A number that is free. */
  readonly freeBag: string;
  readonly placeHasFreezer: boolean;
  readonly near: NearView;
}

/** What putting these items in a bag asks; items nobody listed are left out. */
export function wardPutIn(now: Now, ids: readonly string[], bag: string): PutInView {
  const all = wardItems(now);
  const inside = all.filter(({ stay }) => bag !== "" && stay.bag === bag);
  const chosen = ids.flatMap((id) => {
    const found = now.item(id);
    return found ? [{ found, stay: wardItem(now, id)?.stay ?? null }] : [];
  });
  const together = [...chosen, ...inside];
  return {
    ...{ day: now.today, minute: now.minute },
    items: chosen.map(({ found: { item, route, care }, stay }) => ({
      id: item.id,
      title: item.title,
      conditions: route.conditions.map(sayCondition),
      litres: route.wardLitres,
      bag: stay?.bag ?? "",
      isAdmitted: care.done.has("admit") && stay !== null,
      needsWard: stay !== null || route.steps.some(({ act }) => act === "admit"),
      hasInsects: route.conditions.some((each) => each.startsWith("insect")),
    })),
    inside: inside.map(({ found }) => found.item.id),
    isClosed: inside.some(({ state }) => state !== null && state.closedSince !== null),
    shelf: inside.find(({ stay }) => stay.shelf !== "")?.stay.shelf ?? "",
    isMixed: new Set(together.map(({ found }) => troubleOf(found.route.conditions))).size > 1,
    bags: [...new Set(all.map(({ stay }) => stay.bag))].filter((each) => each !== ""),
    shelves: [...new Set(all.map(({ stay }) => stay.shelf))].filter((each) => each !== "").sort(),
    freeBag: freeBag(namesOn(now.state, "bag")),
    placeHasFreezer: now.house.place.freezer,
    near: nearOf(now, together),
  };
}

/** What must not be shared: growth, insects, poison, wetness. */
const troubleOf = (conditions: readonly string[]): string =>
  [/^mould/, /^insect/, /^(pesticide|arsenic|lead)/, /^(rodent|guano)/, /^wet$/]
    .map((kind) => (conditions.some((each) => kind.test(each)) ? "1" : "0"))
    .join("");

/** `B-1`, `B-2` …, after the highest there ever was. */
function freeBag(names: readonly string[]): string {
  const numbers = names.flatMap((name) => /^B-(\d+)$/.exec(name)?.[1] ?? []).map(Number);
  return `B-${Math.max(0, ...numbers) + 1}`;
}
