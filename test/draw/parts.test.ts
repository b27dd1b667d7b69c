/** The parts of a layout: labels moved apart, flags in rows, round scales, hatching, widths of words. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { hatching } from "../../src/draw/hatch.js";
import { shortened, widthOf, wrapped } from "../../src/draw/lettering.js";
import type { Spot } from "../../src/draw/marks.js";
import { roundAbove, roundBelow, scaleWithin, scaleWords } from "../../src/draw/scale.js";
import { flagRows, spread } from "../../src/draw/spread.js";
import { advance, runsOf } from "./svg.js";

const places = fc
  .array(fc.integer({ min: -500, max: 500 }), { minLength: 1, maxLength: 20 })
  .map((values) => values.map((value) => value / 10).sort((a, b) => a - b));

describe("spread", () => {
  test("keeps the distance and the order", () => {
    fc.assert(
      fc.property(places, (wanted) => {
        const got = spread(wanted, 5);
        expect(got).toHaveLength(wanted.length);
        got.slice(1).forEach((place, i) => {
          expect(place - (got[i] ?? 0)).toBeGreaterThanOrEqual(5 - 1e-9);
        });
      }),
    );
  });

  test("moves nothing that has room", () => {
    expect(spread([0, 5, 11, 30], 5)).toEqual([0, 5, 11, 30]);
  });

  test("moves a crowd evenly around its middle", () => {
    expect(spread([10, 10, 10], 4)).toEqual([6, 10, 14]);
    expect(spread([0, 1], 4)).toEqual([-1.5, 2.5]);
  });

  // least squares: no shift of the whole crowd comes nearer
  test("the moves of a crowd add up to nothing", () => {
    fc.assert(
      fc.property(places, (wanted) => {
        const got = spread(wanted, 5);
        const sum = got.reduce((total, place, i) => total + place - (wanted[i] ?? 0), 0);
        expect(sum).toBeCloseTo(0, 6);
      }),
    );
  });
});

describe("flags", () => {
  const flags = fc.array(
    fc.record({ x: fc.integer({ min: 0, max: 60 }), width: fc.integer({ min: 1, max: 50 }) }),
    { minLength: 1, maxLength: 12 },
  );

  test("meet neither each other nor another's line", () => {
    fc.assert(
      fc.property(flags, (all) => {
        const rows = flagRows(all);
        all.forEach((a, i) => {
          all.forEach((b, j) => {
            if (i === j) return;
            const over = a.x <= b.x && b.x <= a.x + a.width;
            // b's line comes up to its own row; where it stands below a's flag it must end lower
            if (over && a.x !== b.x) expect(rows[i]).toBeGreaterThan(rows[j] ?? 0);
            if (over && a.x === b.x) expect(rows[i]).not.toBe(rows[j]);
          });
        });
      }),
    );
  });

  test("from one line fly one above the other, the last lowest", () => {
    const same = (count: number) =>
      flagRows(Array.from({ length: count }, () => ({ x: 3, width: 5 })));
    expect(same(2)).toEqual([1, 0]);
    expect(same(4)).toEqual([3, 2, 1, 0]);
  });

  test("fly no higher than they must", () => {
    expect(
      flagRows([
        { x: 0, width: 5 },
        { x: 10, width: 5 },
        { x: 20, width: 5 },
      ]),
    ).toEqual([0, 0, 0]);
    expect(
      flagRows([
        { x: 0, width: 15 },
        { x: 10, width: 15 },
        { x: 20, width: 5 },
      ]),
    ).toEqual([2, 1, 0]);
  });
});

describe("scales", () => {
  test("are round, and the largest that fits", () => {
    expect(
      [2.99, 3, 1.24, 0.5, 0.49, 0.39, 0.0399].map((most) => scaleWords(scaleWithin(most))),
    ).toEqual(["2.5 : 1", "3 : 1", "1 : 1", "1 : 2", "1 : 2.5", "1 : 3", "1 : 30"]);
  });

  test("fit, over thirty powers of ten", () => {
    fc.assert(
      fc.property(fc.double({ min: -15, max: 15, noNaN: true }), (power) => {
        const most = 10 ** power;
        const scale = scaleWithin(most);
        expect(scale).toBeLessThanOrEqual(most * (1 + 1e-8));
        expect(scale).toBeGreaterThan(most / 1.5);
        expect(roundBelow(most)).toBeLessThanOrEqual(most * (1 + 1e-8));
        expect(roundAbove(most)).toBeGreaterThanOrEqual(most * (1 - 1e-8));
      }),
    );
  });
});

describe("hatching", () => {
  const square: Spot[] = [
    [0, 0],
    [10, 0],
    [10, 10],
    [0, 10],
  ];
  const lengthOf = (polygon: Spot[], slope: 1 | -1, apart: number) => {
    const runs = hatching(polygon, slope, apart).flatMap(({ attributes }) => {
      return runsOf(String(attributes.d));
    });
    const lengths = runs.map(([[x1, y1] = [0, 0], [x2, y2] = [0, 0]]) =>
      Math.hypot(x2 - x1, y2 - y1),
    );
    return { total: lengths.reduce((sum, length) => sum + length, 0), runs };
  };

  // lines a distance apart cover an area: length · distance ≈ area
  test.each([1, -1] as const)("covers the area, slope %d", (slope) => {
    expect(lengthOf(square, slope, 0.1).total * 0.1).toBeCloseTo(100, 0);
    const notched: Spot[] = [...square.slice(0, 3), [6, 10], [6, 4], [4, 4], [4, 10], [0, 10]];
    expect(lengthOf(notched, slope, 0.1).total * 0.1).toBeCloseTo(100 - 12, 0);
  });

  test("its lines run at 45° and end on the outline", () => {
    const { runs } = lengthOf(square, 1, 3);
    expect(runs.length).toBeGreaterThan(2);
    for (const [[x1, y1] = [0, 0], [x2, y2] = [0, 0]] of runs) {
      expect((y2 - y1) / (x2 - x1)).toBeCloseTo(1, 3);
      for (const [x, y] of [
        [x1, y1],
        [x2, y2],
      ] as const) {
        expect(Math.min(x, y, 10 - x, 10 - y)).toBeCloseTo(0, 2);
      }
    }
  });

  test("an area of no width has none", () => {
    expect(
      hatching(
        [
          [0, 0],
          [10, 0],
          [0, 0],
        ],
        1,
        3,
      ),
    ).toEqual([]);
  });
});

describe("words", () => {
  const ascii = Array.from({ length: 95 }, (_, i) => String.fromCharCode(32 + i));

  test("take no more room than is kept for them", () => {
    expect(ascii).toHaveLength(95);
    for (const letter of ascii) expect(widthOf(letter, 1)).toBeGreaterThanOrEqual(advance(letter));
  });

  test("nor far less", () => {
    expect(widthOf("Seen from above, the nut on the left.", 1)).toBeLessThan(
      1.25 * advance("Seen from above, the nut on the left."),
    );
  });

  test("are wrapped within the width, and nothing is lost", () => {
    fc.assert(
      fc.property(
        fc.string({ maxLength: 200 }),
        fc.integer({ min: 20, max: 200 }),
        (text, width) => {
          const lines = wrapped(text, width, 3.5, 1000);
          for (const line of lines) expect(widthOf(line)).toBeLessThanOrEqual(width + 1e-9);
          expect(lines.join("").replace(/\s/g, "")).toBe(text.replace(/\s/g, ""));
        },
      ),
    );
  });

  test("are cut with an ellipsis, and only where they must be", () => {
    expect(shortened("fret 12", 100)).toBe("fret 12");
    expect(shortened("fret 12", 10)).toMatch(/^fret?…$/);
    expect(wrapped("one two three four", 15, 3.5, 2).at(-1)).toMatch(/…$/);
    expect(wrapped("one", 15, 3.5, 2)).toEqual(["one"]);
  });

  // by hand, letters 1 high: m is 1 wide, i and a space 0.42, … 1.05
  test("to the last hair", () => {
    const width = widthOf("m m", 1);
    expect(width).toBeCloseTo(2.42, 9);
    expect(wrapped("m m", width, 1, 8)).toEqual(["m m"]);
    expect(wrapped("m m", width - 1e-9, 1, 8)).toEqual(["m", "m"]);
    expect(shortened("mmm", widthOf("mmm", 1), 1)).toBe("mmm");
    expect(shortened("mmm", widthOf("m…", 1), 1)).toBe("m…");
    expect(shortened("mmm", 1, 1)).toBe("…");
    // no space before an ellipsis
    expect(shortened("mmm mmm", 4.5, 1)).toBe("mmm…");
  });

  test("a word too long for a line is cut wherever it must, a letter too wide stands alone", () => {
    expect(wrapped("mmmmm", 2, 1, 8)).toEqual(["mm", "mm", "m"]);
    expect(wrapped("mm", 0.5, 1, 8)).toEqual(["m", "m"]);
    expect(wrapped("", 5, 1, 8)).toEqual([""]);
  });

  test("what finds no room in so many lines is cut in the last of them", () => {
    const width = 5.6;
    expect(wrapped("mmmm mmm mmmm", width, 1, 3)).toEqual(["mmmm", "mmm", "mmmm"]);
    expect(wrapped("mmmm mmm mmmm", width, 1, 2)).toEqual(["mmmm", "mmm m…"]);
    // as many narrow letters as a line can hold, and one more
    expect(wrapped("i".repeat(10), 4.2, 1, 1)).toEqual(["i".repeat(10)]);
    expect(wrapped("i".repeat(11), 4.2, 1, 1)).toEqual([`${"i".repeat(7)}…`]);
  });
});
