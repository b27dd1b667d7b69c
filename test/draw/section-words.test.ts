/**
 * All that is written on a section, worked out by hand: an invented board 64 wide and 8 thick, under a crown of half a
 * millimetre flat or a cylinder of 65 mm (65² = 63² + 16² = 60² + 25²). Lengths in mm.
 */
import { expect, test } from "vitest";
import { drawSection } from "../../src/draw/index.js";
import { checkDesign } from "../../src/index.js";
import { SQUARED } from "../check/necks.js";
import { classed, read, writingOf } from "./svg.js";

function sectionOn(change: object, index = 0, options: { exaggeration?: number } = {}) {
  return writingOf(drawSection(checkDesign({ ...SQUARED, ...change }), index, options));
}

const PLACE =
  "Cut square to the centre line, 48.00 from the nut. Lengths in mm; depths from the flat top.";
const FOUR = "Heights are drawn 4 times too large. Scale 2 : 1 across, 8 : 1 in height.";
const BEFORE = "flat blank and bit, before the radius";
const OPEN = "window: the depths that suit";
const SHUT = "no window: the least lies beyond the most";

// at least 0.5 + 1, at most 8 − 1 − 1, the middle; a point of 1 leads
test("a dot without a plan: drawn to its setting", () => {
  const { words, description } = sectionOn({});
  const window = "Depths from 1.50 to 6.00 suit this hole.";
  expect(words).toEqual([
    "Section at fret 2",
    FOUR,
    PLACE,
    "Ø 8.00",
    "flat",
    "64.00",
    "bass",
    "treble",
    "7.50",
    "8.00",
    "0.00 flat top",
    "0.50 crest",
    "0.50 removed at the outer wall",
    "1.50 least depth",
    "3.75 stop setting, travel 4.75: leaves 3.25 of marker",
    "4.75 tip of the bit: leaves 3.25 of wood",
    "6.00 most depth (web under the bit)",
    "8.00 underside",
    "board",
    "epoxy",
    BEFORE,
    OPEN,
    window,
  ]);
  expect(description).toBe(
    `${PLACE} ${FOUR} The board is 64.00 wide there, its blank 8.00 thick; it is flat, which leaves 7.50 at the edges. The hole lies on the centre line and is 8.00 wide. It is drawn 3.75 deep at the rim, 4.75 at the bit's lowest part, which leaves 3.25 of the marker and 3.25 of wood. ${window}`,
  );
});

// its walls lie at 16 and 25: from 2 + 0.5 to 5 + 0.5 are taken there, at the edge 65 − √(65² − 32²) + 0.5 = 8.92
test("a solid dot aside, over the channel's board, too shallow and too low at once", () => {
  const { words, description } = sectionOn(
    {
      name: "Fir (invented)",
      radius: 65,
      depth: 4,
      board: { ...SQUARED.board, channel: { width: 8, depth: 2 } },
      fill: { kind: "solid", thickness: 2, keep: 1 },
      markers: [{ frets: [2], diameter: 9, arrangement: "double", spread: 41 }],
    },
    1,
  );
  const notes = [
    "No depth suits this hole: it needs at least 6.50, and at most 4.50 (must end flush).",
    "In the worst case the planned depth of 4.00 leaves none (1.50 too little) of the marker and 3.00 of wood under the bit.",
  ];
  expect(words).toEqual([
    "Section at fret 2, treble: Fir (invented)",
    FOUR,
    PLACE,
    "Ø 9.00",
    "R 65.00",
    "8.00",
    "20.50",
    "64.00",
    "bass",
    "treble",
    "−0.92",
    "8.00",
    "0.00 flat top",
    "0.50 crest",
    "2.00 top of the dot, as glued",
    "4.00 planned depth, travel 5.00: 1.50 short, no marker left",
    "4.50 most depth (must end flush)",
    "5.00 tip of the bit: leaves 3.00 of wood",
    "5.50 removed at the outer wall",
    "6.00 roof of the channel",
    "6.50 least depth",
    "8.00 underside",
    "board",
    "solid dot",
    BEFORE,
    SHUT,
    ...notes,
  ]);
  expect(description).toBe(
    `${PLACE} ${FOUR} The board is 64.00 wide there, its blank 8.00 thick; it is finished to a radius of 65.00, which leaves −0.92 at the edges. The roof of the rod channel lies 6.00 deep. The hole lies 20.50 from the centre line and is 9.00 wide. It is drawn 4.00 deep at the rim, 5.00 at the bit's lowest part, which leaves none (1.50 too little) of the marker and 3.00 of wood. ${notes.join(" ")}`,
  );
});

