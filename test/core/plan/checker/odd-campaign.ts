import fc from "fast-check";
import { makeCampaign } from "../../../../bench/make-campaign.ts";
import {
  ACTS,
  type CalendarEntry,
  type Campaign,
  type Limit,
  type Session,
  type Store,
} from "../../../../src/core/items/campaign.ts";
import { addDays, type Day } from "../../../../src/core/units/day.ts";

/** What makes a campaign odd; days are counted from its start, whole numbers name people, items and stations by their place in the list. */
interface Oddity {
  readonly size: {
    readonly items: number;
    readonly people: number;
    readonly weeks: number;
    readonly seed: number;
  };
  readonly planFrom: number;
  readonly wardLitres: number;
  readonly calendar: readonly {
    readonly who: number;
    readonly from: number;
    readonly days: number;
    readonly what: CalendarEntry["what"];
    readonly hours: number;
  }[];
  readonly stations: readonly {
    readonly minutesADay: number;
    readonly places: number;
    readonly twin: boolean;
  }[];
  readonly worn: readonly { readonly person: number; readonly daysAgo: number }[];
  /** Items that are some way on: so many acts are done, the last so many days ago. */
  readonly begun: readonly { readonly item: number; readonly acts: number; readonly daysAgo: number }[];
  readonly untested: readonly number[];
  readonly due: readonly { readonly item: number; readonly day: number }[];
  readonly stores: readonly {
    readonly use: string;
    readonly onHand: number;
    readonly leadDays: number;
    readonly orderBy: number;
  }[];
  readonly limits: readonly [perDay: number, perWeek: number, inRow: number, mask: number, rest: number];
}

const upTo = (max: number): fc.Arbitrary<number> => fc.integer({ min: 0, max });
const few = <T>(one: fc.Arbitrary<T>, maxLength: number): fc.Arbitrary<T[]> => fc.array(one, { maxLength });
const STORES = ["k-mask", "k-bag", "k-wrap-paper", "k-tape", "k-label", "k-folder", "k-sponge-light"];

/** Small campaigns in which something is scarce, shut, short or half done. */
export const oddCampaign = (items: { min: number; max: number }): fc.Arbitrary<Campaign> =>
  fc
    .record({
      size: fc.record({
        items: fc.integer(items),
        people: fc.integer({ min: 1, max: 5 }),
        weeks: fc.integer({ min: 2, max: 5 }),
        seed: upTo(1e6),
      }),
      planFrom: upTo(12),
      wardLitres: upTo(60),
      calendar: few(
        fc.record({
          who: upTo(10),
          from: upTo(30),
          days: upTo(10),
          what: fc.constantFrom("away", "clean work", "closed", "open", "hours"),
          hours: fc.integer({ min: 0, max: 6 }),
        }),
        8,
      ),
      stations: fc.array(
        fc.record({
          minutesADay: fc.constantFrom(20, 60, 100, 150, 420),
          places: fc.integer({ min: 1, max: 3 }),
          twin: fc.boolean(),
        }),
        { minLength: 5, maxLength: 5 },
      ),
      worn: few(fc.record({ person: upTo(4), daysAgo: fc.integer({ min: 1, max: 6 }) }), 8),
      begun: few(fc.record({ item: upTo(40), acts: upTo(8), daysAgo: fc.integer({ min: 1, max: 9 }) }), 12),
      untested: few(upTo(40), 3),
      due: few(fc.record({ item: upTo(40), day: upTo(40) }), 8),
      stores: few(
        fc.record({
          use: fc.constantFrom(...STORES),
          onHand: upTo(12),
          leadDays: upTo(30),
          orderBy: fc.integer({ min: -3, max: 20 }),
        }),
        4,
      ),
      limits: fc.tuple(
        fc.constantFrom(70, 120, 180, 300),
        fc.integer({ min: 1, max: 4 }),
        fc.integer({ min: 1, max: 3 }),
        fc.constantFrom(15, 30, 75, 120),
        fc.constantFrom(0, 15, 30, 60),
      ),
    })
    .map(campaignOf);

function campaignOf(odd: Oddity): Campaign {
  const made = makeCampaign(odd.size);
  const planFrom = addDays(made.start, odd.planFrom);
  const stations = made.stations.flatMap((station, at) => {
    const { minutesADay, places, twin } = odd.stations[at] as Oddity["stations"][number];
    const own = { ...station, minutesADay, places };
    return twin ? [own, { ...own, id: `${station.id}-2`, minutesADay: minutesADay / 2 + 15 }] : [own];
  });
  const names = ["everyone", ...made.people.map(({ code }) => code), ...stations.map(({ id }) => id)];
  const untested = new Set(odd.untested.map((at) => made.items[at]?.id));
  return {
    ...made,
    planFrom,
    wardLitres: odd.wardLitres,
    stations,
    items: made.items.map((item, at) => {
      const due = odd.due.find((each) => each.item === at);
      return due ? { ...item, due: addDays(made.start, due.day) } : item;
    }),
    findings: made.findings.filter(({ item, test }) => !(untested.has(item) && test === "wet")),
    calendar: odd.calendar.map(({ who, from, days, what, hours }): CalendarEntry => {
      const first = addDays(made.start, from);
      const row = { from: first, to: addDays(first, days), who: names[who % names.length] as string, what };
      return what === "hours" ? { ...row, hours } : row;
    }),
    sessions: [...wornBefore(made, planFrom, odd), ...begunBefore(made, planFrom, odd)],
    stores: odd.stores.map(
      ({ use, onHand, leadDays, orderBy }, at): Store => ({
        ...{ id: `s${at}`, name: use, use, unit: "pc", onHand, pack: 10, leadDays, route: "road" },
        ...(orderBy < 0 ? { orderBy: addDays(planFrom, orderBy) } : {}),
      }),
    ),
    deliveries: odd.stores.map(({ leadDays, onHand }, at) => ({
      store: `s${at}`,
      day: addDays(planFrom, leadDays - 3),
      quantity: onHand,
    })),
    limits: limitsOf(odd.limits),
  };
}

/** Near mould with something that is no longer in the campaign. */
const wornBefore = ({ people }: Campaign, planFrom: Day, { worn }: Oddity): Session[] =>
  worn.map(({ person, daysAgo }) => ({
    day: addDays(planFrom, -daysAgo),
    item: "gone",
    act: "clean",
    person: people[person % people.length]?.code ?? "",
    minutes: 60,
    exposed: true,
  }));

const begunBefore = ({ items, people }: Campaign, planFrom: Day, { begun }: Oddity): Session[] =>
  begun.flatMap(({ item, acts, daysAgo }) =>
    ACTS.slice(0, acts).flatMap((act): Session[] => {
      const id = items[item]?.id;
      const day = addDays(planFrom, -daysAgo);
      return id ? [{ day, item: id, act, person: people[0]?.code ?? "", minutes: 10, exposed: false }] : [];
    }),
  );

function limitsOf([perDay, perWeek, inRow, mask, rest]: Oddity["limits"]): Campaign["limits"] {
  const limit = (value: number): Limit => ({ value, source: "the house" });
  return {
    exposedMinutesADay: limit(perDay),
    exposedDaysAWeek: limit(perWeek),
    exposedDaysInARow: limit(inRow),
    maskMinutes: limit(mask),
    maskBreakMinutes: limit(rest),
  };
}
