import {
  humidityRatioOfRates,
  lifeFromClimate,
  permanenceRatio,
  type StorageBand,
} from "../../../src/core/physics/rooms/storage.ts";
import { readPublished } from "../../../src/edge/published.ts";
import { type CheckModels, num } from "../model.ts";
import { entryNamed } from "../named.ts";

const celsius = (fahrenheit: number): number => ((fahrenheit - 32) * 5) / 9;
const JOULES_A_KCAL = 4184;
const percent = (ends: StorageBand["relHum"]): (number | null)[] | null =>
  ends === null ? null : ends.map((end) => (end === null ? null : Math.round(end * 1e6) / 1e4));

const { bands } = readPublished("physics/storage-bands.json") as { bands: StorageBand[] };

export const models: CheckModels = {
  "storage.band": (row) => {
    const asked = `${row.material} ${row.guidance ?? ""}`;
    const band = entryNamed(asked, bands, ({ material, guidance }) => `${material} ${guidance}`);
    return { tC: [...band.dryBulb], rhPct: percent(band.relHum) };
  },
  "lifetime.michalski": (row) => ({
    multiplier: lifeFromClimate(
      num(row, "tC"),
      num(row, "rhPct") / 100,
      num(row, "Ea_kJ") * 1000,
      num(row, "n"),
    ),
  }),
  "lifetime.sebera": (row) => ({
    P2overP1: permanenceRatio(
      { dryBulb: celsius(num(row, "t1F")), relHum: num(row, "rh1") / 100 },
      { dryBulb: celsius(num(row, "t2F")), relHum: num(row, "rh2") / 100 },
      num(row, "dH_kcal") * JOULES_A_KCAL,
      row.n === undefined ? 1 : num(row, "n"),
    ),
  }),
  "lifetime.seberaRhPower": (row) => {
    const [first, second] = [num(row, "rh1") / 100, num(row, "rh2") / 100];
    const ratio = humidityRatioOfRates(first, second, num(row, "n"));
    return { ratio, vsLinear: ratio / humidityRatioOfRates(first, second) };
  },
};
