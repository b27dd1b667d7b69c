/** The sagitta's identities, its branch, its limits and its scale. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { rootOf, sag } from "../../src/geometry/sagitta.js";
import { radiusFromSagitta, sagitta } from "../../src/index.js";

const radius = fc.oneof(
  fc.double({ min: 1e-3, max: 1e6, noNaN: true }),
  fc.double({ min: 100, max: 600, noNaN: true }),
);
/** How far out x lies, as a share of the radius. */
const share = fc.oneof(
  fc.double({ min: 1e-6, max: 1, noNaN: true }),
  fc.double({ min: 0.01, max: 0.3, noNaN: true }),
);
/** Slopes of a radius along the board. */
const slope = fc.oneof(
  fc.double({ min: -0.4, max: 0.4, noNaN: true }),
  fc.double({ min: -3, max: 3, noNaN: true }),
);
const ULP = Number.EPSILON;

/** Both agree to `ulps` roundings of `scale`. */
function near(a: number, b: number, scale: number, ulps = 8): boolean {
  return Math.abs(a - b) <= ulps * ULP * Math.abs(scale);
}

/** As far as a cone's cross-section reaches: √(R² − (1 − m²)x²) is real up to R / √(1 − m²). */
function reach(R: number, m: number): number {
  return Math.abs(m) < 1 ? R / Math.sqrt(1 - m * m) : Infinity;
}

describe("identities", () => {
  it("intersecting chords: x² = h(2R − h), on the near side of the centre", () => {
    fc.assert(
      fc.property(radius, share, (R, u) => {
        const x = R * u;
        const h = sagitta(R, x);
        // the other root, 2R − h, satisfies the theorem too
        return near(h * (2 * R - h), x * x, x * x) && h <= R;
      }),
    );
  });

  it("chord² = 8Rh − 4h², with chord = 2x", () => {
    fc.assert(
      fc.property(radius, share, (R, u) => {
        const chord = 2 * R * u;
        const h = sagitta(R, chord / 2);
        return near(8 * R * h - 4 * h * h, chord * chord, chord * chord, 16);
      }),
    );
  });

  it("conic: (1 + K)h² − 2Rh + x² = 0 with K = −m², on the near branch", () => {
    fc.assert(
      fc.property(radius, share, slope, (R, u, m) => {
        const x = R * u;
        const h = sagitta(R, x, m);
        const K = -m * m;
        const terms = Math.abs(1 + K) * h * h + 2 * R * h + x * x;
        // the near root has R − (1 + K)h = √… ≥ 0; the far one has it negative
        const branch = R - (1 + K) * h >= -8 * ULP * R;
        return near((1 + K) * h * h - 2 * R * h + x * x, 0, terms) && branch;
      }),
    );
  });

  it("a cone's slope may point either way, and slope 0 is the circle", () => {
    fc.assert(
      fc.property(radius, share, slope, (R, u, m) => {
        const x = R * u;
        expect(sagitta(R, x, -m)).toBe(sagitta(R, x, m));
        expect(sagitta(R, -x, m)).toBe(sagitta(R, x, m));
        expect(sagitta(R, x, 0)).toBe(sagitta(R, x));
      }),
    );
  });

  it("|m| = 1 is a parabola: h = x² / 2R, at any distance", () => {
    fc.assert(
      fc.property(radius, fc.double({ min: 1e-6, max: 50, noNaN: true }), (R, u) => {
        const x = R * u;
        // (R − x)(R + x) + x² cancels far out, by so many roundings of x²
        const parabola = (x * x) / (2 * R);
        return near(sagitta(R, x, 1), parabola, parabola * (1 + u * u));
      }),
    );
  });
});

describe("the branch, pinned from outside", () => {
  it("r = 60, h = 8: chord 59.86 (Machinery's Handbook, 31st ed., p. 79, seen)", () => {
    // the print truncates; the far root would give 112
    expect(sagitta(60, 59.86652 / 2).toFixed(4)).toBe("8.0000");
  });

  it("chord 16, h = 6: r = 8 1/3 (the same page, seen)", () => {
    expect(radiusFromSagitta(8, 6).toFixed(12)).toBe("8.333333333333");
    expect(sagitta(8 + 1 / 3, 8).toFixed(12)).toBe("6.000000000000");
  });

  it("R = 7.8, K = −.2025: the conic's table (Int. Contact Lens Clinic 19:76–83, Table 1, seen in a transcription)", () => {
    const printed = [".016", ".064", ".145", ".260", ".409", ".595", ".820", "1.086"];
    const computed = printed.map((_, i) => sagitta(7.8, (i + 1) / 2, 0.45).toFixed(3));
    expect(computed.map((text) => text.replace(/^0/, ""))).toEqual(printed);
  });

  it("a shallow h comes back as a large radius, not as its far root", () => {
    fc.assert(
      fc.property(radius, share, (R, u) => {
        const x = R * u;
        const h = sagitta(R, x);
        return near(radiusFromSagitta(x, h), R, R) && near(radiusFromSagitta(-x, h), R, R);
      }),
    );
  });

  it("a round trip from x and h: h ≤ x lies on the near side", () => {
    const drop = fc.double({ min: 1e-6, max: 0.999, noNaN: true });
    fc.assert(
      fc.property(radius, drop, (x, u) => {
        const h = x * u;
        const R = radiusFromSagitta(x, h);
        // near x = R the drop is as steep as x / √(R² − x²), and so is its rounding
        const steep = R / Math.sqrt(Math.max(R * R - x * x, ULP * R * R));
        return near(sagitta(R, x), h, x * steep, 16);
      }),
    );
  });
});

