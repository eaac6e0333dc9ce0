import {
  densityFromMassFraction,
  densityFromVolumeFraction,
  massFractionFromVolumeFraction,
  volumeFractionFromMassFraction,
} from "../../../src/core/physics/solutions/ethanol-density.ts";
import {
  FLAMMABILITY,
  type FlashPoints,
  flashPointFromMassFraction,
  flashPointFromTable,
  flashPointFromVolumeFraction,
} from "../../../src/core/physics/solutions/ethanol-fire.ts";
import {
  mixtureFromVolumes,
  recipeFrom,
  waterFromStockVolume,
} from "../../../src/core/physics/solutions/ethanol-recipe.ts";
import {
  ethanolSatPressure,
  milligramsFromPpm,
  vapourFromVolumeFraction,
  waterSatPressureByAntoine,
} from "../../../src/core/physics/solutions/ethanol-vapour.ts";
import {
  type ExposureLimit,
  exposureLimitFrom,
} from "../../../src/core/physics/solutions/exposure-limits.ts";
import { readPublished } from "../../../src/edge/published.ts";
import { type CheckModels, type Inputs, num } from "../model.ts";

/** Shape of `data/physics/ethanol.json`. */
const published = readPublished("physics/ethanol.json") as {
  limits: readonly ExposureLimit[];
  flashPoints: FlashPoints;
};
/** °C of 60 °F, the reference of the American alcohol tables. */
const SIXTY_FAHRENHEIT = 15.56;

/** The limit a row names in words, such as "UK WEL, 8-h". */
function limitOf({ limit }: Inputs): ExposureLimit {
  const words = String(limit);
  const where = PLACES.find(([pattern]) => pattern.test(words))?.[1];
  if (where === undefined) throw new TypeError(`no place in ${JSON.stringify(limit)}`);
  if (/IDLH/.test(words)) return exposureLimitFrom(published.limits, where, "danger to life");
  const isShort = /15|STEL|short/i.test(words);
  return exposureLimitFrom(published.limits, where, isShort ? "15 minutes" : "8 hours");
}
const PLACES: readonly (readonly [RegExp, string])[] = [
  [/NIOSH|OSHA|USA/, "USA"],
  [/German|AGW|TRGS/, "Germany"],
  [/UK|EH40|WEL/, "United Kingdom"],
  [/ACGIH/, "ACGIH"],
  [/France|French|VLEP/, "France"],
  [/Netherlands|Dutch|SER/, "Netherlands"],
];

export const models: CheckModels = {
  "oiml.density20FromVol": (inputs) => {
    const volumeFraction = num(inputs, "volPercent") / 100;
    return {
      rho_kg_m3: densityFromVolumeFraction(volumeFraction, num(inputs, "tC")),
      massPercent: 100 * massFractionFromVolumeFraction(volumeFraction),
    };
  },
  "oiml.densityFromMass": (inputs) => {
    const massFraction = num(inputs, "massPercent") / 100;
    return {
      rho_kg_m3: densityFromMassFraction(massFraction, num(inputs, "tC")),
      volPercent: 100 * volumeFractionFromMassFraction(massFraction),
    };
  },
  "oiml.massFromVol.at15.56C": (inputs) => ({
    massPercent:
      100 * massFractionFromVolumeFraction(num(inputs, "volPercentAt15_56C") / 100, SIXTY_FAHRENHEIT),
  }),
  "oiml.volFromMass.at15.56C": (inputs) => ({
    volPercentAt15_56C:
      100 * volumeFractionFromMassFraction(num(inputs, "massPercent") / 100, SIXTY_FAHRENHEIT),
  }),
  "ethanol.dilute20C": (inputs) => {
    const recipe = recipeFrom({
      finalVolume: num(inputs, "finalVolume_mL"),
      stock: num(inputs, "stockVolPercent") / 100,
      target: num(inputs, "targetVolPercent") / 100,
    });
    return {
      stock_mL: recipe.stockVolume,
      water_mL: recipe.waterVolume,
      stock_g: recipe.stockMass,
      water_g: recipe.waterMass,
      total_g: recipe.totalMass,
      contraction_mL: recipe.contraction,
    };
  },
  "ethanol.waterPer100mLStock": (inputs) => ({
    water_mL: waterFromStockVolume({
      stockVolume: 100,
      stock: num(inputs, "stockVolPercent") / 100,
      target: num(inputs, "targetVolPercent") / 100,
      referenceTemperature: num(inputs, "referenceTempC"),
    }),
  }),
  "ethanol.mixByVolume20C": (inputs) => {
    const mixture = mixtureFromVolumes({
      stockVolume: num(inputs, "stock_mL"),
      stock: num(inputs, "stockVolPercent") / 100,
      waterVolume: num(inputs, "water_mL"),
    });
    return { volPercent: 100 * mixture.volumeFraction, volume_mL: mixture.volume };
  },
  "ethanol.psat": (inputs) => ({ kPa: ethanolSatPressure(num(inputs, "tC")) / 1000 }),
  "water.psat": (inputs) => ({ kPa: waterSatPressureByAntoine(num(inputs, "tC")) / 1000 }),
  "ethanol.partialPressure.vanLaar": (inputs) => {
    const vapour = vapourFromVolumeFraction(num(inputs, "volPercent") / 100, num(inputs, "tC"));
    return {
      moleFraction: vapour.moleFraction,
      gammaEthanol: vapour.activity.ethanol,
      gammaWater: vapour.activity.water,
      pEthanol_kPa: vapour.ethanol / 1000,
      pWater_kPa: vapour.water / 1000,
      saturation_ppm: vapour.saturationPpm,
    };
  },
  "ethanol.flashPointTable": (inputs) => ({
    flash_C: flashPointFromTable(published.flashPoints, num(inputs, "percent")).flashPoint,
  }),
  "ethanol.flashPoint.vapourPressureMatch": (inputs) => {
    const by = inputs.basis === "mass" ? flashPointFromMassFraction : flashPointFromVolumeFraction;
    return { flash_C: by(num(inputs, "percent") / 100, num(inputs, "pureFlash_C")).flashPoint };
  },
  "ethanol.ppmToMgM3": (inputs) => ({
    mg_m3: milligramsFromPpm(num(inputs, "ppm"), num(inputs, "tC"), 1000 * num(inputs, "kPa")),
  }),
  "ethanol.exposureLimit": (inputs) => {
    const { ppm, mgPerCubicMetre } = limitOf(inputs);
    return { ppm, mg_m3: mgPerCubicMetre };
  },
  "ethanol.flammability": () => ({
    LEL_volPercent: 100 * FLAMMABILITY.lowerLimit,
    UEL_volPercent: 100 * FLAMMABILITY.upperLimit,
    flashPure_C: FLAMMABILITY.pureFlashPoint,
    vp20_mmHg: FLAMMABILITY.vapourPressure20,
  }),
};
