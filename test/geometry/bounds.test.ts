/** The bounds over a hole's ground, against dense sampling by the textbook's formulas: surface.ts. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { discFootprint, type Footprint, outlineFootprint } from "../../src/geometry/footprint.js";
import { greatestOnPiece } from "../../src/geometry/greatest-removal.js";
import { type Ground, underDisc, underPolygon } from "../../src/geometry/least-removal.js";
import type { Point } from "../../src/geometry/polygon.js";
import { greatestRemoval, leastRemoval, removalOn } from "../../src/geometry/removal.js";
import type { Surface } from "../../src/geometry/surface.js";
import { piecesOf, slopesAt } from "../../src/geometry/surface.js";
import { constantTrack, trackThrough } from "../../src/geometry/track.js";
import { type Block, blockPoints, cornersOf, disc, extremes, removal } from "./surface.js";

/** mm: what sampling may miss, and what a bound may be too careful by: nearly always, and at most. */
const NEAR = 5e-5;
const MOST = 1e-4;
const ROUNDING = 1e-10;
const BLOCK_MOST = 1e-3;
const FAR_MOST = 1e-3;

/** How much too careful the bounds are, mm; they enclose every sample. */
function excessOf(
  surface: Surface,
  footprint: Footprint,
  points: Iterable<readonly [number, number]>,
): number {
  const { greatest, least, count } = extremes(surface, points);
  expect(count).toBeGreaterThan(500);
  const above = greatestRemoval(surface, footprint) - greatest;
  const below = least - leastRemoval(surface, footprint);
  expect(above).toBeGreaterThanOrEqual(-ROUNDING);
  expect(below).toBeGreaterThanOrEqual(-ROUNDING);
  return Math.max(above, below);
}

const p = (along: number, offset: number): Point => ({ along, offset });
const bendsOf = ({ sanding, radius }: Surface) => [...sanding.at, ...radius.at];

const SANDINGS = {
  level: constantTrack(0.15),
  falling: trackThrough([0, 400], [0.9, 0.1]),
  "fall-away": trackThrough([0, 200, 400], [0.1, 0.1, 1.7]),
  valley: trackThrough([0, 200, 400], [2.1, 0.1, 1.9]),
  ridge: trackThrough([0, 201.5, 400], [0.1, 1.6, 0.4]),
};
const RADII = {
  one: constantTrack(254),
  flat: constantTrack(Infinity),
  opening: trackThrough([0, 400], [184, 305]),
  closing: trackThrough([0, 400], [305, 220]),
  steep: trackThrough([0, 198, 400], [120, 200, 320]),
  both: trackThrough([0, 199, 400], [260, 200, 300]),
};
const SURFACES = Object.entries(SANDINGS).flatMap(([c, sanding]) =>
  Object.entries(RADII).map(([r, radius]) => ({ name: `sanding ${c}, radius ${r}`, sanding, radius })),
);

const OFFSETS = [0, 0.4, 2, -3.25, 7, 13, -24];
const PLACES = [100, 196.9, 200, 202];

describe.each(SURFACES)("$name", (surface) => {
  test("dots of 6.5 mm, over the bends and beside them", () => {
    const excesses = OFFSETS.flatMap((x) =>
      PLACES.map((s) => {
        const dot = discFootprint({ along: s, offset: x }, 3.25);
        return excessOf(surface, dot, disc(s, Math.abs(x), 3.25, bendsOf(surface)));
      }),
    );
    expect(Math.max(...excesses)).toBeLessThan(MOST);
    expect(excesses.filter((excess) => excess > NEAR).length).toBeLessThanOrEqual(1);
  });

  const blocks: Block[] = [
    { from: 190, to: 205, low: [-20, -21], high: [20, 21] },
    { from: 196, to: 204, low: [2, 3], high: [9, 8] },
    { from: 100, to: 130, low: [-4, -1], high: [18, 16] },
    { from: 180, to: 201, low: [0, 0], high: [6, 6.5] },
    { from: 150, to: 152, low: [1, 3], high: [11, 10] },
    { from: 150, to: 250, low: [1, -2], high: [11, 13] },
  ];

  test.each(blocks)("a block from $from to $to", (block) => {
    const excesses = [1, -1].map((side) => {
      const outline = cornersOf(block).map((p) => ({ ...p, offset: side * p.offset }));
      const points = blockPoints(block, bendsOf(surface));
      return excessOf(surface, outlineFootprint(outline, 0), points);
    });
    expect(Math.max(...excesses)).toBeLessThan(BLOCK_MOST);
  });

  test("a point, its removal itself", () => {
    for (const [s, x] of [
      [100, 12],
      [200, -3],
      [350, 0],
    ] as const) {
      const exact = removal(surface, s, Math.abs(x));
      const point = discFootprint({ along: s, offset: x }, 0);
      expect(removalOn(surface, s, x)).toBeCloseTo(exact, 9);
      expect(greatestRemoval(surface, point)).toBeCloseTo(exact, 9);
      expect(leastRemoval(surface, point)).toBeCloseTo(exact, 9);
    }
  });
});

