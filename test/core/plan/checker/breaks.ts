import type { Act, CalendarEntry, Campaign, Item } from "../../../../src/core/items/campaign.ts";
import { gapOver, itemBoundOf } from "../../../../src/core/plan/checker/certificate.ts";
import type { Fault } from "../../../../src/core/plan/checker/fault.ts";
import type { PlanOnPaper } from "../../../../src/core/plan/checker/plan-on-paper.ts";
import { presentMinutes } from "../../../../src/core/plan/checker/presence.ts";
import type { Assignment, Left, Plan } from "../../../../src/core/plan/plan.ts";
import { addDays, type Day, daysBetween, mondayOf, weekdayOf } from "../../../../src/core/units/day.ts";
import { retold } from "./good-plan.ts";

/* Ways to break one limit of a good plan, and no other. */

interface Broken {
  readonly campaign: Campaign;
  readonly plan: PlanOnPaper["plan"];
  /** What every fault must name. */
  readonly about: Partial<Fault>;
}
type Fits = (each: Assignment) => boolean;

/** A good plan with a seeded hand that picks pieces of it. */
export class GoodPlan {
  constructor(
    readonly campaign: Campaign,
    readonly plan: Plan,
    private readonly draw: () => number,
  ) {}

  one<T>(rows: readonly T[], what: string): T {
    const row = rows[Math.floor(this.draw() * rows.length)];
    if (row === undefined) throw new Error(`The good plan has no ${what} to break.`);
    return row;
  }

  piece(what: string, fits: Fits): Assignment {
    return this.one(this.plan.assignments.filter(fits), what);
  }

  /** An act done at one sitting. */
  whole(act: Act, fits: Fits = () => true): Assignment {
    return this.piece(
      `${act} at one sitting`,
      (each) => each.act === act && this.acts(each.item, act).length === 1 && fits(each),
    );
  }

  acts(item: string, act: Act): Assignment[] {
    return this.plan.assignments.filter((each) => each.item === item && each.act === act);
  }

  /** All lines of the sheet a piece is on. */
  sheet({ person, day }: Pick<Assignment, "person" | "day">): Assignment[] {
    return this.plan.assignments.filter((each) => each.person === person && each.day === day);
  }

  /** Minutes of the sheet. */
  minutes(of: Pick<Assignment, "person" | "day">): number {
    return this.sheet(of).reduce((sum, each) => sum + each.minutes, 0);
  }

  /** Days of the week of a day on which a person is near mould. */
  mouldDays(person: string, day: Day): Day[] {
    const near = this.plan.assignments.filter((each) => each.exposed && each.person === person);
    return [...new Set(near.map((each) => each.day))].filter((each) => mondayOf(each) === mondayOf(day));
  }

  nearOn(day: Day): boolean {
    return this.plan.assignments.some((each) => each.day === day && each.exposed);
  }

  /** The plan with one piece changed and every sum told anew. */
  with(piece: Assignment, change: Partial<Assignment>, campaign = this.campaign): PlanOnPaper["plan"] {
    return retold(campaign, changed(this.plan, piece, change));
  }

  /** The plan with one piece changed and its item left for want of time after it; its sums are not told anew. */
  cutAfter(piece: Assignment, change: Partial<Assignment>): Plan {
    const { item } = piece;
    const isAfter: Fits = (each) => each.item === item && (each.act === "image" || each.act === "box");
    const kept = this.plan.assignments.filter((each) => !isAfter(each));
    const given = this.campaign.items.find(({ id }) => id === item);
    const line: Left = {
      item,
      title: given?.title ?? "",
      must: given?.priority === "must",
      kind: "no time",
      why: "On the last day it waits for the camera.",
      reasons: [],
      askWho: [],
    };
    return changed({ ...this.plan, assignments: kept, left: [...this.plan.left, line] }, piece, change);
  }

  /** The plan without the pieces that fit, every sum told anew. */
  without(fits: Fits): PlanOnPaper["plan"] {
    const assignments = this.plan.assignments.filter((each) => !fits(each));
    return retold(this.campaign, { ...this.plan, assignments });
  }
}

