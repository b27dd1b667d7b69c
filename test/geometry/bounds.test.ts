/** The bounds over a hole's ground, against dense sampling by the textbook's formulas: surface.ts. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { discFootprint, type Footprint, outlineFootprint } from "../../src/geometry/footprint.js";
import { greatestOnPiece } from "../../src/geometry/greatest-removal.js";
import { underPolygon } from "../../src/geometry/least-removal.js";
import type { Point } from "../../src/geometry/polygon.js";
import { greatestRemoval, leastRemoval, removalOn } from "../../src/geometry/removal.js";
import { type Piece, type Surface, slopesAt, splitSurface } from "../../src/geometry/surface.js";
import { constantTrack, trackThrough } from "../../src/geometry/track.js";
import { type Block, blockPoints, discPoints, removal } from "./surface.js";

const p = (along: number, offset: number): Point => ({ along, offset });
const pieceOf = (surface: Surface, from: number, to: number) =>
  splitSurface(surface, from, to)[0] as Piece;

/** How much too careful the bounds are, mm; they enclose every sample. */
function excessOf(surface: Surface, footprint: Footprint, points: Iterable<Point>): number {
  const taken = [...points].map(({ along, offset }) => removal(surface, along, offset));
  expect(taken.length).toBeGreaterThan(500);
  const above = greatestRemoval(surface, footprint) - Math.max(...taken);
  const below = Math.min(...taken) - leastRemoval(surface, footprint);
  expect(Math.min(above, below)).toBeGreaterThanOrEqual(-1e-10);
  return Math.max(above, below);
}

const SANDINGS = {
  level: constantTrack(0.15),
  "fall-away": trackThrough([0, 200, 400], [0.1, 0.1, 1.7]),
  valley: trackThrough([0, 200, 400], [2.1, 0.1, 1.9]),
  ridge: trackThrough([0, 201.5, 400], [0.1, 1.6, 0.4]),
  steep: trackThrough([0, 400], [7.6, -3.6]),
};
const RADII = {
  one: constantTrack(254),
  flat: constantTrack(Infinity),
  opening: trackThrough([0, 400], [184, 305]),
  steep: trackThrough([0, 198, 400], [120, 200, 320]),
  both: trackThrough([0, 199, 400], [260, 200, 300]),
};
const BLOCKS: Block[] = [
  { from: 190, to: 205, low: [-20, -21], high: [20, 21] },
  { from: 196, to: 204, low: [2, 3], high: [9, 8] },
  { from: 180, to: 201, low: [0, 0], high: [6, 6.5] },
  { from: 150, to: 250, low: [1, -2], high: [11, 13] },
];

describe.each(Object.keys(SANDINGS) as (keyof typeof SANDINGS)[])("sanding %s", (sanding) => {
  test.each(Object.keys(RADII) as (keyof typeof RADII)[])("radius %s", (radius) => {
    const surface = { sanding: SANDINGS[sanding], radius: RADII[radius] };
    const bends = [...surface.sanding.at, ...surface.radius.at];
    for (const s of [100, 196.9, 200, 202]) {
      const excesses = [0, 0.4, 2, -3.25, 7, 13, -24].map((x) => {
        const dot = discFootprint(p(s, x), 3.25);
        return excessOf(surface, dot, discPoints(p(s, Math.abs(x)), 3.25, bends));
      });
      // nearly always within a hundredth of a micrometre
      expect(Math.max(...excesses)).toBeLessThan(1e-4);
      expect(excesses.filter((excess) => excess > 1e-5).length).toBeLessThanOrEqual(1);
      const exact = removal(surface, s, 12);
      expect(removalOn(surface, s, -12)).toBeCloseTo(exact, 9);
      expect(greatestRemoval(surface, discFootprint(p(s, -12), 0))).toBeCloseTo(exact, 9);
      expect(leastRemoval(surface, discFootprint(p(s, 12), 0))).toBeCloseTo(exact, 9);
    }
    for (const block of BLOCKS) {
      const { from, to, low, high } = block;
      const corners = [p(from, low[0]), p(to, low[1]), p(to, high[1]), p(from, high[0])];
      for (const side of [1, -1]) {
        const outline = corners.map((corner) => p(corner.along, side * corner.offset));
        const excess = excessOf(surface, outlineFootprint(outline, 0), blockPoints(block, bends));
        expect(excess).toBeLessThan(1e-3);
      }
    }
  });
});

