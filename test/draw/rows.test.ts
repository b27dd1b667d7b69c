/** Flags, legends and columns by their measures on paper; the stop plan in sentences. Lengths in mm. */
import { describe, expect, test } from "vitest";
import { ABOVE } from "../../src/draw/dimensions.js";
import { type Flag, flagMarks } from "../../src/draw/flags.js";
import { farFrom, middled, SAMPLE, withLegend } from "../../src/draw/legend.js";
import { LETTER, widthOf } from "../../src/draw/lettering.js";
import { type Mark, rectangle, type Spot } from "../../src/draw/marks.js";
import { planWords } from "../../src/draw/plan-words.js";
import { columnMarks, tableMarks } from "../../src/draw/table.js";
import { checkDesign } from "../../src/index.js";
import { SQUARED } from "../check/necks.js";
import { runsOf } from "./svg.js";

const writtenIn = (marks: readonly Mark[]) =>
  marks.flatMap(({ tag, words, attributes: { x, y, "text-anchor": anchor } }) =>
    tag === "text" ? [{ words, x: Number(x), y: Number(y), anchor }] : [],
  );
const near = (value: number) => expect.closeTo(value, 2);

describe("flags", () => {
  const flag = (x: number, words: string, change: object = {}): Flag => ({
    x,
    foot: 0,
    words,
    pen: "wide",
    ...change,
  });
  const linesOf = (marks: readonly Mark[]) =>
    marks
      .filter(({ tag }) => tag === "path")
      .map(({ pen, name, attributes }) => [pen, name, runsOf(String(attributes.d)).flat()]);

  test("a line upright to the row, one below the words, the words a little above it", () => {
    const marks = flagMarks([flag(10, "fret 12", { name: "setting" })], -20);
    const end = 10 + widthOf("fret 12") + ABOVE;
    expect(linesOf(marks)).toEqual([
      [
        "wide",
        "setting",
        [
          [10, 0],
          [10, -20],
        ],
      ],
      [
        "narrow",
        undefined,
        [
          [10, -20],
          [near(end), -20],
        ],
      ],
    ]);
    expect(writtenIn(marks)).toMatchObject([
      { words: "fret 12", x: near(10 + ABOVE), y: near(-20 - ABOVE) },
    ]);
  });

  test("to the left", () => {
    const marks = flagMarks([flag(10, "fret 12")], -20, -1);
    expect(linesOf(marks)[1]?.[2]).toEqual([
      [10, -20],
      [near(10 - widthOf("fret 12") - ABOVE), -20],
    ]);
    expect(writtenIn(marks)).toMatchObject([{ x: near(10 - ABOVE), anchor: "end" }]);
    // one that reaches the next one's line flies a row higher
    const two = writtenIn(flagMarks([flag(10, "a"), flag(10 + widthOf("a"), "b")], -20, -1));
    expect(two.map(({ y }) => y)).toEqual([near(-20 - ABOVE), near(-20 - ABOVE - 1.6 * LETTER)]);
  });

  test("one that just ends before the next one's line stays beside it", () => {
    const room = widthOf("a") + 2 * ABOVE;
    const rows = (apart: number) =>
      writtenIn(flagMarks([flag(0, "a"), flag(apart, "b")], -20)).map(({ y }) => y);
    const low = near(-20 - ABOVE);
    expect(rows(room + 0.01)).toEqual([low, low]);
    expect(rows(room - 0.01)).toEqual([near(-20 - ABOVE - 1.6 * LETTER), low]);
  });
});

describe("a legend", () => {
  const box = rectangle("wide", [10, 0], [110, 50]);
  const corners: Spot[] = [];
  const entry = (words: string) => ({
    words,
    sample: (corner: Spot) => {
      corners.push(corner);
      return [rectangle("tint", corner, farFrom(corner), "window")];
    },
  });

  test("samples with their words, side by side below the drawing; in a new row where there is no room", () => {
    corners.length = 0;
    const words = ["i".repeat(20), "m".repeat(20), "n".repeat(20)];
    const marks = withLegend([box], words.map(entry));
    const width = (text: string) => SAMPLE.width + 2 + widthOf(text);
    const top = 50 + 2 * LETTER;
    // at least 150 wide, though the drawing is but 100
    expect(width(words[0] ?? "") + 7 + width(words[1] ?? "")).toBeLessThanOrEqual(150);
    expect(corners).toEqual([
      [10, near(top)],
      [near(10 + width(words[0] ?? "") + 7), near(top)],
      [10, near(top + 1.7 * LETTER)],
    ]);
    expect(marks[0]).toBe(box);
    expect(writtenIn(marks).map(({ words: said }) => said)).toEqual(words);
    expect(writtenIn(marks)[0]).toMatchObject({
      x: near(10 + SAMPLE.width + 2),
      y: near(top + 0.85 * LETTER),
    });
    // a sample is not what it stands for
    for (const mark of marks.slice(1)) expect(mark.name).toBeUndefined();
  });

  test("words that are wider than all stand in the first row all the same", () => {
    corners.length = 0;
    withLegend([box], ["m".repeat(80), "n"].map(entry));
    expect(corners).toEqual([
      [10, near(50 + 2 * LETTER)],
      [10, near(50 + 2 * LETTER + 1.7 * LETTER)],
    ]);
  });

  test("as wide as a wider drawing", () => {
    corners.length = 0;
    withLegend(
      [rectangle("wide", [0, 0], [600, 50])],
      ["a", "b", "c"].map((a) => entry(a.repeat(30))),
    );
    expect(new Set(corners.map(([, y]) => y)).size).toBe(1);
  });

  test("a sample's first end is its top left corner; both are moved to its middle", () => {
    expect(
      [
        [0, 0],
        [10, 4],
      ].map((spot, i) => middled(spot as unknown as Spot, i)),
    ).toEqual([
      [0, LETTER / 2],
      [10, 4 - LETTER / 2],
    ]);
  });
});

