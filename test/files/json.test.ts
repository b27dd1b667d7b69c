/** What is no JSON, what is too much of it, and where. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { FILE_LIMITS, type FileIssue, readDesign } from "../../src/files/index.js";
import { readJson } from "../../src/files/json.js";
import { pathPlaces } from "../../src/files/places.js";

/** Every dotted path of a value but the empty one. */
function pathsOf(value: unknown, path = ""): string[] {
  if (typeof value !== "object" || value === null) return [path];
  const within = Object.entries(value).flatMap(([key, inner]) =>
    pathsOf(inner, path === "" ? key : `${path}.${key}`),
  );
  return path === "" ? within : [path, ...within];
}

function issuesOf(text: string): readonly FileIssue[] {
  try {
    readDesign(text);
  } catch (error) {
    expect((error as Error).name).toBe("DesignError");
    return (error as { issues: readonly FileIssue[] }).issues;
  }
  throw new Error("the text was taken");
}

const SIGN = /no tab or other control character/;

describe("a text that is no JSON: one issue at path '', with what was expected and where", () => {
  test.each<[string, string, RegExp, number, number]>([
    ["", "the end of the text", /^JSON with a value here$/, 1, 1],
    ['{\n  "web": 1,\n}', ",", /no comma before "}"/, 2, 11],
    ["[1, 2,]", ",", /no comma before "]"/, 1, 6],
    ['{ "web": 1,, "depth": 2 }', ",", /a key in double quotes here/, 1, 12],
    ['{\r\n  "radius": NaN\r\n}', "NaN", /no NaN/, 2, 13],
    ['{\r  "radius": NaN\r}', "NaN", /no NaN/, 2, 13],
    ['{ "radius": Infinity }', "Infinity", /no Infinity; a flat radius is "flat"/, 1, 13],
    ['{ "radius": -Infinity }', "-", /no Infinity; a flat radius is "flat"/, 1, 13],
    ['{ "radius": flat }', "flat", /text in double quotes as "1\/4 in"/, 1, 13],
    ['{ "web": 1/4 in }', "/", /text in double quotes as "1\/4 in"/, 1, 11],
    ['{ "web": 6.35 mm }', "mm", /text in double quotes as "1\/4 in"/, 1, 15],
    ['{ "web": +1 }', "+1", /a number, true, false, null, or text/, 1, 10],
    ['{ "web": 0x10 }', "x10", /a number, true, false, null, or text/, 1, 11],
    ['{ "web": 01 }', "1", /a comma here/, 1, 11],
    ['{ "web": 1. }', "1.", /a digit at the end of this number/, 1, 10],
    ["{ web: 1 }", "web", /every key in double quotes/, 1, 3],
    ["{ 'web': 1 }", "'web'", /every key in double quotes/, 1, 3],
    ['{ "web" 1 }', "1", /a colon after the key/, 1, 9],
    ['{ "web": }', "}", /a value here/, 1, 10],
    ['{\n  "web": 1\n  "depth": 2\n}', '"depth"', /a comma here/, 3, 3],
    ['{\n  "web": 1', "the end of the text", /a "}" here/, 2, 11],
    ["[1", "the end of the text", /a "\]" here/, 1, 3],
    ['{ "web": 1 } }', "}", /nothing more after its end/, 1, 14],
    ['{ "name": "heron\n" }', '"heron', /a double quote that ends this text on its line/, 1, 11],
    ['{ "name": "\t" }', '"\t"', SIGN, 1, 11],
    ['{ "name": "\\x" }', '"\\x"', /a backslash only before one of/, 1, 11],
    ['{ "name": "\\u12" }', '"\\u12"', /four hexadecimal digits/, 1, 11],
    ['// a neck\n{ "web": 1 }', "// a neck", /no comment/, 1, 1],
    ['{ "web": 1 /* mm */ }', "/* mm */", /no comment/, 1, 12],
    ["\uFEFF{}", "\uFEFF", /no byte order mark; save it as plain UTF-8/, 1, 1],
    ["\u00A0{}", "\u00A0", /a number, true, false, null, or text/, 1, 1],
  ])("%j", (text, value, expected, line, column) => {
    const issues = issuesOf(text);
    expect(issues).toHaveLength(1);
    const [issue] = issues;
    expect(issue).toMatchObject({ path: "", value, line, column });
    expect(issue?.expected).toMatch(/^JSON with /);
    expect(issue?.expected).toMatch(expected);
    expect(issue?.message).toMatch(
      /^design: expected JSON with .* received ".*" \(line \d+, column \d+\)$/,
    );
  });

  test("a mistake on each line, all of them at once", () => {
    const text =
      '\uFEFF{\n  "web": 1, // mm\n  "radius": NaN,\n  "depth": 1.,\n  "name": "\\x",\n}';
    expect(issuesOf(text).map(({ value, line }) => [value, line])).toEqual([
      ["\uFEFF", 1],
      ["// mm", 2],
      ["NaN", 3],
      ["1.", 4],
      ['"\\x"', 5],
      // the comma, on the same line, is told when that is mended
    ]);
  });

  test.each([
    ['{\n  board: { "length": 482 },\n  "web" 1,\n  "radius": NaN\n}', "board"],
    ['{\n  board: {\n    "length": 482\n  },\n  "web": 1\n}', "board"],
    ['{\n  "board" { "length": 482 },\n  "depth" 3,\n  "radius": NaN\n}', "{"],
  ])("what may be just a consequence is not told: %j", (text, value) => {
    expect(issuesOf(text)).toMatchObject([{ value, line: 2 }]);
  });

  test("of very many mistakes the first hundred", () => {
    const issues = issuesOf(`[${"[1,],\n".repeat(10_000)}1]`);
    expect(issues.map(({ line }) => line)).toEqual(Array.from({ length: 100 }, (_, i) => i + 1));
    expect(FILE_LIMITS.mistakes.value).toBe(100);
  });
});

