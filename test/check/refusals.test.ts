/** Every refusal of a design in full: where, what was expected, what came; and the bounds at their very ends. */
import { describe, expect, test } from "vitest";
import { checkDesign, type Design } from "../../src/index.js";
import { messagesOf } from "./issues.js";
import { PLAIN } from "./necks.js";

const LENGTH = "a length of more than 0 mm (1e-12 to 1e+12 mm)";
const LENGTH_OR_NONE = "a length of 0 mm or more (1e-12 to 1e+12 mm)";
const RADIUS = "a radius of more than 0 mm (1e-12 to 1e+12 mm), or Infinity for flat";

/** What is said of the plain neck with these fields changed; nothing where it is taken. */
function refusalsOf(change: object): readonly string[] {
  return refusalsOfWhole({ ...PLAIN, ...change });
}

function refusalsOfWhole(design: unknown): readonly string[] {
  return messagesOf(() => checkDesign(design as Design));
}

const group = (change: object) => ({ markers: [{ frets: [5], diameter: 6, ...change }] });
const pocket = (shape: unknown, change: object = {}) => ({
  markers: [{ frets: [5], shape, ...change }],
});
const board = (change: object) => ({ board: { ...PLAIN.board, ...change } });

describe("what is no design at all", () => {
  const KEYS =
    'an object with "name", "scale", "board", "radius", "crown", "markers", "fill", "bit", "depth", "web", "tolerance", "stopStep", "slot", "sideDots" and "pour"';
  test.each<[unknown, string]>([
    [undefined, "undefined"],
    [null, "null"],
    [7, "7"],
    [-0, "-0"],
    ["neck", '"neck"'],
    [true, "true"],
    [7n, "a big integer"],
    [Symbol("neck"), "a symbol"],
    [() => 7, "a function"],
    [[], "an array"],
    ["x".repeat(60), `"${"x".repeat(60)}"`],
    ["x".repeat(61), `"${"x".repeat(60)}…"`],
  ])("%s", (design, received) => {
    expect(refusalsOfWhole(design)).toEqual([`design: expected ${KEYS}, received ${received}`]);
  });

  test("an empty one: every field that must be there", () => {
    expect(refusalsOfWhole({})).toEqual([
      'scale: expected an object with "length" and "frets", received undefined',
      'board: expected an object with "length", "width", "thickness" and "channel", received undefined',
      "markers: expected an array of marker groups, 20 at most, received undefined",
      `radius: expected ${RADIUS}, received undefined`,
    ]);
  });

  test("parts that are objects and empty", () => {
    expect(refusalsOfWhole({ scale: {}, board: {}, radius: {}, markers: [{}] })).toEqual([
      `scale.length: expected ${LENGTH}, received undefined`,
      "scale.frets: expected a whole number from 1 to 250, received undefined",
      `board.length: expected ${LENGTH}, received undefined`,
      `board.width: expected ${LENGTH}, received undefined`,
      `board.thickness: expected ${LENGTH}, received undefined`,
      "markers.0.frets: expected an array of fret numbers, 250 at most, received undefined",
      `markers.0.diameter: expected ${LENGTH}, received undefined`,
      `radius: expected ${RADIUS}, or a value at one station or more, received an object`,
    ]);
  });
});

