/** The tests that mutants face, by MUTANTS: those nearest to a room of src, or all that run in this process. */
import { defineConfig } from "vitest/config";
import type { Reporter, Vitest } from "vitest/node";

process.env.FUZZ ??= "200";
process.env.STATES ??= "500";
process.env.CASES ??= "40";

const GEOMETRY = [
  "test/{geometry,layout,windows,bench-work}/*.test.ts",
  "test/outside/{segments,conic,drill-points,layout}.test.ts",
];
const CHECK = ["test/check/!(card*).test.ts", "test/remedies/remedies.test.ts"];
const CARD = [
  "test/check/{card*,plain-words,text-layout,sentences}.test.ts",
  "test/units/format-length.test.ts",
];
/** Too slow for every mutant, or they look at what is built. */
const NOT_HERE = ["test/files/fuzz.test.ts", "test/draw/figures.test.ts", "test/*/entry.test.ts"];

/** By room: its own tests, and those of the rooms that show it. */
const NEAREST: Readonly<Record<string, readonly string[]>> = {
  errors: [...CHECK, "test/design/*.test.ts"],
  geometry: [
    ...GEOMETRY,
    "test/batch/radius.test.ts",
    "test/properties/sagitta.test.ts",
    "test/check/arguments.test.ts",
  ],
  text: [...CARD, "test/check/*.test.ts"],
  design: ["test/{design,files}/*.test.ts", ...CHECK],
  board: [...GEOMETRY, ...CHECK, "test/batch/radius.test.ts"],
  drilling: [...GEOMETRY, ...CHECK],
  report: [...CHECK, ...CARD, "test/bench-work/*.test.ts"],
  batch: ["test/batch/*.test.ts", "test/check/arguments.test.ts"],
  measured: ["test/measured/*.test.ts"],
  chance: ["test/chance/*.test.ts", "test/chance/judge.long.ts"],
  card: CARD,
  units: ["test/units/*.test.ts"],
  files: ["test/{files,design}/*.test.ts"],
  draw: ["test/draw/*.test.ts", "test/mutation/pictures.ts"],
  notebook: ["test/notebook/*.test.ts"],
  shell: ["test/shell/*.test.ts"],
};

const ALL = [
  ...new Set(Object.entries(NEAREST).flatMap(([room, tests]) => (room === "shell" ? [] : tests))),
  "test/{properties,trust,outside}/*.test.ts",
];

/** A mutant that no test file can be loaded with is noticed, though no test of the file failed. */
function failsAtLoad(): Reporter {
  let run: Vitest | undefined;
  return {
    onInit: (vitest) => {
      run = vitest;
    },
    onTestModuleEnd: (file) => {
      for (const { message } of file.errors()) run?.state.errorsSet.add(new Error(message));
    },
  };
}

const { MUTANTS = "all" } = process.env;
/** Half of the time of all. */
const OF_CHANCE = MUTANTS === "chance" ? [] : ["test/chance/judge.long.ts"];
const root = new URL("../../", import.meta.url).pathname;

export default defineConfig({
  resolve: {
    alias: [
      { find: /^marker-depth$/, replacement: `${root}src/index.ts` },
      { find: /^marker-depth\/(draw|measured)$/, replacement: `${root}src/$1/index.ts` },
    ],
  },
  test: {
    include: [...(NEAREST[MUTANTS] ?? ALL)],
    exclude: [...NOT_HERE, ...OF_CHANCE],
    // the copy that is broken lies in node_modules, where scripts are else run as they are
    server: { deps: { inline: [/docs\/pictures/, /stryker-setup/] } },
    setupFiles: ["test/setup.ts", ...(MUTANTS === "shell" ? ["test/mutation/command.ts"] : [])],
    globalSetup: MUTANTS === "shell" ? ["test/mutation/build.ts"] : [],
    // one worker for all files of a run: to load src anew for each costs more than most tests
    isolate: false,
    maxWorkers: 1,
    testTimeout: 60_000,
    reporters: ["default", failsAtLoad()],
  },
});
