import type { ClimateReading, ClimateSeries } from "../../../core/items/campaign.ts";
import { type Air, type AiringAdvice, airingAdvice } from "../../../core/physics/air/airing.ts";
import { humidityRatioFromRelHum } from "../../../core/physics/air/moist-air.ts";
import type { MouldWatch } from "../../../core/physics/mould/mould-watch.ts";
import { CAUTIONS } from "../../../core/say/cautions/mould.ts";
import { airGrade, sayAirVerdict } from "../../../core/say/damp/air.ts";
import { sayMouldOutlook } from "../../../core/say/mould-outlook.ts";
import { CLIMATE_TODO, LAMPS, sayLamp } from "../../../core/say/rooms/climate.ts";
import { mouldOutlooks } from "../../../core/ward/mould-outlook.ts";
import { watchStores } from "../../../core/ward/store-watch.ts";
import type { House, Now } from "../log/now.ts";
import { daysOfAir, pointsOfAir } from "./air-points.ts";

export interface ReaderCard {
  readonly name: string;
  readonly latest: ClimateReading | null;
  /** Hours since then. */
  readonly ageHours: number;
  /** How urgent it is by what went on; null: outdoor air, where nothing is kept. */
  readonly state: MouldWatch["state"] | null;
  readonly verdict: string;
}

const isOutdoor = (name: string): boolean => /weather|outdoor|outside/i.test(name);
const minuteNow = ({ today, minute }: Now): string =>
  `${today}T${String(Math.floor(minute / 60)).padStart(2, "0")}:${String(minute % 60).padStart(2, "0")}:59`;
const hoursOf = (at: string): number => Date.parse(`${at.slice(0, 19)}Z`) / 3_600_000;

/** Readings up to this minute: of a day looked at from before, what comes later has not been read. */
function readUntilNow(now: Now): readonly ClimateSeries[] {
  const until = minuteNow(now);
  return now.house.climate.map((series) =>
    (series.readings.at(-1)?.at ?? "") <= until
      ? series
      : { ...series, readings: series.readings.filter(({ at }) => at <= until) },
  );
}

const watched = new WeakMap<
  House,
  { readonly hour: number; readonly watches: ReadonlyMap<string, MouldWatch> }
>();

/** The mould watch over each reader, once an hour and whenever something was read. */
function watchesOf(now: Now): ReadonlyMap<string, MouldWatch> {
  const hour = Math.floor(now.minute / 60);
  const known = watched.get(now.house);
  if (known?.hour === hour) return known.watches;
  const watches = new Map(watchStores(readUntilNow(now)).map(({ name, watch }) => [name, watch]));
  watched.set(now.house, { hour, watches });
  return watches;
}

const URGENCY = ["act", "watch", "unknown", "quiet"] as const;

/** Every reader of the campaign, the worst first, outdoor air last. */
export function climateReaders(now: Now): readonly ReaderCard[] {
  const watches = watchesOf(now);
  const cards = readUntilNow(now).map(({ name, readings }): ReaderCard => {
    const latest = readings.at(-1) ?? null;
    const watch = watches.get(name);
    const state = watch && !isOutdoor(name) ? airGrade(watch) : null;
    return {
      ...{ name, latest, state },
      ageHours: latest ? hoursOf(minuteNow(now)) - hoursOf(latest.at) : Number.POSITIVE_INFINITY,
      verdict: watch && state !== null ? sayAirVerdict(name, watch) : "",
    };
  });
  const rank = ({ state }: ReaderCard): number => (state === null ? URGENCY.length : URGENCY.indexOf(state));
  return cards.sort((a, b) => rank(a) - rank(b) || (a.name < b.name ? -1 : 1));
}

export interface LampView {
  readonly name: string;
  readonly lights: string;
  readonly stands: string;
  readonly is: "on" | "was" | "off";
}

