/**
 * The tests that mutants face, by MUTANTS. For the geometry, the windows and the stop plan: quick, some seconds in all.
 * For the rest of src those nearest to it: core, sweeps, cures, card, draw, chart, files, units, notebook, shell. For
 * what survives those: wide, drawn, doors, or all that run in this process.
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
/** Too slow, or they look at what is built. */
const NOT_HERE = ["test/files/fuzz.test.ts", "test/draw/figures.test.ts", "test/*/entry.test.ts"];
/** Too slow for every mutant. */
const SLOW = ["test/files/json-schema.test.ts", "test/draw/layout.test.ts"];
const WIDE = [
  ...QUICK,
  "test/mutation/pictures.ts",
  "test/{check,outside,batch,units,files,draw,notebook}/*.test.ts",
];
const FACED: Readonly<Record<string, readonly string[]>> = {
  quick: QUICK,
  core: [
    ...QUICK,
    "test/check/{changes,limits,places,plain-words,refusals,report,sentences}.test.ts",
    "test/batch/{grid,paths,many}.test.ts",
  ],
  sweeps: ["test/batch/*.test.ts", "test/check/arguments.test.ts"],
  cures: ["test/check/{changes,remedies,threshold}.test.ts"],
  card: [
    "test/check/{card,card-text,plain-words,text-layout,sentences,places}.test.ts",
    "test/units/format-length.test.ts",
  ],
  draw: ["test/draw/!(document|sweep*).test.ts", "test/mutation/pictures.ts"],
  chart: ["test/draw/{parts,sweep*}.test.ts", "test/mutation/pictures.ts"],
  files: ["test/files/*.test.ts"],
  units: ["test/units/*.test.ts"],
  notebook: ["test/notebook/*.test.ts"],
  shell: ["test/shell/*.test.ts"],
  wide: WIDE,
  drawn: ["test/draw/*.test.ts"],
  doors: ["test/{files,units,notebook}/*.test.ts", "test/draw/document.test.ts"],
  all: [...WIDE, "test/{properties,fanned,trust}/*.test.ts"],
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
    include: [...(FACED[MUTANTS] ?? [])],
    exclude: ["drawn", "doors"].includes(MUTANTS) ? NOT_HERE : [...NOT_HERE, ...SLOW],
    // the copy that is broken lies in node_modules, where scripts are else run as they are
    server: { deps: { inline: [/docs\/pictures/, /stryker-setup/] } },
    setupFiles: ["test/setup.ts", ...(MUTANTS === "shell" ? ["test/mutation/command.ts"] : [])],
    globalSetup: MUTANTS === "shell" ? ["test/mutation/build.ts"] : [],
    // one worker for all files of a run: to load src anew for each costs more than most tests
    isolate: false,
    maxWorkers: 1,
    testTimeout: 60_000,
  },
});
