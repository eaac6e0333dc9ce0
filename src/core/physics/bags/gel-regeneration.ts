import { withinRange } from "../out-of-range.ts";
import type { GelCaution } from "./gel-caution.ts";

/* Drying silica gel again. */

/** Oven temperatures and times met: 130 to 145 °C for 2 to 3 h (web sources), 150 °C for desiccants generally (Padfield);
 *  gel that changes colour stays below about 120 °C (from memory). A bag of 500 g lost 130 of 160 g at 60 °C in 10 h, the rest
 *  at 99 °C in 3 to 4 h (one bench weighing). */
export const REGENERATION = { low: 130, high: 150, hours: { low: 2, high: 3 }, colourGelHigh: 120 } as const;

/** Dry when two weighings an hour apart differ by less than 0.5 %. Common practice, no source.   @param first, second masses, any one unit */
export const isRegenerated = (first: number, second: number): boolean =>
  Math.abs(first - second) / withinRange("second weighing", second, "1", 1e-9, 1e9) < 0.005;

/** Oven for gel.   @param changesColour gel with an indicator */
export function regenerationFor(changesColour: boolean) {
  const { low, high, hours, colourGelHigh } = REGENERATION;
  const cautions: readonly GelCaution[] = changesColour
    ? ["colour-gel-not-above-120", "blue-gel-is-poisonous", "gel-dry-only-by-weight"]
    : ["gel-dry-only-by-weight"];
  return changesColour
    ? { low: 99, high: colourGelHigh, hours: { low: 4, high: 10 }, cautions }
    : { low, high, hours, cautions };
}
