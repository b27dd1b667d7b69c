/** `length`: known values, and every way that a builder writes them. */
import { describe, expect, test } from "vitest";
import { length } from "../../src/units/index.js";

describe("known values", () => {
  // 1 in = 25.4 mm exactly (NIST SP 811, memory); 1/64 in = .396875 mm, 1/4 in = 6.35 mm
  test.each([
    ["1 in", 25.4],
    ["1/64 in", 0.396875],
    ["1/4 in", 6.35],
    ["10 in", 254],
    // 1 ft = 0.3048 m exactly (NIST SP 811, memory)
    ["1 ft", 304.8],
    // prefixes of the SI
    ["1 mm", 1],
    ["1 cm", 10],
    ["1 m", 1000],
    // one and a half inches: 25.4 + 12.7, never 1 − 1/2
    ["1 1/2 in", 38.1],
    ["1-1/2 in", 38.1],
    // floating-point inches give 647.6999999999999; 25.5 · 25.4 = 647.7 by hand
    ["25.5 inch", 647.7],
  ])("%s is %d mm", (text, mm) => {
    expect(length(text)).toBe(mm);
  });
});

describe("ways to write", () => {
  test.each([
    "1 1/2 in",
    "1-1/2 in",
    "1 1/2in",
    "1  1/2  in",
    " 1 1/2 in ",
    "1½ in",
    "1 ½ in",
    "1-½ in",
    "1 1⁄2 in",
    "3/2 in",
    "1.5 in",
    "1.50 in",
    "01.5 in",
    "+1.5 in",
    "15e-1 in",
    "0.15E+1 in",
    "1.5 in.",
    "1.5 inch",
    "1.5 inches",
    "1.5 INCHES",
    "1.5 In",
    '1.5"',
    '1 1/2 "',
    "1½″",
    "1½”",
    "1½''",
    "1½′′",
    "1½’’",
    "1\u00a01/2\u2009in",
    "38.1 mm",
    "38.1mm",
    "38.1",
    "38.1 MM",
    "38.1 millimeters",
    "38.1 millimetre",
    "3.81 cm",
    "3.81 centimetres",
    ".0381 m",
    "0.0381 meter",
    "0.125 ft",
    "1/8 foot",
    "⅛ feet",
  ])("%s is 38.1 mm", (text) => {
    expect(length(text)).toBe(38.1);
  });

  test("the stroke of a typeset fraction", () => {
    expect(length("1⁄2 in")).toBe(12.7);
  });

  test("a number is mm", () => {
    expect(length(6.35)).toBe(6.35);
    expect(length("6.35")).toBe(6.35);
    expect(length("5.")).toBe(5);
  });

  test("each fraction that has a character of its own", () => {
    const characters = "½ ⅓ ⅔ ¼ ¾ ⅕ ⅖ ⅗ ⅘ ⅙ ⅚ ⅐ ⅛ ⅜ ⅝ ⅞ ⅑ ⅒".split(" ");
    const spelled =
      "1/2 1/3 2/3 1/4 3/4 1/5 2/5 3/5 4/5 1/6 5/6 1/7 1/8 3/8 5/8 7/8 1/9 1/10".split(" ");
    expect(characters).toHaveLength(18);
    characters.forEach((character, i) => {
      expect(length(`2${character} in`), character).toBe(length(`2 ${spelled[i]} in`));
      expect(length(`${character}"`), character).toBe(length(`${spelled[i]} in`));
    });
  });
});

describe("sign and size", () => {
  test("a minus goes for the whole of a mixed number", () => {
    expect(length("-1 1/2 in")).toBe(-38.1);
    expect(length("-1-1/2 in")).toBe(-38.1);
    expect(length("−1½ in")).toBe(-38.1);
    expect(length(-6.35)).toBe(-6.35);
  });

  test("nothing has no sign", () => {
    for (const nothing of [0, -0, "0", "-0 mm", "0/4 in", "-0.0 in", "0e5 m"]) {
      expect(Object.is(length(nothing), 0), String(nothing)).toBe(true);
    }
  });

  test("a text on the far side of half way between two numbers is rounded once", () => {
    // 1 + 2^−53 lies half way between 1 and the next number, 1 + 2^−52; IEEE 754 rounds it to even
    const halfWay = "1.00000000000000011102230246251565404236316680908203125";
    expect(length(`${halfWay} mm`)).toBe(1);
    expect(length(`${halfWay}0000001 mm`)).toBe(1 + 2 ** -52);
    expect(length(`${halfWay.slice(0, -1)}4 mm`)).toBe(1);
  });

  test("the limits themselves pass", () => {
    expect(length("1e-12 mm")).toBe(1e-12);
    expect(length("1e12 mm")).toBe(1e12);
    expect(length("1e9 m")).toBe(1e12);
    expect(length(-1e12)).toBe(-1e12);
    expect(length(`1${"0".repeat(90)}e-90`)).toBe(1);
  });
});
