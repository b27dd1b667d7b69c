/** Places of markers: slots whose diagonals can be drawn on squared paper. Lengths in mm. */
import { describe, expect, test } from "vitest";
import type { Frame } from "../../src/board/board.js";
import { layOut } from "../../src/board/markers.js";
import type { GroupSpec } from "../../src/design/spec.js";
import type { DesignIssue } from "../../src/errors/errors.js";
import { trackThrough } from "../../src/geometry/track.js";
import { checkDesign, type Design, type MarkerGroup } from "../../src/index.js";
import { SQUARED } from "../check/necks.js";
import { frameOf, leaning, square, told } from "./frames.js";

/** The markers of one group of dots of 6, before fret 1 where nothing else is said; it raises no issue. */
function markersOf(board: Frame, where: object = {}, stated: Partial<GroupSpec> = {}) {
  const issues: DesignIssue[] = [];
  const path = { group: "markers.4", fill: "", bit: "", stop: "", depth: "", travel: "" };
  const group = { where: { frets: [1], ...where }, diameter: 6, path, ...stated };
  const markers = layOut(board, [group as GroupSpec], issues);
  expect(issues).toEqual([]);
  return markers;
}

/** What tells the holes of a design apart. */
const namesIn = (markers: readonly object[], change: object = {}) =>
  checkDesign({ ...SQUARED, ...change, markers } as Design).holes.map(
    ({ path, fret, side, along, offset }) => [path, fret, side, along, offset],
  );

describe("between slots that lean 1 in 2 and 1 in 1, 40 wide", () => {
  // The slots run from (100, −20) to (120, 20), over (110, 0), and from (140, −20) to (180, 20), over (160, 0).
  const board = frameOf([leaning(100, 120), leaning(140, 180), leaning(190, 200)], 40);

  test("a single: the diagonals 140 + 2x and 130 − x/2 cross at x = −4", () => {
    expect(told(markersOf(board))).toBe("132 -4");
  });

  test("a double: the diagonals of either half", () => {
    const [bass, treble] = markersOf(board, { arrangement: "double" });
    // bass: 160 + 3x and 110 − 3x/2
    expect([bass?.offset, bass?.along]).toEqual([
      expect.closeTo(-100 / 9, 12),
      expect.closeTo(160 - 100 / 3, 12),
    ]);
    // treble: 110 + 7x/2 and 160 − 2x
    expect([treble?.offset, treble?.along]).toEqual([
      expect.closeTo(100 / 11, 12),
      expect.closeTo(110 + 350 / 11, 12),
    ]);
    expect([bass?.side, treble?.side]).toEqual(["bass", "treble"]);
  });

  test("a spread is centre to centre: 20 on a lean of 3 in 4 is 12 along and 16 across", () => {
    // 6 along and 8 across to either side of the single
    expect(told(markersOf(board, { arrangement: "double", spread: 20 }))).toBe("126 -12, 138 4");
  });

  test("midpoints: midway, at 135; a double 10 to either side, leaning 3 in 4", () => {
    expect(told(markersOf(board, { by: "midpoint" }))).toBe("135 0");
    expect(told(markersOf(board, { by: "midpoint", arrangement: "double" }))).toBe(
      "127.5 -10, 142.5 10",
    );
  });

  test("lengthwise: on the centre line, at the crossing's along, though that lies aside", () => {
    expect(told(markersOf(board, { arrangement: "lengthwise", spread: 20 }))).toBe("122 0, 142 0");
  });

  test("at an edge: a gap of 3 and a radius of 3 from 20, on either side", () => {
    const edge = (side: string, by: string) =>
      told(markersOf(board, { arrangement: "edge", side, gap: 3, by }));
    expect(edge("bass", "diagonals")).toBe("132 -14");
    expect(edge("treble", "midpoint")).toBe("135 14");
  });

  test("a given place lies in the space of the slots about its own offset", () => {
    // at −10 the slots lie at 105, 150; at 10 at 115, 170
    const fretsOf = (along: number) =>
      [-10, 10]
        .map((offset) => markersOf(board, { places: [{ along, offset }] })[0]?.fret)
        .join(" ");
    expect([102, 110, 120, 160, 180, 250].map(fretsOf).join(", ")).toBe(
      "1 1, 1 1, 1 1, 2 1, 2 2, 3 3",
    );
  });
});

