import type { ItemChance } from "../plan.ts";
import type { Job, PlanProblem } from "../problem.ts";
import type { Walk } from "../walk.ts";
import { rangeOf } from "./simulate.ts";

/** Camera day and box day of every item in every simulated campaign: two numbers of 16 bits each, so 20,000 items and 50 campaigns take 4 MB. */
export class ItemDraws {
  private readonly image: Int16Array;
  private readonly box: Int16Array;
  private readonly late: Uint16Array;
  private readonly last: Uint16Array;

  constructor(
    private readonly problem: PlanProblem,
    private readonly draws: number,
  ) {
    const { length } = problem.jobs;
    this.image = new Int16Array(length * draws);
    this.box = new Int16Array(length * draws);
    this.late = new Uint16Array(length);
    this.last = new Uint16Array(length);
  }

  /** Takes note of one campaign. */
  note({ ends, boxed, lastDay }: Walk, draw: number): void {
    const { jobs, days } = this.problem;
    const never = days.length;
    const finish = boxed === jobs.length ? lastDay : never;
    const dayOf = (end: number | undefined): number => (end === undefined || end < 0 ? never : end);
    jobs.forEach((job, j) => {
      const own = ends.get(job);
      const image = dayOf(own?.[imageAt(job)]);
      const box = dayOf(own?.[job.tasks.length - 1]);
      this.image[j * this.draws + draw] = image;
      this.box[j * this.draws + draw] = box;
      const afterDue = job.due !== null && imageAt(job) >= 0 && image > job.due;
      if (afterDue || box === never) this.late[j] = (this.late[j] ?? 0) + 1;
      if (box === finish) this.last[j] = (this.last[j] ?? 0) + 1;
    });
  }

  chances(): ItemChance[] {
    const { draws, problem } = this;
    return problem.jobs.map((job, j) => {
      const own = (days: Int16Array): Int16Array => days.subarray(j * draws, (j + 1) * draws).sort();
      const box = own(this.box);
      return {
        item: job.item.id,
        must: job.item.priority === "must",
        image: imageAt(job) < 0 ? null : rangeOf(problem, own(this.image)),
        box: rangeOf(problem, box),
        boxed: box.filter((day) => day < problem.days.length).length / draws,
        late: (this.late[j] ?? 0) / draws,
        last: (this.last[j] ?? 0) / draws,
      };
    });
  }
}

const imageAt = (job: Job): number => job.tasks.findIndex((task) => task.act === "image");

const WATCHED = 10;

/** The items to keep an eye on, of those the plan boxes: most often late, then most often last; never those that never are. */
export const watchOf = (chances: readonly ItemChance[], isLeft: (item: string) => boolean): string[] =>
  chances
    .filter(({ item, late, last }) => late + last > 0 && !isLeft(item))
    .sort((a, b) => b.late - a.late || b.last - a.last || a.item.localeCompare(b.item))
    .slice(0, WATCHED)
    .map(({ item }) => item);
