/** The command on folders of hostile files, with pictures: hostile contents, names, links and kinds of file. */
import { execFileSync } from "node:child_process";
import {
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  symlinkSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import fc from "fast-check";
import { afterAll, expect, test } from "vitest";
import { expectFit, ran } from "./command.js";
import { changesSince, worldNow, worldSnapshot } from "./inside.js";
import { broken, line, utf8, whole } from "./lines.js";

const RUNS = Math.ceil(Number(process.env.HOSTILE ?? 3000) / 100);
const root = mkdtempSync(join(tmpdir(), "marker-depth-hostile-"));
afterAll(() => rmSync(root, { recursive: true, force: true }));

/** Names that a file system takes. */
const NAMES = [
  "a.json",
  "..json",
  "-.json",
  "--svg.json",
  "\u001B[2J.json",
  "two\nlines.json",
  "__proto__.json",
  "constructor.json",
  `${"x".repeat(240)}.json`,
  "%2e%2e%2fout.json",
  "<b>&quot;.json",
  "\u202Egnp.json",
  "ä🎸.json",
  "A.JSON",
];

const content = fc.oneof(
  line,
  broken.map((text) => utf8.encode(text)),
  whole.map((text) => utf8.encode(text)),
);
const files = fc.uniqueArray(fc.tuple(fc.constantFrom(...NAMES), content), {
  maxLength: 6,
  selector: ([name]) => name,
});
const format = fc.constantFrom<string[]>([], ["--json"], ["--csv"], ["--inches"]);

let runs = 0;
let drawn = 0;

test(`${RUNS} folders: an exit code, pictures in their folder alone, no file changed`, async () => {
  const world = { names: worldNow(), members: worldSnapshot() };
  await fc.assert(
    fc.asyncProperty(files, format, async (folder, words) => {
      const here = mkdtempSync(join(root, "run-"));
      const [designs, pictures] = [join(here, "designs"), join(here, "pictures")];
      mkdirSync(designs);
      for (const [name, bytes] of folder) writeFileSync(join(designs, name), bytes);
      expectFit(words, await ran([...words, "--svg", pictures, designs]));
      for (const [name, bytes] of folder) {
        expect(Buffer.compare(readFileSync(join(designs, name)), Buffer.from(bytes))).toBe(0);
      }
      expect(readdirSync(designs)).toHaveLength(folder.length);
      expect(readdirSync(here).filter((name) => !["designs", "pictures"].includes(name))).toEqual(
        [],
      );
      drawn += picturesIn(pictures);
      runs++;
      expect(worldNow()).toEqual(world.names);
      expect(changesSince(world.members)).toEqual([]);
    }),
    { numRuns: RUNS },
  );
  expect(runs).toBeGreaterThanOrEqual(RUNS);
  expect(drawn).toBeGreaterThan(0);
});

/** How many pictures lie in a folder, each of them sound. */
function picturesIn(folder: string): number {
  const names = readdirSync(folder, { recursive: true, encoding: "utf8" }).filter((name) =>
    name.endsWith(".svg"),
  );
  for (const name of names) {
    const svg = readFileSync(join(folder, name), "utf8");
    expect(svg).toMatch(/^<svg .*<\/svg>\n?$/s);
    expect(svg).not.toMatch(/\bNaN\b|<script|[^\P{Cc}\n]/u);
  }
  return names.length;
}

test("links in a circle, a link to nowhere, a folder that ends in .json, a pipe: none hangs it", async () => {
  const here = mkdtempSync(join(root, "kinds-"));
  symlinkSync(here, join(here, "circle"));
  symlinkSync(join(here, "b.json"), join(here, "a.json"));
  symlinkSync(join(here, "a.json"), join(here, "b.json"));
  symlinkSync("/no/such/file.json", join(here, "nowhere.json"));
  mkdirSync(join(here, "folder.json"));
  const [design = ""] = fc.sample(whole, 1);
  writeFileSync(join(here, "sound.json"), design);
  execFileSync("mkfifo", [join(here, "pipe.json")]);
  const { code, out, err } = await ran(["--json", here]);
  expect(code).toBe(2);
  expect(out.trimEnd().split("\n")).toHaveLength(6);
  expect(err).toContain("pipe.json: not a file");
  expect(out + err).not.toMatch(/TypeError|\n\s+at /);
});
