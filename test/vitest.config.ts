import { defineConfig } from "vitest/config";

/** The suites that take longest, `*.long.ts`, run by themselves after all others. */
const suites = process.env.LONG === undefined ? "test" : "long";

export default defineConfig({
  root: new URL("..", import.meta.url).pathname,
  test: {
    include: [`test/**/*.${suites}.ts`],
    setupFiles: ["test/setup.ts"],
    testTimeout: 120_000,
    // left to itself it keeps one core free
    maxWorkers: "100%",
    reporters: ["default", "./test/summary.ts"],
  },
});
