/**
 * Heat at work: the wet-bulb globe temperature (WBGT) against what a body at work bears, in the clothes the work asks for.
 *
 * It never trades heat against the mask: where it is too hot for mask and coverall, the work moves, rests or stops; the mask stays on.
 */
import { wetBulbFromRelHum } from "../air/moist-air.ts";
import { withinRange } from "../out-of-range.ts";

/** What clothing adds to the WBGT, K. Source: ACGIH clothing adjustment factors, seen as quoted; the hood from memory. */
export const CLOTHING_ADDITIONS = {
  "cloth-coverall": 0,
  "sms-coverall": 0.5,
  "polyolefin-coverall": 1,
  "double-cloth": 3,
  "vapour-barrier": 11,
} as const;
export type Clothing = keyof typeof CLOTHING_ADDITIONS;
export const HOOD_ADDITION = 1;

/** Heat a body makes, W: sitting or standing with light work of the hands; steady work of arms and trunk. From memory: ISO 8996. */
export const LIGHT_WORK = 180;
export const MODERATE_WORK = 300;

/** Error of a WBGT estimated without a globe, K. Common practice, no source. */
export const ESTIMATE_ERROR = 1;

export type HeatCaution =
  | "heat-follow-local-rules"
  | "heat-estimated-without-globe"
  | "heat-mask-stays-on"
  | "heat-drink-outside"
  | "heat-rest-outside"
  | "heat-new-people-rest"
  | "heat-stop-or-move-the-work"
  | "heat-no-vapour-barrier"
  | "heat-no-fans-over-tables"
  | "heat-stroke-signs";

/** WBGT indoors, out of the sun.   Source: ISO 7243, seen in part   @param naturalWetBulb °C   @param globe °C   @returns °C */
export const wbgtFromGlobe = (naturalWetBulb: number, globe: number): number =>
  0.7 * naturalWetBulb + 0.3 * globe;

/** WBGT indoors without a globe, in light air and out of the sun.   @param dryBulb °C, 0 to 60   @param relHum 0 to 1   @returns °C
 *  Source: Bernard's indoor form, from memory; B. Lemke and T. Kjellstrom 2012 recommend it for indoor use (abstract seen in part) */
export const wbgtFromRelHum = (dryBulb: number, relHum: number): number =>
  0.67 * wetBulbFromRelHum(withinRange("temperature", dryBulb, "°C", 0, 60), relHum) + 0.33 * dryBulb;

/** WBGT from which people new to heat must rest or stop.   @param metabolicRate W, 100 to 600   @returns °C
 *  Source: NIOSH, Occupational Exposure to Heat and Hot Environments, recommended alert limit; seen in part */
export const heatAlertFromRate = (metabolicRate: number): number =>
  59.9 - 14.1 * Math.log10(withinRange("metabolic rate", metabolicRate, "W", 100, 600));

/** The same for people used to heat.   Source: NIOSH recommended exposure limit; from memory */
export const heatLimitFromRate = (metabolicRate: number): number =>
  56.7 - 11.5 * Math.log10(withinRange("metabolic rate", metabolicRate, "W", 100, 600));

export interface HeatOutlook {
  /** °C, of the room, and felt with the clothing added. */
  readonly wbgt: number;
  readonly felt: number;
  /** °C; `error` is that of an estimate without a globe, 0 with one. */
  readonly alert: number;
  readonly limit: number;
  readonly error: number;
  /** For people used to heat: `alert` asks for rests and watching each other, `over-limit` for no work here. */
  readonly state: "fine" | "alert" | "over-limit";
  /** For people in their first days of heat. */
  readonly newPeople: "fine" | "over-limit";
  /** The state could be the next one, within the error. */
  readonly isNearNext: boolean;
  readonly cautions: readonly HeatCaution[];
}

/** The outlook of work in a room.   @param globe °C with the natural wet bulb, when measured; else both are estimated from air and humidity */
export function heatOutlook(given: {
  readonly room:
    | { readonly dryBulb: number; readonly relHum: number }
    | { readonly naturalWetBulb: number; readonly globe: number };
  readonly clothing: Clothing;
  readonly hood: boolean;
  readonly metabolicRate: number;
}): HeatOutlook {
  const { room, clothing, hood, metabolicRate } = given;
  const isMeasured = "globe" in room;
  const wbgt = isMeasured
    ? wbgtFromGlobe(room.naturalWetBulb, room.globe)
    : wbgtFromRelHum(room.dryBulb, room.relHum);
  const felt = wbgt + CLOTHING_ADDITIONS[clothing] + (hood ? HOOD_ADDITION : 0);
  const alert = heatAlertFromRate(metabolicRate);
  const limit = heatLimitFromRate(metabolicRate);
  const error = isMeasured ? 0 : ESTIMATE_ERROR;
  const state = stateOf(felt, alert, limit);
  return {
    wbgt,
    felt,
    alert,
    limit,
    error,
    state,
    newPeople: felt >= alert ? "over-limit" : "fine",
    isNearNext: stateOf(felt + error, alert, limit) !== state,
    cautions: cautionsOf(stateOf(felt + error, alert, limit), isMeasured, clothing),
  };
}

function stateOf(felt: number, alert: number, limit: number): HeatOutlook["state"] {
  if (felt >= limit) return "over-limit";
  return felt >= alert ? "alert" : "fine";
}

/** Cautions go by the worse end of the error. */
function cautionsOf(worst: HeatOutlook["state"], isMeasured: boolean, clothing: Clothing): HeatCaution[] {
  const isHot = worst !== "fine";
  const holds: [HeatCaution, boolean][] = [
    ["heat-stop-or-move-the-work", worst === "over-limit"],
    ["heat-new-people-rest", isHot],
    ["heat-rest-outside", isHot],
    ["heat-mask-stays-on", true],
    ["heat-drink-outside", isHot],
    ["heat-no-vapour-barrier", isHot && clothing === "vapour-barrier"],
    ["heat-no-fans-over-tables", isHot],
    ["heat-stroke-signs", isHot],
    ["heat-estimated-without-globe", !isMeasured],
    ["heat-follow-local-rules", true],
  ];
  return holds.flatMap(([code, isSo]) => (isSo ? [code] : []));
}

/** Share of a usual day's work in heat on the first days.   @param dayOfHeat 1 is the first   @param isReturning used to heat before, back after a break
 *  Source: NIOSH acclimatisation schedule: new people 20 % a day, those who return 50, 60, 80, 100 % */
export function shareOfHeatDay(dayOfHeat: number, isReturning: boolean): number {
  withinRange("day of heat", dayOfHeat, "1", 1, Number.MAX_SAFE_INTEGER);
  const shares = isReturning ? [0.5, 0.6, 0.8, 1] : [0.2, 0.4, 0.6, 0.8, 1];
  return shares[Math.min(Math.floor(dayOfHeat), shares.length) - 1] ?? 1;
}

/** The weather service's band of a heat index, in the shade, for places that have nothing else; WBGT is to be preferred.
 *  Source: US National Weather Service, from memory   @param heatIndex °C */
export function heatIndexBand(
  heatIndex: number,
): "fine" | "caution" | "extreme caution" | "danger" | "extreme danger" {
  if (heatIndex >= 52) return "extreme danger";
  if (heatIndex >= 39) return "danger";
  if (heatIndex >= 32) return "extreme caution";
  return heatIndex >= 27 ? "caution" : "fine";
}
