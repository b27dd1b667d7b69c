/** The command, in this process, with hostile lines on its standard input and hostile words. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { expectFit, ran } from "./command.js";
import { changesSince, worldNow, worldSnapshot } from "./inside.js";
import { line, utf8 } from "./lines.js";

const RUNS = Math.ceil(Number(process.env.HOSTILE ?? 3000) / 20);

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
    const told = await ran([...words, "-"], bytes, size);
    expectFit(words, told);
    if (told.code === 2) seen.unread++;
    else seen.pass++;
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
