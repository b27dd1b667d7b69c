/**
 * Findings at their very limits: a value that just meets its limit passes, the next number beyond it does not. All
 * lengths are sums of powers of two, so that every sum here is exact.
 */
import { describe, expect, test } from "vitest";
import { checkDesign, type Design } from "../../src/index.js";
import { SQUARED as BOARD } from "./necks.js";

/** A little more than a number, by its last bits. */
const over = (value: number) => value * (1 + 2 ** -50);
const under = (value: number) => value * (1 - 2 ** -50);

const codesOf = (change: object) =>
  checkDesign({ ...BOARD, ...change }).findings.map(({ code }) => code);
const onBoard = (change: object) => ({ board: { ...BOARD.board, ...change } });
const dot = (change: object) => ({ markers: [{ frets: [2], diameter: 8, ...change }] });

test("nothing is wrong with it", () => {
  expect(codesOf({})).toEqual([]);
});

describe("a planned depth", () => {
  test.each<[string, object, string[]]>([
    // window 0.5 + 1 to 8 − 1 − 1
    ["keeps the marker", { depth: 1.5 }, []],
    ["all but keeps it", { depth: under(1.5) }, ["below-keep"]],
    ["leaves a trace", { depth: over(0.5) }, ["below-keep"]],
    ["leaves nothing", { depth: 0.5 }, ["nothing-left"]],
    ["leaves the web", { depth: 6 }, []],
    ["all but leaves the web", { depth: over(6) }, ["below-web"]],
    ["goes all but through", { depth: under(7) }, ["below-web"]],
    ["goes through", { depth: 7 }, ["breaks-through"]],
  ])("%s", (_, change, codes) => {
    expect(codesOf(change)).toEqual(codes);
  });

  test("a solid dot just flush, and just below the surface", () => {
    const fill = { kind: "solid", thickness: 2, keep: 1 };
    // its top lies at the removal: 2 + 0.5 at most
    expect(codesOf({ fill, depth: 2.5 })).toEqual([]);
    expect(codesOf({ fill, depth: over(2.5) })).toEqual(["below-surface"]);
  });
});

test("a window of one depth is a window", () => {
  expect(codesOf(onBoard({ thickness: 3.5 }))).toEqual([]);
  expect(codesOf(onBoard({ thickness: under(3.5) }))).toEqual(["no-depth"]);
});

test("a dot's clearance of the slots: half a millimetre, and nothing", () => {
  // 32 mm between the slots
  expect(codesOf(dot({ diameter: 31 }))).toEqual([]);
  expect(codesOf(dot({ diameter: over(31) }))).toEqual(["near-slot"]);
  expect(codesOf(dot({ diameter: 32 }))).toEqual(["near-slot"]);
  expect(codesOf(dot({ diameter: over(32) }))).toEqual(["cuts-slot"]);
});

test("a dot at the board's edge", () => {
  const pair = (spread: number) => dot({ arrangement: "double", spread });
  expect(codesOf(pair(56))).toEqual([]);
  expect(codesOf(pair(over(56)))).toEqual(["past-edge", "past-edge"]);
});

test("two dots that touch", () => {
  const pair = (spread: number) => dot({ arrangement: "double", spread });
  expect(codesOf(pair(8))).toEqual([]);
  expect(codesOf(pair(under(8)))).toEqual(["dots-overlap"]);
});

describe("the edges", () => {
  test("as thick as the web, and thinner: at the nut, each fret and the end", () => {
    const thin = (thickness: number) => ({ ...onBoard({ thickness }), markers: [] });
    expect(codesOf(thin(1.5))).toEqual([]);
    const { findings } = checkDesign({ ...BOARD, ...thin(1.25) });
    expect(findings.map(({ message: _, ...facts }) => facts)).toEqual(
      [
        { station: "nut" },
        { station: "fret1", fret: 1 },
        { station: "fret2", fret: 2 },
        { station: "fret3", fret: 3 },
        { station: "fret4", fret: 4 },
        { station: "end" },
      ].map((place) => ({
        code: "thin-edge",
        severity: "error",
        value: 0.75,
        limit: 1,
        ...place,
      })),
    );
  });

  test("of fanned frets each edge by itself", () => {
    const scale = { bass: 680, treble: 650, perpendicular: 0, frets: 2 };
    const fanned = { ...onBoard({ thickness: 1.25 }), scale, markers: [] };
    const { findings } = checkDesign({ ...BOARD, ...fanned });
    expect(findings.map(({ station, side }) => [station, side])).toEqual([
      ["nut", "bass"],
      ["nut", "treble"],
      ["fret1", "bass"],
      ["fret1", "treble"],
      ["fret2", "bass"],
      ["fret2", "treble"],
      ["end", undefined],
    ]);
  });
});

