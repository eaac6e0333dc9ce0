import { satVapourPressure } from "../../../src/core/physics/air/moist-air.ts";
import {
  caseGelDensityFrom,
  dinUnitsFrom,
  gramsPerUnitFrom,
  UNITS_BY_SIZE,
} from "../../../src/core/physics/bags/desiccant-units.ts";
import { relHumFromGel } from "../../../src/core/physics/bags/gel-in-bag.ts";
import {
  type Branch,
  DUBININ_ROWS,
  type DubininRow,
  dubininContentFromRelHum,
  freundlichContentFromRelHum,
  gelContentFromRelHum,
  MEASURED_GEL,
  secondGelContentFromVapourPressure,
  tothContentFromVapourPressure,
} from "../../../src/core/physics/bags/gel-isotherms.ts";
import { gelMassFromRelHum } from "../../../src/core/physics/bags/gel-plan.ts";
import { ISOTHERMS } from "../../../src/core/physics/sorption/sorption.ts";
import { type CheckModels, type Inputs, num } from "../model.ts";

const relHum = (inputs: Inputs): number => num(inputs, "rhPct") / 100;
const branchOf = (inputs: Inputs): Branch => (inputs.branch === "desorption" ? "desorption" : "adsorption");

const dubinin = (row: DubininRow) => (inputs: Inputs) => ({
  kgPerKg: dubininContentFromRelHum(row, relHum(inputs), num(inputs, "tC")),
});

/** A bag of white-bond paper; the rows on gel needed leave the air out and name no temperature. */
const bag = (inputs: Inputs) => ({
  dryBulb: inputs.tC === undefined ? 20 : num(inputs, "tC"),
  airVolume: inputs.airM3 === undefined ? 0 : num(inputs, "airM3"),
  airRelHum: num(inputs, "phi0"),
  contents: [{ isotherm: ISOTHERMS.ragPaper, dryMass: num(inputs, "paperKg"), relHum: num(inputs, "phi0") }],
});

function unitsBy(sizes: Readonly<Record<string, number>>) {
  return (inputs: Inputs) => {
    const [name, perSize] = Object.entries(sizes).find(([key]) => inputs[key] !== undefined) ?? [];
    if (name === undefined || perSize === undefined)
      throw new TypeError(`none of ${Object.keys(sizes).join(", ")} among the inputs`);
    const units = num(inputs, name) * perSize;
    return { units, chosen: Math.ceil(units - 1e-9) };
  };
}

/** One humidity gives one figure, a list gives a list. */
function gramsPerUnit({ rhPct }: Inputs): number | number[] {
  return Array.isArray(rhPct)
    ? rhPct.map((each) => gramsPerUnitFrom(Number(each) / 100))
    : gramsPerUnitFrom(Number(rhPct) / 100);
}

/** The rows ask where the bag rests, not whether its item bears it. */
const NO_FLOOR = 0;

export const models: CheckModels = {
  "silica.measured.RD2560": (inputs) => ({ kgPerKg: gelContentFromRelHum(relHum(inputs), branchOf(inputs)) }),
  "silica.table.RD2560": (inputs) => ({
    rhPct: MEASURED_GEL[branchOf(inputs)].relHums.map((each) => 100 * each),
    kgPerKg: MEASURED_GEL[branchOf(inputs)].contents,
  }),
  "silica.measured.WangLeVan": (inputs) => ({
    kgPerKg: secondGelContentFromVapourPressure(num(inputs, "pPa")),
  }),
  "silica.toth.RD": (inputs) => {
    const dryBulb = num(inputs, "tC");
    const vapourPressure =
      inputs.pPa === undefined ? relHum(inputs) * satVapourPressure(dryBulb) : num(inputs, "pPa");
    return { kgPerKg: tothContentFromVapourPressure(vapourPressure, dryBulb) };
  },
  "silica.dubininAstakhov.RD2560": dubinin(DUBININ_ROWS.rd2560),
  "silica.dubininAstakhov.Siogel": dubinin(DUBININ_ROWS.siogel),
  "silica.freundlich.FujiA": (inputs) => ({ kgPerKg: freundlichContentFromRelHum(relHum(inputs)) }),
  "silica.benchtop": (inputs) => ({ kgPerKg: gelContentFromRelHum(relHum(inputs)) }),
  "desiccant.din55474": (inputs) => {
    const din = dinUnitsFrom({
      volume: num(inputs, "V_m3"),
      vapourGramsPerCubicMetre: num(inputs, "b_gm3"),
      packingMass: num(inputs, "m_kg"),
      packingGramsPerKilogram: num(inputs, "c_gkg"),
      filmArea: num(inputs, "A_m2"),
      filmFactor: num(inputs, "e"),
      transmission: num(inputs, "WVTR_gm2d"),
      days: num(inputs, "t_d"),
      gramsPerUnit: num(inputs, "a_gUnit"),
    });
    return { terms_g: din.terms, units: din.units, unitsRoundedUp: din.wholeUnits };
  },
  "desiccant.simplified": (inputs) => {
    const { units } = dinUnitsFrom({
      volume: 0,
      vapourGramsPerCubicMetre: 0,
      packingMass: num(inputs, "woodKg"),
      packingGramsPerKilogram: num(inputs, "gPerKg"),
      filmArea: num(inputs, "A_m2"),
      filmFactor: 1,
      transmission: num(inputs, "WVTR_gm2d"),
      days: num(inputs, "t_d"),
      gramsPerUnit: num(inputs, "a_gUnit"),
    });
    return { units };
  },
  "desiccant.milArea": unitsBy({ in2: UNITS_BY_SIZE.perSquareInch, m2: UNITS_BY_SIZE.perSquareMetre }),
  "desiccant.milVolume": unitsBy({ gallons: UNITS_BY_SIZE.perGallon, ft3: UNITS_BY_SIZE.perCubicFoot }),
  "desiccant.unit": (inputs) => ({ gWaterPerUnit: gramsPerUnit(inputs) }),
  "bag.finalRh": (inputs) => {
    const gel = { dryMass: num(inputs, "gelKg"), startContent: num(inputs, "gelStart") };
    return { rhPct: 100 * relHumFromGel(bag(inputs), gel, NO_FLOOR).relHum };
  },
  "bag.gelNeeded": (inputs) => ({
    gelGrams: 1000 * gelMassFromRelHum(bag(inputs), num(inputs, "phi1"), num(inputs, "gelStart")),
  }),
  "case.thomsonRule": (inputs) => ({ gelKgPerM3: caseGelDensityFrom(num(inputs, "N_perDay")) }),
};
