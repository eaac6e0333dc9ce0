import type { CalendarEntry, Campaign, ClimateSeries, Limits, Person } from "../items/campaign.ts";
import type { Day } from "../units/day.ts";
import { inOrder } from "./event.ts";
import { type Disagreement, disagreementsIn, type From, findingsIn } from "./findings-now.ts";
import { historyFacts } from "./item-history.ts";
import { itemIn, sessionsIn, wardNotesIn } from "./item-now.ts";
import type { Filed, Kind } from "./kinds.ts";
import { isOf, type Standing, standingOf } from "./standing.ts";
import { type CampaignState, eventsAbout, namesOn, type Shelf } from "./state.ts";
import { storesIn } from "./stores-now.ts";

/** The campaign as the log tells it, for care, Ward and plan on one morning; null before it is founded.
 *  Left out is what speaks of an item, person or store that nobody has listed yet. */
export function campaignOf(state: CampaignState, today: Day): Campaign | null {
  const house = standingOf(eventsAbout(state, "campaign:"));
  const settings = lastOn(house, "settings", "campaignFounded", "settingsChanged");
  const place = lastOn(house, "place", "campaignFounded", "placeChanged");
  const stations = lastOn(house, "stations", "campaignFounded", "stationsChanged");
  const limits = limitsIn(house);
  if (!settings || !place || !stations || !limits) return null;
  const { name, start, end, wardLitres } = settings.payload;
  const people = onShelf(state, "person");
  const codes = new Set(people.map(({ name }) => name));
  return {
    ...{ name, start, end, wardLitres, planFrom: today },
    place: place.payload.place,
    stations: stations.payload.stations,
    limits,
    ...itemsOf(state, house, today),
    people: placed(people.flatMap(({ now }) => personIn(now))),
    calendar: placed([house, ...people.map(({ now }) => now)].flatMap(calendarIn)).map((entry) =>
      codes.has(entry.who) ? withoutNote(entry) : entry,
    ),
    ...storesIn(
      onShelf(state, "store").map(({ now }) => now),
      today,
    ),
    climate: placed(onShelf(state, "reader").flatMap(({ name: reader, now }) => seriesIn(reader, now))),
  };
}

/** Every disagreement nobody has settled, item by item. */
export const disagreementsOf = (state: CampaignState): Disagreement[] =>
  onShelf(state, "item").flatMap(({ now }) => disagreementsIn(now));

const onShelf = (state: CampaignState, shelf: Shelf): { readonly name: string; readonly now: Standing }[] =>
  namesOn(state, shelf).map((name) => ({ name, now: standingOf(eventsAbout(state, `${shelf}:${name}`)) }));

/** In the order of the log. The stamps lie side by side while they are sorted: of a long log this takes a tenth of the time. */
export function placed<T>(values: readonly From<T>[]): T[] {
  const walls = Float64Array.from(values, ({ event }) => event.clock.wall);
  const at = (i: number): From<T> => values[i] as From<T>; // each i is a place in the list
  const order = Uint32Array.from(values, (_, i) => i).sort(
    (a, b) => (walls[a] ?? 0) - (walls[b] ?? 0) || inOrder(at(a).event, at(b).event) || a - b,
  );
  return Array.from(order, (i) => at(i).value);
}

function lastOn<K extends Kind>({ matters }: Standing, matter: string, ...kinds: readonly K[]) {
  return matters.get(matter)?.standing.findLast((event) => isOf(event, ...kinds)) as
    | Extract<Filed, { kind: K }>
    | undefined; // isOf has just said so
}

function itemsOf(
  state: CampaignState,
  house: Standing,
  today: Day,
): Pick<Campaign, "items" | "findings" | "sessions" | "ward"> {
  const cuts = house.counted.flatMap((event) => (isOf(event, "powerCut") ? [event.payload] : []));
  const listed = onShelf(state, "item").flatMap(({ name, now }) => {
    const item = itemIn(now);
    if (item === null) return [];
    const ward = wardNotesIn(now, name);
    const facts = historyFacts(
      now,
      ward.map(({ value }) => value),
      cuts,
      today,
    );
    const value = Object.keys(facts).length === 0 ? item.value : { ...item.value, state: facts };
    return [{ now, ward, item: { event: item.event, value } }];
  });
  return {
    items: placed(listed.map(({ item }) => item)),
    findings: placed(listed.flatMap(({ now }) => findingsIn(now))),
    sessions: placed(listed.flatMap(({ now }) => sessionsIn(now))),
    ward: placed(listed.flatMap(({ ward }) => ward)),
  };
}

/** Limits set apart from each other in two places: the stricter of each stands. Null: nobody has set any. */
function limitsIn({ matters }: Standing): Limits | null {
  const set = (matters.get("limits")?.standing ?? []).flatMap((event) =>
    isOf(event, "campaignFounded", "limitsChanged") ? [event.payload.limits] : [],
  );
  if (set.length === 0) return null;
  const least = (name: keyof Limits) =>
    set.map((each) => each[name]).reduce((a, b) => (b.value < a.value ? b : a));
  return {
    exposedMinutesADay: least("exposedMinutesADay"),
    exposedDaysAWeek: least("exposedDaysAWeek"),
    exposedDaysInARow: least("exposedDaysInARow"),
    maskMinutes: least("maskMinutes"),
    maskBreakMinutes: set.map((each) => each.maskBreakMinutes).reduce((a, b) => (b.value > a.value ? b : a)),
  };
}

/** A person listed apart in two places does mould work only where both say so. */
function personIn({ counted, matters }: Standing): From<Person>[] {
  const standing = (matters.get("listing")?.standing ?? []).filter((event) => isOf(event, "personListed"));
  const last = standing.at(-1);
  const event = counted.find((each) => isOf(each, "personListed"));
  if (!last || !event) return [];
  const { person: code, ...rest } = last.payload;
  return [{ event, value: { code, ...rest, mouldWork: standing.every(({ payload }) => payload.mouldWork) } }];
}

/** Of a person the days are all that is handed on, whoever wrote a note beside them, and before they were listed. */
const withoutNote = ({ note: _, ...days }: CalendarEntry): CalendarEntry => days;

const calendarIn = ({ counted }: Standing): From<CalendarEntry>[] =>
  counted.flatMap((event) => {
    const value = entryOf(event);
    return value === null ? [] : [{ event, value }];
  });

function entryOf(event: Filed): CalendarEntry | null {
  if (isOf(event, "calendarChanged")) return event.payload;
  if (!isOf(event, "personAway", "personHours", "cleanWorkThisWeek")) return null;
  const { person: who, from, to } = event.payload;
  if (isOf(event, "personHours")) return { who, from, to, what: "hours", hours: event.payload.hours };
  return { who, from, to, what: isOf(event, "personAway") ? "away" : "clean work" };
}

/** A reader's series in the order of time; a memory read out twice counts once. */
function seriesIn(name: string, { counted }: Standing): From<ClimateSeries>[] {
  const [event] = counted;
  if (event === undefined) return [];
  const all = counted.flatMap((each) => (isOf(each, "readerRead") ? each.payload.readings : []));
  const sorted = all.sort((a, b) => (a.at < b.at ? -1 : a.at > b.at ? 1 : 0));
  const readings = sorted.filter((each, i) => {
    const before = sorted[i - 1];
    return before?.at !== each.at || before.dryBulb !== each.dryBulb || before.relHum !== each.relHum;
  });
  return [{ event, value: { name, readings } }];
}
