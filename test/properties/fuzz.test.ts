/**
 * Anything at all may be thrown at checkDesign: it answers with a DesignError that names every problem, or with a
 * report without a NaN, and changes nothing. FUZZ sets how many objects are tried, SHRINK=1 shrinks a failure.
 */
import fc from "fast-check";
import { expect, it } from "vitest";
import { checkDesign, type Design, DesignError, type Report } from "../../src/index.js";
import { anyNeck, plain, usualNeck } from "./designs.js";

const FUZZ = Number(process.env.FUZZ ?? 10_000);
const SHOWN = 20;
const HOUR = 3_600_000;

/** Values that no field expects, and a few that some do. */
const junk: fc.Arbitrary<unknown> = fc.oneof(
  fc.constantFrom(
    Number.NaN,
    Infinity,
    -Infinity,
    -0,
    0,
    1,
    -1,
    0.5,
    12,
    1e308,
    5e-324,
    1e12,
    1e-12,
  ),
  fc.constantFrom("", "nut", "1/4", "6.35", null, undefined, true, [], [[]], {}, { nut: Infinity }),
  fc.constantFrom({ kind: "twist" }, { kind: "solid", thickness: 1e-9 }, { nut: 1e9, end: 1e-9 }),
  fc.constantFrom(
    { fret1: 1, fret999: 2 },
    { positions: [] },
    { positions: [1, 1] },
    { frets: [0] },
  ),
  fc.constant(1).map(() => hostile()),
  fc.anything({
    maxDepth: 2,
    withBigInt: true,
    withBoxedValues: true,
    withDate: true,
    withMap: true,
    withNullPrototype: true,
    withObjectString: true,
    withSet: true,
    withSparseArray: true,
    withTypedArray: true,
  }),
  fc.constantFrom(Symbol("a"), 10n, () => 1, new Date(0), new Map(), /x/),
);

/** An object that will not be read. */
function hostile(): unknown {
  const { proxy, revoke } = Proxy.revocable({}, {});
  revoke();
  const throwing = {
    get kind() {
      throw new Error("not to be read");
    },
    nut: proxy,
  };
  return throwing;
}

/** One thing done to an object, at the place that `at` picks. */
interface Mutation {
  readonly at: number;
  readonly how: "delete" | "replace" | "rename" | "add" | "scale" | "stretch" | "move";
  readonly junk: unknown;
  readonly power: number;
}

const mutation: fc.Arbitrary<Mutation> = fc.record({
  at: fc.nat(1e6),
  how: fc.constantFrom("delete", "replace", "rename", "add", "scale", "scale", "move"),
  junk,
  power: fc.oneof(fc.integer({ min: -20, max: 20 }), fc.constantFrom(-320, -1, 1, 300)),
});

/** A usual neck, its frets fanned and its dots made pockets as often as not. */
const varied: fc.Arbitrary<Design> = fc
  .record({
    neck: usualNeck(12, 27),
    treble: fc.double({ min: 250, max: 900, noNaN: true }),
    lean: fc.double({ min: 0, max: 80, noNaN: true }),
    perpendicular: fc.double({ min: 0, max: 12, noNaN: true }),
    fan: fc.boolean(),
    shape: fc.constantFrom(
      undefined,
      { kind: "rectangle" as const, length: 8, width: 20 },
      { kind: "trapezoid" as const, slotGap: 2, edgeGap: 4 },
    ),
  })
  .map(({ neck: { design, layout }, treble, lean, perpendicular, fan, shape }) => ({
    ...design,
    scale: fan
      ? { bass: treble + lean, treble, perpendicular, frets: layout.positions.length }
      : design.scale,
    board: fan ? { ...design.board, length: treble } : design.board,
    markers: shape ? design.markers.map(({ frets }) => ({ frets, shape })) : design.markers,
  }));

/** A number made up to four times greater or smaller. */
const gentle: fc.Arbitrary<Mutation> = fc.record({
  at: fc.nat(1e6),
  how: fc.constant("stretch"),
  junk: fc.constant(1),
  power: fc.double({ min: -0.6, max: 0.6, noNaN: true }),
});

type Box = Record<string, unknown>;

/** Every object within, itself included. */
function boxesIn(value: unknown): Box[] {
  if (typeof value !== "object" || value === null) return [];
  return [value as Box, ...Object.values(value).flatMap(boxesIn)];
}

/** Does one thing to some field of some object. */
function mutate(design: unknown, { at, how, junk: other, power }: Mutation): void {
  const places = boxesIn(design).flatMap((box) => Object.keys(box).map((key) => ({ box, key })));
  const place = places[at % places.length];
  if (place === undefined) return;
  const { box, key } = place;
  const value = box[key];
  if (how === "stretch") {
    if (typeof value === "number") box[key] = value * 10 ** power;
  } else if (how === "delete") delete box[key];
  else if (how === "replace") box[key] = other;
  else if (how === "add") box[`${key}s`] = other;
  else if (how === "scale") box[key] = typeof value === "number" ? value * 10 ** power : other;
  else if (how === "move") box[key] = places[(at + 7) % places.length]?.box;
  else {
    delete box[key];
    box[key.slice(1)] = value;
  }
}

/** A valid design with up to four things done to it. */
const mutated = fc
  .tuple(
    fc.oneof(
      anyNeck.map(({ design }) => design),
      varied,
    ),
    fc.oneof(fc.array(mutation, { maxLength: 4 }), fc.array(gentle, { maxLength: 4 })),
  )
  .map(([design, mutations]): unknown => {
    const copy = structuredClone(design);
    // a field moved onto its own box makes a cycle; no place is looked for in one
    for (const each of mutations) if (!isCyclic(copy)) safely(() => mutate(copy, each));
    return copy;
  });

