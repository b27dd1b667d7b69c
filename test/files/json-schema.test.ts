/** The published JSON Schema: what is in it, and that it says what `readDesign` and `checkDesign` do. */
import { readdirSync, readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import * as v from "valibot";
import { describe, expect, test } from "vitest";
import { designSchema, readDesign } from "../../src/files/index.js";
import { designJsonSchema } from "../../src/files/json-schema.js";
import { checkDesign, type Design, type DesignIssue } from "../../src/index.js";
import { type Box, isBox, lengthPathsOf, pathsOf, withLengths, withValue } from "./values.js";
import { WHOLE } from "./whole.js";

const ROOT = new URL("../../", import.meta.url);
const PUBLISHED = JSON.parse(readFileSync(new URL("src/files/design.schema.json", ROOT), "utf8"));
const EXAMPLES = readdirSync(new URL("docs/examples/", ROOT))
  .filter((file) => file.endsWith(".json"))
  .map((file): Design => JSON.parse(readFileSync(new URL(`docs/examples/${file}`, ROOT), "utf8")));
const DESIGNS = [...EXAMPLES, ...WHOLE];

// strict: a keyword that is unknown, or that says nothing, is an error
const fits = new Ajv2020({ strict: true, allowUnionTypes: true }).compile(PUBLISHED);

/** Every schema within a schema, itself included. */
function schemasIn(value: unknown): Box[] {
  if (!isBox(value)) return [];
  return [value, ...Object.values(value).flatMap(schemasIn)];
}

/** The schema that a reference stands for. */
function resolved(schema: Box): Box {
  const name = String(schema.$ref ?? "").replace("#/$defs/", "");
  return name === "" ? schema : resolved(PUBLISHED.$defs[name]);
}

/** Every dotted path that the schema knows; items are `*`, frets `fret*`. */
function knownPaths(schema: Box, path = ""): string[] {
  const { properties, patternProperties, items, prefixItems, anyOf, oneOf } = resolved(schema);
  const at = (key: string) => (path === "" ? key : `${path}.${key}`);
  const fields = [
    ...Object.entries((properties ?? {}) as Box),
    ...Object.values((patternProperties ?? {}) as Box).map((inner) => ["fret*", inner] as const),
    ...[items, prefixItems, anyOf, oneOf].flatMap((inner, i) =>
      [inner].flat().flatMap((one) => (isBox(one) ? [[i < 2 ? "*" : "", one] as const] : [])),
    ),
  ];
  return fields.flatMap(([key, inner]) =>
    key === "" ? knownPaths(inner as Box, path) : [at(key), ...knownPaths(inner as Box, at(key))],
  );
}

describe("the published file", () => {
  test("is what the valibot schema makes", () => {
    expect(PUBLISHED).toEqual(JSON.parse(JSON.stringify(designJsonSchema())));
  });

  test("is of draft 2020-12, and every reference in it leads somewhere", () => {
    expect(PUBLISHED.$schema).toBe("https://json-schema.org/draft/2020-12/schema");
    const references = schemasIn(PUBLISHED).flatMap(({ $ref }) =>
      typeof $ref === "string" ? [$ref] : [],
    );
    expect(references.length).toBeGreaterThan(50);
    for (const reference of references) expect(resolved({ $ref: reference })).toBeTypeOf("object");
    expect(Object.keys(PUBLISHED.$defs).filter((name) => /^\d/.test(name))).toEqual([]);
  });

  test("every object in it refuses other keys", () => {
    const objects = schemasIn(PUBLISHED).filter(({ type }) => [type].flat().includes("object"));
    expect(objects.length).toBeGreaterThan(15);
    for (const object of objects) expect(object.additionalProperties).toBe(false);
  });

  test("every field has a description, and every number in it a unit", () => {
    const fields = schemasIn(PUBLISHED).flatMap(({ properties, patternProperties }) => [
      ...Object.entries((properties ?? {}) as Box),
      ...Object.entries((patternProperties ?? {}) as Box),
    ]);
    expect(fields.length).toBeGreaterThan(60);
    for (const [name, field] of fields as [string, Box][]) {
      const description = String(field.description ?? "");
      expect(description, name).toMatch(/^[A-Z].*\.$/);
      const { type } = resolved(field);
      const isNumber = ["number", "integer"].some((one) => [type].flat().includes(one));
      if (field.$ref === undefined && !isNumber) continue;
      expect(description, name).toMatch(/\bmm\b|degrees|fraction|fret|parts/i);
    }
  });

  test("the frets of its stations are those of the check: 1 to 250", () => {
    const [pattern = ""] = Object.keys(PUBLISHED.$defs.lengthProfile.patternProperties);
    const names = Array.from({ length: 2000 }, (_, i) => `fret${i}`);
    const known = names.filter((name) => new RegExp(pattern).test(name));
    expect(known).toEqual(Array.from({ length: 250 }, (_, i) => `fret${i + 1}`));
    for (const name of ["fret01", "fret1 ", "fret1.5", "Fret1", "xfret1"]) {
      expect(name).not.toMatch(new RegExp(pattern));
    }
  });
});

describe("every field", () => {
  const used = DESIGNS.flatMap((design) => pathsOf(design)).map((path) =>
    path.replace(/\.\d+/g, ".*").replace(/\.fret\d+/, ".fret*"),
  );

  test("that the schema knows is used by a design that the check takes", () => {
    const known = knownPaths(PUBLISHED).filter((path) => path !== "$schema");
    expect(new Set(known).size).toBeGreaterThan(80);
    expect([...new Set(used)].sort()).toEqual([...new Set(known)].sort());
    for (const design of DESIGNS) expect(checkDesign(design).holes.length).toBeGreaterThan(0);
  });

  test.each(DESIGNS)("design %#: fits as numbers and as texts", (design) => {
    const texts = withLengths(design, (mm) => `${mm / 25.4} in`);
    for (const value of [
      design,
      texts,
      { ...design, $schema: "design.schema.json", radius: "flat" },
    ]) {
      expect(fits(value)).toBe(true);
      expect(readDesign(JSON.stringify(value)).markers).toHaveLength(design.markers.length);
    }
  });
});

/** What `checkDesign` says against a value. */
function refusals(design: unknown): readonly DesignIssue[] {
  try {
    checkDesign(design as Design);
    return [];
  } catch (error) {
    if ((error as Error).name === "DesignError") return (error as { issues: DesignIssue[] }).issues;
    throw error;
  }
}

/** What is said not of the shape of one field, but of what fields are to each other. */
const BETWEEN_FIELDS = new RegExp(
  [
    "^each fret once$",
    "^more than the position before it",
    '^none, unless arrangement is "double"$',
    '^"single" for a trapezoid$',
    '^"end-mill" for a pocket$',
    // a fret's number, held against how many there are
    "^a whole number from 1 to \\d{1,2}$",
    "^a fret from 0 \\(the nut\\) to \\d{1,2}, fractions allowed$",
    '^a station: "nut", "end", "fret1" to "fret\\d{1,2}"',
    "^less than where the channel ends",
    "^fanned frets that meet both edges of the board$",
    "^a place of its own",
    "^(more than 0|0) mm (or more )?everywhere on the board$",
    "^more than half the width everywhere on the board",
    "^a fraction within which the radius exceeds half the width",
    "^a fret on the board, which ends",
    "^a fret with room for the pocket",
    "^a radius that reaches",
    "^a tolerance within which the radius exceeds half the width",
  ].join("|"),
);

const JUNK = [
  ...[
    undefined,
    null,
    true,
    "x",
    "",
    "flat ",
    "1/4",
    "3 kg",
    [],
    [1],
    [[]],
    {},
    { nut: "x" },
    { fret251: 1 },
  ],
  ...[
    -1, -1e-13, 0, 1e-13, 1e-12, 0.001, 0.5, 1, 1.5, 2, 179, 180, 250, 250.5, 251, 1000, 1001, 1e12,
    1.1e12,
  ],
  ...[
    { kind: "poured" },
    { kind: "twist" },
    { kind: "x" },
    { nut: 6, fret3: 6 },
    { positions: [1, 2] },
  ],
];

/** Every design with each of its values replaced by each junk, and with a key added to each object. */
function* mutants(): Generator<readonly [string, unknown]> {
  for (const [i, design] of DESIGNS.entries()) {
    for (const path of pathsOf(design)) {
      for (const junk of JUNK) {
        yield [`${i}: ${path} = ${JSON.stringify(junk)}`, withValue(design, path, junk)];
      }
      // a list has no names
      if (/\.\d+$/.test(path)) continue;
      yield [`${i}: ${path} renamed`, withValue(withValue(design, path, undefined), `${path}s`, 1)];
    }
  }
}

test("thousands of mutants: the JSON Schema, valibot and checkDesign judge the shape alike", () => {
  const seen = { fit: 0, unfit: 0, betweenFields: 0 };
  for (const [what, mutant] of mutants()) {
    const fit = fits(mutant);
    const { success, output } = v.safeParse(designSchema, mutant);
    expect(success, what).toBe(fit);
    const issues = refusals(mutant);
    seen[fit ? "fit" : "unfit"]++;
    if (!fit) expect(issues.length, what).toBeGreaterThan(0);
    else if (issues.length > 0) {
      seen.betweenFields++;
      for (const { expected } of issues) expect(expected, what).toMatch(BETWEEN_FIELDS);
    }
    if (success) expect(output, what).toEqual(mutant);
  }
  console.log(`mutants: ${JSON.stringify(seen)}`);
  expect(seen.fit).toBeGreaterThan(1000);
  expect(seen.unfit).toBeGreaterThan(5000);
  expect(seen.betweenFields).toBeGreaterThan(100);
});

test("lengths as text: the JSON Schema and readDesign judge them alike, but for what a pattern cannot tell", () => {
  const texts = [
    "1/4 in",
    "1-1/2 in",
    "6.35 mm",
    "6",
    "¼ in",
    '1/4"',
    "1/4",
    "1/4 inn",
    "-1 mm",
    "1 + 1 mm",
    "",
  ];
  const [design] = WHOLE;
  const lengths = lengthPathsOf(design);
  expect(lengths.length).toBeGreaterThan(40);
  let taken = 0;
  for (const path of lengths) {
    for (const text of texts) {
      const value = withValue(design, path, text);
      const { success } = v.safeParse(designSchema, value);
      expect(fits(value), `${path} = ${text}`).toBe(success);
      if (success) taken++;
    }
  }
  expect(taken).toBe(lengths.length * 6);
  // out of range, or no number at all: only reading tells
  for (const text of ["0 mm", "1e-13 mm", "1e13 mm", "1/0 in"]) {
    const value = withValue(design, "depth", text);
    expect([fits(value), v.safeParse(designSchema, value).success]).toEqual([true, false]);
  }
});
