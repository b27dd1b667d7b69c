/** Design files: read as they are written, written as they are read, and every problem told with its place. */
import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { designSchema, type FileIssue, readDesign, writeDesign } from "../../src/files/index.js";
import { checkDesign, type Design, DesignError } from "../../src/index.js";
import { length } from "../../src/units/index.js";
import { PLAIN } from "../check/necks.js";
import { designs } from "../design/arbitrary.js";

const FOLDER = new URL("../../docs/examples/", import.meta.url);
const EXAMPLES = readdirSync(FOLDER).filter((file) => file.endsWith(".json"));

/** A design file of one field a line; the fields given replace its own, as they stand. */
function file(fields: Readonly<Record<string, string>> = {}): string {
  const all: Record<string, string> = {
    scale: '{ "length": 648, "frets": 22 }',
    board: '{ "length": 482, "width": { "nut": 43, "end": 57 }, "thickness": 6 }',
    radius: "254",
    markers: '[{ "frets": [3, 5, 12], "diameter": 6.35 }]',
    ...fields,
  };
  return `{\n${Object.entries(all)
    .map(([key, value]) => `  "${key}": ${value}`)
    .join(",\n")}\n}\n`;
}

function issuesOf(text: string): readonly FileIssue[] {
  try {
    readDesign(text);
  } catch (error) {
    if (error instanceof DesignError) return error.issues as readonly FileIssue[];
    throw error;
  }
  return [];
}

/** As `readDesign` gives it: a flat radius is infinite, −0 is 0, and nothing is undefined. */
function plain(design: Design): unknown {
  const flat = (value: unknown): unknown => {
    if (value === "flat" || value === Infinity) return "∞";
    return Object.is(value, -0) ? 0 : value;
  };
  return JSON.parse(JSON.stringify(design, (key, value) => (key === "name" ? value : flat(value))));
}

describe("what a file may say", () => {
  test.each(EXAMPLES)("%s is read as it stands", (name) => {
    const text = readFileSync(new URL(name, FOLDER), "utf8");
    const { $schema, ...stated } = JSON.parse(text);
    const design = readDesign(text);
    expect(plain(design)).toEqual(plain(stated));
    expect(checkDesign(design).holes.length).toBeGreaterThan(0);
  });

  // 1 in = 25.4 mm exactly (NIST SP 811, memory); 1/64 in = .396875 mm
  test.each<[string, number]>([
    ['"25.5 in"', 647.7],
    ['"25-1/2 inches"', 647.7],
    ['"25½\\""', 647.7],
    ['"2 1/8 ft"', 647.7],
    ['"64.77 cm"', 647.7],
    ['"647.7"', 647.7],
    ["647.7", 647.7],
    ['" 24 1/64 in "', 609.996875],
  ])("a scale length of %s is %s mm", (written, mm) => {
    const { scale } = readDesign(file({ scale: `{ "length": ${written}, "frets": 22 }` }));
    expect(scale).toEqual({ length: mm, frets: 22 });
  });

  test("a flat radius, for the whole board or at every station", () => {
    expect(readDesign(file({ radius: '"flat"' })).radius).toBe(Infinity);
    const { radius } = readDesign(file({ radius: '{ "nut": "flat", "end": "flat" }' }));
    expect(radius).toEqual({ nut: Infinity, end: Infinity });
  });

  test("−0 is 0 for every reader", () => {
    const read = ["-0", '"-0 mm"', '"−0 in"'].map(
      (sanding) => readDesign(file({ sanding })).sanding,
    );
    const others = [
      length("-0 mm"),
      length(-0),
      checkDesign({ ...PLAIN, sanding: -0 }).holes[0]?.sanding,
    ];
    for (const zero of [...read, ...others]) expect(zero).toBe(0);
  });

  test("the schema's name is for the editor alone; a name that looks like a length stays a text", () => {
    const design = readDesign(file({ $schema: '"./design.schema.json"', name: '"12 in"' }));
    expect(design).toEqual({ ...readDesign(file()), name: "12 in" });
    expect(issuesOf(file({ $schema: "1" })).map(({ path }) => path)).toEqual(["$schema"]);
  });
});

