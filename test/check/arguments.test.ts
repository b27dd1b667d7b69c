/** What a public function says of an argument that it cannot take: its path, its bound and its value, all at once. */
import { expect, test } from "vitest";
import {
  checkDesign,
  checkMany,
  type Design,
  DesignError,
  diagonalCrossing,
  fretLines,
  fretPositions,
  frontier,
  holeWindow,
  profileAt,
  radiusFromSagitta,
  removalAt,
  sagitta,
  stopSettings,
  sweep,
} from "../../src/index.js";
import { issuesOf } from "./issues.js";
import { FLAT, PLAIN, SQUARED } from "./necks.js";

/** An object of which one field cannot be read. */
const locked = (object: object, key: string): never =>
  Object.defineProperty({ ...object }, key, {
    enumerable: true,
    get: () => {
      throw new Error("locked");
    },
  }) as never;

function revoked(): never {
  const { proxy, revoke } = Proxy.revocable({}, {});
  revoke();
  return proxy as never;
}

const rows = sweep(PLAIN, { radius: [200, 254] });
const { min, max, minHole, maxHole, settings } = rows;
const OUT = { min, max, minHole, maxHole, settings };
const swept = (options: object, axes: object = { radius: [200, 254] }) =>
  sweep(PLAIN, axes, options as never);
const THREE = { web: [1, 2, 3] };
const stopped = (...windows: unknown[]) => stopSettings(windows as never);

/** The path, a part of the bound, and the value as it is told. */
type Refusal = readonly [path: string, bound: string, value: string, call: () => unknown];

const count = (most: number) => `a whole number from 0 to ${most}`;
const OPEN = { ...PLAIN, radius: 40 };

test.each<Refusal>([
  ["radius", "more than 0", "0", () => sagitta(0, 1)],
  ["radius", "more than 0", '"254"', () => sagitta("254" as never, 1)],
  ["x", "a finite distance", "Infinity", () => sagitta(254, Infinity)],
  ["slope", "a finite number", "NaN", () => sagitta(254, 20, Number.NaN)],
  ["x", "a distance that a radius of 20 reaches", "20.5", () => sagitta(20, 20.5)],
  ["x", "a finite distance", "NaN", () => radiusFromSagitta(Number.NaN, 1)],
  ["h", "a finite drop of 0 or more", "-1", () => radiusFromSagitta(8, -1)],
  ["h", "more than 0 where x is 0", "0", () => radiusFromSagitta(0, 0)],
  ["widthA", "a finite length greater than 0", "0", () => diagonalCrossing(4, 0, 5)],
  ["step", "a finite length greater than 0", "0", () => stopSettings([], { step: 0 })],
  ["options", "can be read", "an object", () => stopSettings([], locked({}, "step"))],
  ["windows", "an array of 10000 windows", "an object", () => stopSettings({} as never)],
  ["windows", "10000 windows at most", "an array", () => stopSettings(Array(10_001))],
  ["windows.0", "an object with min and max", "null", () => stopped(null)],
  ["windows.0.max", "a finite number", "NaN", () => stopped({ min: 1, max: Number.NaN })],
  ["windows.0.tool", "a text", "3", () => stopped({ min: 1, max: 2, tool: 3 })],
  ["i", count(1), "2", () => rows.valuesAt(2)],
  ["i", count(1), "-1", () => rows.at(-1)],
  ["i", count(1), "0.5", () => rows.report(0.5)],
  ["to", count(2), "3", () => swept({ to: 3 })],
  ["from", count(1), "2", () => swept({ from: 2, to: 1 })],
  ["options", "an object with from, to and out", "7", () => swept(7 as never)],
  ["options", "can be read", "an object", () => swept(revoked())],
  ["out.min", "Float64Array, length 3", "an object", () => swept({ out: OUT }, THREE)],
  ["out.minHole", "Int32Array", "an object", () => swept({ out: { ...OUT, minHole: min } })],
  ["out", "can be read", "an object", () => swept({ out: revoked() })],
  ["designs", "can be iterated", "7", () => checkMany(7 as never)],
  ["designs", "can be read", "an object", () => checkMany(revoked())],
  ["offset", "surface reaches", "41", () => removalAt(OPEN, 100, 41)],
])("an argument, %s: %s, not %s", (path, bound, value, call) => {
  expect(call).toThrow(RangeError);
  expect(call).not.toThrow(DesignError);
  expect(call).toThrow(new RegExp(`^${path}: expected .*, received ${value}$`));
  expect(call).toThrow(bound);
});

const HOLE = { along: 1, offset: 1, diameter: 1 };
const FAN = { bass: 686, treble: 648, square: 7, frets: 22 };
const LONG = { scale: { length: 648, frets: 22 }, board: { length: 324 } };
const MEET = { fret12: 1, end: 2 };
const holed = (change: object) => holeWindow(PLAIN, { ...HOLE, ...change });
const profiled = (change: object) => profileAt(MEET, 1, { ...LONG, ...change });
const many = Array.from({ length: 1300 }, (_, i) => 500 + i / 10);
const MANY = { radius: many, web: many, sanding: many };
const axed = (axes: unknown) => swept({}, axes as object);
const TWIST = { kind: "twist", angle: 180 };
const GROUP_7 = "axes.markers.7.diameter";
const odd = { ...rows, axes: [{ path: "radius", values: [Number.NaN, 1] }] } as const;

