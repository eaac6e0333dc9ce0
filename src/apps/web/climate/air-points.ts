import type { ClimateReading } from "../../../core/items/campaign.ts";
import type { Day } from "../../../core/units/day.ts";

/** A stretch of readings drawn as one: its lowest and highest. Hours since 1970, per cent, °C. */
export interface AirPoint {
  readonly hours: number;
  readonly relHum: readonly [low: number, high: number] | null;
  readonly dryBulb: readonly [low: number, high: number] | null;
}

export interface AirDay extends Pick<AirPoint, "relHum" | "dryBulb"> {
  readonly day: Day;
}

const MOST_POINTS = 320;
const hoursOf = (at: string): number => Date.parse(`${at.slice(0, 19)}Z`) / 3_600_000;

/** Few enough points to draw, with every peak kept.   @param readings in the order of time */
export function pointsOfAir(readings: readonly ClimateReading[]): readonly AirPoint[] {
  const step = Math.max(1, Math.ceil(readings.length / MOST_POINTS));
  return Array.from({ length: Math.ceil(readings.length / step) }, (_, i) => {
    const some = readings.slice(i * step, (i + 1) * step);
    return { hours: hoursOf(some[0]?.at ?? ""), ...reachOf(some) };
  });
}

/** The newest day first. */
export const daysOfAir = (readings: readonly ClimateReading[]): readonly AirDay[] =>
  [...Map.groupBy(readings, ({ at }) => at.slice(0, 10))]
    .map(([day, some]) => ({ day: day as Day, ...reachOf(some) })) // an ISO moment begins with its day
    .reverse();

const reachOf = (some: readonly ClimateReading[]): Pick<AirPoint, "relHum" | "dryBulb"> => ({
  relHum: reach(some.flatMap(({ relHum }) => (relHum === undefined ? [] : [100 * relHum]))),
  dryBulb: reach(some.flatMap(({ dryBulb }) => dryBulb ?? [])),
});

const reach = (values: readonly number[]): readonly [number, number] | null =>
  values.length === 0 ? null : [Math.min(...values), Math.max(...values)];
