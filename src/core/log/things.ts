import { type CampaignState, eventsAbout, namesOn } from "./state.ts";

/** What of an event may name a thing. */
interface Naming {
  readonly kind: string;
  readonly payload: object;
}

const SHELVES = ["item", "bag", "station", "store", "reader"] as const;
const IN_ITEMS = ["part", "bag", "box", "shelf"];
/** Kinds that list things, and the fields that name them. */
const LISTING: ReadonlyMap<string, readonly string[]> = new Map([
  ["itemListed", ["item"]],
  ["partListed", ["item", "part"]],
  ["storeListed", ["store"]],
]);

/** Whether a thing is known under a number or name: an item, part, bag, box, shelf, station, store or reader; or is listed by an event just coming in.
 *  Boxes and shelves have no list: the items in them are gone through, once, and only when all else did not know the name. */
export function thingsKnown(state: CampaignState, coming: readonly Naming[] = []): (name: string) => boolean {
  const listed = new Set([
    ...stationsKnown(state, coming),
    ...coming.flatMap(({ kind, payload }) => textsOf(payload, LISTING.get(kind) ?? [])),
  ]);
  let inItems: ReadonlySet<string> | null = null;
  return (name) => {
    if (listed.has(name) || SHELVES.some((shelf) => state.filed.has(`${shelf}:${name}`))) return true;
    inItems ??= namedInItems(state);
    return inItems.has(name);
  };
}

/** Ids of every station that was ever listed. */
export const stationsKnown = (state: CampaignState, coming: readonly Naming[] = []): ReadonlySet<string> =>
  new Set(
    [...eventsAbout(state, "campaign:"), ...coming].flatMap(({ kind, payload }) =>
      kind === "campaignFounded" || kind === "stationsChanged" ? idsIn(payload) : [],
    ),
  );

const idsIn = (payload: object): string[] =>
  "stations" in payload && Array.isArray(payload.stations) ? payload.stations.map(({ id }) => id) : [];

const textsOf = (payload: object, names: readonly string[]): string[] =>
  Object.entries(payload).flatMap(([name, value]) =>
    names.includes(name) && typeof value === "string" ? [value] : [],
  );

const namedInItems = (state: CampaignState): ReadonlySet<string> =>
  new Set(
    namesOn(state, "item").flatMap((item) =>
      eventsAbout(state, `item:${item}`).flatMap(({ payload }) => textsOf(payload, IN_ITEMS)),
    ),
  );
