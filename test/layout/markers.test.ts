/** Places of markers: slots whose diagonals can be drawn on squared paper. Lengths in mm. */
import { describe, expect, test } from "vitest";
import type { Frame } from "../../src/board/board.js";
import { layOut, leanBetween } from "../../src/board/markers.js";
import type { GroupSpec } from "../../src/design/spec.js";
import type { DesignIssue } from "../../src/errors/errors.js";
import { trackThrough } from "../../src/geometry/track.js";
import { frameOf, groupOf, leaning, pairs, square } from "./frames.js";

/** The markers of one group, which raises no issue. */
function markersOf(board: Frame, stated: Partial<GroupSpec>) {
  const issues: DesignIssue[] = [];
  const markers = layOut(board, [groupOf(stated)], issues);
  expect(issues).toEqual([]);
  return markers;
}

/** The issues of one group, which lays out no marker. */
function issuesOf(board: Frame, stated: Partial<GroupSpec>) {
  const issues: DesignIssue[] = [];
  expect(layOut(board, [groupOf(stated)], issues)).toEqual([]);
  return issues.map(({ path, value, expected }) => ({ path, value, expected }));
}

const sides = (markers: readonly { side: string }[]) => markers.map(({ side }) => side);

describe("between slots that lean 1 in 2 and 1 in 1, 40 wide", () => {
  // The slots run from (100, −20) to (120, 20), over (110, 0), and from (140, −20) to (180, 20), over (160, 0).
  const board = frameOf([leaning(100, 120), leaning(140, 180), leaning(190, 200)], 40);

  test("a single: the diagonals 140 + 2x and 130 − x/2 cross at x = −4", () => {
    const markers = markersOf(board, {});
    expect(pairs(markers)).toEqual([[132, -4]]);
    expect(sides(markers)).toEqual(["centre"]);
  });

  test("a double: the diagonals of either half", () => {
    const [bass, treble] = markersOf(board, { arrangement: "double" });
    // bass: 160 + 3x and 110 − 3x/2
    expect(bass?.side).toBe("bass");
    expect(bass?.offset).toBeCloseTo(-100 / 9, 12);
    expect(bass?.along).toBeCloseTo(160 - 100 / 3, 12);
    // treble: 110 + 7x/2 and 160 − 2x
    expect(treble?.side).toBe("treble");
    expect(treble?.offset).toBeCloseTo(100 / 11, 12);
    expect(treble?.along).toBeCloseTo(110 + 350 / 11, 12);
  });

  test("a spread of 16 leans as the mean of the slots, 3 in 4: 6 along in 8 across", () => {
    const markers = markersOf(board, { arrangement: "double", spread: 16 });
    expect(pairs(markers)).toEqual([
      [132 - 6, -4 - 8],
      [132 + 6, -4 + 8],
    ]);
    expect(sides(markers)).toEqual(["bass", "treble"]);
  });

  test("midpoints: midway, at 135; a double 10 to either side, leaning 3 in 4", () => {
    expect(pairs(markersOf(board, { along: "midpoint" }))).toEqual([[135, 0]]);
    const double = markersOf(board, { along: "midpoint", arrangement: "double" });
    expect(pairs(double)).toEqual([
      [135 - 7.5, -10],
      [135 + 7.5, 10],
    ]);
    expect(sides(double)).toEqual(["bass", "treble"]);
  });

  test("the lean between two slots", () => {
    expect(leanBetween(board, 1)).toBe((0.5 + 1) / 2);
    expect(leanBetween(board, 2)).toBe((1 + 0.25) / 2);
  });
});

