/** What `length` refuses, and the words it uses. */
import { describe, expect, test } from "vitest";
import { length } from "../../src/units/index.js";

/** The error's message, or the value that came instead. */
function refusalOf(value: unknown): string {
  try {
    return `accepted as ${length(value as string)}`;
  } catch (error) {
    expect(error).toBeInstanceOf(RangeError);
    return (error as RangeError).message;
  }
}

const FORMS = 'a length as "1 1/2 in", "25.5 inch" or "6.35 mm"';
const TRAILING = "a length in mm, cm, m, in or ft, with nothing else after the number";
const SIZE = "0 mm, or a size from 1e-12 to 1e+12 mm";
const MIXED = 'a fraction after the whole number, as in "1 1/2 in"';

describe("text", () => {
  test.each([
    // no number
    ["", FORMS],
    ["in", FORMS],
    ["-", FORMS],
    [".", FORMS],
    [". mm", FORMS],
    ["--1 mm", FORMS],
    ["- 1 mm", FORMS],
    ["NaN mm", FORMS],
    ["Infinity mm", FORMS],
    // the wrong unit
    ["2 kg", 'a length in mm, cm, m, in or ft ("kg" is a unit of mass)'],
    ["90 deg", 'a length in mm, cm, m, in or ft ("deg" is a unit of angle)'],
    ["2 sqin", 'a length in mm, cm, m, in or ft ("sqin" is a unit of surface)'],
    ["6.35 foo", TRAILING],
    ["12 constructor", TRAILING],
    ["12 __proto__", TRAILING],
    ["3 km", TRAILING],
    ["6 Mm", TRAILING], // a megametre, not a millimetre
    ["6 mil", TRAILING], // a thousandth of an inch to some, a millimetre to others
    // a comma marks thousands or decimals
    ["6,35 mm", "a decimal point and no comma"],
    ["1,000 mm", "a decimal point and no comma"],
    // fractions
    ["1/4", 'a unit after a fraction, as in "1/4 in"'],
    ["1 1/2", 'a unit after a fraction, as in "1/4 in"'],
    ["½", 'a unit after a fraction, as in "1/4 in"'],
    ["1/0 in", "a denominator other than 0"],
    ["1 1/00 in", "a denominator other than 0"],
    ["1/ in", "a denominator after the stroke of a fraction"],
    ["1/-2 in", "a denominator after the stroke of a fraction"],
    ["1 5/4 in", "a fraction less than 1 after the whole number"],
    ["1 4/4 in", "a fraction less than 1 after the whole number"],
    ["1-2 in", MIXED],
    ["6 35 mm", MIXED],
    ["1- in", MIXED],
    // an expression is text after a number
    ["1 - 1/2 in", TRAILING],
    ["1+1 mm", TRAILING],
    ["2*3 mm", TRAILING],
    ["1/2/3 in", TRAILING],
    ["1.5/2 in", TRAILING],
    ["1 mm^2", TRAILING],
    ["1 1/2 1/4 in", TRAILING],
    ["½½ in", TRAILING],
    ["25.4 mm in", TRAILING],
    ["0x10 mm", TRAILING],
    ["1.2.3 mm", TRAILING],
    ["1_000 mm", TRAILING],
    ["1e mm", TRAILING],
    // size
    ["1e400 mm", SIZE],
    ["-1e400 mm", SIZE],
    ["1e-400 mm", SIZE],
    ["1.1e12 mm", SIZE],
    ["9e-13 mm", SIZE],
    ["1e10 m", SIZE],
    ["1e1000 mm", "an exponent of at most 3 digits"],
    ["1e-99999999999 mm", "an exponent of at most 3 digits"],
  ])("%s", (text, expected) => {
    expect(refusalOf(text)).toBe(`length: expected ${expected}, received ${JSON.stringify(text)}`);
  });

  test("100 characters are read, 101 are not", () => {
    expect(length(`${"0".repeat(97)}1mm`.slice(-100))).toBe(1);
    const long = `${"0".repeat(98)}1mm`;
    expect(long).toHaveLength(101);
    expect(refusalOf(long)).toMatch(/^length: expected a text of at most 100 characters, received/);
    expect(refusalOf("1".repeat(1_000_000)).length).toBeLessThan(150);
  });
});

describe("other values", () => {
  test.each([
    [NaN, SIZE, "NaN"],
    [Infinity, SIZE, "Infinity"],
    [-Infinity, SIZE, "-Infinity"],
    [2e12, SIZE, "2000000000000"],
    [1e-13, SIZE, "1e-13"],
    [undefined, `a number of mm, or ${FORMS}`, "undefined"],
    [null, `a number of mm, or ${FORMS}`, "null"],
    [true, `a number of mm, or ${FORMS}`, "true"],
    [5n, `a number of mm, or ${FORMS}`, "a big integer"],
    [["1 in"], `a number of mm, or ${FORMS}`, "an array"],
    [{ toString: () => "1 in" }, `a number of mm, or ${FORMS}`, "an object"],
  ])("%s", (value, expected, received) => {
    expect(refusalOf(value)).toBe(`length: expected ${expected}, received ${received}`);
  });
});

describe("nothing is evaluated", () => {
  const reached = { count: 0 };

  test.each([
    "(reached.count = 1) mm",
    "1 mm; reached.count = 1",
    // biome-ignore lint/suspicious/noTemplateCurlyInString: code that must stay text
    "${reached.count = 1} mm",
    "f(x) = x; f(2) mm",
    "cos(0) in",
    "sqrt(4) mm",
    "2^2 mm",
    "3! mm",
    "1 in to mm",
    "pi mm",
    "[1, 2] mm",
    "import({}) mm",
    "constructor.constructor('return 1')() mm",
    "factorial(1e9) mm",
    "1:1e9 mm",
  ])("%s", (text) => {
    Object.assign(globalThis, { reached });
    expect(refusalOf(text)).toMatch(/^length: expected /);
    expect(reached.count).toBe(0);
  });
});
