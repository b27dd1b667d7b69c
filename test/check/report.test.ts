/** What a report says of a hole and of the whole, and that it is plain data whatever the design. Lengths in mm. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkDesign, type Design, DesignError, repairHole } from "../../src/index.js";
import { designs } from "../design/arbitrary.js";
import { designOf, FORSTNER, TWIST } from "../windows/bench.js";
import { EXACT, PLAIN, SQUARED } from "./necks.js";

// 65² = 63² + 16² = 60² + 25²: 2 off at 16 from the crest, 5 at 25; and 0.5 everywhere
const ROUND: Design = { ...SQUARED, radius: 65, bit: { kind: "end-mill" } };
const holesOf = (markers: readonly object[], change: object = {}) =>
  checkDesign({ ...ROUND, ...change, markers } as Design).holes;

const near = (mm: number) => expect.closeTo(mm, 12);

const POCKET = { kind: "rectangle", length: 6, width: 9 } as const;
const SOLID = { fill: { kind: "solid", thickness: 2 } } as const;

describe("what the radius removes", () => {
  const pair = { frets: [2], arrangement: "double", spread: 41 };
  const pocket = (length: number, width: number) => ({ shape: { ...POCKET, length, width } });
  const middle = 65 - Math.sqrt(65 ** 2 - 20.5 ** 2);

  test.each<[string, object, number[]]>([
    ["a dot aside", { ...pair, diameter: 9 }, [2, middle, 5]],
    // its inner side lies beyond the centre line: the least is on the line
    ["a dot over the line", { frets: [2], diameter: 32 }, [0, 0, 2]],
    ["a pocket aside", { ...pair, ...pocket(6, 9) }, [2, middle, 5]],
    ["a pocket over the line", { frets: [2], ...pocket(6, 50) }, [0, 0, 5]],
  ])("%s: at the inner rim, the centre and the outer rim", (_, group, removals) => {
    const holes = holesOf([group]);
    expect(holes.length).toBeGreaterThan(0);
    for (const { removal } of holes) {
      expect(Object.values(removal)).toEqual(removals.map((mm) => expect.closeTo(mm + 0.5, 12)));
    }
  });

  test("a pocket whose sides are not of one height: at its worst corner, a conic", () => {
    const [hole] = holesOf([{ frets: [2], ...pocket(16, 50) }], { radius: { nut: 65, end: 130 } });
    // its corners nearest the nut lie at 40, a quarter of the way: (1 + K)h² − 2Rh + x² = 0, K = −m² (ISO 10110-12)
    const drop = (hole?.removal.outer ?? 0) - 0.5;
    const slope = 65 / 160;
    expect((1 - slope ** 2) * drop ** 2 - 2 * 81.25 * drop + 25 ** 2).toBeCloseTo(0, 9);
    expect(drop).toBeLessThan(5);
  });
});

describe("a hole", () => {
  test("says where it lies, how large it is, what drills and fills it, and what the board is there", () => {
    const board = { length: 160, width: 64, thickness: { nut: 8, end: 10 } };
    const markers = [{ frets: [2], by: "midpoint", diameter: 8, depth: 3 }];
    const [hole] = holesOf(markers, { board, sanding: { nut: 0.25, end: 0.75 } });
    expect(hole).toEqual({
      path: "markers.0.frets.0",
      fret: 2,
      side: "centre",
      along: 48,
      offset: 0,
      diameter: 8,
      width: 8,
      fill: { kind: "poured", keep: 1 },
      bit: { kind: "end-mill" },
      radius: 65,
      // 48 of 160: three tenths
      sanding: expect.closeTo(0.4, 12),
      thickness: expect.closeTo(8.6, 12),
      removal: expect.anything(),
      window: { min: expect.any(Number), max: expect.any(Number), minBy: "keep", maxBy: "web" },
      lead: 0,
      rise: 0,
      recommended: expect.objectContaining({ setting: 0, travel: expect.any(Number) }),
      planned: expect.objectContaining({ travel: 3, depth: 3 }),
    });
  });

  test("a pocket has corners and no diameter; on a flat board there is no radius; without a plan none is told", () => {
    const [hole] = holesOf([{ frets: [2], shape: { kind: "rectangle", length: 6, width: 10 } }], {
      radius: "flat",
    });
    expect(hole).not.toHaveProperty("diameter");
    expect(hole).not.toHaveProperty("radius");
    expect(hole).not.toHaveProperty("planned");
    expect(hole).toMatchObject({ width: 10, outline: [{ along: 45, offset: -5 }, {}, {}, {}] });
  });

  test("tells of the neck under it and of the rod channel, where one runs there", () => {
    const board = { length: 160, width: 64, thickness: { nut: 8, end: 10 } };
    const channel = { width: 6, depth: { nut: 2, end: 4 }, from: 40, to: 100 };
    const neck = { thickness: { nut: 12, end: 16 } };
    const markers = [{ frets: [1, 2, 4], by: "midpoint", diameter: 8 }];
    const report = checkDesign({ ...ROUND, board: { ...board, channel }, neck, markers } as Design);
    expect(report.channel).toEqual({ width: 6, from: 40, to: 100 });
    // at 16, 48 and 112 of 160
    expect(report.holes.map((hole) => hole.neck)).toEqual([12.4, 13.2, 14.8].map(near));
    expect(report.holes.map((hole) => hole.channel)).toEqual([
      undefined,
      { width: 6, depth: near(2.6) },
      undefined,
    ]);
    const [bare] = holesOf(markers);
    expect(bare).not.toHaveProperty("neck");
    expect(checkDesign({ ...ROUND, markers } as Design)).not.toHaveProperty("channel");
  });

  test("what the setting that serves it leaves; none where no depth suits", () => {
    // 0.75 to 3.5 deep with a point of 1.5: 2.25 to 5, so 3.625
    const { holes, stops } = checkDesign(designOf({ bit: FORSTNER }));
    expect(stops.settings).toMatchObject([{ travel: 3.625, bit: FORSTNER, diameter: 8 }]);
    expect(holes[0]?.recommended).toEqual({
      setting: 0,
      travel: 3.625,
      depth: 2.125,
      markerLeft: 2.125 - 0.25,
      woodLeft: 6 - 3.625,
    });
    const [none] = checkDesign(designOf({ board: { thickness: 1 } })).holes;
    expect(none).not.toHaveProperty("recommended");
  });
});

describe("what is assumed", () => {
  const BARE: Design = {
    scale: { length: 648, frets: 22 },
    board: { length: 482, width: 50, thickness: 6 },
    radius: 254,
    markers: [{ frets: [5], diameter: 6 }],
  };
  const assumedIn = (change: object) => checkDesign({ ...BARE, ...change }).assumed;

  test("every default that was used, by its path, and no other; nothing of what is stated", () => {
    expect(assumedIn({})).toEqual({
      "fill.kind": "poured",
      "fill.keep": 0.8,
      "bit.kind": "forstner",
      "bit.point": 1,
      "bit.spur": 0.5,
      "stop.from": "wood",
      "stop.foot": 0,
      web: 1,
      sanding: 0.15,
      "tolerance.stop": 0.1,
      "tolerance.point": 0.1,
      "tolerance.layout": 0.25,
      "tolerance.thickness": 0.1,
      "tolerance.sanding": 0.05,
      "tolerance.crest": 0.5,
      "tolerance.radius": 0,
      "pour.waste": 0.5,
      "pour.ratio.0": 1,
      "pour.ratio.1": 1,
    });
    expect(checkDesign({ ...SQUARED, pour: { waste: 0, ratio: [1, 1] } }).assumed).toEqual({});
  });

  test("a group's own under its own path; what a kind of work brings with it", () => {
    const group = { frets: [3], diameter: 6 };
    const fill = { kind: "solid", thickness: 2 };
    const own = assumedIn({
      markers: [{ ...group, fill, bit: { kind: "twist" }, stop: { from: "table" } }],
    });
    expect(own).toMatchObject({
      "markers.0.fill.keep": 0.5,
      "markers.0.bit.angle": 118,
      "markers.0.stop.zero": "half way between the nut and fret 1",
      "markers.0.stop.height": "the thickness of board and neck",
      "tolerance.seat": 0.1,
      "tolerance.fill": 0.05,
    });
    for (const unused of ["fill.keep", "bit.point", "pour.waste", "stop.from"]) {
      expect(own).not.toHaveProperty([unused]);
    }
    // a spur is not longer than its point
    expect(assumedIn({ bit: { kind: "forstner", point: 0.3 } })).toMatchObject({ "bit.spur": 0.3 });
    expect(assumedIn({ existing: { radius: 254 } })).toMatchObject({ "tolerance.existing": 0 });
    const channel = { width: 6 };
    const glued = { neck: { thickness: 15 }, board: { ...BARE.board, channel } };
    expect(assumedIn(glued)).toMatchObject({
      "board.channel.depth": 0,
      "board.channel.from": 0,
      "board.channel.to": 482,
    });
  });
});

describe("cautions, by what the work is", () => {
  const told = (change: object) => checkDesign(designOf(change)).cautions.join("\n");
  const places = [{ along: 200, offset: 0 }];
  const OLD = { markers: [{ places, diameter: 8, drilled: true, depth: 2 }] };

  test.each<[RegExp, object, object]>([
    [/^Drill press.*1910\.213/m, { bit: FORSTNER }, { markers: [{ places, shape: POCKET }] }],
    [/^A twist bit can grab/m, { bit: TWIST }, { bit: FORSTNER }],
    [/^Router/m, {}, { bit: FORSTNER }],
    [/^Sawing slots/m, { slot: { tang: 2 } }, {}],
    [/^Drilling the edge/m, { sideDots: { diameter: 2 } }, {}],
    [/Eur Respir J/, SOLID, {}],
    [/^Glue under solid dots/m, SOLID, {}],
    [/^Uncured epoxy.*HSE RR79/m, {}, OLD],
    [/^No flame/m, {}, SOLID],
    [/^Sand epoxy only once/m, OLD, SOLID],
    [/^A batch this small/m, {}, { pour: { waste: 500 } }],
  ])("%s", (words, change, other) => {
    expect(told(change)).toMatch(words);
    expect(told(other)).not.toMatch(words);
    // always
    expect(told(other)).toMatch(/local codes or licensed practice/);
    expect(told(other)).toMatch(/Wood Dust – Hazard Recognition/);
  });
});

describe("plain data", () => {
  const dots = (change: object) => ({ markers: [{ frets: [5], diameter: 4, ...change }] });
  // flat, and every −0 that a design can state
  const extra = fc.constantFrom<object[]>(
    {},
    { radius: "flat", sanding: -0, tolerance: EXACT, web: -0, name: "" },
    { existing: { radius: "flat" }, stop: { correction: -0, foot: -0 }, fill: { ...SOLID.fill } },
    { existing: { radius: 1e12 }, radius: Infinity, bit: { kind: "forstner", point: -0 } },
    dots({ arrangement: "edge", side: "bass", gap: -0, drilled: true, depth: 2 }),
    dots({ frets: undefined, places: [{ along: -0, offset: -0 }] }),
    { markers: [], slot: { tang: 1, clearance: -0 }, sideDots: { diameter: 1 } },
  );
  const design = fc.tuple(designs, extra).map((parts) => Object.assign({}, ...parts) as Design);

  /** Every value in something, however deep. */
  function* valuesIn(whole: unknown): Generator<unknown> {
    if (typeof whole !== "object" || whole === null) yield whole;
    else for (const part of Object.values(whole)) yield* valuesIn(part);
  }

  function holdPlain(whole: object): void {
    for (const value of valuesIn(whole)) {
      if (value === null) continue;
      expect(["string", "boolean", "number"]).toContain(typeof value);
      if (typeof value === "number") {
        expect(Number.isFinite(value)).toBe(true);
        expect(Object.is(value, -0)).toBe(false);
      }
    }
    expect(JSON.parse(JSON.stringify(whole))).toStrictEqual(whole);
    expect(structuredClone(whole)).toStrictEqual(whole);
  }

  test("no undefined, no Infinity, no −0 and no NaN in any report: a copy, JSON and structuredClone are it again", () => {
    let count = 0;
    const codes = new Set<string>();
    fc.assert(
      fc.property(design, (drawn) => {
        try {
          const report = checkDesign(drawn);
          holdPlain(report);
          for (const { code } of report.findings) codes.add(code);
          count++;
        } catch (error) {
          if (!(error instanceof DesignError)) throw error;
        }
      }),
      { numRuns: 150 },
    );
    expect(count).toBeGreaterThan(100);
    expect(codes.size).toBeGreaterThan(15);
  });

  test("nor in a repair", () => {
    const { report, hole, ruledOut } = repairHole(
      PLAIN,
      { fret: 12, side: "bass", error: 0.5 },
      [6, 8, 20],
    );
    holdPlain({ hole, ruledOut, holes: report?.holes ?? [] });
  });

  test("its name, where the design has one", () => {
    expect(checkDesign({ ...SQUARED, name: "" }).name).toBe("");
    expect(checkDesign(SQUARED)).not.toHaveProperty("name");
  });
});