describe("between square slots", () => {
  // PlanetMath, "Harmonic mean in trapezoid": widths 44 and 56, length 450: 198 from the narrow end
  const board = frameOf([square(0), square(450)], trackThrough([0, 450], [44, 56]));

  test("44 and 56 wide, 450 apart: 450 · 44 / 100 along, 44 · 56 / 200 across", () => {
    expect(told(markersOf(board))).toBe("198 0");
    expect(told(markersOf(board, { arrangement: "double" }))).toBe("198 -12.32, 198 12.32");
    expect(told(markersOf(board, { arrangement: "double", spread: 20 }))).toBe("198 -10, 198 10");
  });

  test("midpoints: a double a quarter of the width there from the centre line", () => {
    expect(told(markersOf(board, { arrangement: "double", by: "midpoint" }))).toBe(
      "225 -12.5, 225 12.5",
    );
  });

  test("at an edge: square to the centre line, at the marker's own along", () => {
    // 44 + 12 · 198 / 450 = 49.28 wide
    const [dot] = markersOf(board, { arrangement: "edge", side: "treble", gap: 2 });
    expect(dot).toMatchObject({ along: 198, side: "treble" });
    expect(dot?.offset).toBeCloseTo(24.64 - 2 - 3, 12);
    const shape = { kind: "rectangle", length: 8, width: 10 } as const;
    const sized = { diameter: undefined, shape };
    const [pocket] = markersOf(board, { arrangement: "edge", side: "bass", gap: 2 }, sized);
    expect(pocket?.offset).toBeCloseTo(-(24.64 - 2 - 5), 12);
  });
});

describe("the names of holes, and their order: by fret, then along, bass before treble", () => {
  const size = { diameter: 4 };

  test("whatever the order of groups and frets", () => {
    const markers = [
      { frets: [3, 2], ...size, arrangement: "double", spread: 20 },
      { frets: [4, 2], ...size, by: "midpoint", arrangement: "lengthwise", spread: 10 },
      {
        places: [
          { along: 150, offset: -5 },
          { along: 8, offset: 0 },
        ],
        ...size,
      },
    ];
    expect(namesIn(markers)).toEqual([
      ["markers.2.places.1", 1, "centre", 8, 0],
      ["markers.1.frets.1.nut", 2, "centre", 43, 0],
      ["markers.0.frets.1.bass", 2, "bass", 48, -10],
      ["markers.0.frets.1.treble", 2, "treble", 48, 10],
      ["markers.1.frets.1.end", 2, "centre", 53, 0],
      ["markers.0.frets.0.bass", 3, "bass", 80, -10],
      ["markers.0.frets.0.treble", 3, "treble", 80, 10],
      ["markers.1.frets.0.nut", 4, "centre", 107, 0],
      ["markers.1.frets.0.end", 4, "centre", 117, 0],
      // beyond the last of four frets
      ["markers.2.places.0", 5, "bass", 150, -5],
    ]);
  });

  test("a place has a depth of its own, and the group's where it has none", () => {
    const places = [
      { along: 40, offset: 0, depth: 3 },
      { along: 80, offset: 0 },
    ];
    const depths = (group: object, change: object = {}) =>
      checkDesign({
        ...SQUARED,
        ...change,
        markers: [{ places, diameter: 4, ...group }],
      } as Design).holes.map(({ planned }) => planned?.depth);
    expect(depths({ depth: 2 })).toEqual([3, 2]);
    // a travel of 5 less a point of 1
    expect(depths({ travel: 5 })).toEqual([3, 4]);
    expect(depths({}, { depth: 2.5 })).toEqual([3, 2.5]);
    expect(depths({})).toEqual([3, undefined]);
    // a group's own goal stands before the design's, whichever of the two it is
    expect(depths({ travel: 5 }, { depth: 2.5 })).toEqual([3, 4]);
  });
});