describe("between square slots", () => {
  const tapered = (nut: number) =>
    frameOf([square(0), square(36), square(70)], trackThrough([0, 100], [nut, 57]));

  test("44 and 56 wide, 450 apart: 450 · 44 / 100 along, 44 · 56 / 200 across", () => {
    const board = frameOf([square(0), square(450)], trackThrough([0, 450], [44, 56]));
    expect(pairs(markersOf(board, {}))).toEqual([[198, 0]]);
    expect(pairs(markersOf(board, { arrangement: "double" }))).toEqual([
      [198, -12.32],
      [198, 12.32],
    ]);
    const spread = markersOf(board, { arrangement: "double", spread: 20 });
    expect(pairs(spread)).toEqual([
      [198, -10],
      [198, 10],
    ]);
    expect(sides(spread)).toEqual(["bass", "treble"]);
  });

  test("to the last bit: a single on the centre line, a double alike on both sides", () => {
    for (let nut = 40; nut < 50; nut += 0.3) {
      const [single] = markersOf(tapered(nut), {});
      expect(single?.offset).toBe(0);
      const [bass, treble] = markersOf(tapered(nut), { arrangement: "double" });
      expect(bass?.along).toBe(single?.along);
      expect(treble?.along).toBe(single?.along);
      expect(treble?.offset).toBe(-(bass?.offset ?? Number.NaN));
    }
  });

  test("nothing leans", () => {
    expect(leanBetween(tapered(43), 1)).toBe(0);
  });
});

describe("pockets", () => {
  const board = frameOf([square(0), square(100), square(140)], trackThrough([100, 140], [40, 100]));

  test("a trapezoid: 4 from edges that part by 3 in 4 takes 5 across; widest at fret 2, 100 − 10", () => {
    const shape = { kind: "trapezoid", slotGap: 0, edgeGap: 4 } as const;
    const [marker] = markersOf(board, { frets: [2], diameter: 0, shape });
    expect(marker?.diameter).toBeCloseTo(90, 12);
    expect(pairs(marker?.outline)).toEqual([
      [100, -15],
      [140, -45],
      [140, 45],
      [100, 15],
    ]);
  });

  test("rectangles to either side are as wide as stated", () => {
    const shape = { kind: "rectangle", length: 8, width: 6 } as const;
    const markers = markersOf(board, {
      frets: [2],
      diameter: 0,
      shape,
      arrangement: "double",
      spread: 20,
    });
    expect(markers.map(({ diameter }) => diameter)).toEqual([6, 6]);
    const across = markers.map(({ outline }) => outline?.map(({ offset }) => offset));
    expect(across).toEqual([
      [-13, -13, -7, -7],
      [7, 7, 13, 13],
    ]);
  });

  test("no room between the gaps: an issue at its fret, and no marker", () => {
    const shape = { kind: "trapezoid", slotGap: 25, edgeGap: 4 } as const;
    expect(issuesOf(board, { frets: [2], diameter: 0, shape })).toEqual([
      {
        path: "markers.4.frets.0",
        value: 2,
        expected: "a fret with room for the pocket between its gaps",
      },
    ]);
  });
});

describe("a fret off the board with one end", () => {
  const slots = [square(0), square(50), leaning(90, 110), leaning(130, 120)];

  test.each([
    [2, 109.5, 110],
    [3, 129, 130],
  ])("fret %d, the board %d long, the slot's further end at %d", (fret, length, along) => {
    expect(issuesOf(frameOf(slots, 40, length), { frets: [fret] })).toEqual([
      {
        path: "markers.4.frets.0",
        value: fret,
        expected: `a fret on the board, which ends ${length} mm from the nut; fret ${fret} lies at ${along} mm`,
      },
    ]);
  });

  test("on the very end it is on the board", () => {
    expect(markersOf(frameOf(slots, 40, 110), { frets: [2] })).toHaveLength(1);
    expect(markersOf(frameOf(slots, 40, 130), { frets: [3] })).toHaveLength(1);
  });
});

test("edges like an hour-glass, whose diagonals run side by side, have no place between them", () => {
  // from (0, −45) to (60, 45), and from (30, −15) to (50, 15): both 3 across in 2 along
  const width = trackThrough([0, 30, 50, 60], [90, 30, 30, 90]);
  const slots = [
    { along: 37.5, bass: 0, treble: 50 },
    { along: 37.5, bass: 30, treble: 60 },
  ];
  const [marker] = markersOf(frameOf(slots, width), {});
  expect(marker?.along).toBeNaN();
  expect(marker?.offset).toBeNaN();
});
