/** What a single formula says of an argument it cannot take: name, bound and value, word for word. */
import { expect, test } from "vitest";
import {
  checkDesign,
  checkMany,
  type Design,
  diagonalCrossing,
  fretLines,
  fretPositions,
  frontier,
  holeWindow,
  profileAt,
  radiusFromSagitta,
  removalAt,
  repairHole,
  sagitta,
  stopSettings,
  sweep,
} from "../../src/index.js";
import { messagesOf } from "./issues.js";
import { FLAT, PLAIN } from "./necks.js";

test.each<[() => unknown, string]>([
  [() => sagitta(0, 1), "radius: expected more than 0, received 0"],
  [() => sagitta(254, Infinity), "x: expected a finite distance, received Infinity"],
  [() => sagitta(254, 20, Number.NaN), "slope: expected a finite number, received NaN"],
  [() => sagitta(20, 20.5), "x: expected a distance that a radius of 20 reaches, received 20.5"],
  [() => radiusFromSagitta(Number.NaN, 1), "x: expected a finite distance, received NaN"],
  [() => radiusFromSagitta(8, -1), "h: expected a finite drop of 0 or more, received -1"],
  [() => radiusFromSagitta(0, 0), "h: expected more than 0 where x is 0, received 0"],
  [
    () => diagonalCrossing(450, 0, 56),
    "widthA: expected a finite length greater than 0, received 0",
  ],
  [
    () => stopSettings([], { step: 0 }),
    "step: expected a finite length greater than 0, received 0",
  ],
  [
    () => stopSettings([{ min: 1, max: Number.NaN }]),
    "windows.0.max: expected a finite number, received NaN",
  ],
  [
    () => stopSettings({} as never),
    "windows: expected an array of 10000 windows at most, received an object",
  ],
  [
    () => sweep(PLAIN, { radius: [254] }).at(1),
    "i: expected a whole number from 0 to 0, received 1",
  ],
  [
    () => sweep(PLAIN, { radius: [254] }, { from: 2, to: 1 }),
    "from: expected a whole number from 0 to 1, received 2",
  ],
])("%s", (call, message) => {
  expect(call).toThrow(new RangeError(message));
});

/** An object of which one field cannot be read. */
function locked<T extends object>(object: T, key: string): T {
  return Object.defineProperty({ ...object }, key, {
    enumerable: true,
    get: () => {
      throw new Error("locked");
    },
  });
}

function revoked(): never {
  const { proxy, revoke } = Proxy.revocable({}, {});
  revoke();
  return proxy as never;
}

const DESIGN_KEYS = [
  "name",
  "scale",
  "board",
  "radius",
  "crown",
  "markers",
  "fill",
  "bit",
  "depth",
  "web",
  "tolerance",
  "stopStep",
  "slot",
  "sideDots",
  "pour",
];

test.each<[string, () => unknown]>([
  ["web", () => checkDesign(locked(PLAIN, "web"))],
  ["board.length", () => checkDesign({ ...PLAIN, board: locked(PLAIN.board, "length") })],
  ["scale", () => profileAt(5, 100, locked(PLAIN, "scale"))],
  ["board", () => profileAt(5, 100, locked(PLAIN, "board"))],
  ["board.length", () => profileAt(5, 100, { ...PLAIN, board: locked(PLAIN.board, "length") })],
  [
    "board.width",
    () => {
      const scale = { bass: 686, treble: 648, perpendicular: 7, frets: 22 };
      return profileAt(5, 100, { scale, board: locked(PLAIN.board, "width") });
    },
  ],
  ["hole.along", () => holeWindow(PLAIN, locked({ along: 1, offset: 1, diameter: 1 }, "along"))],
  ["axes.radius", () => sweep(PLAIN, locked({ radius: [1] }, "radius"))],
])("a field that will not be read, as %s: so it is told", (path, call) => {
  const known = messagesOf(call);
  expect(known[0]).toBe(`${path}: expected a value that can be read, received undefined`);
});

test("an object that will not name its keys", () => {
  const closed = (object: object) =>
    new Proxy(object, {
      ownKeys: () => {
        throw new Error("closed");
      },
    });
  expect(messagesOf(() => checkDesign(closed(PLAIN) as Design))).toEqual([
    "design: expected an object whose keys can be read, received an object",
  ]);
  const scale = closed({ length: 648, frets: 22 }) as Design["scale"];
  const told = "scale: expected an object whose keys can be read, received an object";
  expect(messagesOf(() => checkDesign({ ...PLAIN, scale }))).toEqual([told, told]);
});

