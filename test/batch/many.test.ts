import { describe, expect, test } from "vitest";
import {
  checkDesign,
  checkMany,
  type Design,
  DesignError,
  frontier,
  sweep,
} from "../../src/index.js";
import { FLAT, PLAIN } from "../check/necks.js";

const BAD = { ...PLAIN, radius: -1 };

describe("checkMany", () => {
  test("each result in order; a bad design yields its error and stops nothing", () => {
    const results = [...checkMany([PLAIN, BAD, FLAT, null as unknown as Design, PLAIN])];
    expect(results.map(({ index }) => index)).toEqual([0, 1, 2, 3, 4]);
    expect(results[0]?.report).toEqual(checkDesign(PLAIN));
    expect(results[2]?.report).toEqual(checkDesign(FLAT));
    for (const i of [1, 3]) {
      expect(results[i]?.error).toBeInstanceOf(DesignError);
      expect(results[i]).not.toHaveProperty("report");
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
    expect(taken).toEqual([0, 1]);
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

  test("an error of the source is thrown on", async () => {
    function* broken() {
      yield PLAIN;
      throw new Error("the file ends here");
    }
    expect(() => [...checkMany(broken())]).toThrow("the file ends here");
    expect(() => checkMany(3 as never)).toThrow(RangeError);
  });
});

describe("frontier", () => {
  const axes = { radius: [184, 254, 400], "board.thickness": [3, 3.5, 4, 5, 6] } as const;
  const rows = sweep(PLAIN, axes);

  /** One setting suits all holes. */
  const works = (radius: number, thickness: number) => {
    const board = { ...PLAIN.board, thickness };
    return checkDesign({ ...PLAIN, radius, board }).stops.common !== null;
  };

  test("the thinnest board for each radius, to the last bit", () => {
    const found = frontier(rows, "board.thickness");
    expect(found.map(({ others }) => others)).toEqual([
      { radius: 184 },
      { radius: 254 },
      { radius: 400 },
    ]);
    for (const { others, least, greatest } of found) {
      const radius = others.radius ?? 0;
      expect(works(radius, least ?? 0)).toBe(true);
      expect(works(radius, (least ?? 0) - 1e-12)).toBe(false);
      expect(greatest).toBe(6);
    }
  });

  test("the tightest radius for each board; null where none works", () => {
    const found = frontier(rows, "radius");
    expect(found.map(({ others }) => others["board.thickness"])).toEqual([3, 3.5, 4, 5, 6]);
    expect(found[0]).toMatchObject({ least: null, greatest: null });
    expect(found[4]).toMatchObject({ least: 184, greatest: 400 });
    for (const { others, least } of found.slice(1, 3)) {
      const thickness = others["board.thickness"] ?? 0;
      if (least === null || least === 184) continue;
      expect(works(least, thickness)).toBe(true);
      expect(works(least - 1e-9, thickness)).toBe(false);
    }
    expect(found.some(({ least }) => least !== null && least > 184)).toBe(true);
  });

  test("the largest dot, whatever the order of the values", () => {
    const board = { ...PLAIN.board, thickness: 4 };
    const values = [8, 3, 12, 5];
    const [row] = frontier(
      sweep({ ...PLAIN, board }, { "markers.1.diameter": values }),
      "markers.1.diameter",
    );
    expect(row?.least).toBe(3);
    expect(row?.greatest).toBeGreaterThan(5);
    expect(row?.greatest).toBeLessThan(12);
  });

  test("where the board cannot be made: a thick one works down to half its width", () => {
    const thick: Design = { ...PLAIN, board: { ...PLAIN.board, thickness: 60 } };
    const [row] = frontier(sweep(thick, { radius: [20, 254] }), "radius");
    // 57 wide at its end
    expect(row?.least).toBeGreaterThan(28.5);
    expect(row?.least).toBeLessThan(28.5 * (1 + 1e-15) + 1e-14);
    expect(row?.greatest).toBe(254);
  });

  test("an axis that the sweep lacks, a sweep that is not whole", () => {
    expect(() => frontier(rows, "web")).toThrow(DesignError);
    expect(() => frontier(sweep(PLAIN, axes, { from: 1 }), "radius")).toThrow(DesignError);
  });
});
