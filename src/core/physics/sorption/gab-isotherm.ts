import { fraction, held, room } from "./_internals/sorption-ranges.ts";
import { type Isotherm, MOST_RELHUM, type SorptionCaution } from "./isotherm.ts";

/** Guggenheim-Anderson-de Boer curve: `m0` monolayer content (kg/kg), `C` and `K` without unit. */
export interface GabRow {
  readonly m0: number;
  readonly C: number;
  readonly K: number;
}

/** kg/kg. @param relHum 0 to `MOST_RELHUM` */
export function moistureContentFromGab(row: GabRow, relHum: number): number {
  const { m0, C, K } = row;
  const a = fraction(relHum);
  return (m0 * C * K * a) / ((1 - K * a) * (1 - K * a + C * K * a));
}

/** The root in (0, 1) of K²(1−C)a² + [K(C−2) − m0·C·K/u]a + 1 = 0. @throws OutOfRange above what the row holds at `MOST_RELHUM` */
export function relHumFromGab(row: GabRow, moistureContent: number): number {
  const { m0, C, K } = row;
  const u = held(moistureContent, moistureContentFromGab(row, MOST_RELHUM));
  if (u === 0) return 0;
  const a2 = K * K * (1 - C);
  const a1 = K * (C - 2) - (m0 * C * K) / u;
  return 2 / (-a1 + Math.sqrt(a1 * a1 - 4 * a2)); // the form that stands for C = 1 too
}

/** du/da of the GAB curve, kg/kg per 1. */
export function slopeFromGab(row: GabRow, relHum: number): number {
  const { m0, C, K } = row;
  const a = fraction(relHum);
  const denominator = (1 - K * a) * (1 - K * a + C * K * a);
  return (m0 * C * K * (1 - (1 - C) * K * K * a * a)) / (denominator * denominator);
}

/** GAB rows fitted by least squares to the handbook table "Regain of hygroscopic materials" (International Critical Tables,
 *  repeated in ASHRAE Fundamentals), 24 °C, 10 to 90 %; the table itself is from memory, and the fit is ours.
 *  Root mean square of the fit, % of dry mass: see `rms`. */
export const GAB_ROWS = {
  newsprint: { m0: 0.038111, C: 14.5621, K: 0.7254, rms: 0.07 },
  writingPaper: { m0: 0.052203, C: 13.6542, K: 0.7211, rms: 0.09 },
  ragPaper: { m0: 0.046714, C: 11.9614, K: 0.7345, rms: 0.06 }, // white bond, the default of book paper
  kraft: { m0: 0.056047, C: 14.2961, K: 0.7122, rms: 0.1 },
  leather: { m0: 0.132159, C: 8.7884, K: 0.641, rms: 0.31 }, // sole leather, oak tanned
  catgut: { m0: 0.108157, C: 8.9517, K: 0.6161, rms: 0.49 }, // untanned collagen
  gelatin: { m0: 0.090903, C: 1.6134, K: 0.5598, rms: 0.08 },
  cotton: { m0: 0.034758, C: 31.4364, K: 0.8398, rms: 0.22 },
  jute: { m0: 0.091481, C: 6.2818, K: 0.6596, rms: 0.09 },
  wood: { m0: 0.073847, C: 5.8229, K: 0.767, rms: 0.19 },
} as const satisfies Readonly<Record<string, GabRow & { rms: number }>>;

/** A curve of one GAB row; temperature is checked and otherwise left out, as the row knows one temperature only. */
export function gabIsotherm(material: string, row: GabRow, cautions: readonly SorptionCaution[]): Isotherm {
  return {
    material,
    moistureContentFromRelHum: (relHum, dryBulb) => (room(dryBulb), moistureContentFromGab(row, relHum)),
    relHumFromMoistureContent: (content, dryBulb) => (room(dryBulb), relHumFromGab(row, content)),
    slope: (relHum, dryBulb) => (room(dryBulb), slopeFromGab(row, relHum)),
    cautions,
  };
}