describe("order", () => {
  it("rises with x", () => {
    fc.assert(
      fc.property(radius, share, share, slope, (R, a, b, m) => {
        const [near, far] = [R * Math.min(a, b), R * Math.max(a, b)];
        const [h, more] = [sagitta(R, near, m), sagitta(R, far, m)];
        if (far > near * (1 + 1e-9)) expect(more).toBeGreaterThan(h);
        expect(more).toBeGreaterThanOrEqual(h * (1 - 4 * ULP));
      }),
    );
  });

  it("falls with R", () => {
    const factor = fc.double({ min: 1, max: 1e3, noNaN: true });
    fc.assert(
      fc.property(radius, share, slope, factor, (R, u, m, f) => {
        const x = R * u;
        const flatter = sagitta(R * f, x, m);
        if (f > 1 + 1e-9) expect(flatter).toBeLessThan(sagitta(R, x, m));
        expect(flatter).toBeLessThanOrEqual(sagitta(R, x, m) * (1 + 4 * ULP));
      }),
    );
  });

  it("falls with |m|: a steeper cone's section opens wider", () => {
    fc.assert(
      fc.property(radius, share, slope, slope, (R, u, a, b) => {
        const x = R * u;
        const [less, more] = [
          Math.min(Math.abs(a), Math.abs(b)),
          Math.max(Math.abs(a), Math.abs(b)),
        ];
        expect(sagitta(R, x, more)).toBeLessThanOrEqual(sagitta(R, x, less) * (1 + 4 * ULP));
      }),
    );
  });
});

describe("scale", () => {
  const inside = fc.double({ min: 1e-6, max: 0.95, noNaN: true });

  it("lengths × 10^k, k from −9 to 9", () => {
    fc.assert(
      fc.property(radius, inside, slope, fc.integer({ min: -9, max: 9 }), (R, u, m, k) => {
        const f = 10 ** k;
        const h = sagitta(R, R * u, m) * f;
        expect(near(sagitta(R * f, R * u * f, m), h, h, 64)).toBe(true);
        expect(
          near(radiusFromSagitta(R * u * f, h), radiusFromSagitta(R * u, h / f) * f, R * f),
        ).toBe(true);
      }),
    );
  });

  it("lengths × 2^k, as far as 1e±200, exactly", () => {
    const power = fc.integer({ min: -660, max: 660 });
    let extreme = 0;
    fc.assert(
      fc.property(radius, share, slope, power, (R, u, m, k) => {
        const f = 2 ** k;
        if (Math.abs(k) > 500) extreme++;
        const h = sagitta(R, R * u, m);
        expect(sagitta(R * f, R * u * f, m)).toBe(h * f);
        expect(radiusFromSagitta(R * u * f, h * f)).toBe(radiusFromSagitta(R * u, h) * f);
      }),
    );
    expect(extreme).toBeGreaterThan(10);
  });
});

describe("far apart sizes", () => {
  const exponent = fc.oneof(fc.integer({ min: -300, max: 300 }), fc.integer({ min: -60, max: 10 }));
  const shallow = fc.oneof(
    fc.integer({ min: 60, max: 1074 }),
    fc.integer({ min: 1000, max: 1074 }),
  );

  it("a radius far greater than x: h = x² / 2R to the last digit, wherever that is a number", () => {
    let cases = 0;
    fc.assert(
      fc.property(exponent, fc.integer({ min: 60, max: 1020 }), (a, more) => {
        const b = a + more;
        const power = 2 * a - b - 1;
        if (b > 1023 || power < -1022) return;
        cases++;
        expect(sagitta(2 ** b, 2 ** a)).toBe(2 ** power);
      }),
    );
    expect(cases).toBeGreaterThan(50);
  });

  it("a drop far smaller than x: R = x² / 2h to the last digit, wherever that is a number", () => {
    let cases = 0;
    fc.assert(
      fc.property(exponent, shallow, (a, less) => {
        const b = a - less;
        const power = 2 * a - b - 1;
        if (b < -1074 || power > 1023 || power < -1022) return;
        cases++;
        expect(radiusFromSagitta(2 ** a, 2 ** b)).toBe(2 ** power);
      }),
    );
    expect(cases).toBeGreaterThan(50);
  });
});

