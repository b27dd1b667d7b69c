/** What holds of every design: its answers scale, mirror, keep whatever the order, and move the way they must. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkDesign, type Design, fretLines, type Hole, type Report } from "../../src/index.js";
import { designs } from "../design/arbitrary.js";
import { drawDesign } from "./necks.js";

interface Neck {
  readonly design: Design;
  readonly report: Report;
}

function tried(design: Design): Report | undefined {
  try {
    return checkDesign(design);
  } catch {
    return undefined;
  }
}

/** Each design costs some milliseconds: a third of the usual cases. */
const numRuns = Math.ceil((fc.readConfigureGlobal().numRuns ?? 100) / 3);
const nothing = fc.constant(0);
const upTo = (most: number) => fc.double({ min: 0, max: most, noNaN: true });

/** Holds for every neck, ordinary or odd; as many holes at least as cases are compared. */
function always<T>(other: fc.Arbitrary<T>, check: (neck: Neck, drawn: T) => number): void {
  let compared = 0;
  const property = fc.property(fc.nat(), fc.boolean(), other, (seed, isOdd, drawn) => {
    const design = drawDesign(seed, isOdd);
    const report = tried(design);
    if (report) compared += check({ design, report }, drawn);
  });
  fc.assert(property, { numRuns });
  expect(compared).toBeGreaterThan(numRuns);
}

/** What rounding may do, and what a bound may be careful by, mm. */
const HAIR = 1e-9;
const CAREFUL = 0.01;

/** On one radius and even sanding every bound is exact. */
function isPlain({ radius, sanding, existing }: Design): boolean {
  return typeof radius !== "object" && typeof sanding !== "object" && existing === undefined;
}

/** Numbers that are no length, by the names they go by. */
const FIXED =
  /(^|\.)(frets?|holes?|minHole|maxHole|setting|angle|square)$|^tolerance\.(radius|existing)$/;

/** A copy in which every length is multiplied. */
function times<T>(value: T, f: number, at = ""): T {
  if (typeof value === "number") return (FIXED.test(at) ? value : value * f) as T;
  if (Array.isArray(value)) return value.map((item) => times(item, f, at)) as T;
  if (typeof value !== "object" || value === null) return value;
  const last = at.split(".").at(-1);
  const fields = Object.entries(value).map(([key, field]) => [
    key,
    times(field, f, `${last}.${key}`.replace(/^\./, "")),
  ]);
  return Object.fromEntries(fields);
}

it("every length × 2^k scales every answer, exactly where the bounds are exact", () => {
  always(fc.integer({ min: -6, max: 6 }), ({ design, report }, k) => {
    const f = 2 ** k;
    const scaled = checkDesign(times(design, f));
    expect(scaled.edges).toEqual(times(report.edges, f));
    report.holes.forEach(({ window, recommended, planned, ...hole }, i) => {
      const now = scaled.holes[i] as Hole;
      expect(now).toMatchObject(times(isPlain(design) ? { ...hole, window } : hole, f));
      const slack = CAREFUL * Math.max(1, f);
      expect(Math.abs(now.window.min - f * window.min)).toBeLessThanOrEqual(slack);
      expect(Math.abs(now.window.max - f * window.max)).toBeLessThanOrEqual(slack);
    });
    return report.holes.length;
  });
});

/** Deep likeness: numbers to 1e-9 of a board's size. */
function expectAlike(a: unknown, b: unknown, path = ""): void {
  if (typeof a === "number" && typeof b === "number") {
    const off = a === b ? 0 : Math.abs(a - b) / Math.max(Math.abs(b), 10);
    expect(off, path).toBeLessThan(HAIR);
  } else if (typeof a !== "object" || a === null || typeof b !== "object" || b === null) {
    expect(a, path).toBe(b);
  } else {
    expect(Object.keys(a).sort(), path).toEqual(Object.keys(b).sort());
    const other = new Map(Object.entries(b));
    for (const [key, v] of Object.entries(a)) expectAlike(v, other.get(key), `${path}.${key}`);
  }
}

const OTHER = { bass: "treble", centre: "centre", treble: "bass" } as const;

/** The design for a left-handed builder. */
function mirrored({ scale, markers, ...design }: Design): Design {
  const turned = markers.map((group) => {
    const stated = "shape" in group && group.shape.kind === "polygon" ? group.shape : undefined;
    const corners = stated?.corners.map(({ x, y }) => ({ x, y: -y }));
    const other = { ...group, ...(corners ? { shape: { ...stated, corners } } : {}) };
    if ("places" in group) {
      return { ...other, places: group.places.map((at) => ({ ...at, offset: -at.offset })) };
    }
    return group.arrangement === "edge" ? { ...other, side: OTHER[group.side] } : other;
  });
  const swapped = "bass" in scale ? { ...scale, bass: scale.treble, treble: scale.bass } : scale;
  return { ...design, scale: swapped, markers: turned } as Design;
}

