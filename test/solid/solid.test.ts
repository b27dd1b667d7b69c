/**
 * Boards as solids: drilled with the real bit, cut by the real surface, measured, and held against the report. No
 * tolerances, so the report's worst case is the board itself. All designs are invented.
 */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { checkDesign, type Design, removalAt, type Stop } from "../../src/index.js";
import {
  type Bench,
  benchOf,
  blankOf,
  finishedOver,
  heightAt,
  heightsOf,
  Manifold,
  release,
  toolOf,
  woodUnder,
} from "./solid.js";

/** What the polygons leave, mm; and how near a bound comes to the true extreme, as docs/formulas.md says. */
const MESH = 1e-4;
const NEAR = 0.01;

const QUANTITIES = "stop point seat layout thickness sanding crest fill radius existing";
const EXACT = Object.fromEntries(QUANTITIES.split(" ").map((name) => [name, 0]));

/** A board of 22 frets, one radius, everything stated. */
const PLAIN: Design = {
  scale: { length: 648, frets: 22 },
  board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6.5 },
  radius: 254,
  sanding: 0.15,
  markers: [
    { frets: [3, 9, 21], diameter: 6.35 },
    { frets: [12], diameter: 6, arrangement: "double" },
  ],
  bit: { kind: "forstner", point: 1, spur: 0.5 },
  travel: 4.2,
  web: 0.5,
  tolerance: EXACT,
};

const channel = { width: 6, depth: { nut: 1, end: 1.6 }, from: 8, to: 440 };
const tapered = { ...PLAIN.board, thickness: { nut: 7, end: 6 }, channel };
const compound = { radius: { nut: 241, end: 381 } };
const solid = { fill: { kind: "solid", thickness: 3 } } as const;
const corners = [-4, 5, -2].map((x, i) => ({ x, y: [-3, 0, 4][i] as number }));

/** What each board has otherwise. */
const BOARDS: Record<string, Partial<Design>> = {
  "one radius": { board: { ...PLAIN.board, channel: { ...channel, depth: 1.2 } } },
  "a taper, a stop zeroed once": { board: tapered, stop: { from: "table", correction: 0.1 } },
  "a taper on a neck, zeroed at the twelfth": {
    board: { ...tapered, channel: { width: 6 } },
    neck: { thickness: { nut: 14, end: 15 } },
    stop: { from: "table", zero: 324 },
  },
  "a crest that is not level": { stop: { from: "table", zero: 200, height: { nut: 30, end: 28 } } },
  "a compound radius that falls away, twist bits beside the channel": {
    board: tapered,
    ...compound,
    sanding: { nut: 0.15, fret12: 0.15, end: 0.65 },
    markers: [
      { frets: [5, 15, 21], diameter: 6.35 },
      { frets: [12, 9], diameter: 7, arrangement: "double", spread: 12 },
    ],
    bit: { kind: "twist", angle: 118 },
    travel: 5,
    ...solid,
  },
  "an existing radius made flatter, a foot on the wood": {
    existing: { radius: 184 },
    radius: 305,
    sanding: 0.9,
    markers: [{ frets: [5, 12], diameter: 5, arrangement: "double" }],
    stop: { foot: 12 },
    ...solid,
  },
  "an existing radius that still shows, end mills": {
    board: tapered,
    existing: { radius: { nut: 190, end: 260 } },
    radius: { nut: 300, end: 420 },
    sanding: 0.3,
    markers: [{ frets: [7, 12, 19], diameter: 8, arrangement: "double" }],
    bit: { kind: "end-mill" },
    stop: { from: "table" },
  },
  "a new radius over old markers": {
    existing: { radius: 184 },
    sanding: 0.6,
    markers: [{ frets: [3, 12], diameter: 6, arrangement: "double", depth: 2.5, drilled: true }],
  },
  "pockets on a compound radius": {
    board: tapered,
    ...compound,
    markers: [
      { frets: [1], shape: { kind: "trapezoid", slotGap: 1.5, edgeGap: 4 } },
      { frets: [5], shape: { kind: "rectangle", length: 12, width: 22 } },
      { frets: [9], arrangement: "double", shape: { kind: "polygon", corners } },
    ],
    bit: { kind: "end-mill" },
    ...solid,
  },
};

function designOf(name: string): Design {
  return { ...PLAIN, ...BOARDS[name] };
}

function benchFor(design: Design): Bench {
  return benchOf(design, design.stop as Stop | undefined);
}

describe.each(Object.keys(BOARDS))("%s", (name) => {
  const design = designOf(name);
  const { holes, edges } = checkDesign(design);
  let bench: Bench;
  beforeAll(() => {
    bench = benchFor(design);
  });
  afterAll(release);

  it("leaves of each marker and of the wood what the report says, in the worst place", () => {
    for (const hole of holes) {
      const { lowest } = finishedOver(bench, hole);
      const { planned = { markerLeft: Number.NaN, woodLeft: Number.NaN } } = hole;
      expectBound(planned.markerLeft, lowest - heightsOf(bench, hole).floor, hole.path);
      expectBound(planned.woodLeft, woodUnder(bench, hole, 0.5), hole.path);
    }
    expect(holes.length).toBeGreaterThan(3);
  });

  it("ends a solid dot flush just at the greatest depth", () => {
    for (const hole of holes.filter(({ window }) => window.maxBy === "flush")) {
      const { depth = Number.NaN } = hole.planned ?? {};
      const above = finishedOver(bench, hole).highest - heightsOf(bench, hole).floor - 3;
      // what stands above it at the planned depth is what the depth lacks of its greatest
      expectBound(hole.window.max - depth, -above, hole.path);
    }
    const isSolid = design.fill?.kind === "solid";
    expect(holes.some(({ window }) => window.maxBy === "flush")).toBe(isSolid);
  });

  it("has lost at each hole and edge what the report says", () => {
    const { top, finished, under } = bench;
    const lost = (along: number, offset: number) =>
      heightAt(top, along, offset) - heightAt(finished, along, offset);
    for (const { along, offset, width, removal, outline } of holes) {
      const aside = Math.abs(offset);
      near(removal.centre, lost(along, aside));
      near(removal.inner, lost(along, Math.max(0, aside - width / 2)));
      if (outline === undefined) near(removal.outer, lost(along, aside + width / 2));
      else
        near(
          removal.outer,
          Math.max(...outline.map((corner) => lost(corner.along, corner.offset))),
        );
    }
    const neck = design.neck ? 14 : 0;
    for (const { along, offset, removal, thickness } of edges) {
      near(removal, lost(along, offset));
      const whole = heightAt(finished, along, offset) - (under.a + under.k * along);
      near(thickness, whole - neck - (neck > 0 ? along / 482 : 0));
    }
    expect(edges.length).toBe(24);
  });
});

