import { usualSupport } from "../../../core/items/usual-support.ts";
import type { Payload } from "../../../core/log/kinds.ts";
import type { Now } from "../log/now.ts";

/** What may be chosen where an item is listed, and what is written of it now. */
export interface ListingView {
  readonly formats: readonly string[];
  readonly supports: readonly string[];
  readonly media: readonly string[];
  readonly covers: readonly string[];
  readonly processes: readonly string[];
  readonly has: readonly string[];
  /** Format → what it is usually made of. */
  readonly usual: Readonly<Record<string, string>>;
  /** Null: nobody has listed it. */
  readonly listed: Payload<"itemListed"> | null;
  readonly parts: readonly string[];
}

export function listingWords(now: Now, id: string): ListingView {
  const choices = (fact: string): readonly string[] => now.tables.book.facts.get(fact)?.values ?? [];
  const formats = choices("item.format");
  const found = now.item(id);
  return {
    formats,
    supports: choices("item.support"),
    media: choices("item.media"),
    covers: choices("item.cover"),
    processes: choices("item.process"),
    has: choices("item.has"),
    usual: Object.fromEntries(formats.map((each) => [each, usualSupport(each)])),
    listed: found && listedAs(found.item),
    parts: found?.item.parts.map(({ name }) => name) ?? [],
  };
}

function listedAs(item: NonNullable<ReturnType<Now["item"]>>["item"]): Payload<"itemListed"> {
  const { id, parts: _, state: __, ...rest } = item;
  return { item: id, ...rest };
}
