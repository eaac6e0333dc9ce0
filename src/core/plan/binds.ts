import type { CampaignProgramme } from "./campaign-programme.ts";
import type { Bind } from "./plan.ts";
import type { PlanProblem } from "./problem.ts";
import type { Walk } from "./walk.ts";
import { KINDS } from "./work.ts";

/** Below this share of the waiting days for one per cent more, a resource does not hold anything back. */
const WORTH_SAYING = 0.02;

/** Resources ranked by what one per cent more of each would save, from the prices of the relaxed programme. */
export function bindsOf(
  problem: PlanProblem,
  parts: CampaignProgramme,
  duals: Float64Array,
  values: Float64Array,
  objective: number,
  plan: Walk,
): Bind[] {
  const worth = new Map<string, number>();
  for (const [row, resource] of parts.resourceOfRow) {
    const price = Math.abs(duals[row] ?? 0);
    if (price < 1e-9) continue;
    worth.set(
      resource,
      (worth.get(resource) ?? 0) + (price * amountOf(parts, row, values)) / Math.max(1, objective),
    );
  }
  const loads = loadsOf(problem, plan);
  return [...worth]
    .map(([resource, weight]) => ({
      resource,
      weight,
      load: Math.min(1, loads.get(resource) ?? 0),
      sentence: sayBind(resource, weight, loads.get(resource)),
    }))
    .filter((bind) => bind.weight >= WORTH_SAYING)
    .sort((a, b) => b.weight - a.weight || a.resource.localeCompare(b.resource));
}

/** How much of the resource the row hands out: its upper bound, or, where that is 0, what is drawn from it. */
function amountOf({ programme }: CampaignProgramme, row: number, values: Float64Array): number {
  const bound = Math.max(
    Math.abs(finite(programme.rowUpper[row])),
    Math.abs(finite(programme.rowLower[row])),
  );
  if (bound > 0) return bound;
  let drawn = 0;
  for (let at = programme.starts[row] ?? 0; at < (programme.starts[row + 1] ?? 0); at++) {
    const term = (programme.values[at] ?? 0) * (values[programme.indices[at] ?? 0] ?? 0);
    if (term > 0) drawn += term;
  }
  return drawn;
}

const finite = (bound: number | undefined): number =>
  bound !== undefined && Number.isFinite(bound) ? bound : 0;

/** Used over available until the last day of the plan. */
function loadsOf(problem: PlanProblem, plan: Walk): Map<string, number> {
  const until = Math.max(0, plan.lastDay);
  const used = new Map<string, number>();
  const there = new Map<string, number>();
  const add = (map: Map<string, number>, key: string, amount: number): void => {
    map.set(key, (map.get(key) ?? 0) + amount);
  };
  for (const [station, minutes] of problem.stations)
    for (let d = 0; d <= until; d++) add(there, station, minutes[d] ?? 0);
  problem.hands.forEach((hand, p) => {
    const role = `hands:${hand.person.role}`;
    for (let d = 0; d <= until; d++) {
      add(there, role, hand.minutes[d] ?? 0);
      if (plan.exposed[p]?.[d]) {
        add(used, role, problem.overhead.clean + problem.overhead.exposed);
        add(used, "mould minutes", problem.exposedMinutesADay);
      }
      if (hand.mayMould[d] && (hand.minutes[d] ?? 0) > 0 && problem.weekday[d] === 0)
        add(there, "mould minutes", problem.exposedDaysAWeek * problem.exposedMinutesADay);
    }
  });
  for (const piece of plan.pieces) {
    const kind = KINDS[piece.job.tasks[piece.task]?.kind ?? 0];
    if (kind?.station) add(used, kind.station, piece.minutes);
    add(used, `hands:${problem.hands[piece.person]?.person.role}`, piece.minutes);
  }
  return new Map([...there].map(([key, minutes]) => [key, minutes > 0 ? (used.get(key) ?? 0) / minutes : 0]));
}

function sayBind(resource: string, weight: number, load: number | undefined): string {
  const used =
    load === undefined
      ? ""
      : ` Of it ${Math.round(Math.min(1, load) * 100)} % is used until the last item is boxed.`;
  const holds = resource === "mould minutes" || resource.startsWith("hands:") ? "hold" : "holds";
  return `${nameOf(resource)} ${holds} the plan back.${used} One per cent more of it would save about ${weight.toPrecision(1)} % of all waiting days.`;
}

function nameOf(resource: string): string {
  if (resource === "ward") return "Space in the Ward";
  if (resource === "mould minutes") return "The minutes people may still spend near mould";
  if (resource.startsWith("hands:")) return `The hours of the ${resource.slice(6)}`;
  if (resource.startsWith("store:")) return `The store of ${resource.slice(6)}`;
  return `The ${resource}`;
}
