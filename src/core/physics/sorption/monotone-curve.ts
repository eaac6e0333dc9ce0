import { OutOfRange } from "../out-of-range.ts";

export interface MonotoneCurve {
  readonly at: (x: number) => number;
  readonly slopeAt: (x: number) => number;
}

/** A smooth curve through points that never turns back between them (piecewise cubic).
 *  Source: Fritsch and Carlson, Monotone piecewise cubic interpolation, SIAM J. Numer. Anal. 17 (1980); slopes at the points
 *  by Fritsch and Butland's harmonic mean, which needs no second pass (from memory).
 *  @param xs strictly rising   @throws RangeError when they are not; OutOfRange when asked outside the points */
export function monotoneCurve(
  xs: readonly number[],
  ys: readonly number[],
  what: string,
  unit: string,
): MonotoneCurve {
  const steps = xs.slice(1).map((x, i) => piece(xs[i], x, ys[i], ys[i + 1]));
  if (steps.length === 0 || xs.length !== ys.length || steps.some((step) => !(step.width > 0)))
    throw new RangeError(`points of ${what} must rise: got ${xs.join(", ")}`);
  const slopes = pointSlopes(steps);
  const find = (x: number) => {
    const low = steps[0]?.x0 ?? 0;
    const high = xs.at(-1) ?? 0;
    if (!(x >= low && x <= high)) throw new OutOfRange(what, x, unit, low, high);
    const after = steps.findIndex((step) => x <= step.x0 + step.width);
    const at = after < 0 ? steps.length - 1 : after;
    const step = steps[at] ?? piece(0, 1, 0, 0);
    return { step, t: (x - step.x0) / step.width, d0: slopes[at] ?? 0, d1: slopes[at + 1] ?? 0 };
  };
  return { at: (x) => hermite(find(x)), slopeAt: (x) => hermiteSlope(find(x)) };
}

interface Piece {
  readonly x0: number;
  readonly width: number;
  readonly y0: number;
  readonly y1: number;
  readonly secant: number;
}
interface Spot {
  readonly step: Piece;
  readonly t: number;
  readonly d0: number;
  readonly d1: number;
}

function piece(x0 = Number.NaN, x1 = Number.NaN, y0 = Number.NaN, y1 = Number.NaN): Piece {
  return { x0, width: x1 - x0, y0, y1, secant: (y1 - y0) / (x1 - x0) };
}

function pointSlopes(steps: readonly Piece[]): number[] {
  const inner = steps.slice(1).map((right, i) => {
    const left = steps[i] ?? right;
    if (left.secant * right.secant <= 0) return 0;
    const w1 = 2 * right.width + left.width;
    const w2 = right.width + 2 * left.width;
    return (w1 + w2) / (w1 / left.secant + w2 / right.secant);
  });
  return [steps[0]?.secant ?? 0, ...inner, steps.at(-1)?.secant ?? 0];
}

function hermite({ step, t, d0, d1 }: Spot): number {
  const rise = step.y0 * (1 + 2 * t) * (1 - t) ** 2 + step.y1 * t * t * (3 - 2 * t);
  return rise + step.width * (d0 * t * (1 - t) ** 2 - d1 * t * t * (1 - t));
}

function hermiteSlope({ step, t, d0, d1 }: Spot): number {
  return 6 * t * (1 - t) * step.secant + d0 * (1 - t) * (1 - 3 * t) + d1 * t * (3 * t - 2);
}
