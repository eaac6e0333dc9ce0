import { withinRange } from "../out-of-range.ts";
import { ethanolMassFromVolume, volumeFromEthanolMass } from "../solutions/ethanol-amounts.ts";
import { FLAMMABILITY } from "../solutions/ethanol-fire.ts";
import { milligramsFromPpm, ppmFromMilligrams } from "../solutions/ethanol-vapour.ts";

/* The air of a room: how long until dust or spores are out of it, how fast they settle, what a purifier adds, and how strong solvent
 * vapour gets. Rooms are one well-mixed zone. Rates 1/h, volumes m³, concentrations mg/m³, particles µm, times as named. */

export type RoomAirCaution =
  | "wipe-surfaces-after-waiting"
  | "nobody-stirs-while-waiting"
  | "mixing-is-a-guess"
  | "stronger-near-the-liquid"
  | "mask-does-not-stop-vapour"
  | "above-the-limit"
  | "can-burn-leave-the-room";

/** A room's air is not quite mixed: its air changes count 1/`mixingFactor`; 1 (perfect) to 10, usually 3 (common practice, no source). */
export interface Room {
  readonly volume: number;
  readonly airChangeRate: number;
  readonly mixingFactor: number;
}
export const USUAL_MIXING = 3;

/** Air changes that count, 1/h. */
function countedAirChanges({ volume, airChangeRate, mixingFactor }: Room): number {
  withinRange("volume of the room", volume, "m³", 1, 1e5);
  withinRange("air change rate", airChangeRate, "1/h", 0, 100);
  return airChangeRate / withinRange("mixing factor", mixingFactor, "1", 1, 10);
}

// ---------------------------------------------------------------------------------------------------- clearance

/** Minutes until a share of what floats in an empty room is out of it: t = −60·ln(1 − efficiency)/n, times the mixing factor.
 *  @param efficiency 0.1 to 0.9999, e.g. 0.99   @param airChangeRate above 0 to 100 1/h
 *  Source: CDC, MMWR 43 (1994) RR-13 table S3-1; Guidelines for environmental infection control (2003) table B.1. */
export function clearanceMinutesFrom(
  airChangeRate: number,
  efficiency: number,
  mixingFactor: number,
): number {
  withinRange("air change rate", airChangeRate, "1/h", 1e-3, 100);
  withinRange("share to clear", efficiency, "1", 0.1, 0.9999);
  withinRange("mixing factor", mixingFactor, "1", 1, 10);
  return (-60 * Math.log(1 - efficiency) * mixingFactor) / airChangeRate;
}

/** Air changes that a purifier stands for, 1/h.   @param cleanAirRate its clean air delivery rate (CADR, of dust), m³/h */
export const airChangesFromPurifier = (cleanAirRate: number, volume: number): number =>
  withinRange("clean air delivery rate", cleanAirRate, "m³/h", 0, 1e5) /
  withinRange("volume of the room", volume, "m³", 1, 1e5);

/** m³/h of a rate in cubic feet a minute. */
export const cubicMetresPerHourFromCfm = (cfm: number): number => cfm * 0.3048 ** 3 * 60;

// ---------------------------------------------------------------------------------------------------- settling

/** Mean free path in air, µm, and viscosity at 20 °C, Pa s. Source: Seinfeld and Pandis (2006), ch. 9. */
export const MEAN_FREE_PATH = 0.066;
export const AIR_VISCOSITY = 1.81e-5;
const GRAVITY = 9.81; // m/s²

/** Spores of Penicillium, Aspergillus and Cladosporium in buildings peak at 2.1 to 3.3 µm aerodynamic diameter.
 *  Source: Reponen (1995). Default of ours: 2.5 µm, unit density. */
export const SPORE_DIAMETER = 2.5;

/** Slip correction: Cc = 1 + (2λ/d)(1.257 + 0.400·exp(−1.1·d/(2λ))).
 *  @param diameter µm, 0.05 to 30   Source: Seinfeld and Pandis (2006), eq. 9.34; their table 9.3 lies 0.2 % below. */
