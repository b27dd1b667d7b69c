/** The tests that mutants face: those that hold the geometry, the windows and the stop plan, on fewer cases each. */
import { defineConfig } from "vitest/config";

process.env.FUZZ ??= "200";
process.env.STATES ??= "200";

export default defineConfig({
  test: {
    include: ["test/{check,outside,properties,fanned,trust}/**/*.test.ts"],
    setupFiles: ["test/setup.ts"],
    testTimeout: 60_000,
  },
});