test.each<[string, () => unknown, readonly string[]]>([
  [
    "a profile by itself",
    () => profileAt(-1, Number.NaN, { scale: { length: 0, frets: 0 }, board: { length: 0 } }),
    [
      "along: expected a finite number of mm, received NaN",
      "scale.length: expected a length of more than 0 mm (1e-12 to 1e+12 mm), received 0",
      "scale.frets: expected a whole number from 1 to 250, received 0",
      "board.length: expected a length of more than 0 mm (1e-12 to 1e+12 mm), received 0",
      "profile: expected a number of 0 or more, received -1",
    ],
  ],
  [
    "a profile of nothing",
    () => profileAt(5, 1, undefined as never),
    [
      'scale: expected an object with "length" and "frets", received undefined',
      "board.length: expected a length of more than 0 mm (1e-12 to 1e+12 mm), received undefined",
    ],
  ],
  [
    "a station beyond the frets",
    () => profileAt({ nut: 1, fret23: 2 }, 1, PLAIN),
    [
      'profile.fret23: expected a station: "nut", "end", "fret1" to "fret22"; did you mean "fret2"?, received 2',
    ],
  ],
  [
    "two stations at one place",
    () =>
      profileAt({ fret12: 1, end: 2 }, 1, {
        scale: { length: 648, frets: 22 },
        board: { length: 324 },
      }),
    ['profile.end: expected a place of its own, but "fret12" lies there too, received 2'],
  ],
  [
    "a place",
    () => removalAt(PLAIN, Number.NaN, Infinity),
    [
      "along: expected a finite number of mm, received NaN",
      "offset: expected a finite number of mm, received Infinity",
    ],
  ],
  [
    "a hole",
    () =>
      holeWindow(PLAIN, {
        along: Infinity,
        offset: Number.NaN,
        diameter: 0,
        fill: 1,
        bit: 2,
      } as never),
    [
      "hole.along: expected a finite number of mm, received Infinity",
      "hole.offset: expected a finite number of mm, received NaN",
      "hole.diameter: expected a length of more than 0 mm (1e-12 to 1e+12 mm), received 0",
      'hole.fill: expected an object whose kind is "poured" or "solid", received 1',
      'hole.bit: expected an object whose kind is "forstner", "brad-point", "twist" or "end-mill", received 2',
    ],
  ],
  [
    "no hole",
    () => holeWindow(PLAIN, 7 as never),
    [
      'hole: expected an object with "along", "offset", "diameter", "fill" and "bit", received 7',
      "hole.along: expected a finite number of mm, received undefined",
      "hole.offset: expected a finite number of mm, received undefined",
      "hole.diameter: expected a length of more than 0 mm (1e-12 to 1e+12 mm), received undefined",
    ],
  ],
  [
    "a field that a hole does not have",
    () => holeWindow(PLAIN, { along: 100, offset: 0, diameter: 6, depth: 2 } as never),
    [
      'hole.depth: expected a known key: "along", "offset", "diameter", "fill" or "bit", received 2',
    ],
  ],
  [
    "a hole beyond the surface",
    () => holeWindow({ ...PLAIN, radius: 40 }, { along: 100, offset: 38, diameter: 6 }),
    [
      "hole.offset: expected a place that the finished surface reaches, within the tolerances, received 38",
    ],
  ],
  [
    "fanned frets have no one position",
    () => fretPositions({ bass: 686, treble: 648, perpendicular: 7, frets: 22 }),
    [
      "scale: expected frets square to the centre line; fanned ones are in `fretLines`, received an object",
    ],
  ],
  [
    "a profile on nothing at all",
    () => profileAt(5, 1, null as never),
    [
      'scale: expected an object with "length" and "frets", received undefined',
      "board.length: expected a length of more than 0 mm (1e-12 to 1e+12 mm), received undefined",
    ],
  ],
  [
    "a profile beside fanned frets that do not meet the edges",
    () =>
      profileAt(5, 1, {
        scale: { bass: 686, treble: 648, perpendicular: 7, frets: 24 },
        board: { length: 482, width: { nut: 43, fret12: 1 } },
      }),
    ["scale: expected fanned frets that meet both edges of the board, received an object"],
  ],
  [
    "no scale",
    () => fretPositions(7 as never),
    ['scale: expected an object with "length" and "frets", received 7'],
  ],
  [
    "a revoked proxy",
    () => checkDesign(revoked()),
    [
      "design: expected an object whose keys can be read, received an object",
      ...DESIGN_KEYS.map((key) => `${key}: expected a value that can be read, received undefined`),
      'scale: expected an object with "length" and "frets", received undefined',
      'board: expected an object with "length", "width", "thickness" and "channel", received undefined',
      "markers: expected an array of marker groups, 20 at most, received undefined",
      "radius: expected a radius of more than 0 mm (1e-12 to 1e+12 mm), or Infinity for flat, received undefined",
    ],
  ],
  [
    "a rack of nothing, of too much, and no rack",
    () => repairHole(PLAIN, { fret: 5, error: 0.1 }, []),
    ["rack: expected one bit or more, received an array"],
  ],
  [
    "too many bits",
    () =>
      repairHole(
        PLAIN,
        { fret: 5, error: 0.1 },
        Array.from({ length: 1001 }, () => 6),
      ),
    ["rack: expected an array of bit diameters, 1000 at most, received an array"],
  ],
  [
    "a stray hole that is none",
    () => repairHole(PLAIN, 5 as never, [6]),
    ['hole: expected an object with "fret", "side" and "error", received 5'],
  ],
  [
    "a stray hole where there is none",
    () => repairHole(PLAIN, { fret: 4, error: 0.1 }, [6]),
    ["hole: expected a hole that the design has, received an object"],
  ],
  [
    "a stray hole of two",
    () => repairHole(PLAIN, { fret: 12, error: 0.1 }, [6]),
    ["hole.side: expected which hole at fret 12, received undefined"],
  ],
  [
    "a stray pocket",
    () => {
      const markers = [{ frets: [5], shape: { kind: "rectangle", length: 6, width: 6 } as const }];
      return repairHole({ ...PLAIN, markers }, { fret: 5, error: 0.1 }, [6]);
    },
    ["hole: expected a dot, not a pocket, received an object"],
  ],
  [
    "axes of no kind",
    () => sweep(PLAIN, 7 as never),
    ["axes: expected an object of paths with their values, received 7"],
  ],
  [
    "an axis that is none",
    () => sweep(PLAIN, { raduis: [254], colour: [1] } as never),
    [
      'axes.raduis: expected a path to a number that a sweep can vary; did you mean "radius"?, received an array',
      "axes.colour: expected a path to a number that a sweep can vary, received an array",
    ],
  ],
  [
    "an axis without values",
    () => sweep(PLAIN, { radius: [], web: 1 } as never),
    [
      "axes.radius: expected one value or more, received an array",
      "axes.web: expected an array of numbers, 1000000 at most, received 1",
    ],
  ],
  [
    "more combinations than may be",
    () => {
      const values = Array.from({ length: 1300 }, (_, i) => 500 + i / 10);
      return sweep(PLAIN, { radius: values, "board.length": values, "scale.length": values });
    },
    ["axes: expected 2147483648 combinations at most, received 2197000000"],
  ],
  [
    "axes that are none",
    () => sweep(PLAIN, null as never),
    ["axes: expected an object of paths with their values, received null"],
  ],
  [
    "a part of a sweep, as long as the whole",
    () => frontier({ ...sweep(PLAIN, { radius: [254, 300] }), from: 1 }, "radius"),
    ["sweep: expected a sweep of all its combinations, received 2"],
  ],
  [
    "axes of another making",
    () => {
      const rows = sweep(PLAIN, { radius: [254, 300] });
      return frontier(
        { ...rows, axes: [{ path: "radius", values: [254, "300" as never] }] },
        "radius",
      );
    },
    ["sweep.axes: expected axes as `sweep` returned them, received an array"],
  ],
  [
    "axes with no number among them",
    () => {
      const rows = sweep(PLAIN, { radius: [254, 300] });
      return frontier({ ...rows, axes: [{ path: "radius", values: [254, Number.NaN] }] }, "radius");
    },
    ["sweep.axes: expected axes as `sweep` returned them, received an array"],
  ],
  [
    "no axis of the sweep",
    () => frontier(sweep(PLAIN, { radius: [254] }), "web"),
    ['axis: expected the path of an axis of the sweep, received "web"'],
  ],
  [
    "a part of a sweep",
    () => frontier(sweep(PLAIN, { radius: [254, 300] }, { from: 0, to: 1 }), "radius"),
    ["sweep: expected a sweep of all its combinations, received 1"],
  ],
])("%s: all that is wrong, word for word", (_, call, messages) => {
  expect(messagesOf(call)).toEqual(messages);
});

