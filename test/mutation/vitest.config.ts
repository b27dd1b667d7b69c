/**
 * The tests that mutants face. MUTANTS=quick: those that take some tenths of a second and hold the geometry, the windows
 * and the stop plan; sample: those of all of src that run in this process and take seconds at most; else all that do.
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
/** Slow ones, and those that look at a bundle. */
const NOT_HERE = [
  "test/files/{fuzz,json-schema}.test.ts",
  "test/draw/{layout,figures}.test.ts",
  "test/*/entry.test.ts",
];
const SAMPLE = [
  ...QUICK,
  "test/mutation/pictures.ts",
  "test/{check,outside,batch,units,files,draw,notebook}/*.test.ts",
];
const ALL = [...SAMPLE, "test/{properties,fanned,trust}/*.test.ts"];

const { MUTANTS } = process.env;
const root = new URL("../../", import.meta.url).pathname;

export default defineConfig({
  resolve: {
    alias: [
      { find: /^marker-depth$/, replacement: `${root}src/index.ts` },
      { find: /^marker-depth\/draw$/, replacement: `${root}src/draw/index.ts` },
    ],
  },
  test: {
    include: MUTANTS === "quick" ? QUICK : MUTANTS === "sample" ? SAMPLE : ALL,
    exclude: NOT_HERE,
    // the copy that is broken lies in node_modules, where scripts are else run as they are
    server: { deps: { inline: [/docs\/pictures/] } },
    setupFiles: ["test/setup.ts"],
    testTimeout: 60_000,
  },
});
