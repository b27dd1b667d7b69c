// Breaks src in every small way, and lists what no test noticed. First the tests nearest to a file are run, then all
// others against what survived.
//   npm run mutation                  the geometry, the windows and the stop plan
//   npm run mutation -- sagitta card  these files of src alone
//   npm run mutation -- all           all of src; hours
//   --quick                           the nearest tests alone
//   --sample 20                       of all of src one line in 20, drawn by SEED
// A survivor that is proved to change nothing stands in equivalent.json with its reason; any other fails the run, and
// so does a reason for what does not survive. A sample and all of src fail where more than 5 % are neither.
import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { mersenne } from "pure-rand/generator/mersenne";

const GEOMETRY = [
  "sagitta",
  "surface",
  "removal",
  "greatest-removal",
  "least-removal",
  "footprint",
  "polygon",
];
const LAYOUT = ["track", "temperament", "fret-lines", "markers", "pockets", "slot-ends"];
const WORK = ["bits", "windows", "stops", "slots", "edges", "clearances", "side-dots", "pour"];

const SWEEPS = ["grid", "paths", "stages", "sweep", "frontier", "check-many"];

const CORE = [...GEOMETRY, ...LAYOUT, ...WORK];

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: { quick: { type: "boolean", default: false }, sample: { type: "string" } },
});
const { quick, sample } = values;
const all = positionals.includes("all");
const names = all ? allNames() : (positionals.length > 0 ? positionals : CORE).map(nameOf);
const seed = Number(process.env.SEED ?? 20261125);
const equivalent = JSON.parse(readFileSync(new URL("equivalent.json", import.meta.url), "utf8"));

/** Runs the mutants of these places; every one with what came of it. */
function tried(places, tests) {
  const args = ["stryker", "run", "test/mutation/stryker.json", "--mutate", places.join(",")];
  // the command runs in children of its own, where no one sees which test meets what
  if (tests === "shell") args.push("--coverageAnalysis", "off");
  // the seed draws lines; the tests keep their own
  const env = { ...process.env, MUTANTS: tests, SEED: undefined };
  const { status } = spawnSync("npx", args, { stdio: ["ignore", "inherit", "inherit"], env });
  if (status !== 0) process.exit(status ?? 1);
  const { files } = JSON.parse(readFileSync("node_modules/.cache/mutation.json", "utf8"));
  return Object.entries(files).flatMap(([file, { mutants, source }]) =>
    mutants.map((mutant) => ({ file, source, ...mutant })),
  );
}

const lives = ({ status }) => status === "Survived" || status === "NoCoverage";
const counts = ({ status }) => !["Ignored", "CompileError"].includes(status);
const placeOf = ({ file, location: { start, end } }) =>
  `${file}:${start.line}:${start.column - 1}-${end.line}:${end.column - 1}`;
const keyOf = (mutant) => `${placeOf(mutant)} ${mutant.replacement}`;

const oneLine = (text) => text.replace(/\s+/g, " ").trim();

/** What stood where the mutant stands. */
function textAt({ source, location: { start, end } }) {
  const lines = source.split("\n").slice(start.line - 1, end.line);
  lines[lines.length - 1] = lines[lines.length - 1].slice(0, end.column - 1);
  lines[0] = lines[0].slice(start.column - 1);
  return oneLine(lines.join(" "));
}

/** The line on which it begins: the same few signs may stand in many places. */
function lineAt({ source, location: { start } }) {
  return oneLine(source.split("\n")[start.line - 1]);
}

/** The proof that a mutant changes nothing, if one is written down. */
function proofOf(mutant) {
  return equivalent[mutant.file]?.find(
    ({ line, from, to }) =>
      line === lineAt(mutant) && from === textAt(mutant) && to === oneLine(mutant.replacement),
  );
}

/** A file of src, by its name with its room before it or without. */
function nameOf(name) {
  const found = allNames().filter((known) => known === name || known.endsWith(`/${name}`));
  if (found.length !== 1) throw new Error(`${name}: ${found.length} files of src are called so`);
  return found[0];
}