/** A safe bound: never more than is there, and within 0.01 mm of it. */
function expectBound(told: number, there: number, where: string): void {
  expect(told, where).toBeLessThanOrEqual(there + MESH);
  expect(told, where).toBeGreaterThanOrEqual(there - NEAR);
}

function near(told: number, there: number): void {
  expect(Math.abs(told - there)).toBeLessThan(MESH);
}

describe("whole boards", () => {
  afterAll(release);

  it.each([
    "a compound radius that falls away, twist bits beside the channel",
    "an existing radius made flatter, a foot on the wood",
  ])("%s: the wood lost is the removal added up", (name) => {
    const design = designOf(name);
    const bench = benchFor(design);
    const lost = blankOf(bench).intersect(bench.top).subtract(bench.finished).volume();
    const half = (s: number) => (43 + (14 * s) / 482) / 2;
    const across = (s: number) => 2 * simpson(0, half(s), 24, (x) => removalAt(design, s, x));
    // the sanding bends at the twelfth fret
    const added = simpson(0, 324, 16, across) + simpson(324, 482, 16, across);
    expect(lost / added).toBeCloseTo(1, 3);
  });

  it("twist holes: the epoxy is what they hold at the setting", () => {
    const fill = { kind: "poured" } as const;
    const markers = [{ frets: [5, 15, 21], diameter: 6.35, bit: { kind: "twist" } as const }];
    const { travel, ...design } = { ...PLAIN, fill, markers, pour: { waste: 0 } };
    const { holes, pour } = checkDesign(design);
    const bench = benchFor(design);
    const held = holes.map((hole) => toolOf(bench, hole).intersect(bench.top).volume());
    const volume = held.reduce((sum, each) => sum + each, 0);
    expect(((pour?.volume ?? 0) * 1000) / volume).toBeCloseTo(1, 3);
  });

  it("a blank drilled too deep has as many handles as the report finds holes that break through", () => {
    const design = { ...PLAIN, board: { ...tapered, channel: "none" as const }, travel: 6.5 };
    const { holes, findings } = checkDesign(design);
    const bench = benchFor(design);
    const tools = Manifold.union(holes.map((hole) => toolOf(bench, hole)));
    expect(blankOf(bench).subtract(tools).genus()).toBe(4);
    // by hand: the blank is 6.5 thick at 241 mm, past the seventh fret
    expect(findings.filter(({ code }) => code === "breaks-through")).toHaveLength(4);
  });
});

function simpson(from: number, to: number, panels: number, f: (s: number) => number): number {
  const h = (to - from) / panels;
  let sum = f(from) + f(to);
  for (let i = 1; i < panels; i++) sum += (i % 2 === 0 ? 2 : 4) * f(from + i * h);
  return (sum * h) / 3;
}

describe("the judge itself, against printed figures", () => {
  afterAll(release);
  const bare = (radius: Design["radius"], width = 60): Bench =>
    benchOf({
      scale: { length: 120, frets: 12 },
      board: { length: 100, width, thickness: { nut: 12, end: 10 } },
      radius,
      sanding: 0,
      markers: [],
    });

  it("a cylinder: r = 60, chord 59.86652, height 8", () => {
    // Machinery's Handbook, 31st ed., p. 79; the print truncates the chord to 59.86
    expect((-heightAt(bare(60).finished, 50, 59.86652 / 2)).toFixed(3)).toBe("8.000");
  });

  it("a cone that lies with a level generator, cut square to it", () => {
    // "Radii of Curvature and Sagittal Depths of Conic Sections", Int. Contact Lens Clinic 19:76–83 (1992), Table 1,
    // second-hand: R 7.8, K −0.2025 (slope 0.45), 2x = 1 … 5; here ten times as large
    const [toward, away] = [78 - 0.45 * 50, 78 + 0.45 * 50];
    for (const radius of [
      { nut: toward, end: away },
      { nut: away, end: toward },
    ]) {
      const { finished } = bare(radius, 52);
      const sags = [1, 2, 3, 4, 5].map((width) =>
        (-heightAt(finished, 50, 5 * width) / 10).toFixed(3),
      );
      expect(sags).toEqual(["0.016", "0.064", "0.145", "0.260", "0.409"]);
    }
  });

  it("a tapered blank and its channel by hand", () => {
    const bench = bare(60, 50);
    const design = {
      ...bench.design,
      board: { ...bench.design.board, channel: { width: 6, depth: 2, from: 10, to: 60 } },
    };
    expect(blankOf(bench).volume()).toBeCloseTo(100 * 50 * 11, 6);
    expect(blankOf(benchOf(design)).volume()).toBeCloseTo(100 * 50 * 11 - 6 * 2 * 50, 6);
  });
});