const changed = (plan: Plan, piece: Assignment, change: Partial<Assignment>): Plan => ({
  ...plan,
  assignments: plan.assignments.map((each) => (each === piece ? { ...each, ...change } : each)),
});
/** Whether a week has room for one more mould day after its Friday. */
const mayMove = (days: readonly Day[], friday: Day): boolean => days.length < 3 && !days.includes(friday);
const saturdayAfter = (day: Day): Day => addDays(day, 5 - weekdayOf(day) + (weekdayOf(day) > 4 ? 7 : 0));
const withRow = (campaign: Campaign, row: CalendarEntry): Campaign => ({
  ...campaign,
  calendar: [...campaign.calendar, row],
});
const withItem = (campaign: Campaign, id: string, change: Partial<Item>): Campaign => ({
  ...campaign,
  items: campaign.items.map((item) => (item.id === id ? { ...item, ...change } : item)),
});
const withStation = (campaign: Campaign, id: string, minutesADay: number): Campaign => ({
  ...campaign,
  stations: campaign.stations.map((station) => (station.id === id ? { ...station, minutesADay } : station)),
});
const withLimit = (campaign: Campaign, name: keyof Campaign["limits"], value: number): Campaign => ({
  ...campaign,
  limits: { ...campaign.limits, [name]: { ...campaign.limits[name], value } },
});
const worked = (
  campaign: Campaign,
  day: Day,
  item: string,
  act: Act,
  person: string,
  exposed: boolean,
): Campaign => ({
  ...campaign,
  sessions: [...campaign.sessions, { day, item, act, person, minutes: 30, exposed }],
});

/** Two people of the same skills and hours change sheets on some days. */
const changedPlaces = (plan: Plan, a: string, b: string, days: readonly string[]): Plan => ({
  ...plan,
  assignments: plan.assignments.map((each) => {
    if (!days.includes(each.day)) return each;
    const person = each.person === a ? b : each.person === b ? a : each.person;
    return { ...each, person };
  }),
});

type Break = readonly [claim: string, code: Fault["code"], broken: (good: GoodPlan) => Broken];

const PEOPLE: readonly Break[] = [
  [
    "work is given to somebody who is not in the team",
    "person-unknown",
    (good) => ({
      campaign: good.campaign,
      plan: good.with(good.whole("image"), { person: "ZZ" }),
      about: { person: "ZZ" },
    }),
  ],
  [
    "work on a person's free weekday",
    "not-present",
    (good) => {
      const one = good.whole("box");
      const day = saturdayAfter(one.day);
      return { campaign: good.campaign, plan: good.with(one, { day }), about: { person: one.person, day } };
    },
  ],
  [
    "work while a person is away",
    "not-present",
    (good) => {
      const { person, day } = good.piece("clean day", ({ day }) => !good.nearOn(day));
      const campaign = withRow(good.campaign, { from: day, to: day, who: person, what: "away" });
      return { campaign, plan: retold(campaign, good.plan), about: { person, day } };
    },
  ],
  [
    "work before a person's first day",
    "not-present",
    (good) => {
      const { person, day } = good.piece(
        "first clean day",
        ({ day, person }) => person === "P3" && day < "2026-06-05",
      );
      const people = good.campaign.people.map((each) =>
        each.code === person ? { ...each, from: addDays(day, 1) } : each,
      );
      const early = { ...good.campaign, people };
      return { campaign: early, plan: retold(early, good.plan), about: { person } };
    },
  ],
  [
    "more work than the day has hours",
    "over-hours",
    (good) => {
      const full: Fits = (each) =>
        each.act === "clean" && !each.exposed && Math.abs(good.minutes(each) - 390) < 1;
      const one = good.piece("full day of cleaning", (each) => full(each));
      const plan = good.with(one, { minutes: one.minutes + 20 });
      return { campaign: good.campaign, plan, about: { person: one.person, day: one.day } };
    },
  ],
  [
    "an act is given to somebody without the skill",
    "skill-missing",
    (good) => {
      const one = good.whole(
        "box",
        ({ day }) => good.minutes({ person: "P1", day }) < 300 && day < "2026-07-01",
      );
      return {
        campaign: good.campaign,
        plan: good.with(one, { person: "P1" }),
        about: { item: one.item, person: "P1" },
      };
    },
  ],
  [
    "two lines of a sheet have one number",
    "sheet-order",
    (good) => {
      const one = good.piece("second line", ({ order, act }) => order === 2 && act !== "box");
      const first = good.plan.assignments.find(
        ({ person, day, order }) => person === one.person && day === one.day && order === 1,
      );
      const plan = changed(good.plan, one, { order: 1 });
      return { campaign: good.campaign, plan, about: { person: one.person, day: first?.day ?? one.day } };
    },
  ],
  [
    "an item is boxed on a sheet before it is pictured there",
    "boxed-first",
    (good) => {
      const imageOf = (box: Assignment): Assignment | undefined =>
        good.acts(box.item, "image").find(({ person, day }) => person === box.person && day === box.day);
      const box = good.whole("box", (each) => imageOf(each) !== undefined);
      const image = imageOf(box) as Assignment;
      const half = changed(good.plan, box, { order: image.order });
      const plan = changed(half, image, { order: box.order });
      return { campaign: good.campaign, plan, about: { person: box.person, day: box.day } };
    },
  ],
];

