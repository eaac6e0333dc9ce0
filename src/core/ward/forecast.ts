import type { Band, Route } from "../care/care.ts";
import type { Campaign, ClimateSeries, WardNote } from "../items/campaign.ts";
import { addDays, type Day, dayNumber, daysBetween } from "../units/day.ts";
import { type ItemInWard, itemInWard, type WardRoom } from "./item-in-ward.ts";

/** How long an item still waits in the Ward, and where that figure comes from. */
export interface WardForecast {
  readonly item: string;
  /** Days from the plan's morning until release may be tried. */
  readonly days: Band;
  readonly from: "earned" | "readings" | "readings, for planning only" | "norm less the days behind";
  readonly bag: ItemInWard | null;
}

/** Waits that end by drying; the others are watches or freezing, which no reading shortens. */
const DRYING = /^(drying|drying from wet|two readings a day apart)$/;
/** The second reading, a day after the first that passed. */
const SECOND_LOOK = 1;

/**
 * The waits of a campaign's items brought up to what was measured: P10, P50 and P90 by the drying model and the bag's own readings where
 * there are any; else the norm, less the days an item already lay in the Ward. Items not yet admitted keep the norm.
 */
export function forecastsOf(campaign: Campaign, routes: readonly Route[]): Map<string, WardForecast> {
  const room = wardRoomOf(campaign);
  const now = dayNumber(campaign.planFrom) * 24;
  const notes = grouped(campaign.ward);
  const items = new Map(campaign.items.map((item) => [item.id, item]));
  const admitted = new Map(
    campaign.sessions
      .filter((each) => each.act === "admit" && each.day < campaign.planFrom)
      .map((each) => [each.item, each.day]),
  );
  const found = new Map<string, WardForecast>();
  for (const route of routes) {
    const item = items.get(route.item);
    const own = (notes.get(route.item) ?? []).filter((each) => each.day < campaign.planFrom);
    const since = own.find((each) => each.what === "closed")?.day ?? admitted.get(route.item);
    if (!item || !route.wardDays || since === undefined) continue;
    const bag = own.length > 0 ? itemInWard(item, own, room, now) : null;
    found.set(route.item, forecastOf(route, since, campaign.planFrom, bag, now));
  }
  return found;
}

/** The wait of one item that came into the Ward on a day.   @param now hours since 1970, not before `today` */
export function forecastOf(
  route: Route,
  since: Day,
  today: Day,
  bag: ItemInWard | null,
  now: number,
): WardForecast {
  const behind = daysBetween(since, today);
  const norm = lessDays(route.wardDays as Band, behind);
  const byNorm: WardForecast = { item: route.item, days: norm, from: "norm less the days behind", bag };
  if (!bag) return byNorm;
  const dries = DRYING.test(route.wardWhy);
  if (bag.state.release.earned)
    return { ...byNorm, days: dries ? { low: 0, typical: 0, high: 0 } : norm, from: "earned" };
  const { ready } = bag;
  const hours = ready.ok ? ready.hours : ready.planning;
  if (!hours || !Number.isFinite(hours.p90)) return byNorm;
  const day = (hour: number): number => Math.max(0, (hour - now) / 24) + SECOND_LOOK;
  const days = triangleOf(day(hours.p10), day(hours.p50), day(hours.p90));
  return {
    ...byNorm,
    days: dries ? days : laterOf(days, norm),
    from: ready.ok ? "readings" : "readings, for planning only",
  };
}

/** Ends of a triangle over the middle that has one in ten below p10 and one in ten above p90: 1/(1 − √0.2) of the way to each. */
function triangleOf(p10: number, p50: number, p90: number): Band {
  const reach = 1 / (1 - Math.sqrt(0.2));
  return {
    low: Math.max(SECOND_LOOK, p50 - reach * (p50 - p10)),
    typical: p50,
    high: p50 + reach * (p90 - p50),
  };
}

const lessDays = ({ low, typical, high }: Band, behind: number): Band => ({
  low: Math.max(1, low - behind),
  typical: Math.max(1, typical - behind),
  high: Math.max(1, high - behind),
});

const laterOf = (a: Band, b: Band): Band => ({
  low: Math.max(a.low, b.low),
  typical: Math.max(a.typical, b.typical),
  high: Math.max(a.high, b.high),
});

/** The routes with their waits as forecast, and said so on the papers. */
export function withForecasts(
  routes: readonly Route[],
  forecasts: ReadonlyMap<string, WardForecast>,
  today: Day,
): Route[] {
  return routes.map((route) => {
    const forecast = forecasts.get(route.item);
    if (!forecast) return route;
    const { days, from } = forecast;
    const [first, last] = [days.low, days.high].map((each) => addDays(today, Math.ceil(each)));
    const words =
      from === "earned"
        ? "release earned by readings"
        : `${route.wardWhy}; by ${from} from ${first} to ${last}`;
    return { ...route, wardDays: days, wardWhy: words };
  });
}

/** Humidity and warmth of a climate where no reader stands in the Ward. Common practice, no source. */
const CLIMATES: Readonly<Record<string, WardRoom>> = {
  hot_humid: { relHum: 0.75, dryBulb: 28 },
  warm_wet_season: { relHum: 0.7, dryBulb: 26 },
  temperate: { relHum: 0.6, dryBulb: 20 },
  hot_dry: { relHum: 0.4, dryBulb: 30 },
};
const LAST_DAYS = 7;

/** The room of the Ward: the week before by its own reader, else the climate's usual air. */
export function wardRoomOf({
  climate,
  place,
  planFrom,
}: Pick<Campaign, "climate" | "place" | "planFrom">): WardRoom {
  const usual = CLIMATES[place.climate] ?? { relHum: 0.65, dryBulb: 24 };
  const reader = climate.find((each) => /ward|quarantine/i.test(each.name));
  return reader ? weekOf(reader, planFrom, usual) : usual;
}

function weekOf({ readings }: ClimateSeries, today: Day, usual: WardRoom): WardRoom {
  const from = addDays(today, -LAST_DAYS);
  const week = readings.filter((each) => each.at >= from && each.at < today);
  const mean = (values: readonly number[], otherwise: number): number =>
    values.length === 0 ? otherwise : values.reduce((sum, each) => sum + each, 0) / values.length;
  return {
    relHum: mean(
      week.flatMap((each) => each.relHum ?? []),
      usual.relHum,
    ),
    dryBulb: mean(
      week.flatMap((each) => each.dryBulb ?? []),
      usual.dryBulb,
    ),
  };
}

function grouped(notes: readonly WardNote[]): Map<string, WardNote[]> {
  const groups = new Map<string, WardNote[]>();
  for (const note of notes) {
    const group = groups.get(note.item);
    if (group) group.push(note);
    else groups.set(note.item, [note]);
  }
  return groups;
}
