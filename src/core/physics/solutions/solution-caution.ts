/** What a person must know beside a figure about ethanol and water. */
export type SolutionCaution =
  | "volumes-do-not-add"
  | "measure-both-at-one-temperature"
  | "stock-strength-by-certificate"
  | "no-ethanol-on-items"
  | "clean-before-disinfecting"
  | "outside-the-effective-band"
  | "highly-flammable"
  | "mask-does-not-stop-vapour"
  | "vapour-estimate-ten-per-cent"
  | "vapour-near-the-liquid-can-burn"
  | "flash-point-estimate"
  | "flash-table-basis-unclear"
  | "limit-recalled";
