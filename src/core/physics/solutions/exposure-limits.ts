import type { SolutionCaution } from "./solution-caution.ts";

/* How much ethanol vapour may be breathed. */

/** One row of `data/physics/ethanol.json`. */
export interface ExposureLimit {
  readonly id: string;
  readonly where: string;
  readonly kind: "8 hours" | "15 minutes" | "danger to life";
  readonly ppm: number | null;
  readonly mgPerCubicMetre: number | null;
  readonly source: string;
  readonly status: string;
}

/** Mean over a shift to design for where no local limit is chosen, mg/m³: the German 380 (200 ppm), the lowest but one that we know. */
export const DESIGN_LIMIT = 380;

/** The limit of that place and kind. @throws RangeError naming those that are there */
export function exposureLimitFrom(
  limits: readonly ExposureLimit[],
  where: string,
  kind: ExposureLimit["kind"],
) {
  const limit = limits.find((each) => each.where === where && each.kind === kind);
  if (!limit)
    throw new RangeError(
      `no limit of ${where} for ${kind}; there are: ${limits.map((each) => `${each.where} (${each.kind})`).join(", ")}`,
    );
  const cautions: readonly SolutionCaution[] = limit.status === "seen" ? [] : ["limit-recalled"];
  return { ...limit, cautions };
}
