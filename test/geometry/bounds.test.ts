/** The bounds over a hole's ground, against dense sampling by the textbook's formulas: surface.ts. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import type { Surface } from "../../src/board.js";
import { discFootprint, type Footprint, outlineFootprint } from "../../src/footprint.js";
import { piecesOf, slopesAt } from "../../src/piece.js";
import { greatestRemoval, leastRemoval, removalOn } from "../../src/removal.js";
import { constantTrack, trackThrough } from "../../src/track.js";
import { type Block, blockPoints, cornersOf, disc, extremes, removal } from "./surface.js";

/** mm: what sampling may miss, and what a bound may be too careful by: nearly always, and at most. */
const NEAR = 1e-5;
const MOST = 1e-4;
const ROUNDING = 1e-10;
const BLOCK_MOST = 1e-3;

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

const bendsOf = ({ crown, radius }: Surface) => [...crown.at, ...radius.at];

const CROWNS = {
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
const SURFACES = Object.entries(CROWNS).flatMap(([c, crown]) =>
  Object.entries(RADII).map(([r, radius]) => ({ name: `crown ${c}, radius ${r}`, crown, radius })),
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
    crown: trackThrough([0, 100, 300, 500], [0.1, 0.2, 1.2, 1.3]),
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
    const narrow = { crown: constantTrack(0), radius: trackThrough([0, 100], [10, 60]) };
    const [piece] = piecesOf(narrow, 0, 50);
    if (piece === undefined) throw new Error("no piece");
    expect(slopesAt(piece, 0, 9)).toBeDefined();
    expect(slopesAt(piece, 0, 13)).toBeUndefined();
    // the apex lies at −20; beyond it the formula's radius is negative
    expect(slopesAt(piece, -40, 3)).toBeUndefined();
    expect(slopesAt(piece, -20, 0)).toBeUndefined();
    const [round] = piecesOf({ crown: constantTrack(0), radius: constantTrack(10) }, 0, 5);
    expect(round && slopesAt(round, 3, 10)).toBeUndefined();
  });

  test("a flat surface slopes as its crown does", () => {
    const [piece] = piecesOf({ ...surface, radius: constantTrack(Infinity) }, 150, 160);
    expect(piece && slopesAt(piece, 155, 9)).toEqual({ along: 0.005, offset: 0 });
  });

  test("beyond what the surface reaches the greatest removal is without end", () => {
    const narrow = { crown: constantTrack(0), radius: trackThrough([0, 100], [10, 20]) };
    const wide = discFootprint({ along: 50, offset: 14 }, 4);
    expect(greatestRemoval(narrow, wide)).toBe(Infinity);
    expect(leastRemoval(narrow, wide)).toBeLessThanOrEqual(removalOn(narrow, 50, 10));
  });
});