describe("the slots", () => {
  // tang 2 + clearance 0.5 + removal 0.5 = 3 at least; 8 less the web at most
  const slot = (change: object) => ({
    slot: { depth: 4, tang: 2, clearance: 0.5, web: 1, ...change },
  });
  test.each<[string, object, string[]]>([
    ["deep enough", { depth: 3 }, []],
    ["all but deep enough", { depth: under(3) }, Array(4).fill("slot-too-shallow")],
    ["as deep as may be", { depth: 7 }, []],
    ["too deep", { depth: over(7) }, Array(4).fill("slot-too-deep")],
    ["one depth for all", { depth: 3, web: 5 }, []],
    [
      "no depth for all",
      { depth: 3, web: over(5) },
      ["no-slot-depth", ...Array(4).fill("slot-too-deep")],
    ],
  ])("%s", (_, change, codes) => {
    expect(codesOf({ ...slot(change), markers: [] })).toEqual(codes);
  });
});

describe("side dots", () => {
  // the face is 8 − 0.5 high, a dot of 2 in its middle
  const dots = (change: object) => ({
    sideDots: { diameter: 2, margin: 0.5, depth: 4, ...change },
  });
  test("the face just holds the dot and its margins", () => {
    expect(codesOf(dots({ margin: 2.75 }))).toEqual([]);
    expect(codesOf(dots({ margin: over(2.75) }))).toEqual(["side-dot-tight"]);
  });

  test("its hole just reaches the height of a marker's floor", () => {
    // the dot's top is 3.75 + 1 high, and it ends beside the bit's point: a rim at that height is 8 − 4.75 deep
    const deep = { ...dots({ depth: 31, margin: 0 }), ...dot({}) };
    expect(codesOf({ ...deep, depth: 3.25 })).toEqual([]);
    expect(codesOf({ ...deep, depth: over(3.25) })).toEqual(["side-dot-meets-hole"]);
    // as far as the point it meets that, 1 mm deeper
    const middle = { ...dots({ depth: 32, margin: 0 }), ...dot({}) };
    expect(codesOf({ ...middle, depth: 2.25 })).toEqual([]);
    expect(codesOf({ ...middle, depth: over(2.25) })).toEqual(["side-dot-meets-hole"]);
    // and no hole, no meeting: where no depth suits it is drilled to none
    const none = { ...deep, ...onBoard({ thickness: 3.25 }) };
    expect(codesOf(none)).toEqual(["no-depth"]);
  });

  test("a slot's floor just reaches the height of the dot's top", () => {
    // slots 32 apart: a dot of 32 reaches both
    const wide = (depth: number) => ({
      ...dots({ diameter: 32, margin: 0 }),
      ...onBoard({ thickness: 64 }),
      slot: { depth, tang: 2, clearance: 0.5, web: 0 },
    });
    // beside the slots only where the radius exceeds the half gap: 16 is not less than 16
    expect(codesOf(wide(20))).toEqual([]);
    const touching = (depth: number) => ({ ...wide(depth), sideDots: { diameter: 34, margin: 0 } });
    // face 63.5, top at 31.75 + 17 = 48.75: floor at 64 − depth
    expect(codesOf(touching(15.25))).toEqual([]);
    expect(codesOf(touching(over(15.25)))).toEqual(["side-dot-meets-slot"]);
  });
});

test("errors come first, and warnings keep their order", () => {
  const markers = [
    { frets: [2], diameter: 31.5 },
    { frets: [3], diameter: 31.75 },
    { frets: [4], diameter: 8, arrangement: "double", spread: 60 },
  ];
  const { findings } = checkDesign({ ...BOARD, markers } as Design);
  expect(findings.map(({ code, fret }) => [code, fret])).toEqual([
    ["past-edge", 4],
    ["past-edge", 4],
    ["near-slot", 2],
    ["near-slot", 3],
  ]);
});
