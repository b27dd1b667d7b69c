/** The command in a pipe and on a terminal: streams, readers that go away, colours, progress. */
import { join } from "node:path";
import { afterAll, describe, expect, test } from "vitest";
import {
  command,
  example,
  folderWith,
  GOOD,
  linesOf,
  ROOT,
  removeFolders,
  shell,
} from "./command.js";

afterAll(removeFolders);

const LINE = JSON.stringify(GOOD);
const GOOD_HOLES = 2;

/** The most memory, in kB, that a run on these lines took; so many rows of CSV must come of them. */
function greatestMemory(feed: string, line: string, rows: number): number {
  const script = 'process.on("exit", () => console.error(process.resourceUsage().maxRSS));';
  const file = join(folderWith({ "memory.cjs": script }), "memory.cjs");
  const { out, err } = shell(`(${feed}) | $MD --csv - | wc -l`, {
    env: { LINE: line, NODE_OPTIONS: `--require=${file}` },
  });
  expect(Number(out)).toBe(rows);
  const kilobytes = Number(linesOf(err).at(-1));
  expect(kilobytes).toBeGreaterThan(10_000);
  return kilobytes;
}

describe("NDJSON on standard input", () => {
  test("one design a line; empty lines are none, the last may lack its end", () => {
    const input = `${LINE}\r\n\n  \n{"name": "cut sho\n${JSON.stringify({ ...GOOD, web: -1 })}\n${LINE}`;
    const { code, out, err } = command(["--json", "-"], { input });
    const lines = linesOf(out).map((line) => JSON.parse(line));
    expect(lines.map(({ file, line, ok }) => [file, line, ok])).toEqual([
      ["-", 1, true],
      ["-", 4, undefined],
      ["-", 5, undefined],
      ["-", 6, true],
    ]);
    const column = JSON.stringify({ ...GOOD, web: -1 }).indexOf('"web"') + 1;
    expect(linesOf(err)).toEqual([
      expect.stringMatching(/^-:4:10: design: expected JSON with /),
      expect.stringMatching(new RegExp(`^-:5:${column}: web: expected `)),
    ]);
    expect(lines[2].issues[0]).toMatchObject({ path: "web", line: 5, column });
    expect(code).toBe(2);
  });

  test("only a line feed ends a line: other line ends may stand in a name", () => {
    const { code, out } = command(["--json", "-"], {
      input: `${LINE.replace("invented", "one\u2028two\u2029three\u0085four")}\n`,
    });
    expect(linesOf(out)).toHaveLength(1);
    expect(JSON.parse(out).name).toBe("one\u2028two\u2029three\u0085four");
    expect(code).toBe(0);
  });

  test("characters that come in two chunks are whole", () => {
    const name = "é€😀".repeat(20_000);
    const { code, out } = command(["--json", "-"], { input: JSON.stringify({ ...GOOD, name }) });
    expect(JSON.parse(out).name).toBe(name);
    expect(code).toBe(0);
  });

  test("a line that is too long, or no UTF-8, stops nothing", () => {
    const input = Buffer.concat([
      Buffer.from(`${" ".repeat(5_000_000)}${LINE}\n`),
      Buffer.from([0x22, 0xff, 0x22, 0x0a]),
      Buffer.from(LINE),
    ]);
    const { code, out, err } = command(["--json", "-"], { input });
    expect(linesOf(err)).toEqual([
      "-:1: more than 1000000 characters",
      "-:2: not UTF-8; save it as plain UTF-8",
    ]);
    expect(JSON.parse(linesOf(out)[2] ?? "")).toMatchObject({ line: 3, ok: true });
    expect(code).toBe(2);
  });

  test("beside files, in their order", () => {
    const folder = folderWith({ "a.json": LINE, "b.json": LINE });
    const { out } = command(["--json", "b.json", "-", "a.json"], { cwd: folder, input: LINE });
    expect(linesOf(out).map((line) => JSON.parse(line).file)).toEqual(["b.json", "-", "a.json"]);
  });

  test("nothing at all: exit 2, as no design was checked", () => {
    const { code, err } = command(["-"]);
    expect([code, err]).toEqual([2, "-: no design on standard input\n"]);
  });

  describe("in constant memory: 200 MB of text take no more of it than a few", () => {
    test("in many lines", () => {
      const padded = `${LINE}${" ".repeat(50_000)}`;
      const feed = (lines: number) => `for i in $(seq ${lines}); do printf '%s\\n' "$LINE"; done`;
      const few = greatestMemory(feed(200), padded, 1 + 200 * GOOD_HOLES);
      const many = greatestMemory(feed(4000), padded, 1 + 4000 * GOOD_HOLES);
      expect(many - few).toBeLessThan(80_000);
    });

    test("in one line, which is refused", () => {
      const feed = (bytes: number) => `head -c ${bytes} /dev/zero | tr '\\0' x`;
      const few = greatestMemory(feed(4_000_000), LINE, 1);
      const many = greatestMemory(feed(200_000_000), LINE, 1);
      expect(many - few).toBeLessThan(80_000);
    });
  });

  test("results come while the input still runs", () => {
    const line = `(printf '%s\\n' "$LINE"; read -r -t 60 < "$GO"; printf '%s\\n' "$LINE") | $MD --json - | (read -r first; echo now > "$GO"; echo got; cat)`;
    const folder = folderWith({});
    const { out } = shell(`mkfifo go && GO=go && ${line}`, { cwd: folder, env: { LINE } });
    const [got, second] = linesOf(out);
    expect(got).toBe("got");
    expect(JSON.parse(second ?? "").line).toBe(2);
  });
});

