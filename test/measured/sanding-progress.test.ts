/**
 * How far the sanding has come. Circles by hand are of radius 25, whose half-chords of 7, 15, 20 and 24 lie 24, 20, 15
 * and 7 from its centre (intersecting chords); the boards are invented.
 */
import fc from "fast-check";
import { expect, test } from "vitest";
import { checkDesign, type Design } from "../../src/index.js";
import { type SandingReading, sandingProgress } from "../../src/measured/index.js";
import { between, forAll } from "../outside/counted.js";
import { dropOf } from "./boards.js";

type Spot = { readonly along?: number; readonly offset: number; readonly depth?: number };
type Changes = Partial<Omit<Design, "markers">> & { readonly group?: object };

/** A straight board 48 wide and 30 thick, with dots at some spots whose depth is as stated. */
function neck(spots: readonly Spot[], diameter: number, { group, ...changes }: Changes = {}) {
  const places = spots.map((spot) => ({ along: 200, ...spot }));
  return {
    scale: { length: 648, frets: 22 },
    board: { length: 482, width: 48, thickness: 30 },
    radius: 25,
    sanding: 1.2,
    tolerance: { stop: 0, point: 0, crest: 0, sanding: 0 },
    markers: places.length > 0 ? [{ places, diameter, ...group }] : [],
    ...changes,
  } as Design;
}

const ROUND = { along: 200, centre: 29, bass: 11, treble: 11 } as const;
const nowOf = (design: Design, readings: readonly SandingReading[]) =>
  sandingProgress(design, readings).holes.map(({ markerLeft }) => markerLeft.now);
const close = (values: readonly number[]) => values.map((value) => expect.closeTo(value, 9));

test("a circle through three thicknesses: 18 over 24 is a radius of 25, and 0.2 are still to go", () => {
  const { readings, holes, findings, cautions, ...rest } = sandingProgress(
    neck([{ offset: 12, depth: 8 }], 6),
    [ROUND],
  );
  const [to, radius] = [expect.closeTo(0.2, 9), expect.closeTo(25, 9)];
  const toGo = { centre: to, bass: to, treble: to };
  expect(readings).toEqual([{ along: 200, sanding: 1, radius, crest: 0, toGo }]);
  // the dot's rim at 15 has dropped by 25 − 20 = 5
  const markerLeft = { now: expect.closeTo(8 - 1 - 5, 9), finished: expect.closeTo(1.8, 9) };
  expect(holes).toEqual([{ path: "markers.0.places.0", name: "fret 7, treble", markerLeft }]);
  expect(findings).toEqual([]);
  expect(cautions.join("\n")).toMatch(/^These lines.*local codes.*Wood dust.*Sand epoxy/s);
  expect(cautions.join("\n")).not.toMatch(/press|Uncured/);
  expect(rest).toEqual({});
});

test("one edge: the circle is centred; no edge: the finished radius counts; what was not read is absent", () => {
  const { along, centre, bass } = ROUND;
  const design = neck([{ offset: -12, depth: 8 }], 6, { name: "invented" });
  for (const edge of ["bass", "treble"]) {
    const { readings, holes, name } = sandingProgress(design, [{ along, centre, [edge]: bass }]);
    const toGo = { centre: expect.closeTo(0.2, 9), [edge]: expect.closeTo(0.2, 9) };
    expect(readings).toEqual([{ along, sanding: 1, radius: expect.closeTo(25, 9), toGo }]);
    expect(holes[0]?.markerLeft.now).toBeCloseTo(2, 9);
    expect(name).toBe("invented");
  }
  const { readings, holes } = sandingProgress(design, [{ along, centre }]);
  expect(readings).toEqual([{ along, sanding: 1, toGo: { centre: expect.closeTo(0.2, 9) } }]);
  expect(holes[0]?.markerLeft.now).toBeCloseTo(8 - 1 - 5, 9);
});

