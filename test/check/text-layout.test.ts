/** Lines and tables of plain text, at most 100 characters wide. */
import { describe, expect, test } from "vitest";
import { sideBySide, table, wrapped } from "../../src/text/text-layout.js";

const letters = (count: number) => "x".repeat(count);

describe("a sentence", () => {
  test("fills a line to its last column, and no farther", () => {
    expect(wrapped("", "  ")).toEqual(["  "]);
    // 2 + 50 + 1 + 47 = 100
    const text = `${letters(50)} ${letters(47)}`;
    expect(wrapped(text, "  ")).toEqual([`  ${text}`]);
    expect(wrapped(`${text}x`, "- ", "  ")).toEqual([`- ${letters(50)}`, `  ${letters(48)}`]);
  });

  test("a word that is longer than a line stands alone, at the start too", () => {
    expect(wrapped(`${letters(120)} a`, "  ")).toEqual([`  ${letters(120)}`, "  a"]);
    expect(wrapped(`a ${letters(120)} b`, "  ")).toEqual(["  a", `  ${letters(120)}`, "  b"]);
  });
});

describe("a table", () => {
  test("columns of numbers to the right, others to the left, nothing behind", () => {
    const rows = [
      ["fret", "hole", "depth"],
      ["3", "3", "1.5"],
      ["12", "12 bass", "-"],
      ["21", "-", "-.25"],
    ];
    expect(table(rows)).toEqual([
      "  fret  hole     depth",
      "     3  3          1.5",
      "    12  12 bass      -",
      "    21  -         -.25",
    ]);
    expect(table([["side"], ["-"], ["bass"]])).toEqual(["  side", "  -", "  bass"]);
  });

  test("as wide as the card is whole; wider, it goes on below with its first columns", () => {
    // (2 + 48) + (2 + 48) = 100
    const cells = [letters(48), letters(48)];
    expect(table([cells])).toEqual([`  ${cells.join("  ")}`]);
    const rows = [
      ["f", letters(60), "b", letters(60)],
      ["a", "one", "two", "three"],
    ];
    expect(table(rows, 1)).toEqual([
      `  f  ${letters(60)}  b`,
      `  a  one${" ".repeat(57)}  two`,
      "",
      `  f  ${letters(60)}`,
      "  a  three",
    ]);
    expect(table([["f", letters(120), "b"]], 1)).toEqual([`  f  ${letters(120)}`, "", "  f  b"]);
  });
});

describe("side by side", () => {
  const cells = (count: number, width = 1) =>
    Array.from({ length: count }, (_, i) => [String.fromCharCode(97 + i).repeat(width), `${i}`]);

  test("four columns, each read downward; what is left of the last stays empty", () => {
    expect(sideBySide(["at", "n"], cells(6))).toEqual([
      "  at  n  |  at  n  |  at  n  |  at  n",
      "  a   0  |  c   2  |  e   4  |",
      "  b   1  |  d   3  |  f   5  |",
    ]);
  });

  test("fewer columns where four find no room: three, two, one", () => {
    const columnsAt = (width: number) =>
      sideBySide(["at", "n"], cells(12, width))[0]?.split("|").length;
    // each takes 2 + width + 2 + 1, and 2 + 1 for each bar between
    expect([17, 18, 26, 27, 43, 44].map(columnsAt)).toEqual([4, 3, 3, 2, 2, 1]);
  });
});
