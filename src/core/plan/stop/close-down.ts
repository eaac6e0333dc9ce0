import type { Norms } from "../../care/norms.ts";
import type { PlanProblem } from "../problem.ts";
import type { HoursLeft, Placed } from "./hours-left.ts";

/** Stations, tools and waste on the last days, kept free before anything else: tools a day before, as they must be bone dry. */
export function closeDown(problem: PlanProblem, hours: HoursLeft, norms: Norms): Placed[] {
  const there = problem.days
    .map((_, d) => d)
    .filter((d) => problem.hands.some((_, p) => hours.free(p, d) > 0));
  const last = there.at(-1);
  if (last === undefined) return [];
  const before = there.at(-2) ?? last;
  const wipes = problem.campaign.stations.flatMap(({ kind, places }) =>
    Array.from({ length: places }, () => [kind === "camera" ? "s-camera-decon" : "s-decon", last] as const),
  );
  return [["s-tools", before] as const, ...wipes, ["s-waste", last] as const].flatMap(([norm, day]) => {
    const work = { act: "survey" as const, minutes: norms.band(norm).typical, exposed: false, uses: {} };
    const spot = hours.place(work, day, day);
    return typeof spot === "string" ? [] : [spot];
  });
}
