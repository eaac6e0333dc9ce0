/**
 * Moist air: saturation, vapour pressure, dew point, humidity ratio, wet bulb, enthalpy, volume.
 *
 * Source of all equations but Magnus and absolute humidity: ASHRAE Handbook—Fundamentals (2017) ch. 1; the numbers beside the lines are
 * its equation numbers. Ideal gas: the saturation humidity ratio lies 0.4 to 0.8 % below the handbook's real-gas table.
 * Temperatures °C, pressures Pa, relative humidity 0 to 1, humidity ratio kg water per kg dry air.
 */
import { OutOfRange, withinRange } from "../out-of-range.ts";

/** Sea-level pressure, Pa. Source: ASHRAE 2017 ch. 1 table 1. */
export const STANDARD_PRESSURE = 101_325;
/** Ratio of molar masses, water to dry air. ASHRAE 2017 ch. 1 eq. 20. */
const MASS_RATIO = 0.621945;
/** Gas constant of water vapour, J/(kg K). */
const VAPOUR_GAS_CONSTANT = 461.5;
const KELVIN = 273.15;
/** Where the two fits meet, °C; see `satVapourPressure`. */
const TRIPLE_POINT = 0.01;

/** Saturation vapour pressure over water, or over ice below the triple point.
 *  @param dryBulb °C, −100 to 200; outside it throws OutOfRange   @returns Pa
 *  Source: ASHRAE 2017 ch. 1 eqs 5 and 6 (Hyland and Wexler), within 300 ppm of its table 3. We switch at 0.01 °C, not at 0 °C:
 *  the two fits meet there, and the dew-point search, which inverts this function, needs them to meet. */
export function satVapourPressure(dryBulb: number): number {
  withinRange("temperature", dryBulb, "°C", -100, 200);
  return Math.exp(dryBulb <= TRIPLE_POINT ? lnPressureOverIce(dryBulb) : lnPressureOverWater(dryBulb));
}

function lnPressureOverIce(dryBulb: number): number {
  const T = dryBulb + KELVIN; // K; eq. 5, T⁴ included
  const fit = 6.3925247 + T * (-9.677843e-3 + T * (6.2215701e-7 + T * (2.0747825e-9 - T * 9.484024e-13)));
  return -5.6745359e3 / T + fit + 4.1635019 * Math.log(T);
}

function lnPressureOverWater(dryBulb: number): number {
  const T = dryBulb + KELVIN; // K; eq. 6
  const fit = 1.3914993 + T * (-4.8640239e-2 + T * (4.1764768e-5 - T * 1.4452093e-8));
  return -5.8002206e3 / T + fit + 6.5459673 * Math.log(T);
}

/** Saturation pressure at one temperature over that at another: `satVapourPressure(first) / satVapourPressure(second)` with a third of the
 *  work, for series of millions of readings.   @param first, second °C, −100 to 200 (not checked here) */
export function satPressureRatio(first: number, second: number): number {
  if (first <= TRIPLE_POINT || second <= TRIPLE_POINT)
    return satVapourPressure(first) / satVapourPressure(second);
  const a = first + KELVIN;
  const b = second + KELVIN;
  const fit = -4.8640239e-2 + 4.1764768e-5 * (a + b) - 1.4452093e-8 * (a * a + a * b + b * b); // each difference over a − b
  return Math.exp((a - b) * (5.8002206e3 / (a * b) + fit) + 6.5459673 * logOfRatio(a, b));
}

/** ln(a/b) of two temperatures, K. By a series of (a − b)/(a + b) where they lie near each other: five terms give every digit. */
function logOfRatio(a: number, b: number): number {
  const s = (a - b) / (a + b);
  const ss = s * s;
  if (ss > 4e-4) return Math.log(a / b);
  return 2 * s * (1 + ss * (1 / 3 + ss * (1 / 5 + ss * (1 / 7 + ss * (1 / 9)))));
}

/** Slopes of the two lines above, 1/K. */
function slopeOverIce(dryBulb: number): number {
  const T = dryBulb + KELVIN;
  const fit = -9.677843e-3 + T * (2 * 6.2215701e-7 + T * (3 * 2.0747825e-9 - T * 4 * 9.484024e-13));
  return 5.6745359e3 / (T * T) + fit + 4.1635019 / T;
}

function slopeOverWater(dryBulb: number): number {
  const T = dryBulb + KELVIN;
  return 5.8002206e3 / (T * T) - 4.8640239e-2 + T * (2 * 4.1764768e-5 - T * 3 * 1.4452093e-8) + 6.5459673 / T;
}

/** Vapour pressure in air of that relative humidity.   @param relHum 0 to 1   @returns Pa */
export function vapourPressureFromRelHum(dryBulb: number, relHum: number): number {
  return withinRange("relative humidity", relHum, "1", 0, 1) * satVapourPressure(dryBulb); // eq. 22
}

/** Relative humidity at that vapour pressure. Above 1: more vapour than the air can hold, water condenses. */
export function relHumFromVapourPressure(dryBulb: number, vapourPressure: number): number {
  return vapourPressure / satVapourPressure(dryBulb); // eq. 22
}

