/**
 * What is tried as a cure: for each finding the numbers of the design, from where they stand and how far they may go;
 * and that a change does to what was read the same as the number set in the design and read anew.
 */
import { describe, expect, test } from "vitest";
import { withNumber } from "../../src/design/paths.js";
import { examine } from "../../src/drilling/examine.js";
import { prepare } from "../../src/drilling/neck.js";
import type { Design } from "../../src/index.js";
import { changesFor } from "../../src/report/changes.js";
import type { FindingCode } from "../../src/report/findings.js";

/** An invented neck that states all there is to change. Lengths in mm. */
const FULL: Design = {
  scale: { length: 648, frets: 22 },
  board: {
    length: 482,
    width: { nut: 43, end: 57 },
    thickness: { nut: 6, end: 7 },
    channel: { width: 6, depth: 2, from: 0, to: 400 },
  },
  radius: { nut: 254, end: 400 },
  fill: { kind: "poured", keep: 0.7 },
  bit: { kind: "forstner", point: 1.25 },
  depth: 2,
  web: 1.5,
  slot: { depth: 3, tang: 1.75, clearance: 0.25, web: 0.5 },
  sideDots: { diameter: 2, margin: 0.75, depth: 4 },
  markers: [
    { frets: [3, 5], diameter: 6 },
    {
      frets: [12],
      diameter: 5,
      arrangement: "double",
      spread: 24,
      fill: { kind: "solid", thickness: 1.5, keep: 0.5 },
      bit: { kind: "twist", angle: 118 },
      depth: 2.5,
    },
    { frets: [15], shape: { kind: "rectangle", length: 8, width: 12 } },
  ],
};

type Row = readonly [path: string, from: number, far: number];

function changesOn(design: Design, code: FindingCode, fret?: number) {
  const examined = examine(prepare(design));
  const { markers } = examined.neck;
  const about = fret === undefined ? markers : markers.filter((marker) => marker.fret === fret);
  return changesFor({ code, severity: "error", value: 0, limit: 1 }, examined, about);
}

const rowsOn = (design: Design, code: FindingCode, fret?: number): Row[] =>
  changesOn(design, code, fret).map(({ path, from, far }) => [path, from, far]);

const BLANK: Row[] = [
  ["board.thickness.nut", 6, 18],
  ["board.thickness.end", 7, 21],
];
const FLATTER: Row[] = [
  ["radius.nut", 254, 2540000],
  ["radius.end", 400, 4000000],
];
const CHANNEL: Row = ["board.channel.depth", 2, 0.002];
const WEB: Row = ["web", 1.5, 0];

describe("a dot of the design's own depth, epoxy and Forstner bit", () => {
  const DOT: Row = ["markers.0.diameter", 6, 0.3];
  const POINT: Row = ["bit.point", 1.25, 0];
  // a blank of 7 mm at its thickest: no hole needs 7 mm more
  const DEEPER: Row[] = [
    ["depth", 2, 9],
    ["markers.0.depth", 2, 9],
  ];
  const SHALLOWER: Row[] = [
    ["depth", 2, 0.002],
    ["markers.0.depth", 2, 0.002],
  ];
  const KEEP: Row = ["fill.keep", 0.7, 0];

  test.each<[FindingCode, Row[]]>([
    ["nothing-left", [...DEEPER, ...FLATTER, DOT, KEEP]],
    ["below-keep", [...DEEPER, ...FLATTER, DOT, KEEP]],
    ["breaks-through", [...SHALLOWER, ...BLANK, POINT, DOT, WEB, CHANNEL]],
    ["below-web", [...SHALLOWER, ...BLANK, POINT, DOT, WEB, CHANNEL]],
    ["below-surface", SHALLOWER],
    ["no-depth", [...BLANK, ...FLATTER, DOT, POINT, WEB, KEEP, CHANNEL]],
    ["several-settings", [...BLANK, ...FLATTER, DOT, POINT, WEB, KEEP, CHANNEL]],
    ["several-travels", []],
    ["cuts-slot", [DOT]],
    ["near-slot", [DOT]],
    ["past-edge", [DOT]],
    ["dots-overlap", [DOT]],
  ])("%s", (code, rows) => {
    expect(rowsOn(FULL, code, 3)).toEqual(rows);
  });
});

