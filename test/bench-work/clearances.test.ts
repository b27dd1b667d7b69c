/** Room around a marker: slots and edges whose slopes make 3-4-5 triangles. Lengths in mm. */
import { describe, expect, test } from "vitest";
import type { Marker } from "../../src/board/markers.js";
import { edgeGap, findOverlaps, slotGap } from "../../src/drilling/clearances.js";
import { trackThrough } from "../../src/geometry/track.js";
import { frameOf, leaning, square } from "../layout/frames.js";

/** A dot of 6 between the nut and fret 1 where nothing else is said. */
const dotAt = (along: number, offset: number, stated: object = {}) =>
  ({ fret: 1, along, offset, width: 6, ...stated }) as Marker;

/** A pocket square to the centre line, between two places along and two across. */
function pocketOver([from, to]: [number, number], [bass, treble]: [number, number], stated = {}) {
  const outline = [
    { along: from, offset: bass },
    { along: to, offset: bass },
    { along: to, offset: treble },
    { along: from, offset: treble },
  ];
  const width = treble - bass;
  return dotAt((from + to) / 2, (bass + treble) / 2, { outline, width, ...stated });
}

describe("room to square slots at 40 and 80", () => {
  const board = frameOf([square(0), square(40), square(80)], 60);

  test.each([
    [57, 2, 17 - 3],
    [68, 2, 12 - 3],
    [42, 2, 2 - 3],
    // past the last slot there is none after
    [300, 3, 220 - 3],
  ])("a dot of 6 at %d in the space of fret %d: %d", (along, fret, gap) => {
    expect(slotGap(board, dotAt(along, 10, { fret }))).toBe(gap);
  });

  test("a pocket: from its nearest corner", () => {
    const at = (from: number, to: number) =>
      slotGap(board, pocketOver([from, to], [-5, 5], { fret: 2 }));
    expect([at(45, 70), at(50, 77), at(38, 70)]).toEqual([5, 3, -2]);
  });
});

describe("room to slots that run 3 along in 4 across", () => {
  // from (0, −20) to (30, 20), over (15, 0); and from (50, −20) to (80, 20), over (65, 0)
  const board = frameOf([leaning(0, 30), leaning(50, 80)], 40);

  test.each([
    [35, 0, 20 * 0.8 - 3],
    [55, 0, 10 * 0.8 - 3],
    [32.5, 10, 10 * 0.8 - 3],
    [47.5, -10, 10 * 0.8 - 3],
    [67.5, 0, -2.5 * 0.8 - 3],
  ])("a dot of 6 at (%d, %d): %d", (along, offset, gap) => {
    expect(slotGap(board, dotAt(along, offset))).toBeCloseTo(gap, 12);
  });

  test("past the last slot, and a pocket from its nearest corner", () => {
    expect(slotGap(board, dotAt(85, 0, { fret: 2 }))).toBeCloseTo(20 * 0.8 - 3, 12);
    // the slots cross offset 8 at 21 and 71, and offset −8 at 9 and 59
    expect(slotGap(board, pocketOver([31, 39], [-8, 8]))).toBeCloseTo(10 * 0.8, 12);
    expect(slotGap(board, pocketOver([41, 54], [-8, 8]))).toBeCloseTo(5 * 0.8, 12);
  });
});

