/** The schema as others use it: a Standard Schema over values that are already in memory. */
import fc from "fast-check";
import * as v from "valibot";
import { describe, expect, test } from "vitest";
import { designSchema } from "../../src/files/index.js";
import { LIMITS } from "../../src/index.js";
import { anyNeck } from "../properties/designs.js";
import { withLengths } from "./values.js";
import { WHOLE } from "./whole.js";

const standard = designSchema["~standard"];

/** The issues of a value: dotted path and message. */
function issuesOf(value: unknown): string[] {
  const result = standard.validate(value);
  if (result instanceof Promise) throw new Error("it is to answer at once");
  return (result.issues ?? []).map(({ path, message }) => {
    const keys = path?.map((item) => String(typeof item === "object" ? item.key : item)) ?? [];
    return `${keys.join(".")}: ${message}`;
  });
}

test("it is a Standard Schema", () => {
  expect(standard).toMatchObject({ version: 1, vendor: "valibot" });
  expect(standard.validate).toBeTypeOf("function");
});

test.each(WHOLE)("a design goes through as it is, and is not changed", (design) => {
  const before = structuredClone(design);
  expect(standard.validate(design)).toEqual({ typed: true, value: design });
  expect(design).toEqual(before);
});

test("every design does, and so does what is written in texts", () => {
  let runs = 0;
  fc.assert(
    fc.property(anyNeck, ({ design }) => {
      runs++;
      for (const value of [design, withLengths(design, (mm) => `${mm} mm`)]) {
        expect(v.parse(designSchema, value)).toEqual(design);
      }
    }),
    { numRuns: 150 },
  );
  expect(runs).toBe(150);
});

test("a flat radius is Infinity, which it also takes", () => {
  const [design] = WHOLE;
  for (const radius of ["flat", Infinity]) {
    expect(v.parse(designSchema, { ...design, radius }).radius).toBe(Infinity);
  }
  expect(v.parse(designSchema, { ...design, radius: { nut: "flat" } }).radius).toEqual({
    nut: Infinity,
  });
});

describe("what it says of a value that does not fit", () => {
  const [design] = WHOLE;

  test.each<[string, unknown, string[]]>([
    ["nothing", undefined, [': expected an object with "name", "scale"']],
    ["a list", [], [": expected an object with a design's keys"]],
    [
      "fields that are missing",
      {},
      [
        'scale: expected an object with "length" and "frets"',
        'board: expected an object with "length", "width", "thickness" and "channel"',
        "radius: expected a radius of more than 0 mm (1e-12 to 1e+12 mm), or a text with its unit",
        `markers: expected an array of marker groups, ${LIMITS.groups.value} at most`,
      ],
    ],
    [
      "an empty list for an object",
      { ...design, pour: [] },
      ['pour: expected an object with "waste"'],
    ],
    [
      "a word",
      { ...design, fill: { kind: "poored" } },
      ['fill.kind: expected "poured" or "solid"; did'],
    ],
    [
      "a key of a part",
      { ...design, scale: { length: 648, frets: 22, fret: 1 } },
      ['scale.fret: expected a known key: "length" or "frets"'],
    ],
    ["a near key", { ...design, weeb: 1 }, ['weeb: expected a known key: "name", "scale"']],
    ["a key of every object", { ...design, toString: 1 }, ["toString: expected a known key"]],
    [
      "an infinite length",
      { ...design, depth: Infinity },
      ["depth: expected a length of more than 0"],
    ],
    ["NaN", { ...design, radius: Number.NaN }, ["radius: expected a radius of more than 0 mm"]],
    [
      "a field that is undefined",
      { ...design, web: undefined },
      ["web: expected a length of 0 mm"],
    ],
  ])("%s", (_, value, expected) => {
    const issues = issuesOf(value);
    expect(issues).toHaveLength(expected.length);
    issues.forEach((issue, i) => {
      expect(issue.startsWith(expected[i] ?? "?"), issue).toBe(true);
    });
  });

  test("every message is in plain words", () => {
    let told = 0;
    fc.assert(
      fc.property(fc.anything(), fc.constantFrom(...Object.keys(design ?? {})), (junk, key) => {
        for (const issue of issuesOf({ ...design, [key]: junk })) {
          told++;
          const [, path, message] = /^(.*?): (expected .*)$/s.exec(issue) ?? [];
          expect(path?.startsWith(key)).toBe(true);
          expect(message).toMatch(/^expected (an? |one |two |")/);
          expect(message).not.toMatch(/undefined|Invalid|\[object/);
        }
      }),
      { numRuns: 2000 },
    );
    expect(told).toBeGreaterThan(1000);
  });
});