test("what is beyond the finished surface, and what cannot be iterated", () => {
  expect(() => removalAt({ ...PLAIN, radius: 40 }, 100, 41)).toThrow(
    new RangeError("offset: expected a place that the finished surface reaches, received 41"),
  );
  expect(() => checkMany(7 as never)).toThrow(
    new RangeError("designs: expected something that can be iterated, received 7"),
  );
  expect(() => checkMany(null as never)).toThrow(
    new RangeError("designs: expected something that can be iterated, received null"),
  );
  expect(() => checkMany(revoked())).toThrow(
    new RangeError("designs: expected a value that can be read, received an object"),
  );
  // a text is iterated, and no letter is a design
  expect([...checkMany("ab" as never)].map(({ index }) => index)).toEqual([0, 1]);
  expect(() => sweep(PLAIN, { radius: [254] }, 7 as never)).toThrow(
    new RangeError("options: expected an object with from, to and out, received 7"),
  );
  expect(() => sweep(PLAIN, { radius: [254] }, null as never)).toThrow(
    new RangeError("options: expected an object with from, to and out, received null"),
  );
  expect(() => sweep(PLAIN, { radius: [254] }, revoked())).toThrow(
    new RangeError("options: expected a value that can be read, received an object"),
  );
  const { min, max, minHole, maxHole, settings } = sweep(PLAIN, { radius: [254] });
  const out = { min, max, minHole, maxHole, settings };
  const into = (change: object) => sweep(PLAIN, { radius: [254, 300] }, change as never);
  expect(() => into({ out })).toThrow(
    new RangeError("out.min: expected Float64Array, length 2 or more, received an object"),
  );
  expect(() => into({ to: 1, out: { ...out, minHole: min } })).toThrow(
    new RangeError("out.minHole: expected Int32Array, length 1 or more, received an object"),
  );
  expect(() => into({ out: revoked() })).toThrow(
    new RangeError("out: expected a value that can be read, received an object"),
  );
  expect(() => into({ to: 1, out: { ...out, max: revoked() } })).toThrow(
    new RangeError("out.max: expected a value that can be read, received an object"),
  );
  const rows = sweep(PLAIN, { radius: [200, 254] });
  for (const i of [-1, 2, 0.5]) {
    expect(() => rows.valuesAt(i)).toThrow(
      new RangeError(`i: expected a whole number from 0 to 1, received ${i}`),
    );
  }
  expect(() => sweep(PLAIN, { radius: [254] }, { from: -1 })).toThrow(
    new RangeError("from: expected a whole number from 0 to 1, received -1"),
  );
  expect(() => sweep(PLAIN, { radius: [254] }, { from: 0.5 })).toThrow(
    new RangeError("from: expected a whole number from 0 to 1, received 0.5"),
  );
  expect(() => sweep(PLAIN, { radius: [254] }, { to: 2 })).toThrow(
    new RangeError("to: expected a whole number from 0 to 1, received 2"),
  );
});

