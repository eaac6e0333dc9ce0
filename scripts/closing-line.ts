import type { Reporter, TestModule } from "vitest/node";

/** Closes the run with the plain line `N passed, N failed, N skipped`, which any log reader understands. */
export default class ClosingLine implements Reporter {
  onTestRunEnd(modules: ReadonlyArray<TestModule>, unhandled: ReadonlyArray<unknown>): void {
    const count = { passed: 0, failed: unhandled.length, skipped: 0 };
    for (const module of modules) {
      if (module.state() === "failed" && module.errors().length > 0) count.failed++;
      for (const test of module.children.allTests()) {
        const state = test.result().state;
        if (state !== "pending") count[state]++;
      }
    }
    console.log(`\n${count.passed} passed, ${count.failed} failed, ${count.skipped} skipped`);
  }
}