const MOULD: readonly Break[] = [
  [
    "growth is handled as clean work",
    "not-booked",
    (good) => {
      const one = good.whole("admit", ({ exposed }) => exposed);
      return {
        campaign: good.campaign,
        plan: good.with(one, { exposed: false }),
        about: { item: one.item, act: "admit" },
      };
    },
  ],
  [
    "somebody on clean work is near mould",
    "clean-work",
    (good) => {
      const { person, day } = good.piece("exposed work", ({ exposed }) => exposed);
      const row = { from: day, to: day, who: person, what: "clean work" } as const;
      return { campaign: withRow(good.campaign, row), plan: good.plan, about: { person, day } };
    },
  ],
  [
    "a day has more mould minutes than it may",
    "mould-minutes",
    (good) => {
      const near = (each: Assignment): number =>
        good.sheet(each).reduce((sum, { minutes, exposed }) => sum + (exposed ? minutes : 0), 63);
      const one = good.piece(
        "exposed day with time left",
        (each) => each.exposed && near(each) > 140 && good.minutes(each) - near(each) < 100,
      );
      const plan = good.with(one, { minutes: one.minutes + 195 - near(one) });
      return { campaign: good.campaign, plan, about: { person: one.person, day: one.day, got: 195 } };
    },
  ],
  [
    "a fourth mould day in a week",
    "mould-week",
    (good) => {
      const campaign = withLimit(good.campaign, "exposedDaysInARow", 9);
      const plan = retold(campaign, changedPlaces(good.plan, "P2", "P4", ["2026-06-10"]));
      return { campaign, plan, about: { person: "P4", day: "2026-06-11" as Day } };
    },
  ],
  [
    "a third mould day in a row",
    "mould-row",
    (good) => {
      const plan = changedPlaces(good.plan, "P2", "P4", ["2026-06-10", "2026-06-11"]);
      return {
        campaign: good.campaign,
        plan: retold(good.campaign, plan),
        about: { person: "P4", day: "2026-06-10" as Day },
      };
    },
  ],
  [
    "a third mould day in a row, two of them before the plan's first morning",
    "mould-row",
    (good) => {
      const { planFrom, items } = good.campaign;
      const { person } = good.piece(
        "mould work on the first morning",
        ({ exposed, day }) => exposed && day === planFrom,
      );
      const campaign = [1, 2].reduce(
        (before, days) =>
          worked(before, addDays(planFrom, -days), items[0]?.id ?? "", "survey", person, true),
        good.campaign,
      );
      return { campaign, plan: good.plan, about: { person, day: planFrom } };
    },
  ],
  [
    "somebody is near mould with nobody else in the building",
    "alone",
    (good) => {
      const one = good.piece("last mould work", (each) => {
        const friday = addDays(saturdayAfter(each.day), -1);
        const isLast = each === good.acts(each.item, "clean").at(-1);
        return each.exposed && isLast && mayMove(good.mouldDays(each.person, each.day), friday);
      });
      const day = saturdayAfter(one.day);
      const people = good.campaign.people.map((each) =>
        each.code === one.person ? { ...each, weekdays: [0, 1, 2, 3, 4, 5] } : each,
      );
      const campaign = { ...good.campaign, people };
      const plan = good.cutAfter(one, { day });
      return { campaign, plan: retold(campaign, plan), about: { person: one.person, day } };
    },
  ],
  [
    "no time off the mask for its breaks",
    "mask-breaks",
    (good) => {
      const campaign = withLimit(good.campaign, "maskBreakMinutes", 150);
      return { campaign, plan: good.plan, about: {} };
    },
  ],
  [
    "clean work comes after work near mould",
    "clean-after-mould",
    (good) => {
      const mixed = good.piece(
        "sheet with both",
        (each) => each.exposed && good.sheet(each).some(({ exposed }) => !exposed),
      );
      const sheet: Fits = ({ person, day }) => person === mixed.person && day === mixed.day;
      const lines = good.plan.assignments.filter(sheet);
      const last = Math.max(...lines.map(({ order }) => order));
      const clean = Math.min(...lines.filter(({ exposed }) => exposed).map(({ order }) => order)) - 1;
      const turn = (order: number): number => (order > clean ? order - clean : order + last - clean);
      const assignments = good.plan.assignments.map((each) =>
        sheet(each) ? { ...each, order: turn(each.order) } : each,
      );
      return {
        campaign: good.campaign,
        plan: { ...good.plan, assignments },
        about: { person: mixed.person, day: mixed.day },
      };
    },
  ],
];