/** Relative humidity at a surface of another temperature, in the same air. Above 1: dew forms there.
 *  @param relHum of the air, 0 to 1   @param surfaceTemperature °C */
export function relHumAtSurface(dryBulb: number, relHum: number, surfaceTemperature: number): number {
  return relHumFromVapourPressure(surfaceTemperature, vapourPressureFromRelHum(dryBulb, relHum));
}

/** Temperature at which air of that vapour pressure begins to wet (or to frost) a surface.
 *  @param vapourPressure Pa, from saturation at −100 °C (0.0014 Pa) to saturation at 200 °C; outside it throws OutOfRange   @returns °C
 *  Newton's search on ln p, which is nearly straight: tolerance 1e-8 K, at most 50 steps, at home on one side of the triple point.
 *  The handbook's explicit fit (eqs 37, 38) is coarser and not used. */
export function dewPointFromVapourPressure(vapourPressure: number): number {
  withinRange("vapour pressure", vapourPressure, "Pa", LOWEST_PRESSURE, HIGHEST_PRESSURE);
  const ln = Math.log(vapourPressure);
  const isFrost = ln <= lnPressureOverIce(TRIPLE_POINT);
  const [lnPressure, slope] = isFrost
    ? [lnPressureOverIce, slopeOverIce]
    : [lnPressureOverWater, slopeOverWater];
  let dewPoint = isFrost ? -20 : 20;
  for (let step = 0; step < 50; step++) {
    const change = (ln - lnPressure(dewPoint)) / slope(dewPoint);
    dewPoint = Math.min(200, Math.max(-100, dewPoint + change));
    if (Math.abs(change) < 1e-8) return dewPoint;
  }
  throw new Error(
    `The dew point of ${vapourPressure} Pa was not found in 50 steps; last tried ${dewPoint} °C`,
  );
}

const LOWEST_PRESSURE = satVapourPressure(-100) * (1 - 1e-12);
const HIGHEST_PRESSURE = satVapourPressure(200) * (1 + 1e-12);

/** Dew point of air of that relative humidity.   @returns °C
 *  @throws OutOfRange in air so dry that the dew point lies below −100 °C */
export const dewPointFromRelHum = (dryBulb: number, relHum: number): number =>
  dewPointFromVapourPressure(vapourPressureFromRelHum(dryBulb, relHum));

/** Humidity ratio.   @param vapourPressure Pa, below the air's pressure; at or above it the water boils and OutOfRange is thrown */
export function humidityRatioFromVapourPressure(
  vapourPressure: number,
  pressure = STANDARD_PRESSURE,
): number {
  if (!(vapourPressure >= 0 && vapourPressure < pressure))
    throw new OutOfRange("vapour pressure", vapourPressure, "Pa", 0, pressure);
  return (MASS_RATIO * vapourPressure) / (pressure - vapourPressure); // eq. 20
}

/** Vapour pressure, Pa, at that humidity ratio: eq. 20 turned round. */
export const vapourPressureFromHumidityRatio = (
  humidityRatio: number,
  pressure = STANDARD_PRESSURE,
): number => (pressure * humidityRatio) / (MASS_RATIO + humidityRatio);

/** Humidity ratio of air of that relative humidity. */
export const humidityRatioFromRelHum = (
  dryBulb: number,
  relHum: number,
  pressure = STANDARD_PRESSURE,
): number => humidityRatioFromVapourPressure(vapourPressureFromRelHum(dryBulb, relHum), pressure);

/** Humidity ratio of saturated air. */
export const satHumidityRatio = (dryBulb: number, pressure = STANDARD_PRESSURE): number =>
  humidityRatioFromVapourPressure(satVapourPressure(dryBulb), pressure); // eq. 21

/** Relative humidity at that humidity ratio; above 1, water condenses. */
export const relHumFromHumidityRatio = (
  dryBulb: number,
  humidityRatio: number,
  pressure = STANDARD_PRESSURE,
): number => relHumFromVapourPressure(dryBulb, vapourPressureFromHumidityRatio(humidityRatio, pressure));

/** Humidity ratio from the two thermometers of a psychrometer.
 *  @param wetBulb °C, not above the dry bulb; below 0 °C the wick is taken as frozen
 *  @returns kg/kg; negative for a pair of readings that no air can give   Source: eqs 33 and 35 */
export function humidityRatioFromWetBulb(
  dryBulb: number,
  wetBulb: number,
  pressure = STANDARD_PRESSURE,
): number {
  withinRange("wet bulb", wetBulb, "°C", -100, dryBulb);
  return humidityRatioAtWick(dryBulb, wetBulb, pressure, wetBulb < 0);
}

