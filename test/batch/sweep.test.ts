/** A sweep says what the check of each design says, to the last bit. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { type Axes, checkDesign, type Design, DesignError, sweep } from "../../src/index.js";
import { FLAT, PLAIN, SQUARED } from "../check/necks.js";
import { holdRows } from "./rows.js";

const SOLID = { kind: "solid", thickness: 2 } as const;

const NECKS: Readonly<Record<string, Design>> = {
  plain: PLAIN,
  solid: { ...PLAIN, fill: SOLID, bit: { kind: "twist" } },
  compound: {
    ...PLAIN,
    radius: { nut: 254, end: 406 },
    crown: { nut: 0.15, fret14: 0.15, end: 0.6 },
    fill: SOLID,
  },
  channel: {
    ...PLAIN,
    board: {
      ...PLAIN.board,
      thickness: { nut: 6, end: 5 },
      channel: { width: 8, depth: 2, from: 20, to: 400 },
    },
  },
  fanned: {
    ...PLAIN,
    scale: { bass: 660, treble: 630, perpendicular: 7, frets: 22 },
    markers: [
      { frets: [5, 7], diameter: 6 },
      { frets: [12], shape: { kind: "trapezoid", slotGap: 4, edgeGap: 5 } },
    ],
  },
};

/** Values for some axes, enough to fail in every way. */
const VALUES: Axes = {
  radius: [25, 120, 184, 254, 400, 1000],
  crown: [0, 0.1, 0.6],
  "board.thickness": [2.5, 3.3, 4, 6],
  "board.width": [30, 50, 58],
  "board.length": [470, 482, 500],
  "scale.length": [620, 648, 656],
  "markers.0.diameter": [3, 6.35, 9],
  "markers.1.spread": [8, 20, 40],
  "markers.1.diameter": [4, 6, 8],
  "fill.keep": [0, 0.5, 1.2],
  "fill.thickness": [1, 2, 3],
  "bit.point": [0, 0.8, 2],
  "bit.angle": [90, 118, 140],
  "board.channel.depth": [0.5, 2, 3],
  "board.channel.to": [15, 300, 482],
  web: [0, 1, 2],
  "tolerance.stop": [0, 0.1, 0.3],
  "tolerance.layout": [0, 0.25],
  "tolerance.thickness": [0, 0.2],
  "tolerance.crown": [0, 0.1],
  "tolerance.radius": [0, 0.05],
  "markers.1.shape.slotGap": [2, 4, 9],
};

/** The axes that a neck has a place for. */
function axesFor(name: string): (keyof typeof VALUES)[] {
  return (Object.keys(VALUES) as (keyof typeof VALUES)[]).filter((path) => {
    if (path.includes("channel")) return name === "channel";
    if (path === "fill.thickness") return name === "solid" || name === "compound";
    if (path === "bit.angle") return name === "solid";
    if (path === "bit.point") return name !== "solid";
    if (path === "scale.length") return name !== "fanned";
    if (path.includes("shape")) return name === "fanned";
    if (path.startsWith("markers.1")) return name !== "fanned";
    return true;
  });
}

test("agrees with checkDesign to the last bit, whatever the axes and their order", () => {
  const seen = { common: 0, several: 0, none: 0, unread: 0 };
  const drawn = fc.constantFrom(...Object.keys(NECKS)).chain((name) =>
    fc.record({
      name: fc.constant(name),
      paths: fc.shuffledSubarray(axesFor(name), { minLength: 1, maxLength: 4 }),
    }),
  );
  fc.assert(
    fc.property(drawn, ({ name, paths }) => {
      const axes = Object.fromEntries(paths.map((path) => [path, VALUES[path]])) as Axes;
      const counts = holdRows(sweep(NECKS[name] as Design, axes));
      for (const key of Object.keys(seen) as (keyof typeof seen)[]) seen[key] += counts[key];
    }),
    { numRuns: 80 },
  );
  for (const count of Object.values(seen)) expect(count).toBeGreaterThan(20);
});

test.each(Object.keys(VALUES) as (keyof typeof VALUES)[])(
  "%s too, on each neck that has it",
  (path) => {
    const names = Object.keys(NECKS).filter((name) => axesFor(name).includes(path));
    expect(names.length).toBeGreaterThan(0);
    for (const name of names) {
      holdRows(sweep(NECKS[name] as Design, { [path]: VALUES[path], web: [0.9, 1.1] } as Axes));
    }
  },
);

