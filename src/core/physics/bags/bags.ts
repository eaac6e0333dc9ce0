import { absHumidityFromRelHum, satVapourPressure, vapourPressureFromRelHum } from "../air/moist-air.ts";
import { withinRange } from "../out-of-range.ts";

/* Films, bags and boxes: how fast water comes through, and how long air and content take to follow the room.
 * Permeance g/(m² day Pa), transmission g/(m² day), areas m², volumes m³, thickness mm, relative humidity a fraction, °C. */

export type BagCaution =
  | "bag-does-not-dry"
  | "film-figure-is-a-band"
  | "film-colder-is-estimated"
  | "measure-the-box";

export interface Band {
  readonly low: number;
  readonly high: number;
}

const KELVIN = 273.15;
const VAPOUR_GAS_CONSTANT = 461.5; // J/(kg K)
const GAS_CONSTANT = 8.314462; // J/(mol K)

// ---------------------------------------------------------------------------------------------------- films

/** 1 g·mil/(100 in²·day) in g·mm/(m²·day): 0.0254 mm by 0.064516 m². */
export const GRAM_MIL_PER_100_SQUARE_INCHES = 0.0254 / 0.064516;

/** Water-vapour transmission at 38 °C and 90 % of a film 1 mil thick, g·mil/(100 in²·day).
 *  Source: Biosystems Engineering, chapter on food packages, table 11.2. */
export const FILMS = {
  LDPE: { low: 1, high: 2 },
  HDPE: { low: 0.3, high: 0.6 },
  "PP unoriented": { low: 0.6, high: 0.7 },
  "PP oriented": { low: 0.2, high: 0.5 },
  PET: { low: 1, high: 2 },
  PVDC: { low: 0.02, high: 0.6 },
  "nylon 6": { low: 10, high: 20 },
} as const satisfies Readonly<Record<string, Band>>;
export type Film = keyof typeof FILMS;

/** Transmission of a film of that thickness at 38 °C and 90 %, g/(m² day): in proportion to 1/thickness.   @param thickness mm, 0.01 to 1 */
export function transmissionFromThickness(film: Film, thickness: number) {
  const perMillimetre =
    GRAM_MIL_PER_100_SQUARE_INCHES / withinRange("film thickness", thickness, "mm", 0.01, 1);
  const { low, high } = FILMS[film];
  return {
    low: low * perMillimetre,
    high: high * perMillimetre,
    cautions: ["film-figure-is-a-band"] as const,
  };
}

/** Measured films, g/(m² day). Source: guideline values with DIN 55474, as a supplier gives them; the laminate is an upper limit,
 *  and 0.1 is the least to reckon with. */
export const MEASURED_FILMS = [
  { film: "LD-PE 0.2 mm", dryBulb: 20, relHum: 0.85, transmission: 0.4 },
  { film: "LD-PE 0.2 mm", dryBulb: 38, relHum: 0.9, transmission: 2 },
  { film: "aluminium laminate", dryBulb: 38, relHum: 0.9, transmission: 0.1 },
] as const;

/** Π = WVTR/(φ·psat): the transmission was measured with dry air behind the film.   @returns g/(m² day Pa) */
export const permeanceFromTransmission = (transmission: number, dryBulb: number, relHum: number): number =>
  withinRange("film transmission", transmission, "g/(m² day)", 0, 1e4) / driving(dryBulb, relHum);
/** The inverse. @returns g/(m² day) */
export const transmissionFromPermeance = (permeance: number, dryBulb: number, relHum: number): number =>
  permeance * driving(dryBulb, relHum);

function driving(dryBulb: number, relHum: number): number {
  withinRange("relative humidity", relHum, "1", 0.01, 1);
  return vapourPressureFromRelHum(dryBulb, relHum); // Pa
}

/** Permeability of low-density polyethylene to water at 25 °C, cm³(STP)·cm/(cm²·s·Pa). Polymer Handbook, from memory. */
export const LDPE_PERMEABILITY = 6.8e-12;
const WATER_GRAMS_PER_STP_CM3 = 18.015 / 22_414;

/** Permeance of a film from a handbook permeability.
 *  @param permeability cm³(STP)·cm/(cm²·s·Pa)   @param thickness mm   @returns g/(m² day Pa) */
export function permeanceFromPermeability(permeability: number, thickness: number): number {
  const centimetres = withinRange("film thickness", thickness, "mm", 0.01, 1) / 10;
  const cubicCentimetres = (permeability / centimetres) * 86_400 * 1e4; // a day, a square metre
  return cubicCentimetres * WATER_GRAMS_PER_STP_CM3;
}

/** Activation energy of a film's permeance, kJ/mol: 21.5 from the two measured points of LD-PE, 33.5 by handbook (from memory). */
export const FILM_ACTIVATION = { low: 21, high: 34 } as const;

/** A permeance at another temperature, as a band: Π·exp[−Ea/R·(1/TK − 1/Tref)].
 *  @param fromDryBulb, toDryBulb −20 to 60 °C   @returns g/(m² day Pa), low ≤ high */
export function permeanceFromWarming(permeance: number, fromDryBulb: number, toDryBulb: number) {
  const [from, to] = [fromDryBulb, toDryBulb].map(
    (dryBulb) => withinRange("dry bulb", dryBulb, "°C", -20, 60) + KELVIN,
  ) as [number, number]; // a list of two stays a list of two
  const by = (activation: number): number =>
    permeance * Math.exp(((-activation * 1000) / GAS_CONSTANT) * (1 / to - 1 / from));
  const ends = [by(FILM_ACTIVATION.low), by(FILM_ACTIVATION.high)];
  return { low: Math.min(...ends), high: Math.max(...ends), cautions: ["film-colder-is-estimated"] as const };
}

