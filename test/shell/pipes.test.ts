/** The command in a pipe and on a terminal: streams, readers that go away, colours, progress. */
import { afterAll, describe, expect, test } from "vitest";
import { command, FAILS, folderWith, GOOD, linesOf, removeFolders, shell } from "./command.js";

afterAll(removeFolders);

const LINE = JSON.stringify(GOOD);
const parsed = (out: string) => linesOf(out).map((line) => JSON.parse(line));

describe("NDJSON on standard input", () => {
  test("one design a line; empty lines are none, the last may lack its end; beside files, in their order", () => {
    const bad = JSON.stringify({ ...GOOD, web: -1 });
    const input = `${LINE}\r\n\n  \n{"name": "cut sho\n${bad}\n${LINE}`;
    const cwd = folderWith({ "a.json": GOOD, "b.json": GOOD });
    const { code, out, err } = command(["--json", "b.json", "-", "a.json"], { input, cwd });
    const lines = parsed(out);
    expect(lines.map(({ file, line, ok }) => [file, line, ok])).toEqual([
      ["b.json", undefined, true],
      ["-", 1, true],
      ["-", 4, undefined],
      ["-", 5, undefined],
      ["-", 6, true],
      ["a.json", undefined, true],
    ]);
    const column = bad.indexOf('"web"') + 1;
    expect(linesOf(err)).toEqual([
      expect.stringMatching(/^-:4:10: design: expected JSON with /),
      expect.stringMatching(`^-:5:${column}: web: expected `),
    ]);
    expect(lines[3].issues[0]).toMatchObject({ path: "web", line: 5, column });
    expect(code).toBe(2);
  });

  test("only a line feed ends a line; characters that come in two chunks are whole", () => {
    const name = `one\u2028two\u2029three\u0085four${"é€😀".repeat(20_000)}`;
    const { code, out } = command(["--json", "-"], { input: JSON.stringify({ ...GOOD, name }) });
    expect(parsed(out).map((line) => line.name)).toEqual([name]);
    expect(code).toBe(0);
  });

  test("a line that is too long, or no UTF-8, stops nothing; nothing at all is exit 2", () => {
    const long = Buffer.from(`${" ".repeat(5_000_000)}${LINE}\n`);
    const input = Buffer.concat([long, Buffer.from([0x22, 0xff, 0x22, 0x0a]), Buffer.from(LINE)]);
    const { code, out, err } = command(["--json", "-"], { input });
    expect(linesOf(err)).toEqual([
      "-:1: more than 1000000 characters",
      "-:2: not UTF-8; save it as plain UTF-8",
    ]);
    expect([code, parsed(out)[2]]).toEqual([2, expect.objectContaining({ line: 3, ok: true })]);
    expect(command(["-"])).toMatchObject({ code: 2, err: "-: no design on standard input\n" });
  });

  test("results come while the input still runs", () => {
    const feed = `printf '%s\\n' "$LINE"; read -r -t 60 < go; printf '%s\\n' "$LINE"`;
    const line = `mkfifo go; (${feed}) | $MD --json - | (read -r first; echo now > go; echo got; cat)`;
    const [got, second] = linesOf(shell(line, { cwd: folderWith({}), env: { LINE } }).out);
    expect([got, JSON.parse(second ?? "").line]).toEqual(["got", 2]);
  });
});

describe("a reader that goes away", () => {
  const endless = `(while printf '%s\\n' "$LINE"; do :; done) 2>/dev/null`;

  test.each([
    ["$MD -", LINE],
    ["$MD --json -", LINE],
    ["$MD --csv -", LINE],
    ["$MD --csv --jobs 2 -", LINE],
    ["$MD - 2>&1 >/dev/null", "{"],
  ])("%s | head -1: ends, and says nothing", (run, fed) => {
    const line = `${endless} | ${run} | head -1; echo "\${PIPESTATUS[@]:1}"`;
    const { out, err } = shell(line, { env: { LINE: fed } });
    const [first, codes, ...more] = linesOf(out);
    expect(first?.length).toBeGreaterThan(10);
    expect([codes, more, err]).toEqual(["141 0", [], ""]);
  });

  test("what all fits into the pipe is no break; an output that is full is told, exit 2", () => {
    const cwd = folderWith({ "a.json": GOOD });
    const { out } = shell(`$MD a.json | cat | head -1; echo "\${PIPESTATUS[0]}"`, { cwd });
    expect(linesOf(out)).toEqual(["DRILL CARD: invented", "0"]);
    const { code, err } = shell("$MD a.json > /dev/full", { cwd });
    expect([code, err]).toEqual([2, expect.stringMatching(/^marker-depth: .*no space left/i)]);
  });
});

