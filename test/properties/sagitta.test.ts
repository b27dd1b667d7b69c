/** The sagitta's identities, its branch, its limits and its scale. Printed values are in test/outside. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { rootOf, sag } from "../../src/geometry/sagitta.js";
import { radiusFromSagitta, sagitta } from "../../src/index.js";

const double = (min: number, max: number) => fc.double({ min, max, noNaN: true });
const radius = fc.oneof(double(1e-3, 1e6), double(100, 600));
/** How far out x lies, as a share of the radius. */
const share = fc.oneof(double(1e-6, 1), double(0.01, 0.3));
/** Slopes of a radius along the board. */
const slope = fc.oneof(double(-0.4, 0.4), double(-3, 3));
const ULP = Number.EPSILON;

/** Both agree to so many roundings of `scale`. */
function expectNear(a: number, b: number, scale: number, ulps = 8): void {
  expect(Math.abs(a - b)).toBeLessThanOrEqual(ulps * ULP * Math.abs(scale));
}

/** Holds for every radius, share of it and slope. */
function always(check: (R: number, x: number, m: number, u: number) => void): void {
  fc.assert(fc.property(radius, share, slope, (R, u, m) => check(R, R * u, m, u)));
}

describe("identities", () => {
  it("intersecting chords: x² = h(2R − h) on the near side of the centre, so chord² = 8Rh − 4h²", () =>
    always((R, x) => {
      const h = sagitta(R, x);
      expectNear(h * (2 * R - h), x * x, x * x);
      expect(h).toBeLessThanOrEqual(R);
    }));

  it("conic: (1 + K)h² − 2Rh + x² = 0 with K = −m², on the near branch", () =>
    always((R, x, m) => {
      const h = sagitta(R, x, m);
      const k = 1 - m * m;
      expectNear(k * h * h - 2 * R * h + x * x, 0, Math.abs(k) * h * h + 2 * R * h + x * x);
      // the near root has R − (1 + K)h = √… ≥ 0; the far one has it negative
      expect(R - k * h).toBeGreaterThanOrEqual(-8 * ULP * R);
    }));

  it("a slope may point either way, a distance to either side; slope 0 is the circle", () =>
    always((R, x, m) => {
      expect(sagitta(R, x, -m)).toBe(sagitta(R, x, m));
      expect(sagitta(R, -x, m)).toBe(sagitta(R, x, m));
      expect(sagitta(R, x, 0)).toBe(sagitta(R, x));
    }));

  it("|m| = 1 is a parabola: h = x² / 2R, at any distance", () => {
    fc.assert(
      fc.property(radius, double(1e-6, 50), (R, u) => {
        const parabola = (R * u * u) / 2;
        // (R − x)(R + x) + x² cancels far out, by so many roundings of x²
        expectNear(sagitta(R, R * u, 1), parabola, parabola * (1 + u * u));
      }),
    );
  });

  it("a round trip from R and x, and from x and h where h ≤ x", () =>
    always((R, x, _, u) => {
      expectNear(radiusFromSagitta(x, sagitta(R, x)), R, R);
      const h = x * Math.min(u, 0.999);
      const back = radiusFromSagitta(x, h);
      // near x = R the drop is as steep as x / √(R² − x²), and so is its rounding
      const steep = back / Math.sqrt(Math.max(back * back - x * x, ULP * back * back));
      expectNear(sagitta(back, x), h, x * steep, 16);
    }));
});

describe("order", () => {
  it("rises with x, falls with R and with |m|", () => {
    fc.assert(
      fc.property(radius, share, slope, double(1 + 1e-6, 1e3), (R, u, m, f) => {
        const h = sagitta(R, R * u, m);
        expect(sagitta(R, (R * u) / f, m)).toBeLessThan(h);
        expect(sagitta(R * f, R * u, m)).toBeLessThan(h);
        expect(sagitta(R, R * u, m * f)).toBeLessThanOrEqual(h * (1 + 4 * ULP));
      }),
    );
  });
});