describe("rows", () => {
  const axes: Axes = { radius: [184, 254, 305], "board.thickness": [3, 4, 5, 6], web: [0.5, 1] };

  test("the last axis varies fastest", () => {
    const rows = sweep(PLAIN, axes);
    expect(rows.size).toBe(24);
    expect(rows.valuesAt(0)).toEqual([184, 3, 0.5]);
    expect(rows.valuesAt(1)).toEqual([184, 3, 1]);
    expect(rows.valuesAt(2)).toEqual([184, 4, 0.5]);
    expect(rows.valuesAt(23)).toEqual([305, 6, 1]);
    expect(rows.at(9)).toMatchObject({ radius: 254, board: { thickness: 3 }, web: 1 });
  });

  test("the design handed in is not changed", () => {
    const before = structuredClone(PLAIN);
    sweep(PLAIN, axes).at(7);
    expect(PLAIN).toEqual(before);
  });

  test("ranges, put end to end, are the whole, byte for byte", () => {
    const whole = sweep(PLAIN, axes);
    for (const cuts of [
      [0, 24],
      [0, 7, 24],
      [0, 1, 2, 13, 24],
      [0, 0, 24],
    ]) {
      const parts = cuts.slice(1).map((to, i) => sweep(PLAIN, axes, { from: cuts[i] ?? 0, to }));
      for (const column of ["min", "max", "minHole", "maxHole", "settings"] as const) {
        expect(parts.flatMap((part) => [...part[column]])).toEqual([...whole[column]]);
      }
      for (const part of parts) {
        if (part.size > 0) expect(part.valuesAt(0)).toEqual(whole.valuesAt(part.from));
      }
    }
  });

  test("columns can be used again", () => {
    const { min, max, minHole, maxHole, settings } = sweep(PLAIN, axes);
    const out = { min, max, minHole, maxHole, settings };
    const kept = [...min];
    const again = sweep(PLAIN, axes, { out });
    expect(again.min).toBe(min);
    expect([...min]).toEqual(kept);
    const fewer = sweep(PLAIN, { radius: [200] }, { out });
    expect(fewer.size).toBe(1);
    expect(fewer.min).toBe(min);
  });

  test("longer columns stay as they were beyond the rows", () => {
    const columns = (size: number) => ({
      min: new Float64Array(size).fill(-7),
      max: new Float64Array(size).fill(-7),
      minHole: new Int32Array(size).fill(-7),
      maxHole: new Int32Array(size).fill(-7),
      settings: new Int32Array(size).fill(-7),
    });
    const out = columns(9);
    // the last axis has four values: two rows of it, begun within and ended within
    const part = sweep(
      PLAIN,
      { web: [0.9, 1, 1.1], radius: [200, 254, 300, 400] },
      { from: 2, to: 7, out },
    );
    expect(part.size).toBe(5);
    for (const column of Object.values(out)) {
      expect([...column].slice(5)).toEqual([-7, -7, -7, -7]);
      expect([...column].slice(0, 5)).not.toContain(-7);
    }
  });

  test("no axis at all is the design itself", () => {
    const rows = sweep(PLAIN, {});
    expect(rows.size).toBe(1);
    expect(rows.min[0]).toBe(checkDesign(PLAIN).stops.common?.min);
  });

  test("no markers, no settings", () => {
    const rows = sweep({ ...PLAIN, markers: [] }, { radius: [254] });
    expect([rows.settings[0], rows.minHole[0]]).toEqual([0, -1]);
    expect(Number.isNaN(rows.min[0])).toBe(false);
  });

  test("a number that the design leaves open can be swept", () => {
    const rows = sweep(PLAIN, { "bit.point": [0, 1], "fill.keep": [0.5, 0.8] });
    expect(rows.max[0]).toBeCloseTo((rows.max[2] ?? 0) + 1, 12);
    expect(rows.min[1]).toBeCloseTo((rows.min[0] ?? 0) + 0.3, 12);
  });
});

describe("what cannot be read", () => {
  test.each<[string, unknown, string]>([
    ["an unknown path", { radiuss: [254] }, "axes.radiuss"],
    ["a path that is no number", { markers: [1] }, "axes.markers"],
    ["values that are no list", { radius: 254 }, "axes.radius"],
    ["no values", { radius: [] }, "axes.radius"],
    ["a value out of bounds", { radius: [254, -1] }, "radius"],
    ["a value that is no number", { web: ["1"] }, "web"],
    ["NaN", { "board.thickness": [6, Number.NaN] }, "board.thickness"],
    ["a group that is not there", { "markers.7.diameter": [6] }, "markers.7"],
  ])("%s", (_, axes, path) => {
    try {
      sweep(PLAIN, axes as Axes);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(DesignError);
      expect((error as DesignError).issues.map((issue) => issue.path).join()).toContain(path);
    }
  });

  test("ranges and columns that do not fit", () => {
    expect(() => sweep(PLAIN, { web: [1] }, { from: 1, to: 0 })).toThrow(RangeError);
    expect(() => sweep(PLAIN, { web: [1] }, { to: 2 })).toThrow(RangeError);
    expect(() => sweep(PLAIN, { web: [1] }, { from: 0.5 })).toThrow(RangeError);
    const { min, max, minHole, maxHole, settings } = sweep(PLAIN, { web: [1] });
    const out = { min, max, minHole, maxHole, settings };
    expect(() => sweep(PLAIN, { web: [1, 2] }, { out })).toThrow(/out\.min/);
    expect(() => sweep(PLAIN, { web: [1] }).valuesAt(1)).toThrow(RangeError);
  });

  test("a wrong path does not compile", () => {
    const axes: Axes = { radius: [1] };
    // @ts-expect-error: no such path
    const wrong: Axes = { radiuss: [1] };
    // @ts-expect-error: not a number's path
    const group: Axes = { "markers.0": [1] };
    expect([axes, wrong, group]).toHaveLength(3);
  });
});

