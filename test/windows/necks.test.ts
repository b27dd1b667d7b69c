/**
 * Whole necks, all invented, whose windows a builder could work out with a pocket calculator from the rules of
 * docs/formulas.md: the stop counts from the wood, and the tolerances are the four of stop, layout, thickness and sanding.
 */
import { describe, expect, test } from "vitest";
import { checkDesign, type Design, type Hole } from "../../src/index.js";
import { EXACT } from "../check/necks.js";
import { drop } from "./bench.js";

const tolerance = { ...EXACT, stop: 0.1, layout: 0.25, thickness: 0.1, sanding: 0.05 };
const FRETS = [3, 5, 7, 9, 15, 17, 19, 21];

function hole(design: Design, fret: number, side = "centre"): Hole {
  const found = checkDesign(design).holes.find((each) => each.fret === fret && each.side === side);
  if (found === undefined) throw new Error("no such hole");
  return found;
}

/** The offset of a double at fret 12, by the diagonals of the trapezoid between its slots. */
function doubleOffset(length: number, board: number, nut: number, end: number): number {
  const width = (n: number) => nut + ((end - nut) * length * (1 - 2 ** (-n / 12))) / board;
  return (width(11) * width(12)) / (2 * (width(11) + width(12)));
}

describe("24 frets, solid dots, a compound radius, fall-away", () => {
  const neck: Design = {
    scale: { length: 635, frets: 24 },
    board: { length: 484, width: { nut: 42.5, end: 57 }, thickness: 6.5 },
    radius: { nut: 254, end: 406.4 },
    sanding: { nut: 0.15, fret14: 0.15, end: 0.5 },
    markers: [
      { frets: FRETS, diameter: 6 },
      { frets: [12, 24], diameter: 5, arrangement: "double" },
    ],
    fill: { kind: "solid", thickness: 2, keep: 0.5 },
    bit: { kind: "forstner", point: 0.8, spur: 0 },
    stop: { from: "wood", step: 0.1 },
    tolerance,
  };

  test("the double at 12: a conic at its rim, hardly more over the whole of it", () => {
    const { window, along, offset } = hole(neck, 12, "treble");
    expect(offset).toBeCloseTo(doubleOffset(635, 484, 42.5, 57), 9);
    const slope = 152.4 / 484;
    const radius = 254 + slope * along;
    const x = offset + 2.5 + 0.25;
    const conic = x ** 2 / (radius + Math.sqrt(radius ** 2 - (1 - slope ** 2) * x ** 2));
    const least = 0.15 + 0.05 + conic + 0.5 + 0.1;
    expect(window.min - least).toBeGreaterThan(0);
    expect(window.min - least).toBeLessThan(0.01);
  });

  test("what governs the most, and the step of the stop", () => {
    const { window } = hole(neck, 3);
    // flush: the dot, and 0.15 less 0.05 sanded off it; the wood: 6.5 less 0.8, 1 and the errors
    expect(window).toMatchObject({ max: 2 + 0.15 - 0.05 - 0.1, maxBy: "flush" });
    expect(checkDesign(neck).stops.settings.map(({ travel }) => travel)).toEqual([2.5]);
  });
});

test("21 frets over a rod channel, drilled with a twist bit of 7", () => {
  const neck: Design = {
    scale: { length: 864, frets: 21 },
    board: {
      length: 612,
      width: { nut: 40, end: 62.5 },
      thickness: 7.5,
      channel: { width: 9.5, depth: 1.5, from: 12, to: 560 },
    },
    radius: 241.3,
    markers: [
      { frets: [3, 5], diameter: 7 },
      { frets: [12], diameter: 7, arrangement: "double", spread: 26 },
    ],
    bit: { kind: "twist", angle: 118 },
    depth: 2.9,
    tolerance,
  };
  const lead = 3.5 / Math.tan((59 * Math.PI) / 180);
  const { window, planned } = hole(neck, 3);
  expect(window.min).toBeCloseTo(0.15 + 0.05 + drop(241.3, 3.75) + 0.8 + 0.1, 12);
  expect(window.max).toBeCloseTo(7.5 - 1.5 - 0.1 - 0.1 - 1 - lead, 12);
  expect(planned?.woodLeft.toFixed(2)).toBe("0.80");
  // the rim comes within 13 − 3.5 − 0.25 of the centre line, 4.5 from the channel
  const double = hole(neck, 12, "bass").window;
  expect(double.min).toBeCloseTo(0.2 + drop(241.3, 16.75) + 0.9, 12);
  expect(double.max).toBeCloseTo(7.5 - 0.2 - 1 - lead, 12);
});

test("22 frets, one radius, epoxy, a brad point", () => {
  const neck: Design = {
    scale: { length: 648, frets: 22 },
    board: { length: 481, width: { nut: 43, end: 57.2 }, thickness: 6.2 },
    radius: 305,
    sanding: 0.15,
    markers: [
      { frets: FRETS, diameter: 6.35 },
      { frets: [12], diameter: 6.35, arrangement: "double" },
    ],
    fill: { kind: "poured" },
    bit: { kind: "brad-point", point: 1.6, spur: 0 },
    stop: { from: "wood", step: 0.25 },
    tolerance,
  };
  const rim = doubleOffset(648, 481, 43, 57.2) + 3.175 + 0.25;
  const { common, settings } = checkDesign(neck).stops;
  expect(common?.min).toBeCloseTo(0.2 + drop(305, rim) + 0.9 + 1.6, 9);
  expect(common?.max).toBeCloseTo(6.2 - 0.2 - 1, 12);
  expect(settings.map(({ travel }) => travel)).toEqual([4]);
});

test("18 frets on a blank that tapers: the tip counts at the axis", () => {
  const neck: Design = {
    scale: { length: 432, frets: 18 },
    board: { length: 288, width: { nut: 36, end: 46 }, thickness: { nut: 4, end: 3.1 } },
    radius: 203,
    sanding: 0.1,
    markers: [{ frets: [5, 7, 10, 15], diameter: 5 }],
    fill: { kind: "poured", keep: 0.6 },
    bit: { kind: "brad-point", point: 1.3, spur: 0 },
    stop: { from: "wood" },
    web: 0.6,
    tolerance: { ...EXACT, stop: 0.05, layout: 0.2, thickness: 0.05, sanding: 0.05 },
  };
  const { window, along } = hole(neck, 15);
  expect(window.min).toBeCloseTo(0.15 + drop(203, 2.7) + 0.65, 12);
  expect(window.max).toBeCloseTo(4 - (0.9 * (along + 0.2)) / 288 - 0.1 - 0.6 - 1.3, 12);
});

test("24 fanned frets: a pocket's corners count, its mill has no point", () => {
  const neck: Design = {
    scale: { bass: 686, treble: 648, square: 7, frets: 24 },
    board: { length: 512, width: { nut: 48, end: 68 }, thickness: 6.4 },
    radius: 305,
    markers: [{ frets: FRETS, shape: { kind: "rectangle", length: 4, width: 18 } }],
    fill: { kind: "solid", thickness: 2.2, keep: 0.6 },
    stop: { from: "wood" },
    tolerance,
  };
  const { window, offset } = hole(neck, 7);
  const least = 0.2 + drop(305, Math.abs(offset) + 9.25) + 0.6 + 0.1;
  // every point of the pocket may be off by 0.25
  expect(window.min).toBeCloseTo(least, 9);
  expect(window).toMatchObject({ max: 2.2 + 0.15 - 0.05 - 0.1, maxBy: "flush" });
});
