import type { Problem } from "../../core/outcome/problem.ts";
import type { ProblemCode } from "../../core/say/problems.ts";

export type Severity = Problem["severity"];
export interface Where {
  readonly file?: string;
  readonly line?: number;
  readonly column?: string;
}
export interface Said {
  readonly got?: string;
  readonly expected?: string;
  readonly remedy: string;
}

/** A problem whose code has its sentence in the catalogue: a code without one does not compile. */
export const problem = (code: ProblemCode, severity: Severity, where: Where, said: Said): Problem => ({
  code,
  severity,
  ...where,
  ...said,
});

export const count = (n: number): string => n.toLocaleString("en-GB");