describe("a key that stands twice", () => {
  test("is told with both lines, beside all else", () => {
    const text =
      '{\n  "web": 1,\n  "depth": -1,\n  "web": 2,\n  "fill": { "kind": "poured", "kind": "x" }\n}';
    const issues = issuesOf(text).filter(({ line }) => line > 1);
    expect(issues.map(({ path, line, column }) => [path, line, column])).toEqual([
      ["depth", 3, 3],
      ["web", 4, 3],
      ["fill.kind", 5, 31],
    ]);
    expect(issues[1]?.message).toContain(
      "web: expected each key once; it is on line 2 too, received",
    );
  });

  test.each<[string, object[]]>([
    ['[{ "web": 1, "a": { "web": 1, "b": 1 }, "b": 1 }, { "web": 1 }]', []],
    ['{ "web": 1, "a": { "b": 1 }, "web": 2 }', [{ path: "web", column: 30 }]],
    ['{ "a": { "b": { "c": 1, "c": 2 } } }', [{ path: "a.b.c" }]],
    ['{ "web": 1, "\\u0077eb": 2 }', [{ path: "web" }]],
    ['{ "__proto__": 1, "__proto__": 2 }', [{ path: "__proto__" }]],
  ])("%s", (text, issues) => {
    const read = readJson(text);
    expect(read).toMatchObject({ value: JSON.parse(text), isJson: true });
    expect(read.issues).toMatchObject(issues);
  });
});

describe("bounds on a text", () => {
  test("1 000 000 characters, and no more", () => {
    const most = FILE_LIMITS.text.value;
    expect(most).toBe(1_000_000);
    expect(readJson(`{}${" ".repeat(most - 2)}`).isJson).toBe(true);
    const issues = issuesOf(`{}${" ".repeat(most - 1)}`);
    expect(issues).toMatchObject([
      { path: "", expected: "a text of at most 1000000 characters", line: 1 },
    ]);
    expect(issues[0]?.message.length).toBeLessThan(200);
  });

  test("32 levels, and no more, told where they are exceeded", () => {
    const nested = (levels: number) => `${"[\n".repeat(levels)}${"]".repeat(levels)}`;
    expect(readJson(nested(32)).isJson).toBe(true);
    expect(readJson(`[${`${nested(31)},`.repeat(20)}0]`).isJson).toBe(true);
    expect(readJson(`"${"[".repeat(99)}"`).isJson).toBe(true);
    const expected = "JSON of at most 32 levels";
    expect(issuesOf(nested(33))).toMatchObject([{ path: "", expected, line: 33, column: 1 }]);
    expect(issuesOf(`{"a":`.repeat(33))).toMatchObject([{ path: "", expected, column: 161 }]);
  });

  test.each(["[", '{"a":', "[{", "}", "]"])(
    "%s without end is refused, not crashed on",
    (piece) => {
      expect(issuesOf(piece.repeat(Math.floor(1_000_000 / piece.length)))).toHaveLength(1);
    },
  );

  test("10 000 keys, and no more", () => {
    const keys = (count: number) =>
      `{${Array.from({ length: count }, (_, i) => `"k${i}": 1`).join(",\n")}}`;
    expect(readJson(keys(10_000)).isJson).toBe(true);
    expect(issuesOf(keys(10_001))).toMatchObject([
      { path: "", expected: "JSON of at most 10000 keys", line: 10_001 },
    ]);
  });

  test("a text may have as many problems as it has keys", () => {
    const text = `{${Array.from({ length: 3000 }, (_, i) => `"k${i}": 1`).join(",")}}`;
    expect(issuesOf(text).length).toBe(3004);
  });
});

