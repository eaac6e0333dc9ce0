import type { Problem } from "../../core/outcome/problem.ts";
import type { ProblemCode } from "../../core/say/problems.ts";
import { problem, type Said, type Severity } from "./problem.ts";

/** What a cell gave: a value, or a problem whose place the reader of the row adds. */
export type CellReading = { readonly value: unknown } | { readonly problem: Problem };

export const refused = (code: ProblemCode, severity: Severity, said: Said): CellReading => ({
  problem: problem(code, severity, {}, said),
});
