import {
  assignedFactorFrom,
  filterFrom,
  inhaledSporesFrom,
  type MouldBand,
  maskFrom,
  type ProtectionTables,
  timeLimitsFrom,
  vacuumFrom,
  wearMinutesFrom,
} from "../../../src/core/physics/people/protection.ts";
import { readPublished } from "../../../src/edge/published.ts";
import { type CheckModels, type Inputs, num } from "../model.ts";

/** Its shape is claimed by the tests of protection. */
const tables = readPublished("physics/protection.json") as ProtectionTables;

const wordsOf = (text: string): string[] => text.toLowerCase().match(/[a-z]+\d*|\d+/g) ?? [];

/** Our device whose words are most nearly those of the row: "half mask + P3" is our "half mask P3". */
function deviceNearest(scheme: string, { device }: Inputs): string {
  const asked = wordsOf(String(device));
  const score = (name: string): number => {
    const ours = wordsOf(name);
    return 2 * ours.filter((word) => asked.includes(word)).length - ours.length;
  };
  const names = tables.factors.filter((row) => row.scheme === scheme).map((row) => row.device);
  const best = names.sort((a, b) => score(b) - score(a))[0];
  if (best === undefined || wordsOf(best).every((word) => !asked.includes(word)))
    throw new TypeError(`no device of ${scheme} like ${JSON.stringify(device)}`);
  return best;
}

const factorIn = (scheme: string) => (inputs: Inputs) => ({
  APF: assignedFactorFrom(tables, scheme, deviceNearest(scheme, inputs)).factor,
});

/** Per cent, free of what binary fractions add: 0.99975 is printed 99.975. */
const percent = (share: number | null): number | null =>
  share === null ? null : Number((100 * share).toPrecision(12));

function bandOf(scheme: string) {
  return ({ band }: Inputs) => {
    const row = tables.mouldBands.find((each: MouldBand) => each.scheme === scheme && each.band === band);
    if (!row) throw new TypeError(`no band ${JSON.stringify(band)} of ${scheme}`);
    return { min_m2: row.fromSquareMetres, max_m2: row.toSquareMetres };
  };
}

export const models: CheckModels = {
  "rpe.en149": ({ cls }) => {
    const mask = maskFrom(tables, String(cls));
    return {
      maxPenetrationPct: percent(mask.penetration),
      TIL_mean8of10_pct: percent(mask.leakageMean),
      TIL_46of50_pct: percent(mask.leakageMost),
      APF_uk: mask.factor,
      NPF: mask.nominal,
    };
  },
  "rpe.osha": factorIn("OSHA"),
  "rpe.niosh1987": factorIn("NIOSH 1987"),
  "rpe.hsg53": factorIn("HSG53"),
  "filter.en1822": ({ cls }) => {
    const filter = filterFrom(tables, "EN 1822", String(cls));
    return { overallMPPS_pct: percent(filter.efficiency), localMPPS_pct: percent(filter.localEfficiency) };
  },
  "filter.iso29463": ({ cls }) => {
    const [, size = "", letter = ""] = /(\d+)\s*([A-Z])/.exec(String(cls)) ?? [];
    return { MPPS_pct: percent(filterFrom(tables, "ISO 29463", `${size} ${letter}`).efficiency) };
  },
  "vacuum.dustClass": ({ cls }) => ({ maxPassing_pct: percent(vacuumFrom(tables, String(cls)).mostPassing) }),
  "mould.areaBand.cci": bandOf("CCI"),
  "mould.areaBand.epa": bandOf("EPA"),
  "mould.professionalThreshold.tna": () => ({ m2: tables.outsideHelp.aboveSquareMetres }),
  "mould.quarantineDrying.tna": () => ({
    hoursMin: tables.quarantineDrying.leastHours,
    rhMax: percent(tables.quarantineDrying.mostRelHum),
  }),
  "rpe.wearTime": ({ type }) => ({ maxContinuousMin: wearMinutesFrom(tables, String(type)) }),
  "exposure.timeLimit": () => {
    const { mostHoursPerDay, mostDaysPerWeek } = timeLimitsFrom(tables);
    return { hoursPerDay: mostHoursPerDay, daysPerWeek: mostDaysPerWeek };
  },
  "rpe.dose": (inputs) => ({
    inhaledSpores: inhaledSporesFrom({
      sporesPerCubicMetre: num(inputs, "spores_m3"),
      factor: num(inputs, "APF"),
      hours: num(inputs, "hours"),
      breathing: num(inputs, "breathing_m3_h"),
    }).spores,
  }),
};
