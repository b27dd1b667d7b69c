/**
 * A compound radius is a cone. The printed conic sag table, and the implicit cone, against `sagitta` with
 * a slope and against `removalAt`.
 */
import fc from "fast-check";
import type { BigNumber } from "mathjs";
import { expect, test } from "vitest";
import type { Design, Profile } from "../../src/design/design.js";
import { removalAt } from "../../src/drilling/parts.js";
import { radiusFromSagitta, sagitta } from "../../src/geometry/sagitta.js";
import { between, forAll } from "./counted.js";
import { big, exactOf } from "./exact.js";
import { expectPrinted, roundedAs } from "./printed.js";

/**
 * "Radii of Curvature and Sagittal Depths of Conic Sections", Int. Contact Lens Clinic 19:76–83 (1992),
 * Table 1, seen in a transcription: R = 7.8 mm, 2x = 1 … 12 mm. K = −slope².
 */
const CONICS = [
  { K: 0, print: ".016 .064 .146 .261 .412 .600 .829 1.104 1.429 1.813 2.269 2.816" },
  { K: -0.2025, print: ".016 .064 .145 .260 .409 .595 .820 1.086 1.340 1.761 2.183 2.673" },
  { K: -1, print: ".016 .064 .144 .256 .401 .577 .785 1.026 1.298 1.603 1.939 2.308" },
] as const;

/** Misprints of that table, by K and 2x, with what should stand there. */
const MISPRINTS = [
  { K: 0, width: 5, print: ".412", correct: ".411" },
  { K: -0.2025, width: 9, print: "1.340", correct: "1.398" },
] as const;

const CELLS = CONICS.flatMap(({ K, print }) =>
  print.split(" ").map((figure, i) => ({ K, width: i + 1, print: figure })),
);

test("the table is whole", () => {
  expect(CELLS.length).toBe(36);
  for (const { K, width, print } of MISPRINTS) {
    expect(CELLS).toContainEqual({ K, width, print });
  }
});

test.each(CELLS.map(({ K, width, print }) => [K, width, print] as const))(
  "R = 7.8, K = %s, 2x = %s: sag %s",
  (K, width, print) => {
    const misprint = MISPRINTS.find((cell) => cell.K === K && cell.width === width);
    for (const sag of [tabled(K, width), tabledRemoval(K, width)]) {
      expectPrinted(sag, misprint?.correct ?? print);
      if (misprint) expect(roundedAs(sag, print)).not.toBe(print.replace(/^\./, "0."));
    }
  },
);

function tabled(K: number, width: number): number {
  return sagitta(7.8, width / 2, Math.sqrt(-K));
}

/** The same sag as the removal at the nut of a small board, whose radius grows by slope · length. */
function tabledRemoval(K: number, width: number): number {
  const length = 100;
  const radius = { nut: 7.8, end: 7.8 + Math.sqrt(-K) * length };
  return removalAt(boardOf(radius, length, 0), 0, -width / 2);
}

// a slope of 1 is the parabola x²/(2R); steeper cones are cut in hyperbolas
const CONE = fc.record({
  radius: between(50, 2000),
  slope: fc.oneof(between(1e-4, 0.5), between(-0.5, -1e-4), between(0.5, 2)),
  x: fc.oneof({ weight: 9, arbitrary: between(-40, 40) }, fc.constant(0)),
});

test("sagitta with a slope meets the implicit cone", () => {
  forAll(CONE, ({ radius, slope, x }) => {
    const expected = dropOnCone(exactOf(radius), exactOf(slope), x);
    expect(Math.abs(sagitta(radius, x, slope) - expected)).toBeLessThan(1e-9);
  });
});

const COMPOUND = fc
  .record({
    nut: between(120, 800),
    far: between(120, 800),
    station: fc.constantFrom("end", "fret12"),
    length: between(400, 560),
    share: between(0, 1),
    offset: between(-32, 32),
    sanding: between(0.01, 0.5),
  })
  // without a slope there is no apex; and the radius must reach the edge where the last piece extends
  .filter(({ nut, far }) => Math.abs(nut - far) > 1e-3 && nut + (far - nut) * 2 > 60);