/** All files of src by their names, those of the command last. */
function allNames() {
  const names = readdirSync("src", { recursive: true })
    .filter((file) => file.endsWith(".ts"))
    .map((file) => file.replace(/\.ts$/, ""))
    .sort();
  const isShell = (name) => name.startsWith("shell");
  return [...names.filter((name) => !isShell(name)), ...names.filter(isShell)];
}

/** One line in so many of all of src. */
function linesDrawn(oneIn) {
  const lines = allNames().flatMap((name) =>
    readFileSync(`src/${name}.ts`, "utf8")
      .split("\n")
      .map((_, i) => `src/${name}.ts:${i + 1}-${i + 1}`),
  );
  const generator = mersenne(seed);
  return lines.filter(() => uniformFloat64(generator) < 1 / oneIn);
}

/** The tests nearest to a place in src, by their name in vitest.config.ts. */
function nearest(place) {
  const [, name] = /^src\/([\w/-]+)\.ts/.exec(place);
  const [folder, file] = name.split("/");
  if (name.startsWith("draw/sweep")) return "chart";
  if (["card", "draw", "files", "units", "notebook", "shell"].includes(folder)) return folder;
  if (["text-layout", "length-text", "plain-words"].includes(file)) return "card";
  if (["remedies", "threshold"].includes(file)) return "cures";
  if (SWEEPS.includes(file)) return "sweeps";
  return CORE.includes(file) ? "quick" : "core";
}

/** Runs the mutants of these places, each against the tests that its place is given. */
function triedBy(testsOf, places) {
  const kinds = [...new Set(places.map(testsOf))];
  return kinds.flatMap((tests) =>
    tried(
      places.filter((place) => testsOf(place) === tests),
      tests,
    ),
  );
}

const places = sample ? linesDrawn(Number(sample)) : names.map((name) => `src/${name}.ts`);
const mutants = triedBy(nearest, places).filter(counts);
let alive = mutants.filter(lives);
if (!quick) {
  const others = (place) => {
    const kind = nearest(place);
    if (["files", "units", "notebook"].includes(kind)) return "doors";
    return { quick: "all", draw: "drawn", chart: "drawn" }[kind] ?? "wide";
  };
  // no other tests run the command
  const unproved = alive.filter(
    (mutant) => proofOf(mutant) === undefined && nearest(mutant.file) !== "shell",
  );
  const again = triedBy(others, [...new Set(unproved.map(placeOf))])
    .filter(lives)
    .map(keyOf);
  alive = alive.filter((mutant) => !unproved.includes(mutant) || again.includes(keyOf(mutant)));
}
const proofs = alive.map(proofOf);
const open = alive.filter((_, i) => proofs[i] === undefined);
// on a busy machine one that changes nothing may run out of time
const met = mutants.filter((mutant) => lives(mutant) || mutant.status === "Timeout").map(proofOf);
const idle = sample
  ? []
  : [...new Set(mutants.map(({ file }) => file))].flatMap((file) =>
      (equivalent[file] ?? [])
        .filter((proof) => !met.includes(proof))
        .map((proof) => ({ file, ...proof })),
    );
const killed = mutants.length - alive.length;
console.log(
  `${mutants.length} mutants, ${killed} killed (${((100 * killed) / mutants.length).toFixed(1)} %)`,
);
console.log(`${alive.length - open.length} proved equivalent, ${open.length} neither`);
for (const mutant of open) {
  console.log(
    `${placeOf(mutant)}\n  ${lineAt(mutant)}\n  - ${textAt(mutant)}\n  + ${oneLine(mutant.replacement)}`,
  );
}
for (const { file, line, from, to } of idle) {
  console.log(`a proof for no survivor: ${file}: ${line}: ${from} -> ${to}`);
}
const allowed = sample || all ? 0.05 * mutants.length : 0;
process.exitCode = open.length > allowed || idle.length > 0 ? 1 : 0;
