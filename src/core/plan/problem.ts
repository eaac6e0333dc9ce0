import type { Band, Route } from "../care/care.ts";
import type { Norms } from "../care/norms.ts";
import type { Act, Campaign, Item, Person, StationKind } from "../items/campaign.ts";
import { addDays, type Day, daysBetween, mondayOf, weekdayOf } from "../units/day.ts";
import { mouldFactor, mouldOutlooks, soonerDue } from "../ward/mould-outlook.ts";
import { practisedBy, slownessOn } from "./pace.ts";
import { openMinutes } from "./station-open.ts";
import { expected, KINDS, kindOf } from "./work.ts";

/** One step of a job, with minutes as a band and what it draws from the stores. */
export interface Task {
  readonly act: Act;
  readonly kind: number;
  readonly minutes: Band;
  readonly exposed: boolean;
  readonly dirt: 0 | 1 | 2 | 3 | 4;
  /** Store index → quantity. */
  readonly uses: ReadonlyMap<number, number>;
}

/** One item on its way to the box. */
export interface Job {
  readonly item: Item;
  readonly route: Route;
  readonly tasks: readonly Task[];
  /** First day it can be worked on, as a day index of the plan. */
  readonly ready: number;
  /** It lies in the Ward already: `ready` is when its wait is expected to end. */
  readonly inWard: boolean;
  readonly weight: number;
  /** Day of the plan after which waiting costs steeply: the custodian's, or a sooner one on which mould is sure to begin. */
  readonly due: number | null;
}

export interface Hand {
  readonly person: Person;
  /** Minutes of work on each day of the plan, briefing taken off. */
  readonly minutes: Float64Array;
  /** 1 where mould work may be given. */
  readonly mayMould: Uint8Array;
  /**
   * Most minutes of work near mould on each day, clearing up taken off: within the day's limit and the person's hours, with a break after
   * each spell with a mask, and no longer than others are in the building (P13); 0 where none may be given.
   */
  readonly nearMinutes: Float64Array;
  /** Exposed days before the first morning: of its week, and in a row up to the evening before. */
  readonly exposedBefore: { readonly week: number; readonly row: number };
}

/** A station and how long one place of it is open on each day, in minutes. */
export interface StationRow {
  readonly id: string;
  readonly kind: StationKind;
  readonly places: number;
  readonly open: Float64Array;
}

export interface StoreRow {
  readonly id: string;
  readonly use: string;
  /** Quantity there on the first morning and what comes in on each day. */
  readonly onHand: number;
  readonly arrivals: Float64Array;
  /** First day on which an order sent on the first morning would be here; Infinity: can no longer be ordered. */
  readonly reorderFrom: number;
}

/** Minutes an exposed day costs before any item is touched. */
export interface Overhead {
  readonly clean: number;
  readonly exposed: number;
}

/** The campaign as the planner sees it: days are counted from the first morning, 0. */
export interface PlanProblem {
  readonly campaign: Campaign;
  readonly days: readonly Day[];
  readonly weekday: Uint8Array;
  readonly jobs: readonly Job[];
  readonly hands: readonly Hand[];
  /** Station kind → minutes on each day, places counted. */
  readonly stations: ReadonlyMap<StationKind, Float64Array>;
  readonly stationRows: readonly StationRow[];
  readonly stores: readonly StoreRow[];
  readonly exposedMinutesADay: number;
  readonly exposedDaysAWeek: number;
  readonly exposedDaysInARow: number;
  readonly overhead: Overhead;
  /** Litres of the Ward for the jobs' bags: those that stay there all along, having no release before them, are taken off. */
  readonly wardLitres: number;
  /** Store index → quantity one person uses on one exposed day. */
  readonly sessionUses: ReadonlyMap<number, number>;
  /** How much longer work takes on each day: the first weeks run slower. */
  readonly slowness: Float64Array;
}