describe("a piece of the surface", () => {
  const surface = {
    sanding: trackThrough([0, 100, 300, 500], [0.1, 0.2, 1.2, 1.3]),
    radius: trackThrough([0, 200, 300, 500], [180, 220, 300, 320]),
  };

  test("pieces meet at every knot between, in order", () => {
    const pieces = piecesOf(surface, 50, 400);
    expect(pieces.map(({ from, to }) => [from, to])).toEqual([
      [50, 100],
      [100, 200],
      [200, 300],
      [300, 300],
      [300, 400],
    ]);
    const last = pieces.filter(({ from, to }) => from < to);
    expect(last.map(({ c, r }) => [c, r])).toEqual([
      [0, 0],
      [1, 0],
      [1, 1],
      [2, 2],
    ]);
  });

  test("a stretch that begins or ends at a knot has the pieces on both sides of it", () => {
    const sides = (from: number, to: number) =>
      piecesOf(surface, from, to).map(({ c, r }) => [c, r]);
    expect(sides(200, 250)).toContainEqual([1, 0]);
    expect(sides(200, 250)).toContainEqual([1, 1]);
    expect(sides(150, 200)).toContainEqual([1, 0]);
    expect(sides(150, 200)).toContainEqual([1, 1]);
    expect(sides(100, 100)).toContainEqual([0, 0]);
    expect(sides(100, 100)).toContainEqual([1, 0]);
  });

  test("slopes are those of the removal, by differences", () => {
    let cases = 0;
    const place = fc.double({ min: 20, max: 480, noNaN: true });
    const aside = fc.double({ min: -30, max: 30, noNaN: true });
    fc.assert(
      fc.property(place, aside, (s, x) => {
        const step = 1e-3;
        if ([100, 200, 300].some((knot) => Math.abs(s - knot) < step)) return;
        cases++;
        const [piece] = piecesOf(surface, s, s);
        const slopes = piece && slopesAt(piece, s, x);
        const by = (ds: number, dx: number) => removal(surface, s + ds, x + dx);
        expect(slopes?.along).toBeCloseTo((by(step, 0) - by(-step, 0)) / (2 * step), 7);
        expect(slopes?.offset).toBeCloseTo((by(0, step) - by(0, -step)) / (2 * step), 7);
      }),
    );
    expect(cases).toBeGreaterThan(200);
  });

  test("no tangent plane where the surface ends, stands upright, or has no radius", () => {
    const narrow = { sanding: constantTrack(0), radius: trackThrough([0, 100], [10, 60]) };
    const [piece] = piecesOf(narrow, 0, 50);
    if (piece === undefined) throw new Error("no piece");
    expect(slopesAt(piece, 0, 9)).toBeDefined();
    expect(slopesAt(piece, 0, 13)).toBeUndefined();
    // the apex lies at −20; beyond it the formula's radius is negative
    expect(slopesAt(piece, -40, 3)).toBeUndefined();
    expect(slopesAt(piece, -20, 0)).toBeUndefined();
    // a cone that opens by 2 in 1 has no surface at its apex
    const steep = { sanding: constantTrack(0), radius: trackThrough([0, 100], [10, 210]) };
    const [open] = piecesOf(steep, 0, 50);
    expect(open && slopesAt(open, -5, 3)).toBeUndefined();
    expect(open && slopesAt(open, 0, 3)).toBeDefined();
    const [round] = piecesOf({ sanding: constantTrack(0), radius: constantTrack(10) }, 0, 5);
    expect(round && slopesAt(round, 3, 10)).toBeUndefined();
  });

  test("a flat surface slopes as its sanding does", () => {
    const [piece] = piecesOf({ ...surface, radius: constantTrack(Infinity) }, 150, 160);
    expect(piece && slopesAt(piece, 155, 9)).toEqual({ along: 0.005, offset: 0 });
  });

  test("beyond what the surface reaches the greatest removal is without end", () => {
    const narrow = { sanding: constantTrack(0), radius: trackThrough([0, 100], [10, 20]) };
    const wide = discFootprint({ along: 50, offset: 14 }, 4);
    expect(greatestRemoval(narrow, wide)).toBe(Infinity);
    expect(leastRemoval(narrow, wide)).toBeLessThanOrEqual(removalOn(narrow, 50, 10));
  });
});

describe("far from where the search for the steepest place begins", () => {
  // the sanding falls about as fast as the rim's own drop rises: a dot over the centre line
  const slopes = [-0.03, -0.018, -0.014, -0.011, -0.005, 0.005, 0.011, 0.014, 0.018, 0.03];

  test.each(slopes)("sanding slope %d", (slope) => {
    const sanding = trackThrough([0, 400], [2 - 200 * slope, 2 + 200 * slope]);
    for (const R of [180, 254, 300, 400]) {
      for (const x of [0, 0.1, 0.8]) {
        const surface = { sanding, radius: constantTrack(R) };
        const dot = discFootprint({ along: 150, offset: x }, 4);
        expect(excessOf(surface, dot, disc(150, x, 4, []))).toBeLessThan(FAR_MOST);
      }
    }
  });
});

