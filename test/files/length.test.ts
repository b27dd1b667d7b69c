/** Lengths as text, held against the units entry, which reads them by mathjs. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { lengthIn, lengthPattern } from "../../src/files/length.js";
import { length } from "../../src/units/index.js";

/** The length by the units entry; undefined where it refuses. */
function byUnits(text: string): number | undefined {
  try {
    return length(text);
  } catch (error) {
    expect(error).toBeInstanceOf(RangeError);
    return undefined;
  }
}

const digits = fc.stringMatching(/^[0-9]{1,4}$/);
const signs = fc.constantFrom("", "", "", "+", "-", "−");
const stroke = fc.constantFrom("/", "⁄");
const fraction = fc.oneof(
  fc.tuple(digits, stroke, digits).map((parts) => parts.join("")),
  fc.constantFrom(..."¼½¾⅐⅑⅒⅓⅔⅕⅖⅗⅘⅙⅚⅛⅜⅝⅞"),
);
const number = fc.oneof(
  digits,
  fraction,
  fc
    .tuple(digits, fc.constantFrom(".", "e", ".e-", "e+", "e-"), digits)
    .map((parts) => parts.join("")),
  fc.tuple(fc.constantFrom("", "1", "12", "3."), digits).map(([whole, rest]) => `${whole}.${rest}`),
  fc
    .tuple(digits, fc.constantFrom(" ", "-", "", "  ", "\u00A0"), fraction)
    .map((parts) => parts.join("")),
);
const words = [
  ..."mm millimeter millimeters millimetre millimetres cm centimeter centimetres m meter meters metre".split(
    " ",
  ),
  ..."metres in in. inch inches \" ″ ” '' ′′ ’’ ft ft. foot feet".split(" "),
  "",
];
const others = ["in in", ..."kg km um yd mil angstrom deg s mm2 m^2 inn ° ſ '".split(" ")];
const unit = fc.oneof(
  { weight: 4, arbitrary: fc.constantFrom(...words) },
  { weight: 2, arbitrary: fc.mixedCase(fc.constantFrom(...words)) },
  { weight: 1, arbitrary: fc.constantFrom(...others) },
);
const space = fc.constantFrom("", " ", "  ", "\t", "\u00A0");
const written = fc.tuple(space, signs, number, space, unit, space).map((parts) => parts.join(""));

describe("held against `length` of the units entry", () => {
  test("20 000 texts: the same are read, as the same number", () => {
    const seen = { read: 0, refused: 0 };
    fc.assert(
      fc.property(written, (text) => {
        const mm = lengthIn(text);
        const expected = byUnits(text);
        if (typeof mm === "string") expect(expected, text).toBeUndefined();
        else expect(mm, text).toBe(expected);
        seen[typeof mm === "number" ? "read" : "refused"]++;
      }),
      { numRuns: 20_000 },
    );
    expect(seen.read).toBeGreaterThan(5000);
    expect(seen.refused).toBeGreaterThan(1000);
  });

  test("any text at all: the same are read", () => {
    fc.assert(
      fc.property(fc.string({ unit: "binary", maxLength: 12 }), (text) => {
        const mm = lengthIn(text);
        expect(typeof mm === "number" ? mm : undefined).toBe(byUnits(text));
      }),
      { numRuns: 2000 },
    );
  });

  test("every way to write a unit, small letters and capitals", () => {
    let read = 0;
    for (const word of words) {
      for (const text of casesOf(word)) {
        const mm = lengthIn(`3 ${text}`);
        expect(typeof mm === "number" ? mm : undefined, text).toBe(byUnits(`3 ${text}`));
        if (typeof mm === "number") read++;
      }
    }
    expect(read).toBeGreaterThan(9000);
  });
});

/** A word in every mix of small letters and capitals. */
function casesOf(word: string): string[] {
  return [...word].reduce<string[]>(
    (begun, letter) => {
      const forms = new Set([letter, letter.toUpperCase()]);
      return begun.flatMap((start) => [...forms].map((form) => start + form));
    },
    [""],
  );
}

describe("the pattern for editors", () => {
  const pattern = new RegExp(lengthPattern(), "u");
  const signed = new RegExp(lengthPattern("[+−-]"), "u");

  test("lets through every length that is read, where the sign may be minus; and hardly another", () => {
    const seen = { read: 0, refused: 0 };
    fc.assert(
      fc.property(fc.oneof(written, fc.string({ maxLength: 8 })), (text) => {
        const mm = lengthIn(text);
        if (typeof mm === "number") {
          seen.read++;
          expect(text).toMatch(signed);
          expect(pattern.test(text)).toBe(!/^[-−]/.test(text.trim()));
        } else if (!signed.test(text)) seen.refused++;
      }),
      { numRuns: 20_000 },
    );
    expect(seen.read).toBeGreaterThan(5000);
    expect(seen.refused).toBeGreaterThan(1000);
  });

  test.each([
    "1/4",
    "flat",
    "",
    "mm",
    "1/4 kg",
    "1 + 1 mm",
    "1,5 mm",
    "-1 mm",
    "1 2 mm",
    "1..2 mm",
  ])("refuses %j", (text) => {
    expect(text).not.toMatch(pattern);
  });
});

test("as long as 1e12 mm, and no longer", () => {
  expect(lengthIn("1000000000000 mm")).toBe(1e12);
  expect(typeof lengthIn("1000000000000.1 mm")).toBe("string");
});
