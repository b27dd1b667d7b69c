/** All that is written on a sweep's picture, by hand: an invented flat board of which 1.5 mm and a point of 1 are needed. */
import { describe, expect, test } from "vitest";
import { drawSweep, type SweepPictureOptions } from "../../src/draw/index.js";
import { axisWords, runs, valueWords } from "../../src/draw/sweep-chart.js";
import { type Axes, type Design, type Sweep, sweep } from "../../src/index.js";
import { SQUARED } from "../check/necks.js";
import { classed, linesOf, writingOf } from "./svg.js";

function pictureOf(rows: Sweep, options: SweepPictureOptions = {}) {
  return writingOf(drawSweep(rows, options));
}

const HEADING = "Each cell is one combination of two numbers of the design.";
const ALONE = "This tells of stop settings alone: a report may find more that is wrong.";
/** At most the thickness less web and point: 1.5 and 0.5 and −3.5; 6 and 5 and 1. */
const AXES: Axes = { web: [1, 2, 6], "board.thickness": [8, 3.5] };

describe("the words", () => {
  test("a heading, the values along both axes in rising order, a legend, a count", () => {
    const { words, description } = pictureOf(sweep({ ...SQUARED, name: "Fir (invented)" }, AXES));
    const count = "One stop setting suits all holes in 3 of 6 combinations.";
    expect(words).toEqual([
      "Stop settings: Fir (invented)",
      HEADING,
      "1",
      "2",
      "6",
      "web, mm",
      "3.5",
      "8",
      "board.thickness, mm",
      "one setting suits all holes",
      "no depth suits some hole",
      count,
      ALONE,
    ]);
    expect(description).toBe(
      `${count} ${ALONE} board.thickness 3.5: one setting suits all holes at web 1; no depth suits some hole at web 2 to 6. board.thickness 8: one setting suits all holes at web 1 to 2; no depth suits some hole at web 6.`,
    );
  });

  test("one axis alone; a single combination", () => {
    const { words, description } = pictureOf(sweep(SQUARED, { "board.thickness": [8, 3, 9] }));
    expect(words).toContain("One stop setting suits all holes in 2 of 3 combinations.");
    expect(description).toContain(
      `${ALONE} one setting suits all holes at board.thickness 8 to 9; no depth suits some hole at board.thickness 3.`,
    );
    const single = pictureOf(sweep(SQUARED, { web: [1] }));
    expect(single.words).toContain("One stop setting suits all holes in 1 of 1 combination.");
    expect(single.description).toContain("one setting suits all holes at web 1.");
  });

  test("what is held, and of how many values", () => {
    const rows = sweep(SQUARED, { ...AXES, "bit.point": [1, 0], "fill.keep": [1] });
    const { words, description } = pictureOf(rows, { held: { "bit.point": 1 } });
    const held = "Held: bit.point, mm: 0 (one of 2 values); fill.keep, mm: 1.";
    expect(words.slice(0, 3)).toEqual(["Stop settings", HEADING, held]);
    expect(description?.startsWith(`${held} One stop setting suits all holes in 5 of 6`)).toBe(
      true,
    );
  });

  test("what cannot be made, what was not worked out, how many settings", () => {
    const solid = { frets: [3], diameter: 8, fill: { kind: "solid", thickness: 0.75, keep: 0.1 } };
    const neck = { ...SQUARED, markers: [...SQUARED.markers, solid] } as Design;
    const axes: Axes = { radius: [Infinity, 20], web: [1, 9] };
    const { words, description } = pictureOf(sweep(neck, axes, { from: 0, to: 3 }));
    expect(words).toEqual([
      "Stop settings",
      HEADING,
      // the figure in its cell
      "2",
      "20",
      "flat",
      "radius, mm",
      "1",
      "9",
      "web, mm",
      "2",
      "so many settings are needed",
      "no depth suits some hole",
      "cannot be made, or has no hole",
      "not worked out",
      "One stop setting suits all holes in 0 of 3 combinations worked out.",
      ALONE,
    ]);
    expect(description).toContain(
      "web 1: more settings are needed at radius flat; cannot be made, or has no hole at radius 20. web 9: no depth suits some hole at radius flat; not worked out at radius 20.",
    );
  });

  test("cells too small for figures have strokes, and the legend says what these mean", () => {
    const solid = { frets: [3], diameter: 8, fill: { kind: "solid", thickness: 0.75, keep: 0.1 } };
    const neck = { ...SQUARED, markers: [...SQUARED.markers, solid] } as Design;
    const values = Array.from({ length: 90 }, (_, i) => 1 + i / 100);
    const { words, drawing } = pictureOf(sweep(neck, { web: values }));
    expect(words).toContain("more settings are needed");
    expect(words).not.toContain("so many settings are needed");
    expect(classed(drawing, "several").filter(({ tag }) => tag === "path")).toHaveLength(90);
    expect(classed(drawing, "several").filter(({ tag }) => tag === "text")).toHaveLength(0);
  });

  test("units of what is no length", () => {
    const twist: Design = { ...SQUARED, bit: { kind: "twist", angle: 118 } };
    const { words } = pictureOf(
      sweep(twist, { "bit.angle": [90, 118], "tolerance.radius": [0, 0.02] }),
    );
    expect(words).toEqual(
      expect.arrayContaining(["bit.angle, degrees", "tolerance.radius, a fraction"]),
    );
    const fanned: Design = {
      ...SQUARED,
      scale: { bass: 660, treble: 640, perpendicular: 1, frets: 4 },
    };
    expect(pictureOf(sweep(fanned, { "scale.perpendicular": [0, 1.5] })).words).toContain(
      "scale.perpendicular, fret",
    );
  });
});

