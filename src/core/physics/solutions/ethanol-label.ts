import { flashPointFromVolumeFraction, isHighlyFlammable } from "./ethanol-fire.ts";

/** What a label of ethanol in water must tell: pictograms and statements by their codes of the globally harmonised system. */
export interface EthanolHazards {
  readonly signal: "danger" | "warning" | null;
  readonly pictograms: readonly ("GHS02" | "GHS07")[];
  readonly hazards: readonly ("H225" | "H226" | "H319")[];
  readonly precautions: readonly ("P210" | "P233" | "P305" | "P403")[];
}

/** °C. Flammable liquids: category 2 flashes below 23, category 3 up to 60. CLP Regulation (EC) 1272/2008, annex I, table 2.6.1: from memory. */
const CATEGORY_2_BELOW = 23;
const CATEGORY_3_TO = 60;
/** From this strength up it is said to irritate eyes: the general limit for mixtures, CLP annex I, table 3.3.3, from memory; taken by volume,
 *  which is sooner than by mass. */
const EYES_FROM = 0.1;
/** Weaker it hardly flashes, and the model of the flash point ends. */
const FLASHES_FROM = 0.05;

/** Hazards of a strength by volume, 0 to 1. From one half up it counts as highly flammable whatever its flash point. */
export function ethanolHazards(volumeFraction: number): EthanolHazards {
  const flash =
    volumeFraction < FLASHES_FROM
      ? Number.POSITIVE_INFINITY
      : flashPointFromVolumeFraction(volumeFraction).flashPoint;
  const isCategory2 = isHighlyFlammable(volumeFraction) || flash < CATEGORY_2_BELOW;
  const burns = isCategory2 || flash <= CATEGORY_3_TO;
  const harmsEyes = volumeFraction >= EYES_FROM;
  return {
    signal: isCategory2 ? "danger" : burns || harmsEyes ? "warning" : null,
    pictograms: [...(burns ? (["GHS02"] as const) : []), ...(harmsEyes ? (["GHS07"] as const) : [])],
    hazards: [
      ...(burns ? ([isCategory2 ? "H225" : "H226"] as const) : []),
      ...(harmsEyes ? (["H319"] as const) : []),
    ],
    precautions: [
      ...(burns ? (["P210", "P233"] as const) : []),
      ...(harmsEyes ? (["P305"] as const) : []),
      ...(burns ? (["P403"] as const) : []),
    ],
  };
}

/** Days a made-up bottle is used: six months, the shorter of six to twelve; often open, sooner, as ethanol goes first. Common practice, no source. */
export const USE_WITHIN_DAYS = 182;
