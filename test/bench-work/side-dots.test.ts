/**
 * Side dots beside their markers, and what their holes meet, in the worst case of thickness, stop and point. The board is
 * flat, 40 wide and 16 thick with 1 sanded off: a face of 15, a line at 7.5, a dot of 3 up to 9. Lengths in mm.
 */
import { describe, expect, test } from "vitest";
import { checkDesign, type Design } from "../../src/index.js";
import { EXACT } from "../check/necks.js";

const BOARD = {
  scale: { positions: [100, 140, 180] },
  board: { length: 200, width: 40, thickness: 16 },
  radius: "flat",
  sanding: 1,
  bit: { kind: "end-mill" },
  web: 0,
  sideDots: { diameter: 3, margin: 0.5, depth: 5 },
} as const;

/** The findings about side dots: code, fret, value and limit. */
function found(change: object, tolerance: object = {}): unknown[] {
  const design = { ...BOARD, markers: [], ...change, tolerance: { ...EXACT, ...tolerance } };
  return checkDesign(design as Design)
    .findings.filter(({ code }) => code.startsWith("side-dot"))
    .map(({ code, fret, value, limit }) => [code, fret, expect.closeTo(value, 9), limit]);
}

/** One dot of 10 at a place, drilled to a depth. */
const dotAt = (offset: number, depth: number, stated: object = {}) => ({
  markers: [{ places: [{ along: 50, offset }], diameter: 10, depth, ...stated }],
});

test("the face must hold the dot and a margin above and below it, in the worst case", () => {
  const dots = (margin: number) => ({ ...dotAt(0, 2), sideDots: { diameter: 3, margin } });
  expect(found(dots(6))).toEqual([]);
  expect(found(dots(6.01))).toEqual([["side-dot-tight", 1, 15, 15.02]]);
  const tolerance = { sanding: 0.25, thickness: 0.5 };
  expect(found(dots(5.625), tolerance)).toEqual([]);
  expect(found(dots(5.75), tolerance)).toEqual([["side-dot-tight", 1, 14.25, 14.5]]);
});

test("one for each marked fret", () => {
  const markers = [{ frets: [2, 1], diameter: 4, arrangement: "double", spread: 10 }];
  const tight = found({ markers, sideDots: { diameter: 3, margin: 7 } });
  expect(tight.map((each) => (each as unknown[])[1])).toEqual([1, 2]);
});

