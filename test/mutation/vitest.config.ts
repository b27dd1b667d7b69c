/**
 * The tests that mutants face. MUTANTS=quick: those that take less than some hundredths of a second each and hold the
 * geometry, the windows and the stop plan; else all that hold them.
 */
import { defineConfig } from "vitest/config";

process.env.FUZZ ??= "200";
process.env.STATES ??= "500";

const QUICK = [
  "test/{geometry,layout,windows,bench-work}/*.test.ts",
  "test/check/{arguments,windows,bench-work,findings,repair,bad-input}.test.ts",
  "test/outside/{segments,drill-points,layout}.test.ts",
  "test/properties/sagitta.test.ts",
  "test/properties/stops.test.ts",
  "test/fanned/open.test.ts",
];
const ALL = [...QUICK, "test/{outside,properties,fanned,trust}/**/*.test.ts"];

export default defineConfig({
  test: {
    include: process.env.MUTANTS === "quick" ? QUICK : ALL,
    setupFiles: ["test/setup.ts"],
    testTimeout: 60_000,
  },
});