test("removalAt on compound-radius designs meets the implicit cone", () => {
  forAll(COMPOUND, ({ nut, far, station, length, share, offset, sanding }) => {
    const design = boardOf({ nut, [station]: far }, length, sanding);
    const along = share * length;
    // fret 12 lies at half the scale length, exactly
    const run = exactOf(station === "end" ? length : SCALE / 2);
    const slope = exactOf(far).minus(exactOf(nut)).div(run);
    const radius = exactOf(nut).plus(slope.times(exactOf(along)));
    const expected = sanding + dropOnCone(radius, slope, offset);
    expect(Math.abs(removalAt(design, along, offset) - expected)).toBeLessThan(1e-9);
  });
});

test("the radius is what a gauge reads square to the board, not the distance to the axis", () => {
  // a slope of 0.32: the distance to the axis is R cos α, and 1/cos α = 1.05
  const [radius, slope] = [254, 0.32];
  const narrow = sagitta(radius, 0.01, slope);
  expect(radiusFromSagitta(0.01, narrow)).toBeCloseTo(radius, 4);
  const cosine = 1 / Math.hypot(1, slope);
  const other = dropOnCone(exactOf(radius / cosine), exactOf(slope), 20);
  const ratio = sagitta(radius, 20, slope) / other;
  expect(ratio).toBeGreaterThan(1.04);
  expect(ratio).toBeLessThan(1.06);
});

const SCALE = 648;

/** A board wide enough for every offset here; its shape does not matter. */
function boardOf(radius: Profile, length: number, sanding: number): Design {
  const width = length > 100 ? 60 : 12;
  return {
    scale: { length: SCALE, frets: 12 },
    board: { length, width, thickness: 6 },
    radius,
    sanding,
    markers: [],
  };
}

/**
 * Drop at `x` on the implicit cone (VP·d)² = |VP|² cos² α, by bisection at 64 digits.
 *
 * The crest line is a generator. Axes: along the board, across it, downward; P = (0, x, h). At the distance
 * ℓ from the apex, the section square to the generator has the radius of curvature ℓ tan α at the crest:
 * so tan α = |slope| and ℓ = R / tan α. The apex lies where the radius shrinks to nothing: toward
 * the nut where the slope is positive, toward the body where it is negative. The axis dips by α.
 */
function dropOnCone(radius: BigNumber, slope: BigNumber, x: number): number {
  const toward = slope.isPositive() ? 1 : -1;
  const tangent = slope.abs();
  const cosine = big(1).div(tangent.pow(2).plus(1).sqrt());
  const sine = tangent.times(cosine);
  const apex = radius.div(tangent).times(-toward);
  const across = exactOf(x);
  // positive inside the cone, negative outside
  const inside = (h: BigNumber) => {
    const [along, aside, down] = [apex.neg(), across, h];
    const dot = along.times(cosine.times(toward)).plus(down.times(sine));
    const square = along.pow(2).plus(aside.pow(2)).plus(down.pow(2));
    return dot.pow(2).minus(square.times(cosine.pow(2)));
  };
  // the crest's own height lies outside, the axis straight below the crest inside
  return rootBetween(inside, big(0), radius).toNumber();
}

/** The root of a function that is not above 0 at `low` (but for its rounding) and above it at `high`, to 1e-15 mm. */
function rootBetween(f: (h: BigNumber) => BigNumber, low: BigNumber, high: BigNumber): BigNumber {
  let [below, above] = [low, high];
  expect(f(below).toNumber()).toBeLessThan(1e-40);
  expect(f(above).toNumber()).toBeGreaterThan(0);
  while (above.minus(below).gt("1e-15")) {
    const middle = below.plus(above).div(2);
    if (f(middle).isPositive()) above = middle;
    else below = middle;
  }
  return below;
}
