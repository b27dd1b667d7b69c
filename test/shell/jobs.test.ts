/** `--jobs`: the same bytes as one after the other, whatever comes in, and an end that leaves nothing behind. */
import { spawn } from "node:child_process";
import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { afterAll, describe, expect, test } from "vitest";
import type { Design } from "../../src/index.js";
import { drawDesign } from "../properties/necks.js";
import { FAILING } from "../remedies/failing.js";
import { COMMAND, folderWith, GOOD, linesOf, removeFolders, shell } from "./command.js";

afterAll(removeFolders);

const SEED = fc.readConfigureGlobal().seed ?? 1;
const EXAMPLES = new URL("../../docs/examples/", import.meta.url);
const examples = readdirSync(EXAMPLES)
  .filter((file) => file.endsWith(".json"))
  .map((file): Design => JSON.parse(readFileSync(new URL(file, EXAMPLES), "utf8")));
const failing = Object.values(FAILING).map((make) => make(() => 0.5));
/** What no design is, or hardly. */
const HOSTILE = [
  ...["", "  \r", "{", "null", "[]", '"', "\u0000", '{"name":"\\ud800"}', "[".repeat(50_000)],
  ...[{ ...GOOD, web: -1 }, { ...GOOD, name: "\u001b[31m\n😀" }, {}].map((it) =>
    JSON.stringify(it),
  ),
  Buffer.from([0x22, 0xff, 0x22]),
  `${JSON.stringify(GOOD)}\r`,
  "x".repeat(3_100_000),
];

/** Designs of every kind, random ones last, with what is none between them: one a line. Fewest where below 0. */
function ndjson(randoms: number): Buffer {
  const few = randoms < 0;
  const odd = few
    ? []
    : Array.from({ length: randoms }, (_, i) => drawDesign(SEED + i, i % 2 === 0));
  const designs = [...examples, ...(few ? [] : failing), ...odd].map((design) =>
    JSON.stringify(design),
  );
  const lines = designs.flatMap((line, i) => [line, HOSTILE[i % HOSTILE.length] ?? ""]);
  return Buffer.concat(lines.flatMap((line) => [Buffer.from(line), Buffer.from("\n")]));
}

describe("the same bytes and the same exit code", () => {
  test.each([
    ["--json", 200],
    ["--csv", 50],
    ["--csv --findings --inches", 50],
    ["--no-remedies", 50],
    ["--json --remedies", -1],
    ["--repair 12:bass=0.4 --inches", 0],
  ])("%s", (words, randoms) => {
    const cwd = folderWith({ "in.ndjson": ndjson(randoms), "f/a.json": GOOD, "f/b.json": "{" });
    const told = ["1", "3"].map((jobs) => {
      const inputs = "f - none.json f/a.json <(cat f/b.json)";
      return shell(`$MD --jobs ${jobs} ${words} ${inputs} < in.ndjson 2>&1`, { cwd });
    });
    const [one, ...more] = told;
    expect(one?.code).toBe(2);
    expect(linesOf(one?.out ?? "").length).toBeGreaterThan(15);
    for (const other of more) expect(other).toEqual(one);
  });

  test("pictures too; and one that cannot be written ends the run at the same place", () => {
    const cwd = folderWith({ "in.ndjson": `${JSON.stringify(GOOD)}\n`.repeat(9), "n.json": GOOD });
    const words = "--csv --svg out n.json - ./n.json < in.ndjson";
    const both = (before: string) =>
      [1, 2].map((jobs) => {
        const line = `rm -rf out; ${before}; $MD --jobs ${jobs} ${words}; code=$?; md5sum out/*; exit $code`;
        return shell(line, { cwd });
      });
    const [one, two] = both("true");
    expect(two).toEqual(one);
    expect(one?.out.match(/-(?:board|windows|fret12-bass|fret12-treble)\.svg\n/g)).toHaveLength(44);
    const [ended, too] = both("mkdir -p out/line5-board.svg");
    expect(ended).toMatchObject({ code: 2, err: expect.stringMatching(/directory/) });
    expect([too?.code, too?.err]).toEqual([ended?.code, ended?.err]);
    const rows = [ended, too].map((run) => run?.out.split("\r\n").length);
    expect(rows).toEqual([1 + 2 * 5 + 1, 1 + 2 * 5 + 1]);
  });
});

describe("a stream", () => {
  const LINE = JSON.stringify(GOOD);

  test("results come while the input still runs", () => {
    const feed = `printf '%s\\n' "$LINE"; read -r -t 60 < go; printf '%s\\n' "$LINE"`;
    const line = `mkfifo go; (${feed}) | $MD --jobs 2 --json - | (read -r first; echo now > go; echo got; cat)`;
    const [got, second] = linesOf(shell(line, { cwd: folderWith({}), env: { LINE } }).out);
    expect([got, JSON.parse(second ?? "").line]).toEqual(["got", 2]);
  });

  test("a reader that goes away ends it, though the input waits", async () => {
    const child = spawn(process.execPath, [COMMAND, "--jobs", "2", "--json", "-"]);
    const closed = new Promise((resolve) => child.on("close", resolve));
    child.stdin.on("error", () => {});
    child.stdin.write(`${LINE}\n`);
    await new Promise((resolve) => child.stdout.once("data", resolve));
    child.stdout.destroy();
    child.stdin.write(`${LINE}\n`);
    expect(await closed).toBe(141);
  });

  test.each(["SIGINT", "SIGTERM"] as const)("%s ends it at once", async (signal) => {
    const child = spawn(process.execPath, [COMMAND, "--jobs", "3", "--json", "-"]);
    child.stdin.on("error", () => {});
    const feed = setInterval(() => child.stdin.write(`${LINE}\n`), 1);
    await new Promise((resolve) => child.stdout.once("data", resolve));
    child.stdout.resume();
    const closed = new Promise((resolve) => child.on("close", (_, by) => resolve(by)));
    child.kill(signal);
    expect(await closed).toBe(signal);
    clearInterval(feed);
  });
});