describe("where the surface ends", () => {
  const falling = trackThrough([0, 100], [1, 0]);

  test("a point where it stands upright", () => {
    const surface = { sanding: falling, radius: constantTrack(10) };
    const point = discFootprint({ along: 50, offset: 10 }, 0);
    expect(leastRemoval(surface, point)).toBe(10.5);
    expect(greatestRemoval(surface, point)).toBe(10.5);
  });

  test("a piece on which no part of an outline lies has the bound of the whole", () => {
    const surface = { sanding: falling, radius: constantTrack(100) };
    const outline = [p(10, -5), p(20, -5), p(20, 8), p(10, 8)];
    const [piece] = piecesOf(surface, 30, 40);
    if (piece === undefined) throw new Error("no piece");
    const greatest = greatestOnPiece(piece, outlineFootprint(outline, 0));
    expect(greatest).toBeCloseTo(0.7 + 100 - Math.sqrt(100 ** 2 - 8 ** 2), 9);
  });
});

describe("what of the ground a piece holds", () => {
  const angles = Array.from({ length: 24 }, (_, i) => (i * Math.PI) / 12 + 0.01);

  /** The lowest place of planes that rise outward, against every point of the ground. */
  function expectLowest(ground: Ground, points: readonly Point[]) {
    expect(points.length).toBeGreaterThan(200);
    for (const angle of angles.filter((a) => Math.cos(a) >= 0)) {
      const [a, b] = [Math.sin(angle), Math.cos(angle)];
      const lowest = ground.lowest(a, b);
      const least = Math.min(...points.map((point) => a * point.along + b * point.offset));
      expect(a * lowest.along + b * lowest.offset).toBeLessThanOrEqual(least + 1e-9);
      expect(a * lowest.along + b * lowest.offset).toBeGreaterThanOrEqual(least - 0.01);
    }
  }

  test.each([
    { offset: 9, from: 45, to: 55 },
    { offset: 9, from: 47, to: 51 },
    { offset: 3, from: 45, to: 55 },
    { offset: 3, from: 48, to: 55 },
    { offset: 0, from: 45, to: 55 },
    { offset: 4.9, from: 52, to: 54 },
  ])("a disc of radius 5 at offset $offset, from $from to $to", ({ offset, from, to }) => {
    const ground = underDisc(discFootprint({ along: 50, offset }, 5), from, to);
    const inside: Point[] = [];
    for (let s = from; s <= to; s += (to - from) / 400) {
      const chord = Math.sqrt(Math.max(0, 25 - (s - 50) ** 2));
      const inner = Math.max(0, offset - chord);
      expect(ground.innerAt(s)).toBeCloseTo(inner, 9);
      inside.push(p(s, inner), p(s, offset + chord));
    }
    expectLowest(ground, inside);
    expect([ground.from, ground.to]).toEqual([from, to]);
  });

  test("a level plane is lowest anywhere in the disc", () => {
    const ground = underDisc(discFootprint({ along: 50, offset: 9 }, 5), 45, 55);
    expect(ground.lowest(0, 0)).toEqual(p(50, 4));
  });

  // from (−4, 6) across at its begin to (2, 9) at its end; a tip at 30
  const SLANTED = [p(10, -4), p(20, 2), p(30, 7), p(20, 9), p(10, 6)];

  test("a polygon: the offset nearest the centre line", () => {
    const ground = underPolygon(SLANTED);
    expect([ground.from, ground.to]).toEqual([10, 30]);
    expect([10, 15, 20, 25].map(ground.innerAt)).toEqual([0, 0, 2, 4.5]);
    expect(ground.innerAt(30)).toBe(7);
    expect(ground.innerAt(31)).toBe(0);
    const mirrored = underPolygon(SLANTED.map(({ along, offset }) => p(along, -offset)));
    expect([10, 15, 20, 25, 30].map(mirrored.innerAt)).toEqual([0, 0, -2, -4.5, -7]);
  });

  test("a polygon: its lowest corner", () => {
    const ground = underPolygon(SLANTED);
    expect(ground.lowest(0, 1)).toEqual(p(10, -4));
    expect(ground.lowest(1, 0).along).toBe(10);
    expect(ground.lowest(-1, 0)).toEqual(p(30, 7));
    expect(ground.lowest(-1, 0.6)).toEqual(p(30, 7));
    expect(ground.lowest(-0.4, 1)).toEqual(p(10, -4));
    // 20 along for 11 across
    expect(ground.lowest(-0.54, 1)).toEqual(p(10, -4));
    expect(ground.lowest(-0.56, 1)).toEqual(p(30, 7));
  });
});