function humidityRatioAtWick(t: number, wet: number, pressure: number, isFrozen: boolean): number {
  const Ws = satHumidityRatio(wet, pressure);
  return isFrozen
    ? ((2830 - 0.24 * wet) * Ws - 1.006 * (t - wet)) / (2830 + 1.86 * t - 2.1 * wet) // eq. 35
    : ((2501 - 2.326 * wet) * Ws - 1.006 * (t - wet)) / (2501 + 1.86 * t - 4.186 * wet); // eq. 33
}

/** Thermodynamic wet bulb.   @param dryBulb °C, −100 to 200 and below boiling   @param relHum 0 to 1   @returns °C
 *  Halving search: bracket from −100 °C (or 0 °C with a wet wick) to the dry bulb, tolerance 1e-7 K, at most 60 steps.
 *  Just below 0 °C eqs 33 and 35 overlap, so some air has two answers: we take the wick as wet whenever it can be. */
export function wetBulbFromRelHum(dryBulb: number, relHum: number, pressure = STANDARD_PRESSURE): number {
  const W = humidityRatioFromRelHum(dryBulb, relHum, pressure);
  if (relHum === 1) return dryBulb;
  const isFrozen = dryBulb < 0 || W < humidityRatioAtWick(dryBulb, 0, pressure, false);
  let low = isFrozen ? -100 : 0;
  let high = isFrozen ? Math.min(dryBulb, 0) : dryBulb;
  for (let step = 0; step < 60; step++) {
    const wetBulb = (low + high) / 2;
    if (high - low < 1e-7) return wetBulb;
    if (humidityRatioAtWick(dryBulb, wetBulb, pressure, isFrozen) > W) high = wetBulb;
    else low = wetBulb;
  }
  throw new Error(
    `The wet bulb at ${dryBulb} °C, ${relHum} was not found in 60 steps; last between ${low} and ${high} °C`,
  );
}

/** Enthalpy of moist air above dry air at 0 °C and liquid water at 0 °C.   @returns J per kg dry air */
export const enthalpyFromHumidityRatio = (dryBulb: number, humidityRatio: number): number =>
  1000 * (1.006 * dryBulb + humidityRatio * (2501 + 1.86 * dryBulb)); // eq. 30

/** Volume of moist air that holds 1 kg of dry air.   @returns m³ per kg dry air */
export const specificVolumeFromHumidityRatio = (
  dryBulb: number,
  humidityRatio: number,
  pressure = STANDARD_PRESSURE,
): number => (287.042 * (dryBulb + KELVIN) * (1 + 1.607858 * humidityRatio)) / pressure; // eq. 26, P in Pa

/** Density of moist air.   @returns kg moist air per m³ */
export const densityFromHumidityRatio = (
  dryBulb: number,
  humidityRatio: number,
  pressure = STANDARD_PRESSURE,
): number => (1 + humidityRatio) / specificVolumeFromHumidityRatio(dryBulb, humidityRatio, pressure); // eq. 11

/** Share of water in the moist air.   @returns kg water per kg moist air */
export const specificHumidityFromHumidityRatio = (humidityRatio: number): number =>
  humidityRatio / (1 + humidityRatio); // eq. 9

/** Absolute humidity: water vapour in a cubic metre.   @returns kg/m³   Source: ideal gas, 461.5 J/(kg K) */
export const absHumidityFromRelHum = (dryBulb: number, relHum: number): number =>
  vapourPressureFromRelHum(dryBulb, relHum) / (VAPOUR_GAS_CONSTANT * (dryBulb + KELVIN));

/** Usual air pressure at a height above the sea.   @param altitude m, −5000 to 11 000   @returns Pa   Source: eq. 3 */
export const pressureFromAltitude = (altitude: number): number =>
  STANDARD_PRESSURE * (1 - 2.25577e-5 * withinRange("altitude", altitude, "m", -5000, 11_000)) ** 5.2559;

/**
 * Magnus's form as the World Meteorological Organization gives it: short, for a display or a check by hand. It differs from the fit above
 * by 0.3 % at 25 °C, so the two never go into one balance. −45 to 60 °C over water (range from memory), −65 to 0.01 °C over ice.
 * Source: WMO-No. 8 annex 4.B; the ice constants from memory.
 */
export const magnusPressureOverWater = (dryBulb: number): number =>
  611.2 * Math.exp((17.62 * withinRange("temperature", dryBulb, "°C", -45, 60)) / (243.12 + dryBulb));

/** Magnus's form over ice, Pa; see `magnusPressureOverWater`. */
export const magnusPressureOverIce = (dryBulb: number): number =>
  611.2 *
  Math.exp((22.46 * withinRange("temperature", dryBulb, "°C", -65, TRIPLE_POINT)) / (272.62 + dryBulb));

/** Dew point over water by Magnus's form.   @param relHum above 0, to 1   @returns °C */
export function magnusDewPointFromRelHum(dryBulb: number, relHum: number): number {
  withinRange("temperature", dryBulb, "°C", -45, 60);
  withinRange("relative humidity", relHum, "1", Number.MIN_VALUE, 1);
  const g = Math.log(relHum) + (17.62 * dryBulb) / (243.12 + dryBulb);
  return (243.12 * g) / (17.62 - g);
}
