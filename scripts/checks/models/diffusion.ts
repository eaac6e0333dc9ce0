import {
  satVapourPressure,
  vapourPressureFromRelHum,
  wetBulbFromRelHum,
} from "../../../src/core/physics/air/moist-air.ts";
import {
  airPermeability,
  biotRoots,
  brickChange,
  diffusivityFromPermeability,
  filmFromHeatTransfer,
  flatPlateFilm,
  fourierFromPlaneSheetChange,
  permeabilityAlongLeaves,
  planeSheetCentreChange,
  planeSheetChange,
  planeSheetChangeBehindFilm,
  wetSurfaceRate,
} from "../../../src/core/physics/drying/diffusion.ts";
import { dryingCourse } from "../../../src/core/physics/drying/drying.ts";
import type { DryingBody } from "../../../src/core/physics/drying/drying-body.ts";
import { DRYING_FACTS } from "../../../src/core/physics/drying/drying-facts.ts";
import { ISOTHERMS } from "../../../src/core/physics/sorption/sorption.ts";
import { type CheckModels, type Inputs, num } from "../model.ts";

/** Every day of a year: a row may ask for any. */
const REFERENCE_DAYS = Array.from({ length: 366 }, (_, i) => i + 1);

/** A slab of paper open at one edge, the other sealed; any dry mass gives the same contents. */
function slab(inputs: Inputs): DryingBody {
  const density = num(inputs, "rho");
  const depth = num(inputs, "depthM");
  return {
    isotherm: ISOTHERMS.ragPaper,
    dryMass: density * depth,
    openArea: 1,
    depth,
    taper: 0,
    permeability: permeabilityAlongLeaves(num(inputs, "airFraction"), airPermeability(num(inputs, "tC"))),
    spread: 1,
    cautions: [],
  };
}

function bookReference(inputs: Inputs) {
  const film = filmFromHeatTransfer(num(inputs, "hc"), num(inputs, "tC"));
  const { points } = dryingCourse(
    slab(inputs),
    num(inputs, "tC"),
    num(inputs, "phi0"),
    { kind: "room", relHum: num(inputs, "phiRoom"), film },
    REFERENCE_DAYS.map((day) => 24 * day),
  );
  const byDay = (value: (i: number) => number) =>
    Object.fromEntries(REFERENCE_DAYS.map((day, i) => [String(day), value(i)]));
  return {
    meanMcPct_at_day: byDay((i) => 100 * (points[i]?.moistureContent ?? Number.NaN)),
    corePhiPct_at_day: byDay((i) => 100 * (points[i]?.coreRelHum ?? Number.NaN)),
  };
}

function numbers(inputs: Inputs, name: string): number[] {
  const value = inputs[name];
  if (!Array.isArray(value) || value.some((each) => typeof each !== "number"))
    throw new TypeError(`input "${name}" is ${JSON.stringify(value)}, expected a list of numbers`);
  return value as number[];
}

export const models: CheckModels = {
  "diffusion.planeSheet": (inputs) => ({ MtOverMinf: planeSheetChange(num(inputs, "Fo")) }),
  "diffusion.planeSheetFo": (inputs) => ({ Fo: fourierFromPlaneSheetChange(num(inputs, "MtOverMinf")) }),
  "diffusion.planeSheetCentre": (inputs) => ({ change: planeSheetCentreChange(num(inputs, "Fo")) }),
  "diffusion.biotRoots": (inputs) => ({ beta: biotRoots(num(inputs, "Bi"), 3) }),
  "diffusion.planeSheetSurfaceFilm": (inputs) => ({
    MtOverMinf: planeSheetChangeBehindFilm(num(inputs, "Fo"), num(inputs, "Bi")),
  }),
  "diffusion.newmanProduct": (inputs) => ({
    MtOverMinf: brickChange(numbers(inputs, "Fo").map(planeSheetChange)),
  }),
  "diffusion.airPermeability": (inputs) => ({
    kgPerMsPa: airPermeability(num(inputs, "tC"), num(inputs, "pPa")),
  }),
  "diffusion.flatPlateFilm": (inputs) => {
    const { sherwood, massTransfer, film } = flatPlateFilm({
      velocity: num(inputs, "velocity"),
      length: num(inputs, "lengthM"),
      kinematicViscosity: num(inputs, "nu"),
      vapourDiffusivity: num(inputs, "Dv"),
      dryBulb: num(inputs, "tC"),
    });
    return { Sh: sherwood, hm_ms: massTransfer, kgPerM2sPa: film };
  },
  "diffusion.bookEdgeD": (inputs) => {
    const dryBulb = num(inputs, "tC");
    const slope = ISOTHERMS.ragPaper.slope(num(inputs, "phi"), dryBulb);
    const permeability = permeabilityAlongLeaves(num(inputs, "airFraction"), airPermeability(dryBulb));
    const density = num(inputs, "rho");
    return {
      xi: slope,
      D_m2s: diffusivityFromPermeability(permeability, satVapourPressure(dryBulb), density, slope),
    };
  },
  "diffusion.bookReference": bookReference,
  "drying.wetSurfaceRate": (inputs) => {
    const [dryBulb, relHum] = [num(inputs, "tC"), num(inputs, "rhPct") / 100];
    const wetBulb = wetBulbFromRelHum(dryBulb, relHum, num(inputs, "pPa"));
    const perSecond = wetSurfaceRate(
      num(inputs, "film_kgPerM2sPa"),
      satVapourPressure(wetBulb),
      vapourPressureFromRelHum(dryBulb, relHum),
    );
    return { wetBulbC: wetBulb, gPerM2h: perSecond * 3_600_000 };
  },
  "drying.sanity.nara": () => ({ coreMcPct: DRYING_FACTS.closedBoxes.coreMoisturePercent }),
  "drying.sanity.vacuumFreeze": () => ({ weeks: DRYING_FACTS.vacuumFreezing.weeks }),
};
