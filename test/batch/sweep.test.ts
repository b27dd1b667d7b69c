/** A sweep says what the check of each design says, to the last bit. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import {
  type Axes,
  checkDesign,
  type Design,
  DesignError,
  type Sweep,
  sweep,
} from "../../src/index.js";
import { PLAIN, SQUARED } from "../check/necks.js";

const SOLID = { kind: "solid", thickness: 2 } as const;
const TABLE = { from: "table", zero: 10, correction: 0.05 } as const;
const NECK: Design = {
  ...PLAIN,
  markers: [
    { frets: [3, 21], diameter: 6.35 },
    { frets: [12], diameter: 6.35, arrangement: "double" },
  ],
};
const TAPERED = { ...PLAIN.board, thickness: { nut: 6, end: 5 } };
const CURVED = { existing: { radius: 184 }, sanding: 1 };

/** Invented necks, so that every part of the work is there somewhere. */
const NECKS: Readonly<Record<string, Design>> = {
  plain: NECK,
  compound: { ...NECK, radius: { nut: 254, end: 406 }, fill: SOLID, bit: { kind: "twist" } },
  table: { ...NECK, board: TAPERED, stop: TABLE },
  height: { ...NECK, fill: SOLID, stop: { ...TABLE, height: { nut: 20, end: 18 } } },
  curved: { ...NECK, ...CURVED, board: TAPERED, fill: SOLID, stop: { foot: 5, step: 0.1 } },
  "curved table": { ...NECK, ...CURVED, board: TAPERED, stop: TABLE },
  channel: {
    ...NECK,
    board: { ...TAPERED, channel: { width: 8, depth: { nut: 1, end: 2 }, from: 20 } },
    neck: { thickness: { nut: 12, end: 15 } },
    stop: TABLE,
  },
  // on a compound radius the longer pocket needs more, though both reach as far across
  pockets: {
    ...NECK,
    radius: { nut: 150, end: 400 },
    markers: [-10, 10].map((offset) => ({
      places: [{ along: 200, offset }],
      shape: { kind: "rectangle", length: 16 + offset, width: 9 },
    })),
  },
  mixed: {
    ...NECK,
    scale: { bass: 660, treble: 630, square: 7, frets: 22 },
    markers: [
      { frets: [5, 7], diameter: 6 },
      { frets: [12], shape: { kind: "trapezoid", slotGap: 4, edgeGap: 5 }, stop: { step: 0.5 } },
      { frets: [3], diameter: 6, drilled: true, depth: 2 },
      { places: [{ along: 400, offset: 3 }], diameter: 4, stop: { from: "wood" } },
    ],
  },
};

/** Values for some axes, enough to fail in every way. */
const VALUES: Readonly<Record<string, readonly number[]>> = Object.fromEntries(
  `scale.length 620 648 656; board.length 470 482 500; board.width 30 50 58; board.width.end 50 60;
  board.thickness 2.5 6 3.3 4; board.thickness.end 3 5 7; neck.thickness 2 14; neck.thickness.nut 5 14;
  board.channel.depth 0 2 3; board.channel.depth.end 0.5 3; board.channel.width 4 12;
  board.channel.from 0 200; board.channel.to 15 300 482; radius 25 254 120 184 Infinity;
  radius.nut 150 300; existing.radius 150 250 Infinity; sanding 0 0.6 2; sanding.fret12 0.1 1.5;
  markers.0.diameter 3 6.35 9; markers.1.spread 8 20 40; markers.3.places.0.offset 0 20;
  markers.1.shape.slotGap 2 9; markers.2.depth 1 3; fill.keep 0 1.2 0.5; fill.thickness 1 2 3;
  markers.0.fill.keep 0.3 2; bit.point 0 2 0.8; bit.angle 90 140 118; markers.0.bit.point 0.7 1.5;
  stop.correction -0.5 0.5 0; stop.foot 0 12; stop.zero 5 400; stop.height.end 16 22;
  markers.1.stop.step 0.25 0.5; web 0 2 1; depth 1 3; slot.tang 1 2; tolerance.stop 0 0.3;
  tolerance.point 0 0.3; tolerance.seat 0 0.3; tolerance.layout 0 0.3; tolerance.thickness 0 0.3;
  tolerance.sanding 0 0.3; tolerance.crest 0 0.3; tolerance.fill 0 0.3; tolerance.radius 0 0.05;
  tolerance.existing 0 0.05`
    .split(/;\s+/)
    .map((row) => row.split(" "))
    .map(([path, ...values]) => [path, values.map(Number)]),
);

const axesOn = (paths: readonly string[], most = Infinity) =>
  Object.fromEntries(paths.map((path) => [path, VALUES[path]?.slice(0, most)]));

