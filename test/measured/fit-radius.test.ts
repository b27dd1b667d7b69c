/** The circle through points across a board. */
import quantile from "@stdlib/stats-base-dists-t-quantile";
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fitRadius } from "../../src/measured/index.js";
import { between, forAll } from "../outside/counted.js";
import { expectPrinted } from "../outside/printed.js";
import { across, type Point, random, read, turned } from "./boards.js";

function pointsOf(...places: (readonly [number, number])[]): Point[] {
  return places.map(([offset, height]) => ({ offset, height }));
}

test("six points of a published example, not the algebraic answer", () => {
  // W. Gander, G. H. Golub, R. Strebel, BIT 34 (1994) (the paper from memory; figures recomputed by two methods)
  const points = pointsOf([1, 7], [2, 6], [5, 8], [7, 7], [9, 5], [3, 7]);
  const { centre, radius, rms } = fitRadius(points);
  expectPrinted(centre.offset, "4.7398");
  expectPrinted(centre.height, "2.9835");
  expectPrinted(radius, "4.7142");
  // the root mean square is that of the distances from this very circle
  const squares = points.map(
    ({ offset, height }) =>
      (Math.hypot(offset - centre.offset, height - centre.height) - radius) ** 2,
  );
  expect(rms).toBeCloseTo(Math.sqrt(squares.reduce((a, b) => a + b) / 6), 10);
});

const radius = between(60, 3000);
const tilt = between(-1.4, 1.4);
const move = between(-500, 500);

test("points of a circle give it back, crowned and hollow, in any turned frame", () => {
  forAll(fc.tuple(radius, fc.constantFrom(1, -1), tilt, move, move), ([R, sign, a, x, y]) => {
    const fit = fitRadius(turned(across(sign * R, 22, 7), a, x, y));
    expect(Math.abs(fit.radius / (sign * R) - 1)).toBeLessThan(1e-7);
    expect(Math.abs(fit.centre.offset - (x + sign * R * Math.sin(a)))).toBeLessThan(1e-6 * R);
    expect(Math.abs(fit.centre.height - (y - sign * R * Math.cos(a)))).toBeLessThan(1e-6 * R);
    expect(fit.rms).toBeLessThan(1e-9);
  });
});

test("also more than half a circle, and in other units", () => {
  forAll(fc.tuple(between(0.5, 5.5), between(-1, 4)), ([arc, power]) => {
    const points = Array.from({ length: 12 }, (_, i) => {
      const angle = Math.PI / 2 + arc * (i / 11 - 0.5);
      return {
        offset: 3 * Math.cos(angle) * 10 ** power,
        height: 3 * Math.sin(angle) * 10 ** power,
      };
    });
    expect(Math.abs(fitRadius(points).radius / (3 * 10 ** power) - 1)).toBeLessThan(1e-7);
  });
});

test("whatever the points, hollow is where the centre lies above them", () => {
  const place = fc.tuple(between(0, 0.9), between(0, 9));
  forAll(fc.array(place, { minLength: 5, maxLength: 9 }), (places) => {
    const points = pointsOf(...places.map(([x, y], i) => [i + x, y] as const));
    const { radius, centre } = fitRadius(points);
    const mean = points.reduce((sum, { height }) => sum + height, 0) / points.length;
    expect(radius < 0).toBe(centre.height > mean);
  });
});

describe("a flat board", () => {
  test("is Infinity, and nothing is uncertain where all points agree", () => {
    const { centre, ...fit } = fitRadius(pointsOf([-20, 3.2], [-7, 3.2], [1, 3.2], [20, 3.2]));
    expect(fit).toEqual({
      radius: Infinity,
      uncertainty: 0,
      curvature: { value: 0, uncertainty: 0 },
      rms: 0,
      range: { min: Infinity, max: Infinity },
    });
    // straight below the points, infinitely far
    expect(centre).toEqual({ offset: -1.5, height: -Infinity });
  });

  test("read with errors has flat in its range, and the nearest radius of the side that was found", () => {
    for (const height of [0.01, -0.01]) {
      const points = pointsOf([-20, 0], [-10, height], [0, height], [10, height], [20, 0]);
      const { curvature, range } = fitRadius(points, { uncertainty: 0.02 });
      expect(Math.sign(curvature.value)).toBe(Math.sign(height));
      expect(range.max).toBe(Infinity);
      const tightest = Math.abs(curvature.value) + 2 * curvature.uncertainty;
      expect(range.min).toBeCloseTo(Math.sign(height) / tightest, 6);
    }
  });
});

