import { GAB_ROWS, gabIsotherm } from "./gab-isotherm.ts";
import type { Isotherm, SorptionCaution } from "./isotherm.ts";
import { woodMoistureContentFromRelHum, woodRelHumFromMoistureContent, woodSlope } from "./wood-isotherm.ts";

export type SorbentMaterial =
  | "newsprint"
  | "writingPaper"
  | "ragPaper"
  | "kraft"
  | "leather"
  | "parchment"
  | "emulsion"
  | "palmLeaf"
  | "wood"
  | "cotton"
  | "jute";

const DRYING: readonly SorptionCaution[] = ["never-dry-by-weight-alone"];
const RECALLED: readonly SorptionCaution[] = [...DRYING, "isotherm-from-memory"];

const woodCurve = (material: string, cautions: readonly SorptionCaution[]): Isotherm => ({
  material,
  moistureContentFromRelHum: woodMoistureContentFromRelHum,
  relHumFromMoistureContent: woodRelHumFromMoistureContent,
  slope: woodSlope,
  cautions,
});

/** The curve to use for each material. No isotherm of palm leaf, parchment, emulsion or historic leather was found to read:
 *  those are stand-ins and say so. Palm leaf goes by wood; jute, a coarse plant fibre, lies up to a tenth above it at 50 %. */
export const ISOTHERMS: Readonly<Record<SorbentMaterial, Isotherm>> = {
  newsprint: gabIsotherm("newsprint", GAB_ROWS.newsprint, RECALLED),
  writingPaper: gabIsotherm("writing paper", GAB_ROWS.writingPaper, RECALLED),
  ragPaper: gabIsotherm("rag paper", GAB_ROWS.ragPaper, RECALLED),
  kraft: gabIsotherm("kraft paper", GAB_ROWS.kraft, RECALLED),
  leather: gabIsotherm("leather", GAB_ROWS.leather, [...RECALLED, "leather-by-modern-sole-leather"]),
  parchment: gabIsotherm("parchment", GAB_ROWS.catgut, [...RECALLED, "parchment-by-catgut"]),
  emulsion: gabIsotherm("photographic emulsion", GAB_ROWS.catgut, [...RECALLED, "emulsion-by-hide-collagen"]),
  palmLeaf: woodCurve("palm leaf", [...DRYING, "palm-leaf-by-wood"]),
  wood: woodCurve("wood", DRYING),
  cotton: gabIsotherm("cotton cloth", GAB_ROWS.cotton, RECALLED),
  jute: gabIsotherm("jute", GAB_ROWS.jute, RECALLED),
};
