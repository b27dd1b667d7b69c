/** Edges: a radius of 25 drops 10 at 20 from its crest (15-20-25), and 5 at 15. Lengths in mm. */
import { describe, expect, test } from "vitest";
import type { FretLine } from "../../src/board/fret-lines.js";
import { edgePlaces, edgesOf, faceAt, isOnBoard, worstFaceAt } from "../../src/drilling/edges.js";
import { type Track, trackThrough } from "../../src/geometry/track.js";
import { boardOf, frameOf, leaning, square } from "./frames.js";

/** 200 long; 16 thick, 1 taken off the middle, at most 1.5. */
const short = (slots: readonly FretLine[], width: number | Track) =>
  boardOf(slots, width, { length: 200 });

/** 30 wide at the nut, 40 at fret 1 and beyond. */
const STRAIGHT = short([square(0), square(100)], trackThrough([0, 100, 200], [30, 40, 40]));
const FANNED = short([leaning(-10, 10), leaning(90, 100)], 40);

describe("edges of a straight board", () => {
  // at 15 from the crest 25 − 20 = 5 is taken, at 20 from it 25 − 15 = 10; and 1 everywhere
  const nut = { station: "nut", along: 0, offset: 15, removal: 6, thickness: 10 };
  const fret = { station: "fret1", along: 100, offset: 20, removal: 11, thickness: 5 };
  const end = { ...fret, station: "end", along: 200 };

  test("are both as one, and name no side", () => {
    expect(edgesOf(STRAIGHT, false)).toStrictEqual([nut, fret, end]);
  });

  test("with side dots, on the middle of the face", () => {
    expect(edgesOf(STRAIGHT, true)).toStrictEqual([
      { ...nut, sideDotLine: 5 },
      { ...fret, sideDotLine: 2.5 },
      { ...end, sideDotLine: 2.5 },
    ]);
  });
});

describe("edges of a fanned board", () => {
  const here = { offset: 20, removal: 11, thickness: 5 };
  const edges = [
    { station: "nut", side: "bass", along: -10, ...here },
    { station: "nut", side: "treble", along: 10, ...here },
    { station: "fret1", side: "bass", along: 90, ...here },
    { station: "fret1", side: "treble", along: 100, ...here },
    { station: "end", along: 200, ...here },
  ];

  test("stand apart, but for the end", () => {
    expect(edgesOf(FANNED, false)).toStrictEqual(edges);
  });

  test("with side dots", () => {
    const dotted = edges.map((edge) => ({ ...edge, sideDotLine: 2.5 }));
    expect(edgesOf(FANNED, true)).toStrictEqual(dotted);
  });
});

test("what is left of the face, as designed and at the worst", () => {
  expect([0, 50, 100].map((s) => faceAt(STRAIGHT, s))).toEqual([10, expect.any(Number), 5]);
  // by Pythagoras at 50, 35 wide: 25 − √(25² − 17.5²)
  expect(faceAt(STRAIGHT, 50)).toBeCloseTo(16 - 1 - (25 - Math.sqrt(25 ** 2 - 17.5 ** 2)), 12);
  expect(worstFaceAt(STRAIGHT, 100, 0.25)).toBe(16 - 1.5 - 10 - 0.25);
});

describe("a slot is on the board with both its ends", () => {
  const board = frameOf([square(0)], 40, 200);
  test.each([
    [leaning(190, 200), true],
    [leaning(200, 190), true],
    [square(200), true],
    [leaning(190, 200.5), false],
    [leaning(200.5, 190), false],
    [square(200.5), false],
  ])("%j: %s", (line, isOn) => {
    const { nominal, deepest, shallowest, thickness } = STRAIGHT;
    const whole = { ...board, nominal, deepest, shallowest, thickness };
    expect(isOnBoard(whole, line)).toBe(isOn);
  });

  test("one that is not has no edges in the list", () => {
    const slots = [square(0), square(200), square(201)];
    expect(edgePlaces(short(slots, 40))).toStrictEqual([
      { station: "nut", along: 0 },
      { station: "fret1", along: 200 },
      { station: "end", along: 200 },
    ]);
    const fanned = [leaning(-10, 10), leaning(180, 201)];
    expect(edgePlaces(short(fanned, 40)).map(({ station }) => station)).toEqual([
      "nut",
      "nut",
      "end",
    ]);
  });
});
