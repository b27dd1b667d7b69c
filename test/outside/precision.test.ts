/** Rounding error, in units in the last place, against mathjs BigNumber at 64 digits. */
import fc from "fast-check";
import { expect, test } from "vitest";
import { diagonalCrossing } from "../../src/board/markers.js";
import { fretPositions } from "../../src/drilling/parts.js";
import { radiusFromSagitta, sagitta } from "../../src/geometry/sagitta.js";
import { between, forAll } from "./counted.js";
import {
  crossing64,
  exactOf,
  fretShare64,
  partsOf,
  radius64,
  sagitta64,
  ulpOf,
  ulpsBetween,
} from "./exact.js";

const MOST_ULPS = 4;
/** 300 cases by default, so 3000 samples. */
const TIMES = 10;

const radius = between(100, 2000);
const x = between(0.1, 35);
const slope = between(0, 0.5);

test("sagitta of a circle", () => {
  forAll(
    fc.record({ radius, x }),
    ({ radius, x }) => {
      const ulps = ulpsBetween(sagitta(radius, x), sagitta64(radius, x, 0));
      expect(ulps).toBeLessThanOrEqual(MOST_ULPS);
    },
    TIMES,
  );
});

test("sagitta with a slope", () => {
  forAll(
    fc.record({ radius, x, slope }),
    ({ radius, x, slope }) => {
      const ulps = ulpsBetween(sagitta(radius, x, slope), sagitta64(radius, x, slope));
      expect(ulps).toBeLessThanOrEqual(MOST_ULPS);
    },
    TIMES,
  );
});

test("radiusFromSagitta, from any height and from our own sagitta", () => {
  forAll(
    fc.record({ radius, x, height: between(1e-4, 20) }),
    ({ radius, x, height }) => {
      for (const h of [height, sagitta(radius, x)]) {
        const ulps = ulpsBetween(radiusFromSagitta(x, h), radius64(x, h));
        expect(ulps).toBeLessThanOrEqual(MOST_ULPS);
      }
    },
    TIMES,
  );
});

test("fretPositions", () => {
  const shares = Array.from({ length: 24 }, (_, i) => fretShare64(i + 1));
  forAll(between(300, 1200), (length) => {
    const positions = fretPositions({ length, frets: 24 });
    expect(positions.length).toBe(24);
    shares.forEach((share, i) => {
      const ulps = ulpsBetween(positions[i] ?? Number.NaN, share.times(exactOf(length)));
      expect(ulps).toBeLessThanOrEqual(MOST_ULPS);
    });
  });
});

test("diagonalCrossing", () => {
  const width = between(20, 90);
  forAll(fc.record({ gap: between(5, 60), a: width, b: width }), ({ gap, a, b }) => {
    const [ours, exact] = [diagonalCrossing(gap, a, b), crossing64(gap, a, b)];
    expect(ulpsBetween(ours.along, exact.along)).toBeLessThanOrEqual(MOST_ULPS);
    expect(ulpsBetween(ours.offset, exact.offset)).toBeLessThanOrEqual(MOST_ULPS);
  });
});

test("the converter is exact: known expansions", () => {
  // 0.1 in binary64, from the definition of the format: 3602879701896397 / 2^55
  expect(partsOf(0.1)).toEqual({ sign: 1n, mantissa: 7205759403792794n, exponent: -56 });
  expect(exactOf(0.1).toFixed()).toBe("0.1000000000000000055511151231257827021181583404541015625");
  expect(exactOf(-0.75).toFixed()).toBe("-0.75");
  expect(exactOf(2 ** 70).toFixed()).toBe("1180591620717411303424");
  expect(exactOf(0).toFixed()).toBe("0");
  expect(exactOf(Number.MIN_VALUE).toFixed()).toBe(
    `0.${(5n ** 1074n).toString().padStart(1074, "0")}`,
  );
  expect(() => exactOf(Infinity)).toThrow(RangeError);
});

test("the converter is exact: every double comes back, and the next one is one unit away", () => {
  forAll(fc.double({ noNaN: true, noDefaultInfinity: true }), (value) => {
    expect(Number(exactOf(value).toString())).toBe(value === 0 ? 0 : value);
    if (Math.abs(value) < 1e300) {
      expect(ulpsBetween(value + ulpOf(value), exactOf(value))).toBe(1);
    }
  });
});