it("mirrored, each hole has its window on the other side", () => {
  always(nothing, ({ design, report: { holes } }) => {
    const twins = new Map(checkDesign(mirrored(design)).holes.map((hole) => [hole.path, hole]));
    for (const { path, recommended, outline, ...hole } of holes) {
      const twin = path.replace(/(bass|treble)$/, (name) => OTHER[name as "bass" | "treble"]);
      const { path: _, recommended: at, outline: corners, ...there } = twins.get(twin) as Hole;
      expectAlike({ ...there, offset: -there.offset, side: OTHER[there.side] }, hole, path);
      expectAlike(at?.depth, recommended?.depth, path);
      expectAlike(sumOf(corners), sumOf(outline), path);
    }
    return holes.length;
  });
});

/** What of an outline is alike from either side. */
function sumOf(outline: Hole["outline"] = []) {
  return outline.reduce((sum, { along, offset }) => sum + along + offset * offset, 0);
}

it("the order of groups, of frets and of places does not matter", () => {
  const telling = ({ holes, stops }: Report) => ({
    holes: holes.map(({ path, recommended, ...hole }) => JSON.stringify(hole)).sort(),
    travels: stops.settings.map(({ travel, min, max }) => [travel, min, max]).sort(),
    common: stops.common && [stops.common.min, stops.common.max],
  });
  always(nothing, ({ design, report }) => {
    const markers = [...design.markers].reverse().map((group) => {
      if ("frets" in group) return { ...group, frets: [...group.frets].reverse() };
      return { ...group, places: [...group.places].reverse() };
    });
    expect(telling(checkDesign({ ...design, markers }))).toEqual(telling(report));
    return report.holes.length;
  });
});

/** A profile that is so much more everywhere. */
function plus(profile: unknown, by: number): never {
  if (typeof profile === "number") return (profile + by) as never;
  const stations = Object.entries(profile as object).map(([at, value]) => [at, value + by]);
  return Object.fromEntries(stations) as never;
}

describe("a window never widens", () => {
  function neverWiden(most: number, change: (design: Design, by: number) => Design): void {
    always(upTo(most), ({ design, report }, by) => {
      const { holes } = tried(change(design, by)) ?? { holes: [] };
      const after = new Map(holes.map(({ path, window }) => [path, window]));
      const slack = isPlain(design) ? HAIR : CAREFUL;
      for (const { path, window } of report.holes) {
        const { min, max } = after.get(path) ?? { min: Infinity, max: -Infinity };
        expect(min, path).toBeGreaterThanOrEqual(window.min - slack);
        expect(max, path).toBeLessThanOrEqual(window.max + slack);
      }
      return after.size;
    });
  }

  it("where a tolerance is greater", () => {
    const names = "stop point seat layout thickness sanding crest fill radius existing".split(" ");
    neverWiden(names.length, ({ tolerance, ...design }, drawn) => {
      const name = names[Math.min(names.length - 1, Math.floor(drawn))] as string;
      const most = name === "radius" || name === "existing" ? 0.03 : 0.5;
      const now = (tolerance as Record<string, number>)[name] as number;
      return { ...design, tolerance: { ...tolerance, [name]: now + most * (drawn % 1) } };
    });
  });

  it("where the board is thinner, alone or over a neck that makes the height of its crest the same", () => {
    neverWiden(0.5, ({ board, neck, ...design }, by) => {
      const thin = { ...board, thickness: plus(board.thickness, -by) };
      const thick = neck ? { neck: { thickness: plus(neck.thickness, by) } } : {};
      return { ...design, board: thin, ...thick };
    });
  });

  it("where the channel is wider, deeper or longer", () => {
    neverWiden(1, ({ board, ...design }, by) => {
      const { channel } = board;
      if (typeof channel !== "object") return { ...design, board };
      const { width, depth = 0, from = 0, to = board.length } = channel;
      const ends = { from: Math.max(0, from - by), to: to + by };
      const grown = { width: width + by, depth: plus(depth, by), ...ends };
      return { ...design, board: { ...board, channel: grown } };
    });
  });

  it("where more is kept of wood and marker: on the marker's side by just as much", () => {
    always(upTo(2), ({ design, report }, by) => {
      const more = <T extends { fill?: Design["fill"] }>(part: T) =>
        part.fill ? { ...part, fill: { ...part.fill, keep: (part.fill.keep ?? 0) + by } } : part;
      const markers = design.markers.map(more);
      const { holes } = checkDesign({ ...more(design), markers, web: (design.web ?? 0) + by });
      report.holes.forEach(({ window }, i) => {
        const { min, max } = (holes[i] as Hole).window;
        expect(min - window.min).toBeCloseTo(by, 9);
        expect(max).toBeLessThanOrEqual(window.max + HAIR);
      });
      return report.holes.length;
    });
  });
});