test("a crest aside, a hollow, a slant", () => {
  const crest = 3;
  const at = (x: number) => 30 - 0.4 - dropOf(254, x - crest);
  const aside = { along: 200, centre: at(0), bass: at(-24), treble: at(24) };
  // the dot's rims at −15 and 15
  const spots = [
    { offset: -12, depth: 8 },
    { offset: 12, depth: 8 },
  ];
  const { readings, holes } = sandingProgress(neck(spots, 6), [aside]);
  expect(readings[0]).toMatchObject({
    radius: expect.closeTo(254, 6),
    crest: expect.closeTo(3, 6),
  });
  const left = [-15, 15].map((x) => 8 - 30 + at(x));
  expect(holes.map(({ markerLeft }) => markerLeft.now)).toEqual(close(left));
  // 1 is off at the edges, 19 on the centre line; at 7 the hollow has risen by 25 − 24 = 1
  const hollow = { along: 200, centre: 11, bass: 29, treble: 29 };
  const dots = [
    { offset: 0, depth: 20 },
    { offset: 11, depth: 20 },
  ];
  expect(nowOf(neck(dots, 8), [hollow])).toEqual(close([20 - 19, 20 - 18]));
  expect(sandingProgress(neck([], 6), [hollow]).readings[0]).toMatchObject({
    radius: expect.closeTo(-25, 9),
    crest: 0,
  });
  // 0.01 a millimetre
  const slant = { along: 200, centre: 29, bass: 29.24, treble: 28.76 };
  expect(nowOf(neck(spots, 6), [slant])).toEqual(close([8 - 1 + 0.09, 8 - 1 - 0.15]));
  // over a dot from 197 to 203 the worst of what changes: flat for the bass dot, the slant or the circle for the other
  const level = { along: 197, centre: 29, bass: 29, treble: 29 };
  const next = (reading: object) => [level, { ...reading, along: 203 } as SandingReading];
  expect(nowOf(neck(spots, 6), next(slant))).toEqual(close([8 - 1, 8 - 1 - 0.15]));
  expect(nowOf(neck(spots, 6), next(ROUND))).toEqual(close([2, 2]));
  const [told] = sandingProgress(neck([], 6), [slant]).readings;
  expect(told).toEqual({ along: 200, sanding: 1, radius: Infinity, toGo: expect.anything() });
});

test("stations; linear between readings, constant beyond, in the order read, which may be any", () => {
  const spots = [100, 241, 482].map((along) => ({ along, offset: 0, depth: 2.5 }));
  const readings = [
    { along: "end", centre: 29 },
    { along: "fret12", centre: 29.5 },
    { along: 160, centre: 29.75 },
  ] as const;
  const design = neck(spots, 4, { radius: Infinity });
  const told = sandingProgress(design, readings);
  expect(told.readings.map(({ along }) => along)).toEqual(close([482, 324, 160]));
  // the dot at 241 ends at 243: 83/164 of the way from 160 to 324
  const flat = [2.25, 2.25 - (0.25 * 83) / 164, 1.5];
  const left = close(flat);
  expect(told.holes.map(({ markerLeft }) => markerLeft.now)).toEqual(left);
  expect(nowOf(design, [...readings].reverse())).toEqual(left);
  expect(sandingProgress(design, [{ along: "nut", centre: 30 }]).readings[0]?.along).toBe(0);
  // the curvature comes from where an edge was read, what is off from everywhere
  const drop = 25 - Math.sqrt(25 ** 2 - 2 ** 2);
  const [, second, third] = flat as [number, number, number];
  const bent = [1.5 + (0.75 * 98) / 160, second, third].map((left) => left - drop);
  expect(nowOf(design, [{ ...ROUND, along: "nut" }, ...readings])).toEqual(close(bent));
});

test("the depth's worst case; drilled, recommended; a pocket by its corners; a level floor", () => {
  const off = { tolerance: { stop: 0.1, point: 0.2, crest: 0, sanding: 0 } };
  const spots = [{ offset: 12, depth: 8 }];
  expect(nowOf(neck(spots, 6, off), [ROUND])).toEqual(close([8 - 0.3 - 6]));
  expect(nowOf(neck(spots, 6, { ...off, group: { drilled: true } }), [ROUND])).toEqual(close([2]));
  const open = neck([{ offset: 12 }], 6, off);
  const depth = checkDesign(open).holes[0]?.recommended?.depth ?? Number.NaN;
  expect(nowOf(open, [ROUND])).toEqual(close([depth - 0.3 - 6]));
  const none = neck([{ offset: 12 }], 6, { board: { length: 482, width: 48, thickness: 8 } });
  expect(sandingProgress(none, [{ along: 200, centre: 7 }])).toMatchObject({
    holes: [],
    findings: [],
  });
  const shape = { kind: "rectangle", length: 10, width: 6 };
  const pocket = {
    ...neck(spots, 6, off),
    markers: [{ places: [{ along: 200, offset: 12, depth: 8 }], shape }],
  };
  // a mill has no point
  expect(nowOf(pocket as Design, [ROUND])).toEqual(close([8 - 0.1 - 6]));
  // zeroed on the table, over a board that falls by 0.001 a millimetre: at the dot's end by 0.003
  const tapered = neck([{ offset: 0, depth: 2.5 }], 6, {
    board: { length: 482, width: 48, thickness: { nut: 30, end: 29.518 } },
    radius: Infinity,
    stop: { from: "table" },
    tolerance: { stop: 0, point: 0, seat: 0 },
  });
  const readings = [
    { along: 0, centre: 29.5 },
    { along: 482, centre: 29.018 },
  ];
  const { holes } = sandingProgress(tapered, readings);
  expect(holes[0]?.markerLeft).toEqual({
    now: expect.closeTo(1.997, 9),
    finished: expect.closeTo(1.297, 9),
  });
});

