/** Imaging arithmetic: pixels, resolution for a text, shots of an item, hours at the camera, room on the disc. */
import { withinRange } from "./out-of-range.ts";

const MM_AN_INCH = 25.4;

/** Pixels along a length.   @param ppi pixels an inch   @returns a whole number */
export const pixelsFromLength = (lengthMm: number, ppi: number): number =>
  Math.round(
    (withinRange("length", lengthMm, "mm", 0, 100_000) / MM_AN_INCH) *
      withinRange("resolution", ppi, "ppi", 1, 20_000),
  );

/** Size of an uncompressed picture, its header not counted.   @param bits in each of the channels   @returns MB of a million bytes */
export const megabytesFromPixels = (width: number, height: number, bits: 8 | 16 = 8, channels = 3): number =>
  (width * height * channels * bits) / 8 / 1e6;

/** The factor of the tutorial's formulas for millimetres: 1 mm is about 0.039 in. */
const INCHES_A_MM = 0.039;

/** Resolution at which the smallest letters can be read.
 *  @param quality 3 barely, 3.6 marginal, 5 good, 8 excellent   @param letterHeightMm of a lower-case letter, mm
 *  Source: Cornell University, digital imaging tutorial, bitonal formula; the tonal one from memory */
export function ppiForText(quality: number, letterHeightMm: number, kind: "bitonal" | "tonal"): number {
  withinRange("letter height", letterHeightMm, "mm", 0.05, 100);
  return ((kind === "bitonal" ? 3 : 2) * quality) / (INCHES_A_MM * letterHeightMm);
}

/** Resolution at which a stroke is kept.   @param quality 1 questionable, 1.5 good, 2 excellent   Source: the same tutorial */
export const ppiForStroke = (quality: number, strokeMm: number): number =>
  quality / (INCHES_A_MM * withinRange("stroke", strokeMm, "mm", 0.005, 50));

/** The same for a stroke measured in inches: two pixels across 1/100 in are 200 ppi, the tutorial's worked example. */
export const ppiForStrokeInInches = (quality: number, strokeInches: number): number =>
  quality / withinRange("stroke", strokeInches, "in", 0.0002, 2);

/** How an item lies under the camera. */
export type Capture = "openings" | "pages" | "leaves-both-sides";

/** Pictures of an item with n leaves. Openings: n + 1, the inner boards among them; single pages: 2 n + 2; loose or palm leaves: 2 n.
 *  @param views of covers and edges   @param targets pictures of the target   Common practice, no source */
export function shotsFromLeaves(capture: Capture, leaves: number, views: number, targets: number): number {
  withinRange("leaves", leaves, "1", 0, 100_000);
  const inside = { openings: leaves + 1, pages: 2 * leaves + 2, "leaves-both-sides": 2 * leaves }[capture];
  return inside + withinRange("views", views, "1", 0, 1000) + withinRange("targets", targets, "1", 0, 1000);
}

/** Share of a camera's hour in which it takes pictures. Common practice, no source: 0.7 to 0.8. */
export const USUAL_AVAILABILITY = { low: 0.7, likely: 0.75, high: 0.8 } as const;

/** Hours at the camera: setting up and taking the pictures, over what the camera is available of an hour.
 *  @param availability above 0, to 1   Common practice, no source */
export const slotHours = (
  shots: number,
  shotsAnHour: number,
  setupMinutes: number,
  availability: number = USUAL_AVAILABILITY.likely,
): number =>
  (setupMinutes / 60 + shots / withinRange("shots an hour", shotsAnHour, "1/h", 1, 10_000)) /
  withinRange("availability", availability, "1", 0.05, 1);

/** Pictures an hour while taking them, without the work around it. Common practice, no source. */
export const CAPTURE_RATES = {
  "overhead-openings": { low: 60, high: 120 },
  "cradle-fragile": { low: 20, high: 60 },
  "palm-leaves": { low: 40, high: 80 },
  photographs: { low: 40, high: 100 },
} as const;
export type CaptureWork = keyof typeof CAPTURE_RATES;

export type ImagingCaution =
  | "imaging-rates-are-no-source"
  | "imaging-mouldy-last"
  | "imaging-keep-three-copies"
  | "imaging-figures-secondary";

/** The hours as a band, since nobody's rate is known before the first item: quick rate and full availability, slow rate and poor. */
export function slotHoursBand(shots: number, work: CaptureWork, setupMinutes: number) {
  const { low, high } = CAPTURE_RATES[work];
  const cautions: ImagingCaution[] = ["imaging-rates-are-no-source", "imaging-mouldy-last"];
  return {
    low: slotHours(shots, high, setupMinutes, USUAL_AVAILABILITY.high),
    likely: slotHours(shots, (low + high) / 2, setupMinutes),
    high: slotHours(shots, low, setupMinutes, USUAL_AVAILABILITY.low),
    cautions,
  };
}

/** Room on the disc.   @param masterMegabytes of one master   @param derivatives share added by smaller copies, 0.05 is 5 %   @returns GB of 10⁹ bytes */
export const gigabytesFromShots = (
  shots: number,
  masterMegabytes: number,
  derivatives: number,
  copies: number,
): number => (shots * masterMegabytes * (1 + derivatives) * copies) / 1000;

/** Published whole-workflow times. Source of all: University of Florida digital library, Average Times for Digitization Activities, about 2012, seen. */
export const PUBLISHED_THROUGHPUT = [
  { kind: "bound volume of about 200 pages, whole workflow, hours", value: 7, range: "4-11" },
  { kind: "disbound book of at least 200 pages, hours", value: 2, range: "" },
  { kind: "archival sheets and photographs, pages per hour, whole workflow", value: 11, range: "" },
  { kind: "print newspapers, pages per hour", value: 40, range: "" },
  { kind: "large format item, hours", value: 2.5, range: "" },
] as const;

/** What a picture of the target must keep to. Both tables were seen in one public comparison with visible slips: look them up in the
 *  documents themselves before promising them to anyone. ΔE by CIEDE2000. */
export interface ImagingLevel {
  readonly level: string;
  readonly meanDeltaE: number;
  /** ISO: the largest; FADGI: the 90th of a hundred. */
  readonly extremeDeltaE: number;
  readonly toneDeltaL: number;
  readonly whiteDeltaE: number;
  /** Sampling efficiency, 0 to 1, at least. */
  readonly sampling: number;
  /** ppi at least, where told. */
  readonly ppi: number | null;
}

const level = (
  name: string,
  meanDeltaE: number,
  extremeDeltaE: number,
  toneDeltaL: number,
  whiteDeltaE: number,
  sampling: number,
  ppi: number | null = null,
): ImagingLevel => ({ level: name, meanDeltaE, extremeDeltaE, toneDeltaL, whiteDeltaE, sampling, ppi });

/** ISO 19264-1:2021. Level C's colour row equals B's in the table seen. */
export const ISO_19264_LEVELS: readonly ImagingLevel[] = [
  level("A", 4, 10, 2, 3, 0.85),
  level("B", 5, 15, 3, 4, 0.8),
  level("C", 5, 15, 4, 5, 0.7),
];

/** FADGI 2023, bound general collections, 4 stars to 1. */
export const FADGI_BOUND_LEVELS: readonly ImagingLevel[] = [
  level("4", 2, 4, 1.5, 2, 0.9, 396),
  level("3", 3.5, 7, 3, 4, 0.8, 294),
  level("2", 5, 10, 4.5, 6, 0.7, 242.5),
  level("1", 6.5, 13, 6, 8, 0.6, 190),
];
