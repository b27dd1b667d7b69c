// Breaks src in every small way, and lists what no test noticed. Each file first meets the tests nearest to its room,
// then what survived meets all others.
//   npm run mutation                  the geometry, the board, the windows and the stop plan
//   npm run mutation -- sagitta card  these files or rooms of src alone
//   npm run mutation -- all           all of src; hours
//   --quick                           the nearest tests alone
//   --sample 20                       of all of src, or of the rooms named, one line in 20, drawn by SEED
//   --but chance                      without these files or rooms
//   --workers 1                       beside other work
// A survivor that is proved to change nothing stands in equivalent.json by its function and operator, with the reason;
// any other fails the run, and so does a proof for what does not survive. A sample and all of src fail where more than
// 5 % are neither.
import { spawnSync } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import { parseArgs } from "node:util";
import { uniformFloat64 } from "pure-rand/distribution/uniformFloat64";
import { mersenne } from "pure-rand/generator/mersenne";

const CORE = ["geometry", "board", "drilling"];

const { values, positionals } = parseArgs({
  allowPositionals: true,
  options: {
    quick: { type: "boolean", default: false },
    sample: { type: "string" },
    but: { type: "string", multiple: true, default: [] },
    workers: { type: "string", default: "2" },
  },
});
const { quick, sample, but, workers } = values;
const seed = Number(process.env.SEED ?? 20261125);
const all = positionals.includes("all") || (sample && positionals.length === 0);
const wanted = positionals.length > 0 ? positionals : CORE;
const names = allNames().filter(
  (name) =>
    (all || wanted.some((each) => isNamed(name, each))) && !but.some((each) => isNamed(name, each)),
);
const equivalent = JSON.parse(readFileSync(new URL("equivalent.json", import.meta.url), "utf8"));

/** A file of src by its room, its name, or both. */
function isNamed(name, word) {
  return name === word || name.startsWith(`${word}/`) || name.endsWith(`/${word}`);
}

/** All files of src, those of the command last. */
function allNames() {
  const found = readdirSync("src", { recursive: true })
    .filter((file) => file.endsWith(".ts") && !/tsup/.test(file))
    .map((file) => file.replace(/\.ts$/, ""))
    .sort();
  const isShell = (name) => name.startsWith("shell");
  return [...found.filter((name) => !isShell(name)), ...found.filter(isShell)];
}

/** Runs the mutants of these places; every one with what came of it. */
function tried(places, tests) {
  const args = ["stryker", "run", "test/mutation/stryker.json", "--concurrency", workers];
  args.push("--mutate", places.join(","));
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

/** The function that a mutant stands in, or the constant at the file's top. */
function functionAt({ source, location: { start } }) {
  const above = source.split("\n").slice(0, start.line).reverse();
  const named = above.map(
    (line) => /^(?:export )?(?:async )?(?:function\*?|const|class) (\w+)/.exec(line)?.[1],
  );
  return named.find((name) => name !== undefined) ?? "";
}

/** The proof that a mutant changes nothing, if one is written down: the function, the operator, what it becomes. */
function proofOf(mutant) {
  return equivalent[mutant.file]?.find(
    (proof) =>
      proof.function === functionAt(mutant) &&
      proof.operator === mutant.mutatorName &&
      proof.becomes === oneLine(mutant.replacement),
  );
}

/** One line in so many of these files. */
function linesDrawn(oneIn) {
  const generator = mersenne(seed);
  return names
    .flatMap((name) =>
      readFileSync(`src/${name}.ts`, "utf8")
        .split("\n")
        .map((_, i) => `src/${name}.ts:${i + 1}-${i + 1}`),
    )
    .filter(() => uniformFloat64(generator) < 1 / oneIn);
}

const roomOf = (place) => /^src\/(\w+)/.exec(place)[1];

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
const mutants = triedBy(roomOf, places).filter(counts);
let alive = mutants.filter(lives);
if (!quick) {
  // no other tests run the command
  const unproved = alive.filter(
    (mutant) => proofOf(mutant) === undefined && roomOf(mutant.file) !== "shell",
  );
  const again = triedBy(() => "all", [...new Set(unproved.map(placeOf))])
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
    `${placeOf(mutant)}\n  ${functionAt(mutant)}, ${mutant.mutatorName}\n  - ${textAt(mutant)}\n  + ${oneLine(mutant.replacement)}`,
  );
}
for (const { file, becomes, ...proof } of idle) {
  console.log(`a proof for no survivor: ${file}: ${proof.function}, ${proof.operator}: ${becomes}`);
}
const allowed = sample || all ? 0.05 * mutants.length : 0;
process.exitCode = open.length > allowed || idle.length > 0 ? 1 : 0;
