/** Side dots beside their markers, and what their holes meet. Lengths in mm. */
import { describe, expect, test } from "vitest";
import type { Marker } from "../../src/board/markers.js";
import type { Spec } from "../../src/design/spec.js";
import { belowHole, sideDotsOf } from "../../src/drilling/side-dots.js";
import { trackThrough } from "../../src/geometry/track.js";
import { boardOf, leaning, square } from "../layout/frames.js";
import { boredBy, dotAt, pocketOver, specOf } from "./benches.js";

// the face is 16 − 1 − 10 = 5 high; a dot of 2 in its middle reaches up to 2.5 + 1
const TOP = 3.5;
const DOTS = { diameter: 2, margin: 0.5, depth: 5 };
const SLOT = { depth: 5, tang: 2, clearance: 0.25, web: 1.5 };

describe("beside a marked fret of a fanned board", () => {
  // the slots lean 1 in 2 and 1 in 1, so the line through the marker leans 3 in 4
  const board = boardOf([leaning(-10, 10), leaning(90, 130)], 40);
  const spec = specOf({ sideDots: DOTS });

  test.each([
    [60, 0, 60 - 15],
    [60, -4, 60 - 12],
    [60, 4, 60 - 18],
  ])("marker at (%d, %d): the line meets the bass edge at %d", (along, offset, meets) => {
    const dots = sideDotsOf(board, spec, [dotAt(along, offset)]);
    // at the worst 16 − 1.5 − 10, less 0.25 for the thickness
    expect(dots).toEqual([{ fret: 1, along: meets, face: 4.25, belowSlot: Infinity }]);
  });

  test("a double has one, beside the bass marker", () => {
    const double = [dotAt(60, -4), dotAt(70, 4)];
    expect(sideDotsOf(board, spec, double).map(({ along }) => along)).toEqual([48]);
  });

  test("slots count where they meet the bass edge", () => {
    // a marker at (105, 0) has its dot at 90, in the slot of fret 1
    const sawn = specOf({ sideDots: DOTS, slot: SLOT });
    const [dot] = sideDotsOf(board, sawn, [dotAt(105, 0)]);
    expect(dot).toEqual({ fret: 1, along: 90, face: 4.25, belowSlot: 16 - 5 - TOP });
  });
});

test("half of the board's width is taken at the marker", () => {
  // 20 from the centre line where the slots end, so they lean 1 in 4; 30 at 60
  const width = trackThrough([0, 10, 60, 100, 110], [40, 40, 60, 40, 40]);
  const board = boardOf([leaning(0, 10), leaning(100, 110)], width);
  const [dot] = sideDotsOf(board, specOf({ sideDots: DOTS }), [dotAt(60, 0)]);
  expect(dot?.along).toBe(60 - 7.5);
});

describe("one for each marked fret, none where the design states none", () => {
  const board = boardOf([square(0), square(40), square(80), square(120)], 40);
  const markers = [
    dotAt(20, 0),
    dotAt(60, -10, { fret: 2 }),
    dotAt(60, 10, { fret: 2 }),
    dotAt(100, 0, { fret: 3 }),
  ];

  test("frets in order, each once", () => {
    const dots = sideDotsOf(board, specOf({ sideDots: DOTS }), markers);
    expect(dots.map(({ fret, along }) => [fret, along])).toEqual([
      [1, 20],
      [2, 60],
      [3, 100],
    ]);
  });

  test("without side dots", () => {
    expect(sideDotsOf(board, specOf({ slot: SLOT }), markers)).toEqual([]);
  });
});

describe("the slot over a side dot of 2", () => {
  const board = boardOf([square(0), square(100), square(140)], 40);
  const spec = specOf({ sideDots: DOTS, slot: SLOT });
  // the slot's floor is 16 − 5 = 11 above the underside
  const met = 11 - TOP;

  test.each([
    [1, 0.5, Infinity, "the nut is no slot"],
    [1, 99.5, met, "fret 1 near"],
    [1, 50, Infinity, "between the nut and fret 1"],
    [2, 100.5, met, "fret 1 near"],
    [2, 139.5, met, "fret 2 near"],
    [2, 120, Infinity, "between the slots"],
    [2, 101, Infinity, "half the dot from fret 1: they touch"],
    [2, 139, Infinity, "half the dot from fret 2: they touch"],
    [2, 103, Infinity, "clear of fret 1"],
  ])("fret %d at %d: %d, %s", (fret, along, room) => {
    const [dot] = sideDotsOf(board, spec, [dotAt(along, 0, { fret })]);
    expect(dot?.belowSlot).toBe(room);
  });

  test("no slot, nothing to meet", () => {
    const [dot] = sideDotsOf(board, specOf({ sideDots: DOTS }), [dotAt(100.5, 0, { fret: 2 })]);
    expect(dot?.belowSlot).toBe(Infinity);
  });
});

describe("the marker's hole over a side dot 5 deep", () => {
  // its hole ends 15 from the centre line; the layout may bring the marker 0.5 nearer
  const board = boardOf([square(0), square(100)], 40);
  const below = (marker: Marker, stated: Partial<Spec> = { sideDots: DOTS }) =>
    belowHole(board, specOf(stated), marker, 6);
  // drilled 6 deep, 0.25 more at the worst
  const room = 16 - 6 - 0.25 - TOP;
  const endMill = { ...boredBy({ kind: "end-mill" }), diameter: 10 };
  const cone = { ...boredBy({ kind: "twist", angle: 90 }), diameter: 10 };

  test("a flat bit of 10, 4.5 from its axis", () => {
    expect(below(dotAt(50, -10, endMill))).toBe(room);
  });

  test("a cone of 90 degrees leads by as much as it has yet to go to the rim", () => {
    expect(below(dotAt(50, -10, cone))).toBeCloseTo(room - 0.5, 12);
    expect(below(dotAt(50, -14.5, cone))).toBeCloseTo(room - 5, 12);
    expect(below(dotAt(50, -18, cone))).toBeCloseTo(room - 5, 12);
  });

  test("a hole whose rim comes just as near as the side dot's end is not reached", () => {
    expect(below(dotAt(50, -9.5, endMill))).toBe(Infinity);
    expect(below(dotAt(50, 0, endMill))).toBe(Infinity);
  });

  test.each([
    [-10, room, "4.5 from its middle"],
    [-15, room, "at its middle"],
    [-9.5, Infinity, "5 from its middle: they touch"],
    [-7, Infinity, "7.5 from its middle"],
    [10, Infinity, "on the treble side"],
  ])("a pocket 10 wide at %d: %d, %s", (offset, expected) => {
    const pocket = pocketOver([40, 60], [offset - 5, offset + 5]);
    expect(below(pocket)).toBe(expected);
  });

  test("no side dots, nothing to meet", () => {
    expect(below(dotAt(50, -15), {})).toBe(Infinity);
  });
});
