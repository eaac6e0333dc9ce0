import type { WriteStream } from "node:tty";
import type { PlanStep } from "../../core/plan/improve/course.ts";
import { sayPlanStep } from "../../core/say/plan-step.ts";

/** Where nobody watches a line move, one is written this often. */
const LINE_EVERY_MS = 4000;

/** Tells how planning goes: on a terminal in one line that is written over, elsewhere in a line every few seconds. */
export class PlanningLine {
  private last = performance.now();
  private shown = 0;

  constructor(
    private readonly complain: (line: string) => void,
    private readonly screen: Pick<WriteStream, "isTTY" | "write" | "columns"> = process.stderr,
  ) {}

  step(at: PlanStep): void {
    const words = sayPlanStep(at);
    if (this.screen.isTTY) {
      const line = words.slice(0, (this.screen.columns || 80) - 1);
      this.screen.write(`\r${line.padEnd(this.shown)}`);
      this.shown = line.length;
    } else if (performance.now() - this.last >= LINE_EVERY_MS) {
      this.last = performance.now();
      this.complain(words);
    }
  }

  /** The moving line is taken away. */
  end(): void {
    if (this.shown > 0) this.screen.write(`\r${" ".repeat(this.shown)}\r`);
    this.shown = 0;
  }
}
