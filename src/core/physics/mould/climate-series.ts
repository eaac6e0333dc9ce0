/** Readings of one logger, oldest first. A reading stands until the next one; the last ends the series. */
export interface ClimateSeries {
  /** Hours since 1970-01-01, strictly rising, one for each reading; or the first and the even step between readings. */
  readonly hours: Float64Array | { readonly start: number; readonly step: number };
  /** Air, °C. NaN in any column: no reading at that moment. */
  readonly dryBulb: Float64Array;
  /** Air, 0 to 1. Up to 1.05 is taken as saturated, since loggers over-read there. */
  readonly relHum: Float64Array;
  /** Temperature of the coldest surface, °C. Where it is colder than the air, growth is judged at the surface. */
  readonly surface?: Float64Array;
}

/** Something that went on without a break. Moments are hours since 1970-01-01. */
export interface Run {
  readonly from: number;
  readonly hours: number;
}
/** Longest step over which a reading may stand, h. Source: the index is not additive over gaps; the 6 h are common practice, no source. */
export const LONGEST_STEP = 6;
