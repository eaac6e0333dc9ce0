import type { ProtectionCaution } from "../../physics/people/protection.ts";

/** One plain sentence for each caution that travels with a fact about protection. */
export const CAUTIONS: Readonly<Record<ProtectionCaution, string>> = {
  "fit-tested-and-clean-shaven":
    "The figure holds for a mask that was fit-tested on this face and seals on shaven skin; otherwise take a powered hood.",
  "dust-mask-stops-no-vapour": "A dust mask holds back dust and spores, never solvent vapour.",
  "figure-recalled": "This figure was recalled, not read again: look it up in the rules that bind you.",
  "no-limit-for-mould":
    "No safe amount of mould in the air is known: keep it out of the air first, a mask comes last. Follow local rules and licensed practice.",
  "time-limit-is-local":
    "Hours and days of mould work are common practice, not law: set them with whoever is answerable for health at your place.",
  "outside-help": "So much visible growth is no work for the team alone: call outside help before going on.",
  "bands-are-not-health-limits":
    "The bands were drawn to choose a way of working, not from what harms people: any growth can make someone ill.",
  "living-mould-is-dried-first":
    "Do not clean damp, smeary growth: dry it apart first, and release it by readings, never by the clock alone.",
};