describe("a pair of solid dots with their own depth and twist bit", () => {
  const DOT: Row = ["markers.1.diameter", 5, 0.25];
  const CLOSER: Row = ["markers.1.spread", 24, 5];
  const POINT: Row = ["markers.1.bit.angle", 118, 179];
  const KEEP: Row = ["markers.1.fill.keep", 0.5, 0];
  const THICKER: Row = ["markers.1.fill.thickness", 1.5, 15];

  test.each<[FindingCode, Row[]]>([
    ["below-keep", [["markers.1.depth", 2.5, 9.5], ...FLATTER, DOT, CLOSER, KEEP]],
    ["below-web", [["markers.1.depth", 2.5, 0.0025], ...BLANK, POINT, DOT, WEB, CHANNEL]],
    ["below-surface", [["markers.1.depth", 2.5, 0.0025], THICKER]],
    ["no-depth", [...BLANK, ...FLATTER, DOT, CLOSER, POINT, WEB, KEEP, CHANNEL, THICKER]],
    ["past-edge", [DOT, CLOSER]],
    // farther apart by the size of both at most
    ["dots-overlap", [DOT, ["markers.1.spread", 24, 34]]],
    [
      "side-dot-meets-hole",
      [
        ...BLANK,
        ["markers.1.depth", 2.5, 0.0025],
        CLOSER,
        ["sideDots.depth", 4, 0.2],
        ["sideDots.diameter", 2, 0.1],
      ],
    ],
  ])("%s", (code, rows) => {
    expect(rowsOn(FULL, code, 12)).toEqual(rows);
  });

  test("without a spread the pair's own is taken: where the diagonals put it", () => {
    const markers = [{ frets: [12], diameter: 5, arrangement: "double" } as const];
    const [pair] = prepare({ ...FULL, markers }).markers;
    const [, row] = rowsOn({ ...FULL, markers }, "past-edge", 12);
    expect(row).toEqual(["markers.0.spread", -2 * (pair?.offset ?? 0), 5]);
    expect(row?.[1]).toBeGreaterThan(20);
  });
});

test("a pocket: neither a smaller dot nor a shorter point", () => {
  expect(rowsOn(FULL, "below-web", 15)).toEqual([
    ["depth", 2, 0.002],
    ["markers.2.depth", 2, 0.002],
    ...BLANK,
    WEB,
    CHANNEL,
  ]);
  expect(rowsOn(FULL, "cuts-slot", 15)).toEqual([]);
});

test.each<[FindingCode, Row[]]>([
  ["thin-edge", [...BLANK, ...FLATTER, WEB]],
  [
    "no-slot-depth",
    [
      ...BLANK,
      ...FLATTER,
      ["slot.tang", 1.75, 0.00175],
      ["slot.clearance", 0.25, 0],
      ["slot.web", 0.5, 0],
      CHANNEL,
    ],
  ],
  [
    "slot-too-shallow",
    [["slot.depth", 3, 30], ...FLATTER, ["slot.tang", 1.75, 0.00175], ["slot.clearance", 0.25, 0]],
  ],
  ["slot-too-deep", [["slot.depth", 3, 0.003], ...BLANK, ["slot.web", 0.5, 0], CHANNEL]],
  [
    "side-dot-tight",
    [...BLANK, ...FLATTER, ["sideDots.diameter", 2, 0.1], ["sideDots.margin", 0.75, 0]],
  ],
  ["side-dot-meets-slot", [...BLANK, ["slot.depth", 3, 0.003], ["sideDots.diameter", 2, 0.1]]],
])("of the board: %s", (code, rows) => {
  expect(rowsOn(FULL, code, 99)).toEqual(rows);
});

