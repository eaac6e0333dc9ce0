import { OutOfRange, withinRange } from "../out-of-range.ts";

/* What masks, filters and vacuum cleaners hold back, how long a mask is worn, how much visible mould is how much, and how long damp
 * mouldy things dry in quarantine: published facts, looked up by their inputs in `data/physics/protection.json`.
 * Shares are fractions, areas m². No country known to us sets an exposure limit for mould spores. */

export type ProtectionCaution =
  | "fit-tested-and-clean-shaven"
  | "dust-mask-stops-no-vapour"
  | "figure-recalled"
  | "no-limit-for-mould"
  | "time-limit-is-local"
  | "outside-help"
  | "bands-are-not-health-limits"
  | "living-mould-is-dried-first";

interface Sourced {
  readonly source: string;
  /** `seen`, `seen in part`, `from memory` or `common practice`. */
  readonly status: string;
}

/** Filtering facepiece of EN 149. `factor` is the assigned one, `nominal` the laboratory's; plan with the assigned. */
export interface Mask extends Sourced {
  readonly id: string;
  readonly penetration: number;
  readonly leakageMean: number;
  readonly leakageMost: number;
  readonly factor: number;
  readonly nominal: number;
}
export interface AssignedFactor extends Sourced {
  readonly scheme: string;
  readonly device: string;
  readonly factor: number;
}
/** Efficiency at the most penetrating particle size, of the whole filter and at its worst spot. */
export interface FilterClass extends Sourced {
  readonly standard: string;
  readonly id: string;
  readonly efficiency: number;
  readonly localEfficiency: number | null;
}
/** Dust class of EN 60335-2-69. */
export interface VacuumClass extends Sourced {
  readonly id: string;
  readonly mostPassing: number;
}
/** From an area, itself in the band, to below the next. */
export interface MouldBand extends Sourced {
  readonly scheme: string;
  readonly band: string;
  readonly fromSquareMetres: number;
  readonly toSquareMetres: number | null;
  readonly outsideHelp: boolean;
}
export interface Wear extends Sourced {
  readonly kind: string;
  readonly mostMinutes: number | null;
}

export interface ProtectionTables {
  readonly masks: readonly Mask[];
  readonly factors: readonly AssignedFactor[];
  readonly filters: readonly FilterClass[];
  readonly vacuums: readonly VacuumClass[];
  readonly mouldBands: readonly MouldBand[];
  readonly wear: readonly Wear[];
  readonly outsideHelp: Sourced & { readonly aboveSquareMetres: number };
  readonly quarantineDrying: Sourced & { readonly leastHours: number; readonly mostRelHum: number };
  readonly timeLimits: Sourced & {
    readonly leastHoursPerDay: number;
    readonly mostHoursPerDay: number;
    readonly mostDaysPerWeek: number;
    readonly breakMinutes: readonly number[];
  };
}

/** One of the rows, or an error that names those there are. */
function rowOf<T>(rows: readonly T[], what: string, wanted: string, nameOf: (row: T) => string): T {
  const found = rows.find((row) => nameOf(row).toLowerCase() === wanted.toLowerCase());
  if (!found) throw new RangeError(`no ${what} "${wanted}"; there are: ${rows.map(nameOf).join(", ")}`);
  return found;
}

const recalled = ({ status }: Sourced): ProtectionCaution[] =>
  status === "from memory" ? ["figure-recalled"] : [];

/** @param id `FFP1`, `FFP2` or `FFP3`   @throws RangeError naming the known */
export function maskFrom(tables: ProtectionTables, id: string) {
  const mask = rowOf(tables.masks, "mask", id, (row) => row.id);
  const cautions: readonly ProtectionCaution[] = [
    "fit-tested-and-clean-shaven",
    "dust-mask-stops-no-vapour",
    ...recalled(mask),
  ];
  return { ...mask, cautions };
}

/** Assigned protection factor of a device in a scheme, e.g. `HSG53`, `half mask P3`. */
export function assignedFactorFrom(tables: ProtectionTables, scheme: string, device: string) {
  const rows = tables.factors.filter((row) => row.scheme === scheme);
  const row = rowOf(rows, `device of ${scheme}`, device, (each) => each.device);
  const cautions: readonly ProtectionCaution[] = ["fit-tested-and-clean-shaven", ...recalled(row)];
  return { ...row, cautions };
}

export const filterFrom = (tables: ProtectionTables, standard: string, id: string): FilterClass =>
  rowOf(
    tables.filters.filter((row) => row.standard === standard),
    `filter class of ${standard}`,
    id,
    (row) => row.id,
  );