/** Runs a line of bash on a terminal of its own; what appeared on it. */
function onTerminal(line: string, cwd: string, env: Record<string, string> = {}) {
  const { code, out } = shell('script -qefc "$LINE" /dev/null', {
    cwd,
    env: { LINE: line, ...env },
  });
  return { code, seen: out.replaceAll("\r\n", "\n") };
}

const ESCAPE = "\u001b";
const [GREEN, RED] = ["[32m", "[31m"].map((colour) => ESCAPE + colour);

describe("colour", () => {
  const cwd = folderWith({ "good.json": GOOD, "fails.json": FAILS });
  const line = "$MD --no-remedies good.json fails.json none.json";

  test("on a terminal: verdicts, what could not be read, and the summary; never in data", () => {
    const { code, seen } = onTerminal(line, cwd);
    expect(code).toBe(2);
    expect(seen).toContain(`${GREEN}Holes: nothing stops the drilling`);
    expect(seen).toContain(`${RED}Holes: DO NOT DRILL YET`);
    expect(seen).toContain(`${RED}none.json: no such file or directory`);
    expect(seen).toContain(`${RED}2 designs checked, 1 passes, 1 fails`);
    const data = onTerminal("$MD --json good.json", cwd).seen;
    expect([data.includes(ESCAPE), JSON.parse(data).ok]).toEqual([false, true]);
  });

  test("none in a pipe, nor where the surroundings want none", () => {
    const plain = [
      onTerminal(`${line} 2>&1 | cat`, cwd),
      ...[{ NO_COLOR: "1" }, { TERM: "dumb" }].map((env) => onTerminal(line, cwd, env)),
    ];
    for (const { seen } of plain) {
      expect(seen).toContain("DO NOT DRILL YET");
      expect(seen).not.toContain(ESCAPE);
    }
  });
});

describe("progress", () => {
  // the second design comes more than a second after the run began: by then the header is in the file
  const wait = "until [ -s out.csv ]; do sleep 0.05; done; sleep 1.1";
  const feed = `printf '%s\\n' "$DESIGN"; ${wait}; printf '%s\\n' "$DESIGN" "{"`;
  const slow = `(${feed}) | $MD --csv - > out.csv; exit \${PIPESTATUS[1]}`;

  test("on a terminal in a long run, and it is gone in the end", () => {
    const { code, seen } = onTerminal(slow, folderWith({}), { DESIGN: LINE, SHELL: "/bin/bash" });
    expect(seen).toContain(`\r${ESCAPE}[K2 designs checked …\r${ESCAPE}[K`);
    // the message stands on a line of its own
    const plain = seen.replaceAll(new RegExp(`${ESCAPE}\\[(31|39)m`, "g"), "");
    expect(plain).toMatch(/\[K-:3:2: design: expected [^\r]*\n$/);
    expect(code).toBe(2);
  });

  test("beside cards on one terminal: it is gone before the next card", () => {
    const feed = `printf '%s\\n' "$DESIGN"; sleep 3; printf '%s\\n' "$DESIGN" "$DESIGN"`;
    const { seen } = onTerminal(`(${feed}) | $MD --no-remedies -`, folderWith({}), {
      DESIGN: LINE,
      SHELL: "/bin/bash",
      NO_COLOR: "1",
    });
    expect(seen).toContain(`\n\r${ESCAPE}[K2 designs checked …\r${ESCAPE}[KDRILL CARD: `);
    expect(seen).toMatch(/\n\n3 designs checked, 3 pass, 0 fail\n$/);
  });

  test("none where it is no terminal, nor in a short run", () => {
    const { code, err } = shell(slow, { env: { DESIGN: LINE }, cwd: folderWith({}) });
    expect([code, err]).toEqual([2, expect.stringMatching(/^-:3:2: design: expected [^\r]*\n$/)]);
    expect(onTerminal("$MD --csv a.json > out.csv", folderWith({ "a.json": GOOD })).seen).toBe("");
  });
});
