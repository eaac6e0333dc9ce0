import * as growth from "../../../src/core/physics/mould/mould-growth.ts";
import * as limits from "../../../src/core/physics/mould/mould-limits.ts";
import { type CheckModels, type Inputs, num } from "../model.ts";
import { entryNamed } from "../named.ts";

/** The files' short names of the four classes. */
const CLASS_OF: Readonly<Record<string, growth.GrowthClassName>> = {
  vs: "very-sensitive",
  s: "sensitive",
  mr: "medium-resistant",
  r: "resistant",
};

function classOf(row: Inputs): growth.GrowthClass {
  const name = CLASS_OF[String(row.class)];
  if (!name) throw new TypeError(`input "class" is ${JSON.stringify(row.class)}, expected vs, s, mr or r`);
  return growth.GROWTH_CLASSES[name];
}

const relHumOf = (row: Inputs): number => num(row, "rhPct") / 100;
const numOr = (row: Inputs, name: string, otherwise: number): number =>
  row[name] === undefined ? otherwise : num(row, name);

type Segment = readonly [hours: number, dryBulb: number, percent: number];

function segmentsOf(given: unknown): Segment[] {
  if (Array.isArray(given)) return given as Segment[];
  const { repeat, of } = given as { repeat: number; of: Segment[] };
  return Array.from({ length: repeat }, () => of).flat();
}

/** The index at every whole hour of the segments, the first at hour 0. */
function hourlyIndices(
  row: Inputs,
  segments: readonly Segment[],
  declineFactor: number,
): Record<string, number> {
  const growthClass = classOf(row);
  let now: growth.Growth = { index: numOr(row, "M0", 0), dryHours: 0 };
  let hour = 0;
  const at: Record<string, number> = { "0": now.index };
  for (const [hours, dryBulb, percent] of segments)
    for (let left = hours; left > 0; left--) {
      now = growth.growthAfter(now, dryBulb, percent / 100, Math.min(1, left), growthClass, declineFactor);
      hour += Math.min(1, left);
      at[String(hour)] = now.index;
    }
  return at;
}

export const models: CheckModels = {
  "vtt.rhCrit": (row) => ({ rhPct: 100 * growth.growthRelHum(num(row, "tC"), classOf(row)) }),
  "vtt.timeFactorWeeks": (row) => ({
    weeks: growth.weeksToFirstGrowth(num(row, "tC"), relHumOf(row), numOr(row, "W", 0), numOr(row, "SQ", 0)),
  }),
  "vtt.constant": (row) => {
    const climate = [num(row, "tC"), relHumOf(row), classOf(row)] as const;
    const from = numOr(row, "M0", 0);
    return {
      rhCrit: 100 * growth.growthRelHum(climate[0], climate[2]),
      Mmax: growth.indexCeiling(...climate),
      hoursToM1: growth.hoursToIndex(1, ...climate, from),
      hoursToM3: growth.hoursToIndex(3, ...climate, from),
      // A year of hours: a row may ask for any of them.
      M_at_h: hourlyIndices(row, [[8784, climate[0], 100 * climate[1]]], numOr(row, "Cmat", 1)),
    };
  },
  "vtt.series": (row) => ({
    M_at_h: hourlyIndices(row, segmentsOf(row.segments_h_tC_rhPct), num(row, "Cmat")),
  }),
  "vtt.decline": (row) => {
    const M0 = num(row, "M0");
    return { dM: growth.indexAfterDecline(M0, 0, num(row, "dryHours"), num(row, "Cmat")) - M0 };
  },
  "mould.ashrae160": (row) => ({ pass: limits.passesAshrae160Of2016(num(row, "maxMouldIndex")) }),
  "mould.ashrae160_2009": (row) => ({
    pass: limits.passesAshrae160Of2009(num(row, "t30dC"), num(row, "rh30dPct") / 100),
  }),
  "mould.criticalRhParabola": (row) => {
    const group = String(row.group) as limits.SurfaceGroup;
    return {
      lowerRhPct: 100 * limits.criticalRelHum(num(row, "tC"), group),
      upperRhPct: 100 * limits.upperCriticalRelHum(num(row, "tC"), group),
    };
  },
  "mould.dosePerDay": (row) => ({ D: limits.dosePerDay(num(row, "tC"), relHumOf(row)) }),
  "mould.minWaterActivity": (row) => ({
    aw: entryNamed(
      String(row.organism),
      limits.WATER_ACTIVITY_MINIMA,
      ({ organism, at }) => `${organism} ${at === null ? "" : `${at} C`}`,
    ).least,
  }),
  "mould.sedlbauerMinimum": (row) => {
    const [substrate = ""] = String(row.substrate).trim().split(/[\s(]/);
    const entry = limits.ISOPLETH_MINIMA.find((each) => each.substrate === substrate);
    if (!entry) throw new Error(`no isopleth of substrate "${substrate}"`);
    return { rhPct: 100 * entry.least };
  },
};
