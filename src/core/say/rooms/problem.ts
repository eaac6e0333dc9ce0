import type { Problem } from "../../outcome/problem.ts";
import { sayProblem } from "../problems.ts";

/** A problem on a screen: what it is, and apart from it what to do. */
export const shownProblem = (problem: Problem): { readonly what: string; readonly remedy: string } => {
  const whole = sayProblem(problem);
  const at = whole.lastIndexOf(problem.remedy);
  const what = at > 0 ? whole.slice(0, at).trim() : whole;
  return { what, remedy: at >= 0 ? problem.remedy : "" };
};
