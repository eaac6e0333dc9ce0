/** Ethanol and water: all of it in one place, for those who use it from outside this folder. */
export * from "./ethanol-amounts.ts";
export * from "./ethanol-density.ts";
export * from "./ethanol-fire.ts";
export * from "./ethanol-recipe.ts";
export * from "./ethanol-vapour.ts";
export * from "./exposure-limits.ts";
export type { SolutionCaution } from "./solution-caution.ts";