/** Vacuum cleaner for mould: class H, whose bag is changed in the hood. */
export const vacuumFrom = (tables: ProtectionTables, id: string): VacuumClass =>
  rowOf(tables.vacuums, "dust class", id, (row) => row.id);

/** The band of visible growth that an area falls into.   @param area m², above 0 */
export function mouldBandFromArea(tables: ProtectionTables, scheme: string, area: number) {
  withinRange("area of visible growth", area, "m²", Number.MIN_VALUE, 1e5);
  const bands = tables.mouldBands.filter((row) => row.scheme === scheme);
  const band = bands.find(
    ({ fromSquareMetres: low, toSquareMetres: high }) => area >= low && (high === null || area < high),
  );
  if (!band)
    throw new RangeError(
      `no bands of ${scheme}; there are: ${[...new Set(tables.mouldBands.map((row) => row.scheme))].join(", ")}`,
    );
  const needsHelp = band.outsideHelp || area > tables.outsideHelp.aboveSquareMetres;
  const cautions: readonly ProtectionCaution[] = [
    ...(needsHelp ? (["outside-help"] as const) : []),
    "bands-are-not-health-limits",
    "no-limit-for-mould",
  ];
  return { ...band, needsHelp, cautions };
}

/** Longest spell in a mask without a break, minutes; null when no figure is known. */
export const wearMinutesFrom = (tables: ProtectionTables, kind: string): number | null =>
  rowOf(tables.wear, "kind of mask", kind, (row) => row.kind).mostMinutes;

/** What to hand out for mould work where nothing stands against it. Default: FFP3 or a P100 half mask, fit-tested; a powered hood
 *  where a tight mask does not seal, or for a spell longer than one may be worn.   @param minutes of the spell */
export function usualRespiratorFor(tables: ProtectionTables, of: { minutes: number; sealsTight: boolean }) {
  const most = wearMinutesFrom(tables, "unpowered tight-fitting") ?? Number.POSITIVE_INFINITY;
  withinRange("minutes of the spell", of.minutes, "min", 0, 720);
  const cautions: readonly ProtectionCaution[] = ["fit-tested-and-clean-shaven", "dust-mask-stops-no-vapour"];
  return {
    respirator: of.sealsTight && of.minutes <= most ? ("FFP3" as const) : ("powered hood TH2" as const),
    cautions,
  };
}

/** Breathing at light work, m³/h; from memory. */
export const LIGHT_WORK_BREATHING = 1.25;

/** Spores breathed in behind a mask: C/APF·rate·h. For comparing ways of working, as no dose is known to be safe.
 *  @param of sporesPerCubicMetre; factor 1 (no mask) or more; hours; breathing m³/h, light work unless given */
export function inhaledSporesFrom(of: {
  sporesPerCubicMetre: number;
  factor: number;
  hours: number;
  breathing?: number;
}) {
  const breathing = withinRange("breathing rate", of.breathing ?? LIGHT_WORK_BREATHING, "m³/h", 0.2, 8);
  withinRange("hours", of.hours, "h", 0, 24);
  withinRange("spores in the air", of.sporesPerCubicMetre, "1/m³", 0, 1e12);
  if (!(of.factor >= 1)) throw new OutOfRange("protection factor", of.factor, "1", 1, 10_000);
  const cautions: readonly ProtectionCaution[] = ["no-limit-for-mould"];
  return { spores: (of.sporesPerCubicMetre / of.factor) * breathing * of.hours, cautions };
}

/** Whether air and time are those in which living mould is dried before anyone works on it. It earns no release: readings do.
 *  @param hours already spent   @param relHum highest in that time, 0 to 1 */
export function quarantineDryingFrom(tables: ProtectionTables, hours: number, relHum: number) {
  const { leastHours, mostRelHum } = tables.quarantineDrying;
  withinRange("hours", hours, "h", 0, 1e6);
  const isAirDry = withinRange("relative humidity", relHum, "1", 0, 1) < mostRelHum;
  const hoursLeft = isAirDry ? Math.max(0, leastHours - hours) : leastHours;
  const cautions: readonly ProtectionCaution[] = ["living-mould-is-dried-first"];
  return { isAirDry, hoursLeft, leastHours, mostRelHum, cautions };
}

/** Most hours and days of hands-on mould work: a local setting, for which no text of an archive or a regulator was found. */
export function timeLimitsFrom(tables: ProtectionTables) {
  const cautions: readonly ProtectionCaution[] = ["time-limit-is-local", "no-limit-for-mould"];
  return { ...tables.timeLimits, cautions };
}
