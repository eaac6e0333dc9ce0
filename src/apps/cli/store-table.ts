import { quantity, STORES_WORDS, sayOrderBy, sayPacks, sayRunsOut } from "../../core/say/stores.ts";
import type { StoreOutlook } from "../../core/stores/projection/store-outlook.ts";
import type { Day } from "../../core/units/day.ts";
import { wrapped } from "./wrapped.ts";

const NAME_LENGTH = 32;

/** A line a store, those that run out first on top, as many as there is room for; those that last are named in a sentence below.
 *  @param room most lines; where it has no end every store has a line */
export function storeTable(outlooks: readonly StoreOutlook[], today: Day, room: number): string[] {
  const soonest = [...outlooks].sort((a, b) => lastOf(a).localeCompare(lastOf(b)));
  const own = soonest.filter(({ runsOut }) => room === Number.POSITIVE_INFINITY || runsOut.p10);
  const rest = soonest.filter((each) => !own.includes(each));
  const below = [
    ...folded(rest.filter(isUsed), STORES_WORDS.lasting),
    ...folded(
      rest.filter((each) => !isUsed(each)),
      STORES_WORDS.untouched,
    ),
    STORES_WORDS.ranges,
    ...(room === Number.POSITIVE_INFINITY ? [] : [STORES_WORDS.more]),
  ];
  const shown = own.slice(
    0,
    Math.max(1, room - 1 - below.length - (own.length + 1 + below.length > room ? 1 : 0)),
  );
  return [
    ...(shown.length > 0 ? inColumns([STORES_WORDS.heads, ...shown.map((each) => rowOf(each, today))]) : []),
    ...(shown.length < own.length ? [STORES_WORDS.later(own.length - shown.length)] : []),
    ...below,
  ];
}

const isUsed = ({ use }: StoreOutlook): boolean => use.some((each) => each > 0);
const lastOf = ({ runsOut: { p10, p50 } }: StoreOutlook): string => `${p50 ?? "9999"} ${p10 ?? "9999"}`;

function rowOf(outlook: StoreOutlook, today: Day): string[] {
  const { store, aWeek, orders } = outlook;
  return [
    store.name.length > NAME_LENGTH ? `${store.name.slice(0, NAME_LENGTH - 1)}…` : store.name,
    `${quantity(store.onHand)} ${store.unit}`,
    quantity(aWeek),
    sayRunsOut(outlook, today),
    sayOrderBy(outlook, today),
    orders.map(({ packing, packs }) => (packing ? sayPacks(packing) : `${packs}`)).join(", then "),
  ];
}

function folded(outlooks: readonly StoreOutlook[], say: (names: readonly string[]) => string): string[] {
  if (outlooks.length === 0) return [];
  return wrapped(
    say(outlooks.map(({ store }) => `${store.name} ${quantity(store.onHand)} ${store.unit}`)),
    "",
    "  ",
  );
}

/** Two spaces between; figures stand right. */
function inColumns(rows: readonly (readonly string[])[]): string[] {
  const widths = (rows[0] ?? []).map((_, at) => Math.max(...rows.map((row) => row[at]?.length ?? 0)));
  const right = new Set([1, 2]);
  return rows.map((row) =>
    row
      .map((cell, at) => (right.has(at) ? cell.padStart(widths[at] ?? 0) : cell.padEnd(widths[at] ?? 0)))
      .join("  ")
      .trimEnd(),
  );
}