/** What one person uses on one exposed day, whatever the item. */
export const PER_SESSION = [
  "k-mask",
  "k-gloves",
  "k-apron",
  "k-hair",
  "k-cloth",
  "k-eth",
  "k-cover",
  "k-bags-waste",
];
const URGENT = new Set([
  "brittle",
  "acetate_degrading",
  "ink_corrosion",
  "nitrate_suspected",
  "mould_active",
  "wet",
  "damp",
]);

export function planProblem(campaign: Campaign, routes: readonly Route[], norms: Norms): PlanProblem {
  const length = Math.max(0, daysBetween(campaign.planFrom, campaign.end) + 1);
  const days = Array.from({ length }, (_, d) => addDays(campaign.planFrom, d));
  const closed = closedDays(campaign, days, "everyone");
  const byItem = new Map(campaign.items.map((item) => [item.id, item]));
  const stores = storeRows(campaign, days);
  const storeOf = new Map(stores.map((store, at) => [store.use, at]));
  const usesOf = (uses: Readonly<Record<string, number>>): Map<number, number> =>
    new Map(
      Object.entries(uses).flatMap(([use, quantity]) =>
        storeOf.has(use)
          ? [[storeOf.get(use) as number, quantity * (campaign.useAgainstNorm?.[use] ?? 1)] as const]
          : [],
      ),
    );
  const overhead = {
    clean: norms.band("s-don").typical + norms.band("s-setup").typical,
    exposed: ["s-doff", "s-decon", "s-tools", "s-waste"].reduce((sum, id) => sum + norms.band(id).typical, 0),
  };
  const hands = handsOf(campaign, days, closed, overhead, norms);
  const jobs = jobsOf(campaign, routes, byItem, usesOf);
  const stationRows = campaign.stations.map((station): StationRow => {
    const { id, kind, places } = station;
    const open = Float64Array.from(days, (day, d) => (closed[d] ? 0 : openMinutes(campaign, station, day)));
    return { id, kind, places, open };
  });
  return {
    campaign,
    days,
    weekday: Uint8Array.from(days.map(weekdayOf)),
    jobs,
    hands,
    stations: stationMinutes(stationRows, days.length, hands),
    stationRows,
    stores,
    exposedMinutesADay: campaign.limits.exposedMinutesADay.value,
    exposedDaysAWeek: campaign.limits.exposedDaysAWeek.value,
    exposedDaysInARow: campaign.limits.exposedDaysInARow.value,
    overhead,
    wardLitres: Math.max(0, campaign.wardLitres - stayingLitres(campaign, routes, jobs)),
    sessionUses: usesOf(Object.fromEntries(PER_SESSION.map((id) => [id, norms.band(id).typical]))),
    slowness: slownessOf(campaign, days),
  };
}

function jobsOf(
  campaign: Campaign,
  routes: readonly Route[],
  byItem: ReadonlyMap<string, Item>,
  usesOf: (uses: Readonly<Record<string, number>>) => Map<number, number>,
): Job[] {
  const jobs: Job[] = [];
  const mould = mouldOutlooks(campaign);
  for (const route of routes) {
    const item = byItem.get(route.item);
    if (!item || route.destiny !== "route" || route.steps.length === 0) continue;
    const must = item.priority === "must" ? 4 : 1;
    const arrived = item.arrives ? Math.max(0, daysBetween(campaign.planFrom, item.arrives) + 1) : 0;
    const inWard = route.steps[0]?.act === "release" && route.wardDays !== null;
    jobs.push({
      item,
      route,
      tasks: route.steps.map((step) => ({
        act: step.act,
        kind: kindOf(step),
        minutes: step.minutes,
        exposed: step.exposed,
        dirt: step.dirt,
        uses: usesOf(step.uses),
      })),
      ready: inWard ? Math.max(arrived, Math.ceil(expected(route.wardDays as Band))) : arrived,
      inWard,
      weight:
        must * (route.conditions.some((each) => URGENT.has(each)) ? 2 : 1) * mouldFactor(mould.get(item.id)),
      due: soonerDue(item.due ? daysBetween(campaign.planFrom, item.due) : null, mould.get(item.id)),
    });
  }
  return jobs;
}