describe("one thing wrong", () => {
  test.each<[object, string]>([
    [{ name: 7 }, "name: expected a text, received 7"],
    [
      { scale: null, markers: [] },
      'scale: expected an object with "length" and "frets", received null',
    ],
    [
      { scale: { length: 648, frets: 22, bass: 686, treble: 648, perpendicular: 7 }, markers: [] },
      'scale.length: expected a known key: "bass", "treble", "perpendicular" or "frets", received 648',
    ],
    [
      { scale: Object.assign([], { bass: 686 }), markers: [] },
      'scale: expected an object with "bass", "treble", "perpendicular" and "frets", received an array',
    ],
    [{ radius: null }, `radius: expected ${RADIUS}, received null`],
    [
      { radius: { nut: 254, ends: 300 } },
      'radius.ends: expected a station: "nut", "end", "fret1" to "fret22"; did you mean "end"?, received 300',
    ],
    [
      { radius: { nuts: 254, end: 300 } },
      'radius.nuts: expected a station: "nut", "end", "fret1" to "fret22"; did you mean "nut"?, received 254',
    ],
    [
      { radius: { nut: 254, afret7: 300 } },
      'radius.afret7: expected a station: "nut", "end", "fret1" to "fret22"; did you mean "fret7"?, received 300',
    ],
    [
      { radius: { nut: 254, "fret7.5": 300 } },
      'radius.fret7.5: expected a station: "nut", "end", "fret1" to "fret22"; did you mean "fret5"?, received 300',
    ],
    [
      { radius: { nut: 254, fret1e1: 300 } },
      'radius.fret1e1: expected a station: "nut", "end", "fret1" to "fret22"; did you mean "fret11"?, received 300',
    ],
    [
      { scale: { positions: [30, -1, 50] }, markers: [] },
      `scale.positions.1: expected ${LENGTH}, received -1`,
    ],
    [
      group({ fill: null }),
      'markers.0.fill: expected an object whose kind is "poured" or "solid", received null',
    ],
    [
      { bit: 7 },
      'bit: expected an object whose kind is "forstner", "brad-point", "twist" or "end-mill", received 7',
    ],
    [{ fill: 7 }, 'fill: expected an object whose kind is "poured" or "solid", received 7'],
    [{ crown: -1 }, `crown: expected ${LENGTH_OR_NONE}, received -1`],
    [{ crown: { nut: -1 } }, `crown.nut: expected ${LENGTH_OR_NONE}, received -1`],
    [{ web: -1 }, `web: expected ${LENGTH_OR_NONE}, received -1`],
    [{ depth: 0 }, `depth: expected ${LENGTH}, received 0`],
    [{ stopStep: 0 }, `stopStep: expected ${LENGTH}, received 0`],
    [{ radius: 0 }, `radius: expected ${RADIUS}, received 0`],
    [{ radius: [254] }, `radius: expected ${RADIUS}, or values at stations, received an array`],
    [
      { radius: { nut: Infinity, end: 254 } },
      "radius: expected a radius that is Infinity at every station or at none, received an object",
    ],
    [
      { radius: { nut: 254, fret99: 300 } },
      'radius.fret99: expected a station: "nut", "end", "fret1" to "fret22"; did you mean "fret9"?, received 300',
    ],
    [
      { radius: { nut: 254, body: 300 } },
      'radius.body: expected a station: "nut", "end", "fret1" to "fret22", received 300',
    ],
    [
      { radius: { nut: 254, fret0: 300 } },
      'radius.fret0: expected a station: "nut", "end", "fret1" to "fret22"; did you mean "fret1"?, received 300',
    ],
    [
      { scale: { positions: 7 }, markers: [] },
      "scale.positions: expected an array of fret positions, 250 at most, received 7",
    ],
    [
      { scale: { positions: [] }, markers: [] },
      "scale.positions: expected one position or more, received an array",
    ],
    [
      { scale: { positions: [30, 20] }, markers: [] },
      "scale.positions.1: expected more than the position before it, 30 mm, received 20",
    ],
    [
      { scale: { positions: [30], length: 648 }, markers: [] },
      'scale.length: expected a known key: "positions", received 648',
    ],
    [
      { scale: { bass: 686, frets: 22, perpendicular: 23, treble: 648 } },
      "scale.perpendicular: expected a fret from 0 (the nut) to 22, fractions allowed, received 23",
    ],
    [
      { scale: { treble: 686, frets: 22, perpendicular: 0 } },
      `scale.bass: expected ${LENGTH}, received undefined`,
    ],
    [
      { scale: { bass: 686, frets: 22, perpendicular: 0 } },
      `scale.treble: expected ${LENGTH}, received undefined`,
    ],
    [
      { board: 7 },
      'board: expected an object with "length", "width", "thickness" and "channel", received 7',
    ],
    [
      board({ channel: 7 }),
      'board.channel: expected an object with "width", "depth", "from" and "to", received 7',
    ],
    [
      board({ channel: { depth: 3 } }),
      `board.channel.width: expected ${LENGTH}, received undefined`,
    ],
    [
      board({ channel: { width: 6 } }),
      `board.channel.depth: expected ${LENGTH}, received undefined`,
    ],
    [
      board({ channel: { width: 6, depth: 3, from: -1 } }),
      `board.channel.from: expected ${LENGTH_OR_NONE}, received -1`,
    ],
    [
      board({ channel: { width: 6, depth: 3, to: 0 } }),
      `board.channel.to: expected ${LENGTH}, received 0`,
    ],
    [
      board({ channel: { width: 6, depth: 3, from: 30, to: 20 } }),
      "board.channel.from: expected less than where the channel ends, 20 mm, received 30",
    ],
    [{ markers: 7 }, "markers: expected an array of marker groups, 20 at most, received 7"],
    [
      { markers: [7] },
      'markers.0: expected an object with "frets", "diameter", "shape", "arrangement", "spread", "along", "fill", "bit" and "depth", received 7',
    ],
    [group({ frets: [] }), "markers.0.frets: expected one fret number or more, received an array"],
    [group({ frets: [5, 5] }), "markers.0.frets.1: expected each fret once, received 5"],
    [
      group({ frets: [5, 23] }),
      "markers.0.frets.1: expected a whole number from 1 to 22, received 23",
    ],
    [
      group({ arrangement: "dubble" }),
      'markers.0.arrangement: expected "single" or "double"; did you mean "double"?, received "dubble"',
    ],
    [
      group({ spread: 20 }),
      'markers.0.spread: expected none, unless arrangement is "double", received 20',
    ],
    [group({ along: 7 }), 'markers.0.along: expected "diagonals" or "midpoint", received 7'],
    [group({ depth: -1 }), `markers.0.depth: expected ${LENGTH}, received -1`],
    [
      group({ fill: "epoxy" }),
      'markers.0.fill: expected an object whose kind is "poured" or "solid", received "epoxy"',
    ],
    [
      group({ fill: { kind: "solid" } }),
      `markers.0.fill.thickness: expected ${LENGTH}, received undefined`,
    ],
    [
      group({ fill: { kind: "poured", thickness: 2 } }),
      'markers.0.fill.thickness: expected a known key: "kind" or "keep", received 2',
    ],
    [
      group({ fill: { kind: "poured", keep: -1 } }),
      `markers.0.fill.keep: expected ${LENGTH_OR_NONE}, received -1`,
    ],
    [
      group({ bit: { kind: "twist", angle: 180 } }),
      "markers.0.bit.angle: expected an angle from 1 to 179 degrees, received 180",
    ],
    [
      group({ bit: { kind: "forstner" } }),
      `markers.0.bit.point: expected ${LENGTH_OR_NONE}, received undefined`,
    ],
    [
      group({ bit: { kind: "end-mill", point: 1 } }),
      'markers.0.bit.point: expected a known key: "kind", received 1',
    ],
    [
      group({ bit: [] }),
      'markers.0.bit: expected an object whose kind is "forstner", "brad-point", "twist" or "end-mill", received an array',
    ],
    [
      pocket({ kind: "round" }),
      'markers.0.shape.kind: expected "rectangle" or "trapezoid", received "round"',
    ],
    [
      pocket({ kind: "rectangle", length: 4 }),
      `markers.0.shape.width: expected ${LENGTH}, received undefined`,
    ],
    [
      pocket({ kind: "rectangle", width: 4 }),
      `markers.0.shape.length: expected ${LENGTH}, received undefined`,
    ],
    [
      pocket({ kind: "rectangle", width: 4, length: 4, edgeGap: 1 }),
      'markers.0.shape.edgeGap: expected a known key: "kind", "length" or "width", received 1',
    ],
    [
      pocket({ kind: "trapezoid", edgeGap: 1 }),
      `markers.0.shape.slotGap: expected ${LENGTH_OR_NONE}, received undefined`,
    ],
    [
      pocket({ kind: "trapezoid", slotGap: 1 }),
      `markers.0.shape.edgeGap: expected ${LENGTH_OR_NONE}, received undefined`,
    ],
    [
      pocket({ kind: "trapezoid", slotGap: 1, edgeGap: 1 }, { arrangement: "double" }),
      'markers.0.arrangement: expected "single" for a trapezoid, received "double"',
    ],
    [
      pocket({ kind: "trapezoid", slotGap: 30, edgeGap: 1 }),
      "markers.0.frets.0: expected a fret with room for the pocket between its gaps, received 5",
    ],
    [
      pocket({ kind: "rectangle", width: 4, length: 4 }, { diameter: 6 }),
      "markers.0.diameter: expected none beside a shape, received 6",
    ],
    [
      pocket({ kind: "rectangle", width: 4, length: 4 }, { bit: { kind: "twist" } }),
      'markers.0.bit.kind: expected "end-mill" for a pocket, received "twist"',
    ],
    [
      { tolerance: 1 },
      'tolerance: expected an object with "stop", "layout", "thickness", "crown" and "radius", received 1',
    ],
    [{ tolerance: { stop: -1 } }, `tolerance.stop: expected ${LENGTH_OR_NONE}, received -1`],
    [
      { tolerance: { radius: 1 } },
      "tolerance.radius: expected a fraction of 0 or more and less than 1, received 1",
    ],
    [
      { slot: 1 },
      'slot: expected an object with "depth", "tang", "clearance" and "web", received 1',
    ],
    [{ slot: { depth: 3 } }, `slot.tang: expected ${LENGTH}, received undefined`],
    [{ slot: { tang: 1.7 } }, `slot.depth: expected ${LENGTH}, received undefined`],
    [
      { slot: { depth: 3, tang: 1.7, clearance: -1 } },
      `slot.clearance: expected ${LENGTH_OR_NONE}, received -1`,
    ],
    [
      { slot: { depth: 3, tang: 1.7, web: -1 } },
      `slot.web: expected ${LENGTH_OR_NONE}, received -1`,
    ],
    [
      { sideDots: 1 },
      'sideDots: expected an object with "diameter", "margin" and "depth", received 1',
    ],
    [{ sideDots: {} }, `sideDots.diameter: expected ${LENGTH}, received undefined`],
    [
      { sideDots: { diameter: 2, margin: -1 } },
      `sideDots.margin: expected ${LENGTH_OR_NONE}, received -1`,
    ],
    [{ sideDots: { diameter: 2, depth: 0 } }, `sideDots.depth: expected ${LENGTH}, received 0`],
    [{ pour: 1 }, 'pour: expected an object with "waste" and "ratio", received 1'],
    [{ pour: { waste: 1001 } }, "pour.waste: expected a fraction from 0 to 1000, received 1001"],
    [
      { pour: { ratio: 2 } },
      "pour.ratio: expected an array of two parts, resin and hardener, 2 at most, received 2",
    ],
    [
      { pour: { ratio: [2] } },
      "pour.ratio: expected two parts, resin and hardener, received an array",
    ],
    [
      { pour: { ratio: [2, 0] } },
      "pour.ratio.1: expected a number greater than 0 (from 0.001 to 1000), received 0",
    ],
    [
      board({ length: 648, thickness: { nut: 6, fret12: 1 } }),
      "board.thickness: expected more than 0 mm everywhere on the board, received -4",
    ],
    [
      board({ length: 648, width: { nut: 60, fret12: 20 } }),
      "board.width: expected more than 0 mm everywhere on the board, received -20",
    ],
    [
      { ...board({ length: 648 }), radius: { nut: 300, fret12: 100 } },
      "radius: expected more than half the width everywhere on the board, 28.5 mm at 648 mm from the nut, received -100",
    ],
    [
      { ...board({ length: 648 }), crown: { nut: 1, fret12: 0.25 } },
      "crown: expected 0 mm or more everywhere on the board, received -0.5",
    ],
    [
      { ...board({ width: 50 }), radius: 25 },
      "radius: expected more than half the width everywhere on the board, 25 mm at 0 mm from the nut, received 25",
    ],
    [
      { ...board({ width: 50 }), radius: 50, tolerance: { radius: 0.5 } },
      "tolerance.radius: expected a fraction within which the radius exceeds half the width, 25 mm at 0 mm from the nut, received 0.5",
    ],
    [
      { ...board({ length: 300 }), ...group({ frets: [12] }) },
      "markers.0.frets.0: expected a fret on the board, which ends 300 mm from the nut; fret 12 lies at 324 mm, received 12",
    ],
    [
      {
        ...board({ length: 648, width: { fret12: 50, end: 60 } }),
        scale: { length: 648, frets: 22 },
        radius: { nut: 254, fret12: 300, end: 254 },
        ...board({ length: 324, width: { fret12: 50, end: 60 } }),
        ...group({}),
      },
      'board.width.end: expected a place of its own, but "fret12" lies there too, received 60',
    ],
    [
      {
        ...group({ arrangement: "double", spread: 56 }),
        ...board({ width: 50 }),
        radius: 30,
        tolerance: { layout: 0.5 },
      },
      "radius: expected a radius that reaches 31.5 mm from the centre line, as the hole at fret 5 does within the tolerances, received 30",
    ],
    // beyond fret 12 there is no width to lay a slanted slot across
    [
      {
        ...board({ width: { nut: 43, fret12: 1 } }),
        scale: { bass: 686, treble: 648, perpendicular: 7, frets: 24 },
        markers: [],
      },
      "scale: expected fanned frets that meet both edges of the board, received an object",
    ],
  ])("%j", (change, message) => {
    expect(refusalsOf(change)).toEqual([message]);
  });
});

