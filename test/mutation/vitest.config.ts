/**
 * The tests that mutants face. MUTANTS=quick: those that take some tenths of a second and hold the geometry, the windows
 * and the stop plan; brisk: those of all of src that take a second or two at most; wide: the slower ones too; else all
 * that run in this process.
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
const WIDE = [
  ...QUICK,
  "test/mutation/pictures.ts",
  "test/{check,outside,batch,units,files,draw,notebook}/*.test.ts",
];
const ALL = [...WIDE, "test/{properties,fanned,trust}/*.test.ts"];
/** What takes seconds. */
const SLOW = [
  "test/files/{length,json}.test.ts",
  "test/check/remedies.test.ts",
  "test/batch/{stages,sweep}.test.ts",
  "test/notebook/html.test.ts",
  "test/outside/{conic,precision}.test.ts",
  "test/units/length-properties.test.ts",
];
const FACED: Readonly<Record<string, readonly string[]>> = {
  quick: QUICK,
  brisk: WIDE,
  wide: WIDE,
};

const { MUTANTS = "all" } = process.env;
const root = new URL("../../", import.meta.url).pathname;

export default defineConfig({
  resolve: {
    alias: [
      { find: /^marker-depth$/, replacement: `${root}src/index.ts` },
      { find: /^marker-depth\/draw$/, replacement: `${root}src/draw/index.ts` },
    ],
  },
  test: {
    include: [...(FACED[MUTANTS] ?? ALL)],
    exclude: MUTANTS === "brisk" ? [...NOT_HERE, ...SLOW] : NOT_HERE,
    // the copy that is broken lies in node_modules, where scripts are else run as they are
    server: { deps: { inline: [/docs\/pictures/, /stryker-setup/] } },
    setupFiles: ["test/setup.ts"],
    // one worker for all files of a run: to load src anew for each costs more than most tests
    isolate: false,
    maxWorkers: 1,
    testTimeout: 60_000,
  },
});