const STATIONS: readonly Break[] = [
  [
    "work at a station that is not there",
    "station-unknown",
    (good) => {
      const one = good.whole("image");
      return {
        campaign: good.campaign,
        plan: good.with(one, { station: "attic" }),
        about: { item: one.item },
      };
    },
  ],
  [
    "clean work at the mould bench",
    "station-kind",
    (good) => {
      const one = good.whole("clean", ({ exposed }) => !exposed);
      return {
        campaign: good.campaign,
        plan: good.with(one, { station: "dirty" }),
        about: { item: one.item },
      };
    },
  ],
  [
    "imaging while the camera is away",
    "station-closed",
    (good) => {
      const { day } = good.piece("imaging", ({ act }) => act === "image");
      const row = { from: day, to: day, who: "camera", what: "away" } as const;
      return { campaign: withRow(good.campaign, row), plan: good.plan, about: { station: "camera", day } };
    },
  ],
  [
    "imaging on a day the hired camera is not there",
    "station-closed",
    (good) => {
      const { start, end } = good.campaign;
      const row = { from: addDays(start, 14), to: end, who: "camera", what: "open" } as const;
      return { campaign: withRow(good.campaign, row), plan: good.plan, about: { station: "camera" } };
    },
  ],
  [
    "a station is used longer than all its places are open",
    "station-minutes",
    (good) => ({
      campaign: withStation(good.campaign, "camera", 60),
      plan: good.plan,
      about: { station: "camera" },
    }),
  ],
  [
    "a person works at a station longer than it is open",
    "station-hours",
    (good) => ({
      campaign: withStation(good.campaign, "clean", 280),
      plan: good.plan,
      about: { station: "clean" },
    }),
  ],
  [
    "no wipe-down after red rot",
    "not-wiped",
    (good) => {
      const one = good.whole("covers");
      return {
        campaign: good.campaign,
        plan: good.with(one, { wipeAfter: false }),
        about: { item: one.item, act: "covers" },
      };
    },
  ],
  [
    "no wipe-down after growth",
    "not-wiped",
    (good) => {
      const one = good.whole("clean", ({ exposed }) => exposed);
      return {
        campaign: good.campaign,
        plan: good.with(one, { wipeAfter: false }),
        about: { item: one.item, act: "clean" },
      };
    },
  ],
];

