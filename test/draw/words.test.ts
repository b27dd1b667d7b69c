/** The words of the drawings, on an invented flat board of 8 mm: from 1.50 to 6.00 suit a dot (0.5 + 1, 8 − 1 − 1). */
import { describe, expect, test } from "vitest";
import {
  amount,
  figure,
  governed,
  hasWindow,
  least,
  markerWord,
  most,
  settingName,
  settingOf,
  titled,
  windowWords,
} from "../../src/draw/words.js";
import { checkDesign, type Hole, type Report } from "../../src/index.js";
import { SQUARED } from "../check/necks.js";

const reportOn = (change: object): Report => checkDesign({ ...SQUARED, ...change });
const holesOf = (change: object): readonly Hole[] => reportOn(change).holes;

const solid = (thickness: number) => ({ kind: "solid", thickness, keep: 0.25 });
/** One poured dot at fret 2; two solid ones at 1 and 3 that must end flush: from 0.75 to 1.25. */
const TWO = {
  markers: [...SQUARED.markers, { frets: [1, 3], diameter: 8, fill: solid(0.75) }],
};

describe("lengths", () => {
  test("to two decimals, or as many as are asked for, with a true minus", () => {
    expect([2.345, -2.346, 0].map((mm) => figure(mm))).toEqual(["2.35", "−2.35", "0.00"]);
    expect(figure(2.5, 0)).toBe("3");
    expect(figure(-2.25, 1)).toMatch(/^−2\.[23]$/);
  });

  test("a least never reads too small, a greatest never too great", () => {
    expect([least(1.231), most(1.239)]).toEqual(["1.24", "1.23"]);
    expect([least(-1.239), most(-1.231)]).toEqual(["−1.23", "−1.24"]);
  });

  test("what is left, or by how much it is not", () => {
    expect([amount(0.5), amount(0), amount(-0.25)]).toEqual([
      "0.50",
      "none (0.00 too little)",
      "none (0.25 too little)",
    ]);
  });
});

test("a title has the neck's name, where it has one that shows", () => {
  expect(titled("Depths", { name: "Fir (invented)" })).toBe("Depths: Fir (invented)");
  expect(titled("Depths", { name: "Fir\n  two" })).toBe("Depths: Fir two");
  expect([titled("Depths", {}), titled("Depths", { name: " \n" })]).toEqual(["Depths", "Depths"]);
});

test("a setting has a letter where there are several", () => {
  expect([settingName(0, 1), settingName(0, 2), settingName(1, 2)]).toEqual([
    "stop setting",
    "setting A",
    "setting B",
  ]);
});

test("the setting that serves a hole", () => {
  const report = reportOn(TWO);
  const names = report.holes.map((hole, i) => [hole.fret, settingOf(report, i)?.name]);
  expect(names).toEqual([
    [1, "setting A"],
    [2, "setting B"],
    [3, "setting A"],
  ]);
  expect(settingOf(report, 1)).toMatchObject({ index: 1, setting: { min: 1.5, max: 6 } });
  const one = reportOn({});
  expect(settingOf(one, 0)).toMatchObject({ index: 0, name: "stop setting" });
  // 2 mm of wood: no depth suits
  const none = reportOn({ board: { ...SQUARED.board, thickness: 2 } });
  expect(settingOf(none, 0)).toBeUndefined();
});

describe("a window", () => {
  const onBoard = (change: object) => ({ board: { ...SQUARED.board, ...change } });
  const channel = { width: 8, depth: 6 };
  const [plain, thin, hollow, flush] = [
    {},
    onBoard({ thickness: 2 }),
    onBoard({ channel }),
    { fill: solid(0.5), crown: 0.75, tolerance: { ...SQUARED.tolerance, crown: 0.25 } },
  ].map((change) => holesOf(change)[0] as Hole) as [Hole, Hole, Hole, Hole];

  test("that has depths, or none and why", () => {
    expect(windowWords(plain)).toBe("Depths from 1.50 to 6.00 suit this hole.");
    const none = "No depth suits this hole: it needs at least";
    expect(windowWords(thin)).toBe(`${none} 1.50, and at most 0.00 (web under the bit).`);
    // over the channel 2 mm are left
    expect(windowWords(hollow)).toBe(`${none} 1.50, and at most 0.00 (web above the channel).`);
    // 0.5 to 1 mm are taken: 1 + 0.25 at least, 0.5 + 0.5 at most
    expect(windowWords(flush)).toBe(`${none} 1.25, and at most 1.00 (must end flush).`);
    expect([plain, thin, hollow, flush].map(hasWindow)).toEqual([true, false, false, false]);
  });

  test("of one depth is a window", () => {
    const [hole] = holesOf(onBoard({ thickness: 3.5 }));
    expect(hole && hasWindow(hole)).toBe(true);
    expect(hole && windowWords(hole)).toBe("Depths from 1.50 to 1.50 suit this hole.");
  });
});

test("a pocket is an inlay, a round hole a dot", () => {
  const markers = [
    ...SQUARED.markers,
    { frets: [3], shape: { kind: "rectangle", length: 6, width: 8 } },
  ];
  expect(holesOf({ markers }).map(markerWord)).toEqual(["dot", "inlay"]);
});

test("what a hole governs", () => {
  expect(governed(reportOn({}), 0)).toEqual([
    { ends: ["min", "max"], words: "sets least and most" },
  ]);
  const two = reportOn(TWO);
  expect([0, 1, 2].map((hole) => governed(two, hole))).toEqual([
    [{ ends: ["min", "max"], words: "sets least and most of A" }],
    [{ ends: ["min", "max"], words: "sets least and most of B" }],
    [],
  ]);
  // the second keeps more, the first is bored by a longer point
  const apart = reportOn({
    markers: [
      { frets: [2], diameter: 8, bit: { kind: "forstner", point: 2 } },
      { frets: [3], diameter: 8, fill: { kind: "poured", keep: 2 }, bit: { kind: "end-mill" } },
    ],
  });
  const said = [0, 1].map((hole) => governed(apart, hole).map(({ ends, words }) => [ends, words]));
  expect(apart.stops.common).toMatchObject({ min: 2.5, max: 5 });
  expect(said).toEqual([[[["max"], "sets the most"]], [[["min"], "sets the least"]]]);
});
