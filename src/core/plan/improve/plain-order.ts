import { type Guide, USUAL_MANNER } from "../guide.ts";
import type { PlanProblem } from "../problem.ts";

/** A guide without a programme, to compare with: due day first, then must-do items, then the order of the list; near mould whenever there is such work. */
export function plainOrder(problem: PlanProblem): Guide {
  const last = problem.days.length;
  const must = (priority: string): number => (priority === "must" ? 0 : 1);
  const order = [...problem.jobs].sort(
    (a, b) => (a.due ?? last) - (b.due ?? last) || must(a.item.priority) - must(b.item.priority),
  );
  return {
    wanted: new Map(order.map((job, at) => [job, new Float64Array(job.tasks.length).fill(at)])),
    exposedBy: problem.hands.map(() => new Float64Array(last).fill(last)),
    worth: [],
    manner: { ...USUAL_MANNER, session: 1 },
  };
}
