/** Room around a marker: slots and edges whose slopes make 3-4-5 triangles. Lengths in mm. */
import { describe, expect, test } from "vitest";
import { edgeGap, overlaps, slotGap } from "../../src/drilling/clearances.js";
import { trackThrough } from "../../src/geometry/track.js";
import { boardOf, leaning, square } from "../layout/frames.js";
import { dotAt, pocketOver } from "./benches.js";

describe("room to square slots at 40 and 80", () => {
  const board = boardOf([square(0), square(40), square(80)], 60);
  const dot = (along: number) => dotAt(along, 10, { fret: 2 });

  test.each([
    [57, 17 - 3],
    [60, 20 - 3],
    [68, 12 - 3],
    [42, 2 - 3],
    [79, 1 - 3],
  ])("a dot of 6 at %d: %d", (along, gap) => {
    expect(slotGap(board, dot(along))).toBe(gap);
  });

  test("a pocket: from its nearest corner", () => {
    expect(slotGap(board, pocketOver([45, 70], [-5, 5], { fret: 2 }))).toBe(5);
    expect(slotGap(board, pocketOver([50, 77], [-5, 5], { fret: 2 }))).toBe(3);
    expect(slotGap(board, pocketOver([38, 70], [-5, 5], { fret: 2 }))).toBe(-2);
  });

  test("is the plain difference: exactly the room that is asked for, whatever the width", () => {
    for (const width of [40, 42.1, 43, 60]) {
      const plain = boardOf([square(0), square(80)], width);
      expect(slotGap(plain, dotAt(3.5, 0))).toBe(0.5);
    }
  });
});

describe("room to slots that run 3 along in 4 across", () => {
  // from (0, −20) to (30, 20), over (15, 0); and from (50, −20) to (80, 20), over (65, 0)
  const board = boardOf([leaning(0, 30), leaning(50, 80)], 40);

  test.each([
    [35, 0, 20 * 0.8 - 3],
    [55, 0, 10 * 0.8 - 3],
    [32.5, 10, 10 * 0.8 - 3],
    [47.5, -10, 10 * 0.8 - 3],
    [67.5, 0, -2.5 * 0.8 - 3],
    [10, 0, -5 * 0.8 - 3],
  ])("a dot of 6 at (%d, %d): %d", (along, offset, gap) => {
    expect(slotGap(board, dotAt(along, offset))).toBeCloseTo(gap, 12);
  });

  test("a pocket: from its corner, where the slot comes nearest", () => {
    // the slots cross offset 8 at 21 and 71, and offset −8 at 9 and 59
    expect(slotGap(board, pocketOver([31, 39], [-8, 8]))).toBeCloseTo(10 * 0.8, 12);
    expect(slotGap(board, pocketOver([41, 54], [-8, 8]))).toBeCloseTo(5 * 0.8, 12);
  });
});

describe("room to parallel edges 30 from the centre line, and to the end at 500", () => {
  const board = boardOf([square(0), square(499)], 60);

  test.each([
    [100, 20, 10 - 3],
    [100, -25, 5 - 3],
    [100, 32, -2 - 3],
    [490, 0, 10 - 3],
    [498, 0, 2 - 3],
  ])("a dot of 6 at (%d, %d): %d", (along, offset, gap) => {
    expect(edgeGap(board, dotAt(along, offset))).toBe(gap);
  });

  test("a pocket", () => {
    expect(edgeGap(board, pocketOver([100, 120], [-20, 27]))).toBe(3);
    expect(edgeGap(board, pocketOver([100, 120], [-32, 27]))).toBe(-2);
    expect(edgeGap(board, pocketOver([480, 498], [-5, 5]))).toBe(2);
  });
});

describe("room to edges that part 3 in 4 each", () => {
  // 20 from the centre line at the nut, 50 at 40
  const board = boardOf([square(0), square(100)], trackThrough([0, 400], [40, 640]));

  test.each([
    [40, 0, 50 * 0.8 - 3],
    [40, 40, 10 * 0.8 - 3],
    [40, -45, 5 * 0.8 - 3],
    [40, 50, -3],
    [40, -55, -5 * 0.8 - 3],
  ])("a dot of 6 at (%d, %d): %d", (along, offset, gap) => {
    expect(edgeGap(board, dotAt(along, offset))).toBeCloseTo(gap, 12);
  });

  test("a pocket: square to the edge from its nearest corner", () => {
    expect(edgeGap(board, pocketOver([40, 60], [-30, 30]))).toBeCloseTo(20 * 0.8, 12);
    expect(edgeGap(board, pocketOver([40, 60], [-55, 30]))).toBeCloseTo(-5 * 0.8, 12);
  });
});