test("an existing radius: the old top stays where it lies lower", () => {
  // the dot's centre has dropped by 10, its rim at 24 by 18
  const design = neck([{ offset: 20, depth: 10 }], 8, {
    existing: { radius: 25 },
    radius: Infinity,
    sanding: 18,
  });
  const told = sandingProgress(design, [{ along: 200, centre: 18, bass: 12 }]);
  expect(told.readings[0]?.toGo).toEqual({
    centre: expect.closeTo(6, 9),
    bass: expect.closeTo(0, 9),
  });
  for (const bass of [12, undefined]) {
    expect(nowOf(design, [{ along: 200, centre: 18, bass }])).toEqual(close([10 + 10 - 18]));
  }
});

test("past the finished surface by more than 0.01 a warning; below its keep, or gone, an error first", () => {
  const spots = [
    { along: 100, offset: 0, depth: 2 },
    { along: 200, offset: 0, depth: 1.5 },
    { along: 300, offset: 0, depth: 1.1 },
    { along: 300, offset: 12, depth: 6.2 },
  ];
  const design = neck(spots, 6, { radius: 254, fill: { kind: "poured", keep: 0.5 } });
  const drop = dropOf(254, 24);
  const reading = {
    along: 200,
    centre: 28.75,
    bass: 28.8 - drop - 0.009,
    treble: 28.8 - drop - 0.02,
  };
  const { findings, readings, holes } = sandingProgress(design, [reading]);
  for (const { markerLeft } of holes.slice(0, 3)) expect(markerLeft.finished).toBe(markerLeft.now);
  expect(readings[0]?.toGo).toEqual({
    centre: expect.closeTo(-0.05),
    bass: expect.closeTo(-0.009),
    treble: expect.closeTo(-0.02),
  });
  expect(
    findings.map(({ code, severity, path, place, reading }) => [
      code,
      severity,
      path ?? place,
      reading,
    ]),
  ).toEqual([
    ["below-keep", "error", "markers.0.places.1", undefined],
    ["nothing-left", "error", "markers.0.places.2", undefined],
    ["past-surface", "warning", "centre", 0],
    ["past-surface", "warning", "treble", 0],
  ]);
  const [low, gone, past] = findings;
  expect(low).toMatchObject({ limit: 0.5, name: "fret 7" });
  expect(low?.value).toBeCloseTo(1.5 - 1.25 - dropOf(254, 3), 1);
  expect(gone).toMatchObject({ limit: 0, value: expect.closeTo(-0.17, 1) });
  expect(past).toMatchObject({ value: expect.closeTo(0.05, 9), limit: 0.01, along: 200 });
  expect(low?.message).toMatch(
    /^As little as 0\.2\d mm of the marker at fret 7 may be left; keep 0\.50 mm\.$/,
  );
  expect(gone?.message).toMatch(/^The marker at fret 11 may be sanded away: in the worst case/);
  expect(past?.message).toBe(
    "The sanding is 0.05 mm past the finished surface on the centre line, 200.00 mm from the nut.",
  );
});

const OFF = 'a number from 0 to 482 mm, "nut", "end", or "fret1" to "fret22"';
const SIZE = "a number from 0.000001 to 1000000 mm";

test.each<[string, unknown, readonly string[]]>([
  ["nothing", undefined, ["readings: expected an array of 1 to 1000 readings, received undefined"]],
  ["none", [], ["readings.length: expected an array of 1 to 1000 readings, received 0"]],
  [
    "several faults",
    [
      { along: 483, centre: 0 },
      { along: "fret23", centre: 29, bass: "5 mm", teble: 4 },
      { along: "bridge", centre: Number.NaN, treble: 1 },
      { along: 0, centre: 29 },
      { along: "nut", centre: 29, bass: 5 - 1e-9, treble: 5 },
      7,
    ],
    [
      `readings.0.along: expected ${OFF}, received 483`,
      `readings.0.centre: expected ${SIZE}, received 0`,
      "readings.1.teble: expected a known key: along, centre, bass, treble, received 4",
      `readings.1.along: expected ${OFF}, received "fret23"`,
      `readings.1.bass: expected ${SIZE}, received "5 mm"`,
      `readings.2.along: expected ${OFF}, received "bridge"`,
      `readings.2.centre: expected ${SIZE}, received NaN`,
      "readings.4.bass: expected a thickness within half the width, 24 mm, of the centre's, received 4.999999999",
      "readings.5: expected an object with along, centre, bass, treble, received 7",
      "readings.4.along: expected a place that was not read before, received 0",
    ],
  ],
])("refused with every path: %s", (_, readings, lines) => {
  const call = () => sandingProgress(neck([], 6), readings as never);
  expect(call).toThrow(new RangeError(lines.join("\n")));
});

