/** The cone through sections of points. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { fitCompound, fitRadius } from "../../src/measured/index.js";
import { between, forAll } from "../outside/counted.js";
import { across, random, read, turned } from "./boards.js";

const LENGTH = 480;
const PLACES = [0, 150, 300, 480];

/** Sections of a cone, as conics of the sag equation (ISO 10110-12, K = −m²), on a board that widens from 42 to 56 mm. */
function sections(nut: number, end: number, places: readonly number[] = PLACES) {
  const m = Number.isFinite(nut) ? (end - nut) / LENGTH : 0;
  return places.map((along) => {
    const radius = m === 0 ? nut : nut + m * along;
    return { along, points: across(radius, 21 + (7 * along) / LENGTH, 7, m) };
  });
}

// the least and the greatest compound radius in common use (common practice, no source), and their like, hollow
const CONES = [
  [254, 305],
  [241, 406],
  [184, 305],
  [406, 254],
  [-254, -305],
  [305, 305],
] as const;

test.each(CONES)("%d to %d: the cone's sections give it back to 1e-4 mm", (nut, end) => {
  for (const places of [PLACES, [0, 480], [60, 200], [100, 300, 100]]) {
    const { radius, rms } = fitCompound(sections(nut, end, places), LENGTH);
    expect(Math.abs(radius.nut - nut)).toBeLessThan(1e-4);
    expect(Math.abs(radius.end - end)).toBeLessThan(1e-4);
    expect(rms).toBeLessThan(1e-9);
  }
});

test("circles in the conics' place miss: by some thousandths of a mm, or by some hundredths", () => {
  // by hand: with h the conic's drop at the edge the circle through crest and edges has (x² + h²)/(2h) = R + m²h/2
  const misses = (nut: number, end: number) =>
    sections(nut, end).map(({ along, points }) => {
      const edges = [points[0], points[3], points[6]].flatMap((point) => point ?? []);
      const { radius } = fitRadius(edges, { uncertainty: 1 });
      return radius - (nut + ((end - nut) * along) / LENGTH);
    });
  const edge = (nut: number, end: number) =>
    sections(nut, end).map(({ points }) => -(points[0]?.height ?? 0));
  for (const [nut, end, about] of [
    [254, 305, 0.006],
    [241, 406, 0.08],
  ] as const) {
    const m = (end - nut) / LENGTH;
    misses(nut, end).forEach((miss, i) => {
      expect(miss).toBeCloseTo((m * m * (edge(nut, end)[i] as number)) / 2, 6);
      expect(miss / about).toBeGreaterThan(0.5);
      expect(miss / about).toBeLessThan(2);
    });
  }
});

test("level and tilt are free for each section, and the order is any", () => {
  const tilt = between(-0.05, 0.05);
  const level = between(-300, 300);
  forAll(fc.array(fc.tuple(tilt, level), { minLength: 4, maxLength: 4 }), (frames) => {
    const moved = sections(254, 305).map(({ along, points }, i) => {
      const [angle, up] = frames[i] as [number, number];
      return { along, points: turned(points, angle, 0, up).reverse() };
    });
    const { radius, rms } = fitCompound(moved.reverse(), LENGTH);
    expect(Math.abs(radius.nut - 254)).toBeLessThan(1e-4);
    expect(Math.abs(radius.end - 305)).toBeLessThan(1e-4);
    expect(rms).toBeLessThan(1e-6);
  });
});

test("a flat board is Infinity at both ends, and certain where all points agree", () => {
  expect(fitCompound(sections(Infinity, Infinity), LENGTH)).toEqual({
    radius: { nut: Infinity, end: Infinity },
    rms: 0,
    uncertainty: { nut: 0, end: 0 },
  });
});

test("uncertainties are what each reading's own passes on (law of propagation, JCGM 100:2008 5.1.2)", () => {
  const board = sections(184, 406);
  const shift = 1e-4;
  const squares = { nut: 0, end: 0 };
  const { uncertainty } = fitCompound(board, LENGTH, { uncertainty: 0.01 });
  board.forEach(({ points }, i) => {
    points.forEach((_, j) => {
      const raised = board.map((section, k) => ({
        along: section.along,
        points: section.points.map(({ offset, height }, l) => {
          return { offset, height: height + (k === i && l === j ? shift : 0) };
        }),
      }));
      const { radius } = fitCompound(raised, LENGTH);
      squares.nut += (((radius.nut - 184) / shift) * 0.01) ** 2;
      squares.end += (((radius.end - 406) / shift) * 0.01) ** 2;
    });
  });
  // slopes across the section make a height's share of a distance up to 1 % less
  expect(Math.abs(uncertainty.nut / Math.sqrt(squares.nut) - 1)).toBeLessThan(0.02);
  expect(Math.abs(uncertainty.end / Math.sqrt(squares.end) - 1)).toBeLessThan(0.02);
});

describe("read with errors", () => {
  const limit = 0.02;

  test("two sections of one radius: the distances from two circles", () => {
    // of the cone's conics the circles are off by less than a micrometre
    const next = random();
    const board = sections(254, 254, [0, 480]).map(({ along, points }) => {
      return { along, points: read(points, limit, next) };
    });
    const [first = 0, second = 0] = board.map(({ points }) => fitRadius(points).rms);
    const { rms } = fitCompound(board, LENGTH);
    expect(rms / Math.sqrt((first ** 2 + second ** 2) / 2)).toBeCloseTo(1, 3);
  });

  const stated = { uncertainty: limit / Math.sqrt(3) };

  test("the radii scatter as their uncertainties say, and without bias", () => {
    const next = random();
    const boards = Array.from({ length: 400 }, () => {
      const measured = sections(254, 305).map(({ along, points }) => {
        const frame = turned(points, next(-0.03, 0.03), 0, 5);
        return { along, points: read(frame, limit, next) };
      });
      return [fitCompound(measured, LENGTH, stated), fitCompound(measured, LENGTH)] as const;
    });
    for (const [end, truth] of [
      ["nut", 254],
      ["end", 305],
    ] as const) {
      const errors = boards.map(
        ([{ radius, uncertainty }]) => (radius[end] - truth) / uncertainty[end],
      );
      const mean = errors.reduce((a, b) => a + b) / errors.length;
      const square = errors.reduce((sum, error) => sum + error * error, 0) / errors.length;
      // 400 boards: a mean of 0 ± 0.05, a mean square of 1 ± 0.07; five times that
      expect(Math.abs(mean)).toBeLessThan(0.25);
      expect(Math.abs(square - 1)).toBeLessThan(0.35);
      // s² from N − 2 − 2 · sections = 18 is right on average, within five times its own scatter
      const shares = boards.map(
        ([known, found]) => (found.uncertainty[end] / known.uncertainty[end]) ** 2,
      );
      expect(Math.abs(shares.reduce((a, b) => a + b) / 400 - 1)).toBeLessThan(0.1);
    }
  });

  test("a flat board is never refused, and seldom called anything but flat", () => {
    const next = random();
    const curvatures = Array.from({ length: 60 }, () => {
      const measured = sections(Infinity, Infinity, [20, 240, 460]).map(({ along, points }) => {
        return { along, points: read(points, limit, next) };
      });
      return Object.values(fitCompound(measured, LENGTH, stated).radius).map(
        (radius) => 1 / radius,
      );
    });
    const far = curvatures.flat().filter((curvature) => !(Math.abs(curvature) < 1 / 2000));
    expect(far.length).toBeLessThan(6);
  });
});