describe("room to edges that bend at 100", () => {
  const slots = [square(0), square(200)];
  const big = { diameter: 20 };

  describe("a waist, 20 from the centre line, 95 at the nut and at 200", () => {
    const board = boardOf(slots, trackThrough([0, 100, 200], [190, 40, 190]));

    test("a dot beside it: straight to the bend", () => {
      expect(edgeGap(board, dotAt(100, 0, big))).toBeCloseTo(20 - 10, 12);
      expect(edgeGap(board, dotAt(100, -12, big))).toBeCloseTo(8 - 10, 12);
    });

    test("a dot before or behind it, 3 along and 4 across from the bend", () => {
      expect(edgeGap(board, dotAt(97, 16, big))).toBeCloseTo(5 - 10, 12);
      expect(edgeGap(board, dotAt(103, -16, big))).toBeCloseTo(5 - 10, 12);
    });

    test("a pocket: from the bend on either side to the pocket's side", () => {
      expect(edgeGap(board, pocketOver([80, 120], [-10, 15]))).toBeCloseTo(5, 12);
      expect(edgeGap(board, pocketOver([80, 120], [-15, 10]))).toBeCloseTo(5, 12);
      expect(edgeGap(board, pocketOver([80, 120], [-10, 22]))).toBeCloseTo(-2, 12);
    });
  });

  describe("a bulge, 95 from the centre line, 20 at the nut and at 200", () => {
    const board = boardOf(slots, trackThrough([0, 100, 200], [40, 190, 40]));

    test.each([
      [96, 72],
      [104, -72],
      [100, 75],
    ])("a dot of 20 at (%d, %d), 20 across from the edge: 16 square to it", (along, offset) => {
      // the foot lies 9.6 along from it
      expect(edgeGap(board, dotAt(along, offset, big))).toBeCloseTo(16 - 10, 12);
    });

    test("a dot beyond the bend", () => {
      expect(edgeGap(board, dotAt(100, 98, big))).toBeCloseTo(-3 - 10, 12);
      expect(edgeGap(board, dotAt(103, -99, big))).toBeCloseTo(-5 - 10, 12);
    });
  });
});

describe("markers in each other's way", () => {
  test("two dots at one fret, centre to centre", () => {
    const pair = [dotAt(50, -2, { fret: 3 }), dotAt(53, 2, { fret: 3, diameter: 8 })];
    expect(overlaps(pair)).toEqual([{ fret: 3, hole: 1, distance: 5, touching: 7 }]);
  });

  test("dots that touch do not overlap", () => {
    expect(overlaps([dotAt(50, -3), dotAt(50, 3)])).toEqual([]);
    expect(overlaps([dotAt(50, -2.5), dotAt(50, 3)])).toHaveLength(1);
  });

  test("every pair of three", () => {
    const three = [dotAt(20, 0, { fret: 1 }), ...[-2, 0, 2].map((x) => dotAt(50, x, { fret: 2 }))];
    expect(overlaps(three)).toEqual([
      { fret: 2, hole: 2, distance: 2, touching: 6 },
      { fret: 2, hole: 3, distance: 4, touching: 6 },
      { fret: 2, hole: 3, distance: 2, touching: 6 },
    ]);
  });

  test("markers at different frets are not compared", () => {
    expect(overlaps([dotAt(10, 0, { fret: 1 }), dotAt(12, 0, { fret: 2 })])).toEqual([]);
  });

  test("a pocket and a dot, or two pockets: across the board alone", () => {
    const pocket = pocketOver([40, 60], [-4, 4]);
    const dot = dotAt(53, 4);
    const other = pocketOver([43, 63], [1, 7]);
    const across = { fret: 1, hole: 1, distance: 4, touching: 7 };
    for (const pair of [
      [pocket, dot],
      [dot, pocket],
      [pocket, other],
    ]) {
      expect(overlaps(pair)).toEqual([across]);
    }
  });
});