const ITEMS: readonly Break[] = [
  [
    "work on an item that is not in the campaign",
    "item-unknown",
    (good) => {
      const one = good.whole("box", ({ day }) => good.minutes({ person: "P3", day }) < 300);
      const extra = { ...one, item: "Z-NONE", person: "P3", minutes: 1 };
      const plan = retold(good.campaign, { ...good.plan, assignments: [...good.plan.assignments, extra] });
      return { campaign: good.campaign, plan, about: { item: "Z-NONE" } };
    },
  ],
  [
    "work after the campaign's last day",
    "day-outside",
    (good) => {
      const one = good.whole("box");
      const day = addDays(good.campaign.end, 1);
      return { campaign: good.campaign, plan: good.with(one, { day }), about: { item: one.item, day } };
    },
  ],
  [
    "work on an item before it has arrived",
    "before-arrival",
    (good) => {
      const one = good.whole("clean", ({ exposed }) => !exposed);
      const campaign = withItem(good.campaign, one.item, { arrives: one.day });
      const rooms = good.plan.rooms.map((each) =>
        each.room === "Bench" ? { ...each, now: each.now - 1 } : each,
      );
      return {
        campaign,
        plan: { ...good.plan, rooms: one.day > campaign.planFrom ? rooms : good.plan.rooms },
        about: { item: one.item },
      };
    },
  ],
  [
    "a line without minutes",
    "no-minutes",
    (good) => {
      const one = good.whole("image");
      return {
        campaign: good.campaign,
        plan: good.with(one, { minutes: 0 }),
        about: { item: one.item, act: "image" },
      };
    },
  ],
  [
    "an act that was done before",
    "done-before",
    (good) => {
      const one = good.whole("image");
      const campaign = worked(
        good.campaign,
        addDays(good.campaign.planFrom, -3),
        one.item,
        "image",
        "P1",
        false,
      );
      return { campaign, plan: good.plan, about: { item: one.item, act: "image" } };
    },
  ],
  [
    "imaging on the day of cleaning",
    "act-order",
    (good) => {
      const cleaned = ({ item }: Assignment): Day | undefined => good.acts(item, "clean").at(-1)?.day;
      const fits: Fits = (each) => {
        const person = good.campaign.people.find(({ code }) => code === each.person);
        const day = cleaned(each);
        return (
          day !== undefined && person !== undefined && presentMinutes(good.campaign, person, day, 30) > 0
        );
      };
      const one = good.whole("image", fits);
      return {
        campaign: good.campaign,
        plan: good.with(one, { day: cleaned(one) as Day, minutes: 0.1 }),
        about: { item: one.item, act: "image" },
      };
    },
  ],
  [
    "growth is cleaned without a release from the Ward",
    "forbidden",
    (good) => {
      const { item } = good.whole("release");
      const plan = good.without((each) => each.item === item && each.act === "release");
      return { campaign: good.campaign, plan, about: { item } };
    },
  ],
  [
    "leaves of a red-rotted book are cleaned before it is wrapped",
    "forbidden",
    (good) => {
      const { item } = good.whole("wrap");
      const plan = good.without((each) => each.item === item && each.act === "wrap");
      return { campaign: good.campaign, plan, about: { item, source: "B07" } };
    },
  ],
  [
    "a red-rotted book is wrapped before its covers are pictured",
    "forbidden",
    (good) => {
      const { item } = good.whole("covers");
      const plan = good.without((each) => each.item === item && each.act === "covers");
      return { campaign: good.campaign, plan, about: { item, act: "wrap", source: "B06" } };
    },
  ],
  [
    "work on an item with a must-ask test unanswered",
    "tests-missing",
    (good) => {
      const { item } = good.whole("image");
      const findings = good.campaign.findings.filter((each) => each.item !== item || each.test !== "guano");
      return { campaign: { ...good.campaign, findings }, plan: good.plan, about: { item, got: "guano" } };
    },
  ],
  [
    "an item is boxed without having been at the camera",
    "not-pictured",
    (good) => {
      const { item } = good.whole("box", (each) => good.acts(each.item, "covers").length === 0);
      const plan = good.without((each) => each.item === item && each.act === "image");
      return { campaign: good.campaign, plan, about: { item } };
    },
  ],
  [
    "the Ward is fuller than it may be",
    "ward-litres",
    (good) => ({ campaign: { ...good.campaign, wardLitres: 12 }, plan: good.plan, about: { limit: 12 } }),
  ],
  [
    "an item leaves the Ward before a thick volume could be dry",
    "ward-wait",
    (good) => {
      const days = ({ item, day }: Assignment): number =>
        daysBetween(good.acts(item, "admit").at(-1)?.day ?? day, day);
      const { item } = good.whole("release", (each) => days(each) < 8);
      const others = good.campaign.findings.filter(
        (each) => each.item !== item || each.test !== "live_insects",
      );
      const insects = { item, part: "", test: "live_insects", answer: "yes" };
      return {
        campaign: { ...good.campaign, findings: [...others, insects] },
        plan: good.plan,
        about: { item },
      };
    },
  ],
];

