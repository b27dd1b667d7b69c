/** The ends of a slot: one that leans 3 in 4 on squared paper. Lengths in mm. */
import { describe, expect, test } from "vitest";
import { endsOf, leanOf, lineAt } from "../../src/board/slot-ends.js";
import { trackThrough } from "../../src/geometry/track.js";
import { frameOf, square } from "./frames.js";

/** 20 wide at 100 and 60 wide at 130: the slot from (100, −10) to (130, 30) meets the centre line at 107.5. */
const SLOT = { along: 107.5, bass: 100, treble: 130 };
const board = frameOf([square(0), SLOT], trackThrough([100, 130], [20, 60]));
const bass = { along: 100, offset: -10 };
const treble = { along: 130, offset: 30 };
const centre = { along: 107.5, offset: 0 };

describe("the ends of a slot", () => {
  test("on the whole board", () => {
    expect(endsOf(board, SLOT)).toEqual({ bass, treble });
  });

  test("on either half, the centre line in place of the other edge", () => {
    expect(endsOf(board, SLOT, "bass")).toEqual({ bass, treble: centre });
    expect(endsOf(board, SLOT, "treble")).toEqual({ bass: centre, treble });
  });
});

test("how far a slot leans per mm across: 3 in 4, whole or in part", () => {
  for (const part of [undefined, "bass", "treble"] as const) {
    expect(leanOf(endsOf(board, SLOT, part))).toBe(0.75);
  }
  expect(leanOf({ bass: treble, treble: bass })).toBe(0.75);
  expect(leanOf({ bass: { along: 8, offset: -5 }, treble: { along: 2, offset: 7 } })).toBe(-0.5);
});

test("the nut is line 0, frets count from 1", () => {
  expect(lineAt(board, 0)).toEqual({ along: 0, bass: 0, treble: 0 });
  expect(lineAt(board, 1)).toBe(SLOT);
});
