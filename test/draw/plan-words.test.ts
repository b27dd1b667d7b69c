/**
 * All that is written on a plan and on a picture of windows, by hand, on an invented flat board of 160 by 64 by 8 mm
 * with slots every 32: at least 0.5 + 1, at most 8 − 1 − 1.
 */
import { describe, expect, test } from "vitest";
import { drawBoard, drawWindows } from "../../src/draw/index.js";
import { checkDesign, type Report } from "../../src/index.js";
import { SQUARED } from "../check/necks.js";
import { writingOf } from "./svg.js";

function writtenOn(draw: (report: Report) => string, change: object) {
  return writingOf(draw(checkDesign({ ...SQUARED, ...change })));
}

const ONE = [
  "Depths from 1.50 to 6.00 suit every hole: fret 2 sets the least and the most (web under the bit).",
  "The stop setting is 3.75, at the bit's rim.",
];

const solid = (thickness: number, keep: number) => ({ kind: "solid", thickness, keep });

/** A pair, a dot that no depth suits (2.5 and 1.5), a thin one that is planned; the board widens by a tenth. */
const SEVERAL = {
  name: "Fir (invented)",
  board: { ...SQUARED.board, width: { nut: 48, end: 64 }, channel: { width: 8, depth: 2 } },
  markers: [
    { frets: [2], diameter: 6, arrangement: "double", spread: 24 },
    { frets: [3], diameter: 8, fill: solid(1, 2) },
    { frets: [1], diameter: 8, fill: solid(0.75, 0.25), depth: 1 },
  ],
};
const PLAN = [
  "No depth suits every hole: fret 3 needs at least 2.50, fret 1 allows at most 1.25 (must end flush).",
  "Setting A serves 1 hole at 1.00; 0.75 to 1.25 would do.",
  "Setting B serves 2 holes at 3.75; 1.50 to 6.00 would do.",
  "No depth suits 1 of 4 holes.",
];

describe("a plan", () => {
  // 245 for 160 mm
  const ABOVE = "Seen from above, the nut on the left. Scale 1.5 : 1. Lengths in mm";
  const BELOW = `${ABOVE}; below: each marker's distance from the nut, then from the centre line.`;

  test("of one dot", () => {
    const { words, description } = writtenOn(drawBoard, {});
    expect(words).toEqual([
      "Plan",
      BELOW,
      "64.00",
      "64.00",
      "treble",
      "bass",
      "fret 2: 48.00",
      "end: 160.00",
      "nut",
      "2",
      "1",
      "3",
      "4",
      "sets least and most: 1.50 and 6.00",
      "governs a stop setting",
      ...ONE,
    ]);
    expect(description).toBe(
      `The board is 160.00 long, 64.00 wide at the nut and 64.00 at the body end, with 4 frets. ${ONE.join(" ")} fret 2: 48.00 from the nut; sets least and most.`,
    );
  });

  // diagonals of 32 mm between widths of 48, 51.2, 54.4 and 57.6
  test("of several settings, of a hole that no depth suits", () => {
    const { words, description } = writtenOn(drawBoard, SEVERAL);
    expect(words).toEqual([
      "Plan: Fir (invented)",
      BELOW,
      "48.00",
      "64.00",
      "treble",
      "bass",
      "fret 1: 15.48",
      "fret 2: 47.52, ± 12.00",
      "fret 3: 79.54",
      "end: 160.00",
      "nut",
      "1",
      "2",
      "3",
      "4",
      "sets least and most of A: 0.75 and 1.25",
      "sets least and most of B: 1.50 and 6.00",
      "governs a stop setting",
      "no depth suits",
      "rod channel",
      ...PLAN,
    ]);
    expect(description).toBe(
      `The board is 160.00 long, 48.00 wide at the nut and 64.00 at the body end, with 4 frets. ${PLAN.join(" ")} fret 1: 15.48 from the nut; sets least and most of A. fret 2, bass: 47.52 from the nut, 12.00 from the centre line; sets least and most of B. fret 2, treble: 47.52 from the nut, 12.00 from the centre line. fret 3: 79.54 from the nut; no depth suits.`,
    );
  });

  test("without holes", () => {
    const { words, description } = writtenOn(drawBoard, { markers: [] });
    expect(words).toEqual([
      "Plan",
      `${ABOVE}. No holes.`,
      "64.00",
      "64.00",
      "treble",
      "bass",
      "end: 160.00",
      "nut",
      "1",
      "2",
      "3",
      "4",
    ]);
    expect(description).toBe(
      "The board is 160.00 long, 64.00 wide at the nut and 64.00 at the body end, with 4 frets.",
    );
  });
});

describe("the windows", () => {
  const HEADING =
    "A bar holds the depths of the bit's rim that suit a hole in the worst case. Lengths in mm from the flat top.";
  const upTo6 = (from: number) =>
    Array.from({ length: 2 * (6 - from) + 1 }, (_, i) => (from + i / 2).toFixed(1));

  test("of one dot", () => {
    const { words, description } = writtenOn(drawWindows, {});
    expect(words).toEqual([
      "Depth windows",
      HEADING,
      "stop setting: 3.75, travel 4.75",
      ...upTo6(1.5),
      ...["fret 2", "least", "1.50", "most", "6.00", "by", "web", "travel", "4.75"],
      "sets least and most",
      ...["depths that suit", "what all share", "served by the setting", "governs the setting"],
      ...ONE,
    ]);
    expect(description).toBe(`${ONE.join(" ")} fret 2: 1.50 to 6.00; sets least and most.`);
  });

  test("of several settings, of a planned depth, of a hole that no depth suits", () => {
    const { words, description } = writtenOn(drawWindows, SEVERAL);
    expect(words).toEqual([
      "Depth windows: Fir (invented)",
      HEADING,
      "setting A: 1.00, travel 2.00",
      "setting B: 3.75, travel 4.75",
      "planned: 1.00, travel 2.00",
      ...upTo6(0.5),
      ...["fret 1", "fret 2, bass", "fret 2, treble", "fret 3"],
      ...["least", "0.75", "1.50", "1.50", "2.50"],
      ...["most", "1.25", "6.00", "6.00", "1.50"],
      ...["by", "flush", "web", "web", "flush"],
      ...["set", "A", "B", "B", "–"],
      ...["travel", "2.00", "4.75", "4.75", "–"],
      ...["sets least and most of A", "sets least and most of B", "no depth suits"],
      ...["depths that suit", "no depth suits", "served by the setting", "governs the setting"],
      "planned depth",
      ...PLAN,
    ]);
    expect(description).toBe(
      `${PLAN.join(" ")} fret 1: 0.75 to 1.25; sets least and most of A. fret 2, bass: 1.50 to 6.00; sets least and most of B. fret 2, treble: 1.50 to 6.00. fret 3: at least 2.50, at most 1.50; no depth suits.`,
    );
  });
});
