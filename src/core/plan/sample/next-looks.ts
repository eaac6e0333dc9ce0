import type { ItemCare } from "../../care/item-care.ts";
import { looksFor } from "./looks-for.ts";
import type { Stratum } from "./stratum.ts";
import type { Seen, Trouble } from "./surveyed.ts";

/** Fewer looks than this say little of a kind. Common practice, no source. */
export const AT_LEAST = 30;
/** Half the width at which a share is good enough to plan with. Common practice, no source. */
export const WITHIN = 0.05;

/** More items of a format to look at, and which. */
export interface NextLooks {
  readonly format: string;
  readonly more: number;
  /** Items of the format still without an answer. */
  readonly unseen: number;
  /** The trouble that asks for most looks. */
  readonly trouble: Trouble["id"];
  /** `few`: under thirty of its kind were looked at; `wide`: the share over all is not yet known to ± 5 points. */
  readonly why: "few" | "wide";
  /** Evenly spread over the shelves in the order of the list, so that nobody chooses. */
  readonly items: readonly string[];
}

/** By format, the looks that tell most: thirty of each kind first, then where many items and an open share meet. */
export function nextLooks(
  seen: ReadonlyMap<ItemCare, ReadonlyMap<Trouble, Seen>>,
  strata: readonly Stratum[],
  sureness: number,
): NextLooks[] {
  const wanted = new Map<string, Omit<NextLooks, "items">>();
  for (const whole of strata.filter(({ by }) => by === "all")) {
    const formats = strata.filter(({ by, trouble }) => by === "format" && trouble === whole.trouble);
    const spread = spreadOver(formats, moreLooks(whole, sureness));
    formats.forEach((stratum, at) => {
      const unseen = stratum.items - stratum.looked;
      const few = Math.max(0, Math.min(AT_LEAST, stratum.items) - stratum.looked);
      const more = Math.min(unseen, Math.max(few, spread[at] ?? 0));
      if (more <= (wanted.get(stratum.name)?.more ?? 0)) return;
      const why = few >= more ? "few" : "wide";
      wanted.set(stratum.name, { format: stratum.name, more, unseen, trouble: stratum.trouble, why });
    });
  }
  return [...wanted.values()]
    .sort((a, b) => b.more - a.more || a.format.localeCompare(b.format))
    .map((each) => ({ ...each, items: evenly(unseenOf(seen, each), each.more) }));
}

/** Looks still missing over all until the share is known to ± `WITHIN`; none where it is. */
function moreLooks({ items, looked, found, unsure, low, high }: Stratum, sureness: number): number {
  if ((high - low) / 2 <= WITHIN) return 0;
  const share = looked === 0 ? 0.5 : (found + unsure / 2) / looked;
  return Math.max(0, looksFor(WITHIN, share, items, sureness) - looked);
}

/**
 * Looks shared out by group size times the spread of its answers, so that the whole is known soonest.
 * Source: Neyman 1934, Journal of the Royal Statistical Society 97, 558-625 (from memory); a group nobody looked at counts as half and half.
 */
function spreadOver(strata: readonly Stratum[], looks: number): number[] {
  const weights = strata.map(({ items, looked, found }) => {
    const share = (found + 1) / (looked + 2);
    return (items - looked) * Math.sqrt(share * (1 - share));
  });
  const sum = weights.reduce((all, each) => all + each, 0);
  return weights.map((weight) => (sum === 0 ? 0 : Math.ceil((looks * weight) / sum)));
}

const unseenOf = (
  seen: ReadonlyMap<ItemCare, ReadonlyMap<Trouble, Seen>>,
  { format, trouble }: Pick<NextLooks, "format" | "trouble">,
): string[] =>
  [...seen].flatMap(([{ item }, troubles]) =>
    String(item.facts.format) === format &&
    [...troubles].some(([each, answer]) => each.id === trouble && answer === "unseen")
      ? [item.id]
      : [],
  );

/** So many of a list, from the middle of equal stretches. */
const evenly = (list: readonly string[], count: number): string[] =>
  Array.from({ length: count }, (_, at) => list[Math.floor(((at + 0.5) * list.length) / count)] ?? "");
