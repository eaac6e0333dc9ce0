import type { ImagingCaution } from "../../physics/imaging.ts";

/** What a person must know beside imaging figures, one sentence a code. */
export const CAUTIONS: Readonly<Record<ImagingCaution, string>> = {
  "imaging-rates-are-no-source":
    "These rates are common practice: count your own pictures for a day, and plan with those.",
  "imaging-mouldy-last":
    "What was mouldy is imaged last in the day, and the camera place is wiped down after it.",
  "imaging-keep-three-copies": "Keep three copies, one of them in another place, before an item goes home.",
  "imaging-figures-secondary":
    "These limits were read in a secondary table: look them up in the standard before you promise them.",
};
