/** Circle segments: printed figures against `sagitta` and `radiusFromSagitta`. */
import { expect, test } from "vitest";
import { radiusFromSagitta, sagitta } from "../../src/geometry/sagitta.js";
import { evaluated64 } from "./exact.js";
import { expectPrinted, rangeOf } from "./printed.js";

test("r = 60, h = 8: chord 59.86652, printed as 59.86", () => {
  // Machinery's Handbook, 31st ed., p. 79; the print truncates
  const chord = chordOf(60, 8);
  expectPrinted(chord, "59.86652");
  expect(Math.trunc(chord * 100) / 100).toBe(59.86);
  const r = radiusFromSagitta(59.86652 / 2, 8);
  expectPrinted(r, "60.0000");
});

test("chord 16, h = 6: r = 8 1/3", () => {
  // Machinery's Handbook, 31st ed., p. 79
  const r = radiusFromSagitta(16 / 2, 6);
  expect(r).toBeCloseTo(8 + 1 / 3, 14);
  expect(sagitta(r, 16 / 2)).toBeCloseTo(6, 14);
});

test("R = 12, depth 2: chord 13.27, arc 14.06, area 18.01", () => {
  // Machinery's Handbook, 31st ed., p. 50
  const chord = chordOf(12, 2);
  const { arc, area } = segmentOf(chord, sagitta(12, chord / 2));
  expectPrinted(chord, "13.27");
  expectPrinted(arc, "14.06");
  expectPrinted(area, "18.01");
  const { low, high } = rangeOf("13.27");
  expect(radiusFromSagitta(low / 2, 2)).toBeLessThan(12);
  expect(radiusFromSagitta(high / 2, 2)).toBeGreaterThan(12);
});

test("chord 21, h 6: R 12.1875, angle 118.97953°, arc 25.308373, area 89.254148", () => {
  // "Circular Sections", worked example of a mathematics program's manual (general purpose)
  const { radius, angle, arc, area } = segmentOf(21, 6);
  expectPrinted(radius, "12.1875");
  expectPrinted((angle * 180) / Math.PI, "118.97953");
  expectPrinted(arc, "25.308373");
  expectPrinted(area, "89.254148");
  expectPrinted(sagitta(12.1875, 21 / 2), "6.000000");
});

test("r = 9, 60°: area 7.3386 with the book's 0.433, 7.33747 exactly", () => {
  // Machinists' and Draftsmen's Handbook, p. 200: ±0.002, for its 0.433; r = (n² + h²)/(2h)
  const n = 9 * Math.sin(Math.PI / 6);
  const h = sagitta(9, n);
  const { radius, area } = segmentOf(2 * n, h);
  expectPrinted(area, "7.33747");
  expect(Math.abs(area - 7.3386)).toBeLessThan(0.002);
  expect(radius).toBeCloseTo((n * n + h * h) / (2 * h), 13);
  expect(radius).toBeCloseTo(9, 13);
});

// handbook segment table (memory): unit radius; angle in degrees, height, chord
const UNIT_SEGMENTS = [
  [30, ".0341", ".5176"],
  [60, ".1340", "1.0000"],
  [90, ".2929", "1.4142"],
  [120, ".5000", "1.7321"],
  [180, "1.0000", "2.0000"],
] as const;

test.each(UNIT_SEGMENTS)("unit radius, %d°: h %s, chord %s", (degrees, height, chord) => {
  const half = (degrees * Math.PI) / 360;
  const h = sagitta(1, Math.sin(half));
  expectPrinted(h, height);
  expectPrinted(chordOf(1, h), chord);
  expectPrinted(radiusFromSagitta(Math.sin(half), h), "1.0000");
  // the table is from memory, so also the identity h = r − r cos(angle/2), by a library
  expect(h).toBeCloseTo(evaluated64(`1 - cos(${degrees / 2} deg)`), 14);
});

// TM 5-628 §12 (rule seen; the figures follow from the formula), D = 1 … 10 degrees, inches
const MID_ORDINATES = [
  "1.006",
  "2.013",
  "3.019",
  "4.025",
  "5.031",
  "6.037",
  "7.043",
  "8.048",
  "9.053",
  "10.058",
] as const;

test.each(MID_ORDINATES.map((inches, i) => [i + 1, inches] as const))(
  "62-ft string on a curve of %d degrees: mid-ordinate %s in",
  (degrees, inches) => {
    // chord definition: a chord of 100 ft spans the degree of the curve
    const feet = 50 / Math.sin((degrees * Math.PI) / 360);
    const ordinate = 12 * sagitta(feet, 62 / 2);
    expectPrinted(ordinate, inches);
    // the rule "1 inch per degree"
    expectPrinted(ordinate, String(degrees));
    const { low, high } = rangeOf(inches);
    expect(radiusFromSagitta(31, high / 12)).toBeLessThan(feet);
    expect(radiusFromSagitta(31, low / 12)).toBeGreaterThan(feet);
  },
);

test("r = 100, R = 1332: sagitta 3.7590580019, and its power series", () => {
  // power series of the sagitta in a telescope makers' list, Aug 2000 (the page misprints the third term)
  const [r, R] = [100, 1332];
  const h = sagitta(R, r);
  expectPrinted(h, "3.7590580019");
  const terms = [r ** 2 / (2 * R), r ** 4 / (8 * R ** 3), r ** 6 / (16 * R ** 5)] as const;
  const [first, second, third] = terms;
  expectPrinted(first, "3.75375375");
  expectPrinted(second, "0.00528929");
  expectPrinted(third, "1.49059e-5");
  // what three terms leave is the fourth term, and a fifth that is a hundred times smaller
  const { low, high } = { low: 5.245e-8, high: 5.255e-8 + 5.25e-10 };
  expect(h - first - second - third).toBeGreaterThan(low);
  expect(h - first - second - third).toBeLessThan(high);
  expectPrinted((5 * r ** 8) / (128 * R ** 7), "5.25e-8");
  expectPrinted(radiusFromSagitta(r, 3.7590580019), "1332.000000");
});

/** The chord over which our own sagitta reaches `height`, by bisection. */
function chordOf(radius: number, height: number): number {
  let [low, high] = [0, radius];
  for (let i = 0; i < 60; i++) {
    const middle = (low + high) / 2;
    if (sagitta(radius, middle) < height) low = middle;
    else high = middle;
  }
  return low + high;
}

/** A segment from chord and height, by the standard formulas and our own radius. */
function segmentOf(chord: number, height: number) {
  const radius = radiusFromSagitta(chord / 2, height);
  // half the angle from the crest: cos = (R − h) / R
  const angle = 2 * Math.acos((radius - height) / radius);
  return {
    radius,
    angle,
    arc: radius * angle,
    area: (radius ** 2 / 2) * (angle - Math.sin(angle)),
  };
}
