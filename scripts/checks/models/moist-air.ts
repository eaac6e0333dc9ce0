import * as air from "../../../src/core/physics/air/moist-air.ts";
import { type CheckModels, num } from "../model.ts";

const PERCENT = 0.01;
const GRAMS = 1000;

/** The files' names and units, relative humidity in per cent unless it is named `rh`. */
export const models: CheckModels = {
  "psychro.satPressure": (row) => ({ Pa: air.satVapourPressure(num(row, "tC")) }),
  "psychro.satHumidityRatio": (row) => ({ kgPerKg: air.satHumidityRatio(num(row, "tC"), num(row, "pPa")) }),
  "psychro.satEnthalpy": (row) => {
    const dryBulb = num(row, "tC");
    return { JPerKg: air.enthalpyFromHumidityRatio(dryBulb, air.satHumidityRatio(dryBulb, num(row, "pPa"))) };
  },
  "psychro.moistAirVolume": (row) => ({
    m3PerKgDry: air.specificVolumeFromHumidityRatio(num(row, "tC"), num(row, "W"), num(row, "pPa")),
  }),
  "psychro.fromWetBulb": (row) => {
    const dryBulb = num(row, "tC");
    const pressure = num(row, "pPa");
    const W = air.humidityRatioFromWetBulb(dryBulb, num(row, "wetBulbC"), pressure);
    return {
      W,
      rh: air.relHumFromHumidityRatio(dryBulb, W, pressure),
      hJPerKg: air.enthalpyFromHumidityRatio(dryBulb, W),
      v: air.specificVolumeFromHumidityRatio(dryBulb, W, pressure),
    };
  },
  "psychro.wetBulb": (row) => ({
    tC: air.wetBulbFromRelHum(num(row, "tC"), num(row, "rh"), num(row, "pPa")),
  }),
  "psychro.standardPressure": (row) => ({ Pa: air.pressureFromAltitude(num(row, "altitudeM")) }),
  "psychro.state": (row) => {
    const dryBulb = num(row, "tC");
    const relHum = num(row, "rhPct") * PERCENT;
    const W = air.humidityRatioFromRelHum(dryBulb, relHum, num(row, "pPa"));
    return {
      pwPa: air.vapourPressureFromRelHum(dryBulb, relHum),
      dewC: air.dewPointFromRelHum(dryBulb, relHum),
      Wgkg: W * GRAMS,
      absGm3: air.absHumidityFromRelHum(dryBulb, relHum) * GRAMS,
      hKJkg: air.enthalpyFromHumidityRatio(dryBulb, W) / 1000,
    };
  },
  "psychro.magnusWater": (row) => ({ Pa: air.magnusPressureOverWater(num(row, "tC")) }),
  "psychro.magnusIce": (row) => ({ Pa: air.magnusPressureOverIce(num(row, "tC")) }),
  "psychro.magnusDewPoint": (row) => ({
    tC: air.magnusDewPointFromRelHum(num(row, "tC"), num(row, "rhPct") * PERCENT),
  }),
  "psychro.absHumidity": (row) => ({
    gPerM3: air.absHumidityFromRelHum(num(row, "tC"), num(row, "rhPct") * PERCENT) * GRAMS,
  }),
  "psychro.absHumiditySaturated": (row) => ({ gPerM3: air.absHumidityFromRelHum(num(row, "tC"), 1) * GRAMS }),
};
