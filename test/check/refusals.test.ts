/** What of a design does not go together, though each field by itself may stand. How fields are read: test/design. */
import { describe, expect, test } from "vitest";
import { checkDesign, type Design } from "../../src/index.js";
import { messagesOf, pathsOf } from "./issues.js";
import { PLAIN } from "./necks.js";

/** Where the plain neck with these fields changed is refused. */
function refusedAt(change: object): string[] {
  return pathsOf(() => checkDesign({ ...PLAIN, ...change } as Design));
}

const group = (change: object) => ({ markers: [{ frets: [5], diameter: 6, ...change }] });
const pocket = (shape: object, change: object = {}) => ({
  markers: [{ frets: [5], shape, ...change }],
});
const board = (change: object) => ({ board: { ...PLAIN.board, ...change } });
const rectangle = { kind: "rectangle", length: 4, width: 5 };
const corners = (...all: [number, number][]) => ({
  kind: "polygon",
  corners: all.map(([x, y]) => ({ x, y })),
});

describe("fields that do not go together", () => {
  test.each<[object, string]>([
    [{ depth: 2, travel: 3 }, "travel"],
    [group({ depth: 2, travel: 3 }), "markers.0.travel"],
    [{ bit: { kind: "forstner", point: 1, spur: 1.1 } }, "bit.spur"],
    [group({ bit: { kind: "brad-point", point: 1, spur: 1.1 } }), "markers.0.bit.spur"],
    [pocket(rectangle, { bit: { kind: "twist" } }), "markers.0.bit.kind"],
    [
      pocket({ kind: "trapezoid", slotGap: 1, edgeGap: 1 }, { arrangement: "double" }),
      "markers.0.arrangement",
    ],
    [
      {
        markers: [
          {
            places: [{ along: 9, offset: 0 }],
            shape: { kind: "trapezoid", slotGap: 1, edgeGap: 1 },
          },
        ],
      },
      "markers.0.shape.kind",
    ],
    [pocket({ kind: "trapezoid", slotGap: 30, edgeGap: 1 }), "markers.0.frets.0"],
    [pocket(corners([0, 0], [4, 0], [1, 1], [0, 4])), "markers.0.shape.corners"],
    [pocket(corners([0, 0], [4, 4], [4, 0], [0, 4])), "markers.0.shape.corners"],
    [pocket(corners([0, 0], [2, 2], [4, 4])), "markers.0.shape.corners"],
    [group({ drilled: true }), "markers.0.depth"],
    [group({ drilled: true, depth: 2, travel: 3 }), "markers.0.travel"],
    [{ neck: { thickness: 14 } }, "board.channel"],
    [board({ channel: { width: 6 } }), "board.channel.depth"],
    [board({ channel: { width: 6, depth: 3, from: 30, to: 20 } }), "board.channel.from"],
    [board({ channel: { width: 6, depth: 3, from: 20, to: 20 } }), "board.channel.from"],
    [{ scale: { bass: 686, treble: 648, square: 22.1, frets: 22 }, ...group({}) }, "scale.square"],
    [group({ stop: { from: "table", height: { nut: 30, end: 20 } } }), "markers.0.stop.height"],
  ])("%j", (change, path) => {
    expect(refusedAt(change)).toEqual([path]);
  });

  test.each<object>([
    { depth: 2, ...group({ travel: 3 }) },
    { bit: { kind: "forstner", point: 1, spur: 1 } },
    pocket(corners([0, 4], [4, 0], [0, 0])),
    { depth: 2, ...group({ drilled: true }) },
    { markers: [{ places: [{ along: 100, offset: 0, depth: 2 }], diameter: 6, drilled: true }] },
    { neck: { thickness: 14 }, ...board({ channel: "none" }) },
    { neck: { thickness: 14 }, ...board({ channel: { width: 6 } }) },
    board({ channel: { width: 6, depth: 3, from: 20 - 1e-9, to: 20 } }),
    { scale: { bass: 686, treble: 648, square: 22, frets: 22 }, ...group({}) },
    { tolerance: { seat: 1, existing: 0.5 } },
    { markers: [], fill: undefined, name: undefined, radius: { nut: 254, end: undefined } },
  ])("but these do: %j", (change) => {
    expect(refusedAt(change)).toEqual([]);
  });
});

