/** Chances that can be counted by hand, and printed ones. All necks are invented. */
import { expect, test } from "vitest";
import { conformanceProbability } from "../../src/chance/index.js";
import type { Design, MarkerGroup, Tolerances } from "../../src/index.js";

const NOTHING = {
  stop: 0,
  point: 0,
  seat: 0,
  layout: 0,
  thickness: 0,
  sanding: 0,
  crest: 0,
  fill: 0,
} as const;

/** A flat board on which a hole holds from a travel of 2 on: sanding 0.2, keep 0.8, point 1; nothing is off but what is said. */
function flat(tolerance: Tolerances, holes = 1, rest: Partial<Design> = {}): Design {
  return {
    scale: { length: 648, frets: 22 },
    board: { length: 482, width: 50, thickness: 60 },
    radius: "flat",
    sanding: 0.2,
    fill: { kind: "poured", keep: 0.8 },
    bit: { kind: "forstner", point: 1, spur: 0.5 },
    web: 1,
    markers: [dots(holes)],
    tolerance: { ...NOTHING, ...tolerance },
    ...rest,
  };
}

function dots(count: number): MarkerGroup {
  const places = Array.from({ length: count }, (_, i) => ({ along: 60 + 40 * i, offset: 0 }));
  return { places, diameter: 6 };
}

function failing(design: Design, travels: number): number {
  const { fails, holds, numericalError } = conformanceProbability(design, { travels });
  expect(holds).toBe(1 - fails);
  expect(numericalError).toBeLessThan(1e-6);
  return fails;
}

/** Φ(−5) and Φ(−7.5), computed at 50 digits. */
const FIVE = 2.866516e-7;
const SEVEN = 3.190892e-14;
const normal = (limit: number, coverage = 1) => ({ limit, shape: "normal", coverage }) as const;
const triangular = (limit: number) => ({ limit, shape: "triangular" }) as const;

// each: what is off, the slack of the keep, how many holes, and the chance that not all hold
test.each<[string, Tolerances, number, number, number]>([
  ["one stop error, half of its lower half short", { stop: 0.1 }, 0.05, 1, 1 / 4],
  ["two holes that share it", { stop: 0.1 }, 0.05, 2, 1 / 4],
  ["two holes that do not", { stop: { limit: 0.1, per: "hole" } }, 0.05, 2, 1 - (3 / 4) ** 2],
  ["five holes that do not", { stop: { limit: 0.1, per: "hole" } }, 0.05, 5, 1 - (3 / 4) ** 5],
  ["a triangular one", { stop: triangular(0.1) }, 0.05, 1, 1 / 8],
  ["stop and point, a triangle together", { stop: 0.1, point: 0.1 }, 0.1, 3, 1 / 8],
  ["a clamp of the sanding at 0, above it", { sanding: 0.4 }, 0.1, 1, 0.3 / 0.8],
  ["the sanding at 0 as often as a quarter of all", { sanding: 0.4 }, -0.2, 1, 3 / 4],
  ["below the clamp no sanding helps", { sanding: 0.4 }, -0.2 - 1e-6, 1, 1],
  ["five sigma", { stop: normal(0.1) }, 0.5, 1, FIVE],
  ["a limit of two sigma", { stop: normal(0.2, 2) }, 0.5, 1, FIVE],
  [
    "five sigma of three normals",
    { stop: normal(0.2), point: normal(0.3), sanding: normal(0.6) },
    3.5,
    4,
    FIVE,
  ],
  ["seven and a half", { stop: normal(0.1) }, 0.75, 1, SEVEN],
  ["two holes of five sigma each", { stop: { ...normal(0.1), per: "hole" } }, 0.5, 2, 2 * FIVE],
])("%s", (_, tolerance, slack, count, chance) => {
  // sanding may have no more than 0.2 taken off it, where it is not what the case is about
  const sanding =
    tolerance.sanding !== undefined && typeof tolerance.sanding === "object" ? 20 : 0.2;
  const fails = failing(flat(tolerance, count, { sanding }), 1.8 + sanding + slack);
  expect(Math.abs(fails - chance)).toBeLessThan(Math.min(1e-6, 1e-3 * chance));
});

test("JCGM 101:2008 9.2.3: four equal rectangular inputs of standard deviation 1", () => {
  // stop, point, sanding and seat, ±√3 each; 95 % lie within ±3.88 (from memory), which is 2√3(2 − (3/5)^¼)
  const limit = Math.sqrt(3);
  const slack = 2 * limit * (2 - 0.6 ** 0.25);
  expect(slack.toFixed(2)).toBe("3.88");
  const tolerance = { stop: limit, point: limit, sanding: limit, seat: limit };
  const rest: Partial<Design> = {
    sanding: 5,
    bit: { kind: "forstner", point: 4, spur: 0.5 },
    stop: { from: "table", height: 60 },
  };
  const fails = failing(flat(tolerance, 1, rest), 5 + 0.8 + 4 + slack);
  expect(Math.abs(fails - 0.025)).toBeLessThan(1e-6);
});

