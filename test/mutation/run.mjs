// Breaks the geometry, the windows and the stop plan in every small way, and lists what no test noticed.
//   npm run mutation                  all of it, first against the quick tests, then what survived against all tests
//   npm run mutation -- sagitta bits  these files of src alone
//   --quick                           the quick tests alone
// A survivor that is proved to change nothing stands in equivalent.json with its reason; any other fails the run, and
// so does a reason for what does not survive.
import { spawnSync } from "node:child_process";
import { readFileSync } from "node:fs";

const GEOMETRY = [
  "sagitta",
  "piece",
  "removal",
  "greatest-removal",
  "least-removal",
  "footprint",
  "polygon",
];
const LAYOUT = ["track", "temperament", "fret-lines", "markers", "pockets", "slot-ends"];
const WORK = ["bits", "windows", "stops", "slots", "edges", "clearances", "side-dots", "pour"];

const words = process.argv.slice(2);
const quick = words.includes("--quick");
const named = words.filter((word) => !word.startsWith("--"));
const names = named.length > 0 ? named : [...GEOMETRY, ...LAYOUT, ...WORK];
const equivalent = JSON.parse(readFileSync(new URL("equivalent.json", import.meta.url), "utf8"));

/** Runs the mutants of these places; every one with what came of it. */
function tried(places, tests) {
  const args = ["stryker", "run", "test/mutation/stryker.json", "--mutate", places.join(",")];
  const env = { ...process.env, MUTANTS: tests };
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

const mutants = tried(
  names.map((name) => `src/${name}.ts`),
  "quick",
).filter(counts);
let alive = mutants.filter(lives);
if (!quick && alive.length > 0) {
  const again = tried([...new Set(alive.map(placeOf))], "all")
    .filter(lives)
    .map(keyOf);
  alive = alive.filter((mutant) => again.includes(keyOf(mutant)));
}
const proofs = alive.map(proofOf);
const open = alive.filter((_, i) => proofs[i] === undefined);
const idle = [...new Set(mutants.map(({ file }) => file))].flatMap((file) =>
  (equivalent[file] ?? [])
    .filter((proof) => !proofs.includes(proof))
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
process.exitCode = open.length + idle.length > 0 ? 1 : 0;