describe("room to the edges and the end", () => {
  test.each([
    [100, 20, 10 - 3],
    [100, -25, 5 - 3],
    [100, 32, -2 - 3],
    [490, 0, 10 - 3],
    [498, 0, 2 - 3],
  ])("30 from the centre line, 500 long: a dot of 6 at (%d, %d): %d", (along, offset, gap) => {
    expect(edgeGap(frameOf([square(0)], 60), dotAt(along, offset))).toBe(gap);
  });

  // 20 from the centre line at the nut, 50 at 40
  const flared = frameOf([square(0)], trackThrough([0, 400], [40, 640]));
  test.each([
    [0, 50 * 0.8 - 3],
    [40, 10 * 0.8 - 3],
    [-45, 5 * 0.8 - 3],
    [-55, -5 * 0.8 - 3],
  ])("edges that part 3 in 4 each: a dot of 6 at (40, %d): %d", (offset, gap) => {
    expect(edgeGap(flared, dotAt(40, offset))).toBeCloseTo(gap, 12);
  });

  test("a pocket: square to the edge from its nearest corner", () => {
    expect(edgeGap(flared, pocketOver([40, 60], [-30, 30]))).toBeCloseTo(20 * 0.8, 12);
    expect(edgeGap(flared, pocketOver([40, 60], [-55, 30]))).toBeCloseTo(-5 * 0.8, 12);
    expect(edgeGap(frameOf([square(0)], 60), pocketOver([480, 498], [-5, 5]))).toBe(2);
  });

  const big = { width: 20 };
  test("a waist at 100, 20 from the centre line: straight to the bend, or 3 along and 4 across", () => {
    const board = frameOf([square(0)], trackThrough([0, 100, 200], [190, 40, 190]));
    const gaps = [dotAt(100, -12, big), dotAt(97, 16, big), dotAt(103, -16, big)];
    expect(gaps.map((dot) => edgeGap(board, dot))).toEqual(
      [8, 5, 5].map((d) => expect.closeTo(d - 10, 12)),
    );
    const pockets = [pocketOver([80, 120], [-10, 15]), pocketOver([80, 120], [-22, 10])];
    expect(pockets.map((pocket) => edgeGap(board, pocket))).toEqual(
      [5, -2].map((d) => expect.closeTo(d, 12)),
    );
  });

  test("a bulge at 100, 95 from the centre line: 20 across from the edge is 16 square to it", () => {
    const board = frameOf([square(0)], trackThrough([0, 100, 200], [40, 190, 40]));
    const dots = [
      dotAt(96, 72, big),
      dotAt(104, -72, big),
      dotAt(100, 98, big),
      dotAt(103, -99, big),
    ];
    expect(dots.map((dot) => edgeGap(board, dot))).toEqual(
      [16, 16, -3, -5].map((d) => expect.closeTo(d - 10, 12)),
    );
  });
});

describe("markers in each other's way, whatever their frets", () => {
  test.each<[string, Marker[], object[]]>([
    [
      "3-4-5",
      [dotAt(50, -2), dotAt(53, 2, { fret: 3, width: 8 })],
      [{ hole: 1, other: 0, gap: 5 - 7 }],
    ],
    ["dots that touch", [dotAt(50, -3), dotAt(50, 3)], []],
    [
      "every pair",
      [dotAt(20, 0), dotAt(50, -2), dotAt(50, 0), dotAt(50, 2)],
      [
        { hole: 2, other: 1, gap: 2 - 6 },
        { hole: 3, other: 1, gap: 4 - 6 },
        { hole: 3, other: 2, gap: 2 - 6 },
      ],
    ],
    // the dot's middle 4 along and 3 across from the corner
    ["a pocket and a dot", [pocketOver([40, 60], [-4, 4]), dotAt(64, 7)], []],
    [
      "a dot and a pocket",
      [dotAt(63, 0, { width: 8 }), pocketOver([40, 60], [-4, 4])],
      [{ hole: 1, other: 0, gap: 3 - 4 }],
    ],
    [
      "a dot within a pocket",
      [pocketOver([40, 60], [-4, 4]), dotAt(50, 0)],
      [{ hole: 1, other: 0, gap: -4 - 3 }],
    ],
    [
      "two pockets",
      [pocketOver([40, 60], [-4, 4]), pocketOver([58, 80], [3, 9])],
      [{ hole: 1, other: 0, gap: -1 }],
    ],
    ["two pockets side by side", [pocketOver([40, 60], [-4, 4]), pocketOver([60, 80], [3, 9])], []],
  ])("%s", (_, markers, overlaps) => {
    expect(findOverlaps(markers)).toEqual(overlaps);
  });
});