describe("a board that cannot be built", () => {
  const long = { ...PLAIN.board, length: 648 };
  test.each<[object, string]>([
    [{ board: { ...long, thickness: { nut: 6, fret12: 1 } } }, "board.thickness"],
    [
      { board: { ...long, channel: "none" }, neck: { thickness: { nut: 20, fret12: 1 } } },
      "neck.thickness",
    ],
    [{ board: { ...long, width: { nut: 60, fret12: 20 } } }, "board.width"],
    [{ board: long, radius: { nut: 300, fret12: 100 } }, "radius"],
    [{ board: long, sanding: { nut: 1, fret12: 0.25 } }, "sanding"],
    [{ ...board({ width: 50 }), radius: 25 }, "radius"],
    [{ ...board({ width: 50 }), existing: { radius: 25 } }, "existing.radius"],
    [{ ...board({ width: 50 }), radius: 50, tolerance: { radius: 0.5 } }, "tolerance.radius"],
    [{ ...board({ width: 50 }), radius: 25.4, tolerance: { crest: 0.5 } }, "tolerance.crest"],
    [board({ length: 324, width: { fret12: 50, end: 60 } }), "board.width.end"],
    // beyond fret 12 there is no width to lay a slanted slot across
    [
      {
        ...board({ width: { nut: 43, fret12: 1 } }),
        scale: { bass: 686, treble: 648, square: 7, frets: 24 },
        markers: [],
      },
      "scale",
    ],
  ])("%j", (change, path) => {
    expect(refusedAt(change)).toEqual([path]);
  });

  test("a dot that reaches beyond the finished surface", () => {
    const doubles = group({ arrangement: "double", spread: 56 });
    const near = { ...board({ width: 50 }), radius: 30, tolerance: { layout: 0.5 } };
    expect(refusedAt({ ...doubles, ...near })).toEqual(["radius"]);
  });

  test("a radius is held against half the width on the board alone, not beyond its end", () => {
    // half the width: 20 at the nut, 47.2 at the end of the board, 60 at fret 24
    const width = { nut: 40, fret24: 120 };
    const design = {
      scale: { length: 648, frets: 24 },
      board: { ...PLAIN.board, length: 330, width },
      tolerance: { radius: 0, crest: 0 },
      ...group({}),
    };
    expect(refusedAt({ ...design, radius: 55 })).toEqual([]);
    expect(refusedAt({ ...design, radius: 47 })).toEqual(["radius"]);
  });

  // nut 40, fret 1 halfway 20: nothing at the end
  test.each(["width", "thickness"])("a board whose %s runs out at its very end", (name) => {
    const refused = (fret1: number) =>
      refusedAt({
        scale: { positions: [100] },
        board: { ...PLAIN.board, width: 50, length: 200, [name]: { nut: 40, fret1 } },
        markers: [],
      });
    expect(refused(20)).toEqual([`board.${name}`]);
    expect(refused(20 + 1e-9)).toEqual([]);
  });

  test("stations nearer than a thousand-millionth of the board", () => {
    const refused = (gap: number) =>
      refusedAt({
        scale: { positions: [512, 512 + gap] },
        board: { length: 1024, width: { fret1: 50, fret2: 50.5 }, thickness: 6 },
        radius: Infinity,
        markers: [],
      });
    expect(refused(2 ** -20)).toContain("board.width.fret2");
    expect(refused(2 ** -19)).not.toContain("board.width.fret2");
  });

  test.each<[string, (stations: object) => object]>([
    ["board.thickness", (thickness) => ({ board: { thickness } })],
    ["neck.thickness", (thickness) => ({ neck: { thickness }, board: { channel: "none" } })],
    ["board.channel.depth", (depth) => ({ board: { channel: { width: 6, depth } } })],
    ["radius", (radius) => ({ radius })],
    ["existing.radius", (radius) => ({ existing: { radius } })],
    ["sanding", (sanding) => ({ sanding })],
  ])("two stations of %s in one place", (path, change) => {
    const { board: boardChange, ...others } = change({ fret1: 300, fret2: 301 }) as {
      board?: object;
    };
    const issues = refusedAt({
      scale: { positions: [512, 512 + 2 ** -20] },
      board: { length: 1024, width: 50, thickness: 400, ...boardChange },
      markers: [],
      ...others,
    });
    expect(issues).toContain(`${path}.fret2`);
  });
});

test("what cannot be read hides nothing else, and brings nothing else", () => {
  expect(refusedAt({ radius: true, tolerance: { radius: 0.02 } })).toEqual(["radius"]);
  expect(refusedAt({ sanding: true, ...board({ length: -1 }) })).toEqual([
    "board.length",
    "sanding",
  ]);
  expect(refusedAt({ ...board({ thickness: true }), radius: 20 })).toEqual([
    "board.thickness",
    "radius",
  ]);
  const markers = [
    { frets: [3], diameter: -1, depth: 1, travel: 1 },
    ...group({ depth: 1, travel: 1 }).markers,
  ];
  expect(refusedAt({ markers }).sort()).toEqual([
    "markers.0.diameter",
    "markers.0.travel",
    "markers.1.travel",
  ]);
});

test("the order in which stations are named does not matter", () => {
  const named = (stations: readonly (readonly [string, number])[]) =>
    checkDesign({
      ...PLAIN,
      ...board({ thickness: Object.fromEntries(stations) }),
    } as Design).holes.map(({ thickness }) => thickness);
  const there = [
    ["nut", 6],
    ["fret5", 7],
    ["end", 5],
  ] as const;
  const all = named(there);
  expect(new Set(all).size).toBeGreaterThan(5);
  expect(named([...there].reverse())).toEqual(all);
});

test.each<[object, string]>([
  [
    { scale: { bass: 686, treble: 648, square: "7th", frets: 22 } },
    'scale.square: expected a fret from 0 (the nut) to 250, fractions allowed, received "7th"',
  ],
  [group({ drilled: false }), "markers.0.drilled: expected true, or nothing, received false"],
  [
    board({ thickness: {} }),
    "board.thickness: expected a length of more than 0 mm (1e-12 to 1e+12 mm), or a value at one station or more, received an object",
  ],
])("what was expected instead: %j", (change, message) => {
  expect(messagesOf(() => checkDesign({ ...PLAIN, ...change } as Design))).toEqual([message]);
});