describe("the same as JSON.parse", () => {
  const WORDS =
    '{"a":1} [1,2] "x" 1 -0.5e+3 true null { } [ ] , : " \\ 0 - + . e 1e400 \\u0041 \\n / // /* */ \' NaN tru a "a": "__proto__":';
  const SIGNS = [
    "\n",
    "\t",
    " ",
    "\r",
    "\u00A0",
    "\u2028",
    "\0",
    "\u001F",
    "\uD800",
    "\uFEFF",
    "\u000B",
  ];
  const fragment = fc.constantFrom(...WORDS.split(" "), ...SIGNS);
  const nearJson = fc
    .tuple(
      fc.json({ maxDepth: 3 }),
      fc.array(fc.tuple(fc.nat(), fragment, fc.nat(2)), { maxLength: 3 }),
    )
    .map(([json, edits]) =>
      edits.reduce((text, [at, piece, cut]) => {
        const start = at % (text.length + 1);
        return text.slice(0, start) + piece + text.slice(start + cut);
      }, json),
    );
  const pieces = fc.array(fragment, { maxLength: 8 }).map((all) => all.join(""));

  test("on 10 000 texts: the same are JSON, with the same values", () => {
    const seen = { json: 0, other: 0 };
    fc.assert(
      fc.property(fc.oneof(nearJson, pieces), (text) => {
        const { isJson, value, issues } = readJson(text);
        const parsed = parse(text);
        expect(isJson).toBe(parsed !== undefined);
        if (parsed === undefined) expect(issues.length).toBeGreaterThan(0);
        else expect(value).toEqual(parsed.value);
        seen[isJson ? "json" : "other"]++;
        for (const { line, column } of issues) expect(isPlaceIn(text, line, column)).toBe(true);
      }),
      { numRuns: 10_000 },
    );
    expect(seen.json).toBeGreaterThan(1000);
    expect(seen.other).toBeGreaterThan(1000);
  });

  function parse(text: string): { value: unknown } | undefined {
    try {
      return { value: JSON.parse(text) };
    } catch {}
  }

  function isPlaceIn(text: string, line: number, column: number): boolean {
    const found = text.split(/\r\n|\r|\n/)[line - 1];
    return found !== undefined && column >= 1 && column <= found.length + 1;
  }
});

test("the place of every path, wherever the lines break", () => {
  const key = fc.stringMatching(/^[a-z]{1,3}$/);
  const tree = fc.letrec((tie) => ({
    value: fc.oneof({ maxDepth: 4 }, fc.constantFrom(1, "x", null), tie("object"), tie("array")),
    object: fc.dictionary(key, tie("value"), { maxKeys: 4 }),
    array: fc.array(tie("value"), { maxLength: 4 }),
  }));
  let found = 0;
  fc.assert(
    fc.property(tree.object, fc.constantFrom("\n", "\r\n", "\r"), (value, end) => {
      const text = JSON.stringify(value, undefined, 1).replaceAll("\n", end);
      const placeOf = pathPlaces(text);
      for (const path of pathsOf(value)) {
        found++;
        const { line, column } = placeOf(path);
        const from = text.split(end)[line - 1]?.slice(column - 1) ?? "";
        const name = path.split(".").at(-1) ?? "";
        expect(from).toMatch(/^\d+$/.test(name) ? /^[[{"\dn]/ : new RegExp(`^"${name}":`));
        // as deep in the text as it is in the value
        expect(column - 1).toBe(path.split(".").length);
        expect(placeOf(`${path}.missing.here`)).toEqual(placeOf(path));
      }
    }),
    { numRuns: 300 },
  );
  expect(found).toBeGreaterThan(1000);
});