// ---------------------------------------------------------------------------------------------------- how long a bag takes

/** Time constant of the air in an empty bag, h: τ = V/(Rv·TK)/(A·Π), vapour well mixed.
 *  @param area m² of film   @param volume m³ of air */
export function airTimeConstantFromFilm(
  permeance: number,
  area: number,
  volume: number,
  dryBulb: number,
): number {
  const gramsPerPascal = (1000 * volume) / (VAPOUR_GAS_CONSTANT * (roomTemperature(dryBulb) + KELVIN));
  return (24 * gramsPerPascal) / passing(permeance, area);
}

/** Time constant of a content that holds nearly all the water, days: τ = m·ξ/psat/(A·Π), and its half-time.
 *  @param dryMass kg   @param slope ξ = d(moistureContent)/d(relHum), kg/kg per 1, from its isotherm */
export function contentTimeConstantFromFilm(
  permeance: number,
  area: number,
  dryMass: number,
  slope: number,
  dryBulb: number,
) {
  const gramsPerPascal = (1000 * dryMass * slope) / satVapourPressure(roomTemperature(dryBulb));
  const days = gramsPerPascal / passing(permeance, area);
  return {
    days,
    halfDays: days * Math.LN2,
    cautions: ["bag-does-not-dry", "film-figure-is-a-band"] as const,
  };
}

/** Time constant of air that leaks through seams and gaps, h.   @param airChangeRate 1/h */
export const leakTimeConstantFrom = (airChangeRate: number): number =>
  1 / withinRange("air change rate", airChangeRate, "1/h", 1e-6, 100);

function passing(permeance: number, area: number): number {
  withinRange("permeance", permeance, "g/(m² day Pa)", 1e-9, 1);
  return permeance * withinRange("film area", area, "m²", 1e-4, 1000); // g/(day Pa)
}

const roomTemperature = (dryBulb: number): number => withinRange("dry bulb", dryBulb, "°C", -20, 60);

// ---------------------------------------------------------------------------------------------------- leaks

export interface Enclosure {
  /** m² of film and its permeance; 0 for a rigid box. */
  readonly area: number;
  readonly permeance: number;
  /** m³, and air changes a day through seams. */
  readonly volume: number;
  readonly airChangesPerDay: number;
}

/** Water that enters (negative: leaves) an enclosure held at a relative humidity, kg:
 *  A·Π·(p_out − p_in)·t + N·V·(ρ_out − ρ_in)·t.   @param days 0 to 3660 */
export function leakMass(
  enclosure: Enclosure,
  room: { dryBulb: number; relHum: number },
  relHum: number,
  days: number,
) {
  withinRange("days", days, "days", 0, 3660);
  const { dryBulb } = room;
  const difference =
    vapourPressureFromRelHum(dryBulb, room.relHum) - vapourPressureFromRelHum(dryBulb, relHum); // Pa
  const throughFilm = (enclosure.area * enclosure.permeance * difference) / 1000; // kg/day
  const density = absHumidityFromRelHum(dryBulb, room.relHum) - absHumidityFromRelHum(dryBulb, relHum); // kg/m³
  return (throughFilm + enclosure.airChangesPerDay * enclosure.volume * density) * days;
}

/** Relative humidity in an empty box after a time, air well mixed: dφ/dt = N(φ_room − φ).
 *  @param airChangeRate 1/h   @param hours 0 or more */
export function relHumFromAirExchange(
  relHum: number,
  roomRelHum: number,
  airChangeRate: number,
  hours: number,
): number {
  checkExchange(relHum, roomRelHum, airChangeRate, hours);
  return roomRelHum + (relHum - roomRelHum) * Math.exp(-airChangeRate * hours);
}

/** The same counted in whole hours, as printed in Padfield's example (10, 19, 27 % after 1, 2, 3 h at a tenth an hour).
 *  It runs ahead of the exchange that never pauses (9.52, 18.13, 25.92).   @param airChangeRate a share each hour, 0 to 1 */
export function relHumFromHourlyExchange(
  relHum: number,
  roomRelHum: number,
  airChangeRate: number,
  hours: number,
): number {
  checkExchange(
    relHum,
    roomRelHum,
    withinRange("share exchanged each hour", airChangeRate, "1", 0, 1),
    hours,
  );
  return roomRelHum + (relHum - roomRelHum) * (1 - airChangeRate) ** hours;
}

function checkExchange(relHum: number, roomRelHum: number, airChangeRate: number, hours: number): void {
  withinRange("relative humidity", relHum, "1", 0, 1);
  withinRange("relative humidity of the room", roomRelHum, "1", 0, 1);
  withinRange("air change rate", airChangeRate, "1/h", 0, 100);
  withinRange("hours", hours, "h", 0, 1e6);
}

/** Air changes of a closed box from the fall of carbon dioxide in it: N = ln[(c0 − c_room)/(c_t − c_room)]/t.
 *  Method: Canadian Conservation Institute, Technical Bulletin 38 (abstract seen).
 *  @param of concentrations in ppm, first above last above room   @returns in 1/`time`'s unit */
export function airChangeRateFromCo2(of: {
  first: number;
  last: number;
  room: number;
  time: number;
}): number {
  withinRange("last concentration", of.last, "ppm", of.room + 1e-9, of.first);
  withinRange("time", of.time, "1", 1e-9, 1e9);
  return Math.log((of.first - of.room) / (of.last - of.room)) / of.time;
}

/** Air changes a day of display cases: good ones 0.1 to 1 (common practice, no source); Thomson designed for 1 (as quoted by
 *  Calver, 2010). Loose cardboard boxes change far more air; no table of boxes was found to read. */
export const CASE_AIR_CHANGES = { low: 0.1, high: 1, designed: 1, cautions: ["measure-the-box"] } as const; // 1/day
