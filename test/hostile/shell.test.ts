/** The command, in this process, with hostile lines on its standard input and hostile words. */
import { Writable } from "node:stream";
import fc from "fast-check";
import { expect, test } from "vitest";
import { main } from "../../src/shell/main.js";
import { WHOLE } from "../files/whole.js";
import { changesSince, worldNow, worldSnapshot } from "./inside.js";

const RUNS = Math.ceil(Number(process.env.HOSTILE ?? 3000) / 20);

/** A stream that keeps what is written to it. */
class Kept extends Writable {
  text = "";

  override _write(chunk: Buffer, _: string, done: () => void): void {
    this.text += chunk.toString();
    done();
  }
}

async function* chunksOf(bytes: Uint8Array, size: number) {
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
}

async function ran(words: readonly string[], input: Uint8Array, size = 4096) {
  const [stdout, stderr] = [new Kept(), new Kept()];
  const code = await main(words, { stdin: chunksOf(input, size), stdout, stderr });
  return { code, out: stdout.text, err: stderr.text };
}

const utf8 = new TextEncoder();
const whole = fc.constantFrom(...WHOLE.map((design) => JSON.stringify({ ...design, radius: 254 })));
const broken = fc
  .tuple(
    whole,
    fc.nat(),
    fc.nat(9),
    fc.constantFrom('"', "{", "[", "\u0000", "1e999", "\u001B[2J", ""),
  )
  .map(([text, at, cut, other]) => {
    const start = at % text.length;
    return text.slice(0, start) + other + text.slice(start + cut);
  });
const line = fc.oneof(
  whole.map((text) => utf8.encode(text)),
  broken.map((text) => utf8.encode(text)),
  fc.json().map((text) => utf8.encode(text)),
  fc.uint8Array({ maxLength: 40 }),
  fc.constantFrom(
    ...[
      '{"__proto__":{"polluted":1}}',
      "[".repeat(50_000),
      `"${"\\u0000".repeat(50)}"`,
      "\uFEFF{}",
      "",
    ].map((text) => utf8.encode(text)),
  ),
);
const input = fc
  .array(line, { maxLength: 4 })
  .map((lines) => Buffer.concat(lines.flatMap((bytes) => [bytes, utf8.encode("\n")])));
const format = fc.constantFrom<string[]>(
  [],
  ["--json"],
  ["--csv"],
  ["--csv", "--inches"],
  ["--inches"],
);

test(`${RUNS} inputs: an exit code, and no control character, NaN or stack of calls`, async () => {
  const seen = { pass: 0, unread: 0 };
  const world = { names: worldNow(), members: worldSnapshot() };
  const tried = async (words: string[], bytes: Buffer, size: number) => {
    const { code, out, err } = await ran([...words, "-"], bytes, size);
    expect([0, 1, 2]).toContain(code);
    if (code === 2) seen.unread++;
    else seen.pass++;
    expect(code === 2).toBe(err !== "");
    for (const text of [out, err]) {
      expect(text).not.toMatch(/\bNaN\b|\n\s+at .*:\d+:\d+/);
      if (!words.includes("--csv")) expect(text).not.toMatch(/[^\P{Cc}\n]/u);
    }
    expect(err).not.toMatch(/TypeError|Cannot read|is not a function|Maximum call stack/);
    expect(worldNow()).toEqual(world.names);
    expect(changesSince(world.members)).toEqual([]);
  };
  await fc.assert(fc.asyncProperty(format, input, fc.integer({ min: 1, max: 5000 }), tried), {
    numRuns: RUNS,
  });
  expect(seen.pass + seen.unread).toBe(RUNS);
  expect(seen.pass).toBeGreaterThan(0);
  expect(seen.unread).toBeGreaterThan(RUNS / 10);
});

const word = fc.oneof(
  fc.constantFrom("--json", "--csv", "--inches", "--help", "--version", "--__proto__", "--json=1"),
  fc.constantFrom(
    "-",
    "--",
    "no/such/file",
    "\u001B[2J",
    "--nonsense",
    "-x",
    "",
    "/dev/null",
    "\0",
  ),
  fc.string({ unit: "binary", maxLength: 20 }).filter((text) => !text.includes("/")),
);
/** Nothing may be written to disk here. */
const words = fc
  .array(word, { maxLength: 4 })
  .filter((list) => !list.some((each) => each.startsWith("--s")));

test(`${RUNS} command lines: an exit code and words for a person`, async () => {
  await fc.assert(
    fc.asyncProperty(words, async (list) => {
      const { code, err } = await ran(list, new Uint8Array());
      expect([0, 1, 2]).toContain(code);
      if (code === 2) expect(err.length).toBeGreaterThan(0);
      expect(err).not.toMatch(/[^\P{Cc}\n]/u);
      expect(err).not.toMatch(/TypeError|Cannot read|is not a function|\n\s+at /);
    }),
    { numRuns: RUNS },
  );
});
