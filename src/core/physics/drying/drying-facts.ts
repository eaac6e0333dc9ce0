/** What drying was seen to take, against which the model is held. */
export const DRYING_FACTS = {
  /** Wet boxes left closed in a dehumidified room, 21 to 37 °C, 5 to 20 %: the core of the least wet one, at first and after
   *  13 days, % of dry mass. Source: NARA, Kaplan and Ludwig, Comparison of Drying Methods (2003). */
  closedBoxes: { days: 13, coreMoisturePercent: [16, 15.3] },
  /** Source: NARA, comparison of drying techniques. */
  vacuumFreezing: { weeks: [1, 2] },
} as const;