describe("a reader that goes away", () => {
  const endless = `while printf '%s\\n' "$LINE"; do :; done`;

  test.each(["", "--json", "--csv"])("%s | head -1: ends, and says nothing", (format) => {
    const line = `(${endless}) 2>/dev/null | $MD ${format} - | head -1; echo "\${PIPESTATUS[@]:1}"`;
    const { out, err } = shell(line, { env: { LINE } });
    const [first, codes, ...more] = linesOf(out);
    expect(first?.length).toBeGreaterThan(10);
    expect([codes, more, err]).toEqual(["141 0", [], ""]);
  });

  test("of the messages too", () => {
    const line = `(${endless}) 2>/dev/null | $MD - 2>&1 >/dev/null | head -1; echo "\${PIPESTATUS[@]:1}"`;
    const { out, err } = shell(line, { env: { LINE: "{" } });
    expect(linesOf(out)).toEqual([expect.stringMatching(/^-:1:2: design: expected/), "141 0"]);
    expect(err).toBe("");
  });

  test("what all fits into the pipe is no break", () => {
    const { out } = shell(
      `$MD docs/examples/larch-22.json | cat | head -1; echo "\${PIPESTATUS[0]}"`,
    );
    expect(linesOf(out)).toEqual(["DRILL CARD: Larch 22 (invented example)", "0"]);
  });
});

test("an output that is full: told, exit 2", () => {
  const { code, err } = shell("$MD docs/examples > /dev/full");
  expect(code).toBe(2);
  expect(err).toMatch(/^marker-depth: .*no space left/i);
});

/** Runs a line of bash on a terminal of its own; what appeared on it. */
function onTerminal(line: string, env: Record<string, string> = {}, cwd = ROOT) {
  const settings = { cwd, env: { LINE: line, ...env } };
  const { code, out } = shell('script -qefc "$LINE" /dev/null', settings);
  return { code, seen: out.replaceAll("\r\n", "\n") };
}

const ESCAPE = "\u001b";

describe("colour", () => {
  const words = "docs/examples/larch-22.json docs/examples/heron-bass.json none.json";

  test("on a terminal: verdicts, what could not be read, and the summary", () => {
    const { code, seen } = onTerminal(`$MD ${words}`);
    expect(code).toBe(2);
    expect(seen).toContain(`${ESCAPE}[32mNothing found that stops the work.${ESCAPE}[39m\n`);
    expect(seen).toContain(`${ESCAPE}[31mDO NOT DRILL YET: see what is wrong.${ESCAPE}[39m\n`);
    expect(seen).toContain(`${ESCAPE}[31mnone.json: no such file or directory`);
    expect(seen).toContain(`${ESCAPE}[31m2 designs checked, 1 passes, 1 fails`);
  });

  test("none in a pipe, though the other end is on a terminal", () => {
    expect(command(words.split(" ")).out).not.toContain(ESCAPE);
    const { seen } = onTerminal(`$MD ${words} 2>&1 | cat`);
    expect(seen).toContain("DO NOT DRILL YET");
    expect(seen).not.toContain(ESCAPE);
  });

  test.each([{ NO_COLOR: "1" }, { TERM: "dumb" }])("none on a terminal with %j", (env) => {
    const { seen } = onTerminal(`$MD ${words}`, env);
    expect(seen).toContain("DO NOT DRILL YET");
    expect(seen).not.toContain(ESCAPE);
  });

  test("never in data", () => {
    const { seen } = onTerminal("$MD --json docs/examples/larch-22.json");
    expect(seen).not.toContain(ESCAPE);
    expect(JSON.parse(seen).ok).toBe(true);
  });
});

describe("progress", () => {
  // the second design comes more than a second after the run began: by then the header is in the file
  const wait = "until [ -s out.csv ]; do sleep 0.05; done; sleep 1.1";
  const feed = `printf '%s\\n' "$DESIGN"; ${wait}; printf '%s\\n' "$DESIGN" "{"`;
  const slow = `(${feed}) | $MD --csv - > out.csv; exit \${PIPESTATUS[1]}`;

  test("on a terminal in a long run, and it is gone in the end", () => {
    const { code, seen } = onTerminal(slow, { DESIGN: LINE, SHELL: "/bin/bash" }, folderWith({}));
    expect(seen).toContain(`\r${ESCAPE}[K2 designs checked …\r${ESCAPE}[K`);
    // the message stands on a line of its own
    expect(seen.replaceAll(new RegExp(`${ESCAPE}\\[(31|39)m`, "g"), "")).toMatch(
      /\[K-:3:2: design: expected [^\r]*\n$/,
    );
    expect(code).toBe(2);
  });

  test("none where it is no terminal", () => {
    const { code, err } = shell(slow, { env: { DESIGN: LINE }, cwd: folderWith({}) });
    expect(err).toMatch(/^-:3:2: design: expected [^\r]*\n$/);
    expect(code).toBe(2);
  });

  test("none in a short run", () => {
    const file = join(folderWith({ "a.json": example("larch-22") }), "out.csv");
    expect(onTerminal(`$MD --csv docs/examples/larch-22.json > ${file}`).seen).toBe("");
  });
});