test("flat boards too", () => {
  const seen = holdRows(sweep(FLAT, { radius: [Infinity, 300], "board.thickness": [2, 3, 4] }));
  expect(seen).toEqual({ common: 2, several: 0, none: 4, unread: 0 });
});

describe("rows that cannot be made are told from the others, each for its reason", () => {
  const SMALL: Design = { ...PLAIN, markers: [{ frets: [5], diameter: 6 }] };
  const board = (change: object): Design => ({ ...SMALL, board: { ...SMALL.board, ...change } });
  const pair = { frets: [5], diameter: 6, arrangement: "double", spread: 42 } as const;

  test.each<[string, Design, Axes, boolean[]]>([
    [
      "the width runs out before the end",
      board({ width: { nut: 43, fret5: 40 } }),
      { "board.width.fret5": [15, 40, 41] },
      [false, true, true],
    ],
    [
      "the thickness runs out before the end",
      board({ thickness: { nut: 6, fret5: 6 } }),
      { "board.thickness.fret5": [6, 2, 5.5] },
      [true, false, true],
    ],
    [
      "two stations meet",
      board({ width: { fret12: 50, end: 50.01 } }),
      { "board.length": [324, 330] },
      [false, true],
    ],
    [
      "the channel begins where the board has ended",
      board({ channel: { width: 6, depth: 2, from: 455 } }),
      { "board.length": [450, 462] },
      [false, true],
    ],
    [
      "the channel ends before it begins",
      board({ channel: { width: 6, depth: 2 } }),
      { "board.channel.from": [10, 200], "board.channel.to": [100, 300] },
      [true, true, false, true],
    ],
    [
      "a fret lies beyond the end",
      { ...SMALL, markers: [...SMALL.markers, { frets: [22], diameter: 4 }] },
      { "board.length": [460, 482], web: [0.9, 1] },
      [false, false, true, true],
    ],
    [
      "the radius is tighter than half the width",
      SMALL,
      { radius: [28, 29, 254] },
      [false, true, true],
    ],
    [
      "a radius within its tolerance",
      { ...SMALL, radius: 29 },
      { "tolerance.radius": [0, 0.02] },
      [true, false],
    ],
    [
      "the crown falls below nothing",
      { ...SMALL, crown: { nut: 0.2, fret5: 0.15 } },
      { "crown.fret5": [0.15, 0.01] },
      [true, false],
    ],
    [
      "a hole lies where the surface has ended",
      board({ width: 50 }),
      { radius: [25.5, 30], "markers.0.diameter": [6, 55] },
      [true, false, true, true],
    ],
    [
      "a hole wanders there within the tolerance",
      { ...board({ width: 50 }), radius: 25.5, markers: [pair] },
      { "tolerance.layout": [0.25, 2] },
      [true, false],
    ],
  ])("%s", (_, design, axes, made) => {
    const rows = sweep(design, axes);
    expect([...rows.min].map((min) => min < Infinity)).toEqual(made);
    expect(holdRows(rows).unread).toBe(made.filter((is) => !is).length);
  });
});

describe("who governs", () => {
  // 6 under the wood everywhere; the second dot ends flush at 0.5 + 5.5
  test("the first of those that allow as much, whether for the wood or for the top", () => {
    const solid = { kind: "solid", thickness: 5.5, keep: 0.25 } as const;
    const markers = [...SQUARED.markers, { frets: [3], diameter: 8, fill: solid }];
    const rows = sweep({ ...SQUARED, markers }, { web: [1, 0.5] });
    expect([...rows.max]).toEqual([6, 6]);
    expect([...rows.maxHole]).toEqual([0, 1]);
    const [poured] = SQUARED.markers;
    const turned = [
      { ...poured, frets: [3] },
      { frets: [2], diameter: 8, fill: solid },
    ] as const;
    const other = sweep({ ...SQUARED, markers: turned as Design["markers"] }, { web: [1, 1.5] });
    expect([...other.max]).toEqual([6, 5.5]);
    expect([...other.maxHole]).toEqual([0, 0]);
  });
});

test("an axis without values is as if it were not named", () => {
  const rows = sweep(PLAIN, { radius: undefined, web: [1, 2] } as unknown as Axes);
  expect([rows.size, rows.axes.map(({ path }) => path)]).toEqual([2, ["web"]]);
});
