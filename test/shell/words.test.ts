/** Whatever is typed: options are read or refused in one line, and a run ends with an exit code and no stack. */
import { Writable } from "node:stream";
import fc from "fast-check";
import { expect, test } from "vitest";
import { main } from "../../src/shell/main.js";
import { type Options, readOptions, UsageError } from "../../src/shell/options.js";
import { GOOD } from "./command.js";

const NAMES =
  "json csv findings inches remedies no-remedies recursive jobs repair rack sanding svg template paper help version"
    .split(" ")
    .map((name) => `--${name}`);
const VALUES = [
  ...[
    "12=0.4",
    "12:bass=0.4",
    "12:bass=1e308",
    "0=0",
    "markers.0.frets.0.bass=-1",
    "markers.=1",
    "=",
    "12:x=1",
  ],
  ...["6,7", "0", "-1", ",", "1e-300", "NaN", "1/0 in", "9".repeat(400), "a4", "letter", "A4"],
  ...[
    "1",
    "0",
    "-0",
    "257",
    "1.5",
    "",
    " ",
    "\u0000",
    "\ud800",
    "__proto__",
    "constructor",
    "none.json",
  ],
];
const value = fc.oneof(fc.constantFrom(...VALUES), fc.string({ unit: "binary", maxLength: 20 }));
const word = fc.oneof(
  fc.constantFrom(...NAMES, "-", "--", "-h", "--no-json", "--__proto__"),
  value,
  fc.tuple(fc.constantFrom(...NAMES), value).map(([name, it]) => `${name}=${it}`),
);
const words = fc.array(word, { maxLength: 7 });

function readOrRefused(typed: readonly string[]): Options | UsageError {
  try {
    return readOptions(typed);
  } catch (error) {
    expect(error).toBeInstanceOf(UsageError);
    return error as UsageError;
  }
}

test("any words: options, or a mistake in one line", () => {
  const seen = { read: 0, refused: 0 };
  const refused = (message: string) => message.split(/[\n\r]/).length === 1 && message.length > 5;
  fc.assert(
    fc.property(words, (typed) => {
      const options = readOrRefused(typed);
      if (options instanceof UsageError) {
        seen.refused++;
        // what was typed may hold what ends a line; it is shown, not obeyed
        if (!typed.some((each) => /[\n\r]/.test(each))) expect(options.message).toSatisfy(refused);
      } else {
        seen.read++;
        expect(options.jobs).toBeGreaterThanOrEqual(1);
        if (options.ask === "check") expect(options.inputs.length).toBeGreaterThan(0);
      }
    }),
    { numRuns: 2000 },
  );
  expect(Math.min(seen.read, seen.refused)).toBeGreaterThan(50);
});

/** Runs the command in this process on one good design; nothing is written to a disk, no thread begun. */
async function runOn(typed: readonly string[]) {
  const told = { out: "", err: "" };
  const into = (name: "out" | "err") =>
    new Writable({
      write: (chunk, _, done) => {
        told[name] += chunk;
        done();
      },
    });
  async function* stdin() {
    yield Buffer.from(`${JSON.stringify(GOOD)}\n{\n`);
  }
  const streams = { stdin: stdin(), stdout: into("out"), stderr: into("err") };
  return { code: await main(typed, streams, ""), ...told };
}

test("any run: an exit code, and what is wrong in plain lines", async () => {
  const codes = new Set<number>();
  const drawn = fc.tuple(words, value, value).map(([typed, hole, rack]) => {
    return [
      "-",
      "--no-remedies",
      ...typed.filter((each) => !/^-(?:-no-rem|$)/.test(each)),
      `--repair=${hole}`,
      `--rack=${rack}`,
    ].slice(0, typed.length % 2 === 0 ? 20 : -2);
  });
  await fc.assert(
    fc.asyncProperty(drawn, async (typed) => {
      const options = readOrRefused(typed);
      const isQuiet = options instanceof UsageError || !(options.svg ?? options.template);
      if (!isQuiet || (!(options instanceof UsageError) && options.jobs > 1)) return;
      const { code, out, err } = await runOn(typed);
      codes.add(code);
      expect([0, 1, 2]).toContain(code);
      expect(out + err).not.toMatch(/:\d+:\d+\)$|[^\P{Cc}\n\r]|NaN mm/mu);
      if (code === 2) expect(err).not.toBe("");
    }),
    { numRuns: 300 },
  );
  expect([...codes].sort()).toEqual(expect.arrayContaining([2]));
});