describe("at a bound: taken; beyond it: refused", () => {
  const paths = (change: object) => refusalsOf(change).map((message) => message.split(":")[0]);
  test.each<[string, (value: number) => object, number, number]>([
    ["tolerance.radius", (radius) => ({ tolerance: { radius } }), 0, -1e-9],
    ["tolerance.stop", (stop) => ({ tolerance: { stop } }), 0, -1e-9],
    ["pour.waste", (waste) => ({ pour: { waste } }), 0, -1e-9],
    ["pour.waste", (waste) => ({ pour: { waste } }), 1000, 1000.1],
    ["pour.ratio.0", (part) => ({ pour: { ratio: [part, 1] } }), 0.001, 0.0009],
    ["pour.ratio.1", (part) => ({ pour: { ratio: [1, part] } }), 1000, 1000.1],
    ["bit.angle", (angle) => ({ bit: { kind: "twist", angle } }), 1, 0.9],
    ["bit.angle", (angle) => ({ bit: { kind: "twist", angle } }), 179, 179.1],
    ["bit.point", (point) => ({ bit: { kind: "forstner", point } }), 0, -1e-9],
    ["stopStep", (stopStep) => ({ stopStep }), 1e-12, 0.9e-12],
    ["stopStep", (stopStep) => ({ stopStep }), 1e12, 1.1e12],
    ["radius", (radius) => ({ radius }), 1e12, 1.1e12],
    ["scale.frets", (frets) => ({ scale: { length: 648, frets }, ...group({ frets: [1] }) }), 1, 0],
    ["scale.frets", (frets) => ({ scale: { length: 648, frets } }), 250, 251],
    [
      "scale.perpendicular",
      (perpendicular) => ({
        scale: { bass: 686, treble: 648, perpendicular, frets: 22 },
        markers: [],
      }),
      22,
      22.1,
    ],
    [
      "scale.perpendicular",
      (perpendicular) => ({
        scale: { bass: 686, treble: 648, perpendicular, frets: 22 },
        markers: [],
      }),
      0,
      -0.1,
    ],
  ])("%s, case %#", (path, change, last, beyond) => {
    expect(paths(change(last))).toEqual([]);
    expect(paths(change(beyond))).toContain(path);
  });

  test("infinite is flat, and no other length may be", () => {
    expect(paths({ radius: Infinity })).toEqual([]);
    expect(paths({ radius: { nut: Infinity, end: Infinity } })).toEqual([]);
    expect(paths({ radius: -Infinity })).toEqual(["radius"]);
    expect(paths({ web: Infinity })).toEqual(["web"]);
  });

  test("as many groups as may be, and one more", () => {
    const groups = (count: number) =>
      Array.from({ length: count }, (_, i) => ({ frets: [i + 1], diameter: 3 }));
    expect(paths({ markers: groups(20) })).toEqual([]);
    expect(paths({ markers: groups(21) })).toEqual(["markers"]);
  });

  test("a text is a name, and nothing comes of -0 but 0", () => {
    expect(paths({ name: "Larch" })).toEqual([]);
    const [hole] = checkDesign({ ...PLAIN, fill: { kind: "poured", keep: -0 } }).holes;
    expect(hole?.fill.keep).toBe(0);
  });

  test("a radius is held against half the width on the board alone, not beyond its end", () => {
    // half the width: 20 at the nut, 47.2 at the end of the board, 60 at fret 24
    const width = { nut: 40, fret24: 120 };
    const design = {
      scale: { length: 648, frets: 24 },
      board: { ...PLAIN.board, length: 330, width },
      tolerance: { radius: 0 },
      ...group({}),
    };
    expect(paths({ ...design, radius: 55 })).toEqual([]);
    expect(paths({ ...design, radius: 47 })).toEqual(["radius"]);
  });

  test.each(["thickness", "radius", "crown"])("two stations of the %s at one place", (name) => {
    const stations = { fret12: 250, end: 251 };
    const change = name === "thickness" ? { board: { thickness: stations } } : { [name]: stations };
    const short = { ...PLAIN.board, length: 324, ...("board" in change ? change.board : {}) };
    const path = name === "thickness" ? "board.thickness.end" : `${name}.end`;
    expect(refusalsOf({ ...change, board: short, ...group({}) })).toEqual([
      `${path}: expected a place of its own, but "fret12" lies there too, received 251`,
    ]);
  });

  test("nothing at a station is as if the station were not named", () => {
    expect(paths({ radius: { nut: 254, end: undefined } })).toEqual([]);
    expect(paths({ radius: { end: undefined } })).toEqual(["radius"]);
    expect(paths({ markers: [], fill: undefined, name: undefined })).toEqual([]);
  });

  test("what cannot be read hides nothing else, and brings nothing else", () => {
    expect(paths({ radius: "254", tolerance: { radius: 0.02 } })).toEqual(["radius"]);
    expect(paths({ crown: "0.1", board: { ...PLAIN.board, length: "482" } })).toEqual([
      "board.length",
      "crown",
    ]);
    expect(paths({ ...board({ thickness: "6" }), radius: 20 })).toEqual([
      "board.thickness",
      "radius",
    ]);
  });

  test("a pair's spread by its own place", () => {
    expect(paths(group({ arrangement: "double", spread: -1 }))).toEqual(["markers.0.spread"]);
  });

  test("a channel of no length", () => {
    const channel = (from: number) => board({ channel: { width: 6, depth: 2, from, to: 100 } });
    expect(paths(channel(100 - 1e-9))).toEqual([]);
    expect(paths(channel(100))).toEqual(["board.channel.from"]);
  });

  // nut 40, fret 1 halfway 20: nothing at the end
  test.each(["width", "thickness"])("a board whose %s runs out at its very end", (name) => {
    const design = (fret1: number) => ({
      scale: { positions: [100] },
      board: { ...PLAIN.board, width: 50, length: 200, [name]: { nut: 40, fret1 } },
      markers: [],
    });
    expect(refusalsOf(design(20))).toEqual([
      `board.${name}: expected more than 0 mm everywhere on the board, received 0`,
    ]);
    expect(paths(design(20 + 1e-9))).toEqual([]);
  });

  test("stations nearer than a thousand-millionth of the board", () => {
    const design = (gap: number) => ({
      scale: { positions: [512, 512 + gap] },
      board: { length: 1024, width: { fret1: 50, fret2: 50.5 }, thickness: 6 },
      radius: Infinity,
      markers: [],
    });
    const tooNear = (gap: number) => refusalsOf(design(gap)).filter((said) => /own/.test(said));
    expect(tooNear(2 ** -20)).toEqual([
      'board.width.fret2: expected a place of its own, but "fret1" lies there too, received 50.5',
    ]);
    expect(tooNear(2 ** -19)).toEqual([]);
  });

  test("the order in which stations are named does not matter", () => {
    const named = (stations: readonly (readonly [string, number])[]) =>
      checkDesign({
        ...PLAIN,
        ...board({ thickness: Object.fromEntries(stations) }),
        radius: 254,
      }).holes.map(({ blank }) => blank);
    const there = [
      ["nut", 6],
      ["fret5", 7],
      ["end", 5],
    ] as const;
    const blanks = named(there);
    expect(new Set(blanks).size).toBeGreaterThan(5);
    expect(named([...there].reverse())).toEqual(blanks);
  });
});
