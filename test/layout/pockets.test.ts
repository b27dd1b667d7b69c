/** Outlines of pockets, on squared paper; corners in order from the nut's bass side. Lengths in mm. */
import { describe, expect, test } from "vitest";
import type { Frame } from "../../src/board/board.js";
import { outlineOf } from "../../src/board/pockets.js";
import type { Point } from "../../src/geometry/polygon.js";
import { trackThrough } from "../../src/geometry/track.js";
import { frameOf, leaning, pairs, square } from "./frames.js";

const CENTRE = { along: 100, offset: 7 };

/** The trapezoid before fret 2. */
function trapezoid(board: Frame, slotGap: number, edgeGap: number) {
  return outlineOf(board, { kind: "trapezoid", slotGap, edgeGap }, 2, CENTRE);
}

/** Square slots at 0, 100 and 130. */
const SLOTS = [square(0), square(100), square(130), square(190)];

test("a rectangle about its centre, wherever the slots are", () => {
  const board = frameOf(SLOTS, 40);
  const shape = { kind: "rectangle", length: 10, width: 4 } as const;
  expect(outlineOf(board, shape, 2, CENTRE)).toEqual([
    { along: 95, offset: 5 },
    { along: 105, offset: 5 },
    { along: 105, offset: 9 },
    { along: 95, offset: 9 },
  ]);
});

describe("a trapezoid keeps its gaps", () => {
  test("between square slots and parallel edges", () => {
    expect(pairs(trapezoid(frameOf(SLOTS, 40), 5, 3))).toEqual([
      [105, -17],
      [125, -17],
      [125, 17],
      [105, 17],
    ]);
  });

  test("between slots that lean 3 in 4", () => {
    // 40 across and 30 along make a slot of 50: a gap of 4 square to it is 5 along the board.
    // At 16 from the centre line it has moved 12 along.
    const board = frameOf([leaning(-15, 15), leaning(100, 130), leaning(160, 190)], 40);
    expect(pairs(trapezoid(board, 4, 4))).toEqual([
      [115 - 12 + 5, -16],
      [175 - 12 - 5, -16],
      [175 + 12 - 5, 16],
      [115 + 12 + 5, 16],
    ]);
  });

  test("between edges that part by 3 in 4 each", () => {
    // From 40 wide to 100 in 40 mm, each edge 50 long: a gap of 4 square to it is 5 across the board.
    // 10 from either slot the edges lie at 20 + 7.5 and 50 − 7.5.
    const board = frameOf(
      [square(0), square(100), square(140)],
      trackThrough([100, 140], [40, 100]),
    );
    expect(pairs(trapezoid(board, 10, 4))).toEqual([
      [110, -22.5],
      [130, -37.5],
      [130, 37.5],
      [110, 22.5],
    ]);
  });
});

describe("edges that bend between the slots", () => {
  const waisted = frameOf(SLOTS, trackThrough([0, 100, 115, 130, 200], [40, 40, 34, 40, 40]));

  test("inward: the gap is kept where the board is narrowest", () => {
    // 34 wide at 115, 40 at both slots: 3 less on either side
    expect(pairs(trapezoid(waisted, 5, 2))).toEqual([
      [105, -15],
      [125, -15],
      [125, 15],
      [105, 15],
    ]);
  });

  test("outward: the straight line between the slots' ends counts", () => {
    const bulging = frameOf(SLOTS, trackThrough([0, 100, 115, 130, 200], [40, 40, 46, 40, 40]));
    expect(pairs(trapezoid(bulging, 5, 2))).toEqual([
      [105, -18],
      [125, -18],
      [125, 18],
      [105, 18],
    ]);
  });

  test("a waist beyond the slots does not count", () => {
    const elsewhere = frameOf(SLOTS, trackThrough([0, 60, 90, 140, 200], [40, 34, 40, 40, 30]));
    expect(pairs(trapezoid(elsewhere, 5, 2))).toEqual([
      [105, -18],
      [125, -18],
      [125, 18],
      [105, 18],
    ]);
  });

  test.each([30, 36, 44, 50])("two bends, %d wide at the first: both keep the gap", (middle) => {
    const board = frameOf(SLOTS, trackThrough([0, 115, 122, 200], [40, middle, 40, 40]));
    const [a, b, c, d] = trapezoid(board, 5, 2) ?? [];
    if (!(a && b && c && d)) throw new Error("no outline");
    for (const [along, half] of [
      [115, middle / 2],
      [122, 20],
    ] as const) {
      expect(offsetAt(a, b, along) + half).toBeGreaterThanOrEqual(2 - 1e-9);
      expect(half - offsetAt(d, c, along)).toBeGreaterThanOrEqual(2 - 1e-9);
    }
  });
});

/** Where the line through a and b lies at a place. */
function offsetAt(a: Point, b: Point, along: number): number {
  return a.offset + ((b.offset - a.offset) * (along - a.along)) / (b.along - a.along);
}

describe("gaps that leave no room", () => {
  /** 8 long and 32 wide: powers of two, so that every figure is exact. */
  const short = (length: number) => frameOf([square(0), square(100), square(108)], 32, length);

  test("from slot to slot, from edge to edge, and both", () => {
    const board = frameOf(SLOTS, 40);
    expect(trapezoid(board, 14, 19)).toHaveLength(4);
    expect(trapezoid(board, 16, 3)).toBeUndefined();
    expect(trapezoid(board, 5, 21)).toBeUndefined();
    expect(trapezoid(board, 16, 21)).toBeUndefined();
  });

  test("at the narrow end alone", () => {
    // 8 wide at one slot, 68 at the other: a gap of 4 takes 5 on either side, more than the 4 there
    const wedge = frameOf([square(0), square(100), square(140)], trackThrough([100, 140], [8, 68]));
    expect(trapezoid(wedge, 0, 3)).toHaveLength(4);
    expect(trapezoid(wedge, 0, 4)).toBeUndefined();
  });

  test("gaps that just meet leave nothing", () => {
    expect(trapezoid(short(500), 3.5, 4)).toHaveLength(4);
    expect(trapezoid(short(500), 4, 4)).toBeUndefined();
    expect(trapezoid(short(500), 2, 16)).toBeUndefined();
  });

  test("rounding up to 1e-9 of the board's length is let pass, and no more", () => {
    // on a board of 1e9 / 2^20 (954 mm) that is 2^−20: each gap goes half of it, 2^−21, beyond the middle
    const board = short(1e9 / 2 ** 20);
    expect(trapezoid(board, 4 + 2 ** -21, 4)).toHaveLength(4);
    expect(trapezoid(board, 4 + 2 ** -20, 4)).toBeUndefined();
  });

  test("a slot in line with the edge behind it leaves three sides", () => {
    // the slot from (0, 30) to (40, −10) goes on as the bass edge to (60, −30)
    const width = trackThrough([0, 40, 60], [60, 20, 60]);
    const lines = [
      { along: 30, bass: 40, treble: 0 },
      { along: 36, bass: 60, treble: 20 },
    ];
    const board = frameOf([square(-50), ...lines], width);
    expect(trapezoid(board, 0, 0)).toBeUndefined();
  });
});
