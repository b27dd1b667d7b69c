/** A swept radius is set anew in place: each row is still the check of its design, to the last bit. */
import { describe, expect, test } from "vitest";
import { type Axes, checkDesign, type Design, frontier, sweep } from "../../src/index.js";
import { PLAIN } from "../check/necks.js";

/** Invented: a fall-away that bends under a hole, a dot on a knot of the radius, a hole that is there already. */
const NECK: Design = {
  ...PLAIN,
  radius: { nut: 254, fret12: 300, end: 406 },
  sanding: { nut: 0.15, fret15: 0.15, end: 0.6 },
  tolerance: { radius: 0.02 },
  markers: [
    { frets: [3, 5, 7, 9, 15, 21], diameter: 6.35 },
    { frets: [12, 13], diameter: 9, arrangement: "double" },
    { places: [{ along: 324, offset: 4 }], diameter: 5 },
    { frets: [17], diameter: 6, drilled: true, depth: 2 },
  ],
};
const AXES: Axes = {
  "tolerance.layout": [0, 0.25],
  "radius.fret12": [200, 300],
  // equal values, a cone that opens or closes, one too tight for the board
  "radius.nut": [25, 200, 300, 500],
  "radius.end": [200, 300, 29.2],
};

function travels(design: Design) {
  try {
    const { common, settings } = checkDesign(design).stops;
    return common ? [common.min, common.max, common.minHole, common.maxHole] : settings.length;
  } catch {
    return "unread";
  }
}

describe("radii at stations", () => {
  const rows = sweep(NECK, AXES);
  const told = Array.from({ length: rows.size }, (_, i) => travels(rows.at(i)));

  test.each(told.map((each, i) => [i, each] as const))("row %i", (i, expected) => {
    const { min, max, minHole, maxHole, settings } = rows;
    const own =
      settings[i] === 1 ? [min[i], max[i], minHole[i], maxHole[i]] : (settings[i] as number);
    expect(own).toEqual(expected === "unread" ? 0 : expected);
  });

  test("some rows can be read, and some cannot", () => {
    expect(told.filter((each) => each === "unread").length).toBeGreaterThan(5);
    expect(told.filter(Array.isArray).length).toBeGreaterThan(5);
  });
});

test.each(["board.thickness", "radius", "sanding"] as const)(
  "the frontier along %s is the check's own, to the last bit",
  (path) => {
    const design: Design = { ...NECK, sanding: 0.15 };
    const values =
      path === "board.thickness"
        ? [2.5, 6]
        : path === "sanding"
          ? [0.05, 3]
          : [30, 60, 120, 200, 400, 900];
    const base: Design = { ...design, board: { ...design.board, thickness: 3.9 } };
    const rows = sweep(base, { [path]: values, "bit.point": [1, 1.4] });
    const works = (value: number, point: number) =>
      sweep(base, { [path]: [value], "bit.point": [point] }).report(0).stops.common !== null;
    let thresholds = 0;
    for (const { others, least, greatest } of frontier(rows, path)) {
      const point = others["bit.point"] as number;
      for (const [found, way] of [
        [least, -1],
        [greatest, 1],
      ] as const) {
        if (found === null || values.includes(found)) continue;
        thresholds++;
        expect(works(found, point)).toBe(true);
        expect(works(found * (1 + way * 1e-14), point)).toBe(false);
      }
    }
    expect(thresholds).toBeGreaterThan(0);
  },
);
