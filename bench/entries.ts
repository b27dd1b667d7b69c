/** Each entry of the package as its users get it: how large, how long to load, and what it brings along. */
import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { gzipSync } from "node:zlib";
import { type BuildOptions, build } from "esbuild";
import { median } from "./timing.js";

/** What was measured of one entry. */
export interface Entry {
  readonly name: string;
  /** Minified, and that gzipped, bytes. */
  readonly minified: number;
  readonly gzipped: number;
  /** More than an empty module takes, ms. */
  readonly load: number;
}

/** What the package says of itself. */
const PACKAGE = JSON.parse(readFileSync("package.json", "utf8"));
/** Its entries, each the name of the built file and the source that it is built of; the command is none. */
const { cli: _, ...SOURCES }: Readonly<Record<string, string>> = PACKAGE.tsup.entry;
const WORK = "node_modules/.cache/bench-entries";

/** Measures every entry that is there. */
export async function measureEntries(rounds: number): Promise<Entry[]> {
  const names = Object.keys(SOURCES);
  rmSync(WORK, { recursive: true, force: true });
  mkdirSync(WORK, { recursive: true });
  writeFileSync(`${WORK}/package.json`, '{ "type": "module" }\n');
  writeFileSync(`${WORK}/empty.js`, "export {};\n");
  await splitBuild(names);
  const loads = loadTimes(names, rounds);
  const sizes = await Promise.all(names.map((name) => sizesOf(SOURCES[name] as string)));
  return names.map((name, i) => ({
    name: name === "index" ? PACKAGE.name : `${PACKAGE.name}/${name}`,
    minified: sizes[i]?.minified as number,
    gzipped: sizes[i]?.gzipped as number,
    load: loads[i] as number,
  }));
}

/** How many packages an installation brings along. */
export function packages(): number {
  return Object.keys(PACKAGE.dependencies ?? {}).length;
}

const PLATFORM: BuildOptions = {
  bundle: true,
  format: "esm",
  target: "es2022",
  platform: "neutral",
  mainFields: ["module", "main"],
  logLevel: "warning",
};

/** As the package is built: entries share their common parts. */
async function splitBuild(names: readonly string[]): Promise<void> {
  const entryPoints = names.map((name) => ({ in: SOURCES[name] as string, out: name }));
  await build({ ...PLATFORM, entryPoints, splitting: true, outdir: WORK });
}

async function sizesOf(entry: string): Promise<{ minified: number; gzipped: number }> {
  const { outputFiles } = await build({
    ...PLATFORM,
    entryPoints: [entry],
    minify: true,
    write: false,
  });
  const text = outputFiles?.[0]?.contents ?? new Uint8Array();
  return { minified: text.length, gzipped: gzipSync(text, { level: 9 }).length };
}

/** Medians of fresh processes, the entries and an empty module in turn; less the empty module's. */
function loadTimes(names: readonly string[], rounds: number): number[] {
  const files = ["empty", ...names];
  const times = files.map((): number[] => []);
  for (let round = 0; round < rounds; round++) {
    files.forEach((file, i) => {
      times[i]?.push(loadTime(`${WORK}/${file}.js`));
    });
  }
  const [empty, ...loaded] = times.map(median);
  return loaded.map((ms) => ms - (empty as number));
}

function loadTime(file: string): number {
  const url = JSON.stringify(pathToFileURL(file).href);
  const code = `const t = performance.now(); await import(${url}); console.log(performance.now() - t);`;
  const { stdout, stderr } = spawnSync(process.execPath, ["--input-type=module", "--eval", code], {
    encoding: "utf8",
  });
  const ms = Number.parseFloat(stdout);
  if (!(ms > 0)) throw new Error(`${file}: ${stderr}`);
  return ms;
}
