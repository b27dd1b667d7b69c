/** Convex polygons: figures that can be counted on squared paper, and what holds of any of them. */
import fc from "fast-check";
import { expect, test } from "vitest";
import {
  areaOf,
  clipped,
  distanceToLine,
  distanceToSegment,
  findCrossing,
  findHull,
  gapBetween,
  gapToPolygon,
  isConvex,
  type Point,
} from "../../src/geometry/polygon.js";

const p = (along: number, offset: number): Point => ({ along, offset });
/** Points from “along offset, along offset, …”, and back. */
const points = (text: string) =>
  text.split(", ").map((pair) => p(...(pair.split(" ").map(Number) as [number, number])));
const told = (polygon: readonly Point[]) =>
  polygon.map(({ along, offset }) => `${along} ${Number(offset.toFixed(12))}`).join(", ");

/** A trapezoid of area 30: 10 long, 2 and 4 wide; not about the centre line. */
const TRAPEZOID = points("5 1, 15 1, 15 5, 5 3");

test("a polygon cut to a stretch: within it the same, at one end, at both, to a chord, to nothing", () => {
  expect(clipped(TRAPEZOID, 5, 15)).toBe(TRAPEZOID);
  expect(told(clipped(TRAPEZOID, 7, 12))).toBe("7 1, 12 1, 12 4.4, 7 3.4");
  expect(told(clipped(TRAPEZOID, 0, 10))).toBe("5 1, 10 1, 10 4, 5 3");
  expect(areaOf(clipped(TRAPEZOID, 10, 20))).toBeCloseTo((5 * (3 + 4)) / 2, 12);
  const chord = clipped(TRAPEZOID, 10, 10).map(({ offset }) => offset);
  expect([Math.min(...chord), Math.max(...chord)]).toEqual([1, 4]);
  expect([...clipped(TRAPEZOID, 16, 20), ...clipped(TRAPEZOID, 0, 4)]).toEqual([]);
});

test("the hull of scattered points, with points inside, on its sides and twice, left in their order", () => {
  const scattered = points("2 2, 4 0, 0 0, 4 4, 2 0, 0 4, 4 2, 1 3, 0 0, 0 2, 4 3, 2 4, 4 4");
  const before = told(scattered);
  expect(told(findHull(scattered))).toBe("0 0, 4 0, 4 4, 0 4");
  expect(told(scattered)).toBe(before);
});

const somewhere = fc.integer({ min: -50, max: 50 });
const cloud = fc.array(fc.record({ along: somewhere, offset: somewhere }), {
  minLength: 3,
  maxLength: 12,
});

test("a hull turns one way at each corner, and holds every point", () => {
  let cases = 0;
  fc.assert(
    fc.property(cloud, (scattered) => {
      const hull = findHull(scattered);
      if (hull.length < 3) return;
      cases++;
      expect(isConvex(hull)).toBe(true);
      hull.forEach((a, i) => {
        const b = hull[(i + 1) % hull.length] ?? a;
        for (const point of scattered) {
          expect(distanceToLine(point, a, b)).toBeGreaterThanOrEqual(-1e-9);
        }
        expect(scattered).toContainEqual(a);
      });
    }),
  );
  expect(cases).toBeGreaterThan(0);
});

test("which corners go around a convex outline, in either direction", () => {
  const is = (text: string) => [isConvex(points(text)), isConvex(points(text).reverse())];
  expect(is("5 1, 15 1, 15 5, 5 3")).toEqual([true, true]);
  // a corner on a side, a dent, sides that cross, a star that goes around twice, no area
  expect(is("0 0, 4 0, 4 2, 4 4, 0 4")).toEqual([true, true]);
  expect(is("0 0, 4 0, 1 1, 0 4")).toEqual([false, false]);
  expect(is("0 0, 4 4, 4 0, 0 4")).toEqual([false, false]);
  expect(is("0 10, 6 -8, -10 3, 10 3, -6 -8")).toEqual([false, false]);
  expect(is("0 0, 2 0, 4 0")).toEqual([false, false]);
});

test("areas, whichever way the corners run; where two lines cross, and that parallel ones do not", () => {
  expect([areaOf(TRAPEZOID), areaOf([...TRAPEZOID].reverse())]).toEqual([30, 30]);
  expect(areaOf(points("-3 -1, 1 -1, 1 2"))).toBe(6);
  const cross = (text: string) => findCrossing(...(points(text) as [Point, Point, Point, Point]));
  // y = x + 1 and y = 7 − x; y = 2x − 1 and x = 4
  expect(cross("1 2, 2 3, 6 1, 5 2")).toEqual(p(3, 4));
  expect(cross("1 1, 3 5, 4 9, 4 -3")).toEqual(p(4, 7));
  expect(cross("0 0, 1 2, 1 0, 2 2")).toBeUndefined();
  expect(cross("0 0, 5 0, 1 0, 2 0")).toBeUndefined();
});

test("distances: to a line, its sign by the side; to a segment, beside it and beyond either end", () => {
  // the line 3x + 4y = 12 from (4, 0) to (0, 3)
  expect(distanceToLine(p(0, 0), p(4, 0), p(0, 3))).toBeCloseTo(2.4, 14);
  expect(distanceToLine(p(0, 0), p(0, 3), p(4, 0))).toBeCloseTo(-2.4, 14);
  const [a, b] = [p(1, 2), p(5, 5)];
  // its unit vector is (4, 3) / 5, the one square to it (−3, 4) / 5
  const from = (point: Point) => distanceToSegment(point, a, b);
  expect(from(p(3 + 0.6, 3.5 - 0.8))).toBeCloseTo(1, 14);
  expect([from(p(1 - 3, 2 - 4)), from(p(5 + 5, 5 + 12)), from(p(3, 3.5))]).toEqual([5, 13, 0]);
  expect(distanceToSegment(p(4, 6), a, a)).toBe(5);
});

test("gaps: outside, inside and on a side, whichever way the corners run", () => {
  for (const polygon of [TRAPEZOID, [...TRAPEZOID].reverse()]) {
    const gaps = points("8 -3, 18 9, 2 -3, 8 1.5, 14.5 3, 10 1").map((q) =>
      gapToPolygon(q, polygon),
    );
    expect(gaps).toEqual([4, 5, 5, -0.5, -0.5, 0]);
  }
  const square = points("0 0, 4 0, 4 4, 0 4");
  const gap = (text: string) => gapBetween(square, points(text));
  // beside it, corner to corner by 3 and 4, corner to side, side on side, over it by 1, within it
  expect([gap("6 1, 9 1, 9 3, 6 3"), gap("7 8, 9 8, 9 9, 7 9")]).toEqual([2, 5]);
  expect(gap("5 2, 8 -1, 8 5")).toBe(1);
  expect([gap("4 1, 6 1, 6 3"), gap("3 1, 9 1, 9 3, 3 3"), gap("1 1, 3 1, 3 3, 1 3")]).toEqual([
    0, -1, -3,
  ]);
});
