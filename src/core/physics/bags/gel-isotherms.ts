import { satVapourPressure } from "../air/moist-air.ts";
import { withinRange } from "../out-of-range.ts";

/* What silica gel holds. Relative humidity a fraction, contents kg water per kg dry gel, temperature °C. */

/** Which way the gel got its water: taking it up, or giving it off. */
export type Branch = "adsorption" | "desorption";
export interface GelPoints {
  readonly relHums: readonly number[];
  readonly contents: readonly number[];
}

/** Regular-density gel RD-2560 at 25 °C, measured. Source: Thu et al., Applied Thermal Engineering 50 (2013) 1596, figure points on
 *  knots of 5 %, (0, 0) added to the adsorption row. Straight lines between the knots, as the source was read. */
export const MEASURED_GEL: Readonly<Record<Branch, GelPoints>> = {
  adsorption: {
    relHums: [0, 0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6, 0.65, 0.7, 0.75, 0.8, 0.85, 0.9],
    contents: [
      0, 0.0784, 0.1015, 0.1278, 0.1559, 0.1859, 0.2152, 0.2441, 0.2703, 0.293, 0.3101, 0.3213, 0.3301,
      0.3357, 0.3421, 0.3468, 0.3536, 0.3599,
    ],
  },
  desorption: {
    relHums: [0.1, 0.15, 0.2, 0.25, 0.3, 0.35, 0.4, 0.45, 0.5, 0.55, 0.6, 0.65, 0.7, 0.75, 0.8, 0.85, 0.9],
    contents: [
      0.0942, 0.1186, 0.1466, 0.1763, 0.2075, 0.2731, 0.3052, 0.3133, 0.3207, 0.327, 0.3331, 0.3388, 0.3441,
      0.3492, 0.3538, 0.358, 0.3609,
    ],
  },
};

/** A second gel at 25 °C, by vapour pressure (Pa). Source: Wang and LeVan, J. Chem. Eng. Data 54 (2009) 2839, table. */
export const SECOND_GEL = {
  vapourPressures: [27.1, 88.9, 408, 941, 1600, 2430],
  contents: [0.01765, 0.03729, 0.09566, 0.1874, 0.2792, 0.3405],
} as const;

/** What regular-density gel holds at rest, kg/kg. Between 10 and 35 °C it goes by relative humidity alone (3 % in 10 K).
 *  Above 90 % it is held at its last point: the gel is full.   @param relHum 0 to 1 */
export function gelContentFromRelHum(relHum: number, branch: Branch = "adsorption"): number {
  const { relHums, contents } = pointsFromZero(branch);
  return straight(relHums, contents, withinRange("relative humidity", relHum, "1", 0, 1));
}

/** The relative humidity at which gel of that content rests, e.g. from its weight.
 *  @param content 0 to what the gel holds at 90 %   @throws OutOfRange beyond */
export function relHumFromGelContent(content: number, branch: Branch = "adsorption"): number {
  const { relHums, contents } = pointsFromZero(branch);
  return straight(contents, relHums, withinRange("gel content", content, "kg/kg", 0, contents.at(-1) ?? 0));
}

/** A measured row from quite dry gel on. */
function pointsFromZero(branch: Branch): GelPoints {
  const row = MEASURED_GEL[branch];
  return row.relHums[0] === 0 ? row : { relHums: [0, ...row.relHums], contents: [0, ...row.contents] };
}

/** What the second gel holds. @param vapourPressure 27.1 to 2430 Pa, at 25 °C */
export function secondGelContentFromVapourPressure(vapourPressure: number): number {
  const { vapourPressures, contents } = SECOND_GEL;
  withinRange("vapour pressure", vapourPressure, "Pa", vapourPressures[0], 2430);
  return straight(vapourPressures, contents, vapourPressure);
}

/** Straight lines between rising points, the last held beyond its end. */
function straight(xs: readonly number[], ys: readonly number[], x: number): number {
  const after = xs.findIndex((each, i) => i > 0 && x <= each);
  const [x0, x1, y0, y1] = [xs[after - 1], xs[after], ys[after - 1], ys[after]];
  if (x0 === undefined || x1 === undefined || y0 === undefined || y1 === undefined)
    return ys.at(-1) ?? Number.NaN;
  return y0 + (y1 - y0) * ((x - x0) / (x1 - x0));
}

const KELVIN = 273.15;
const GAS_CONSTANT = 8.314462; // J/(mol K)

/** Tóth fit of Fuji RD gel, made for low vapour pressure: above 40 % it over-reads (0.363 where 0.293 was measured at 50 %).
 *  w = 0.45·b·p/(1 + (b·p)¹²)^(1/12).   Source: Chua et al., Int. J. Heat Mass Transfer 47 (2004) 659.   @param vapourPressure Pa */
export function tothContentFromVapourPressure(vapourPressure: number, dryBulb: number): number {
  const b = 1.62222e-12 * Math.exp(5835.03 / (withinRange("dry bulb", dryBulb, "°C", 0, 90) + KELVIN)); // 1/Pa
  const bp = b * withinRange("vapour pressure", vapourPressure, "Pa", 0, satVapourPressure(dryBulb));
  return (0.45 * bp) / (1 + bp ** 12) ** (1 / 12);
}

/** `W0` kg/kg, `E` J/mol, `n` without unit. */
export interface DubininRow {
  readonly W0: number;
  readonly E: number;
  readonly n: number;
}
/** Sources: Thu et al. 2013 (3.27e-4 m³/kg of water of 997.05 kg/m³); Sapienza et al., Renewable Energy 110 (2017) 40. */
export const DUBININ_ROWS = {
  rd2560: { W0: 3.27e-4 * 997.05, E: 4384, n: 1.35 },
  siogel: { W0: 0.38, E: 3962.2, n: 1.1 },
} as const satisfies Readonly<Record<string, DubininRow>>;

/** Dubinin-Astakhov: w = W0·exp[−(A/E)ⁿ], A = R·T·ln(1/φ); within about 14 % of what was measured.   @param relHum above 0, to 1 */
export function dubininContentFromRelHum(row: DubininRow, relHum: number, dryBulb: number): number {
  withinRange("relative humidity", relHum, "1", 1e-6, 1);
  const A = GAS_CONSTANT * (withinRange("dry bulb", dryBulb, "°C", 0, 90) + KELVIN) * Math.log(1 / relHum);
  return row.W0 * Math.exp(-((A / row.E) ** row.n));
}

/** Freundlich fit of Fuji A gel: w = 0.346·φ^0.625, within about 18 %.   Source: Sakoda and Suzuki (1984).   @param relHum 0 to 1 */
export const freundlichContentFromRelHum = (relHum: number): number =>
  0.346 * withinRange("relative humidity", relHum, "1", 0, 1) ** 0.625;
