/** The command as it is typed: cards, exit codes, what could not be read. */
import { readFileSync, symlinkSync } from "node:fs";
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import { drillCard } from "../../src/card/index.js";
import { checkDesign } from "../../src/index.js";
import {
  COMMAND,
  command,
  EXAMPLES,
  example,
  folderWith,
  GOOD,
  linesOf,
  ROOT,
  removeFolders,
  shell,
} from "./command.js";

afterAll(removeFolders);

const card = (text: string, unit: "mm" | "in" = "mm") =>
  drillCard(checkDesign(JSON.parse(text)), { unit });

describe("cards", () => {
  test("the card of a design, then a summary; exit 0", () => {
    const { code, out, err } = command(["docs/examples/larch-22.json"]);
    expect(out).toBe(`${card(example("larch-22"))}\n1 design checked, 1 passes, 0 fail\n`);
    expect([code, err]).toEqual([0, ""]);
  });

  test("in inches", () => {
    const { code, out } = command(["--inches", "docs/examples/larch-22.json"]);
    expect(out).toContain(card(example("larch-22"), "in"));
    expect(code).toBe(0);
  });

  test("a design that fails: exit 1, and the summary names it", () => {
    const { code, out, err } = command([
      "docs/examples/heron-bass.json",
      "docs/examples/larch-22.json",
    ]);
    expect(out).toContain("DO NOT DRILL YET");
    expect(linesOf(out).at(-1)).toBe(
      "2 designs checked, 1 passes, 1 fails (docs/examples/heron-bass.json)",
    );
    expect([code, err]).toEqual([1, ""]);
  });

  test("of many that fail the summary names ten", () => {
    const bad = JSON.stringify(JSON.parse(example("heron-bass")));
    const { code, out } = command(["-"], { input: `${bad}\n`.repeat(12) });
    expect(linesOf(out).at(-1)).toBe(
      "12 designs checked, 0 pass, 12 fail (-:1, -:2, -:3, -:4, -:5, -:6, -:7, -:8, -:9, -:10, and 2 more)",
    );
    expect(code).toBe(1);
  });

  test("a design without a name bears its file's", () => {
    const { name, ...unnamed } = GOOD;
    const folder = folderWith({ "my neck.json": JSON.stringify(unnamed) });
    expect(command(["my neck.json"], { cwd: folder }).out).toMatch(/^DRILL CARD: my neck\.json\n/);
    expect(command(["-"], { input: JSON.stringify(unnamed) }).out).toMatch(
      /^DRILL CARD: -, line 1\n/,
    );
  });

  test("lengths may be texts, as in any design file", () => {
    const folder = folderWith({
      "a.json": JSON.stringify({
        ...GOOD,
        scale: { length: "25.5 in", frets: 22 },
        radius: "flat",
      }),
    });
    const { code, out } = command([join(folder, "a.json")]);
    const design = { ...GOOD, scale: { length: 647.7, frets: 22 }, radius: Infinity };
    expect(out).toContain(drillCard(checkDesign(design)));
    expect(code).toBe(0);
  });

  test("control characters in a name do not reach the terminal", () => {
    const input = JSON.stringify({ ...GOOD, name: "red \u001b[31m \u0007\u009b2J" });
    expect(command(["-"], { input }).out).toMatch(/^DRILL CARD: red \uFFFD\[31m \uFFFD\uFFFD2J\n/);
  });
});

describe("a folder", () => {
  test("every .json in it, by name, and nothing else of it", () => {
    const folder = folderWith({
      "b.json": JSON.stringify({ ...GOOD, name: "second" }),
      "a.json": JSON.stringify({ ...GOOD, name: "first" }),
      "C.JSON": JSON.stringify({ ...GOOD, name: "capitals first" }),
      "notes.txt": "no design",
    });
    const { code, out, err } = command([folder]);
    const titles = linesOf(out).filter((line) => line.startsWith("DRILL CARD: "));
    expect(titles).toEqual(["capitals first", "first", "second"].map((n) => `DRILL CARD: ${n}`));
    expect([code, err]).toEqual([0, ""]);
  });

  test("the examples: all are checked, and one of them fails on purpose", () => {
    const { code, out } = command(["docs/examples"]);
    expect(linesOf(out).at(-1)).toMatch(
      /^5 designs checked, 4 pass, 1 fails \(.*heron-bass\.json\)$/,
    );
    expect(code).toBe(1);
  });

  test("with no design in it: exit 2", () => {
    const folder = folderWith({ "notes.txt": "no design" });
    const { code, err } = command([folder]);
    expect([code, err]).toEqual([2, `${folder}: no .json file in this folder\n`]);
  });
});

describe("what cannot be read is told, and the others are checked", () => {
  const broken = '{\n  "radius": 254,\n  "markers": [],\n  "webb": 1,,\n}';

  test("with path, line and column; exit 2, though another design fails", () => {
    const thin = JSON.stringify({ ...GOOD, board: { ...GOOD.board, thickness: "6 kg" } }, null, 1);
    const folder = folderWith({ "broken.json": broken, "thin.json": thin });
    const { code, out, err } = command(
      [
        "broken.json",
        "none.json",
        "thin.json",
        `${EXAMPLES}/heron-bass.json`,
        `${EXAMPLES}/wren-tenor.json`,
      ],
      { cwd: folder },
    );
    const line = thin.split("\n").findIndex((text) => text.includes("thickness")) + 1;
    expect(line).toBeGreaterThan(1);
    expect(linesOf(err)).toEqual([
      expect.stringMatching(/^broken\.json:4:13: design: expected JSON with /),
      "none.json: no such file or directory",
      expect.stringMatching(
        new RegExp(
          `^thin\\.json:${line}:3: board\\.thickness: expected a length .*, received "6 kg"$`,
        ),
      ),
    ]);
    expect(linesOf(out).at(-1)).toMatch(
      /^2 designs checked, 1 passes, 1 fails \(.*\), 3 could not be read$/,
    );
    expect(code).toBe(2);
  });

  test("every problem of a file has its line", () => {
    const folder = folderWith({
      "a.json": JSON.stringify({ ...GOOD, web: -1, depth: [] }, null, 2),
    });
    const { code, err } = command([join(folder, "a.json")]);
    expect(linesOf(err)).toHaveLength(2);
    for (const line of linesOf(err)) expect(line).toMatch(/a\.json:\d+:3: (web|depth): expected /);
    expect(code).toBe(2);
  });

  test.each<[string, string | Uint8Array, RegExp]>([
    ["UTF-16", Buffer.from("\uFEFF{}", "utf16le"), /: not UTF-8; save it as plain UTF-8\n$/],
    ["a byte order mark", "\uFEFF{}", /:1:1: design: expected JSON with no byte order mark/],
    [
      "too long",
      " ".repeat(1_000_001),
      /:1:1: design: expected a text of at most 1000000 characters/,
    ],
    ["far too long", "x".repeat(4_000_000), /: more than 1000000 characters\n$/],
    [
      "empty",
      "",
      /:1:1: design: expected JSON with a value here, received "the end of the text"\n$/,
    ],
  ])("%s", (_, content, expected) => {
    const folder = folderWith({ "a.json": content });
    const { code, out, err } = command(["a.json"], { cwd: folder });
    expect(err).toMatch(expected);
    expect(err).toMatch(/^a\.json:/);
    expect(out).toBe("0 designs checked, 0 pass, 0 fail, 1 could not be read\n");
    expect(code).toBe(2);
  });

  test("a file without an end", () => {
    const { code, err } = command(["/dev/zero"]);
    expect([code, err]).toEqual([2, "/dev/zero: more than 1000000 characters\n"]);
  });

  test("a link that leads nowhere, in a folder", () => {
    const folder = folderWith({ "a.json": JSON.stringify(GOOD) });
    symlinkSync("nowhere", join(folder, "b.json"));
    const { code, out, err } = command([folder]);
    expect(err).toBe(`${folder}/b.json: no such file or directory\n`);
    expect(out).toMatch(/1 design checked, 1 passes, 0 fail, 1 could not be read\n$/);
    expect(code).toBe(2);
  });
});

describe("the command line", () => {
  test("--help tells every option and exit code", () => {
    const { code, out, err } = command(["--help"]);
    for (const word of [
      "--json",
      "--csv",
      "--inches",
      "--svg DIR",
      "--help",
      "--version",
      "NDJSON",
    ]) {
      expect(out).toContain(word);
    }
    for (const line of linesOf(out)) expect(line.length).toBeLessThanOrEqual(80);
    expect([code, err]).toEqual([0, ""]);
  });

  test("--version is the package's", () => {
    const { version } = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8"));
    expect(command(["--version"])).toEqual({ code: 0, out: `${version}\n`, err: "" });
  });

  test.each<[string[], string]>([
    [[], "no FILE is named"],
    [["--jsn", "x"], `Unknown option '--jsn'; did you mean "--json"?`],
    [["-x"], "Unknown option '-x'"],
    [["--svg"], "Option '--svg <value>' argument missing"],
    [["--svg=", "x"], "--svg wants a folder"],
    [["--json=yes", "x"], "Option '--json' does not take an argument"],
    [["--json", "--csv", "x"], "--json and --csv exclude each other"],
    [["--json", "--inches", "x"], "--json is in mm: --inches is for cards and --csv"],
    [["-", "-"], "standard input (-) can be read once"],
  ])("%j: exit 2", (words, message) => {
    expect(command(words)).toEqual({
      code: 2,
      out: "",
      err: `marker-depth: ${message}\nTry: marker-depth --help\n`,
    });
  });

  test("a file whose name begins with a dash, after --", () => {
    const folder = folderWith({ "--neck.json": JSON.stringify(GOOD) });
    expect(command(["--", "--neck.json"], { cwd: folder }).code).toBe(0);
  });

  test("the built file runs by itself", () => {
    expect(shell(`${COMMAND} --version`).code).toBe(0);
  });
});
