import { readdirSync, readFileSync } from "node:fs";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type FileIssue, readDesign } from "../../src/files/index.js";
import { checkDesign, type Design } from "../../src/index.js";
import { PLAIN } from "../check/necks.js";
import { anyNeck } from "../properties/designs.js";
import { withLengths } from "./values.js";
import { WHOLE } from "./whole.js";

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
  const lines = Object.entries(all).map(([key, value]) => `  "${key}": ${value}`);
  return `{\n${lines.join(",\n")}\n}\n`;
}

function issuesOf(text: string): readonly FileIssue[] {
  try {
    readDesign(text);
  } catch (error) {
    expect(error).toBeInstanceOf(RangeError);
    expect((error as Error).name).toBe("DesignError");
    return (error as { issues: readonly FileIssue[] }).issues;
  }
  throw new Error("the text was taken");
}

/** Where the marks ‸ of a text stand, counted without them. */
function placesOfMarks(text: string): { line: number; column: number }[] {
  const parts = text.split("‸");
  return parts.slice(1).map((_, i) => {
    const lines = parts
      .slice(0, i + 1)
      .join("")
      .split("\n");
    return { line: lines.length, column: (lines.at(-1)?.length ?? 0) + 1 };
  });
}

describe("what a file may say", () => {
  test.each(EXAMPLES)("%s is read as it stands", (name) => {
    const text = readFileSync(new URL(name, FOLDER), "utf8");
    const design = readDesign(text);
    expect(design).toEqual(JSON.parse(text));
    expect(checkDesign(design).holes.length).toBeGreaterThan(0);
  });

  test("there are examples", () => {
    expect(EXAMPLES.length).toBeGreaterThanOrEqual(4);
  });

  test.each(WHOLE)("every field, as numbers", (design) => {
    expect(readDesign(JSON.stringify(design))).toEqual(design);
  });

  test.each(WHOLE)("every length, as text", (design) => {
    let written = 0;
    const texts = withLengths(design, (mm) => {
      written++;
      return `${mm} mm`;
    });
    expect(written).toBeGreaterThan(5);
    expect(readDesign(JSON.stringify(texts))).toEqual(design);
  });

  // 1 in = 25.4 mm exactly (NIST SP 811, memory); 1/64 in = .396875 mm, 1/4 in = 6.35 mm
  test.each<[string, number]>([
    ['"25.5 in"', 647.7],
    ['"25 1/2 in"', 647.7],
    ['"25-1/2 inches"', 647.7],
    ['"25½\\""', 647.7],
    ['"2 1/8 ft"', 647.7],
    ['"647.7 mm"', 647.7],
    ['"64.77 cm"', 647.7],
    ['"647.7"', 647.7],
    ["647.7", 647.7],
    ['" 24 1/64 in "', 609.996875],
  ])("a scale length of %s is %s mm", (written, mm) => {
    const design = readDesign(file({ scale: `{ "length": ${written}, "frets": 22 }` }));
    expect(design.scale).toEqual({ length: mm, frets: 22 });
  });

  test("lengths as text wherever a length is", () => {
    const design = readDesign(
      file({
        radius: '{ "nut": "10 in", "end": "16 in" }',
        crown: '"1/64 in"',
        depth: '"1/8 in"',
        tolerance: '{ "layout": "1/64 in", "radius": 0.01 }',
      }),
    );
    expect(design.radius).toEqual({ nut: 254, end: 406.4 });
    expect(design.crown).toBe(0.396875);
    expect(design.depth).toBe(3.175);
    expect(design.tolerance).toEqual({ layout: 0.396875, radius: 0.01 });
  });

  test("a flat radius, for the whole board or at every station", () => {
    expect(readDesign(file({ radius: '"flat"' })).radius).toBe(Infinity);
    const radius = '{ "nut": "flat", "end": "flat" }';
    expect(readDesign(file({ radius })).radius).toEqual({ nut: Infinity, end: Infinity });
  });

  test("the schema's name is for the editor alone", () => {
    const design = readDesign(file({ $schema: '"./design.schema.json"' }));
    expect(design).toEqual(readDesign(file()));
    expect(Object.keys(design)).not.toContain("$schema");
    expect(issuesOf(file({ $schema: "1" })).map(({ path }) => path)).toEqual(["$schema"]);
  });

  test("a name that looks like a length stays a text", () => {
    expect(readDesign(file({ name: '"12 in"' })).name).toBe("12 in");
    expect(issuesOf(file({ name: '"12 in"', web: "-1" })).map(({ path }) => path)).toEqual(["web"]);
  });

  test("any design, in numbers or in texts, comes back as it was", () => {
    let runs = 0;
    fc.assert(
      fc.property(anyNeck, fc.boolean(), ({ design }, asText) => {
        runs++;
        const written = asText ? withLengths(design, (mm) => `${mm} mm`) : design;
        expect(readDesign(JSON.stringify(written))).toEqual(design);
      }),
      { numRuns: 150 },
    );
    expect(runs).toBe(150);
  });
});