/** One reader over its last days. Null: no reader has this name. */
export function climateReader(now: Now, name: string, days: number) {
  const card = climateReaders(now).find((each) => each.name === name);
  const readings = readUntilNow(now).find((each) => each.name === name)?.readings ?? [];
  if (card === undefined) return null;
  const watch = watchesOf(now).get(name);
  const until = hoursOf(minuteNow(now));
  const shown = readings.filter(({ at }) => hoursOf(at) > until - days * 24);
  return {
    card,
    until,
    points: pointsOfAir(shown),
    days: daysOfAir(shown),
    lamps: watch && card.state !== null ? lampsOf(watch) : [],
    todo: card.state === null ? [] : CLIMATE_TODO[card.state],
    cautions: watch?.cautions.map((code) => CAUTIONS[code]) ?? [],
  };
}
export type ReaderView = NonNullable<ReturnType<typeof climateReader>>;

const lampsOf = (watch: MouldWatch): LampView[] =>
  (["damp", "critical", "index"] as const).map((lamp) => {
    const [name, lights] = LAMPS[lamp];
    const { isLit, isLitNow } = watch[lamp];
    return { name, lights, stands: sayLamp(watch[lamp]), is: isLitNow ? "on" : isLit ? "was" : "off" };
  });

const outlooks = new WeakMap<House, Map<string, readonly string[]>>();

/** When mould could begin on something readily mouldy that waits where a reader lies; taken apart, as it takes a moment to reckon. */
export function climateAhead(now: Now, name: string): readonly string[] {
  const known = outlooks.get(now.house) ?? new Map<string, readonly string[]>();
  outlooks.set(now.house, known);
  const found = known.get(name);
  if (found) return found;
  const series = readUntilNow(now).find((each) => each.name === name);
  if (series === undefined || isOutdoor(name)) return [];
  const thing = { id: name, title: "", facts: {}, parts: [], priority: "want", foundIn: name } as const;
  const weather = readUntilNow(now).filter((each) => isOutdoor(each.name));
  const campaign = {
    ...now.house,
    climate: [series, ...weather],
    items: [thing],
    findings: [],
    sessions: [],
    ward: [],
  };
  const outlook = mouldOutlooks(campaign).get(name);
  const said = outlook ? sayMouldOutlook(outlook, now.today) : [];
  known.set(name, said);
  return said;
}

/** Whether to open the windows of a store, against air outside. Null: the store has no whole reading. */
export function climateAiring(now: Now, name: string, outside: Air | null) {
  const latest = readUntilNow(now)
    .find((each) => each.name === name)
    ?.readings.findLast(({ dryBulb, relHum }) => dryBulb !== undefined && relHum !== undefined);
  if (latest?.dryBulb === undefined || latest.relHum === undefined) return null;
  const inside: Air = { dryBulb: latest.dryBulb, relHum: Math.min(1, latest.relHum) };
  return {
    inside,
    at: latest.at,
    isOld: hoursOf(minuteNow(now)) - hoursOf(latest.at) > 6,
    outdoor: outdoorNow(now),
    answer: outside && answerOf(inside, outside),
  };
}

export interface AiringAnswer {
  readonly advice: AiringAdvice;
  /** Grams of water in a kilogram of dry air. */
  readonly inGrams: number;
  readonly outGrams: number;
}

const answerOf = (inside: Air, outside: Air): AiringAnswer => ({
  advice: airingAdvice(inside, outside),
  inGrams: 1000 * humidityRatioFromRelHum(inside.dryBulb, inside.relHum),
  outGrams: 1000 * humidityRatioFromRelHum(outside.dryBulb, outside.relHum),
});

/** The newest outdoor reading, where a reader lies outdoors. */
function outdoorNow(now: Now): ClimateReading | null {
  const series = readUntilNow(now).find(({ name }) => isOutdoor(name));
  return series?.readings.at(-1) ?? null;
}

export const climateViews = { climateReaders, climateReader, climateAhead, climateAiring } as const;
