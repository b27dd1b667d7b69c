/** A radius gauge and a feeler; the sanding for a flatter radius. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { leastSanding, radiusFromGauge } from "../../src/measured/index.js";
import { between, forAll } from "../outside/counted.js";
import { expectPrinted } from "../outside/printed.js";
import { dropOf } from "./boards.js";

describe("radiusFromGauge", () => {
  test("a straightedge on the crest: the gap at the edges is a segment's height", () => {
    // Machinery's Handbook, 31st ed., p. 79: chord 16, h = 6, r = 8 1/3; r = 60, h = 8: chord 59.86652 (computed)
    const over = { gauge: Infinity, touches: "centre" } as const;
    expect(radiusFromGauge({ ...over, span: 16, gap: 6 })).toBeCloseTo(25 / 3, 12);
    expectPrinted(radiusFromGauge({ ...over, span: 59.86652, gap: 8 }), "60.0000");
  });

  test("no gap: the gauge's own radius, flat under a straightedge", () => {
    for (const touches of ["centre", "edges"] as const) {
      expect(radiusFromGauge({ gauge: 254, span: 50, gap: 0, touches })).toBeCloseTo(254, 9);
      expect(radiusFromGauge({ gauge: Infinity, span: 50, gap: 0, touches })).toBe(Infinity);
    }
  });

  test("any board under any gauge: the gap is the difference of their drops", () => {
    const radius = between(100, 2000);
    const board = fc.tuple(radius, fc.constantFrom(1, -1)).map(([R, sign]) => sign * R);
    const gauge = fc.oneof(radius, fc.constant(Infinity));
    forAll(fc.tuple(board, gauge, between(20, 70)), ([R, g, span]) => {
      const gap = dropOf(R, span / 2) - dropOf(g, span / 2);
      // a tighter board falls away at the edges, a flatter or hollow one carries the gauge there
      const touches = gap > 0 ? "centre" : "edges";
      const found = radiusFromGauge({ gauge: g, span, gap: Math.abs(gap), touches });
      expect(Math.abs(found / R - 1)).toBeLessThan(1e-10);
      // intersecting chords: (span/2)² = h(2R − h), h the board's own drop
      const h = dropOf(found, span / 2);
      expect(h * (2 * found - h)).toBeCloseTo((span / 2) ** 2, 6);
    });
  });
});

describe("leastSanding", () => {
  test("from 184 to 305 on a half-width of 26", () => {
    // (184 − √(184² − 26²)) − (305 − √(305² − 26²)), by hand
    expectPrinted(leastSanding(184, 305, 26), "0.7360");
    expectPrinted(leastSanding(184, Infinity, 26), "1.8462");
    expect(leastSanding(184, "flat", 26)).toBe(leastSanding(184, Infinity, 26));
  });

  test("none where the existing radius is not the tighter", () => {
    for (const existing of [305, 400, Infinity, "flat"] as const) {
      expect(leastSanding(existing, 305, 26)).toBe(0);
    }
    expect(leastSanding("flat", "flat", 26)).toBe(0);
  });

  test("just reaches the old surface: at the edge, and nowhere else", () => {
    const radius = between(80, 1500);
    forAll(
      fc.tuple(radius, radius, between(18, 35), between(0, 1)),
      ([existing, next, half, at]) => {
        const spare = (x: number) =>
          leastSanding(existing, next, half) + dropOf(next, x) - dropOf(existing, x);
        expect(spare(half * at)).toBeGreaterThan(-1e-12);
        if (existing < next) expect(Math.abs(spare(half))).toBeLessThan(1e-12);
      },
    );
  });
});
