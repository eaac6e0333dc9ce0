import type { SolutionCaution } from "../../physics/solutions/solution-caution.ts";

/** One plain sentence for each caution that travels with a figure about ethanol and water. */
export const CAUTIONS: Readonly<Record<SolutionCaution, string>> = {
  "volumes-do-not-add":
    "Alcohol and water fill less together than apart: weigh both, or measure the alcohol and fill up to the mark with water.",
  "measure-both-at-one-temperature":
    "The volumes hold at the temperature given: let alcohol and water stand in the room first.",
  "stock-strength-by-certificate":
    "Take the strength of the stock from its certificate: alcohol sold as 96 % may hold less beside what it is denatured with.",
  "no-ethanol-on-items":
    "For stations and tools only: never on an item, on leather, ink, wax, photographs, varnish, acrylic or coated lenses.",
  "clean-before-disinfecting":
    "Take the dirt off first and keep the surface wet for three minutes: alcohol does not reach mould through dust, and does not kill every spore.",
  "outside-the-effective-band": "Weaker than 60 % or stronger than 90 % works less well: make it about 70 %.",
  "highly-flammable":
    "Highly flammable, also at room temperature: no flame, hot lamp or spark, wet the cloth and never spray, solvent cloths into a lidded metal bin. Follow local rules and licensed practice.",
  "mask-does-not-stop-vapour": "A dust mask does not stop alcohol vapour: open the room to air, use little.",
  "vapour-estimate-ten-per-cent": "An estimate within about a tenth.",
  "vapour-near-the-liquid-can-burn":
    "Close to the liquid the vapour is strong enough to burn, whatever the mean of the room: keep ignition away.",
  "flash-point-estimate": "Computed, not measured: within two or three degrees.",
  "flash-table-basis-unclear":
    "The copies of this table disagree whether it goes by weight or by volume: take the lower flash point.",
  "limit-recalled":
    "This limit was recalled or read in a copy: look it up in the rules that bind you before relying on it.",
};