describe("writeDesign", () => {
  test("any design comes back as it was, in either unit", () => {
    const seen = { fractions: 0, decimals: 0 };
    fc.assert(
      fc.property(designs, (design) => {
        for (const unit of ["mm", "in", undefined] as const) {
          const text = writeDesign(design, { unit });
          const read = readDesign(text);
          expect(plain(read)).toEqual(plain(design));
          expect(checkDesign(read)).toEqual(checkDesign(design));
          if (unit !== "in") expect(text).not.toMatch(/ in"/);
          seen.fractions += text.match(/\/\d+ in"/g)?.length ?? 0;
          seen.decimals += text.match(/\.\d+ in"/g)?.length ?? 0;
        }
      }),
      { numRuns: 60 },
    );
    expect(seen.fractions).toBeGreaterThan(100);
    expect(seen.decimals).toBeGreaterThan(100);
  });

  test("sixty-fourths are fractions, what is no length a number, and lines are short", () => {
    const design: Design = {
      ...PLAIN,
      scale: { bass: 685.8, treble: 647.7, square: 6.35, frets: 22 },
      board: { ...PLAIN.board, length: 1e12, channel: { width: 6.4, depth: 1e-12 } },
      radius: "flat",
      bit: { kind: "twist", angle: 127 },
      stop: { correction: -1.5875 },
      tolerance: { stop: { limit: 0.396875, shape: "normal", coverage: 2.54 }, radius: 0.0254 },
      pour: { waste: 0.254, ratio: [2.54, 1] },
    };
    const text = writeDesign(design, { unit: "in" });
    expect(JSON.parse(text)).toMatchObject({
      scale: { bass: "27 in", treble: "25 1/2 in", square: 6.35, frets: 22 },
      radius: "flat",
      bit: { angle: 127 },
      stop: { correction: "-1/16 in" },
      tolerance: { stop: { limit: "1/64 in", shape: "normal", coverage: 2.54 }, radius: 0.0254 },
      pour: { waste: 0.254, ratio: [2.54, 1] },
    });
    expect(readDesign(text).board).toEqual(design.board);
    for (const line of text.split("\n")) expect(line.length).toBeLessThanOrEqual(100);
    expect(text.split("\n")[1]).toBe(
      '  "scale": { "bass": "27 in", "treble": "25 1/2 in", "square": 6.35, "frets": 22 },',
    );
  });

  test("refuses what checkDesign refuses, and other units", () => {
    expect(() => writeDesign({ ...PLAIN, radius: 20 })).toThrow(DesignError);
    expect(() => writeDesign({ ...PLAIN, web: "1 mm" as never })).toThrow(DesignError);
    expect(() => writeDesign(PLAIN, { unit: "cm" as never })).toThrow(RangeError);
  });
});

describe("problems, all at once, each with its place", () => {
  // ‸ stands where a place is to be
  const marked = `{
  "scale": { ‸"length": "25.5 inn", "frets": 22 },
  "board": { "length": 482, "width": { "nut": 43, ‸"ned": 57 }, ‸"thickness": "flat" },
  ‸"radius": {},
  "bit": { "kind": "forstner", "point": "1/32 in", ‸"spur": "1/16 in" },
  "markers": [{ "frets": [3, ‸3], ‸"diameter": "6 kg" }, ‸{ "frets": [12] }],
  "tolerance": { ‸"stop": -1, ‸"layout": null },
  ‸"webb": 1, ‸"toString": 3, ‸"__proto__": 4, ‸"a.b": 1
}`;
  const issues = issuesOf(marked.replaceAll("‸", ""));

  test("in the order of the text", () => {
    const places = marked
      .split("‸")
      .slice(0, -1)
      .map((_, i, parts) => {
        const lines = parts
          .slice(0, i + 1)
          .join("")
          .split("\n");
        return { line: lines.length, column: (lines.at(-1)?.length ?? 0) + 1 };
      });
    expect(issues.map(({ line, column }) => ({ line, column }))).toEqual(places);
    expect(issues.map(({ path }) => path)).toEqual(
      [
        "scale.length board.width.ned board.thickness radius bit.spur markers.0.frets.1",
        "markers.0.diameter markers.1.diameter tolerance.stop tolerance.layout webb toString",
        "__proto__ a.b",
      ].flatMap((paths) => paths.split(" ")),
    );
    for (const { path, expected, message, line, column } of issues) {
      expect(message.startsWith(`${path}: expected ${expected}, received `)).toBe(true);
      expect(message.endsWith(` (line ${line}, column ${column})`)).toBe(true);
    }
  });

  test("each value as it was written, also where a length is refused for what others are", () => {
    const values = new Map(issues.map(({ path, value }) => [path, value]));
    expect(values.get("scale.length")).toBe("25.5 inn");
    expect(values.get("bit.spur")).toBe("1/16 in");
    const channel = '{ "width": 6, "depth": 1, "from": "10 in", "to": "9 in" }';
    const board = `{ "length": "19 in", "width": 50, "thickness": 6, "channel": ${channel} }`;
    expect(issuesOf(file({ board, web: '"x"' }))).toMatchObject([
      { path: "board.channel.from", value: "10 in" },
      { path: "web", value: "x" },
    ]);
  });

  test.each<[string, string, RegExp]>([
    ["radius", '"flatt"', /or "flat"; did you mean "flat"\?$/],
    ["radius", '"-10 in"', /more than 0 mm .*, or "flat", or a text with its unit/],
    ["radius", '"Infinity"', /, or "flat"$/],
    ["radius", "1e400", /^a number of at most 1\.8e\+308$/],
    ["depth", '"1/4"', /^a unit after a fraction, as in "1\/4 in"$/],
    ["depth", '"1 + 1 mm"', /nothing else after it$/],
    ["depth", '"flat"', /^a length as "1 1\/2 in"/],
    ["depth", '"0 mm"', /more than 0 mm .*, or a text with its unit, as "1\/4 in"$/],
    ["name", "7", /^a text$/],
    ["", "7", /^a known key: /],
  ])("%s: %s", (path, written, expected) => {
    const [issue, ...more] = issuesOf(file({ [path]: written }));
    expect(more).toEqual([]);
    expect(issue?.path).toBe(path);
    expect(issue?.expected).toMatch(expected);
  });

  test.each([undefined, null, 3, {}, "[]", "null", "3", '"neck"'])("%j is no design", (value) => {
    const found = issuesOf(value as string);
    expect(found).toMatchObject([{ path: "", line: 1, column: 1 }]);
  });

  test("whatever the text: a design that the check takes, or issues with a place in it", () => {
    const junk = fc.constantFrom<unknown>(
      "flat",
      "1/4 in",
      "1/0 in",
      "",
      "x",
      0,
      -1,
      1e300,
      null,
      true,
      [],
      {},
      [[]],
    );
    const cut = fc.tuple(
      fc.nat(),
      fc.nat(3),
      fc.constantFrom(",", ":", "{", "}", '"', "\n", "NaN", "1e999", "\0"),
    );
    const texts = fc
      .tuple(designs, fc.nat(), junk, fc.array(cut, { maxLength: 2 }))
      .map(([design, at, other, cuts]) => {
        const lines = JSON.stringify(design, undefined, 1).split("\n");
        const i = at % lines.length;
        lines[i] = (lines[i] as string).replace(/: .*[^,{[]/, `: ${JSON.stringify(other)}`);
        return cuts.reduce((text, [start, size, piece]) => {
          const from = start % (text.length + 1);
          return text.slice(0, from) + piece + text.slice(from + size);
        }, lines.join("\n"));
      });
    const seen = { read: 0, refused: 0 };
    fc.assert(
      fc.property(texts, (text) => {
        const found = issuesOf(text);
        if (found.length === 0) expect(checkDesign(readDesign(text)).holes).toBeTypeOf("object");
        seen[found.length === 0 ? "read" : "refused"]++;
        const lines = text.split(/\r\n|\r|\n/);
        for (const { line, column } of found) {
          expect(column >= 1 && column <= (lines[line - 1]?.length ?? -1) + 1).toBe(true);
        }
      }),
      { numRuns: Number(process.env.FUZZ ?? 500) },
    );
    expect(Math.min(seen.read, seen.refused)).toBeGreaterThan(20);
    expect(Object.keys(Object.prototype)).toEqual([]);
  });
});

describe("the Standard Schema", () => {
  const { version, vendor, validate } = designSchema["~standard"];

  test("says what it is", () => {
    expect({ version, vendor }).toEqual({ version: 1, vendor: "marker-depth" });
  });

  test("gives what readDesign gives, or its issues by their keys", () => {
    for (const design of fc.sample(designs, { numRuns: 30, seed: 5 })) {
      const stated = JSON.parse(writeDesign(design, { unit: "in" }));
      expect(validate(stated)).toEqual({ value: readDesign(JSON.stringify(stated)) });
    }
    const wrong = {
      ...PLAIN,
      radius: { nut: "10 inn" },
      markers: [{ frets: [3, 99], diameter: "6 mm" }],
    };
    const { issues } = validate(wrong);
    expect(issues?.map(({ path }) => path)).toEqual([
      ["radius", "nut"],
      ["markers", 0, "frets", 1],
    ]);
    for (const { message } of issues ?? []) expect(message).toMatch(/: expected .*, received /);
    expect(validate(7).issues).toMatchObject([{ path: [] }]);
  });
});
