/** Each entry of the package as its users get it: how large, how long to load, and what it brings along. */
import { spawnSync } from "node:child_process";
import { mkdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { pathToFileURL } from "node:url";
import { gzipSync } from "node:zlib";
import { type BuildOptions, build } from "esbuild";
import { ENTRIES, withoutSentences } from "../.ci/tsup.config.js";
import { CLOCK, median } from "./timing.js";

/** What was measured of one entry. */
export interface Entry {
  readonly name: string;
  /** Minified, and that gzipped, bytes. */
  readonly minified: number;
  readonly gzipped: number;
  /** More than an empty module takes, ms. */
  readonly load: number;
  /** That, against the same entry in one file by itself. */
  readonly ratio: number;
}

/** What the package says of itself. */
const PACKAGE = JSON.parse(readFileSync("package.json", "utf8"));
const WORK = "node_modules/.cache/bench-entries";

/** Measures every entry that is there. */
export async function measureEntries(rounds: number): Promise<Entry[]> {
  const names = Object.keys(ENTRIES);
  rmSync(WORK, { recursive: true, force: true });
  mkdirSync(WORK, { recursive: true });
  writeFileSync(`${WORK}/package.json`, '{ "type": "module" }\n');
  writeFileSync(`${WORK}/empty.js`, "export {};\n");
  await splitBuild(names);
  await singleBuild(names);
  const loads = loadTimes([...names, ...names.map(aloneName)], rounds);
  const sizes = await Promise.all(names.map(sizesOf));
  return names.map((name, i) => ({
    name: name === "index" ? PACKAGE.name : `${PACKAGE.name}/${name}`,
    minified: sizes[i]?.minified as number,
    gzipped: sizes[i]?.gzipped as number,
    load: loads[i] as number,
    ratio: (loads[i] as number) / (loads[names.length + i] as number),
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
  external: ["node:*"],
  logLevel: "warning",
};

/** What the core leaves out of its bundle. */
function pluginsOf(name: string): NonNullable<BuildOptions["plugins"]> {
  return name === "index" ? [withoutSentences] : [];
}

/** As the package is built: the core is one file, the other entries share their common parts. */
async function splitBuild(names: readonly string[]): Promise<void> {
  const entries = names.map((name) => ({ in: ENTRIES[name] as string, out: name }));
  const core = entries.filter(({ out }) => out === "index");
  const others = entries.filter(({ out }) => out !== "index");
  await build({ ...PLATFORM, entryPoints: core, plugins: pluginsOf("index"), outdir: WORK });
  await build({ ...PLATFORM, entryPoints: others, splitting: true, outdir: WORK });
}

/** Each entry in one file, with nothing shared. */
async function singleBuild(names: readonly string[]): Promise<void> {
  for (const name of names) {
    const entryPoints = [{ in: ENTRIES[name] as string, out: aloneName(name) }];
    await build({ ...PLATFORM, entryPoints, plugins: pluginsOf(name), outdir: WORK });
  }
}

function aloneName(name: string): string {
  return `${name}-alone`;
}

async function sizesOf(name: string): Promise<{ minified: number; gzipped: number }> {
  const { outputFiles } = await build({
    ...PLATFORM,
    entryPoints: [ENTRIES[name] as string],
    plugins: pluginsOf(name),
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
  const now =
    CLOCK === "wall"
      ? "performance.now()"
      : "(({ user, system }) => (user + system) / 1e3)(process.cpuUsage())";
  const code = `const t = ${now}; await import(${url}); console.log(${now} - t);`;
  const { stdout, stderr } = spawnSync(process.execPath, ["--input-type=module", "--eval", code], {
    encoding: "utf8",
  });
  const ms = Number.parseFloat(stdout);
  if (!(ms > 0)) throw new Error(`${file}: ${stderr}`);
  return ms;
}