// a hole of 6 at 16 from the centre line under radius 254; its far rim lies at 19, off by 0.1 at the most for it to hold
test.each([
  ["a disc", 0.25, (Math.acos(0.4) - 0.4 * Math.sqrt(0.84)) / Math.PI],
  [
    "a cone",
    triangular(0.25),
    (Math.acos(0.4) - 0.8 * Math.sqrt(0.84) + 0.064 * Math.acosh(2.5)) / Math.PI,
  ],
  ["a normal", normal(0.05), 0.02275013194817921],
  ["a crest aside", undefined, 0.3],
] as const)("%s of places", (_, layout, chance) => {
  const tolerance = layout === undefined ? { crest: 0.25 } : { layout };
  const design: Design = {
    ...flat(tolerance),
    radius: 254,
    markers: [{ places: [{ along: 100, offset: 16 }], diameter: 6 }],
  };
  const fails = failing(design, 2 + 254 - Math.sqrt(254 ** 2 - 19.1 ** 2));
  expect(Math.abs(fails - chance)).toBeLessThan(1e-6);
});

// from memory: JCGM 106:2012 7.3 has a Zener diode of −5.47 V, standard uncertainty 0.05 V, that may not exceed −5.40 V;
// 7.4 an oil of 13.6 mm²/s, standard uncertainty 1.8, that is to lie from 12.5 to 16.3. Here a volt is a millimetre, and
// a mm²/s a tenth of one: the floor leaves the keep, and on the other side the web, with so much to spare
test.each([
  ["7.3, one limit", 0.05, 0.07, 60, 0.92],
  ["7.4, two limits", 0.18, 0.11, 2 + 0.38 + 1, 0.66],
] as const)("JCGM 106:2012 %s", (_, sigma, slack, thickness, printed) => {
  const design = flat({ stop: normal(sigma) }, 1, { board: { ...flat({}).board, thickness } });
  const { holds, byHole } = conformanceProbability(design, { travels: 2 + slack });
  expect(holds.toFixed(2)).toBe(printed.toFixed(2));
  expect(byHole[0]).toBeCloseTo(1 - holds, 9);
});

test("too high and too low at once, on a board that is too thin", () => {
  // stop u and thickness τ lie anywhere in a square of 0.4; the keep asks u ≥ 0, the web τ ≥ u + 0.1
  const board = { ...flat({}).board, thickness: 2.9 };
  const design = flat({ stop: 0.2, thickness: 0.2 }, 2, { board });
  const { fails, byRule, byHole } = conformanceProbability(design, { travels: 2 });
  expect(byRule.keep).toBeCloseTo(1 / 2, 6);
  // what holds are right triangles, of sides 0.3 and 0.1
  expect(byRule.web).toBeCloseTo(1 - 0.3 ** 2 / 2 / 0.4 ** 2, 6);
  const either = 1 - 0.1 ** 2 / 2 / 0.4 ** 2;
  expect(fails).toBeCloseTo(either, 6);
  for (const own of byHole) expect(own).toBeCloseTo(either, 6);
});

test("the same where each hole has a stop error of its own", () => {
  const board = { ...flat({}).board, thickness: 2.9 };
  const design = flat({ stop: { limit: 0.2, per: "hole" }, thickness: 0.2 }, 2, { board });
  const { fails, byHole } = conformanceProbability(design, { travels: 2 });
  for (const own of byHole) expect(own).toBeCloseTo(1 - 0.1 ** 2 / 2 / 0.4 ** 2, 6);
  // given τ from 0.1 up each holds with the chance (τ − 0.1) / 0.4: both with the mean of its square, 0.1³ / 3 / 0.4³
  expect(Math.abs(fails - (1 - 0.1 ** 3 / 3 / 0.4 ** 3))).toBeLessThan(1e-4);
});

test.each(["setting", "hole"] as const)(
  "a solid dot too thin at one end and too low at the other, a stop error of each %s",
  (per) => {
    // 0.85 thick, of which 0.8 is to be kept: it holds where 0 ≤ u ≤ 0.05 + φ, u the stop's error and φ the dot's
    const fill = { kind: "solid", thickness: 0.85, keep: 0.8 } as const;
    const design = flat({ stop: { limit: 0.2, per }, fill: 0.1 }, 1, { fill });
    const { fails, byRule, byHole } = conformanceProbability(design, { travels: 2 });
    expect(byRule.keep).toBeCloseTo(1 / 2, 6);
    expect(byRule.flush).toBeCloseTo(1 / 2 - 0.05 / 0.4, 6);
    // of the rectangle 0.4 by 0.2 a right triangle of side 0.15 holds
    expect(fails).toBeCloseTo(1 - 0.15 ** 2 / 2 / 0.08, 6);
    expect(byHole[0]).toBeCloseTo(fails, 6);
  },
);
