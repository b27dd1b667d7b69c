/** How `npm run build` makes dist: the core as one file, the other entries with what they share in chunks of their own. */
import { existsSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { resolve } from "node:path";
import type { Plugin } from "esbuild";
import { designJsonSchema } from "../src/files/json-schema.js";

/** The built files that others import, and the sources that they are made of. */
export const ENTRIES: Readonly<Record<string, string>> = present({
  index: "src/index.ts",
  card: "src/card/index.ts",
  units: "src/units/index.ts",
  files: "src/files/index.ts",
  draw: "src/draw/index.ts",
  notebook: "src/notebook/index.ts",
  measured: "src/measured/index.ts",
  chance: "src/chance/index.ts",
});

/** Those whose sources are there. */
function present(entries: Readonly<Record<string, string>>): Record<string, string> {
  return Object.fromEntries(Object.entries(entries).filter(([, source]) => existsSync(source)));
}

const SENTENCE = /\b(?:says|source):\s*(?:"(?:[^"\\]|\\.)*"|'(?:[^'\\]|\\.)*'|COMMON_PRACTICE),?/g;

/** Leaves what the table of fields says to readers alone out of what is bundled. */
export const withoutSentences: Plugin = {
  name: "without-sentences",
  setup: ({ onLoad }) => {
    onLoad({ filter: /src[/\\]design[/\\]fields\.ts$/ }, ({ path }) => ({
      contents: readFileSync(path, "utf8").replace(SENTENCE, ""),
      loader: "ts",
    }));
  },
};

/** Puts the thread pool into an ES module: its form for Node, which requires what Node brings along. */
const threads: Plugin = {
  name: "threads",
  setup: ({ onResolve, onLoad }) => {
    onResolve({ filter: /^workerpool$/ }, () => ({
      path: resolve("node_modules/workerpool/src/index.js"),
    }));
    onResolve({ filter: /^(?:child_process|os|worker_threads)$/ }, ({ path }) => ({
      path,
      namespace: "builtin",
    }));
    onLoad({ filter: /./, namespace: "builtin" }, ({ path }) => ({
      contents: `export * from "node:${path}";`,
    }));
    // a worker for pages, which a command never asks for
    onLoad({ filter: /workerpool[/\\].*embeddedWorker\.js$/ }, () => ({ contents: "" }));
  },
};

const COMMON = {
  format: ["esm", "cjs"],
  target: "es2022",
  platform: "neutral",
  treeshake: false,
  sourcemap: false,
  silent: true,
  removeNodeProtocol: false,
  external: [/^node:/],
};

export default function config() {
  rmSync("dist", { recursive: true, force: true });
  const { index, ...others } = ENTRIES;
  return [
    {
      ...COMMON,
      entry: { index: index as string },
      splitting: false,
      esbuildPlugins: [withoutSentences],
    },
    {
      ...COMMON,
      entry: { ...others, cli: "src/shell/cli.ts" },
      splitting: true,
      esbuildPlugins: [threads],
      dts: { entry: ENTRIES, compilerOptions: { ignoreDeprecations: "6.0" } },
      onSuccess: async () => {
        writeFileSync(
          "dist/design.schema.json",
          `${JSON.stringify(designJsonSchema(), null, 2)}\n`,
        );
      },
    },
  ];
}
