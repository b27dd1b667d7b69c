/** Convex polygons: figures that can be counted on squared paper, and what holds of any of them. */
import fc from "fast-check";
import { expect, test } from "vitest";
import {
  areaOf,
  clipped,
  crossingOf,
  distanceToLine,
  distanceToSegment,
  gapToPolygon,
  hullOf,
  type Point,
} from "../../src/geometry/polygon.js";

const p = (along: number, offset: number): Point => ({ along, offset });
const pairs = (points: readonly Point[]) => points.map(({ along, offset }) => [along, offset]);

/** A trapezoid of area 30 on squared paper: 10 long, 2 and 4 wide; not about the centre line. */
const TRAPEZOID = [p(5, 1), p(15, 1), p(15, 5), p(5, 3)];

test("a polygon within its stretch stays the same, its ends on the ends too", () => {
  expect(clipped(TRAPEZOID, 5, 15)).toBe(TRAPEZOID);
  expect(clipped(TRAPEZOID, 0, 20)).toBe(TRAPEZOID);
});

test("a polygon cut at both ends, corners in order", () => {
  const rounded = clipped(TRAPEZOID, 7, 12).map(({ along, offset }) => [
    along,
    Number(offset.toFixed(12)),
  ]);
  expect(rounded).toEqual([
    [7, 1],
    [12, 1],
    [12, 4.4],
    [7, 3.4],
  ]);
  expect(areaOf(clipped(TRAPEZOID, 7, 12))).toBeCloseTo((5 * (2.4 + 3.4)) / 2, 12);
});

test("a polygon cut at one end alone", () => {
  expect(pairs(clipped(TRAPEZOID, 0, 10))).toEqual([
    [5, 1],
    [10, 1],
    [10, 4],
    [5, 3],
  ]);
  expect(areaOf(clipped(TRAPEZOID, 10, 20))).toBeCloseTo((5 * (3 + 4)) / 2, 12);
});

test("a stretch of no length leaves the chord there; one beyond leaves nothing", () => {
  const chord = clipped(TRAPEZOID, 10, 10);
  expect(chord.map(({ along }) => along)).toEqual(chord.map(() => 10));
  expect(Math.min(...chord.map(({ offset }) => offset))).toBe(1);
  expect(Math.max(...chord.map(({ offset }) => offset))).toBe(4);
  expect(clipped(TRAPEZOID, 16, 20)).toEqual([]);
  expect(clipped(TRAPEZOID, 0, 4)).toEqual([]);
});

test("the hull of scattered points, with points inside, on its sides and twice", () => {
  const scattered = [
    p(2, 2),
    p(4, 0),
    p(0, 0),
    p(4, 4),
    p(2, 0),
    p(0, 4),
    p(4, 2),
    p(1, 3),
    p(0, 0),
    p(0, 2),
    p(4, 3),
    p(2, 4),
    p(4, 4),
  ];
  expect(pairs(hullOf(scattered))).toEqual([
    [0, 0],
    [4, 0],
    [4, 4],
    [0, 4],
  ]);
});

test("the hull leaves the points that it is given in their order", () => {
  const points = [p(3, 0), p(0, 0), p(1, 2)];
  hullOf(points);
  expect(pairs(points)).toEqual([
    [3, 0],
    [0, 0],
    [1, 2],
  ]);
});

const somewhere = fc.integer({ min: -50, max: 50 });
const points = fc.array(fc.record({ along: somewhere, offset: somewhere }), {
  minLength: 3,
  maxLength: 12,
});

test("a hull turns one way at each corner, and holds every point", () => {
  let cases = 0;
  fc.assert(
    fc.property(points, (cloud) => {
      const hull = hullOf(cloud);
      if (hull.length < 3) return;
      cases++;
      hull.forEach((a, i) => {
        const b = hull[(i + 1) % hull.length] ?? a;
        const c = hull[(i + 2) % hull.length] ?? a;
        expect(distanceToLine(c, a, b)).toBeGreaterThan(0);
        for (const point of cloud) {
          expect(distanceToLine(point, a, b)).toBeGreaterThanOrEqual(-1e-9);
        }
        expect(cloud).toContainEqual(a);
      });
    }),
  );
  expect(cases).toBeGreaterThan(100);
});

