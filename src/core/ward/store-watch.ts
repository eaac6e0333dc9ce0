import type { ClimateSeries } from "../items/campaign.ts";
import { type MouldWatch, watchMould } from "../physics/mould/mould-watch.ts";

export interface StoreWatch {
  readonly name: string;
  readonly watch: MouldWatch;
}

const HOUR_MS = 3_600_000;

/** The mould watch over every reader of a campaign, the worst first. */
export function watchStores(climate: readonly ClimateSeries[]): StoreWatch[] {
  return climate.map(({ name, readings }) => ({ name, watch: watchOf(readings) })).sort(worstFirst);
}

function watchOf(readings: ClimateSeries["readings"]): MouldWatch {
  const hours: number[] = [];
  const dryBulb: number[] = [];
  const relHum: number[] = [];
  for (const reading of readings) {
    const at = Date.parse(`${reading.at}Z`) / HOUR_MS;
    if (Number.isNaN(at) || at <= (hours.at(-1) ?? Number.NEGATIVE_INFINITY)) continue;
    hours.push(at);
    dryBulb.push(reading.dryBulb ?? Number.NaN);
    relHum.push(reading.relHum ?? Number.NaN);
  }
  return watchMould({
    hours: Float64Array.from(hours),
    dryBulb: Float64Array.from(dryBulb),
    relHum: Float64Array.from(relHum),
  });
}

const RANK = { act: 0, watch: 1, unknown: 2, quiet: 3 } as const;
const worstFirst = (a: StoreWatch, b: StoreWatch): number =>
  RANK[a.watch.stateNow] - RANK[b.watch.stateNow] ||
  RANK[a.watch.state] - RANK[b.watch.state] ||
  b.watch.index.highest - a.watch.index.highest;
