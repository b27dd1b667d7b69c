/**
 * Facts of the trade, common practice, no source: doubles sit at the twelfth fret, holes are laid out by the crossing
 * of the diagonals, and with one stop setting for all holes the doubles at the twelfth decide how deep.
 *
 * On one constant radius, with one dot size and one fill, that is a theorem: a double lies off the centre line and a
 * single on it, so its hole reaches farther out, where more is removed. On a board that widens toward the body, the
 * doubles of a higher fret lie farther out than those of a lower one.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkDesign, type Design, type Hole, type Report } from "../../src/index.js";
import { bit, fill, usualNeck } from "./designs.js";

const SINGLES = [3, 5, 7, 9, 15, 17, 19, 21];

/** A usual neck with singles at the usual frets and doubles at some. */
function marked(design: Design, frets: number, doubles: readonly number[]): Design {
  const diameter = design.markers[0]?.diameter ?? 6.35;
  const singles = SINGLES.filter((fret) => fret <= frets);
  return {
    ...design,
    markers: [
      { frets: singles, diameter },
      { frets: doubles, diameter, arrangement: "double" },
    ],
  };
}

/** Holes by what they need at least, the greatest first. */
function byMin({ holes }: Report): Hole[] {
  return [...holes].sort((a, b) => b.window.min - a.window.min);
}

/** The fret whose hole decides how deep, by the plan where one setting serves all. */
function governing({ holes, stops }: Report): number | undefined {
  return stops.common === null ? undefined : holes[stops.common.minHole]?.fret;
}

/** Holds for every usual neck: the governing fret is the one given; counts where one setting serves all. */
function governs(least: number, most: number, doubles: readonly number[], fret: number): number {
  let common = 0;
  const parts = fc.record({ fill, bit }, { requiredKeys: [] });
  fc.assert(
    fc.property(usualNeck(least, most), parts, ({ design, layout }, shared) => {
      const frets = layout.positions.length;
      const report = checkDesign({ ...marked(design, frets, doubles), ...shared });
      const [first, second, third] = byMin(report);
      expect(first?.fret).toBe(fret);
      expect(second?.fret).toBe(fret);
      expect(first?.window.min).toBe(second?.window.min);
      expect(first?.window.min).toBeGreaterThan(third?.window.min ?? Infinity);
      const governor = governing(report);
      if (governor === undefined) return;
      common++;
      expect(governor).toBe(fret);
    }),
  );
  return common;
}

describe("the doubles decide how deep", () => {
  it("at the twelfth, on one constant radius with up to 23 frets", () => {
    expect(governs(12, 23, [12], 12)).toBeGreaterThan(100);
  });

  it("at the twenty-fourth, where doubles sit there too", () => {
    expect(governs(24, 27, [12, 24], 24)).toBeGreaterThan(100);
  });

  it("on a flat board all holes need the same", () => {
    fc.assert(
      fc.property(usualNeck(24, 24), ({ design }) => {
        const flat = checkDesign({ ...marked(design, 24, [12, 24]), radius: Infinity });
        expect(new Set(flat.holes.map(({ window }) => window.min)).size).toBe(1);
      }),
    );
  });

  it("is no theorem on a compound radius: the higher doubles may lie under a flatter one", () => {
    // 43 to 57 mm wide, 184 to 400 mm of radius, dots of 6.35 mm: at the twelfth a reach of about 16 mm under R 329,
    // at the twenty-fourth about 17 mm under R 400; x²/2R is .39 and .38 mm
    const design: Design = {
      scale: { length: 648, frets: 24 },
      board: { length: 490, width: { nut: 43, end: 57 }, thickness: 6 },
      radius: { nut: 184, end: 400 },
      markers: [],
    };
    const flatter = marked({ ...design, markers: [{ frets: [1], diameter: 6.35 }] }, 24, [12, 24]);
    expect(byMin(checkDesign(flatter))[0]?.fret).toBe(12);
    expect(byMin(checkDesign({ ...flatter, radius: 184 }))[0]?.fret).toBe(24);
  });
});

describe("the crossing of the diagonals", () => {
  it("lies nearer the nut on a board that widens, and between the slots", () => {
    let holes = 0;
    fc.assert(
      fc.property(usualNeck(12, 24), ({ design, layout }) => {
        for (const { fret, along } of checkDesign(design).holes) {
          const [from, to] = [layout.positions[fret - 2] ?? 0, layout.positions[fret - 1] ?? 0];
          holes++;
          expect(along).toBeGreaterThan(from);
          expect(along).toBeLessThan((from + to) / 2);
        }
      }),
    );
    expect(holes).toBeGreaterThan(1000);
  });
});
