import { digits, duration, durationSpan, percent } from "./quantities.ts";

/* When two readings could first pass, told from looks already taken. */

export function sayReadyBand(band: { p10: number; p50: number; p90: number }, now: number): string {
  const day = (hours: number): string => String(Math.round(hours / 24));
  const left = durationSpan(Math.max(0, band.p10 - now), Math.max(0, band.p90 - now));
  return `Two readings could first pass between day ${day(band.p10)} and day ${day(band.p90)}, likeliest about day ${day(band.p50)}: ${left} from the last look.`;
}
export const sayReadyNow = (): string =>
  "By readings and model two readings could pass now: read the closed bag twice, a day apart.";
export const sayNoDate = (): string => "No date can be known yet.";
export function readyFigures(of: {
  band: { p10: number; p50: number; p90: number } | null;
  isForPlanning: boolean;
  lossBehind: number | null;
  permeability: { p10: number; p50: number; p90: number } | null;
  seen: number;
  leftOut: number;
  byTail: number | null;
}): { label: string; value: string }[] {
  const day = (hours: number): string =>
    Number.isFinite(hours) ? `day ${(hours / 24).toFixed(hours < 240 ? 1 : 0)}` : "not within three years";
  const { band, permeability } = of;
  return [
    ...(band === null
      ? []
      : [
          {
            label: of.isForPlanning ? "For planning only" : "Ready",
            value: `P10 ${day(band.p10)}, P50 ${day(band.p50)}, P90 ${day(band.p90)}`,
          },
        ]),
    ...(of.lossBehind === null ? [] : [{ label: "Way behind it", value: percent(of.lossBehind) }]),
    ...(permeability === null
      ? []
      : [
          {
            label: "Ease of damp",
            value: `${digits(permeability.p50)} times what was assumed (${digits(permeability.p10)} to ${digits(permeability.p90)})`,
          },
        ]),
    { label: "Looks used", value: `${of.seen}${of.leftOut > 0 ? `, and ${of.leftOut} left out` : ""}` },
    ...(of.byTail === null ? [] : [{ label: "By the scale alone", value: day(of.byTail) }]),
  ];
}
export const sayRest = (hours: number): string =>
  `I took it that the item lay open in the room, and closed in a bag for the ${duration(hours)} before each reading (--rest says otherwise).`;
