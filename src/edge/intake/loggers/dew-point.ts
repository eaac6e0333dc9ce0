/** Relative humidity (0 to 1) from dry bulb and dew point, both °C, over water, −45 to 60 °C; NaN where one is absent.
 *  Magnus form with 17.62 and 243.12 °C. Source: World Meteorological Organization, Guide to Instruments and Methods of Observation (WMO-No. 8),
 *  annex 4.B; from memory. Used only where a file has no humidity of its own. */
export function relHumFromDewPoint(dryBulb: number, dewPoint: number): number {
  if (dewPoint > dryBulb + 0.5) return Number.NaN;
  const ratio = Math.exp((17.62 * dewPoint) / (243.12 + dewPoint) - (17.62 * dryBulb) / (243.12 + dryBulb));
  return Math.min(ratio, 1);
}