describe("columns", () => {
  const rowY = (row: number) => 10 + 5 * row;

  test("side by side, as wide as their widest words, numbers by their ends", () => {
    const marks = tableMarks(
      [
        { head: "fret", cells: ["3", "12, bass"] },
        { head: "depth", cells: ["1.50", ""], anchor: "end" },
        { head: "", cells: ["a", "b"] },
      ],
      100,
      rowY,
    );
    const second = 100 + widthOf("12, bass") + 4;
    const third = second + widthOf("depth") + 4;
    const y = (row: number) => near(rowY(row) + 0.36 * LETTER);
    expect(writtenIn(marks)).toEqual([
      { words: "fret", x: 100, y: -1.5, anchor: undefined },
      { words: "3", x: 100, y: y(0), anchor: undefined },
      { words: "12, bass", x: 100, y: y(1), anchor: undefined },
      { words: "depth", x: near(second + widthOf("depth")), y: -1.5, anchor: "end" },
      { words: "1.50", x: near(second + widthOf("depth")), y: y(0), anchor: "end" },
      { words: "a", x: near(third), y: y(0), anchor: undefined },
      { words: "b", x: near(third), y: y(1), anchor: undefined },
    ]);
  });

  test("one by itself", () => {
    const marks = columnMarks({ head: "", cells: ["", "x"] }, 7, rowY);
    expect(writtenIn(marks)).toMatchObject([{ words: "x", x: 7 }]);
  });
});

describe("the stop plan", () => {
  const wordsOf = (change: object) => planWords(checkDesign({ ...SQUARED, ...change }));
  const solid = (thickness: number) => ({ kind: "solid", thickness, keep: 0.25 });

  test("one setting for all, and who governs it", () => {
    expect(wordsOf({ markers: [] })).toEqual([]);
    // 0.5 + 1, 8 − 1 − 1, and the middle
    const setting = "The stop setting is 3.75, at the bit's rim.";
    expect(wordsOf({})).toEqual([
      "Depths from 1.50 to 6.00 suit every hole: fret 2 sets the least and the most (web under the bit).",
      setting,
    ]);
    const apart = [
      { frets: [2], diameter: 8, bit: { kind: "forstner", point: 2 } },
      { frets: [3], diameter: 8, fill: { kind: "poured", keep: 2.5 }, bit: { kind: "end-mill" } },
    ];
    expect(wordsOf({ markers: apart })).toEqual([
      "Depths from 3.00 to 5.00 suit every hole: fret 3 sets the least, fret 2 the most (web under the bit).",
      "The stop setting is 4.00, at the bit's rim.",
    ]);
  });

  test("several settings: what clashes, and which holes each serves", () => {
    const markers = [...SQUARED.markers, { frets: [1, 3], diameter: 8, fill: solid(0.75) }];
    expect(wordsOf({ markers })).toEqual([
      "No depth suits every hole: fret 2 needs at least 1.50, fret 1 allows at most 1.25 (must end flush).",
      "Setting A serves 2 holes at 1.00; 0.75 to 1.25 would do.",
      "Setting B serves 1 hole at 3.75; 1.50 to 6.00 would do.",
    ]);
  });

  test("no depth at all for some", () => {
    // the second is solid and thinner than what must be kept of it
    const markers = [
      ...SQUARED.markers,
      { frets: [3], diameter: 8, fill: { kind: "solid", thickness: 1, keep: 2 } },
    ];
    expect(wordsOf({ markers })).toEqual([
      "No depth suits every hole: fret 3 needs at least 2.50, fret 3 allows at most 1.50 (must end flush).",
      "Stop setting serves 1 hole at 3.75; 1.50 to 6.00 would do.",
      "No depth suits 1 of 2 holes.",
    ]);
  });
});