test("areas on squared paper, whichever way the corners run", () => {
  expect(areaOf(TRAPEZOID)).toBe(30);
  expect(areaOf([...TRAPEZOID].reverse())).toBe(30);
  expect(areaOf([p(-3, -1), p(1, -1), p(1, 2)])).toBe(6);
  expect(areaOf([])).toBe(0);
});

test("where two lines cross, by hand", () => {
  // y = x + 1 and y = 7 − x
  expect(crossingOf(p(1, 2), p(2, 3), p(6, 1), p(5, 2))).toEqual(p(3, 4));
  // y = 2x − 1 and x = 4; y = 5
  expect(crossingOf(p(1, 1), p(3, 5), p(4, 9), p(4, -3))).toEqual(p(4, 7));
  expect(crossingOf(p(-2, 5), p(6, 5), p(1, 1), p(2, 3))).toEqual(p(3, 5));
});

test("parallel lines cross nowhere", () => {
  expect(crossingOf(p(0, 0), p(1, 2), p(1, 0), p(2, 2))).toBeUndefined();
  expect(crossingOf(p(0, 0), p(5, 0), p(0, 1), p(5, 1))).toBeUndefined();
  expect(crossingOf(p(0, 0), p(0, 5), p(1, 0), p(1, 5))).toBeUndefined();
  expect(crossingOf(p(0, 0), p(5, 0), p(1, 0), p(2, 0))).toBeUndefined();
});

test("distance to a line: a 3-4-5 triangle, its sign by the side", () => {
  // the line 3x + 4y = 12 from (4, 0) to (0, 3)
  expect(distanceToLine(p(0, 0), p(4, 0), p(0, 3))).toBeCloseTo(2.4, 14);
  expect(distanceToLine(p(0, 0), p(0, 3), p(4, 0))).toBeCloseTo(-2.4, 14);
  expect(distanceToLine(p(4, 3), p(4, 0), p(0, 3))).toBeCloseTo(-2.4, 14);
  expect(distanceToLine(p(7, 2), p(1, 4), p(3, 4))).toBe(-2);
});

test("distance to a segment: beside it, beyond either end, and where it is a point", () => {
  const [a, b] = [p(1, 2), p(5, 5)];
  // its unit vector is (4, 3) / 5, the one square to it (−3, 4) / 5
  expect(distanceToSegment(p(3 - 3, 3.5 + 4), a, b)).toBeCloseTo(5, 14);
  expect(distanceToSegment(p(3 + 0.6, 3.5 - 0.8), a, b)).toBeCloseTo(1, 14);
  expect(distanceToSegment(p(1 - 3, 2 - 4), a, b)).toBe(5);
  expect(distanceToSegment(p(5 + 5, 5 + 12), a, b)).toBe(13);
  expect(distanceToSegment(p(3, 3.5), a, b)).toBe(0);
  expect(distanceToSegment(p(4, 6), a, a)).toBe(5);
});

test("gap to a polygon: outside, inside and on a side, whichever way the corners run", () => {
  for (const polygon of [TRAPEZOID, [...TRAPEZOID].reverse()]) {
    expect(gapToPolygon(p(8, -3), polygon)).toBe(4);
    expect(gapToPolygon(p(18, 9), polygon)).toBe(5);
    expect(gapToPolygon(p(2, -3), polygon)).toBe(5);
    expect(gapToPolygon(p(8, 1.5), polygon)).toBe(-0.5);
    expect(gapToPolygon(p(14.5, 3), polygon)).toBe(-0.5);
    expect(gapToPolygon(p(5.25, 2), polygon)).toBe(-0.25);
    expect(gapToPolygon(p(10, 1), polygon)).toBe(0);
    expect(1 / gapToPolygon(p(15, 2), polygon)).toBe(Infinity);
  }
});
