/** Lines and tables of plain text, at most 100 characters wide. */
import { describe, expect, test } from "vitest";
import { sideBySide, table, wrapped } from "../../src/text/text-layout.js";

const letters = (count: number) => "x".repeat(count);

describe("a sentence", () => {
  test("that finds room is one line", () => {
    expect(wrapped("a few words", "  ")).toEqual(["  a few words"]);
    expect(wrapped("", "  ")).toEqual(["  "]);
    expect(wrapped("word", "- ", "  ")).toEqual(["- word"]);
  });

  test("fills a line to its last column, and no farther", () => {
    // 2 + 50 + 1 + 47 = 100
    const text = `${letters(50)} ${letters(47)}`;
    expect(wrapped(text, "  ")).toEqual([`  ${text}`]);
    expect(wrapped(`${text}x`, "  ")).toEqual([`  ${letters(50)}`, `  ${letters(48)}`]);
  });

  test("goes on below with its own lead, as often as it must", () => {
    const text = [letters(60), letters(60), "and", letters(91), letters(3)].join(" ");
    expect(wrapped(text, "? ", "    ")).toEqual([
      `? ${letters(60)}`,
      `    ${letters(60)} and`,
      // 4 + 91 + 1 + 3 = 99
      `    ${letters(91)} ${letters(3)}`,
    ]);
  });

  test("a word that is longer than a line stands alone, at the start too", () => {
    expect(wrapped(`${letters(120)} a`, "  ")).toEqual([`  ${letters(120)}`, "  a"]);
    expect(wrapped(`a ${letters(120)} b`, "  ")).toEqual(["  a", `  ${letters(120)}`, "  b"]);
  });
});

describe("a table", () => {
  test("words to the left, numbers to the right, two spaces between and before, none behind", () => {
    const rows = [
      ["fret", "side", "depth"],
      ["3", "centre", "1.5"],
      ["12", "bass", "-.25"],
      ["21", "-", "10.125"],
    ];
    expect(table(rows)).toEqual([
      "  fret  side     depth",
      "     3  centre     1.5",
      "    12  bass      -.25",
      "    21  -       10.125",
    ]);
    expect(table([["side"], ["-"], ["bass"]])).toEqual(["  side", "  -", "  bass"]);
  });

  test("one number is enough for a column of numbers; its head's does not count", () => {
    expect(table([["depth"], ["-"], ["3"]])).toEqual(["  depth", "      -", "      3"]);
    expect(
      table([
        ["12th", "x"],
        ["a", "y"],
      ]),
    ).toEqual(["  12th  x", "  a     y"]);
    // a number begins its cell
    expect(table([["no"], ["fret 3"]])).toEqual(["  no", "  fret 3"]);
  });

  test("as wide as the card is whole; wider, it goes on below", () => {
    // (2 + 48) + (2 + 48) = 100
    const cells = [letters(48), letters(48)];
    expect(table([cells])).toEqual([`  ${cells.join("  ")}`]);
    expect(table([[letters(48), letters(49)]])).toEqual([
      `  ${letters(48)}`,
      "",
      `  ${letters(49)}`,
    ]);
  });

  test("what goes on below repeats the first columns", () => {
    const rows = [
      ["f", letters(60), "b", letters(60), letters(90)],
      ["3", "one", "two", "three", "four"],
    ];
    expect(table(rows, 1)).toEqual([
      `  f  ${letters(60)}  b`,
      `  3  one${" ".repeat(57)}  two`,
      "",
      `  f  ${letters(60)}`,
      "  3  three",
      "",
      `  f  ${letters(90)}`,
      "  3  four",
    ]);
  });

  test("a column wider than the card stands beside the repeated ones all the same", () => {
    expect(table([["f", letters(120), "b"]], 1)).toEqual([`  f  ${letters(120)}`, "", "  f  b"]);
  });
});

describe("side by side", () => {
  const cells = (count: number, width = 1) =>
    Array.from({ length: count }, (_, i) => [String.fromCharCode(97 + i).repeat(width), `${i}`]);

  test("four columns, each read downward", () => {
    expect(sideBySide(["at", "n"], cells(8))).toEqual([
      "  at  n  |  at  n  |  at  n  |  at  n",
      "  a   0  |  c   2  |  e   4  |  g   6",
      "  b   1  |  d   3  |  f   5  |  h   7",
    ]);
  });

  test("what is left of the last column stays empty", () => {
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
    const wide = sideBySide(["at", "n"], cells(3, 60));
    expect(wide).toHaveLength(4);
    expect(wide[3]).toBe(`  ${"c".repeat(60)}  2`);
  });
});
