import type { Campaign, Finding, Item } from "../items/campaign.ts";
import type { GrowthClassName } from "../physics/mould/mould-growth.ts";
import { daysBetween } from "../units/day.ts";
import { type FirstGrowth, firstGrowth } from "./mould-ahead/first-growth.ts";
import { growthClassOf } from "./mould-ahead/ready-to-mould.ts";
import { RECENT_DAYS, type StoreAir, storeAirOf } from "./mould-ahead/store-air.ts";
import { WaitingPlaces, weatherOf } from "./mould-ahead/waiting-place.ts";

/* When mould could begin on what waits in a store, from the store's reader. Nothing here is an all-clear: below about 75 % neither model
 * says when, and moulds of sized paper, leather and dirt grow from 65 %. */

/** When mould could begin on an item that waits in a store, or that no reader can tell. */
export type MouldOutlook =
  | {
      readonly known: true;
      readonly item: string;
      readonly reader: string;
      readonly growthClass: GrowthClassName;
      /** Days from the plan's morning, whole; 0: may have begun already; null: not within the campaign. */
      readonly days: MouldDays;
      readonly air: Pick<StoreAir, "recent" | "isSeasonal">;
      /** Relative humidity either way that the ends of the band allow for, a fraction. */
      readonly error: number;
      /** Begins in the campaign even by the driest reading and the slower model, and no later than the climate is known for. */
      readonly isSure: boolean;
      /** Days of the campaign from the plan's morning. */
      readonly horizon: number;
    }
  | {
      readonly known: false;
      readonly item: string;
      readonly reader: string | null;
      readonly because: "no-reader" | "no-readings-of-late";
    };

export interface MouldDays {
  /** Damper by the reader's error, the sooner model: what people are told and plans are made for. */
  readonly low: number | null;
  /** As read, the sooner model. */
  readonly typical: number | null;
  /** Drier by the reader's error, the slower model. */
  readonly high: number | null;
}

/** What a reader may be off by; and a store in another season, moved by the weather of its months. Common practice, no source. */
const READER_ERROR = 0.03;
const SEASON_ERROR = 0.05;
const HOURS_A_DAY = 24;

/** The outlook of every item that waits where it was found or in the open Ward; those in bags follow their bag and are left out. */
export function mouldOutlooks(campaign: Campaign): Map<string, MouldOutlook> {
  const found = new Map<string, MouldOutlook>();
  const { climate, planFrom } = campaign;
  if (climate.length === 0) return found;
  const horizon = Math.max(0, daysBetween(planFrom, campaign.end) + 1);
  const places = new WaitingPlaces(campaign);
  const weather = weatherOf(climate);
  const airs = new Map(places.readers.map((each) => [each, storeAirOf(each, weather, planFrom, horizon)]));
  const bands = new Map<string, MouldDays>();
  const findings = growthFindings(campaign);
  for (const item of campaign.items) {
    const place = places.of(item);
    if (place.kind === "no reader")
      found.set(item.id, { known: false, item: item.id, reader: null, because: "no-reader" });
    if (place.kind !== "reader") continue;
    const reader = place.series.name;
    const air = airs.get(place.series);
    if (!air) {
      found.set(item.id, { known: false, item: item.id, reader, because: "no-readings-of-late" });
      continue;
    }
    const growthClass = growthClassOf(item, findings.get(item.id) ?? []);
    const from = arrivalHour(item, campaign, air);
    const error = air.isSeasonal ? SEASON_ERROR : READER_ERROR;
    const key = `${reader}|${growthClass}|${from}`;
    const days = bands.get(key) ?? bandOf(air, growthClass, from, error);
    bands.set(key, days);
    const knownFor = air.isSeasonal ? horizon : RECENT_DAYS;
    const isSure = days.high !== null && days.high <= knownFor;
    const { recent, isSeasonal } = air;
    found.set(item.id, {
      known: true,
      item: item.id,
      reader,
      growthClass,
      days,
      air: { recent, isSeasonal },
      error,
      isSure,
      horizon,
    });
  }
  return found;
}

/** What is here already has lain there since the reader's first reading, as far as anyone knows. */
const arrivalHour = ({ arrives }: Item, { planFrom }: Campaign, { start }: StoreAir): number =>
  arrives ? Math.max(start, daysBetween(planFrom, arrives) * HOURS_A_DAY) : start;

function bandOf(air: StoreAir, growthClass: GrowthClassName, from: number, error: number): MouldDays {
  const sooner = ({ byIndex, byDose }: FirstGrowth): number => Math.min(byIndex, byDose);
  const later = ({ byIndex, byDose }: FirstGrowth): number => Math.max(byIndex, byDose);
  const run = (more: number): FirstGrowth => firstGrowth(air, growthClass, from, more);
  const low = daysOf(sooner(run(error)));
  const typical = low === null ? null : daysOf(sooner(run(0))); // drier is never sooner
  const high = typical === null ? null : daysOf(later(run(-error)));
  return { low, typical, high };
}

const daysOf = (hours: number): number | null =>
  Number.isFinite(hours) ? Math.max(0, Math.floor(hours / HOURS_A_DAY)) : null;

function growthFindings(campaign: Campaign): Map<string, Finding[]> {
  const findings = new Map<string, Finding[]>();
  for (const each of campaign.findings)
    if (each.test === "growth_visible") findings.set(each.item, [...(findings.get(each.item) ?? []), each]);
  return findings;
}

/**
 * How much more a day of waiting counts for an item: 1 to 2, by quarters, 2 where mould has begun by every reading. It is 1 and the share of the
 * campaign that lies after the start of growth, mean of the band's three days: an item with growth counts twice while it waits, as every
 * item that gets worse. Common practice, no source.
 */
export function mouldFactor(outlook: MouldOutlook | undefined): number {
  if (!outlook?.known || outlook.horizon === 0) return 1;
  const { days, horizon } = outlook;
  const after = (day: number | null): number => horizon - Math.min(horizon, day ?? horizon);
  return 1 + Math.round((4 * (after(days.low) + after(days.typical) + after(days.high))) / (3 * horizon)) / 4;
}

/**
 * The sooner of the custodian's due day and the day mould could begin, as a day of the plan. A due day costs steeply from the day after it,
 * so a predicted day is one only when growth is sure: then its early end, as strict as the custodian's word. What is unsure weighs
 * (`mouldFactor`) and binds nobody: a store of a thousand damp items would otherwise make a thousand due days and bury the promised ones.
 */
export function soonerDue(due: number | null, outlook: MouldOutlook | undefined): number | null {
  const mould = outlook?.known && outlook.isSure ? outlook.days.low : null;
  if (mould === null || due === null) return due ?? mould;
  return Math.min(due, mould);
}