export function slipFromDiameter(diameter: number, meanFreePath = MEAN_FREE_PATH): number {
  withinRange("particle diameter", diameter, "µm", 0.05, 30);
  const ratio = (2 * meanFreePath) / diameter;
  return 1 + ratio * (1.257 + 0.4 * Math.exp(-1.1 / ratio));
}

export interface Particle {
  /** µm, 0.05 to 30; beyond, Stokes's law no longer holds. */
  readonly diameter: number;
  /** kg/m³; 1000 for an aerodynamic diameter. */
  readonly density?: number;
  readonly viscosity?: number;
  readonly slip?: number;
  readonly gravity?: number;
}

/** Settling velocity, m/s: v = ρ·d²·g·Cc/(18·µ).   Source: Seinfeld and Pandis (2006), eq. 9.42 (Stokes). */
export function settlingVelocityFrom(particle: Particle): number {
  const { diameter, density = 1000, viscosity = AIR_VISCOSITY, gravity = GRAVITY } = particle;
  const Cc = particle.slip ?? slipFromDiameter(diameter);
  const d = withinRange("particle diameter", diameter, "µm", 0.05, 30) * 1e-6; // m
  return (withinRange("density", density, "kg/m³", 1, 20_000) * d ** 2 * gravity * Cc) / (18 * viscosity);
}

/** Hours to fall a height in still air. */
export const stillAirHoursFrom = (velocity: number, height: number): number =>
  withinRange("height", height, "m", 0.1, 50) / velocity / 3600;
/** Removal rate by settling in stirred air, 1/h: v/H. */
export const settlingRateFrom = (velocity: number, height: number): number =>
  (3600 * velocity) / withinRange("height", height, "m", 0.1, 50);

/** Shortest wait before going back in, minutes. Common practice, no source. */
export const LEAST_WAIT = 30;

export interface Wait {
  /** Removal rate, 1/h. */
  readonly rate: number;
  /** Minutes until 99 and 99.9 % are gone. */
  readonly minutes99: number;
  readonly minutes999: number;
  /** What to keep: the 99 % time, at least `LEAST_WAIT`. */
  readonly waitMinutes: number;
  readonly cautions: readonly RoomAirCaution[];
}

/** How long to stay out after dusty work: k = (n + CADR/V)/mixing + v/H.
 *  @param room its own air changes   @param of height m; cleanAirRate m³/h of purifiers; diameter µm, of spores unless given */
export function reentryWaitFrom(
  room: Room,
  of: { height: number; cleanAirRate?: number; diameter?: number },
): Wait {
  const purifier = airChangesFromPurifier(of.cleanAirRate ?? 0, room.volume) / room.mixingFactor;
  const settling = settlingRateFrom(
    settlingVelocityFrom({ diameter: of.diameter ?? SPORE_DIAMETER }),
    of.height,
  );
  const rate = countedAirChanges(room) + purifier + settling;
  const minutes99 = (60 * Math.log(100)) / rate;
  return {
    rate,
    minutes99,
    minutes999: (60 * Math.log(1000)) / rate,
    waitMinutes: Math.max(LEAST_WAIT, minutes99),
    cautions: ["wipe-surfaces-after-waiting", "nobody-stirs-while-waiting", "mixing-is-a-guess"],
  };
}

// ---------------------------------------------------------------------------------------------------- vapour in a room

/** (1 − e^−x)/x, which is 1 at 0. */
const meanOfDecay = (x: number): number => (x === 0 ? 1 : -Math.expm1(-x) / x);

/** All at once: C(t) = (m/V)·e^(−n·t), with its mean over a time.   V·dC/dt = −Q·C, Q = n·V/mixing.
 *  @param milligrams released   @param hours 0 or more   @returns mg/m³ */
export function vapourFromRelease(room: Room, milligrams: number, hours: number) {
  const n = countedAirChanges(room);
  const first = withinRange("mass released", milligrams, "mg", 0, 1e9) / room.volume;
  withinRange("hours", hours, "h", 0, 1000);
  return { first, last: first * Math.exp(-n * hours), mean: first * meanOfDecay(n * hours) };
}

