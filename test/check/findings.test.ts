/** Findings: one for each rule, at its limit and beyond; their order; places that many say in lengths alone. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { checkDesign, type Design, FINDING_CODES } from "../../src/index.js";
import { designOf } from "../windows/bench.js";
import { BROKEN } from "./broken.js";
import { SQUARED } from "./necks.js";

describe("each rule", () => {
  test("there is a design for every code", () => {
    expect(BROKEN.map(({ code }) => code).sort()).toEqual(Object.keys(FINDING_CODES).sort());
  });

  test.each(BROKEN)(
    "$code: found where it is broken, and nothing else",
    ({ code, found, broken, kept }) => {
      const { findings, ok } = checkDesign(broken);
      expect(new Set(findings.map((finding) => finding.code))).toEqual(new Set([code]));
      expect(findings[0]).toMatchObject(found);
      expect(findings[0]?.message).toMatch(/^\S[^\n]+[.?]$/);
      expect(ok).toBe(findings[0]?.severity === "warning");
      expect(checkDesign(kept).findings).toEqual([]);
    },
  );

  test("what stops the work is an error, what wants care a warning", () => {
    const warnings = BROKEN.filter(({ broken }) => checkDesign(broken).ok).map(({ code }) => code);
    const care = "assumed-foot assumed-point assumed-zero cuts-slot fret-past-end near-channel";
    const more = "near-slot no-step several-settings several-travels unlikely-value";
    expect(warnings.sort().join(" ")).toBe(`${care} ${more}`);
  });
});

const boarded = (board: object) => ({ board });
/** A scale that is far too short: it is warned of, whatever else is wrong with so small a board. */
const shortScale = (length: number, inches?: number) =>
  ["scale.length", 200, inches, { scale: { length, frets: 3 } }] as [
    string,
    number,
    number | undefined,
    object,
  ];

test.each<[path: string, limit: number, inches: number | undefined, change: object]>([
  ["scale.length", 200, 25.5, { scale: { length: 25.5, frets: 12 } }],
  ["scale.bass", 200, 27, { scale: { bass: 27, treble: 26, square: 7, frets: 12 } }],
  ["scale.length", 1200, undefined, { scale: { length: 6480, frets: 3 } }],
  // the plausible ends, 200 and 1200 mm, are meant; a little outside them nothing is
  ...[200, 1200].map((mm) => shortScale(mm / 25.4, mm / 25.4)),
  ...[199.9, 1200.1].map((mm) => shortScale(mm / 25.4, undefined)),
  ["board.width.nut", 20, 1.75, boarded({ width: { nut: 1.75, end: 3 } })],
  ["board.thickness", 1.5, 0.25, boarded({ thickness: 0.25 })],
  ["board.thickness", 40, undefined, boarded({ thickness: 41 })],
  ["neck.thickness", 1.5, 0.6, { neck: { thickness: 0.6 }, ...boarded({ channel: "none" }) }],
  ["radius", 75, 12, { radius: 12, ...boarded({ width: 20 }) }],
  ["existing.radius", 75, 7.25, { existing: { radius: 7.25 }, ...boarded({ width: 14 }) }],
])("forgotten inches: %s under or over %d", (path, limit, inches, change) => {
  const { findings } = checkDesign(designOf(change));
  const finding = findings.find((each) => each.code === "unlikely-value" && each.path === path);
  expect(finding).toMatchObject({ severity: "warning", limit });
  expect(finding?.suits).toEqual(inches && [expect.closeTo(inches * 25.4, 9)]);
});

test("boards widen as they will, and flat is no slip", () => {
  const wide = { width: { nut: 43, end: 120 } };
  expect(checkDesign(designOf({ radius: "flat", board: wide })).findings).toEqual([]);
});

test("a hole that no depth suits names the rule that clashes; what is drilled has none to find", () => {
  const clash = (change: object) => checkDesign(designOf(change)).findings[0];
  const fill = { kind: "solid", thickness: 0.25, keep: 1 };
  expect(clash({ fill })).toMatchObject({
    code: "no-depth",
    value: 1.25,
    limit: 0.5,
    maxBy: "flush",
  });
  const channel = { width: 6, depth: 5.5 };
  expect(clash({ board: { channel } })).toMatchObject({
    value: 0.75,
    limit: -0.5,
    maxBy: "channel",
  });
  const old = { places: [{ along: 200, offset: 0 }], diameter: 8, drilled: true, depth: 0.5 };
  expect(clash({ board: { thickness: 1 }, markers: [old] })).toMatchObject({ code: "below-keep" });
});

