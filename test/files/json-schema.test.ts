/** The JSON Schema is made of the table, and judges as the reader does. */
import { readdirSync, readFileSync } from "node:fs";
import { Ajv2020 } from "ajv/dist/2020.js";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { MANY } from "../../src/design/bounds.js";
import { DESIGN } from "../../src/design/fields.js";
import { listFields } from "../../src/design/kinds.js";
import { newReading, readStated } from "../../src/design/read.js";
import { writeDesign } from "../../src/files/index.js";
import { designJsonSchema, type Schema } from "../../src/files/json-schema.js";
import { lengthIn } from "../../src/files/length.js";
import { designs, statedDesigns } from "../design/arbitrary.js";
import { spotsIn, withValue } from "../design/walk.js";

const SCHEMA = designJsonSchema() as Schema & { readonly $defs: Record<string, Schema> };
// a case need not define again what its object has
const fits = new Ajv2020({ strict: true, strictRequired: false, allowUnionTypes: true }).compile(
  SCHEMA,
);

/** Every schema within a schema, itself included. */
function schemasIn(value: unknown): Schema[] {
  if (typeof value !== "object" || value === null) return [];
  return [value as Schema, ...Object.values(value).flatMap(schemasIn)];
}

/** A design as JSON holds it. */
function asJson(design: unknown): unknown {
  return JSON.parse(JSON.stringify(design, (_, value) => (value === Infinity ? "flat" : value)));
}

function expectedBy(design: unknown): string[] {
  const reading = newReading([], lengthIn);
  readStated(design, reading);
  return reading.issues.map(({ expected }) => expected);
}

describe("what is in it", () => {
  const all = schemasIn(SCHEMA);

  test("is of draft 2020-12; references lead somewhere, objects refuse other keys", () => {
    expect(SCHEMA.$schema).toBe("https://json-schema.org/draft/2020-12/schema");
    const names = all.flatMap(({ $ref }) =>
      typeof $ref === "string" ? [$ref.replace("#/$defs/", "")] : [],
    );
    expect([...new Set(names)].sort()).toEqual(Object.keys(SCHEMA.$defs).sort());
    const objects = all.filter(({ type }) => type === "object");
    expect(objects.length).toBeGreaterThan(15);
    for (const object of objects) expect(object.additionalProperties).toBe(false);
  });

  test("each field has its sentence, and what is assumed without it", () => {
    const told = SCHEMA.properties as Record<string, Schema>;
    for (const [key, { says, usual }] of listFields(DESIGN)) {
      expect(told[key]).toMatchObject({
        description: says,
        ...(usual !== undefined && { default: usual }),
      });
    }
    const defaults = all.flatMap((schema) => ("default" in schema ? [schema.default] : []));
    for (const usual of [0.8, 0.5, 118, "diagonals", "wood", "single", "rectangular", 2])
      expect(defaults).toContain(usual);
    expect(defaults).toContainEqual([1, 1]);
  });

  test("its stations are the frets that there may be", () => {
    const [pattern = ""] = Object.keys(SCHEMA.$defs.lengthProfile?.patternProperties as object);
    const names = Array.from({ length: 2000 }, (_, i) => `fret${i}`);
    const known = Array.from({ length: MANY }, (_, i) => `fret${i + 1}`);
    expect(names.filter((name) => new RegExp(pattern).test(name))).toEqual(known);
    for (const name of ["fret01", "fret1 ", "fret1.5", "Fret1", "xfret1"])
      expect(name).not.toMatch(new RegExp(pattern));
  });
});

describe("what fits", () => {
  test("every example", () => {
    const folder = new URL("../../docs/examples/", import.meta.url);
    const files = readdirSync(folder).filter((file) => file.endsWith(".json"));
    expect(files.length).toBeGreaterThan(4);
    for (const file of files) {
      expect(fits(JSON.parse(readFileSync(new URL(file, folder), "utf8"))), file).toBe(true);
    }
  });

  test("every design, its lengths as numbers or as texts, and any field at its bounds", () => {
    fc.assert(
      fc.property(designs, statedDesigns, (design, stated) => {
        const texts = JSON.parse(writeDesign(design, { unit: "in" }));
        for (const value of [asJson(design), texts, asJson(stated)]) {
          expect(fits(value), JSON.stringify(fits.errors)).toBe(true);
          expect(fits({ $schema: "a.json", ...(value as object) })).toBe(true);
        }
      }),
      { numRuns: 100 },
    );
  });
});

/** What no schema can tell: what fields are to each other, and the size of a text. */
const BETWEEN = new RegExp(
  [
    "^more than the one before it",
    "^a whole number from 1 to \\d{1,2}$",
    '^a station: "nut", "end", "fret1" to "fret\\d{1,2}"',
    '^a radius that is "flat" at every station',
    "a text with its unit",
    "^0 mm, or a size from",
  ].join("|"),
);

test("with one field broken it refuses what the reader does, but for what it cannot tell", () => {
  const junk = [
    ...[
      null,
      true,
      "x",
      "",
      "flat",
      "1/4",
      "3 kg",
      "1/4 in",
      "-1 mm",
      "1e13 mm",
      [],
      [1, 1],
      [[]],
      {},
      { nut: "x" },
    ],
    ...[
      { fret251: 1 },
      { kind: "twist" },
      { kind: "x" },
      { limit: 1, shape: "normal" },
      { positions: [1, 2] },
    ],
    ...[-1, -1e-13, 0, 1e-13, 1e-12, 0.5, 1, 1.5, 179, 180, 250, 251, 1000, 1001, 1e12, 1.1e12],
  ];
  const seen = { fit: 0, unfit: 0, between: 0 };
  for (const design of fc.sample(statedDesigns, { numRuns: 10, seed: 4 })) {
    for (const { path } of spotsIn(design).slice(1)) {
      const broken = [
        ...junk.map((thing) => withValue(design, path, thing)),
        withValue(design, path, undefined),
        withValue(design, `${path}s`, 1),
      ];
      for (const value of broken.map(asJson)) {
        const [fit, expected] = [fits(value), expectedBy(value)];
        if (!fit) expect(expected.length, JSON.stringify(fits.errors)).toBeGreaterThan(0);
        else for (const each of expected) expect(each, path).toMatch(BETWEEN);
        seen[!fit ? "unfit" : expected.length > 0 ? "between" : "fit"]++;
      }
    }
  }
  expect(seen.fit).toBeGreaterThan(500);
  expect(seen.unfit).toBeGreaterThan(5000);
  expect(seen.between).toBeGreaterThan(100);
});