test("groups that share a number share its change, and each has those of its own", () => {
  const paths = rowsOn(FULL, "no-depth").map(([path]) => path);
  expect(paths.filter((path) => path === "fill.keep")).toHaveLength(1);
  expect(new Set(paths).size).toBe(paths.length);
  expect(paths).toEqual([
    ...BLANK.map(([path]) => path),
    ...FLATTER.map(([path]) => path),
    "markers.0.diameter",
    "markers.1.diameter",
    "markers.1.spread",
    "bit.point",
    "markers.1.bit.angle",
    "web",
    "fill.keep",
    "markers.1.fill.keep",
    "board.channel.depth",
    "markers.1.fill.thickness",
  ]);
});

test("profiles of one number, and what a design does not state", () => {
  const { depth: _, slot: __, sideDots: ___, ...rest } = FULL;
  const bare = { ...rest, board: { length: 482, width: 50, thickness: 6 }, radius: 254 };
  expect(rowsOn(bare, "below-web", 3).map(([path]) => path)).toEqual([
    "board.thickness",
    "bit.point",
    "markers.0.diameter",
    "web",
  ]);
  expect(rowsOn(bare, "no-slot-depth", 99)).toEqual([
    ["board.thickness", 6, 18],
    ["radius", 254, 2540000],
  ]);
  expect(rowsOn(bare, "side-dot-tight", 99).map(([path]) => path)).toEqual([
    "board.thickness",
    "radius",
  ]);
  // a flat board cannot be flatter
  expect(rowsOn({ ...bare, radius: Infinity }, "thin-edge").map(([path]) => path)).toEqual([
    "board.thickness",
    "web",
  ]);
  const planned = { ...bare, depth: 2 };
  expect(rowsOn(planned, "below-keep", 3)[0]).toEqual(["depth", 2, 8]);
});

test("each pair is brought together from its own distance, of several the greatest, to its own size", () => {
  // the diagonals cross at half of w₁w₂/(w₁ + w₂): 44 and 56 wide, then 56 and 68
  const design: Design = {
    scale: { positions: [450, 900] },
    board: { length: 900, width: { nut: 44, end: 68 }, thickness: 6 },
    radius: 254,
    markers: [
      { frets: [1, 2], diameter: 5, arrangement: "double" },
      { frets: [1], diameter: 4, arrangement: "double" },
      { frets: [2], diameter: 9 },
    ],
  };
  const rows = rowsOn(design, "several-settings").filter(([path]) => path.endsWith("spread"));
  expect(rows.map(([path]) => path)).toEqual(["markers.0.spread", "markers.1.spread"]);
  expect(rows[0]?.[1]).toBeCloseTo((56 * 68) / 124, 9);
  expect(rows[0]?.[2]).toBe(5);
  expect(rows[1]?.[1]).toBeCloseTo(24.64, 9);
  expect(rows[1]?.[2]).toBe(4);
});

test("a change does what the number in the design does", () => {
  const codes: FindingCode[] = [
    "no-depth",
    "below-keep",
    "below-web",
    "dots-overlap",
    "slot-too-deep",
    "no-slot-depth",
    "side-dot-tight",
    "side-dot-meets-hole",
  ];
  const seen = new Set<string>();
  for (const { path, from, apply } of codes.flatMap((code) => changesOn(FULL, code))) {
    const to = 0.99 * from;
    const { assumed: _, ...spec } = apply(to);
    const { assumed: __, ...anew } = prepare(withNumber(FULL, path, to)).spec;
    // a depth of its own is looked for in its own place from then on: only the reading anew says so
    const own = /^markers\.(\d+)\.depth$/.exec(path)?.[1];
    const groups = spec.groups.map((group, i) =>
      String(i) === own ? { ...group, path: { ...group.path, depth: path } } : group,
    );
    expect([path, { ...spec, groups }]).toEqual([path, anew]);
    seen.add(path);
  }
  expect([...seen].sort()).toHaveLength(25);
});

test("a pocket is routed with an end mill, however the design's bit may change", () => {
  const [point] = changesOn(FULL, "no-depth").filter(({ path }) => path === "bit.point");
  const groups = point?.apply(1).groups.map(({ bit }) => bit);
  expect(groups).toEqual([
    { kind: "forstner", point: 1 },
    { kind: "twist", angle: 118 },
    { kind: "end-mill" },
  ]);
});