describe("pockets", () => {
  const outlineIn = (group: object, change: object = {}) => {
    const markers = [{ frets: [2], by: "midpoint", ...group } as unknown as MarkerGroup];
    const [hole] = checkDesign({ ...SQUARED, ...change, markers }).holes;
    return { outline: told(hole?.outline), width: hole?.width };
  };

  test("a rectangle about its centre; a polygon as it is stated, also of a pair", () => {
    const shape = { kind: "rectangle", length: 10, width: 4 };
    expect(outlineIn({ shape })).toEqual({
      outline: "43 -2, 53 -2, 53 2, 43 2",
      width: 4,
    });
    const corners = [
      { x: -4, y: -1 },
      { x: 6, y: 0 },
      { x: -4, y: 3 },
    ];
    const polygon = { shape: { kind: "polygon", corners } };
    expect(outlineIn(polygon)).toEqual({
      outline: "44 -1, 54 0, 44 3",
      width: 4,
    });
    const pair = { ...polygon, arrangement: "double", spread: 20 };
    expect(outlineIn(pair).outline).toBe("44 -11, 54 -10, 44 -7");
    // at an edge 32 from the centre line with a gap of 2: its own reach is 1 to the bass side, 3 to the treble
    const edge = (side: string) =>
      outlineIn({ ...polygon, arrangement: "edge", side, gap: 2 }).outline;
    expect(edge("bass")).toBe("44 -30, 54 -29, 44 -26");
    expect(edge("treble")).toBe("44 26, 54 27, 44 30");
  });

  const trapezoid = (board: Frame, slotGap: number, edgeGap: number) => {
    const issues: DesignIssue[] = [];
    const shape = { kind: "trapezoid", slotGap, edgeGap };
    const path = { group: "markers.0" };
    const group = { where: { frets: [2] }, shape, path } as unknown as GroupSpec;
    const [marker] = layOut(board, [group], issues);
    return marker ? told(marker.outline) : issues.map((issue) => issue.path);
  };
  const SLOTS = [square(0), square(100), square(130), square(190)];
  const NO_ROOM = ["markers.0.frets.0"];

  test("a trapezoid keeps its gaps between square slots and parallel edges", () => {
    expect(trapezoid(frameOf(SLOTS, 40), 5, 3)).toBe("105 -17, 125 -17, 125 17, 105 17");
  });

  test("between slots that lean 3 in 4: a gap of 4 square to them is 5 along", () => {
    // at 16 from the centre line they have moved 12 along
    const board = frameOf([leaning(-15, 15), leaning(100, 130), leaning(160, 190)], 40);
    expect(trapezoid(board, 4, 4)).toBe("108 -16, 158 -16, 182 16, 132 16");
  });

  test("between edges that part by 3 in 4 each: a gap of 4 takes 5 across", () => {
    const slots = [square(0), square(100), square(140)];
    const board = frameOf(slots, trackThrough([100, 140], [40, 100]));
    expect(trapezoid(board, 10, 4)).toBe("110 -22.5, 130 -37.5, 130 37.5, 110 22.5");
  });

  test("a waist between the slots narrows it, a bulge does not widen it, nor what lies beyond", () => {
    const bent = (...widths: readonly [number[], number[]]) =>
      trapezoid(frameOf(SLOTS, trackThrough(...widths)), 5, 2);
    const whole = "105 -18, 125 -18, 125 18, 105 18";
    const narrow = "105 -15, 125 -15, 125 15, 105 15";
    expect(bent([0, 100, 115, 130, 200], [40, 40, 34, 40, 40])).toEqual(narrow);
    expect(bent([0, 100, 115, 130, 200], [40, 40, 46, 40, 40])).toEqual(whole);
    expect(bent([0, 60, 90, 140, 200], [40, 34, 40, 40, 30])).toEqual(whole);
  });

  test("gaps that leave no room: an issue at the fret", () => {
    const board = frameOf(SLOTS, 40);
    expect(trapezoid(board, 14, 19)).toBe("114 -1, 116 -1, 116 1, 114 1");
    const tight = [16, 3, 5, 21, 16, 21, 15, 3, 5, 20];
    for (let i = 0; i < tight.length; i += 2) {
      expect(trapezoid(board, tight[i] as number, tight[i + 1] as number)).toEqual(NO_ROOM);
    }
    // 8 wide at one slot, 68 at the other: a gap of 4 takes 5 on either side, more than the 4 there
    const wedge = frameOf([square(0), square(100), square(140)], trackThrough([100, 140], [8, 68]));
    expect(trapezoid(wedge, 0, 3)).toBeTypeOf("string");
    expect(trapezoid(wedge, 0, 4)).toEqual(NO_ROOM);
  });
});

test("a fret beyond the end where the board's width has run out", () => {
  const board = { ...SQUARED.board, length: 100, width: { nut: 64, fret2: 34 } };
  // 15/32 less per mm: nothing at 136.5, 4 at 128
  expect(
    checkDesign({ ...SQUARED, board, markers: [{ frets: [4], diameter: 2 }] }).holes,
  ).toHaveLength(1);
  const narrow = { ...board, width: { nut: 64, fret2: 30 } };
  expect(() =>
    checkDesign({ ...SQUARED, board: narrow, markers: [{ frets: [2, 4], diameter: 2 }] }),
  ).toThrow(/markers\.0\.frets\.1: expected a fret where the board has a width/);
});