/** Steady use: C(t) = G/(n·V)·(1 − e^(−n·t)); steady G/(n·V), infinite in a room without air change.
 *  @param milligramsPerHour given off   @returns mg/m³ */
export function vapourFromSteadyUse(room: Room, milligramsPerHour: number, hours: number) {
  const n = countedAirChanges(room);
  withinRange("hours", hours, "h", 0, 1000);
  const G = withinRange("rate given off", milligramsPerHour, "mg/h", 0, 1e9);
  const steady = G === 0 ? 0 : G / (n * room.volume);
  return { steady, last: ((G * hours) / room.volume) * meanOfDecay(n * hours) };
}

/** The same wipe again and again: mean over the whole time, and the highest peak, mg/m³.
 *  @param of milligrams each; everyHours between; times 1 to 1000 */
export function vapourFromWipes(room: Room, of: { milligrams: number; everyHours: number; times: number }) {
  const times = withinRange("number of wipes", Math.round(of.times), "1", 1, 1000);
  const whole = times * withinRange("hours between wipes", of.everyHours, "h", 1e-3, 24);
  const each = Array.from({ length: times }, (_, i) =>
    vapourFromRelease(room, of.milligrams, whole - i * of.everyHours),
  );
  const mean = each.reduce((sum, wipe, i) => sum + wipe.mean * (whole - i * of.everyHours), 0) / whole;
  const fresh = vapourFromRelease(room, of.milligrams, 0).first;
  const left = Array.from(
    { length: times },
    (_, i) => vapourFromRelease(room, of.milligrams, i * of.everyHours).last,
  );
  return { mean, peak: times === 1 ? fresh : left.reduce((sum, one) => sum + one, 0) };
}

/** A tenth of the lower explosive limit, mg/m³: from here up, leave the room. NIOSH's danger to life and health for ethanol. */
export const dangerFrom = (dryBulb: number): number =>
  milligramsFromPpm(1e5 * FLAMMABILITY.lowerLimit, dryBulb);

/** What a solution wiped out (or spilt and wholly evaporated) at one time does to the room.
 *  @param of volume mL of the strength by volume; limit mg/m³ over hours; dryBulb, 20 °C unless given */
export function ethanolInRoom(
  room: Room,
  of: { volume: number; volumeFraction: number; limit: number; hours: number; dryBulb?: number },
) {
  const mass = ethanolMassFromVolume(of.volume, of.volumeFraction); // g
  const { first, mean } = vapourFromRelease(room, 1000 * mass, of.hours);
  const danger = dangerFrom(of.dryBulb ?? 20);
  const cautions: RoomAirCaution[] = [
    "stronger-near-the-liquid",
    "mask-does-not-stop-vapour",
    "mixing-is-a-guess",
  ];
  if (mean > withinRange("limit", of.limit, "mg/m³", 1, 1e5)) cautions.unshift("above-the-limit");
  if (first >= danger) cautions.unshift("can-burn-leave-the-room");
  return {
    mass,
    first,
    firstPpm: ppmFromMilligrams(first, of.dryBulb ?? 20),
    mean,
    shareOfLowerLimit: first / (10 * danger),
    cautions,
  };
}

/** Most solution to have out at one time, mL: all of it in the air would reach a tenth of the lower explosive limit. */
export const mostSolutionAtOnce = (room: Room, volumeFraction: number, dryBulb = 20): number =>
  volumeFromEthanolMass((dangerFrom(dryBulb) * room.volume) / 1000, volumeFraction);

/** Most solution to use an hour, mL, for the steady vapour to stay at a limit.   @param limit mg/m³ */
export const mostSolutionPerHour = (room: Room, volumeFraction: number, limit: number): number =>
  volumeFromEthanolMass(
    (withinRange("limit", limit, "mg/m³", 1, 1e5) * countedAirChanges(room) * room.volume) / 1000,
    volumeFraction,
  );