// 0.5 + 1 at least, 2 − 1 at most
test("a pocket that no depth suits: drawn to its least", () => {
  const { words, description } = sectionOn(
    {
      board: { ...SQUARED.board, thickness: 2 },
      markers: [{ frets: [2], shape: { kind: "rectangle", length: 6, width: 20 } }],
    },
    0,
    { exaggeration: 1 },
  );
  expect(words.slice(1, 4)).toEqual(["True proportions. Scale 2 : 1.", PLACE, "20.00"]);
  expect(words.slice(8)).toEqual([
    "1.50",
    "2.00",
    "0.00 flat top",
    "0.50 crest",
    "0.50 removed at the outer wall",
    "1.00 most depth (web under the bit)",
    "1.50 least depth",
    "2.00 underside",
    "board",
    "epoxy",
    BEFORE,
    SHUT,
    "No depth suits this hole: it needs at least 1.50, and at most 1.00 (web under the bit).",
    "Drawn to the least depth, as no setting serves this hole.",
  ]);
  expect(description).toContain("True proportions. Scale 2 : 1. The board is 64.00 wide there");
});

// 65 · 1.3 at 48 of 160 mm; 90° lead by half of 4: at most 8 − 1 − 2
test("a planned depth that leaves no marker, beside the setting; a radius that changes", () => {
  const { words } = sectionOn(
    {
      radius: { nut: 65, end: 130 },
      depth: 0.25,
      bit: { kind: "twist", angle: 90 },
      markers: [{ frets: [2], diameter: 4 }],
    },
    0,
    { exaggeration: 2.5 },
  );
  expect(words).toContain(
    "Heights are drawn 2.5 times too large. Scale 2 : 1 across, 5 : 1 in height.",
  );
  expect(words).toContain("R 84.50 here");
  // 2² / (2 · 84.5) + 0.5 less 0.25
  expect(words).toContain("0.25 planned depth, travel 2.25: 0.27 short, no marker left");
  expect(words).toContain("2.25 tip of the bit: leaves 5.75 of wood");
  expect(words).toContain("3.26 stop setting, travel 5.26");
  expect(words).toContain("5.00 most depth (web under the bit)");
});

test("a planned depth that goes through", () => {
  const { words } = sectionOn({ depth: 8.5 });
  expect(words).toContain("8.50 planned depth, travel 9.50: through the board");
  expect(words).toContain("9.50 tip of the bit: 1.50 through the wood");
  expect(words).toContain("3.75 stop setting, travel 4.75");
  expect(words.at(-1)).toBe(
    "In the worst case the planned depth of 8.50 leaves 8.00 of the marker and none (1.50 too little) of wood under the bit.",
  );
  expect(sectionOn({ depth: 8 }).words).toContain(
    "8.00 planned depth, travel 9.00: through the board",
  );
});

test("nothing left at all is no marker, and no wood", () => {
  const end = { bit: { kind: "end-mill" } } as const;
  expect(sectionOn({ ...end, depth: 0.5 }).words).toContain(
    "0.50 planned depth, travel 0.50: 0.00 short, no marker left",
  );
  expect(sectionOn({ depth: 7 }).words).toContain("8.00 tip of the bit: 0.00 through the wood");
  const sanded = checkDesign({ ...SQUARED, ...end, depth: 0.25 });
  expect(classed(read(drawSection(sanded, 0)), "marker")).toEqual([]);
  const left = checkDesign({ ...SQUARED, ...end, depth: 2 });
  expect(classed(read(drawSection(left, 0)), "marker")).toHaveLength(1);
});

test("heights up to a hundred times too large", () => {
  expect(sectionOn({}, 0, { exaggeration: 100 }).words[1]).toMatch(
    /^Heights are drawn 100 times too large\./,
  );
});
