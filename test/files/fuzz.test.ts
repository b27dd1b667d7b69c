/** Whatever the text: a DesignError whose issues have a place in it, or a design that the check takes. */
import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { expect, test } from "vitest";
import { type FileIssue, readDesign } from "../../src/files/index.js";
import { checkDesign, type Design } from "../../src/index.js";
import { lengthPathsOf, pathsOf, withLengths, withValue } from "./values.js";
import { WHOLE } from "./whole.js";

const RUNS = Number(process.env.FUZZ ?? 10_000);
const FOLDER = new URL("../../docs/examples/", import.meta.url);
const EXAMPLES = readdirSync(FOLDER)
  .filter((file) => file.endsWith(".json"))
  .map((file) => JSON.parse(readFileSync(new URL(file, FOLDER), "utf8")));
const IN_INCHES = EXAMPLES.map((design) => withLengths(design, (mm) => `${mm / 25.4} in`));

const junk = fc.oneof(
  fc.constantFrom<unknown>(
    "flat",
    "1/4 in",
    "1/0 in",
    "1e9 mm",
    "",
    "6.35",
    "x",
    "double",
    "poured",
  ),
  fc.constantFrom<unknown>(0, -0, 1, -1, 0.5, 1e-13, 1e12, 1e300, 250, null, true, [], {}, [[]]),
  fc.constantFrom<unknown>(
    { nut: "flat" },
    { kind: "twist" },
    { positions: [1, "1 in"] },
    { fret1: 1 },
  ),
  fc.constant<unknown>(JSON.parse('{ "__proto__": { "polluted": 1 }, "constructor": 1 }')),
  fc.jsonValue({ maxDepth: 2 }),
);

/** A design with a few of its values made others, most of them near to what they were. */
const edited = fc
  .tuple(
    fc.constantFrom<unknown>(...EXAMPLES, ...IN_INCHES, ...WHOLE),
    fc.array(fc.tuple(fc.nat(), junk, fc.double({ min: 0.9, max: 1.1, noNaN: true })), {
      maxLength: 3,
    }),
  )
  .map(([design, edits]) =>
    edits.reduce<unknown>((value, [at, other, factor]) => {
      const paths = pathsOf(value).filter((path) => path !== "");
      const lengths = new Set(lengthPathsOf(value));
      const path = paths[at % paths.length] ?? "name";
      if (!lengths.has(path) || at % 3 === 0) return withValue(value, path, other);
      return withLengths(value, (mm) => (at % 2 === 0 ? mm * factor : `${mm * factor} mm`));
    }, design),
  );

const snippets = fc.constantFrom(
  ...[
    ",",
    ":",
    "{",
    "}",
    "[",
    "]",
    '"',
    "\\",
    "\n",
    "//",
    "NaN",
    "1e999",
    "-",
    "null",
    "\uFEFF",
    "\0",
  ],
  ...[
    '"web": 1,',
    '"__proto__": { "web": 9 },',
    '"constructor": { "prototype": { "web": 9 } },',
    '"$schema": "x",',
  ],
);

/** The text of such a design, half of them with a few signs made others. */
const cuts = fc.array(fc.tuple(fc.nat(), fc.nat(3), snippets), { maxLength: 2 });
const text = fc
  .tuple(edited, fc.oneof(fc.constant([]), cuts), fc.boolean())
  .map(([design, edits, isSpaced]) =>
    edits.reduce(
      (json, [at, cut, snippet]) => {
        const start = at % (json.length + 1);
        return json.slice(0, start) + snippet + json.slice(start + cut);
      },
      JSON.stringify(design, undefined, isSpaced ? 2 : 0),
    ),
  );

const texts = fc.oneof(
  { weight: 8, arbitrary: text },
  { weight: 1, arbitrary: fc.json() },
  { weight: 1, arbitrary: fc.string({ unit: "binary" }) },
);

function judgeError(error: unknown, from: string): void {
  if (!(error instanceof Error) || error.name !== "DesignError") throw error;
  const { issues } = error as unknown as { issues: readonly FileIssue[] };
  expect(issues.length).toBeGreaterThan(0);
  const lines = from.split(/\r\n|\r|\n/);
  let last = { line: 1, column: 1 };
  for (const issue of issues) {
    const { path, expected, message, line, column } = issue;
    expect(Object.keys(issue).sort()).toEqual([
      "column",
      "expected",
      "line",
      "message",
      "path",
      "value",
    ]);
    expect(message).toContain(`${path || "design"}: expected ${expected}, received `);
    expect(message).not.toMatch(/Invalid|unknown but/);
    expect(column >= 1 && column <= (lines[line - 1]?.length ?? -1) + 1).toBe(true);
    expect(line > last.line || (line === last.line && column >= last.column)).toBe(true);
    last = { line, column };
  }
}

function judgeDesign(design: Design, from: string): void {
  expect(checkDesign(design).holes).toBeTypeOf("object");
  const { $schema, ...given } = JSON.parse(from);
  // what was written as a number or a word stays as it was
  expect(pathsOf(design).sort()).toEqual(pathsOf(given).sort());
  expect(Object.getPrototypeOf(design)).toBe(Object.prototype);
  // and all of it is of the design itself
  expect("polluted" in design).toBe(false);
}

test(`${RUNS} texts: a DesignError or a design, and nothing else touched`, {
  timeout: 3_600_000,
}, () => {
  const seen = { refused: 0, noJson: 0, read: 0 };
  const before = Object.getOwnPropertyNames(Object.prototype).length;
  fc.assert(
    fc.property(texts, (from) => {
      let design: Design | undefined;
      try {
        design = readDesign(from);
      } catch (error) {
        judgeError(error, from);
        seen[(error as Error).message.includes("expected JSON with") ? "noJson" : "refused"]++;
      }
      if (design !== undefined) {
        seen.read++;
        judgeDesign(design, from);
      }
      expect(Object.getOwnPropertyNames(Object.prototype)).toHaveLength(before);
    }),
    { numRuns: RUNS },
  );
  console.log(`files fuzz: ${JSON.stringify(seen)}`);
  expect(seen.refused).toBeGreaterThan(RUNS / 10);
  expect(seen.noJson).toBeGreaterThan(RUNS / 10);
  expect(seen.read).toBeGreaterThan(RUNS / 20);
});
