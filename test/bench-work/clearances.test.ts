/** Room around a marker: slots and edges whose slopes make 3-4-5 triangles. Lengths in mm. */
import { describe, expect, test } from "vitest";
import type { Marker } from "../../src/board/markers.js";
import { edgeGap, findOverlaps, slotGap } from "../../src/drilling/clearances.js";
import { type Track, trackThrough } from "../../src/geometry/track.js";
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

const closeTo = (...values: number[]) => values.map((value) => expect.closeTo(value, 12));

describe("room to the slots before and after it", () => {
  test("square ones at 40 and 80: a dot of 6, a pocket's nearest corner; none after the last", () => {
    const board = frameOf([square(0), square(40), square(80)], 60);
    const gaps = [57, 68, 42].map((along) => slotGap(board, dotAt(along, 10, { fret: 2 })));
    expect(gaps).toEqual([17 - 3, 12 - 3, 2 - 3]);
    expect(slotGap(board, dotAt(300, 10, { fret: 3 }))).toBe(220 - 3);
    const pocket = (from: number, to: number) => pocketOver([from, to], [-5, 5], { fret: 2 });
    const pockets = [pocket(45, 70), pocket(50, 77), pocket(38, 70)];
    expect(pockets.map((each) => slotGap(board, each))).toEqual([5, 3, -2]);
  });

  test("such as run 3 along in 4 across, over (15, 0) and (65, 0)", () => {
    const board = frameOf([leaning(0, 30), leaning(50, 80)], 40);
    const dots = [dotAt(35, 0), dotAt(55, 0), dotAt(32.5, 10), dotAt(47.5, -10), dotAt(67.5, 0)];
    const along = [20, 10, 10, 10, -2.5];
    expect(dots.map((dot) => slotGap(board, dot))).toEqual(
      closeTo(...along.map((s) => s * 0.8 - 3)),
    );
    expect(slotGap(board, dotAt(85, 0, { fret: 2 }))).toBeCloseTo(20 * 0.8 - 3, 12);
    // the slots cross offset 8 at 21 and 71, and offset −8 at 9 and 59
    const pockets = [pocketOver([31, 39], [-8, 8]), pocketOver([41, 54], [-8, 8])];
    expect(pockets.map((each) => slotGap(board, each))).toEqual(closeTo(10 * 0.8, 5 * 0.8));
  });
});

describe("room to the edges and the end", () => {
  const gapsOn = (width: number | Track, ...markers: Marker[]) =>
    markers.map((marker) => edgeGap(frameOf([square(0)], width), marker));

  test("30 from the centre line, 500 long", () => {
    const dots = [dotAt(100, 20), dotAt(100, -25), dotAt(100, 32), dotAt(490, 0), dotAt(498, 0)];
    expect(gapsOn(60, ...dots)).toEqual([10 - 3, 5 - 3, -2 - 3, 10 - 3, 2 - 3]);
    expect(gapsOn(60, pocketOver([480, 498], [-5, 5]))).toEqual([2]);
  });

  test("edges that part 3 in 4 each, 50 from the centre line at 40: square to the edge", () => {
    const flared = trackThrough([0, 400], [40, 640]);
    const dots = [0, 40, -45, -55].map((offset) => dotAt(40, offset));
    const across = [50, 10, 5, -5];
    expect(gapsOn(flared, ...dots)).toEqual(closeTo(...across.map((x) => x * 0.8 - 3)));
    const pockets = [pocketOver([40, 60], [-30, 30]), pocketOver([40, 60], [-55, 30])];
    expect(gapsOn(flared, ...pockets)).toEqual(closeTo(20 * 0.8, -5 * 0.8));
  });

  const big = { width: 20 };
  test("a waist at 100, 20 from the centre line: straight to the bend, or 3 along and 4 across", () => {
    const waist = trackThrough([0, 100, 200], [190, 40, 190]);
    const dots = [dotAt(100, -12, big), dotAt(97, 16, big), dotAt(103, -16, big)];
    expect(gapsOn(waist, ...dots)).toEqual(closeTo(8 - 10, 5 - 10, 5 - 10));
    const pockets = [pocketOver([80, 120], [-10, 15]), pocketOver([80, 120], [-22, 10])];
    expect(gapsOn(waist, ...pockets)).toEqual(closeTo(5, -2));
  });

  test("a bulge at 100, 95 from the centre line: 20 across from the edge is 16 square to it", () => {
    const bulge = trackThrough([0, 100, 200], [40, 190, 40]);
    const dots = [
      dotAt(96, 72, big),
      dotAt(104, -72, big),
      dotAt(100, 98, big),
      dotAt(103, -99, big),
    ];
    expect(gapsOn(bulge, ...dots)).toEqual(closeTo(16 - 10, 16 - 10, -3 - 10, -5 - 10));
  });
});

describe("markers in each other's way, whatever their frets", () => {
  const pocket = pocketOver([40, 60], [-4, 4]);
  const first = (gap: number) => [{ hole: 1, other: 0, gap }];

  test.each<[string, Marker[], object[]]>([
    ["3-4-5", [dotAt(50, -2), dotAt(53, 2, { fret: 3, width: 8 })], first(5 - 7)],
    ["dots that touch", [dotAt(50, -3), dotAt(50, 3)], []],
    // the dot's middle 4 along and 3 across from the corner
    ["a pocket and a dot", [pocket, dotAt(64, 7)], []],
    ["a dot and a pocket", [dotAt(63, 0, { width: 8 }), pocket], first(3 - 4)],
    ["a dot within a pocket", [pocket, dotAt(50, 0)], first(-4 - 3)],
    ["two pockets", [pocket, pocketOver([58, 80], [3, 9])], first(-1)],
    ["two pockets side by side", [pocket, pocketOver([60, 80], [3, 9])], []],
  ])("%s", (_, markers, overlaps) => {
    expect(findOverlaps(markers)).toEqual(overlaps);
  });

  test("every pair", () => {
    const dots = [dotAt(20, 0), dotAt(50, -2), dotAt(50, 0), dotAt(50, 2)];
    const told = findOverlaps(dots).map(({ hole, other, gap }) => `${hole} ${other} ${gap}`);
    expect(told).toEqual(["2 1 -4", "3 1 -2", "3 2 -4"]);
  });
});