describe("a marker's hole over a side dot 5 deep, which ends 15 from the centre line", () => {
  const TWIST = { kind: "twist", angle: 90 };
  const FORSTNER = { kind: "forstner", point: 2, spur: 1 };
  const meets = (value: number) => [["side-dot-meets-hole", 1, value, 0]];

  test("its floor at 16 − 7 = 9 just clears the dot's top", () => {
    expect(found(dotAt(-12, 7))).toEqual([]);
    expect(found(dotAt(-12, 7.25))).toEqual(meets(-0.25));
  });

  test.each<[string, object, number]>([
    ["thickness", { thickness: 0.25 }, -0.25],
    ["stop", { stop: 0.5 }, -0.5],
    ["point, of an end mill", { point: 0.5 }, 0],
    ["seat, from the wood", { seat: 0.5 }, 0],
  ])("the worst case of %s", (_, tolerance, value) => {
    expect(found(dotAt(-12, 7), tolerance)).toEqual(value < 0 ? meets(value) : []);
  });

  test("seat counts from the table", () => {
    expect(found({ ...dotAt(-12, 7), stop: { from: "table" } }, { seat: 0.5 })).toEqual(
      meets(-0.5),
    );
  });

  test.each<[string, number, object, object, number | undefined]>([
    ["a rim that comes just as near", -10, {}, {}, undefined],
    ["nearer by the layout error", -10, {}, { layout: 0.5 }, -0.5],
    ["on the treble side", 12, {}, {}, undefined],
    // 3 from the axis a cone of 90° has 2 of its 5 left
    ["a cone's flank", -12, { bit: TWIST }, {}, -0.5 - 2],
    ["with three fifths of the point's error", -12, { bit: TWIST }, { point: 0.5 }, -0.5 - 2 - 0.3],
    ["a spur, and the whole of the point's error", -12, { bit: FORSTNER }, { point: 0.5 }, -2],
    ["a point that the side dot reaches", -15, { bit: FORSTNER }, {}, -0.5 - 2],
    ["what is drilled, with neither bit nor errors", -12, { drilled: true }, { stop: 1 }, -0.5],
  ])("%s", (_, offset, stated, tolerance, value) => {
    expect(found(dotAt(offset, 7.5, stated), tolerance)).toEqual(
      value === undefined ? [] : meets(value),
    );
  });

  test("a pocket, by its width; and what no depth suits is not met", () => {
    const shape = { kind: "rectangle", length: 8, width: 10 };
    const pocket = (offset: number) => dotAt(offset, 7.5, { diameter: undefined, shape });
    expect(found(pocket(-12))).toEqual(meets(-0.5));
    expect(found(pocket(-10))).toEqual([]);
    const none = { depth: undefined, fill: { kind: "poured", keep: 16 } };
    expect(found(dotAt(-12, 7.5, none))).toEqual([]);
  });

  test("an existing radius: the depth counts from the top at the hole, the line from what is left", () => {
    // 25 has dropped 5 at 15 and 10 at 20, so the face is 5 high, the dot's top 2.5 + 1.5
    const curved = { existing: { radius: 25 }, radius: 25, sanding: 1 };
    expect(found({ ...dotAt(-15, 6), ...curved })).toEqual([]);
    expect(found({ ...dotAt(-15, 8), ...curved })).toEqual(meets(16 - 5 - 8 - (2.5 + 1.5)));
  });
});

describe("a fret slot over a side dot of 3", () => {
  // sawn 8 deep its floor lies at 8, 1 below the dot's top
  const sawn = (along: number, depth = 8) => ({
    markers: [{ places: [{ along, offset: 0 }], diameter: 1 }],
    slot: { depth, tang: 2, clearance: 0, web: 0 },
  });
  const meets = (fret: number, value = -1) => [["side-dot-meets-slot", fret, value, 0]];

  test.each([
    [1, "the nut is no slot", []],
    [98.4, "near fret 1", []],
    [99, "under fret 1", meets(1)],
    [101, "under fret 1, on its other side", meets(2)],
    [101.5, "half the dot from fret 1: they touch", []],
    [120, "between the slots", []],
    [139, "under fret 2", meets(2)],
    [181, "under the last fret", meets(4)],
  ])("at %d: %s", (along, _, findings) => {
    expect(found(sawn(along))).toEqual(findings);
  });

  test("its floor in the worst case; and no planned depth, nothing to meet", () => {
    expect(found(sawn(99, 7))).toEqual([]);
    expect(found(sawn(99, 7), { thickness: 0.25 })).toEqual(meets(1, -0.25));
    expect(found({ ...sawn(99), slot: { tang: 2 } })).toEqual([]);
  });
});

test("on a fanned board a line that leans as the slots do leads from the marker to the bass edge", () => {
  // bass 200, treble 240, square at the nut: fret 1 at 11.2 and 13.5, so between them 1.1 in 40 and less
  const scale = { bass: 200, treble: 240, square: 0, frets: 12 };
  const bassAt = (n: number) => 200 * (1 - 2 ** (-n / 12));
  const lean = (n: number) => (40 * (1 - 2 ** (-n / 12))) / 40;
  const mean = (lean(11) + lean(12)) / 2;
  // a marker whose line meets the bass edge on fret 12
  const along = bassAt(12) + mean * 20 - 0.1;
  const change = (by: number) => ({
    scale,
    markers: [{ places: [{ along: along + by, offset: 0 }], diameter: 1 }],
    slot: { depth: 8, tang: 2, clearance: 0, web: 0 },
  });
  expect(found(change(0))).toHaveLength(1);
  expect(found(change(-1.5))).toEqual([]);
});
