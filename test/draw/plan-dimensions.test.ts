/** What is written on a plan: places from the nut, and the frets' numbers where they find room. Lengths in mm. */
import { describe, expect, test } from "vitest";
import { fretNumbers, markerPlaces } from "../../src/draw/board-dimensions.js";
import type { BoardPaper } from "../../src/draw/board-paper.js";
import { drawBoard } from "../../src/draw/index.js";
import { widthOf } from "../../src/draw/lettering.js";
import type { Plan } from "../../src/draw/outline.js";
import { checkDesign, type Report } from "../../src/index.js";
import { SQUARED } from "../check/necks.js";
import { classed, paperOf, read, runsOf, textsOf } from "./svg.js";

describe("places", () => {
  const holesAt = (...places: [fret: number, along: number, offset: number][]) =>
    ({
      holes: places.map(([fret, along, offset]) => ({ fret, along, offset })),
    }) as unknown as Report;
  const wordsOf = (report: Report) => markerPlaces(report).map(({ words }) => words);

  test("one on the centre line, a pair aside, two pairs, one by itself", () => {
    expect(wordsOf(holesAt([5, 100, 0], [12, 300, -10], [12, 300, 10]))).toEqual([
      "fret 5: 100.00",
      "fret 12: 300.00, ± 10.00",
    ]);
    expect(
      wordsOf(holesAt([12, 300, -20], [12, 300, -10], [12, 300, 10], [12, 300, 20], [12, 300, 0])),
    ).toEqual(["fret 12: 300.00, ± 20.00, ± 10.00"]);
    // fanned: not equally far from the nut
    expect(wordsOf(holesAt([12, 302, -10], [12, 300, 10]))).toEqual([
      "fret 12: 302.00, bass 10.00",
      "fret 12: 300.00, treble 10.00",
    ]);
    expect(wordsOf(holesAt([12, 300, -20], [12, 300, 10]))).toEqual([
      "fret 12: 300.00, bass 20.00, treble 10.00",
    ]);
    // as near as can be written
    expect(wordsOf(holesAt([12, 300, -10], [12, 300.001, 10.001], [13, 300, 0]))).toEqual([
      "fret 12: 300.00, ± 10.00",
      "fret 13: 300.00",
    ]);
  });

  test("the extension line starts at the one farthest to the bass side", () => {
    const lowest = (...offsets: number[]) =>
      markerPlaces(
        holesAt(...offsets.map((offset): [number, number, number] => [12, 300, offset])),
      )[0]?.lowest.offset;
    expect([lowest(-10, 10), lowest(10, -10), lowest(5, -20, 0)]).toEqual([-10, -10, -20]);
  });
});

describe("numbers", () => {
  const paper: BoardPaper = {
    scale: 1,
    spot: ({ along, offset }) => [along, -offset],
    left: 0,
    right: 100,
    top: -20,
    bottom: 20,
  };
  const frets = (...places: [string, number][]) =>
    ({
      frets: places.map(([name, along]) => ({ name, treble: { along, offset: 20 } })),
    }) as unknown as Plan;
  const numbers = (plan: Plan, lines: number[], marked: number[] = []) => {
    const report = { holes: marked.map((fret) => ({ fret })) } as unknown as Report;
    return fretNumbers(report, plan, paper, lines).map(({ words, attributes }) => [
      words,
      Math.round(Number(attributes.x) * 100) / 100,
      attributes.y,
    ]);
  };
  // a number's half width, and a line's 0.3, and 0.3 between
  const clear = widthOf("1") / 2 + 0.6;

  test("stand above their frets, 2 above the board", () => {
    expect(numbers(frets(["1", 50], ["2", 60]), [])).toEqual([
      ["1", 50, -22],
      ["2", 60, -22],
    ]);
  });

  test("a little aside where a line stands: as little as will do, to either side", () => {
    const aside = (line: number) => numbers(frets(["1", 50]), [50 + line])[0]?.[1];
    expect(aside(clear + 0.01)).toBe(50);
    expect(aside(-clear - 0.01)).toBe(50);
    expect(aside(-clear + 0.6)).toBe(50.7);
    expect(aside(clear - 0.6)).toBe(49.3);
    expect(aside(-clear + 1.3)).toBe(51.4);
    expect(aside(clear - 1.3)).toBe(48.6);
  });

  test("nowhere where there is no room; the nut's and those of marked frets first", () => {
    expect(numbers(frets(["1", 50]), [50, 48.5, 51.5])).toEqual([]);
    const crowd = frets(["nut", 0], ["1", 0.5], ["7", 50], ["8", 50.4], ["9", 50.8]);
    expect(numbers(crowd, [], [8]).map(([words]) => words)).toEqual(["nut", "8"]);
    expect(numbers(crowd, [], []).map(([words]) => words)).toEqual(["nut", "7"]);
  });
});

test("a narrow board's width stands above it, and what flies there flies higher", () => {
  const narrow = {
    ...SQUARED,
    board: { length: 160, width: 6, thickness: 8 },
    markers: [{ frets: [2], diameter: 2 }],
  };
  const drawing = read(drawBoard(checkDesign(narrow)));
  const top = Math.min(
    ...runsOf(classed(drawing, "board")[0]?.attributes.d ?? "").flatMap((run) =>
      run.map(([, y]) => y),
    ),
  );
  const figures = textsOf(drawing).filter(({ words }) => words === "6.00");
  expect(figures).toHaveLength(2);
  for (const { box } of figures) expect(box.bottom).toBeLessThan(top);
  const [flag] = textsOf(drawing).filter(({ words }) => words.startsWith("sets "));
  expect(flag?.box.bottom).toBeLessThan(Math.min(...figures.map(({ box }) => box.top)));
  expect(paperOf(drawing).top).toBeLessThan(flag?.box.top ?? 0);
});