describe("a piece of the surface", () => {
  const surface = {
    sanding: trackThrough([0, 100, 300, 500], [0.1, 0.2, 1.2, 1.3]),
    radius: trackThrough([0, 200, 300, 500], [180, 220, 300, 320]),
  };

  test("pieces meet at every knot between; one that begins or ends there has both sides of it", () => {
    const told = (from: number, to: number) =>
      splitSurface(surface, from, to).map(
        (piece) => `${piece.from}-${piece.to} ${piece.c}${piece.r}`,
      );
    expect(told(50, 250)).toEqual(["50-100 00", "100-200 10", "200-250 11"]);
    expect(told(200, 250)).toEqual(["200-200 10", "200-250 11"]);
    expect(told(150, 200)).toEqual(["150-200 10", "200-200 11"]);
    expect(told(100, 100)).toEqual(["100-100 00", "100-100 10"]);
  });

  test("slopes are those of the removal, by differences", () => {
    const place = fc.double({ min: 101, max: 199, noNaN: true });
    const aside = fc.double({ min: -30, max: 30, noNaN: true });
    fc.assert(
      fc.property(place, aside, (s, x) => {
        const slopes = slopesAt(pieceOf(surface, s, s), s, x);
        const by = (ds: number, dx: number) => removal(surface, s + ds, x + dx) / 2e-3;
        expect(slopes?.along).toBeCloseTo(by(1e-3, 0) - by(-1e-3, 0), 7);
        expect(slopes?.offset).toBeCloseTo(by(0, 1e-3) - by(0, -1e-3), 7);
      }),
    );
    const flat = { ...surface, radius: constantTrack(Infinity) };
    expect(slopesAt(pieceOf(flat, 150, 160), 155, 9)).toEqual({ along: 0.005, offset: 0 });
  });

  test("no tangent plane where the surface ends, stands upright, or has no radius", () => {
    const narrow = { sanding: constantTrack(0), radius: trackThrough([0, 100], [10, 60]) };
    const piece = pieceOf(narrow, 0, 50);
    // the apex lies at −20; beyond it the formula's radius is negative
    const planes = [p(0, 9), p(0, 13), p(-40, 3), p(-20, 0)];
    const are = planes.map(({ along, offset }) => slopesAt(piece, along, offset) !== undefined);
    expect(are).toEqual([true, false, false, false]);
    // a slope of 2 and no radius at −5: the root is 3 √3 there, and no surface
    const steep = { sanding: constantTrack(0), radius: trackThrough([0, 100], [10, 210]) };
    expect(slopesAt(pieceOf(steep, 0, 50), -5, 3)).toBeUndefined();
    const round = { sanding: constantTrack(0), radius: constantTrack(10) };
    expect(slopesAt(pieceOf(round, 0, 5), 3, 10)).toBeUndefined();
  });

  test("beyond what the surface reaches the greatest removal is without end", () => {
    const narrow = { sanding: constantTrack(0), radius: trackThrough([0, 100], [10, 20]) };
    const wide = discFootprint(p(50, 14), 4);
    expect(greatestRemoval(narrow, wide)).toBe(Infinity);
    expect(leastRemoval(narrow, wide)).toBeLessThanOrEqual(removalOn(narrow, 50, 10));
    // a point where it stands upright
    const falling = { sanding: trackThrough([0, 100], [1, 0]), radius: constantTrack(10) };
    expect(leastRemoval(falling, discFootprint(p(50, 10), 0))).toBe(10.5);
    expect(greatestRemoval(falling, discFootprint(p(50, 10), 0))).toBe(10.5);
  });

  test("where the surface stands upright at the rim its end is the bound: 10 of drop and the sanding", () => {
    const round = { sanding: trackThrough([0, 100], [1, 0.999]), radius: constantTrack(10) };
    const greatest = greatestRemoval(round, discFootprint(p(50, 6), 4));
    expect(greatest).toBeGreaterThanOrEqual(10.9995);
    expect(greatest).toBeLessThanOrEqual(11);
  });

  test("a piece on which no part of an outline lies has the bound of the whole", () => {
    const falling = { sanding: trackThrough([0, 100], [1, 0]), radius: constantTrack(100) };
    const outline = outlineFootprint([p(10, -5), p(20, -5), p(20, 8), p(10, 8)], 0);
    const greatest = greatestOnPiece(pieceOf(falling, 30, 40), outline);
    expect(greatest).toBeCloseTo(0.7 + 100 - Math.sqrt(100 ** 2 - 8 ** 2), 9);
  });
});

test("of a polygon: the offset nearest the centre line, the lowest corner", () => {
  // from (−4, 6) across at its begin to (2, 9) at 20; a tip at 30
  const slanted = [p(10, -4), p(20, 2), p(30, 7), p(20, 9), p(10, 6)];
  const ground = underPolygon(slanted);
  expect([ground.from, ground.to]).toEqual([10, 30]);
  expect([10, 15, 20, 25, 30, 31].map(ground.innerAt)).toEqual([0, 0, 2, 4.5, 7, 0]);
  const mirrored = underPolygon(slanted.map(({ along, offset }) => p(along, -offset)));
  expect([10, 15, 20, 25, 30].map(mirrored.innerAt)).toEqual([0, 0, -2, -4.5, -7]);
  // 20 along for 11 across
  expect([ground.lowest(-0.54, 1), ground.lowest(-0.56, 1)]).toEqual([p(10, -4), p(30, 7)]);
});
