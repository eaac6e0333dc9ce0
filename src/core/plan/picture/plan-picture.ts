import type { Route } from "../../care/care.ts";
import type { Campaign, Person } from "../../items/campaign.ts";
import { addDays, type Day, daysBetween } from "../../units/day.ts";
import { absenceOf, mayBeNearMould, openMinutes } from "../checker/presence.ts";
import type { Plan } from "../plan.ts";
import { type DrawnStore, storesToDraw } from "./drawn-stores.ts";

/** A stretch of days, both ends in it, as indices of the picture. */
export interface Stretch {
  readonly from: number;
  readonly to: number;
}

export interface DrawnPerson {
  readonly name: string;
  /** Exposed minutes allowed a day; null: clean work throughout. */
  readonly limit: number | null;
  /** Exposed minutes of each day. */
  readonly minutes: readonly number[];
  /** Days off longer than a weekend. */
  readonly away: readonly Stretch[];
  /** Stretches of clean work, whatever the cause. */
  readonly clean: readonly Stretch[];
}

/** The plan as a picture shows it: days from the plan's morning, one number a day. */
export interface PlanPicture {
  readonly campaign: string;
  readonly place: string;
  readonly days: readonly Day[];
  readonly people: readonly DrawnPerson[];
  /** Litres of bags in the Ward, and what it holds. */
  readonly ward: readonly number[];
  readonly wardLitres: number;
  /** Minutes at the camera, and minutes it is open. */
  readonly camera: readonly number[];
  readonly cameraOpen: readonly number[];
  readonly stores: readonly DrawnStore[];
  /** Last day of the campaign, and the days by which one in ten, half, nine in ten simulated campaigns are done; null: later than the end. */
  readonly end: number;
  readonly finish: { readonly p10: number | null; readonly p50: number | null; readonly p90: number | null };
  readonly draws: number;
}

/** What the picture is drawn from. */
export interface PictureInput {
  readonly campaign: Campaign;
  readonly routes: readonly Route[];
  readonly plan: Plan;
  /** Use of each consumable on each day of the plan. */
  readonly use: ReadonlyMap<string, Float64Array>;
}

export function planPicture(input: PictureInput): PlanPicture {
  const { campaign, plan } = input;
  const { p10, p50, p90 } = plan.finish;
  const at = (day: Day | null): number | null => (day === null ? null : daysBetween(plan.planFrom, day));
  const end = Math.max(0, daysBetween(plan.planFrom, plan.end));
  const length = Math.max(end, at(p90) ?? 0) + 1;
  const days = Array.from({ length }, (_, d) => addDays(plan.planFrom, d));
  return {
    campaign: plan.campaign,
    place: plan.place,
    days,
    people: campaign.people.map((person) => drawnPerson(campaign, plan, person, days)),
    ward: wardOf(input, days),
    wardLitres: campaign.wardLitres,
    ...cameraOf(campaign, plan, days),
    stores: storesToDraw(input, days),
    end,
    finish: { p10: at(p10), p50: at(p50), p90: at(p90) },
    draws: plan.finish.draws,
  };
}

function drawnPerson(campaign: Campaign, plan: Plan, person: Person, days: readonly Day[]): DrawnPerson {
  const minutes = new Map(
    plan.personDays
      .filter((each) => each.person === person.code)
      .map((each) => [each.day, each.exposedMinutes]),
  );
  const isOff = days.map((day) => {
    const why = absenceOf(campaign, person, day);
    return why !== null && why !== "free weekday";
  });
  const limit = plan.people.find(({ code }) => code === person.code)?.mouldLimit?.minutesADay ?? null;
  return {
    name: person.name,
    limit,
    minutes: days.map((day) => minutes.get(day) ?? 0),
    away: stretches(isOff),
    clean: stretches(days.map((day) => !mayBeNearMould(campaign, person, day))),
  };
}

function stretches(on: readonly boolean[]): Stretch[] {
  const found: { from: number; to: number }[] = [];
  on.forEach((is, d) => {
    const last = found.at(-1);
    if (is && last?.to === d - 1) last.to = d;
    else if (is) found.push({ from: d, to: d });
  });
  return found;
}

/** Bags lie in it from the day they are closed to the day they are released; what lies there already, from the first morning. */
function wardOf({ routes, plan }: PictureInput, days: readonly Day[]): number[] {
  const fill = new Array<number>(days.length).fill(0);
  const when = new Map(plan.itemDays.map((each) => [each.item, each.days]));
  for (const { item, steps, wardLitres, wardDays } of routes) {
    const acts = new Set(steps.map(({ act }) => act));
    const { admit, release } = when.get(item) ?? {};
    if (!wardDays || (acts.has("admit") && !admit) || !acts.has("release")) continue;
    const from = admit ? daysBetween(plan.planFrom, admit) : 0;
    const to = release ? daysBetween(plan.planFrom, release) : days.length - 1;
    for (let d = Math.max(0, from); d <= to; d++) fill[d] = (fill[d] ?? 0) + wardLitres;
  }
  return fill.slice(0, days.length);
}

function cameraOf(campaign: Campaign, plan: Plan, days: readonly Day[]) {
  const cameras = campaign.stations.filter(({ kind }) => kind === "camera");
  const closed = (day: Day): boolean =>
    campaign.calendar.some(
      ({ who, what, from, to }) => who === "everyone" && what === "closed" && from <= day && day <= to,
    );
  const used = new Map<Day, number>();
  for (const { act, day, minutes } of plan.assignments)
    if (act === "image") used.set(day, (used.get(day) ?? 0) + minutes);
  return {
    camera: days.map((day) => used.get(day) ?? 0),
    cameraOpen: days.map((day) =>
      closed(day)
        ? 0
        : cameras.reduce((sum, station) => sum + station.places * openMinutes(campaign, station, day), 0),
    ),
  };
}