/** What a call gives; undefined where the design cannot be read. */
function tried<T>(call: () => T): T | undefined {
  try {
    return call();
  } catch (error) {
    expect(error).toBeInstanceOf(DesignError);
    return undefined;
  }
}

/** The axes that a neck can vary. */
const axesOf = (name: string) =>
  Object.keys(VALUES).filter((path) => tried(() => sweep(NECKS[name] as Design, axesOn([path]))));
const AXES = Object.fromEntries(Object.keys(NECKS).map((name) => [name, axesOf(name)]));

const seen = { common: 0, several: 0, none: 0, unread: 0 };

/** Holds a row against the check of its design. */
function holdRow(rows: Sweep, i: number): void {
  const { min, max, minHole, maxHole, settings } = rows;
  const row = [settings[i], min[i], max[i], minHole[i], maxHole[i]];
  const report = tried(() => rows.report(i));
  if (report === undefined) {
    seen.unread++;
    expect(row).toEqual([0, Infinity, -Infinity, -1, -1]);
    return;
  }
  const { common, settings: plan } = report.stops;
  const fails = report.holes.some(({ window, drilled }) => !drilled && !(window.min <= window.max));
  seen[fails ? "none" : common ? "common" : "several"]++;
  expect(row[0]).toBe(fails ? 0 : plan.length);
  if (common) expect(row.slice(1)).toEqual(Object.values(common));
  else if (rows.at(i).markers.some(({ stop }) => stop)) {
    expect(row.slice(1)).toEqual([Infinity, -Infinity, -1, -1]);
  } else {
    const { stop = {} } = rows.at(i);
    const { correction = 0 } = stop;
    const beyond = report.holes.map(({ lead, rise }) => lead - rise - correction);
    const least = report.holes.map(({ window }, h) => window.min + (beyond[h] ?? 0));
    const most = report.holes.map(({ window }, h) => window.max + (beyond[h] ?? 0));
    const [low, high] = [Math.max(...least), Math.min(...most)];
    expect(row.slice(1)).toEqual([low, high, least.indexOf(low), most.indexOf(high)]);
  }
}

const held = (name: string, paths: readonly string[], most?: number) => {
  const axes = axesOn(paths, most);
  const rows = sweep(NECKS[name] as Design, axes);
  for (let i = 0; i < rows.size; i++) holdRow(rows, i);
};

test.each(Object.keys(VALUES))(
  "%s, on each neck that has it, before another axis and behind",
  (path) => {
    const names = Object.keys(NECKS).filter((name) => AXES[name]?.includes(path));
    expect(names.length).toBeGreaterThan(0);
    for (const name of names) {
      const other = path === "web" ? "tolerance.stop" : "web";
      held(name, [path, other], 2);
      held(name, [other, path], 2);
    }
  },
);

test("agrees with checkDesign to the last bit, whatever the axes and their order", () => {
  const drawn = fc.constantFrom(...Object.keys(NECKS)).chain((name) => {
    const paths = fc.shuffledSubarray(AXES[name] ?? [], { minLength: 1, maxLength: 3 });
    return paths.map((chosen) => [name, chosen] as const);
  });
  // a station and the whole profile in turn, a depth and a travel: not every set goes together
  const canBeRead = ([name, paths]: readonly [string, readonly string[]]) =>
    tried(() => sweep(NECKS[name] as Design, axesOn(paths), { to: 0 })) !== undefined;
  fc.assert(
    fc.property(drawn.filter(canBeRead), ([name, paths]) => held(name, paths)),
    { numRuns: 40 },
  );
  for (const count of Object.values(seen)) expect(count).toBeGreaterThan(20);
});