test.each<Refusal>([
  ["design", "`readDesign`", '"{}"', () => checkDesign("{}" as never)],
  ["along", "a number of mm", "NaN", () => profileAt(5, Number.NaN, PLAIN)],
  ["profile", "0 mm or more", "-1", () => profileAt(-1, 1, PLAIN)],
  ["scale.length", "1e-12 to 1e+12 mm", "0", () => profiled({ scale: { length: 0, frets: 3 } })],
  ["board.length", "more than 0", "-1", () => profiled({ board: { length: -1 } })],
  ["board.width", "more than 0", "undefined", () => profiled({ scale: FAN })],
  ["profile.end", '"fret12" lies there too', "2", () => profiled({})],
  ["offset", "a number of mm", "Infinity", () => removalAt(PLAIN, 1, Infinity)],
  ["hole.along", "a number of mm", "Infinity", () => holed({ along: Infinity })],
  ["hole.diameter", "more than 0 mm", "0", () => holed({ diameter: 0 })],
  ["hole.bit.angle", "from 1 to 179 degrees", "180", () => holed({ bit: TWIST })],
  ["hole.depth", "known", "2", () => holed({ depth: 2 })],
  ["hole.offset", "reaches, within the tolerances", "253.5", () => holed({ offset: 253.5 })],
  ["scale", "`fretLines`", "an object", () => fretPositions(FAN)],
  ["axes", "an object of paths with their values", "7", () => axed(7)],
  ["axes.raduis", 'did you mean "radius"?', "an array", () => axed({ raduis: [254] })],
  ["axes.scale.frets", "that a sweep can vary", "an array", () => axed({ "scale.frets": [3] })],
  ["axes.radius", "one value or more", "an array", () => axed({ radius: [] })],
  ["axes.web", "1000000 at most", "1", () => axed({ web: 1 })],
  ["web", "0 mm or more", "-1", () => axed({ web: [1, -1] })],
  [GROUP_7, "which has no markers.7", "an array", () => axed({ "markers.7.diameter": [6, -1] })],
  ["axes", "2147483648 combinations", "2197000000", () => axed(MANY)],
  ["axis", "an axis of the sweep", '"web"', () => frontier(rows, "web")],
  ["sweep", "all its combinations", "1", () => frontier(swept({ from: 1 }), "radius")],
  ["sweep.axes", "`sweep` returned", "an array", () => frontier(odd, "radius")],
  ["web", "can be read", "undefined", () => checkDesign(locked(PLAIN, "web"))],
  ["hole.along", "can be read", "undefined", () => holeWindow(PLAIN, locked(HOLE, "along"))],
  ["axes.radius", "can be read", "undefined", () => axed(locked({ radius: [1] }, "radius"))],
  ["design", "keys can be read", "an object", () => checkDesign(revoked())],
])("a design or its like, %s: %s, not %s", (path, bound, value, call) => {
  const issue = issuesOf(call).find((each) => (each.path || "design") === path);
  expect(issue?.expected).toContain(bound);
  expect(issue?.message).toBe(`${path}: expected ${issue?.expected}, received ${value}`);
});

test("of a path into a list that ends before it, that alone is told", () => {
  expect(issuesOf(() => axed({ "markers.7.diameter": [6] })).length).toBe(1);
});

test("all that is wrong is told at once", () => {
  const wrong = { along: Infinity, offset: Number.NaN, diameter: 0, bit: { kind: "drill" } };
  const paths = issuesOf(() => holed(wrong)).map(({ path }) => path);
  expect(paths).toEqual(["hole.along", "hole.offset", "hole.diameter", "hole.bit.kind"]);
});

test("each building block by itself, on a board of which all is known", () => {
  // by hand: at x = R a circle has dropped R; x = 0: the circle through the crest and its own drop, R = h / 2
  expect([
    sagitta(20, 20),
    sagitta(Infinity, 1e9),
    radiusFromSagitta(5, 0),
    radiusFromSagitta(0, 6),
  ]).toEqual([20, 0, Infinity, 3]);
  expect([fretPositions({ positions: [30, 70] }), fretLines(FLAT)[0]]).toEqual([
    [30, 70],
    { along: 0, bass: 0, treble: 0 },
  ]);
  // 0.5 of sanding, and 65 − 63 at 16; what is planed off an existing radius less where that lies
  expect([removalAt(SQUARED, 100, 20), removalAt({ ...SQUARED, radius: 65 }, 100, -16)]).toEqual([
    0.5, 2.5,
  ]);
  const curved: Design = { ...SQUARED, existing: { radius: 65 }, sanding: 9 };
  expect([removalAt(curved, 100, 16), removalAt({ ...curved, sanding: 1 }, 100, 16)]).toEqual([
    7, 0,
  ]);
  expect([profileAt(0, 100, FLAT), profileAt({ nut: 43, end: 57 }, 80, SQUARED)]).toEqual([0, 50]);
  // fanned: a station lies where its slot meets the centre line
  const fan = { scale: FAN, board: { length: 510, width: { nut: 45, end: 62 }, thickness: 6 } };
  const at = fretLines({ ...fan, radius: 400, markers: [] })[12]?.along ?? Number.NaN;
  expect(profileAt({ nut: 1, fret12: 3, end: 8 }, at, fan)).toBe(3);
});