describe("scale", () => {
  it("lengths × 2^k, as far as 1e±200, exactly", () => {
    fc.assert(
      fc.property(radius, share, slope, fc.integer({ min: -660, max: 660 }), (R, u, m, k) => {
        const f = 2 ** k;
        const h = sagitta(R, R * u, m);
        expect(sagitta(R * f, R * u * f, m)).toBe(h * f);
        expect(radiusFromSagitta(R * u * f, h * f)).toBe(radiusFromSagitta(R * u, h) * f);
      }),
    );
  });

  it("sizes far apart: h = x² / 2R and R = x² / 2h to the last digit, wherever they are numbers", () => {
    let cases = 0;
    const exponent = fc.oneof(
      fc.integer({ min: -300, max: 300 }),
      fc.integer({ min: -60, max: 10 }),
    );
    fc.assert(
      fc.property(exponent, fc.integer({ min: 60, max: 1020 }), (a, apart) => {
        const [far, near] = [a + apart, a - apart];
        const isIn = (power: number) => power <= 1023 && power >= -1022;
        if (isIn(far) && isIn(2 * a - far - 1)) {
          cases++;
          expect(sagitta(2 ** far, 2 ** a)).toBe(2 ** (2 * a - far - 1));
        }
        if (near >= -1074 && isIn(2 * a - near - 1)) {
          cases++;
          expect(radiusFromSagitta(2 ** a, 2 ** near)).toBe(2 ** (2 * a - near - 1));
        }
      }),
    );
    expect(cases).toBeGreaterThan(50);
  });

  it("a cone so far out that its radius is nothing: h = x / √(m² − 1)", () => {
    // m = 5/4: m² − 1 = 9/16
    for (const [R, x] of [
      [1, 3e20],
      [1e-100, 3e150],
      [1e-300, 3],
      [1e100, 3e300],
    ] as const) {
      expectNear(sagitta(R, x, 1.25), 4 * (x / 3), x);
      expectNear(sagitta(R, -x, 1.25), 4 * (x / 3), x);
    }
  });

  it("(x² + h²) / 2h at the ends of the range of numbers", () => {
    expect(radiusFromSagitta(2 ** 1000, 2 ** 1000)).toBe(2 ** 1000);
    expect(radiusFromSagitta(2 ** -1000, 2 ** -1000)).toBe(2 ** -1000);
    expect(radiusFromSagitta(2 ** -500, 2 ** -901)).toBe(2 ** -100);
    expect(radiusFromSagitta(2 ** -20, 2 ** -1060)).toBe(2 ** 1019);
    expect(radiusFromSagitta(2 ** 960, 2 ** 899)).toBe(2 ** 1020);
  });
});

describe("limits", () => {
  it("flat drops nothing, nor does x = 0; no drop is flat, whatever its sign", () =>
    always((R, x, m) => {
      expect(sagitta(Infinity, x, m)).toBe(0);
      expect(sagitta(R, 0, m)).toBe(0);
      expect(radiusFromSagitta(x, 0)).toBe(Infinity);
      expect(radiusFromSagitta(x, -0)).toBe(Infinity);
    }));

  it("near the crest: h → x² / 2R, from above, within (x/R)²/2 of it", () => {
    fc.assert(
      fc.property(radius, fc.integer({ min: 1, max: 150 }), (R, k) => {
        const u = 10 ** -k;
        const excess = sagitta(R, R * u) / ((R * u * u) / 2) - 1;
        expect(excess).toBeGreaterThanOrEqual(-4 * ULP);
        expect(excess).toBeLessThanOrEqual((u * u) / 2 + 8 * ULP);
      }),
    );
  });

  it("x = R: h = R on a circle, R / (1 + |m|) on a cone", () =>
    always((R, _, m) => {
      expect(sagitta(R, R)).toBe(R);
      expectNear(sagitta(R, R, m), R / (1 + Math.abs(m)), R);
    }));

  it("x beyond what the surface reaches is refused, just inside is not", () => {
    fc.assert(
      fc.property(radius, slope, double(1e-9, 0.5), (R, m, more) => {
        // √(R² − (1 − m²)x²) is real up to R / √(1 − m²)
        const edge = Math.abs(m) < 1 ? R / Math.sqrt(1 - m * m) : Infinity;
        expect(sagitta(R, Math.min(edge, 9 * R) * (1 - more), m)).toBeGreaterThan(0);
        if (edge < Infinity) expect(() => sagitta(R, edge * (1 + more), m)).toThrow(RangeError);
      }),
    );
    expect(() => sagitta(254, 254 * (1 + ULP))).toThrow(RangeError);
  });

  it("the formula, unchecked, never says NaN", () => {
    expect(sag(10, 11, 0)).toBe(Infinity);
    expect(sag(-5, 3, 0)).toBe(Infinity);
    expect(sag(0, 0, 0)).toBe(Infinity);
    expect(sag(0, 1, 2)).toBe(Infinity);
    expect(sag(Infinity, 3, 0)).toBe(0);
    expect(rootOf(5, 13, 1)).toBe(5);
    expect(rootOf(3, 5, 0)).toBeNaN();
  });
});