test("of a board without frets there are no stations but its ends; a design of another kind is refused by its paths", () => {
  const design = { ...neck([], 6), scale: { positions: [600] } };
  expect(() => sandingProgress(design, [{ along: -1, centre: 1 }])).toThrow(
    /mm, "nut" or "end", received -1$/,
  );
  expect(() => sandingProgress({} as Design, [])).toThrow(/^\d problems in the design/);
});

/** A block of the finished radius on a flat board, its crest `aside`, so far down: below the top everywhere. */
const sanded = fc.record({
  radius: between(80, 500),
  aside: fc.oneof(fc.constant(0), between(-6, 6)),
  down: between(-1.2, 0.8),
  fall: between(0, 0.001),
  spots: fc.array(fc.record({ along: between(20, 460), offset: between(-20, 20) }), {
    minLength: 1,
    maxLength: 4,
  }),
});

test("never more than is left: early the block leaves the middle flat, later one circle is left", () => {
  let [early, late] = [0, 0];
  forAll(sanded, ({ radius, aside, down, fall, spots }) => {
    const level = (s: number) => down + fall * s;
    const isLate = level(0) + dropOf(radius, aside) > 0;
    const off = (s: number, x: number) => Math.max(0, level(s) + dropOf(radius, x - aside));
    const readings = [0, 160, 320, 482].map((along) => {
      const at = (x: number) => 30 - off(along, x);
      return { along, centre: at(0), bass: at(-24), treble: at(24) };
    });
    const depth = 10;
    const design = neck(
      spots.map((spot) => ({ ...spot, depth })),
      6,
      { radius },
    );
    // a crest on the centre line may be read with fewer edges
    const fewer = [{ treble: undefined }, { treble: undefined, bass: undefined }].map((without) =>
      readings.map((reading) => ({ ...reading, ...without })),
    );
    const told = [readings, ...(aside === 0 ? fewer : [])].flatMap(
      (given) => sandingProgress(design, given).holes,
    );
    for (const { path, markerLeft } of told) {
      const { now } = markerLeft;
      const { along, offset } = spots[Number(path.split(".").at(-1))] as Required<Spot>;
      const rim = Array.from({ length: 64 }, (_, k) => (k * Math.PI) / 32);
      const worst = Math.max(
        ...rim.map((a) => off(along + 3 * Math.cos(a), offset + 3 * Math.sin(a))),
      );
      expect(now).toBeLessThanOrEqual(depth - worst + 1e-9);
      if (isLate) expect(now).toBeGreaterThan(depth - worst - 0.02);
    }
    if (isLate) late++;
    else early++;
  });
  expect(Math.min(early, late)).toBeGreaterThan(0);
});

/** Seldom no number, mostly one within reach. */
const thickness = fc.oneof(
  { weight: 9, arbitrary: between(20, 31) },
  fc.constantFrom(1e-6, 30, 1e6, Number.NaN, undefined, "30" as never),
);
const anyReading = fc.record(
  {
    along: fc.oneof(between(0, 482), fc.constantFrom("nut", "end")),
    centre: thickness,
    bass: thickness,
    treble: thickness,
  },
  { requiredKeys: ["along", "centre"] },
);

test("whatever is read, a RangeError or numbers", () => {
  const spots = [{ offset: -23, depth: 8 }, { offset: 12 }];
  const design = neck(spots, 6, { radius: 254, existing: { radius: 400 } });
  let [told, refused] = [0, 0];
  forAll(fc.array(anyReading, { maxLength: 3 }), (readings) => {
    try {
      const { readings: read, holes } = sandingProgress(design, readings as SandingReading[]);
      const lefts = holes.flatMap(({ markerLeft }) => Object.values(markerLeft));
      const numbers = read.flatMap(({ radius = 1, toGo, ...rest }) => [
        1 / radius,
        ...Object.values(toGo),
        ...Object.values(rest),
      ]);
      expect([...lefts, ...numbers].filter((value) => !Number.isFinite(value))).toEqual([]);
      told++;
    } catch (error) {
      if (!(error instanceof RangeError)) throw error;
      refused++;
    }
  });
  expect(Math.min(told, refused)).toBeGreaterThan(0);
});