describe("one problem each: its path, its value, what was expected, and where", () => {
  // ‸ stands where the place is to be; where there is none, it is the name of the field
  test.each<[Record<string, string>, string, unknown, RegExp]>([
    [{ radius: "-254" }, "radius", -254, /^a radius of more than 0 mm .*, or "flat"$/],
    [{ radius: "0" }, "radius", 0, /or "flat"$/],
    [{ radius: '"Infinity"' }, "radius", "Infinity", /, or "flat"$/],
    [{ radius: '"flatt"' }, "radius", "flatt", /did you mean "flat"\?$/],
    [{ radius: '"-10 in"' }, "radius", "-10 in", /more than 0 mm/],
    [{ radius: "‸1e400" }, "radius", "1e400", /^a number of at most 1\.8e\+308$/],
    [{ radius: "null" }, "radius", null, /^a radius/],
    [{ radius: "[254]" }, "radius", [254], /^a radius/],
    [{ radius: "{}" }, "radius", {}, /^a value at one station or more$/],
    [{ radius: '{ ‸"fert12": 254 }' }, "radius.fert12", 254, /did you mean "fret12"/],
    [{ radius: '{ ‸"fret23": 254 }' }, "radius.fret23", 254, /"fret1" to "fret22"/],
    [{ radius: '{ "nut": "flat", "end": 9 }' }, "radius", { nut: "flat", end: 9 }, /"flat" at/],
    [{ depth: '"1/4"' }, "depth", "1/4", /^a unit after a fraction, as in "1\/4 in"$/],
    [{ depth: '"1/4 inn"' }, "depth", "1/4 inn", /^a length in mm, cm, m, in or ft/],
    [{ depth: '"1/0 in"' }, "depth", "1/0 in", /denominator other than 0/],
    [{ depth: '"1 + 1 mm"' }, "depth", "1 + 1 mm", /nothing else after it/],
    [{ depth: '"flat"' }, "depth", "flat", /^a length as "1 1\/2 in"/],
    [{ depth: '"0 mm"' }, "depth", "0 mm", /more than 0 mm .* as "1\/4 in"$/],
    [{ depth: "true" }, "depth", true, /more than 0 mm .* as "1\/4 in"$/],
    [{ crown: '"-1 mm"' }, "crown", "-1 mm", /^a length of 0 mm or more/],
    [{ bit: '{ "kind": "twist", ‸"angle": "118" }' }, "bit.angle", "118", /degrees/],
    [{ bit: '{ ‸"kind": "twst" }' }, "bit.kind", "twst", /did you mean "twist"/],
    [{ bit: '{ "angle": 118 }' }, "bit.kind", undefined, /"forstner", "brad-point"/],
    [{ fill: "[]" }, "fill", [], /^an object whose kind is "poured" or "solid"$/],
    [{ fill: '{ "kind": "solid" }' }, "fill.thickness", undefined, /more than 0/],
    [{ fill: '{ "kind": "poured", ‸"kep": 1 }' }, "fill.kep", 1, /did you mean "keep"/],
    [{ tolerance: "[]" }, "tolerance", [], /^an object with "stop"/],
    [{ tolerance: '{ ‸"radius": "2 mm" }' }, "tolerance.radius", "2 mm", /fraction/],
    [{ pour: '{ ‸"ratio": [1] }' }, "pour.ratio", [1], /^two parts/],
    [{ pour: '{ "ratio": [1, ‸0] }' }, "pour.ratio.1", 0, /greater than 0/],
    [{ markers: "{}" }, "markers", {}, /^an array of marker groups, \d+ at most$/],
    [{ markers: "[‸3]" }, "markers.0", 3, /^an object with "frets"/],
    [{ markers: "[‸[3]]" }, "markers.0", [3], /^an object with "frets"/],
    [{ markers: '[{ ‸"frets": [], "diameter": 6}]' }, "markers.0.frets", [], /one fret/],
    [{ markers: '[{ "frets": [3, ‸"5"], "diameter": 6}]' }, "markers.0.frets.1", "5", /whole/],
    [{ markers: '[{ "frets": [3, ‸3], "diameter": 6}]' }, "markers.0.frets.1", 3, /once/],
    [{ markers: '[{ "frets": [‸99], "diameter": 6}]' }, "markers.0.frets.0", 99, /1 to 22/],
    [{ markers: '[‸{ "frets": [3] }]' }, "markers.0.diameter", undefined, /more than 0/],
    [{ scale: '{ "frets": 22 }' }, "scale.length", undefined, /more than 0/],
    [{ scale: '{ "length": 648, ‸"frets": 22.5 }' }, "scale.frets", 22.5, /1 to 250/],
    [
      { scale: '{ "positions": [30, ‸20] }', markers: "[]" },
      "scale.positions.1",
      20,
      /more than the position before it/,
    ],
    [{ name: "7" }, "name", 7, /^a text$/],
    [{ raduis: "254" }, "raduis", 254, /^a known key: .*; did you mean "radius"\?$/],
    [{ "a.b": "1" }, "a.b", 1, /^a known key: /],
    [{ "": "1" }, "", 1, /^a known key: /],
  ])("%j: %s", (fields, path, value, expected) => {
    const [name = ""] = Object.keys(fields);
    const written = file(fields);
    const text = written.includes("‸") ? written : written.replace(`"${name}":`, `‸"${name}":`);
    const [place] = placesOfMarks(text);
    const issues = issuesOf(text.replace("‸", ""));
    expect(issues.map((found) => found.path)).toEqual([path]);
    const [issue] = issues;
    expect(issue?.value).toEqual(value);
    expect(issue?.expected).toMatch(expected);
    expect(issue).toMatchObject(place ?? {});
    const { line, column } = place ?? {};
    expect(issue?.message).toContain(`${path || "design"}: expected ${issue?.expected}, received `);
    expect(issue?.message.endsWith(` (line ${line}, column ${column})`)).toBe(true);
  });

  test.each(["__proto__", "constructor", "toString", "prototype"])("a key %s is refused", (key) => {
    const places = [
      file().replace('"radius"', `"${key}": 1, "radius"`),
      file({ radius: `{ "nut": 254, "${key}": 254 }` }),
      file({ fill: `{ "kind": "poured", "${key}": 1 }` }),
    ].map((text) => issuesOf(text).map(({ path }) => path));
    expect(places).toEqual([[key], [`radius.${key}`], [`fill.${key}`]]);
    expect(Object.keys(Object.prototype)).toEqual([]);
  });
});