describe("rows", () => {
  const axes: Axes = { radius: [184, 254, 305], "board.thickness": [3, 4, 5, 6], web: [0.5, 1] };
  const COLUMNS = ["min", "max", "minHole", "maxHole", "settings"] as const;

  test("the last axis varies fastest; the design handed in is not changed", () => {
    const before = structuredClone(PLAIN);
    const rows = sweep(PLAIN, axes);
    expect(rows.size).toBe(24);
    const told = [0, 1, 2, 23].map((i) => rows.valuesAt(i).join(" "));
    expect(told).toEqual(["184 3 0.5", "184 3 1", "184 4 0.5", "305 6 1"]);
    expect(rows.at(9)).toMatchObject({ radius: 254, board: { thickness: 3 }, web: 1 });
    expect(PLAIN).toEqual(before);
  });

  test("ranges, put end to end, are the whole; longer columns stay as they were beyond them", () => {
    const whole = sweep(PLAIN, axes);
    const cuts = [0, 0, 1, 2, 13, 24];
    const parts = cuts.slice(1).map((to, i) => sweep(PLAIN, axes, { from: cuts[i] ?? 0, to }));
    for (const column of COLUMNS) {
      expect(parts.flatMap((part) => [...part[column]])).toEqual([...whole[column]]);
    }
    const { min, max, minHole, maxHole, settings } = sweep(PLAIN, axes);
    const out = { min, max, minHole, maxHole, settings };
    for (const column of COLUMNS) out[column].fill(-7);
    const part = sweep(PLAIN, axes, { from: 3, to: 8, out });
    expect([part.size, part.min === min, part.valuesAt(0)]).toEqual([5, true, [184, 4, 1]]);
    for (const column of COLUMNS) {
      expect([...out[column]].slice(0, 5)).toEqual([...whole[column]].slice(3, 8));
      expect([...out[column]].slice(5)).toEqual(Array(19).fill(-7));
    }
  });

  test("no axis at all is the design itself; an axis without values is as if it were not named", () => {
    expect(sweep(PLAIN, {}).min[0]).toBe(checkDesign(PLAIN).stops.common?.min);
    const rows = sweep(PLAIN, { radius: undefined, web: [1, 2] } as unknown as Axes);
    expect([rows.size, rows.axes.map(({ path }) => path)]).toEqual([2, ["web"]]);
  });

  test("of holes that allow the same travel, by wood or by dot, the first one governs", () => {
    // 8 − 1 of wood; the dot's 6.5 and the sanding of 0.5
    const solid = { kind: "solid", thickness: 6.5 } as const;
    const markers = [
      { frets: [2], diameter: 8 },
      { frets: [3], diameter: 8, fill: solid },
    ];
    const rows = sweep({ ...SQUARED, bit: { kind: "end-mill" }, markers }, { web: [1, 0.5, 2] });
    expect([...rows.max]).toEqual([7, 7, 6]);
    expect([...rows.maxHole]).toEqual([0, 1, 0]);
  });

  test("no markers, no settings", () => {
    const rows = sweep({ ...PLAIN, markers: [] }, { radius: [254] });
    expect([rows.settings[0], rows.minHole[0], rows.min[0]]).toEqual([0, -1, Infinity]);
  });
});

describe("rows that cannot be made are told from the others, each for its reason", () => {
  const SMALL: Design = { ...PLAIN, markers: [{ frets: [5], diameter: 6 }] };
  const on = (change: object): Design => ({ ...SMALL, board: { ...SMALL.board, ...change } });
  const tight = { ...on({ width: 50 }), radius: 26 };
  const pair = { frets: [5], diameter: 6, arrangement: "double", spread: 42 } as const;
  const channel = { width: 6, depth: 2, from: 455 };
  const high = { ...TABLE, height: { nut: 20, end: 20 } };
  const thickness = { nut: 6, fret5: 6 };
  const sanding = { nut: 0.2, fret5: 0.15 };

  test.each<[string, Design, Axes, string]>([
    ["width", on({ width: { nut: 43, fret5: 40 } }), { "board.width.fret5": [15, 40] }, "01"],
    ["thickness", on({ thickness }), { "board.thickness.fret5": [6, 2] }, "10"],
    ["stations", on({ width: { fret12: 50, end: 50.01 } }), { "board.length": [324, 330] }, "01"],
    ["the channel's end", on({ channel }), { "board.length": [450, 462] }, "01"],
    ["a tight radius", SMALL, { radius: [28, 29.1] }, "01"],
    ["its tolerance", { ...SMALL, radius: 29.1 }, { "tolerance.radius": [0, 0.02] }, "10"],
    ["its crest", { ...SMALL, radius: 30 }, { "tolerance.crest": [0, 2] }, "10"],
    ["sanding", { ...SMALL, sanding }, { "sanding.fret5": [0.15, 0.01] }, "10"],
    ["a hole beyond the surface", tight, { "markers.0.diameter": [6, 55] }, "10"],
    ["by its layout", { ...tight, markers: [pair] }, { "tolerance.layout": [0.25, 2] }, "10"],
    ["work not level", { ...SMALL, stop: high }, { "stop.height.end": [11, 10] }, "10"],
  ])("%s", (_, design, axes, made) => {
    const rows = sweep(design, axes);
    expect([...rows.min].map((min) => Number(min < Infinity)).join("")).toBe(made);
    for (let i = 0; i < rows.size; i++) holdRow(rows, i);
  });
});

test("a wrong path does not compile", () => {
  const axes: Axes = {
    radius: [1],
    "board.thickness.fret7": [5],
    "markers.0.places.0.offset": [1],
  };
  // @ts-expect-error: no such path
  const wrong: Axes = { radiuss: [1] };
  // @ts-expect-error: not a number's path
  const group: Axes = { "markers.0": [1] };
  expect([axes, wrong, group]).toHaveLength(3);
});
