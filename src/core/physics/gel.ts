/** Silica gel: all of it in one place, for those who use it from outside this folder. */
export * from "./desiccant-units.ts";
export type { GelCaution } from "./gel-caution.ts";
export * from "./gel-in-bag.ts";
export * from "./gel-isotherms.ts";
export * from "./gel-plan.ts";
export * from "./gel-regeneration.ts";
