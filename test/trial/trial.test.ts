/** Trials: the table, and the exit codes. */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { fencedBlocks } from "../docs/blocks.js";
import { tryFolder } from "./main.js";

const ROOT = new URL("../../", import.meta.url).pathname;
const folders: string[] = [];

afterAll(() => {
  for (const folder of folders) rmSync(folder, { recursive: true });
});

/** What the script does, in this process. */
function trial(folder = "docs/trials") {
  const { code, out, err } = tryFolder(folder);
  return { status: code, stdout: out, stderr: err };
}

function folderWith(files: Readonly<Record<string, string>>): string {
  const folder = mkdtempSync(join(tmpdir(), "marker-depth-trials-"));
  folders.push(folder);
  for (const [name, text] of Object.entries(files)) writeFileSync(join(folder, name), text);
  return folder;
}

const GOOD = {
  name: "fine",
  source: "the formula",
  mark: "computed",
  expect: [{ call: "radiusFromSagitta", with: [8, 6], value: 8.3333, digits: 4 }],
};

test("the trials that come with the library pass", () => {
  const { status, stdout, stderr } = trial();
  expect(stderr).toBe("");
  expect(status).toBe(0);
  const files = readdirSync(join(ROOT, "docs/trials")).filter((name) => name.endsWith(".json"));
  expect(files.length).toBeGreaterThanOrEqual(15);
  const [, trials, quantities] = /(\d+) trials, (\d+) quantities: all pass\n$/.exec(stdout) ?? [];
  expect(Number(trials)).toBe(files.length);
  expect(Number(quantities)).toBeGreaterThan(80);
  expect(stdout).toMatch(/^trial +quantity +expected +found +difference +mark +pass\n/);
});

test("the script of package.json tells the same, and ends with the code", () => {
  const run = () =>
    execFileSync("npm", ["run", "--silent", "trial"], { cwd: ROOT, encoding: "utf8" });
  expect(run()).toBe(trial().stdout);
});

test("each of them names its source and how it is known", () => {
  const files = readdirSync(join(ROOT, "docs/trials")).filter((name) => name.endsWith(".json"));
  const texts = files.map((name) => readFileSync(join(ROOT, "docs/trials", name), "utf8"));
  const misprints = texts.join("").match(/"misprint"/g) ?? [];
  expect(misprints).toHaveLength(2);
  for (const text of texts) expect(JSON.parse(text)).toHaveProperty("mark");
});

test("a value's own mark stands before its trial's", () => {
  const marks = [...trial().stdout.matchAll(/^62-ft string, .+ (\S+) +yes$/gm)];
  const rows = ["computed", "seen"].flatMap((mark) => Array(10).fill(mark));
  expect(marks.map(([, mark]) => mark)).toEqual(rows);
});

test("the example of the page passes, and a value of it made wrong does not", () => {
  const [block] = fencedBlocks("docs/trials/README.md", "json");
  const text = block?.text ?? "";
  const good = trial(folderWith({ "page.json": text }));
  expect(good.stderr).toBe("");
  expect(good.stdout).toContain("1 trial, 5 quantities: all pass");
  expect(good.status).toBe(0);
  const wrong = trial(folderWith({ "page.json": text.replace('"value": 1.2', '"value": 1.3') }));
  expect(wrong.status).toBe(1);
  expect(wrong.stdout).toMatch(/holes\.0\.window\.min +1\.3 +1\.2 +-0\.1 +computed +NO/);
});

test.each([
  ["a value", { value: 8.3334, digits: 4 }],
  ["a word", { value: "web" }],
  ["a misprint that is right", { value: 8.3333, digits: 4, misprint: 8.3333 }],
  ["no tolerance", { value: 8.3333 }],
  ["a negative tolerance", { value: 8.3333, within: -1 }],
  ["a path to nothing", { what: "along", value: 8.3333, digits: 4 }],
  ["a block that is none", { call: "constructor", value: 8.3333, digits: 4 }],
  ["an argument out of range", { with: [0, 0], value: 8.3333, digits: 4 }],
])("%s: exit code 1", (_, changed) => {
  const call = { call: "radiusFromSagitta", with: [8, 6] };
  const wrong = { ...GOOD, expect: [{ ...call, ...changed }] };
  const folder = folderWith({ "a.json": JSON.stringify(GOOD), "b.json": JSON.stringify(wrong) });
  const { status, stdout } = trial(folder);
  expect(status).toBe(1);
  expect(stdout).toContain("2 trials, 2 quantities: 1 fails");
});

test.each([
  ["no JSON", '{\n  "name": "x"\n  "source": 1\n}', /b\.json:3: no JSON/],
  ["nothing", "", /b\.json:1: no JSON/],
  ["a mark that is none", JSON.stringify({ ...GOOD, mark: "print" }, null, 1), /b\.json:4: mark: /],
  ["an unknown key", JSON.stringify({ ...GOOD, expects: 1 }, null, 1), /b\.json:\d+: expects: /],
  [
    "no values",
    '{ "name": "x", "source": "y",\n "mark": "seen", "expect": [] }',
    /b\.json:2: expect/,
  ],
  [
    "a design that cannot be read",
    '{ "name": "x", "source": "y", "mark": "seen",\n "design": {\n  "radius": -1 },\n "expect": [{ "what": "ok", "value": true }] }',
    /b\.json:3: design\.radius: expected a radius/,
  ],
])("%s: exit code 2, the line is named, and the others are tried", (_, text, told) => {
  const { status, stdout, stderr } = trial(
    folderWith({ "a.json": JSON.stringify(GOOD), "b.json": text }),
  );
  expect(stderr).toMatch(told);
  expect(stdout).toContain("1 trial, 1 quantity: all pass; ");
  expect(status).toBe(2);
});

test("a folder without trials, or none at all: exit code 2", () => {
  expect(trial(folderWith({})).status).toBe(2);
  expect(trial("no/such/folder").stderr).toContain("no/such/folder: no such folder");
});