it("a travel is the depth and the lead, less rise and correction, and leaves what is asked for", () => {
  always(nothing, ({ design, report: { holes, stops } }) => {
    const { web = 0, markers, stop } = design;
    for (const { path, recommended, window, lead, rise, fill } of holes) {
      if (recommended === undefined) continue;
      const { travel, depth, markerLeft, woodLeft, setting } = recommended;
      const { correction = 0 } = markers[Number(path.split(".")[1])]?.stop ?? stop ?? {};
      expect(travel).toBeCloseTo(stops.settings[setting]?.travel as number, 9);
      expect(travel).toBeCloseTo(depth + lead - rise - correction, 9);
      expect(markerLeft).toBeCloseTo(fill.keep + depth - window.min, 9);
      expect(markerLeft).toBeGreaterThanOrEqual(fill.keep - HAIR);
      expect(woodLeft).toBeGreaterThanOrEqual(web + window.max - depth - HAIR);
      expect(depth).toBeLessThanOrEqual(window.max + HAIR);
    }
    return holes.length;
  });
});

describe("frets", () => {
  it("fanned between equal scales: every hole is where straight frets have it", () => {
    always(upTo(300), ({ design: { board, ...design } }, by) => {
      const length = 400 + by;
      const markers = design.markers.filter((group) => !("places" in group));
      const flat = { ...board, length, width: { nut: 44, end: 58 }, thickness: 9 };
      const even = { radius: 254, sanding: 0.2, existing: { radius: 184 } };
      const on = (scale: Design["scale"]) =>
        tried({ ...design, ...even, markers, scale, board: flat })?.holes;
      const straight = on({ length, frets: 24 });
      const fanned = on({ bass: length, treble: length, square: 7, frets: 24 });
      expectAlike(fanned, straight);
      return straight?.length ?? 0;
    });
  });

  it("fanned: straight between places on either edge that follow each scale, one of them square", () => {
    const parts = { bass: upTo(140), treble: upTo(140), nut: upTo(12), more: upTo(14) };
    fc.assert(
      fc.property(fc.record(parts), fc.integer({ min: 0, max: 24 }), (by, square) => {
        const scale = { bass: 560 + by.bass, treble: 560 + by.treble, square, frets: 24 };
        const nut = 38 + by.nut;
        const board = { length: 600, width: { nut, end: nut + by.more }, thickness: 6 };
        const lines = fretLines({ scale, board, radius: 300, markers: [] });
        const half = (s: number) => (nut + (by.more * s) / 600) / 2;
        lines.forEach((line, n) => {
          const share = 1 - 2 ** (-n / 12);
          expectAlike(line.bass - (lines[0]?.bass ?? 0), scale.bass * share);
          expectAlike(line.treble - (lines[0]?.treble ?? 0), scale.treble * share);
          const across = half(line.bass) / (half(line.bass) + half(line.treble));
          expectAlike(line.along, line.bass + (line.treble - line.bass) * across);
        });
        expectAlike(lines[0]?.along, 0);
        expectAlike(lines[square]?.bass, lines[square]?.treble);
      }),
    );
  });
});

it("a report is plain data: a copy and JSON give it back, and the design stays as it was", () => {
  const property = fc.property(designs, (design) => {
    const before = structuredClone(design);
    const report = checkDesign(design);
    expect(JSON.parse(JSON.stringify(report))).toEqual(report);
    expect(structuredClone(report)).toEqual(report);
    expect(design).toEqual(before);
  });
  fc.assert(property, { numRuns });
});

it("doubles at the twelfth decide how deep, on one radius with one dot size: common practice, no source", () => {
  // they lie off the centre line and the singles on it, so they reach farther out
  always(upTo(8), ({ design: { fill, bit, tolerance } }, more) => {
    const [singles, diameter] = [[3, 5, 7, 9, 15, 17, 19, 21], 2 + more];
    const { stops, holes } = checkDesign({
      scale: { length: 648, frets: 22 },
      board: { length: 482, width: { nut: 43, end: 57 }, thickness: 12 },
      radius: 254,
      markers: [
        { frets: singles, diameter },
        { frets: [12], diameter, arrangement: "double" },
      ],
      fill,
      bit,
      tolerance,
    });
    const mins = holes.map(({ window }) => window.min);
    expect(holes[mins.indexOf(Math.max(...mins))]?.fret).toBe(12);
    if (stops.common) expect(holes[stops.common.minHole]?.fret).toBe(12);
    return holes.length;
  });
});