function closedDays(campaign: Campaign, days: readonly Day[], who: string): Uint8Array {
  const rows = campaign.calendar.filter(
    (row) => row.who === who && (row.what === "closed" || row.what === "away"),
  );
  return Uint8Array.from(days.map((day) => (rows.some((row) => row.from <= day && day <= row.to) ? 1 : 0)));
}

/** Litres of bags that were admitted and that no job will release. */
function stayingLitres(campaign: Campaign, routes: readonly Route[], jobs: readonly Job[]): number {
  const acts = new Map<string, Set<Act>>();
  for (const { item, act } of campaign.sessions) acts.set(item, (acts.get(item) ?? new Set()).add(act));
  const leaving = new Set(jobs.flatMap((job) => (job.inWard ? [job.item.id] : [])));
  return routes.reduce((sum, { item, wardLitres }) => {
    const done = acts.get(item);
    const inside = done?.has("admit") && !done.has("release") && !done.has("clean");
    return inside && !leaving.has(item) ? sum + wardLitres : sum;
  }, 0);
}

function handsOf(
  campaign: Campaign,
  days: readonly Day[],
  closed: Uint8Array,
  overhead: Overhead,
  norms: Norms,
): Hand[] {
  const briefing = norms.band("s-pdca").typical;
  const minutes = campaign.people.map((person) => minutesOf(campaign, days, closed, person, briefing));
  const inBuilding = days.map((_, d) => minutes.reduce((sum, own) => sum + (own[d] ?? 0), 0));
  return campaign.people.map((person, p) => {
    const own = minutes[p] as Float64Array;
    const mayMould = mouldWorkOf(campaign, days, person);
    const nearMinutes = own.map((there, d) => {
      const most = Math.min(longestNear(campaign, there - overhead.clean), (inBuilding[d] ?? 0) - there);
      return mayMould[d] ? Math.max(0, most - overhead.exposed) : 0;
    });
    return { person, minutes: own, mayMould, nearMinutes, exposedBefore: exposedBefore(campaign, person) };
  });
}

/** Most minutes near mould, clearing up among them, in so many minutes, when another spell with a mask needs a break before it. */
function longestNear({ limits }: Campaign, minutes: number): number {
  const spell = limits.maskMinutes.value;
  const turn = spell + limits.maskBreakMinutes.value;
  if (spell <= 0 || minutes <= 0) return 0;
  const turns = Math.floor(minutes / turn);
  return Math.min(limits.exposedMinutesADay.value, turns * spell + Math.min(spell, minutes - turns * turn));
}

function exposedBefore({ sessions, planFrom }: Campaign, { code }: Person): Hand["exposedBefore"] {
  const worn = new Set(
    sessions.flatMap((each) =>
      each.exposed && each.person === code && each.day < planFrom ? [each.day] : [],
    ),
  );
  let row = 0;
  while (worn.has(addDays(planFrom, -1 - row))) row++;
  return { week: [...worn].filter((day) => day >= mondayOf(planFrom)).length, row };
}

function minutesOf(
  campaign: Campaign,
  days: readonly Day[],
  closed: Uint8Array,
  person: Person,
  briefing: number,
): Float64Array {
  const away = closedDays(campaign, days, person.code);
  const hours = campaign.calendar.filter(
    (row) => row.what === "hours" && (row.who === person.code || row.who === "everyone"),
  );
  return Float64Array.from(days, (day, d) => {
    const there = person.weekdays.includes(weekdayOf(day)) && !closed[d] && !away[d];
    if (!there || (person.from && day < person.from) || (person.until && day > person.until)) return 0;
    const told = hours.filter((row) => row.from <= day && day <= row.to).map((row) => row.hours ?? 24);
    return Math.max(0, Math.min(person.hoursADay, ...told) * 60 - briefing);
  });
}