describe("limits", () => {
  it("flat: R = ∞ drops nothing, and no drop is flat", () => {
    fc.assert(
      fc.property(fc.double({ min: -1e300, max: 1e300, noNaN: true }), slope, (x, m) => {
        expect(sagitta(Infinity, x, m)).toBe(0);
        if (x !== 0) expect(radiusFromSagitta(x, 0)).toBe(Infinity);
        if (x !== 0) expect(radiusFromSagitta(x, -0)).toBe(Infinity);
      }),
    );
  });

  it("R → ∞ and x → 0: h → x² / 2R, from above, within (x/R)²/2 of it", () => {
    const little = fc.integer({ min: 1, max: 150 }).map((k) => 10 ** -k);
    fc.assert(
      fc.property(radius, little, (R, u) => {
        const x = R * u;
        const first = (x * x) / (2 * R);
        const excess = sagitta(R, x) / first - 1;
        expect(excess).toBeGreaterThanOrEqual(-4 * ULP);
        expect(excess).toBeLessThanOrEqual((u * u) / 2 + 8 * ULP);
      }),
    );
  });

  it("x = 0 drops nothing", () => {
    fc.assert(
      fc.property(radius, slope, (R, m) => {
        expect(sagitta(R, 0, m)).toBe(0);
        expect(sagitta(R, -0, m)).toBe(0);
      }),
    );
  });

  it("x = R: h = R on a circle, R / (1 + |m|) on a cone", () => {
    fc.assert(
      fc.property(radius, slope, (R, m) => {
        expect(sagitta(R, R)).toBe(R);
        const h = R / (1 + Math.abs(m));
        return near(sagitta(R, R, m), h, h);
      }),
    );
  });

  it("x beyond what the surface reaches is refused, just inside is not", () => {
    fc.assert(
      fc.property(radius, slope, fc.double({ min: 1e-9, max: 9, noNaN: true }), (R, m, more) => {
        const edge = reach(R, m);
        if (edge === Infinity) {
          expect(sagitta(R, R * (1 + more), m)).toBeGreaterThan(0);
          return;
        }
        expect(() => sagitta(R, edge * (1 + more), m)).toThrow(RangeError);
        expect(() => sagitta(R, -edge * (1 + more), m)).toThrow(RangeError);
        expect(sagitta(R, edge * (1 - Math.min(more, 0.5)), m)).toBeGreaterThan(0);
      }),
    );
  });

  it("the very next number beyond R is refused", () => {
    fc.assert(
      fc.property(fc.integer({ min: 1, max: 2 ** 40 }), (R) => {
        expect(() => sagitta(R, R * (1 + ULP))).toThrow(RangeError);
      }),
    );
  });
});

describe("at the ends of the range of numbers", () => {
  it("(x² + h²) / 2h, where it is a number and x² is not", () => {
    // x = h = R; x ≫ h: x² / 2h
    expect(radiusFromSagitta(2 ** 1000, 2 ** 1000)).toBe(2 ** 1000);
    expect(radiusFromSagitta(2 ** 930, 2 ** 890)).toBe(2 ** 969);
    expect(radiusFromSagitta(2 ** -1000, 2 ** -1000)).toBe(2 ** -1000);
    expect(radiusFromSagitta(2 ** -500, 2 ** -901)).toBe(2 ** -100);
  });

  it("the formula, unchecked, never says NaN", () => {
    expect(sag(10, 11, 0)).toBe(Infinity);
    expect(sag(-5, 3, 0)).toBe(Infinity);
    expect(sag(0, 0, 0)).toBe(Infinity);
    expect(sag(0, 1, 2)).toBe(Infinity);
    expect(sag(Infinity, 3, 0)).toBe(0);
    expect(rootOf(5, 3, 0)).toBe(4);
    expect(rootOf(5, 13, 1)).toBe(5);
    expect(rootOf(3, 5, 0)).toBeNaN();
  });
});

describe("misuse", () => {
  it("no number that only looks like one", () => {
    for (const value of ["254", 254n, [254], new Number(254), true]) {
      expect(() => sagitta(value as never, 1)).toThrow(RangeError);
      expect(() => sagitta(254, value as never)).toThrow(RangeError);
      expect(() => sagitta(254, 1, value as never)).toThrow(RangeError);
      expect(() => radiusFromSagitta(value as never, 1)).toThrow(RangeError);
      expect(() => radiusFromSagitta(1, value as never)).toThrow(RangeError);
    }
  });

  const bad = [Number.NaN, Infinity, -Infinity];

  it.each([Number.NaN, 0, -0, -1, -254, -Infinity])("radius %s is refused", (R) => {
    expect(() => sagitta(R, 1)).toThrow(RangeError);
    expect(() => sagitta(R, 0)).toThrow(RangeError);
  });

  it.each(bad)("x, slope or h of %s is refused", (value) => {
    expect(() => sagitta(254, value)).toThrow(RangeError);
    expect(() => sagitta(Infinity, value)).toThrow(RangeError);
    expect(() => sagitta(254, 1, value)).toThrow(RangeError);
    expect(() => radiusFromSagitta(value, 1)).toThrow(RangeError);
    expect(() => radiusFromSagitta(1, value)).toThrow(RangeError);
  });

  it("a negative drop, and no drop at no distance, are refused", () => {
    expect(() => radiusFromSagitta(1, -1e-9)).toThrow(RangeError);
    expect(() => radiusFromSagitta(0, 0)).toThrow(RangeError);
  });
});