function isCyclic(value: unknown, above: readonly unknown[] = []): boolean {
  if (typeof value !== "object" || value === null) return false;
  if (above.includes(value) || above.length > 12) return true;
  let cyclic = false;
  safely(() => {
    cyclic = Object.values(value).some((inner) => isCyclic(inner, [...above, value]));
  });
  return cyclic;
}

/** Runs what a hostile object may stop. */
function safely(run: () => void): void {
  try {
    run();
  } catch {
    // a hostile object stays as it is
  }
}

/** An object with a design's keys and anything in them. */
const shaped = fc.record(
  {
    scale: fc.oneof(junk, fc.record({ length: junk, frets: junk }), fc.record({ positions: junk })),
    board: fc.oneof(junk, fc.record({ length: junk, width: junk, thickness: junk, channel: junk })),
    radius: junk,
    crown: junk,
    markers: fc.oneof(junk, fc.array(fc.record({ frets: junk, diameter: junk, shape: junk }))),
    fill: junk,
    bit: junk,
    tolerance: junk,
  },
  { requiredKeys: [] },
);

const anything = fc.oneof(
  { weight: 1, arbitrary: junk },
  { weight: 1, arbitrary: shaped },
  { weight: 6, arbitrary: mutated },
);

/** Freezes all that can be, without reading what will not be read. */
function deepFreeze(value: unknown, seen = new Set<unknown>()): void {
  if (typeof value !== "object" || value === null || seen.has(value)) return;
  seen.add(value);
  safely(() => {
    if (!ArrayBuffer.isView(value)) Object.freeze(value);
    for (const field of Object.values(Object.getOwnPropertyDescriptors(value))) {
      deepFreeze(field.value, seen);
    }
  });
}

/** Paths of every number that is NaN, or infinite where nothing may be: only a flat radius is. */
function badNumbers(value: unknown, path = ""): string[] {
  if (typeof value === "number") {
    const flat = value === Infinity && path.endsWith(".radius");
    return Number.isFinite(value) || flat ? [] : [`${path} = ${value}`];
  }
  if (typeof value !== "object" || value === null) return [];
  return Object.entries(value).flatMap(([key, inner]) => badNumbers(inner, `${path}.${key}`));
}

function judgeReport(report: Report): void {
  const told = plain(report);
  expect(badNumbers(told)).toEqual([]);
  const severities = report.findings.map(({ severity }) => severity);
  expect(report.ok).toBe(!severities.includes("error"));
  expect(severities).toEqual([...severities].sort());
  expect(typeof JSON.stringify(told)).toBe("string");
  expect(report.holes.every(({ window }) => window.min <= window.max)).toBe(
    told.findings.every(({ code }) => code !== "no-depth"),
  );
}

/** All of a report, remedies included, which take far longer: for a few small ones. */
function judgeWhole(report: Report): void {
  expect(JSON.parse(JSON.stringify(report))).toHaveProperty("ok", report.ok);
  expect(badNumbers(report)).toEqual([]);
  for (const { message } of report.findings) expect(message).not.toMatch(/NaN|undefined/);
}

function judgeError(error: unknown): void {
  if (!(error instanceof DesignError)) throw error;
  expect(error).toBeInstanceOf(RangeError);
  expect(error.name).toBe("DesignError");
  expect(error.issues.length).toBeGreaterThan(0);
  error.issues.forEach((issue, i) => {
    expect(Object.keys(issue).sort()).toEqual(["expected", "message", "path", "value"]);
    for (const text of [issue.path, issue.expected, issue.message])
      expect(text).toBeTypeOf("string");
    expect(issue.message).toContain(`${issue.path || "design"}: expected ${issue.expected}`);
    if (i < SHOWN) expect(error.message).toContain(issue.message);
  });
  const more = error.issues.length - SHOWN;
  if (more > 0) expect(error.message).toContain(`${more} more`);
}

it(`${FUZZ} objects: a DesignError or a sound report, and nothing changed`, {
  timeout: HOUR,
}, () => {
  const seen = { refused: 0, read: 0, ok: 0, whole: 0, fanned: 0, pockets: 0 };
  fc.assert(
    fc.property(anything, (value) => {
      deepFreeze(value);
      let report: Report;
      try {
        report = checkDesign(value as Design);
      } catch (error) {
        seen.refused++;
        judgeError(error);
        return;
      }
      seen.read++;
      if (report.ok) seen.ok++;
      if (report.edges.some(({ side }) => side !== undefined)) seen.fanned++;
      if (report.holes.some(({ outline }) => outline !== undefined)) seen.pockets++;
      judgeReport(report);
      if (report.findings.length > 2 || seen.read % 10 !== 0) return;
      seen.whole++;
      judgeWhole(report);
    }),
    // shrinking a failure may take longer than all the rest: SHRINK=1 asks for it
    { numRuns: FUZZ, endOnFailure: process.env.SHRINK === undefined },
  );
  console.log(`fuzz: ${JSON.stringify(seen)}`);
  expect(seen.refused).toBeGreaterThan(FUZZ / 4);
  expect(seen.read).toBeGreaterThan(FUZZ / 10);
  for (const what of ["ok", "fanned", "pockets"] as const) {
    expect(seen[what], what).toBeGreaterThan(FUZZ / 200);
  }
  expect(seen.whole).toBeGreaterThan(0);
});
