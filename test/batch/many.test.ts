import { describe, expect, test } from "vitest";
import {
  checkDesign,
  checkMany,
  type Design,
  DesignError,
  frontier,
  sweep,
} from "../../src/index.js";
import { FLAT, PLAIN, SQUARED } from "../check/necks.js";

const BAD = { ...PLAIN, radius: -1 };

describe("checkMany", () => {
  test("each result in order; a bad design yields its error and stops nothing", () => {
    const results = [...checkMany([PLAIN, BAD, FLAT, "{}" as unknown as Design])];
    expect(results.map(({ index }) => index)).toEqual([0, 1, 2, 3]);
    expect([results[0]?.report, results[2]?.report]).toEqual([
      checkDesign(PLAIN),
      checkDesign(FLAT),
    ]);
    for (const { error, report } of [results[1], results[3]].flatMap((each) => each ?? [])) {
      expect(report).toBeUndefined();
      expect(error).toBeInstanceOf(DesignError);
      expect((error as DesignError).issues).toHaveLength(1);
    }
  });

  test("takes designs one at a time, as they are asked for", () => {
    const taken: number[] = [];
    function* source() {
      for (let i = 0; i < 1000; i++) {
        taken.push(i);
        yield PLAIN;
      }
    }
    const results = checkMany(source());
    results.next();
    results.next();
    results.return();
    expect(taken).toEqual([0, 1]);
  });

  test("a stream", async () => {
    async function* source() {
      for (const design of [PLAIN, BAD, FLAT]) yield await Promise.resolve(design);
    }
    const kinds: string[] = [];
    for await (const { index, report, error } of checkMany(source())) {
      kinds.push(`${index} ${report ? report.ok : error?.name}`);
    }
    expect(kinds).toEqual(["0 true", "1 DesignError", "2 true"]);
  });

  test("an error of the source is thrown on", () => {
    function* broken() {
      yield PLAIN;
      throw new Error("the file ends here");
    }
    expect(() => [...checkMany(broken())]).toThrow("the file ends here");
  });
});

describe("frontier", () => {
  // flat: 0.5 of sanding and 1 to keep below, a web and a point of 1 above: 3.5 is the least
  test("the thinnest board, the least web, to the last bit; an end that works as it is", () => {
    const axes = { "fill.keep": [1, 2], "board.thickness": [8, 3, 4] };
    const rows = frontier(sweep(SQUARED, axes), "board.thickness");
    expect(rows).toEqual([
      { others: { "fill.keep": 1 }, least: 3.5, greatest: 8 },
      { others: { "fill.keep": 2 }, least: 4.5, greatest: 8 },
    ]);
    const keeps = frontier(sweep(SQUARED, axes), "fill.keep");
    expect(
      keeps.map(({ others, least, greatest }) => [...Object.values(others), least, greatest]),
    ).toEqual([
      [8, 1, 2],
      [3, null, null],
      [4, 1, expect.closeTo(1.5, 12)],
    ]);
  });

  /** A dot whose rim lies 16 aside; a radius of 65 drops 2 there: with 7 below and above it just works. */
  const aside: Design = {
    ...SQUARED,
    board: { ...SQUARED.board, thickness: 5.5 },
    markers: [{ places: [{ along: 48, offset: 12 }], diameter: 8 }],
  };
  const least = (values: number[], design = aside) =>
    frontier(sweep(design, { radius: values }), "radius")[0];

  test.each([[[40, 254]], [[254, 40]], [[40, Infinity]], [[Infinity, 50, 500]]])(
    "the tightest radius among %j is 65: flat is a value like any other",
    (values) => {
      expect(least(values)?.least).toBeCloseTo(65, 9);
      expect(least(values)?.greatest).toBe(Math.max(...values));
    },
  );

  test("a threshold between 500 and Infinity", () => {
    // 16 aside a radius of 650 drops 0.197: so much more than the flat board needs
    const drop = 650 - Math.sqrt(650 ** 2 - 16 ** 2);
    const board = { ...SQUARED.board, thickness: 3.5 + drop };
    expect(least([500, Infinity], { ...aside, board })?.least).toBeCloseTo(650, 6);
    expect(least([500, Infinity], { ...aside, board: { ...board, thickness: 3 } })).toMatchObject({
      least: null,
      greatest: null,
    });
  });

  test("where the board cannot be made: a thick one works down to half its width", () => {
    const thick: Design = { ...PLAIN, board: { ...PLAIN.board, width: 57, thickness: 60 } };
    const [row] = frontier(
      sweep({ ...thick, tolerance: { crest: 0 } }, { radius: [20, 254] }),
      "radius",
    );
    expect(row?.least).toBeGreaterThan(28.5);
    expect(row?.least).toBeLessThan(28.5 * (1 + 1e-14));
    expect(row?.greatest).toBe(254);
  });
});
