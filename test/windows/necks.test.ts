/**
 * Whole necks, all invented, whose windows a builder could work out with a pocket calculator from the rules of
 * docs/formulas.md: the stop counts from the wood, and the tolerances are the four of stop, layout, thickness and sanding.
 */
import { expect, test } from "vitest";
import { checkDesign, type Design } from "../../src/index.js";
import { EXACT } from "../check/necks.js";
import { drop } from "./bench.js";

type Neck = Pick<Design, "radius" | "markers"> & Partial<Design>;

const necks = (scale: object, length: number, width: object, thickness: unknown, rest: Neck) =>
  checkDesign({
    scale,
    tolerance: { ...EXACT, stop: 0.1, layout: 0.25, thickness: 0.1, sanding: 0.05 },
    stop: { from: "wood" },
    ...rest,
    board: { length, width, thickness, ...rest.board },
  } as Design);

test("21 frets over a rod channel, drilled with a twist bit of 7", () => {
  const { holes } = necks({ length: 864, frets: 21 }, 612, { nut: 40, end: 62.5 }, 7.5, {
    board: { channel: { width: 9.5, depth: 1.5, from: 12, to: 560 } } as Design["board"],
    radius: 241.3,
    markers: [
      { frets: [3], diameter: 7 },
      { frets: [12], diameter: 7, arrangement: "double", spread: 26 },
    ],
    bit: { kind: "twist", angle: 118 },
  });
  const [single, double] = holes.map(({ window }) => window);
  const lead = 3.5 / Math.tan((59 * Math.PI) / 180);
  expect(single?.min).toBeCloseTo(0.15 + 0.05 + drop(241.3, 3.75) + 0.8 + 0.1, 12);
  expect(single?.max).toBeCloseTo(7.5 - 1.5 - 0.1 - 0.1 - 1 - lead, 12);
  // the rim comes within 13 − 3.5 − 0.25 of the centre line, 4.5 from the channel
  expect(double?.min).toBeCloseTo(0.2 + drop(241.3, 16.75) + 0.9, 12);
  expect(double?.max).toBeCloseTo(7.5 - 0.2 - 1 - lead, 12);
});

test("22 frets, one radius, epoxy, a brad point, a stop with steps of a quarter", () => {
  const { stops } = necks({ length: 648, frets: 22 }, 481, { nut: 43, end: 57.2 }, 6.2, {
    radius: 305,
    markers: [
      { frets: [3, 5, 7, 9, 15, 17, 19, 21], diameter: 6.35 },
      { frets: [12], diameter: 6.35, arrangement: "double" },
    ],
    bit: { kind: "brad-point", point: 1.6, spur: 0 },
    stop: { from: "wood", step: 0.25 },
  });
  // the double by the diagonals between the slots of frets 11 and 12
  const width = (n: number) => 43 + (14.2 * 648 * (1 - 2 ** (-n / 12))) / 481;
  const rim = (width(11) * width(12)) / (2 * (width(11) + width(12))) + 3.175 + 0.25;
  expect(stops.common?.min).toBeCloseTo(0.2 + drop(305, rim) + 0.9 + 1.6, 9);
  expect(stops.common?.max).toBeCloseTo(6.2 - 0.2 - 1, 12);
  expect(stops.settings.map(({ travel }) => travel)).toEqual([4]);
});

test("18 frets on a blank that tapers: the tip counts at the axis", () => {
  const { holes } = necks(
    { length: 432, frets: 18 },
    288,
    { nut: 36, end: 46 },
    { nut: 4, end: 3.1 },
    {
      radius: 203,
      markers: [{ frets: [15], diameter: 5 }],
      bit: { kind: "brad-point", point: 1.3, spur: 0 },
      web: 0.6,
    },
  );
  const along = holes[0]?.along ?? 0;
  expect(holes[0]?.window.min).toBeCloseTo(0.2 + drop(203, 2.75) + 0.9, 12);
  expect(holes[0]?.window.max).toBeCloseTo(4 - (0.9 * (along + 0.25)) / 288 - 0.2 - 0.6 - 1.3, 12);
});

test("24 frets, solid dots, a compound radius: a conic at the double's rim, hardly more all over it", () => {
  const { holes } = necks({ length: 635, frets: 24 }, 484, { nut: 42.5, end: 57 }, 6.5, {
    radius: { nut: 254, end: 406.4 },
    markers: [{ frets: [12], diameter: 5, arrangement: "double" }],
    fill: { kind: "solid", thickness: 2, keep: 0.5 },
    bit: { kind: "forstner", point: 0.8, spur: 0 },
  });
  const { along, offset, window } = holes[1] as (typeof holes)[number];
  const slope = 152.4 / 484;
  const radius = 254 + slope * along;
  const x = offset + 2.5 + 0.25;
  const conic = x ** 2 / (radius + Math.sqrt(radius ** 2 - (1 - slope ** 2) * x ** 2));
  const least = 0.2 + conic + 0.5 + 0.1;
  expect(window.min).toBeGreaterThan(least);
  expect(window.min).toBeLessThan(least + 0.01);
  expect(window.maxBy).toBe("flush");
});

test("24 fanned frets: a pocket's corners count, off by the layout error, and its mill has no point", () => {
  const scale = { bass: 686, treble: 648, square: 7, frets: 24 };
  const { holes } = necks(scale, 512, { nut: 48, end: 68 }, 6.4, {
    radius: 305,
    markers: [{ frets: [7], shape: { kind: "rectangle", length: 4, width: 18 } }],
  });
  const { offset, window } = holes[0] as (typeof holes)[number];
  expect(window.min).toBeCloseTo(0.2 + drop(305, Math.abs(offset) + 9.25) + 0.9, 9);
  expect(window.max).toBeCloseTo(6.4 - 0.2 - 1, 12);
});