describe("the measures", () => {
  const values = (count: number) => Array.from({ length: count }, (_, i) => 1 + i / 1000);
  const frameOf = (rows: Sweep) => {
    const { drawing } = pictureOf(rows);
    const xs = linesOf(drawing)
      .filter(({ name }) => name === "frame")
      .flatMap(({ from, to }) => [from, to]);
    return [Math.max(...xs.map(([x]) => x)), Math.max(...xs.map(([, y]) => y))];
  };

  test("cells fill 140 by 96, but none is wider than 20, higher than 10, or smaller than 1.7", () => {
    expect(frameOf(sweep(SQUARED, { web: values(2), "bit.point": values(3) }))).toEqual([40, 30]);
    expect(frameOf(sweep(SQUARED, { web: values(20), "bit.point": values(16) }))).toEqual([
      140, 96,
    ]);
    expect(frameOf(sweep(SQUARED, { web: values(100), "bit.point": values(100) }))).toEqual([
      170, 170,
    ]);
  });

  test("values stand below and beside, each at its tick; only so many where they find no room", () => {
    const { drawing, words } = pictureOf(
      sweep(SQUARED, { web: values(60), "bit.point": values(40) }),
    );
    const ticks = linesOf(drawing).filter(({ name }) => name === "tick");
    const below = ticks.filter(({ from, to }) => from[0] === to[0]);
    const beside = ticks.filter(({ from, to }) => from[1] === to[1]);
    // "1.059" is 4 · 0.64 and 0.42 of 3.5 wide, 2.5 between: 12.93 in cells of 140 / 60; 4.55 in cells of 96 / 40
    expect(below).toHaveLength(60 / 6);
    expect(beside).toHaveLength(40 / 2);
    expect(below[1]?.from).toEqual([expect.closeTo((6.5 * 140) / 60, 2), 96]);
    expect(below[1]?.to[1]).toBe(97.5);
    expect(beside[0]?.from).toEqual([-1.5, expect.closeTo(96 - 1.2, 2)]);
    expect(beside[0]?.to[0]).toBe(0);
    expect(words.filter((word) => /^1\.0\d\d?$|^1$/.test(word))).toHaveLength(30);
  });
});

