/** `formatLength`: the text, the error shown, and the way back through `length`. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Denominator, formatLength, length } from "../../src/units/index.js";

/** 1 inch, in mm, exact (NIST SP 811, memory). */
const INCH = 25.4;

describe("inches", () => {
  test.each([
    // 1/64 in = .396875 mm, 1/4 in = 6.35 mm; the others by hand from 25.4 mm
    [0.396875, "1/64 in"],
    [6.35, "1/4 in"],
    [25.4, "1 in"],
    [38.1, "1 1/2 in"],
    [-38.1, "-1 1/2 in"],
    [0, "0 in"],
    [-0, "0 in"],
    [647.7, "25 1/2 in"],
    // 3.6125 mm = .142224 in = 9/64 (.140625) + .001599
    [3.6125, "9/64 in (+0.0016 in)"],
    [-3.6125, "-9/64 in (-0.0016 in)"],
    // 6 mm = .236220 in = 15/64 (.234375) + .001845
    [6, "15/64 in (+0.0018 in)"],
    // 5 mm = .196850 in = 13/64 (.203125) − .006275
    [5, "13/64 in (-0.0063 in)"],
    [-5, "-13/64 in (+0.0063 in)"],
    // less than half of 1/64
    [0.1, "0 in (+0.0039 in)"],
    [-0.1, "0 in (-0.0039 in)"],
    // .001 mm = .00004 in: the bracket would say 0.0000
    [6.351, "1/4 in"],
    [6.352, "1/4 in (+0.0001 in)"],
  ])("%d mm", (mm, text) => {
    expect(formatLength(mm, { unit: "in" })).toBe(text);
  });

  test.each([
    // 6 mm = .236220 in
    [1, "0 in (+0.2362 in)"],
    [2, "0 in (+0.2362 in)"],
    [4, "1/4 in (-0.0138 in)"],
    [8, "1/4 in (-0.0138 in)"],
    [16, "1/4 in (-0.0138 in)"],
    [32, "1/4 in (-0.0138 in)"],
    [64, "15/64 in (+0.0018 in)"],
  ] as const)("6 mm to the nearest 1/%d", (denominator, text) => {
    expect(formatLength(6, { unit: "in", denominator })).toBe(text);
  });

  test("half way, the one farther from 0", () => {
    expect(formatLength(12.7, { unit: "in", denominator: 1 })).toBe("1 in (-0.5000 in)");
    expect(formatLength(-12.7, { unit: "in", denominator: 1 })).toBe("-1 in (+0.5000 in)");
  });
});

describe("millimetres", () => {
  test.each([
    [6.35, "6.35 mm"],
    [38.1, "38.10 mm"],
    [0.396875, "0.40 mm"],
    [-1.239, "-1.24 mm"],
    [-0.001, "0.00 mm"],
  ])("%d mm, two decimals", (mm, text) => {
    expect(formatLength(mm)).toBe(text);
    expect(formatLength(mm, { unit: "mm" })).toBe(text);
    expect(formatLength(mm, { unit: "mm", denominator: 8 })).toBe(text);
  });
});

describe("refusals", () => {
  test.each([
    [NaN, "NaN"],
    [Infinity, "Infinity"],
    [1.1e12, "1100000000000"],
    ["6", '"6"'],
    [undefined, "undefined"],
  ])("a length of %s", (mm, received) => {
    const message = `mm: expected a length of at most 1e+12 mm, received ${received}`;
    expect(() => formatLength(mm as number)).toThrow(new RangeError(message));
  });

  test.each([0, 3, 10, 128, -2, 1.5, NaN, "64"])("a denominator of %s", (denominator) => {
    const format = { unit: "in", denominator: denominator as Denominator } as const;
    expect(() => formatLength(6, format)).toThrow(
      /^denominator: expected 1, 2, 4, 8, 16, 32 or 64, received /,
    );
  });

  test("another unit", () => {
    expect(() => formatLength(6, { unit: "cm" as "mm" })).toThrow(
      new RangeError('unit: expected "mm" or "in", received "cm"'),
    );
  });
});

describe("the way back", () => {
  const mm = fc.double({ min: -2000, max: 2000, noNaN: true });
  const denominator = fc.constantFrom<Denominator>(1, 2, 4, 8, 16, 32, 64);
  /** The fraction, and what the bracket adds to it, in inches. */
  const parts = /^(?<shown>[^(]+ in)(?: \((?<error>[+-]0\.\d{4}) in\))?$/;

  test("inches: within half a step of the fraction, and within 0.00005 in of fraction and error", () => {
    let inexact = 0;
    fc.assert(
      fc.property(mm, denominator, (value, denominator) => {
        const found = formatLength(value, { unit: "in", denominator }).match(parts)?.groups;
        const shown = length(found?.shown ?? "none");
        expect(Math.abs(shown - value)).toBeLessThanOrEqual(INCH / 2 / denominator + 1e-9);
        const sum = shown + Number(found?.error ?? 0) * INCH;
        expect(Math.abs(sum - value)).toBeLessThanOrEqual(0.00005 * INCH + 1e-9);
        inexact += found?.error === undefined ? 0 : 1;
      }),
    );
    expect(inexact).toBeGreaterThan(0);
  });

  test("whole 64ths come back as they are, without a bracket", () => {
    fc.assert(
      fc.property(fc.integer({ min: -5000, max: 5000 }), (n) => {
        const exact = length(`${n}/64 in`);
        const text = formatLength(exact, { unit: "in" });
        expect(text).not.toContain("(");
        expect(length(text)).toBe(exact);
      }),
    );
  });

  test("millimetres: within 0.005 mm", () => {
    fc.assert(
      fc.property(mm, (value) => {
        expect(Math.abs(length(formatLength(value)) - value)).toBeLessThanOrEqual(0.005 + 1e-9);
      }),
    );
  });
});

test("lengths as far as 1e12 mm of either sign, and none beyond", () => {
  expect(formatLength(1e12)).toBe("1000000000000.00 mm");
  expect(formatLength(-1e12)).toBe("-1000000000000.00 mm");
  const beyond = (mm: number) => () => formatLength(mm);
  const message = (mm: number) => `mm: expected a length of at most 1e+12 mm, received ${mm}`;
  expect(beyond(1000000000001)).toThrow(new RangeError(message(1000000000001)));
  expect(beyond(-1000000000001)).toThrow(new RangeError(message(-1000000000001)));
});