test("five evenly spaced readings: the curvature's uncertainty is that of orthogonal polynomials", () => {
  // table of orthogonal polynomials for n = 5 (memory): second 2 −1 −2 −1 2, its squares 14; κ = 2 · Σ / 14 / spacing²
  const points = across(5000, 20, 5);
  const { curvature, uncertainty } = fitRadius(points, { uncertainty: 0.01 });
  expect(curvature.uncertainty * 100 * Math.sqrt(14)).toBeCloseTo(2 * 0.01, 5);
  // and u(R) = R² · u(κ), to first order
  expect(uncertainty / (5000 ** 2 * curvature.uncertainty)).toBeCloseTo(1, 6);
});

describe("the range", () => {
  const points = read(across(400, 22, 6), 0.02, random());
  const ends = ({ range }: ReturnType<typeof fitRadius>) => [1 / range.max, 1 / range.min];

  test.each([1, 2, 3])(
    "with an uncertainty: %d of them to either side in curvature",
    (coverage) => {
      const fit = fitRadius(points, { uncertainty: 0.012, coverage });
      const { value, uncertainty } = fit.curvature;
      const expected = [value - coverage * uncertainty, value + coverage * uncertainty];
      expect(ends(fit)[0]).toBeCloseTo(expected[0] as number, 12);
      expect(ends(fit)[1]).toBeCloseTo(expected[1] as number, 12);
    },
  );

  // two-sided probabilities of 1, 2, 3 standard deviations: 68.27, 95.45, 99.73 % (JCGM 100:2008 table G.1, memory)
  test.each([
    [1, 0.6827],
    [2, 0.9545],
    [3, 0.9973],
  ])("without: Student's t for n − 3 at the probability of k = %d", (coverage, probability) => {
    const fit = fitRadius(points, { coverage });
    const { value, uncertainty } = fit.curvature;
    const t = quantile(0.5 + probability / 2, 3);
    expect((1 / fit.range.min - value) / uncertainty / t).toBeCloseTo(1, 2);
    // s from n − 3 where the root mean square is from n
    const stated = fitRadius(points, { uncertainty: fit.rms * Math.sqrt(6 / 3) });
    expect(uncertainty / stated.curvature.uncertainty).toBeCloseTo(1, 12);
  });

  test("of a hollow board is the crowned one's, turned over", () => {
    const over = points.map(({ offset, height }) => ({ offset, height: -height }));
    const { min, max } = fitRadius(points).range;
    expect(fitRadius(over).range.min).toBeCloseTo(-max, 6);
    expect(fitRadius(over).range.max).toBeCloseTo(-min, 6);
  });

  const STATED = { uncertainty: 0.02 / Math.sqrt(3) };
  test.each([
    [400, 5, STATED],
    [400, 9, STATED],
    [400, 5, {}],
    [400, 9, {}],
    [100, 9, {}],
    [-600, 5, {}],
    [Infinity, 7, {}],
  ])("R %d, %d points read to ± 0.02: a thousand boards, %o", (R, count, options) => {
    const next = random();
    let [below, above] = [0, 0];
    for (let board = 0; board < 1000; board++) {
      const frame = turned(across(R, 22, count), next(-0.05, 0.05), 0, 10);
      const { curvature, range } = fitRadius(read(frame, 0.02, next), options);
      const holds = range.min <= R && R <= range.max;
      if (!holds && curvature.value < 1 / R) below++;
      if (!holds && curvature.value > 1 / R) above++;
    }
    const missed = below + above;
    expect(missed).toBeGreaterThanOrEqual(10);
    expect(missed).toBeLessThanOrEqual(100);
    // as often on either side, within four standard deviations of a fair coin
    expect(Math.abs(below - above)).toBeLessThan(4 * Math.sqrt(missed));
  });
});

test("three points and an uncertainty: the circle through them", () => {
  // chord 16, height 6: 8 1/3 (Machinery's Handbook, 31st ed., p. 79)
  const { radius, rms } = fitRadius(pointsOf([-8, 0], [0, 6], [8, 0]), { uncertainty: 0.1 });
  expect(radius).toBeCloseTo(25 / 3, 9);
  expect(rms).toBeLessThan(1e-9);
});
