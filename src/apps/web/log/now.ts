import { careOfCampaign } from "../../../core/care/item-care.ts";
import { routeOf } from "../../../core/care/route.ts";
import type { Campaign } from "../../../core/items/campaign.ts";
import { campaignOf } from "../../../core/log/campaign-of.ts";
import { disagreementsIn, findingsIn } from "../../../core/log/findings-now.ts";
import { historyOf } from "../../../core/log/item-history.ts";
import { itemIn, placeIn, sessionsIn, wardNotesIn } from "../../../core/log/item-now.ts";
import type { Filed, Payload } from "../../../core/log/kinds.ts";
import { isOf, standingOf } from "../../../core/log/standing.ts";
import { type CampaignState, eventsAbout, isStored, namesOn, readStored } from "../../../core/log/state.ts";
import type { Day } from "../../../core/units/day.ts";
import type { ItemNow } from "./item-now.ts";
import type { ItemRow } from "./item-row.ts";
import type { PlannedWork } from "./planned-work.ts";
import type { Me } from "./server-line.ts";
import type { Tables } from "./tables.ts";

/** The campaign without its items: place, people, stations, stores, limits, calendar, climate. */
export type House = Omit<Campaign, "items" | "findings" | "sessions" | "ward">;

/** The campaign as this device knows it this minute: what every view is made from. */
export interface Now {
  readonly me: Me;
  readonly today: Day;
  /** Minutes after midnight. */
  readonly minute: number;
  readonly state: CampaignState;
  readonly tables: Tables;
  readonly house: House;
  readonly work: PlannedWork | null;
  /** A row for every item, by number: what lists, counts and filters are made from. Going through all items by `item` is slow where there are thousands. */
  readonly rows: readonly ItemRow[];
  /** Rows still to be made, or of yesterday: 0 but for a while after the first opening of a large campaign. */
  readonly rowsToCome: number;
  /** Every item's number, sorted. */
  readonly itemIds: readonly string[];
  /** Null: nobody has listed it. */
  item(id: string): ItemNow | null;
}

/** What is known of one moment, taking over from the moment before whatever nothing was written about since. */
export interface Moment {
  readonly me: Me;
  readonly today: Day;
  readonly minute: number;
  readonly state: CampaignState;
  readonly tables: Tables;
  readonly work: PlannedWork | null;
  readonly rows: readonly ItemRow[];
  readonly rowsToCome: number;
}

/** Items remembered whole: those of a day's work. */
const MOST_REMEMBERED = 500;

/** Makes each next `Now`, remembering items whose entries have not changed. Null before the campaign is founded. */
export function nowMaker(): (moment: Moment) => (Now & { once(id: string): ItemNow | null }) | null {
  let house: { readonly key: readonly unknown[]; readonly value: House } | null = null;
  const items = new Map<string, { readonly key: readonly unknown[]; readonly value: ItemNow | null }>();
  return (moment) => {
    const { state, today, tables } = moment;
    const around = houseState(state);
    const houseKey = [today, ...around.filed.values()];
    if (house === null || !same(house.key, houseKey)) {
      const campaign = campaignOf(around, today);
      if (campaign === null) return null;
      house = { key: houseKey, value: campaign };
    }
    const { value: built } = house;
    const cuts = standingOf(eventsAbout(state, "campaign:")).counted.flatMap((event) =>
      isOf(event, "powerCut") ? [event.payload] : [],
    );
    let ids: readonly string[] | null = null;
    return {
      ...moment,
      house: built,
      get itemIds() {
        ids ??= namesOn(state, "item");
        return ids;
      },
      item: (id) => {
        const events = eventsAbout(state, `item:${id}`);
        const key = [events, built.place, today, tables, cuts.length];
        const known = items.get(id);
        if (known && same(known.key, key)) return known.value;
        const value = itemNow(id, events, built, cuts, moment);
        items.delete(id); // the last asked for stands last
        items.set(id, { key, value });
        const [oldest] = items.keys();
        if (items.size > MOST_REMEMBERED && oldest !== undefined) items.delete(oldest);
        return value;
      },
      once: (id) => {
        const found = state.filed.get(`item:${id}`) ?? [];
        return itemNow(id, isStored(found) ? readStored(found) : found, built, cuts, moment);
      },
    };
  };
}

const houseState = (state: CampaignState): CampaignState => ({
  ...state,
  filed: new Map([...state.filed].filter(([subject]) => !/^(item|bag|question):/.test(subject))),
});

const same = (a: readonly unknown[], b: readonly unknown[]): boolean =>
  a.length === b.length && a.every((each, at) => each === b[at]);

function itemNow(
  id: string,
  events: readonly Filed[],
  house: House,
  cuts: readonly Payload<"powerCut">[],
  { today, tables }: Moment,
): ItemNow | null {
  const now = standingOf(events);
  const listed = itemIn(now);
  if (listed === null) return null;
  const history = historyOf(now, id, cuts, today);
  const item =
    Object.keys(history.state).length === 0 ? listed.value : { ...listed.value, state: history.state };
  const findings = findingsIn(now).map(({ value }) => value);
  const sessions = sessionsIn(now).map(({ value }) => value);
  const ward = wardNotesIn(now, id).map(({ value }) => value);
  const [care] = careOfCampaign(tables.book, { ...house, items: [item], findings, sessions, ward });
  if (care === undefined) return null;
  const route = routeOf(tables.norms, care);
  return {
    ...{ item, events, findings, sessions, ward, history, care, route },
    place: placeIn(now),
    disagreements: disagreementsIn(now),
  };
}
