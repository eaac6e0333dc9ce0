/** One answer to one test, or one recorded property. `unsure` is an answer of its own; what is absent was not tested. */
export type FactValue = string | number | boolean | readonly string[];
export type Facts = Readonly<Record<string, FactValue>>;
export const UNSURE = "unsure";