const leftLine = (plan: Plan, item: string, change: Partial<Left>): Plan => ({
  ...plan,
  left: plan.left.map((each) => (each.item === item ? { ...each, ...change } : each)),
});

const SUMS: readonly Break[] = [
  [
    "masks are used up before an order could be here",
    "store-short",
    (good) => {
      const stores = good.campaign.stores.map((each) =>
        each.use === "k-mask" ? { ...each, onHand: 3 } : each,
      );
      const campaign = { ...good.campaign, stores, deliveries: [] };
      return { campaign, plan: retold(campaign, good.plan), about: { store: "masks" } };
    },
  ],
  [
    "a store's line says less than the work uses",
    "store-line",
    (good) => {
      const stores = good.plan.stores.map((each) =>
        each.store === "masks" ? { ...each, used: each.used - 2 } : each,
      );
      return { campaign: good.campaign, plan: { ...good.plan, stores }, about: { store: "masks" } };
    },
  ],
  [
    "what runs out is not on the order list",
    "order-missing",
    (good) => ({ campaign: good.campaign, plan: { ...good.plan, orders: [] }, about: { store: "labels" } }),
  ],
  [
    "an order is too small",
    "order-missing",
    (good) => {
      const orders = good.plan.orders.map((each) => ({ ...each, packs: 1, quantity: 50 }));
      return { campaign: good.campaign, plan: { ...good.plan, orders }, about: { store: "labels", got: 50 } };
    },
  ],
  [
    "an order is to be sent too late to be here",
    "order-wrong",
    (good) => {
      const orders = good.plan.orders.map((each) => ({ ...each, orderBy: each.neededBy }));
      return {
        campaign: good.campaign,
        plan: { ...good.plan, orders },
        about: { store: "labels", figure: "orderBy" },
      };
    },
  ],
  [
    "an item's day differs from its work",
    "item-days",
    (good) => {
      const { item, day } = good.whole("clean", ({ exposed }) => !exposed);
      const itemDays = good.plan.itemDays.map((each) =>
        each.item === item ? { item, days: { ...each.days, clean: addDays(day, 1) } } : each,
      );
      return { campaign: good.campaign, plan: { ...good.plan, itemDays }, about: { item, act: "clean" } };
    },
  ],
  [
    "a day's mould minutes differ from its work",
    "person-day",
    (good) => {
      const line = good.one(
        good.plan.personDays.filter(({ exposedMinutes }) => exposedMinutes > 0),
        "mould day",
      );
      const personDays = good.plan.personDays.map((each) =>
        each === line ? { ...each, exposedMinutes: 60 } : each,
      );
      return {
        campaign: good.campaign,
        plan: { ...good.plan, personDays },
        about: { person: line.person, figure: "exposedMinutes" },
      };
    },
  ],
  [
    "the count of items is wrong",
    "figure",
    (good) => ({
      campaign: good.campaign,
      plan: { ...good.plan, itemCount: good.plan.itemCount - 1 },
      about: { figure: "itemCount" },
    }),
  ],
  [
    "somebody on clean work is shown with a mould account",
    "figure",
    (good) => {
      const mouldLimit = { minutesADay: 180, daysAWeek: 3 };
      const people = good.plan.people.map((each) => (each.code === "P3" ? { ...each, mouldLimit } : each));
      return {
        campaign: good.campaign,
        plan: { ...good.plan, people },
        about: { person: "P3", figure: "mouldLimit" },
      };
    },
  ],
  [
    "the finish is promised though not everything is boxed",
    "finish",
    (good) => {
      const { draws } = good.plan.finish;
      const finish = { ...good.plan.finish, p10: good.campaign.end, unfinished: Math.round(0.8 * draws) };
      return {
        campaign: good.campaign,
        plan: { ...good.plan, finish },
        about: { figure: "boxed beside p10" },
      };
    },
  ],
  [
    "an item is said to be boxed in more campaigns than its days allow",
    "chance",
    (good) => {
      const line = good.one(
        good.plan.risk.items.filter(({ box }) => box.p90 === null),
        "item that luck may leave",
      );
      const items = good.plan.risk.items.map((each) => (each === line ? { ...each, boxed: 0.95 } : each));
      const risk = { ...good.plan.risk, items };
      return { campaign: good.campaign, plan: { ...good.plan, risk }, about: { item: line.item } };
    },
  ],
  [
    "an item has no line of chances",
    "chance",
    (good) => {
      const line = good.one(
        good.plan.risk.items.filter(({ item }) => !good.plan.risk.watch.includes(item)),
        "item",
      );
      const risk = { ...good.plan.risk, items: good.plan.risk.items.filter((each) => each !== line) };
      return {
        campaign: good.campaign,
        plan: { ...good.plan, risk },
        about: { item: line.item, figure: "lines" },
      };
    },
  ],
  [
    "an item vanishes from the list of those left",
    "left-missing",
    (good) => {
      const { item } = good.one(good.plan.left, "item left");
      const left = good.plan.left.filter((each) => each.item !== item);
      return { campaign: good.campaign, plan: { ...good.plan, left }, about: { item } };
    },
  ],
  [
    "an item is left twice",
    "left-twice",
    (good) => {
      const line = good.one(good.plan.left, "item left");
      return {
        campaign: good.campaign,
        plan: { ...good.plan, left: [...good.plan.left, line] },
        about: { item: line.item },
      };
    },
  ],
  [
    "an item is boxed and left",
    "left-wrong",
    (good) => {
      const { item } = good.whole("box");
      const given = good.campaign.items.find(({ id }) => id === item);
      const [line] = good.plan.left.filter(({ kind }) => kind === "no time");
      const extra = { ...(line as Left), item, title: given?.title ?? "", must: given?.priority === "must" };
      return {
        campaign: good.campaign,
        plan: { ...good.plan, left: [...good.plan.left, extra] },
        about: { item, figure: "boxed" },
      };
    },
  ],
  [
    "an item set aside by a rule is said to wait for time",
    "left-wrong",
    (good) => ({
      campaign: good.campaign,
      plan: leftLine(good.plan, "Y-ASIDE", { kind: "no time" }),
      about: { item: "Y-ASIDE", figure: "kind" },
    }),
  ],
  [
    "an item is left without a reason",
    "left-no-reason",
    (good) => ({
      campaign: good.campaign,
      plan: leftLine(good.plan, "Y-ASIDE", { reasons: [] }),
      about: { item: "Y-ASIDE" },
    }),
  ],
  [
    "the plan is said to cost less than it does",
    "plan-value",
    (good) => {
      const { proof } = good.plan;
      const itemObjective = proof.itemObjective * 1.05;
      const itemGap = gapOver(itemObjective, itemBoundOf(proof));
      return {
        campaign: good.campaign,
        plan: { ...good.plan, proof: { ...proof, itemObjective, itemGap } },
        about: {},
      };
    },
  ],
  [
    "the plan is said to be nearer its bound than it is",
    "gap",
    (good) => ({
      campaign: good.campaign,
      plan: { ...good.plan, proof: { ...good.plan.proof, itemGap: 0 } },
      about: { figure: "itemGap" },
    }),
  ],
  [
    "a bound lies above the plan",
    "bound",
    (good) => {
      const { proof } = good.plan;
      const bound = proof.objective * 1.1;
      return {
        campaign: good.campaign,
        plan: { ...good.plan, proof: { ...proof, bound, gap: 0 } },
        about: {},
      };
    },
  ],
];

export const BREAKS: readonly Break[] = [...PEOPLE, ...MOULD, ...STATIONS, ...ITEMS, ...SUMS];
