import { relHumOfColder, SeriesPass, zeroOf } from "./_internals/series-pass.ts";
import { TrackRecord } from "./_internals/track-record.ts";
import type { ClimateSeries, Run } from "./climate-series.ts";
import { CURVATURE, heldCriticalRelHum } from "./mould-limits.ts";
import { type WatchRules, watchRulesFrom } from "./watch-rules.ts";

/** The mould watch along its way, for drawing. Columns have one value for each reading used; missing ones are left out. */
export interface MouldTrack {
  /** Hours since 1970-01-01. */
  readonly hours: Float64Array;
  /** Where mould is judged, in the air or at the surface: 0 to 1, and the least at which it can grow there. */
  readonly relHum: Float64Array;
  readonly criticalRelHum: Float64Array;
  /** Mould index at that moment, 0 to 6; after a gap it starts anew. */
  readonly index: Float64Array;
  /** When each lamp was lit: from when it went on, for so many hours. Hours 0: the series broke off as it went on. */
  readonly lit: {
    readonly damp: readonly Run[];
    readonly critical: readonly Run[];
    readonly index: readonly Run[];
  };
}

/** The way of the watch over a series, by the same meters.   @throws as `watchMould` */
export function mouldTrack(series: ClimateSeries, given: Partial<WatchRules> = {}): MouldTrack {
  const rules = watchRulesFrom(given);
  const record = new TrackRecord(series.relHum.length);
  new SeriesPass(rules, record).readThrough(series);
  const zero = zeroOf(series);
  const since = (runs: readonly Run[]): Run[] =>
    runs.map(({ from, hours }) => ({ from: zero + from, hours }));
  return {
    hours: record.moments.subarray(0, record.count).map((moment) => zero + moment),
    ...humiditiesOf(series, CURVATURE[rules.surfaceGroup], record.count),
    index: record.index.slice(0, record.count),
    lit: { damp: since(record.damp), critical: since(record.critical), index: since(record.atOne) },
  };
}

/** @param used number of readings that are complete */
function humiditiesOf({ dryBulb, relHum, surface }: ClimateSeries, curvature: number, used: number) {
  const judged = { relHum: new Float64Array(used), criticalRelHum: new Float64Array(used) };
  let n = 0;
  for (let i = 0; i < relHum.length; i++) {
    const [air, humidity] = [dryBulb[i] as number, relHum[i] as number]; // i stays below the length of every column
    const wall = surface === undefined ? air : (surface[i] as number);
    if (Number.isNaN(air + humidity + wall)) continue;
    judged.relHum[n] = relHumOfColder(air, humidity, wall);
    judged.criticalRelHum[n] = heldCriticalRelHum(Math.min(air, wall), curvature);
    n++;
  }
  return judged;
}
