/** The ground that a hole may cover: figures that can be counted on squared paper. */
import { describe, expect, test } from "vitest";
import {
  discFootprint,
  halfChord,
  outlineFootprint,
  polygonAround,
  reachOn,
} from "../../src/geometry/footprint.js";
import { areaOf, gapToPolygon } from "../../src/geometry/polygon.js";

describe("a disc of radius 5 about (100, 12)", () => {
  const disc = discFootprint({ along: 100, offset: 12 }, 5);

  test("its stretch and its reach", () => {
    expect(disc).toMatchObject({ from: 95, to: 105, near: 7, far: 17, offset: 12, radius: 5 });
    expect(discFootprint({ along: 100, offset: -12 }, 5)).toEqual(disc);
    expect(discFootprint({ along: 100, offset: 3 }, 5)).toMatchObject({ near: 0, far: 8 });
  });

  test("chords: 3-4-5", () => {
    expect(halfChord(disc, 103)).toBe(4);
    expect(halfChord(disc, 96)).toBe(3);
    expect(halfChord(disc, 105)).toBe(0);
    expect(halfChord(disc, 106)).toBe(0);
  });

  test("its reach on a part of its stretch: less where the middle lies outside", () => {
    expect(reachOn(disc, 95, 105)).toEqual({ near: 7, far: 17 });
    expect(reachOn(disc, 0, 200)).toEqual({ near: 7, far: 17 });
    expect(reachOn(disc, 98, 101)).toEqual({ near: 7, far: 17 });
    expect(reachOn(disc, 103, 200)).toEqual({ near: 8, far: 16 });
    expect(reachOn(disc, 103, 105)).toEqual({ near: 8, far: 16 });
    expect(reachOn(disc, 0, 96)).toEqual({ near: 9, far: 15 });
    expect(reachOn(disc, 95, 96)).toEqual({ near: 9, far: 15 });
    const over = discFootprint({ along: 100, offset: 1 }, 5);
    expect(reachOn(over, 103, 200)).toEqual({ near: 0, far: 5 });
  });

  test("the polygon around it touches it from outside", () => {
    const around = polygonAround(disc);
    expect(around).toHaveLength(32);
    expect(gapToPolygon(disc, around)).toBeCloseTo(-5, 9);
    // n r² tan(π/n)
    expect(areaOf(around)).toBeCloseTo(32 * 25 * Math.tan(Math.PI / 32), 9);
  });
});

/** 10 long; from −2 to 6 across at its begin, from −1 to 4 at its end. */
const OUTLINE = [
  { along: 50, offset: -2 },
  { along: 60, offset: -1 },
  { along: 60, offset: 4 },
  { along: 50, offset: 6 },
];
const mirrored = OUTLINE.map(({ along, offset }) => ({ along, offset: -offset }));

describe("an outline over the centre line, every point off by up to 0.5", () => {
  const footprint = outlineFootprint(OUTLINE, 0.5);

  test("its stretch, its reach, its middle", () => {
    expect(footprint).toMatchObject({ from: 49.5, to: 60.5, near: 0, far: 6.5, radius: 0 });
    expect(footprint).toMatchObject({ along: 55, offset: 2, outline: OUTLINE, error: 0.5 });
  });

  test("both sides are alike: the greater part is turned to the treble side", () => {
    expect(outlineFootprint(mirrored, 0.5)).toEqual(footprint);
    const even = [
      { along: 0, offset: -3 },
      { along: 9, offset: -3 },
      { along: 9, offset: 3 },
      { along: 0, offset: 3 },
    ];
    expect(outlineFootprint(even, 0)).toMatchObject({ near: 0, far: 3, offset: 0, outline: even });
  });

  test("its reach on a part of its stretch", () => {
    expect(reachOn(footprint, 49.5, 60.5)).toEqual({ near: 0, far: 6.5 });
    const { near, far } = reachOn(outlineFootprint(OUTLINE, 0), 55, 60);
    expect([near, far]).toEqual([0, 5]);
    expect(reachOn(footprint, 49.5, 55).far).toBeGreaterThanOrEqual(6.5);
    expect(reachOn(footprint, 49.5, 55).far).toBeLessThan(6.51);
    // the last corner of the arcs around it: between 4 and 4.5
    const tip = reachOn(footprint, 60.5, 70);
    expect(tip.near).toBe(0);
    expect(tip.far).toBeGreaterThan(4);
    expect(tip.far).toBeLessThan(4.1);
    // where no part of it lies, the whole one's
    expect(reachOn(footprint, 61, 70)).toEqual({ near: 0, far: 6.5 });
  });

  test("the polygon around it: its area, its corners' arcs a little outside", () => {
    const around = polygonAround(footprint);
    const sides = 5 + 8 + Math.hypot(10, 1) + Math.hypot(10, 2);
    const exact = 65 + 0.5 * sides + Math.PI * 0.25;
    expect(areaOf(around)).toBeGreaterThanOrEqual(exact);
    expect(areaOf(around)).toBeLessThan(exact + 0.01 + 0.5 * sides * 0.005);
    for (const corner of OUTLINE)
      expect(gapToPolygon(corner, around)).toBeLessThanOrEqual(-0.5 + 1e-12);
  });
});

test("an outline that slants over the centre line: its bass end reaches farther there", () => {
  const slanted = [
    { along: 0, offset: -1 },
    { along: 10, offset: -6 },
    { along: 10, offset: 2 },
    { along: 0, offset: 9 },
  ];
  const footprint = outlineFootprint(slanted, 0);
  expect(footprint).toMatchObject({ near: 0, far: 9, offset: 1.5 });
  expect(reachOn(footprint, 8, 10)).toEqual({ near: 0, far: 6 });
});

describe("an outline beside the centre line", () => {
  const beside = OUTLINE.map(({ along, offset }) => ({ along, offset: offset + 5 }));

  test.each([1, -1])("on side %d", (side) => {
    const turned = beside.map(({ along, offset }) => ({ along, offset: side * offset }));
    const footprint = outlineFootprint(turned, 0.25);
    expect(footprint).toMatchObject({ near: 2.75, far: 11.25, offset: 7, outline: beside });
    const { near, far } = reachOn(outlineFootprint(turned, 0), 55, 60);
    expect([near, far]).toEqual([3.5, 10]);
  });
});
