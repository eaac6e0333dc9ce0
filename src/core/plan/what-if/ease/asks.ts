import type { Campaign, Station, StationKind } from "../../../items/campaign.ts";
import { addDays, weekdayOf } from "../../../units/day.ts";
import { isStationOpen } from "../../station-open.ts";
import { ADDABLE_ROLES, type Change } from "../change.ts";
import { whyNot } from "../why-not.ts";

/** What could be asked of somebody, and how hard that is: 1 a word or a telephone call, 2 a purchase, 3 a hire, 4 a person, 5 a promised date. */
export interface Ask {
  readonly changes: readonly Change[];
  /** Of what it gives more, as `Bind.resource`; `time` for a later end. */
  readonly resource: string;
  readonly effort: 1 | 2 | 3 | 4 | 5;
}

/* Sizes of what is asked for, and how soon it can be here. All common practice, no source. */
const PERSON_AFTER_DAYS = 28;
const HELP_DAYS = 56;
const HIRE_AFTER_DAYS = 14;
const BUY_AFTER_DAYS = 14;
const SOONER_DAYS = 14;
const LONGER_HOURS = 2;
const LONGEST_DAY = 12;
const LATER_DAYS = [14, 42] as const;
const MORE_WARD = [1.25, 1.75] as const;
const MORE_STORE = 0.25;

const STATION_KINDS: readonly StationKind[] = [
  "camera",
  "mould bench",
  "clean bench",
  "cover stand",
  "boxing table",
];

/** One or two things worth asking for where a resource binds, the easiest first; empty where nothing of it can be had. */
export function asksFor(campaign: Campaign, resource: string): Ask[] {
  return offered(campaign, resource).filter(({ changes }) =>
    changes.every((change) => whyNot(campaign, change) === null),
  );
}

/** What a lead is told to ask for whatever binds: it is tried so that it can be said that it does not help. */
export const usualAsks = (campaign: Campaign): Ask[] =>
  ["camera", "mould minutes", "ward", "boxing table"].flatMap(
    (resource) => asksFor(campaign, resource).at(-1) ?? [],
  );

/** A later end; stations that are there up to the end stay until the new one. */
export const laterEnds = (campaign: Campaign): Ask[] => LATER_DAYS.map((days) => laterEnd(campaign, days));

export function laterEnd(campaign: Campaign, days: number): Ask {
  const day = addDays(campaign.end, days);
  const from = addDays(campaign.end, 1);
  const hired = campaign.stations.filter(({ id }) =>
    campaign.calendar.some((row) => row.who === id && row.what === "open"),
  );
  return {
    resource: "time",
    effort: 5,
    changes: [
      { change: "end", day },
      ...hired.map(({ id }) => ({ change: "open", station: id, from, to: day }) as const),
    ],
  };
}

function offered(campaign: Campaign, resource: string): Ask[] {
  const ask = (effort: Ask["effort"], ...changes: Change[]): Ask => ({ changes, resource, effort });
  const { planFrom, end } = campaign;
  const person = (role: (typeof ADDABLE_ROLES)[number], mouldWork: boolean): Ask[] => {
    const from = addDays(planFrom, PERSON_AFTER_DAYS);
    const helped = addDays(from, HELP_DAYS - 1);
    const one = { change: "more people", role, count: 1, mouldWork, from } as const;
    return [...(helped < end ? [ask(3, { ...one, to: helped })] : []), ask(4, { ...one, to: end })];
  };
  if (resource === "mould minutes") return person("cleaner", true);
  if (resource === "ward")
    return MORE_WARD.map((share, at) =>
      ask(at === 0 ? 1 : 2, { change: "ward", litres: Math.ceil((share * campaign.wardLitres) / 10) * 10 }),
    );
  if (resource.startsWith("hands:")) {
    const role = ADDABLE_ROLES.find((each) => resource === `hands:${each}`);
    return role ? person(role, false) : [];
  }
  if (resource.startsWith("store:")) return storeAsks(campaign, resource.slice(6), ask);
  const kind = STATION_KINDS.find((each) => each === resource);
  return kind ? stationAsks(campaign, kind, ask) : [];
}

type AskOf = (effort: Ask["effort"], ...changes: Change[]) => Ask;

/** What is on its way sooner, or some more bought nearer. */
function storeAsks({ stores, deliveries, planFrom }: Campaign, id: string, ask: AskOf): Ask[] {
  const store = stores.find((each) => each.id === id);
  if (!store) return [];
  const coming = deliveries.filter((each) => each.store === id && each.day > planFrom);
  const all = store.onHand + coming.reduce((sum, each) => sum + each.quantity, 0);
  const quantity = Math.max(1, Math.ceil((MORE_STORE * all) / store.pack)) * store.pack;
  return [
    ...(coming.length > 0 ? [ask(1, { change: "late", stores: [id], days: -SOONER_DAYS })] : []),
    ask(2, { change: "delivery", store: id, day: addDays(planFrom, BUY_AFTER_DAYS), quantity }),
  ];
}

/** Two more days where it is there on given days only, longer days where it is not, one more of it. */
function stationAsks(campaign: Campaign, kind: StationKind, ask: AskOf): Ask[] {
  const [station] = campaign.stations.filter((each) => each.kind === kind);
  if (!station) return [];
  const hours = Math.min(LONGEST_DAY, station.minutesADay / 60 + LONGER_HOURS);
  const days = twoDays(campaign, station);
  return [
    days ? ask(2, days) : ask(1, { change: "longer at", station: station.id, hours }),
    ask(kind === "camera" ? 3 : 2, {
      change: "more stations",
      kind,
      count: 1,
      from: addDays(campaign.planFrom, HIRE_AFTER_DAYS),
      to: campaign.end,
    }),
  ];
}

/** The first two working days in a row, soon, on which a hired station is not there. */
function twoDays(campaign: Campaign, station: Station): Change | null {
  if (!campaign.calendar.some((row) => row.who === station.id && row.what === "open")) return null;
  const missed = (n: number): boolean => {
    const day = addDays(campaign.planFrom, n);
    const worked = campaign.people.some((each) => each.weekdays.includes(weekdayOf(day)));
    return worked && !isStationOpen(campaign, station, day);
  };
  for (let n = HIRE_AFTER_DAYS; addDays(campaign.planFrom, n + 1) <= campaign.end; n++)
    if (missed(n) && missed(n + 1))
      return {
        change: "open",
        station: station.id,
        from: addDays(campaign.planFrom, n),
        to: addDays(campaign.planFrom, n + 1),
      };
  return null;
}
