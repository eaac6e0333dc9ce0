import type { Band, Route, Step } from "../care/care.ts";
import type { Act, Campaign, Item } from "../items/campaign.ts";
import { type Day, daysBetween } from "../units/day.ts";
import { expected } from "./work.ts";

/** How fast a team does one act on one format, against the norm. */
export interface Pace {
  readonly act: Act;
  readonly format: string;
  readonly exposed: boolean;
  /** Sessions measured. */
  readonly count: number;
  /** Median of minutes worked over the minutes the norm expects, the slowness of a campaign's first weeks taken off. */
  readonly measured: number;
  /** What the plan reckons with: drawn toward 1 while few were measured. */
  readonly factor: number;
}

/** Below about this many of a kind the norm still speaks. Common practice, no source. */
export const FEW_SESSIONS = 15;
/** No measured pace moves a norm further than this, either way: a typing slip must not. */
const MOST = 3;

/** A team that has worked so many days is past its slow start (`d-trial`). */
const PRACTISED = 10;
/** The last day of a team's slow start, from its own records; null: it is not over. */
export const practisedBy = ({ sessions }: Pick<Campaign, "sessions">): Day | null =>
  [...new Set(sessions.map(({ day }) => day))].sort()[PRACTISED - 1] ?? null;

/** How much longer work takes in a campaign's first, second and third week (`d-trial`). */
const FIRST_WEEKS = [2, 1.5, 1.2];
export const slownessOn = (start: Day, day: Day): number =>
  FIRST_WEEKS[Math.floor(daysBetween(start, day) / 7)] ?? 1;

/**
 * The team's own pace from the work it has written down: for each act and format the median of minutes over the norm, on a log scale,
 * shrunk toward the norm with a weight of 15 norms.
 * @param whole routes of the worked items as if nothing had been done yet
 */
export function pacesOf(campaign: Campaign, whole: readonly Route[]): Pace[] {
  const items = new Map(campaign.items.map((item) => [item.id, item]));
  const steps = new Map(
    whole.flatMap((route) => route.steps.map((step) => [`${route.item} ${step.act}`, step] as const)),
  );
  const logs = new Map<string, { step: Step; format: string; ratios: number[] }>();
  const practised = practisedBy(campaign);
  for (const { item, act, minutes, day } of campaign.sessions) {
    const step = steps.get(`${item} ${act}`);
    if (!step || minutes <= 0 || expected(step.minutes) <= 0) continue;
    const format = formatOf(items.get(item));
    const key = keyOf(act, format, step.exposed);
    const group = logs.get(key) ?? { step, format, ratios: [] };
    logs.set(key, group);
    const slowness = practised && day > practised ? 1 : slownessOn(campaign.start, day);
    group.ratios.push(Math.log(minutes / slowness / expected(step.minutes)));
  }
  return [...logs.values()].map(({ step, format, ratios }) => {
    const median = medianOf(ratios);
    const shrunk = (median * ratios.length) / (ratios.length + FEW_SESSIONS);
    return {
      act: step.act,
      format,
      exposed: step.exposed,
      count: ratios.length,
      measured: Math.exp(median),
      factor: Math.min(MOST, Math.max(1 / MOST, Math.exp(shrunk))),
    };
  });
}

/** The routes with minutes at the team's own pace, where it was measured. */
export function atOwnPace(campaign: Campaign, routes: readonly Route[], paces: readonly Pace[]): Route[] {
  if (paces.length === 0) return [...routes];
  const factors = new Map(paces.map((each) => [keyOf(each.act, each.format, each.exposed), each.factor]));
  const items = new Map(campaign.items.map((item) => [item.id, item]));
  return routes.map((route) => {
    const format = formatOf(items.get(route.item));
    return {
      ...route,
      steps: route.steps.map((step) => {
        const factor = factors.get(keyOf(step.act, format, step.exposed));
        return factor === undefined ? step : { ...step, minutes: scaled(step.minutes, factor) };
      }),
    };
  });
}

const keyOf = (act: Act, format: string, exposed: boolean): string => `${act}|${format}|${exposed}`;
const formatOf = (item: Item | undefined): string => String(item?.facts.format ?? "");
const scaled = ({ low, typical, high }: Band, factor: number): Band => ({
  low: low * factor,
  typical: typical * factor,
  high: high * factor,
});

function medianOf(values: readonly number[]): number {
  const sorted = [...values].sort((a, b) => a - b);
  const middle = sorted.length >> 1;
  const upper = sorted[middle] ?? 0;
  return sorted.length % 2 === 1 ? upper : ((sorted[middle - 1] ?? 0) + upper) / 2;
}
