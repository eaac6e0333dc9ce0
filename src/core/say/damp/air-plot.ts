import { named } from "./air.ts";
import type { AirFigures } from "./air-figures.ts";
import { moment, percentSpan } from "./quantities.ts";

/* Words on the picture of one place. */

/** What the picture shows, for who cannot see it. */
export const sayPlotText = (
  name: string,
  from: number,
  to: number,
  verdict: string,
  figures: AirFigures,
): string =>
  `Three panels over one time axis, ${moment(from)} to ${moment(to)}, of ${named(name)}: temperature (${figures.warmth.low.toFixed(1)} to ${figures.warmth.high.toFixed(1)} °C), relative humidity (${percentSpan(figures.damp.low, figures.damp.high)}) with lines at 60 and 65 %, and the mould index (highest ${figures.watch.index.highest.toFixed(1)} of 6); between them three bands show when each lamp was lit. ${verdict}`;
export const PLOT_WORDS = {
  title: (name: string): string => `Mould watch: ${name}`,
  temperature: "Temperature, °C",
  relHum: (atSurface: boolean): string => `Relative humidity${atSurface ? " at the surface" : ""}, %`,
  lamps: [
    "Lamp 1, damp: 65 % or more for 48 h",
    "Lamp 2, critical: damper than mould needs",
    "Lamp 3, index: 1 or more",
  ],
  index: "Mould index, 0 to 6",
  visible: "3 visible",
  begun: "1 begun",
  time: (from: number, to: number): string =>
    `Time, ${moment(from)} to ${moment(to)} (local standard time of the logger)`,
} as const;
