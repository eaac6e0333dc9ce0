import { LOCAL_RULES } from "./heads.ts";
import { degrees, digits, measured, strength, weighed } from "./quantities.ts";

/* Mixing ethanol with water. */

export interface MixCase {
  readonly want: number;
  readonly stock: number;
  /** mL */
  readonly volume: number;
  readonly dryBulb: number;
}
export const sayMixVerdict = (
  of: MixCase,
  recipe: { stockMass: number; waterMass: number; stockVolume: number },
): string =>
  `Weigh ${weighed(recipe.stockMass)} of the ${strength(of.stock)} alcohol and add ${weighed(recipe.waterMass)} of clean water: that gives ${measured(of.volume)} of ${strength(of.want)} by volume. Without a balance: measure ${measured(recipe.stockVolume)} of the alcohol and fill up with water to ${measured(of.volume)}.`;

export const MIX_TODO = {
  place: (): string =>
    "Work at an open window or under extraction, away from flame, hot lamps, switches and running motors; gloves and goggles on.",
  weigh: (grams: number, perPercent: number): string =>
    `Weigh 100 mL of the finished solution: it must weigh ${grams.toFixed(1)} g; each ${perPercent.toFixed(2)} g more means 1 % weaker.`,
  label: (of: MixCase): string =>
    `Label the bottle at once: "ethanol ${strength(of.want)} in water, highly flammable", the date and your name; half a litre at most at each bench.`,
  out: (millilitres: number, room: string): string =>
    `Have no more than ${measured(Number(millilitres.toPrecision(2)))} of it open at one time in the ${room}.`,
} as const;

export const MIX_CAUTIONS: Readonly<
  Record<"never-near-nitrate" | "buy-locally" | "ventilate" | "local-rules", string>
> = {
  "never-near-nitrate":
    "Never near nitrate film: neither the bottle nor a wet cloth in the room where such film lies, opens or is suspected.",
  ventilate:
    "Ventilate while you wipe and until the smell is gone; wipe small areas, and stop at headache or dizziness.",
  "buy-locally":
    "Buy the alcohol locally: carrying it by air, post or ship is regulated, and in some places so is buying or keeping it.",
  "local-rules": `${LOCAL_RULES} Ask whoever is answerable for fire safety how much may be kept, and where.`,
};

export function mixFigures(of: {
  recipe: {
    stockMass: number;
    waterMass: number;
    stockVolume: number;
    waterVolume: number;
    finalVolume: number;
    contraction: number;
  };
  dryBulb: number;
  flash: number;
  vapourPpm: number;
  wipeArea: { low: number; high: number };
  transport: { un: number; packingGroup: string } | null;
}): { label: string; value: string }[] {
  const { recipe } = of;
  return [
    {
      label: "By mass",
      value: `${weighed(recipe.stockMass)} alcohol + ${weighed(recipe.waterMass)} water`,
    },
    {
      label: "By volume",
      value: `${measured(recipe.stockVolume)} alcohol, water to the mark of ${measured(recipe.finalVolume)} (about ${measured(recipe.waterVolume)}), all at ${degrees(of.dryBulb)}`,
    },
    {
      label: "Contraction",
      value: `the mixture fills ${digits(recipe.contraction)} mL less than its parts did`,
    },
    {
      label: "Flash point",
      value: `about ${Math.round(of.flash)} °C ± 3 K${of.flash <= of.dryBulb ? ": it catches fire at room temperature" : ""}`,
    },
    {
      label: "Vapour over it",
      value: `up to ${digits(of.vapourPpm)} ppm ± 10 % at ${degrees(of.dryBulb)} close to the liquid; it burns from 33,000 ppm`,
    },
    {
      label: "Wipes",
      value: `about ${digits(of.wipeArea.low)} to ${digits(of.wipeArea.high)} m² for one pass`,
    },
    ...(of.transport === null
      ? []
      : [
          {
            label: "Transport",
            value: `UN ${of.transport.un}, packing group ${of.transport.packingGroup} (from memory: check)`,
          },
        ]),
  ];
}