describe("all at once", () => {
  const marked = `{
  "scale": { ‸"length": "25.5 inn", "frets": 22 },
  "board": { "length": 482, "width": { "nut": 43, ‸"ned": 57 }, ‸"thickness": "flat" },
  ‸"radius": {},
  "markers": [{ "frets": [3, ‸3], ‸"diameter": "6 kg" }, ‸{ "frets": [12] }],
  "tolerance": { ‸"stop": -1, ‸"layout": null },
  ‸"webb": 1, ‸"depht": 2, ‸"toString": 3
}`;
  const text = marked.replaceAll("‸", "");

  test("the problems of the shape and those that the check finds, in the order of the text", () => {
    const issues = issuesOf(text);
    expect(issues.map(({ path }) => path)).toEqual([
      "scale.length",
      "board.width.ned",
      "board.thickness",
      "radius",
      "markers.0.frets.1",
      "markers.0.diameter",
      "markers.1.diameter",
      "tolerance.stop",
      "tolerance.layout",
      "webb",
      "depht",
      "toString",
    ]);
    const places = issues.map(({ line, column }) => ({ line, column }));
    expect(places).toEqual(placesOfMarks(marked));
    // in the words of a file, where texts are lengths too
    for (const path of ["markers.1.diameter", "tolerance.stop", "tolerance.layout"]) {
      const issue = issues.find((found) => found.path === path);
      expect(issue?.expected).toMatch(/, or a text with its unit, as "1\/4 in"$/);
    }
  });

  test("the message names them, each with its place", () => {
    expect(() => readDesign(text)).toThrow(
      /^12 problems in the design:\n {2}scale\.length: expected/,
    );
    expect(() => readDesign(text)).toThrow(/received "25\.5 inn" \(line 2, column 14\)\n/);
  });

  test("lengths that can be read are held against each other though others cannot", () => {
    const channel = '{ "width": 6, "depth": 1, "from": "10 in", "to": "9 in" }';
    const board = `{ "length": "19 in", "width": 50, "thickness": 6, "channel": ${channel} }`;
    const paths = issuesOf(file({ board, web: '"x"' })).map(({ path }) => path);
    expect(paths).toEqual(["board.channel.from", "web"]);
  });

  test("what parts must be to each other, told with its line", () => {
    expect(issuesOf(file({ radius: '"1 in"' }))).toMatchObject([{ path: "radius", line: 4 }]);
    const markers = '[\n    { "frets": [3], "diameter": 6, "spread": 20 }\n  ]';
    expect(issuesOf(file({ markers }))).toMatchObject([
      { path: "markers.0.spread", line: 6, column: 36 },
    ]);
  });

  test.each([undefined, null, 3, {}, Buffer.from("{}")])("%s is no text", (value) => {
    const issues = issuesOf(value as unknown as string);
    expect(issues).toMatchObject([{ path: "", expected: "a text of JSON", line: 1, column: 1 }]);
  });

  test.each(["[]", "null", "3", '"neck"', "true"])("%s is no design", (json) => {
    const issues = issuesOf(json);
    expect(issues).toMatchObject([{ path: "", line: 1, column: 1 }]);
    expect(issues[0]?.expected).toMatch(/^an object/);
  });
});

test("checkDesign takes what was read, and says the same of it", () => {
  const design: Design = readDesign(JSON.stringify(PLAIN));
  expect(checkDesign(design).holes).toEqual(checkDesign(PLAIN).holes);
});