describe("the list", () => {
  test("errors first, then by how far past the limit", () => {
    // 32 between slots: dots of 31.5 and 31.75 come near them, pairs pass the edge by 1 and by 2
    const double = { diameter: 8, arrangement: "double" } as const;
    const markers: Design["markers"] = [
      { frets: [2], diameter: 31.5 },
      { frets: [1], diameter: 31.75 },
      { frets: [3], ...double, spread: 58 },
      { frets: [4], ...double, spread: 60 },
    ];
    const { findings } = checkDesign({ ...SQUARED, markers });
    const told = findings.map(({ code, fret, value }) => `${code} ${fret} ${value}`);
    const past = ["past-edge 4 -2", "past-edge 4 -2", "past-edge 3 -1", "past-edge 3 -1"];
    expect(told).toEqual([...past, "near-slot 1 0.125", "near-slot 2 0.25"]);
  });

  test("two holes at one fret and side are kept apart by their paths", () => {
    const lengthwise = { frets: [2], diameter: 8, arrangement: "lengthwise", spread: 14 } as const;
    const other = { places: [{ along: 60, offset: 0 }], diameter: 4, depth: 0.25 } as const;
    const { findings, holes } = checkDesign({
      ...SQUARED,
      markers: [{ ...lengthwise, depth: 1 }, other],
    });
    const place = (i: number | undefined) => (i === undefined ? "" : holes[i]?.path);
    const told = findings.map((each) => [each.code, place(each.hole), place(each.other)].join(" "));
    expect(told).toEqual([
      "dots-overlap markers.1.places.0 markers.0.frets.0.end",
      "below-keep markers.0.frets.0.nut ",
      "below-keep markers.0.frets.0.end ",
      "nothing-left markers.1.places.0 ",
    ]);
  });

  test("does not hang on the order of the groups, and no more does what governs", () => {
    const group = fc.record({
      fret: fc.integer({ min: 1, max: 4 }),
      diameter: fc.constantFrom(6, 8, 34),
      arrangement: fc.constantFrom("single", "double"),
      fill: fc.constantFrom(
        { kind: "poured", keep: 1 },
        { kind: "poured", keep: 5 },
        { kind: "solid", thickness: 1, keep: 0.5 },
      ),
      depth: fc.constantFrom(undefined, 1, 4),
    });
    let several = 0;
    fc.assert(
      fc.property(
        fc.uniqueArray(group, { selector: ({ fret }) => fret, minLength: 2 }),
        (groups) => {
          const markers = groups.map(({ fret, ...rest }) => ({
            ...rest,
            frets: [fret],
          })) as Design["markers"];
          const tell = (order: Design["markers"]) => {
            const { findings, holes, stops } = checkDesign({ ...SQUARED, markers: order });
            if (stops.settings.length > 1) several++;
            return { findings, stops, holes: holes.map(({ path: _, ...hole }) => hole) };
          };
          expect(tell([...markers].reverse())).toEqual(tell(markers));
        },
      ),
      { numRuns: 100 },
    );
    expect(several).toBeGreaterThan(20);
  });
});

test("a rim that lies on its slot lies 0 from it, not −0", () => {
  const scale = { bass: 630, treble: 610, square: 0, frets: 12 };
  const shape = { kind: "trapezoid", slotGap: 0, edgeGap: 0 } as const;
  const { findings } = checkDesign(designOf({ scale, markers: [{ frets: [2], shape }] }));
  expect(findings.map(({ code, value }) => [code, value])).toEqual([["near-slot", 0]]);
});

test("limits are met at their very value, and missed by the last bit beyond it", () => {
  const over = (value: number) => value * (1 + 2 ** -50);
  const under = (value: number) => value * (1 - 2 ** -50);
  // 0.5 to sand and 1 to keep; 8 less a web and a point of 1
  const found = [1.5, under(1.5), over(0.5), 0.5, 6, over(6), under(7), 7].map((depth) =>
    checkDesign({ ...SQUARED, depth })
      .findings.map(({ code }) => code)
      .join(),
  );
  const keep = ["", "below-keep", "below-keep", "nothing-left"];
  expect(found).toEqual([...keep, "", "below-web", "below-web", "breaks-through"]);
});
