import { OutOfRange, withinRange } from "../physics/out-of-range.ts";

/* The last part of drying as a decaying exponential, w(t) = asymptote + amplitude·exp(−rate·t): a second opinion on the
 * drying model, from weighings alone. The asymptote is what the isotherm says of the room and is never fitted: on the hemlock
 * slab of Gilliland and Sherwood, a free fit returned 1.4 to 8.6 % where 6.6 % was true. Times h, contents kg/kg. */

export interface Weighed {
  readonly hours: number;
  /** kg/kg */
  readonly moistureContent: number;
}

export interface Tail {
  /** 1/h */
  readonly rate: number;
  /** kg/kg at hour 0 */
  readonly amplitude: number;
  readonly asymptote: number;
}

/** The tail through weighings, unweighted on the logarithm. Those at or below the asymptote say nothing and are left out.
 *  @returns null for fewer than two that count, or when they do not fall */
export function tailFromWeighings(weighed: readonly Weighed[], asymptote: number): Tail | null {
  const points = weighed.filter((each) => each.moistureContent > asymptote);
  const n = points.length;
  if (n < 2) return null;
  const logs = points.map((each) => Math.log(each.moistureContent - asymptote));
  const meanHours = points.reduce((sum, each) => sum + each.hours, 0) / n;
  const meanLog = logs.reduce((sum, each) => sum + each, 0) / n;
  const across = points.reduce((sum, each) => sum + (each.hours - meanHours) ** 2, 0);
  const along = points.reduce(
    (sum, each, i) => sum + (each.hours - meanHours) * ((logs[i] ?? 0) - meanLog),
    0,
  );
  const rate = -along / across;
  if (!(rate > 0)) return null;
  return { rate, amplitude: Math.exp(meanLog + rate * meanHours), asymptote };
}

/** Time still to go from a content to a target: ln((now − asymptote)/(target − asymptote))/rate, in the unit of 1/rate.
 *  @throws OutOfRange when the target lies at or below the asymptote: it is never reached */
export function timeToTarget(now: number, target: number, asymptote: number, rate: number): number {
  if (!(target > asymptote))
    throw new OutOfRange("target content", target, "kg/kg", asymptote, Number.POSITIVE_INFINITY);
  if (!(rate > 0)) throw new OutOfRange("rate", rate, "1/h", Number.MIN_VALUE, Number.POSITIVE_INFINITY);
  return now <= target ? 0 : Math.log((now - asymptote) / (target - asymptote)) / rate;
}

/** Diffusivity behind a tail of a plane sheet, D = 4 L² rate/π², m²/s.   @param depth half the thickness, m   @param rate 1/h */
export const diffusivityFromTail = (rate: number, depth: number): number =>
  (4 * depth ** 2 * rate) / Math.PI ** 2 / 3600;

/** Aitken's extrapolation of three evenly spaced weighings, (w0 w2 − w1²)/(w0 + w2 − 2 w1). To show what a fitted asymptote
 *  is worth, never to plan by: on (46.1, 26.4, 14.3) it returns −5.0 where 6.6 was true.
 *  @returns null when the three lie on a line */
export function aitkenAsymptote(w0: number, w1: number, w2: number): number | null {
  const bend = w0 + w2 - 2 * w1;
  return bend === 0 ? null : (w0 * w2 - w1 ** 2) / bend;
}

/** Dry matter and water of a damp mass, in its unit. @param moistureContent kg/kg of dry matter, 0 to 10 */
export function dryMassFromWet(wet: number, moistureContent: number): { dry: number; water: number } {
  const dry = wet / (1 + withinRange("moisture content", moistureContent, "kg/kg", 0, 10));
  return { dry, water: wet - dry };
}

/** Remaining time goes wrong by about this share, either way. Measured on the hemlock slab: 8 %. Common practice, no source. */
export const TAIL_BAND = 0.25;
/** Weighings a tail needs, how many steps of the scale they must span, and which part of the loss must be behind. */
export const TAIL_NEEDS = { weighings: 4, scaleSteps: 3, lossBehind: 0.5 } as const;