describe("the parts", () => {
  test("stretches of places are told apart", () => {
    expect(runs(6, (i) => i !== 2 && i !== 4)).toEqual([
      [0, 2],
      [3, 4],
      [5, 6],
    ]);
    expect(runs(3, () => false)).toEqual([]);
    const { description } = pictureOf(sweep(SQUARED, { web: [1, 6, 2], "fill.keep": [1, 6] }));
    expect(description).toContain("fill.keep 1: one setting suits all holes at web 1 to 2");
    const thick = pictureOf(sweep(SQUARED, { "board.thickness": [8, 3, 9, 10], web: [1, 1.1] }));
    expect(thick.description).toContain("at board.thickness 8 to 10; no depth suits some hole at");
  });

  test("values and units in words", () => {
    expect([305, -1.5, 6.3500001, Infinity].map(valueWords)).toEqual([
      "305",
      "−1.5",
      "6.35",
      "flat",
    ]);
    expect(["bit.angle", "markers.0.bit.angle", "bit.point"].map(axisWords)).toEqual([
      "bit.angle, degrees",
      "markers.0.bit.angle, degrees",
      "bit.point, mm",
    ]);
  });

  // "2" is 0.64 · 3.5 wide, 1.5 around it: 3.74; 1.4 · 3.5 = 4.9 high
  test("figures stand in cells that have room for them, in width and in height", () => {
    const solid = { frets: [3], diameter: 8, fill: { kind: "solid", thickness: 0.75, keep: 0.1 } };
    const neck = { ...SQUARED, markers: [...SQUARED.markers, solid] } as Design;
    const values = (count: number) => Array.from({ length: count }, (_, i) => 1 + i / 1000);
    const hasFigures = (columns: number, rows: number) =>
      pictureOf(sweep(neck, { web: values(columns), "bit.point": values(rows) })).words.includes(
        "so many settings are needed",
      );
    expect([hasFigures(37, 2), hasFigures(38, 2)]).toEqual([true, false]);
    expect([hasFigures(2, 19), hasFigures(2, 20)]).toEqual([true, false]);
  });

  test("a sweep of no rows, equal values, the axes asked for", () => {
    const none = sweep({ ...SQUARED, name: "Fir" }, { web: [1] }, { from: 1, to: 1 });
    expect(pictureOf(none).words[0]).toBe("Stop settings");
    const axes: Axes = { web: [1, 2], "board.thickness": [8, 3.5], "bit.point": [1, 2] };
    const asked = pictureOf(sweep(SQUARED, axes), { x: "bit.point", y: "web" }).words;
    expect(asked.slice(2, 9)).toEqual([
      "Held: board.thickness, mm: 8 (one of 2 values).",
      ...["1", "2", "bit.point, mm", "1", "2", "web, mm"],
    ]);
    // one axis asked for: the first of the others is the other
    const [onlyX, onlyY] = [{ x: "web" }, { y: "web" }].map((options) => {
      return pictureOf(sweep(SQUARED, axes), options as SweepPictureOptions).words.slice(2, 9);
    });
    expect([onlyX?.[3], onlyX?.[6]]).toEqual(["web, mm", "board.thickness, mm"]);
    expect([onlyY?.[3], onlyY?.[6]]).toEqual(["board.thickness, mm", "web, mm"]);
    const twice = sweep(SQUARED, { radius: [Infinity, 65, Infinity, 65] });
    const cells = pictureOf(twice).words.filter((word) => word === "flat" || word === "65");
    expect(cells).toEqual(["65", "65", "flat", "flat"]);
  });

  test("what does not suit is refused in full", () => {
    const rows = sweep(SQUARED, { web: [1, 2], "bit.point": [1, 2] });
    const refusal = (options: object, of: Sweep = rows) => {
      try {
        drawSweep(of, options);
      } catch (error) {
        return `${(error as Error).name}: ${(error as Error).message}`;
      }
      return "taken";
    };
    const three = sweep(SQUARED, { web: [1, 2], "bit.point": [1, 2], "fill.keep": [1, 2] });
    expect(refusal({ held: { "fill.keep": -1 } }, three)).toBe(
      "RangeError: held.fill.keep: expected a whole number from 0 to 1, received -1",
    );
    expect(refusal({ held: { "fill.keep": 0 } }, three)).toBe("taken");
    expect(refusal({ y: "crown" })).toBe(
      'RangeError: y: expected an axis of the sweep (web, bit.point), received "crown"',
    );
    expect(refusal({ y: "web" }, sweep(SQUARED, { web: [1, 2] }))).toBe(
      "RangeError: y: expected another axis than x, received web",
    );
    const long = Array.from({ length: 101 }, (_, i) => 1 + i / 1000);
    expect(refusal({}, sweep(SQUARED, { web: [1], "bit.point": long }))).toBe(
      "RangeError: y: expected an axis of 100 values at most, received bit.point with 101",
    );
    expect(refusal({}, sweep(SQUARED, { web: long.slice(1) }))).toBe("taken");
  });
});
