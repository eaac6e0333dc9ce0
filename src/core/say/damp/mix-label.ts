import type { EthanolHazards } from "../../physics/solutions/ethanol-label.ts";
import { strength } from "./quantities.ts";

/* Words of the label and the sheet of a solution. */

/** Hazard and precautionary statements as the globally harmonised system words them. H225, H226: CLP Regulation annex I, table 2.6.2 (seen);
 *  H319 and P305: safety data sheets (seen); P210, P233, P403: from memory. */
export const STATEMENTS: Readonly<
  Record<EthanolHazards["hazards"][number] | EthanolHazards["precautions"][number], string>
> = {
  H225: "Highly flammable liquid and vapour (H225).",
  H226: "Flammable liquid and vapour (H226).",
  H319: "Causes serious eye irritation (H319).",
  P210: "Keep away from heat, hot surfaces, sparks, open flames and other ignition sources. No smoking (P210).",
  P233: "Keep container tightly closed (P233).",
  P305: "If in eyes: rinse cautiously with water for several minutes; remove contact lenses, if present and easy to do; continue rinsing (P305 + P351 + P338).",
  P403: "Store in a well-ventilated place. Keep cool (P403 + P235).",
};

export const MIX_PAPER = {
  sheet: "Mix sheet",
  label: "Label",
  content: (want: number): string => `Ethanol ${strength(want)} in water`,
  byVolume: "by volume",
  signals: { danger: "Danger", warning: "Warning" },
  made: "Made",
  useBy: "Use by",
  madeBy: "Made by",
  soonerIfOpen: "sooner if often open",
  never:
    "For tables and tools only: never on an item, never near nitrate film. A dust mask does not stop the vapour.",
  todo: "In this order",
  figures: "Figures",
  mind: "Mind",
  toWrite: [
    "Stock: maker, batch, strength on its certificate",
    "100 mL of the mixture weighed, g",
    "Date, name",
  ],
  written: (path: string): string => `Written: ${path}, the mix sheet and labels for the bottles.`,
  noRoom:
    "Nobody said how large the room is: half a litre at a bench and one litre in the room outside a cabinet are the most (common practice).",
  madeFault: (got: string): string => `--made ${got}: expected a day such as 2026-06-01.`,
  sheetRemedy: "A4 unless said otherwise.",
} as const;
