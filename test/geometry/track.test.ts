/** Tracks: a profile of three stations that can be drawn on squared paper. */
import { describe, expect, test } from "vitest";
import {
  breaksWithin,
  constantTrack,
  flooredAtZero,
  isConstant,
  leastOver,
  pieceAt,
  pieceBefore,
  scaled,
  shifted,
  slopeAt,
  trackThrough,
  valueAt,
  valueOnPiece,
} from "../../src/geometry/track.js";

/** Falls by 1 in 2, then rises by 3 in 4. */
const VALLEY = trackThrough([10, 20, 40], [8, 3, 18]);

describe("values", () => {
  test.each([
    [10, 8],
    [14, 6],
    [20, 3],
    [24, 6],
    [40, 18],
    [6, 10],
    [44, 21],
  ])("at %d: %d, on and beyond the stations", (along, value) => {
    expect(valueAt(VALLEY, along)).toBe(value);
  });

  test("a piece drawn on beyond its ends", () => {
    expect(valueOnPiece(VALLEY, 0, 30)).toBe(-2);
    expect(valueOnPiece(VALLEY, 1, 12)).toBe(-3);
    expect(valueOnPiece(VALLEY, 2, 44)).toBe(21);
  });

  test("a level piece has its value to the last bit, however far", () => {
    expect(valueOnPiece(trackThrough([0, 10], [0.1, 0.1]), 0, 1e300)).toBe(0.1);
    expect(valueAt(constantTrack(Infinity), 5)).toBe(Infinity);
  });

  test("slopes, a knot's own is the one that begins there", () => {
    expect([5, 10, 19, 20, 30, 40, 99].map((s) => slopeAt(VALLEY, s))).toEqual([
      -0.5, -0.5, -0.5, 0.75, 0.75, 0.75, 0.75,
    ]);
  });

  test("one knot is a constant, two are not", () => {
    expect(isConstant(constantTrack(3))).toBe(true);
    expect(isConstant(trackThrough([5], [3]))).toBe(true);
    expect(valueAt(trackThrough([5], [3]), 77)).toBe(3);
    expect(isConstant(VALLEY)).toBe(false);
  });
});

test("which piece holds a place, and which ends there", () => {
  const places = [5, 10, 15, 20, 30, 40, 50];
  expect(places.map((s) => pieceAt(VALLEY, s))).toEqual([0, 0, 0, 1, 1, 2, 2]);
  expect(places.map((s) => pieceBefore(VALLEY, s))).toEqual([0, 0, 0, 0, 1, 1, 2]);
  expect(pieceAt(VALLEY, Number.NaN)).toBe(0);
});

test("the least over a stretch: at an end, or at a knot between", () => {
  expect(leastOver(VALLEY, 12, 40)).toBe(3);
  expect(leastOver(VALLEY, 12, 18)).toBe(4);
  expect(leastOver(VALLEY, 24, 40)).toBe(6);
  expect(leastOver(VALLEY, 20, 24)).toBe(3);
  expect(leastOver(VALLEY, 16, 20)).toBe(3);
  expect(leastOver(VALLEY, 0, 10)).toBe(8);
  expect(leastOver(VALLEY, 44, 48)).toBe(21);
});

test("the breaks of a stretch: knots between the first and the last, on its ends too", () => {
  const track = trackThrough([0, 1, 2, 3, 4], [0, 1, 0, 1, 0]);
  expect(breaksWithin(track, 0, 4)).toEqual([1, 2, 3]);
  expect(breaksWithin(track, 1, 2)).toEqual([1, 2]);
  expect(breaksWithin(track, 1.5, 2.5)).toEqual([2]);
  expect(breaksWithin(track, 3.5, 9)).toEqual([]);
});

test("shifted and scaled", () => {
  const up = shifted(VALLEY, 2);
  expect([6, 14, 24, 44].map((s) => valueAt(up, s))).toEqual([12, 8, 8, 23]);
  const half = scaled(VALLEY, 0.5);
  expect([6, 14, 24, 44].map((s) => valueAt(half, s))).toEqual([5, 3, 3, 10.5]);
  expect(half.slope).toEqual([-0.25, 0.375, 0.375]);
  expect(shifted(VALLEY, 0)).toBe(VALLEY);
  expect(scaled(VALLEY, 1)).toBe(VALLEY);
});

describe("floored at zero", () => {
  test("a track that dips below has a knot where it meets zero", () => {
    const floored = flooredAtZero(shifted(VALLEY, -5));
    // 8 − 5 = 3 falls to 0 after 6 mm; 3 − 5 = −2 rises to 0 after 8/3 mm
    expect(valueAt(floored, 10)).toBe(3);
    expect(valueAt(floored, 13)).toBeCloseTo(1.5, 12);
    expect(valueAt(floored, 16)).toBeCloseTo(0, 12);
    expect(valueAt(floored, 20)).toBe(0);
    expect(valueAt(floored, 22)).toBeCloseTo(0, 12);
    expect(valueAt(floored, 20 + 8 / 3)).toBeCloseTo(0, 12);
    expect(valueAt(floored, 24)).toBeCloseTo(1, 12);
    expect(valueAt(floored, 40)).toBe(13);
  });

  test("beyond its ends it goes on, and never falls below zero", () => {
    const falling = flooredAtZero(trackThrough([0, 100], [1, 0.5]));
    expect(valueAt(falling, -100)).toBeCloseTo(1.5, 12);
    expect(valueAt(falling, 150)).toBeCloseTo(0.25, 12);
    expect(valueAt(falling, 200)).toBeCloseTo(0, 12);
    expect(valueAt(falling, 300)).toBe(0);
    const rising = flooredAtZero(trackThrough([0, 100], [0.5, 1]));
    expect(valueAt(rising, -50)).toBeCloseTo(0.25, 12);
    expect(valueAt(rising, -300)).toBe(0);
    expect(valueAt(rising, 300)).toBeCloseTo(2, 12);
  });

  test("knots rise strictly, though zero be met at a knot", () => {
    const floored = flooredAtZero(trackThrough([0, 10, 20], [1, 0, 1]));
    floored.at.forEach((s, i) => {
      if (i > 0) expect(s).toBeGreaterThan(floored.at[i - 1] ?? Infinity);
    });
    expect([0, 5, 10, 15, 20].map((s) => valueAt(floored, s))).toEqual([1, 0.5, 0, 0.5, 1]);
  });

  test("constants", () => {
    expect(flooredAtZero(constantTrack(-1))).toEqual(constantTrack(0));
    expect(flooredAtZero(constantTrack(2))).toEqual(constantTrack(2));
    const level = flooredAtZero(trackThrough([0, 10], [0.2, 0.2]));
    expect([-99, 0, 5, 99].map((s) => valueAt(level, s))).toEqual([0.2, 0.2, 0.2, 0.2]);
  });
});
