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

  test("its stretch and its reach; chords: 3-4-5", () => {
    expect(disc).toMatchObject({ from: 95, to: 105, near: 7, far: 17, offset: 12, radius: 5 });
    expect(discFootprint({ along: 100, offset: -12 }, 5)).toEqual(disc);
    expect(discFootprint({ along: 100, offset: 3 }, 5)).toMatchObject({ near: 0, far: 8 });
    expect([103, 96, 105, 106].map((s) => halfChord(disc, s))).toEqual([4, 3, 0, 0]);
  });

  test("its reach on a part of its stretch: less where the middle lies outside", () => {
    expect(reachOn(disc, 0, 200)).toEqual({ near: 7, far: 17 });
    expect(reachOn(disc, 98, 101)).toEqual({ near: 7, far: 17 });
    expect(reachOn(disc, 103, 200)).toEqual({ near: 8, far: 16 });
    expect(reachOn(disc, 0, 96)).toEqual({ near: 9, far: 15 });
    const over = discFootprint({ along: 100, offset: 1 }, 5);
    expect(reachOn(over, 103, 200)).toEqual({ near: 0, far: 5 });
  });

  test("the polygon around it touches it from outside: an area of n r² tan(π/n)", () => {
    const around = polygonAround(disc);
    expect(gapToPolygon(disc, around)).toBeCloseTo(-5, 9);
    expect(areaOf(around)).toBeCloseTo(32 * 25 * Math.tan(Math.PI / 32), 9);
  });
});

describe("an outline 10 long; from −2 to 6 across at its begin, from −1 to 4 at its end", () => {
  const corners = [
    [50, -2],
    [60, -1],
    [60, 4],
    [50, 6],
  ] as const;
  const outlineAt = (side: number, by = 0) =>
    corners.map(([along, offset]) => ({ along, offset: side * (offset + by) }));
  const outline = outlineAt(1);
  const footprint = outlineFootprint(outline, 0.5);

  test("over the centre line, off by up to 0.5: the greater part is turned to the treble side", () => {
    expect(footprint).toMatchObject({ from: 49.5, to: 60.5, near: 0, far: 6.5, radius: 0 });
    expect(footprint).toMatchObject({ along: 55, offset: 2, outline, error: 0.5 });
    expect(outlineFootprint(outlineAt(-1), 0.5)).toEqual(footprint);
  });

  test("beside it, on either side", () => {
    for (const side of [1, -1]) {
      const beside = outlineFootprint(outlineAt(side, 5), 0.25);
      expect(beside).toMatchObject({ near: 2.75, far: 11.25, offset: 7, outline: outlineAt(1, 5) });
      const half = reachOn(outlineFootprint(outlineAt(side, 5), 0), 55, 60);
      expect([half.near, half.far]).toEqual([3.5, 10]);
    }
  });

  test("its reach on a part of its stretch", () => {
    expect(reachOn(footprint, 49.5, 60.5)).toEqual({ near: 0, far: 6.5 });
    expect(reachOn(outlineFootprint(outline, 0), 55, 60)).toEqual({ near: 0, far: 5 });
    // the arcs about its corners stand out by less than 0.01
    expect(reachOn(footprint, 49.5, 55).far).toBeCloseTo(6.505, 2);
    expect(reachOn(footprint, 60.5, 70).far).toBeCloseTo(4.05, 1);
    // where no part of it lies, the whole one's
    expect(reachOn(footprint, 61, 70)).toEqual({ near: 0, far: 6.5 });
  });

  test("the polygon around it: its area and that of the strip about it, a little more", () => {
    const around = polygonAround(footprint);
    const sides = 5 + 8 + Math.hypot(10, 1) + Math.hypot(10, 2);
    const exact = 65 + 0.5 * sides + Math.PI * 0.25;
    expect(areaOf(around) - exact).toBeGreaterThanOrEqual(0);
    expect(areaOf(around) - exact).toBeLessThan(0.1);
    for (const corner of outline) expect(gapToPolygon(corner, around)).toBeLessThan(-0.4999999);
  });
});

test("a part of an outline may reach farther to bass, though the whole reaches farther to treble", () => {
  // at 20 its treble side has come from −8 at 10 half of the way to 20
  const corners = ["10 -8", "20 -8", "40 20", "30 20"].map((text) => {
    const [along = 0, offset = 0] = text.split(" ").map(Number);
    return { along, offset };
  });
  expect(reachOn(outlineFootprint(corners, 0), 10, 20)).toEqual({ near: 0, far: 8 });
});
