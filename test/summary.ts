import type { Reporter, TestModule } from "vitest/node";

/** Closes a run with one plain line that any reader of logs can count. */
export default class Summary implements Reporter {
  onTestRunEnd(modules: readonly TestModule[]): void {
    const counts = { passed: 0, failed: 0, skipped: 0 };
    for (const module of modules) {
      for (const test of module.children.allTests()) {
        const { state } = test.result();
        if (state !== "pending") counts[state]++;
      }
      // a file that could not be loaded holds no test, and is a failure
      if (module.state() === "failed" && module.errors().length > 0) counts.failed++;
    }
    console.log(`${counts.passed} passed, ${counts.failed} failed, ${counts.skipped} skipped`);
  }
}