test("the very edge of what a surface reaches is reached, and flat drops nothing", () => {
  // by hand: at x = R a circle has dropped R
  expect(sagitta(20, 20)).toBe(20);
  expect(sagitta(Infinity, 1e9)).toBe(0);
  expect(radiusFromSagitta(5, 0)).toBe(Infinity);
  // x = 0: the circle through the crest and its own drop, R = h / 2
  expect(radiusFromSagitta(0, 6)).toBe(3);
});

test("each building block by itself, on a board of which all is known", () => {
  expect(fretPositions({ positions: [30, 70] })).toEqual([30, 70]);
  expect(fretLines(FLAT)[0]).toEqual({ along: 0, bass: 0, treble: 0 });
  // a flat board: the crown alone
  expect(removalAt(FLAT, 100, 20)).toBe(0.2);
  expect(removalAt({ ...FLAT, radius: 20.5, board: { ...FLAT.board, width: 40 } }, 100, 20.5)).toBe(
    20.7,
  );
  expect(profileAt(0, 100, FLAT)).toBe(0);
  // fanned: a station lies where its slot meets the centre line
  const fan = {
    scale: { bass: 686, treble: 648, perpendicular: 7, frets: 24 },
    board: { length: 510, width: { nut: 45, end: 62 }, thickness: 6 },
  };
  const lines = fretLines({ ...fan, radius: 400, markers: [] });
  expect(lines).toHaveLength(25);
  const at = lines[12]?.along ?? Number.NaN;
  expect(profileAt({ nut: 1, fret12: 3, end: 8 }, at, fan)).toBe(3);
});
