/** `length` on anything at all, and against big decimals as an oracle. */
import fc from "fast-check";
import { all, create } from "mathjs";
import { expect, test } from "vitest";
import { length } from "../../src/units/index.js";

const math = create(all ?? {}, { number: "BigNumber", precision: 64 });
/** 1 inch, in mm, exact (NIST SP 811, memory). */
const inch = math.bignumber("25.4");

const size = fc
  .tuple(fc.double({ min: 1, max: 9.999999, noNaN: true }), fc.integer({ min: -12, max: 11 }))
  .map(([digits, exponent]) => Number(`${digits}e${exponent}`));

test("a number of mm, written in full, is read as itself", () => {
  fc.assert(
    fc.property(size, fc.boolean(), (mm, isNegative) => {
      const value = isNegative ? -mm : mm;
      expect(length(value)).toBe(value);
      expect(length(String(value))).toBe(value);
      expect(length(`${value} mm`)).toBe(value);
    }),
  );
});

test("decimal inches are rounded once: big decimals at 64 digits agree to the last bit", () => {
  const digits = fc.string({ unit: fc.constantFrom(..."0123456789"), minLength: 1, maxLength: 25 });
  fc.assert(
    fc.property(fc.integer({ min: 0, max: 9999 }), digits, (whole, decimals) => {
      const text = `${whole}.1${decimals}`;
      expect(length(`${text} in`)).toBe(math.bignumber(text).times(inch).toNumber());
    }),
  );
});

const part = fc
  .tuple(fc.integer({ min: 1, max: 9999 }), fc.integer({ min: 0, max: 9998 }))
  .map(([denominator, n]) => ({ numerator: n % denominator, denominator }));

test("mixed inches, however they are joined: big decimals at 64 digits agree to the last bit", () => {
  fc.assert(
    fc.property(
      fc.integer({ min: 0, max: 9999 }),
      part,
      fc.constantFrom(" ", "-", "   "),
      fc.constantFrom(" in", '"', "″", " inch"),
      (whole, { numerator, denominator }, join, unit) => {
        const exact = math.bignumber(whole).times(denominator).plus(numerator).times(inch);
        const expected = exact.div(denominator).toNumber();
        expect(length(`${whole}${join}${numerator}/${denominator}${unit}`)).toBe(expected);
        expect(length(`${whole * denominator + numerator}/${denominator}${unit}`)).toBe(expected);
        expect(length(`-${whole}${join}${numerator}/${denominator}${unit}`)).toBe(0 - expected);
      },
    ),
  );
});

test("other units: each as many mm as its definition says", () => {
  const units = { mm: "1", cm: "10", m: "1000", in: "25.4", ft: "304.8" };
  const decimal = fc.tuple(fc.nat(99999), fc.nat(99999)).map(([a, b]) => `${a}.${b}`);
  fc.assert(
    fc.property(decimal, fc.constantFrom(...Object.entries(units)), (text, [unit, mm]) => {
      expect(length(`${text} ${unit}`)).toBe(math.bignumber(text).times(mm).toNumber());
    }),
  );
});

/** "read" or "refused"; fails on NaN, Infinity and any other error. */
function outcomeOf(text: string): "read" | "refused" {
  try {
    expect(Number.isFinite(length(text)), text).toBe(true);
    return "read";
  } catch (error) {
    expect(error, text).toBeInstanceOf(RangeError);
    expect((error as RangeError).message).toMatch(/^length: expected .+, received "/s);
    return "refused";
  }
}

test("any text at all is read as a finite length, or refused with a RangeError", () => {
  const typed = fc.string({
    unit: fc.constantFrom(..."0123456789/ .-+eE\"″½¼⁄,()*^'", "in", "mm", "cm", " in", "ft", "kg"),
    maxLength: 12,
  });
  const seen = { read: 0, refused: 0 };
  fc.assert(
    fc.property(fc.oneof(typed, fc.string(), fc.string({ unit: "binary" })), (text) => {
      seen[outcomeOf(text)]++;
    }),
    { numRuns: 3000 },
  );
  expect(seen.read).toBeGreaterThan(20);
  expect(seen.refused).toBeGreaterThan(20);
});

test("stray text after a good length spoils it", () => {
  const stray = fc.constantFrom(
    "x",
    "1",
    "/",
    "in",
    " in",
    "mm",
    "-",
    "+1",
    "(",
    "½",
    '"',
    ";",
    "^2",
  );
  fc.assert(
    fc.property(part, stray, ({ numerator, denominator }, text) => {
      expect(outcomeOf(`3 ${numerator}/${denominator} in${text}`)).toBe("refused");
    }),
  );
});
