/** Tracks: a profile of three stations that can be drawn on squared paper. */
import { describe, expect, test } from "vitest";
import {
  breaksWithin,
  combined,
  constantTrack,
  flooredAtZero,
  greatestOver,
  isConstant,
  leastOver,
  pieceAt,
  pieceBefore,
  scaled,
  shifted,
  slopeAt,
  slopesOver,
  type Track,
  trackThrough,
  valueAt,
  valueOnPiece,
} from "../../src/geometry/track.js";

/** Falls by 1 in 2, then rises by 3 in 4. */
const VALLEY = trackThrough([10, 20, 40], [8, 3, 18]);
const on = (track: Track, ...places: number[]) => places.map((s) => valueAt(track, s));
const near = (...values: number[]) => values.map((value) => expect.closeTo(value, 12));

test("values on and beyond the stations, and of a piece drawn on", () => {
  expect(on(VALLEY, 6, 10, 14, 20, 24, 40, 44)).toEqual([10, 8, 6, 3, 6, 18, 21]);
  const drawnOn = [
    valueOnPiece(VALLEY, 0, 30),
    valueOnPiece(VALLEY, 1, 12),
    valueOnPiece(VALLEY, 2, 44),
  ];
  expect(drawnOn).toEqual([-2, -3, 21]);
  // a level piece has its value to the last bit, however far
  expect(valueOnPiece(trackThrough([0, 10], [0.1, 0.1]), 0, 1e300)).toBe(0.1);
  expect(on(constantTrack(Infinity), 5)).toEqual([Infinity]);
});

test("which piece holds a place, and which ends there; a knot's own slope is the one that begins there", () => {
  const places = [5, 10, 15, 20, 30, 40, 50];
  expect(places.map((s) => pieceAt(VALLEY, s)).join("")).toBe("0001122");
  expect(places.map((s) => pieceBefore(VALLEY, s)).join("")).toBe("0000112");
  expect([5, 19, 20, 99].map((s) => slopeAt(VALLEY, s))).toEqual([-0.5, -0.5, 0.75, 0.75]);
  expect([
    isConstant(constantTrack(3)),
    isConstant(trackThrough([5], [3])),
    isConstant(VALLEY),
  ]).toEqual([true, true, false]);
});

test("over a stretch: the least and the greatest, at an end or at a knot between; the slopes; the breaks", () => {
  const spans = [
    [12, 40],
    [12, 18],
    [24, 40],
    [16, 20],
    [0, 10],
    [44, 48],
  ] as const;
  expect(spans.map(([a, b]) => leastOver(VALLEY, a, b))).toEqual([3, 4, 6, 3, 8, 21]);
  expect(spans.map(([a, b]) => greatestOver(VALLEY, a, b))).toEqual([18, 7, 18, 5, 13, 24]);
  expect(greatestOver(scaled(VALLEY, -1), 12, 40)).toBe(-3);
  expect([slopesOver(VALLEY, 12, 18), slopesOver(VALLEY, 12, 24)]).toEqual([[-0.5], [-0.5, 0.75]]);
  expect([slopesOver(VALLEY, 20, 24), slopesOver(VALLEY, 12, 20)]).toEqual([
    [-0.5, 0.75],
    [-0.5, 0.75],
  ]);
  const saw = trackThrough([0, 1, 2, 3, 4], [0, 1, 0, 1, 0]);
  expect([breaksWithin(saw, 0, 4), breaksWithin(saw, 1.5, 2), breaksWithin(saw, 3.5, 9)]).toEqual([
    [1, 2, 3],
    [2],
    [],
  ]);
});

test("shifted, scaled, and one more or less another", () => {
  expect(on(shifted(VALLEY, 2), 6, 14, 24, 44)).toEqual([12, 8, 8, 23]);
  expect(scaled(VALLEY, 0.5)).toEqual(trackThrough([10, 20, 40], [4, 1.5, 9]));
  expect([shifted(VALLEY, 0), scaled(VALLEY, 1)]).toEqual([VALLEY, VALLEY]);
  const slope = trackThrough([0, 30], [0, 6]);
  expect(combined(VALLEY, slope, 1).at).toEqual([0, 10, 20, 30, 40]);
  expect(on(combined(VALLEY, slope, 1), -10, 14, 24, 50)).toEqual(
    near(18 - 2, 6 + 2.8, 6 + 4.8, 25.5 + 10),
  );
  expect(on(combined(VALLEY, slope, -1), 14, 24)).toEqual(near(6 - 2.8, 6 - 4.8));
  expect(on(combined(constantTrack(5), slope, -1), 0, 15, 60)).toEqual(near(5, 2, -7));
  expect(combined(VALLEY, constantTrack(2), -1)).toEqual(shifted(VALLEY, -2));
  // what meets itself is level
  expect(combined(slope, slope, -1).slope.every((each) => each === 0)).toBe(true);
});

describe("floored at zero", () => {
  test("a track that dips below has a knot where it meets zero", () => {
    // 8 − 5 = 3 falls to 0 after 6; 3 − 5 = −2 rises to 0 after 8/3
    const floored = flooredAtZero(shifted(VALLEY, -5));
    expect(on(floored, 10, 13, 16, 20, 22, 20 + 8 / 3, 24, 40)).toEqual(
      near(3, 1.5, 0, 0, 0, 0, 1, 13),
    );
  });

  test("beyond its ends it goes on, and never falls below zero", () => {
    const falling = flooredAtZero(trackThrough([0, 100], [1, 0.5]));
    expect(on(falling, -100, 150, 200, 300)).toEqual(near(1.5, 0.25, 0, 0));
    const rising = flooredAtZero(trackThrough([0, 100], [0.5, 1]));
    expect(on(rising, -300, -50, 300)).toEqual(near(0, 0.25, 2));
  });

  test("knots rise strictly, though zero be met at a knot; constants", () => {
    const floored = flooredAtZero(trackThrough([0, 10, 20], [1, 0, 1]));
    expect(floored.at).toEqual([...new Set(floored.at)].sort((a, b) => a - b));
    expect(on(floored, 0, 5, 10, 15, 20)).toEqual([1, 0.5, 0, 0.5, 1]);
    expect([flooredAtZero(constantTrack(-1)), flooredAtZero(constantTrack(2))]).toEqual([
      constantTrack(0),
      constantTrack(2),
    ]);
    expect(on(flooredAtZero(trackThrough([0, 10], [0.2, 0.2])), -99, 5, 99)).toEqual([
      0.2, 0.2, 0.2,
    ]);
  });
});