function mouldWorkOf(campaign: Campaign, days: readonly Day[], person: Person): Uint8Array {
  const cleanWork = campaign.calendar.filter(
    (row) => row.what === "clean work" && (row.who === person.code || row.who === "everyone"),
  );
  return Uint8Array.from(days, (day) =>
    person.mouldWork && !cleanWork.some((row) => row.from <= day && day <= row.to) ? 1 : 0,
  );
}

/** Open minutes of the stations, and no more than the people present could work there. Without a camera there is none; other kinds not listed are no limit. */
function stationMinutes(
  rows: readonly StationRow[],
  length: number,
  hands: readonly Hand[],
): Map<StationKind, Float64Array> {
  const kinds = new Set<StationKind>(["camera", ...rows.map((row) => row.kind)]);
  return new Map(
    [...kinds].map((kind) => {
      const own = rows.filter((row) => row.kind === kind);
      const able = hands.filter((hand) => mayWorkAt(hand.person, kind));
      const minutes = new Float64Array(length).map((_, d) => {
        const one = onePersonAt(rows, kind, d);
        const people = able.reduce((sum, hand) => sum + Math.min(one, hand.minutes[d] ?? 0), 0);
        return Math.min(
          people,
          own.reduce((sum, row) => sum + row.places * (row.open[d] ?? 0), 0),
        );
      });
      return [kind, minutes];
    }),
  );
}

/** Minutes one person could have at the stations of a kind on a day, one place at a time; a kind that is not listed is no limit, but for the camera. */
export function onePersonAt(rows: readonly StationRow[], kind: StationKind, d: number): number {
  const own = rows.filter((row) => row.kind === kind);
  if (own.length === 0 && kind !== "camera") return Number.POSITIVE_INFINITY;
  return own.reduce((sum, row) => sum + (row.open[d] ?? 0), 0);
}

const mayWorkAt = (person: Person, station: StationKind): boolean =>
  KINDS.some(
    (kind) => kind.station === station && kind.skills.some((skill) => person.skills.includes(skill)),
  );

function storeRows(campaign: Campaign, days: readonly Day[]): StoreRow[] {
  const last = days.length;
  const today = campaign.planFrom;
  const byUse = new Map<
    string,
    { id: string; use: string; onHand: number; arrivals: Float64Array; reorderFrom: number }
  >();
  for (const store of campaign.stores) {
    const arrivals = new Float64Array(last);
    let early = 0;
    for (const delivery of campaign.deliveries) {
      if (delivery.store !== store.id) continue;
      const d = daysBetween(today, delivery.day);
      if (d <= 0) early += delivery.day < today ? 0 : delivery.quantity;
      else if (d < last) arrivals[d] = (arrivals[d] ?? 0) + delivery.quantity;
    }
    const reorderFrom = store.orderBy && store.orderBy < today ? Number.POSITIVE_INFINITY : store.leadDays;
    const known = byUse.get(store.use);
    if (!known)
      byUse.set(store.use, {
        id: store.id,
        use: store.use,
        onHand: store.onHand + early,
        arrivals,
        reorderFrom,
      });
    else {
      known.onHand += store.onHand + early;
      known.reorderFrom = Math.min(known.reorderFrom, reorderFrom);
      arrivals.forEach((quantity, d) => {
        known.arrivals[d] = (known.arrivals[d] ?? 0) + quantity;
      });
    }
  }
  return [...byUse.values()];
}

/** Week 1 twice, week 2 one and a half, week 3 a fifth longer (`d-trial`), unless the log shows a team past its first fortnight. */
function slownessOf(campaign: Campaign, days: readonly Day[]): Float64Array {
  const practised = practisedBy(campaign) !== null;
  return Float64Array.from(days, (day) => (practised ? 1 : slownessOn(campaign.start, day)));
}
