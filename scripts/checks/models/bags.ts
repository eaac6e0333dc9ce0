import {
  airTimeConstantFromFilm,
  contentTimeConstantFromFilm,
  FILMS,
  type Film,
  GRAM_MIL_PER_100_SQUARE_INCHES,
  LDPE_PERMEABILITY,
  MEASURED_FILMS,
  permeanceFromPermeability,
  permeanceFromTransmission,
  relHumFromAirExchange,
  relHumFromHourlyExchange,
  transmissionFromThickness,
} from "../../../src/core/physics/bags/bags.ts";
import { type CheckModels, type Inputs, num } from "../model.ts";

function filmOf({ polymer }: Inputs): Film {
  const found = Object.keys(FILMS).find((name) => name === polymer);
  if (found === undefined) throw new TypeError(`no film ${JSON.stringify(polymer)} in our table`);
  return found as Film; // one of the table's own keys
}

function measuredFilm(inputs: Inputs) {
  const found = MEASURED_FILMS.find(
    (row) =>
      row.film === inputs.film &&
      row.dryBulb === num(inputs, "tC") &&
      Math.abs(100 * row.relHum - num(inputs, "rhPct")) < 1e-9,
  );
  if (!found) throw new TypeError(`no measurement of ${JSON.stringify(inputs.film)} at that climate`);
  return found;
}

type Exchange = (relHum: number, roomRelHum: number, airChangeRate: number, hours: number) => number;
const exchange = (by: Exchange) => (inputs: Inputs) => ({
  rhPct:
    100 *
    by(num(inputs, "rh0") / 100, num(inputs, "rhRoom") / 100, num(inputs, "perHour"), num(inputs, "hours")),
});

export const models: CheckModels = {
  "wvtr.unit": (inputs) => ({
    gMmPerM2Day: GRAM_MIL_PER_100_SQUARE_INCHES * num(inputs, "gMilPer100in2Day"),
  }),
  "wvtr.polymer": (inputs) => {
    const { low, high } = transmissionFromThickness(filmOf(inputs), num(inputs, "thicknessMm"));
    return { gPerM2Day: [low, high] };
  },
  "wvtr.dinFilm": (inputs) => {
    const { transmission, dryBulb, relHum } = measuredFilm(inputs);
    return {
      gPerM2Day: transmission,
      gPerM2DayMax: transmission,
      permeance_gM2DayPa: permeanceFromTransmission(transmission, dryBulb, relHum),
    };
  },
  "wvtr.permeability.LDPE": (inputs) => ({
    gPerM2DayPa: permeanceFromPermeability(
      inputs.cm3STPcm_cm2sPa === undefined ? LDPE_PERMEABILITY : num(inputs, "cm3STPcm_cm2sPa"),
      num(inputs, "thicknessMm"),
    ),
  }),
  "bag.airTimeConstant": (inputs) => ({
    hours: airTimeConstantFromFilm(
      num(inputs, "permeance_gM2DayPa"),
      num(inputs, "area_m2"),
      num(inputs, "volume_m3"),
      num(inputs, "tC"),
    ),
  }),
  "bag.contentTimeConstant": (inputs) =>
    contentTimeConstantFromFilm(
      num(inputs, "permeance_gM2DayPa"),
      num(inputs, "area_m2"),
      num(inputs, "dryKg"),
      num(inputs, "xi"),
      num(inputs, "tC"),
    ),
  "enclosure.airExchange": exchange(relHumFromAirExchange),
  "enclosure.airExchangeDiscrete": exchange(relHumFromHourlyExchange),
};
