/**
 * One whole board as a solid: drilled, filled, radiused, measured. An invented design: a compound radius that falls
 * away from the twelfth fret on, poured singles drilled with a twist bit, a solid pair drilled with a Forstner bit.
 */
import { afterAll, beforeAll, describe, expect, it } from "vitest";
import { checkDesign, type Design, type Hole, type Report, removalAt } from "../../src/index.js";
import { EXACT } from "./necks.js";
import {
  blankOf,
  columnOf,
  fillingOf,
  finer,
  greatestRemoval,
  judged,
  leftOf,
  linesOf,
  Manifold,
  type Mesh,
  type Reading,
  release,
  removalAtPoint,
  removedFrom,
  type Solid,
  type Surfaces,
  surfacesOf,
  toolOf,
  valueAt,
} from "./solid.js";

const WHOLE: Design = {
  name: "Whole board (invented)",
  scale: { length: 648, frets: 22 },
  board: {
    length: 482,
    width: { nut: 43, end: 57 },
    thickness: { nut: 7, end: 6.6 },
    channel: { width: 6.5, depth: 1.4, from: 8, to: 440 },
  },
  radius: { nut: 241, end: 381 },
  crown: { nut: 0.15, fret12: 0.15, end: 0.65 },
  markers: [
    {
      frets: [3, 5, 7, 9, 15, 17, 19, 21],
      diameter: 6.35,
      fill: { kind: "poured" },
      bit: { kind: "twist", angle: 118 },
    },
    {
      frets: [12],
      diameter: 5,
      arrangement: "double",
      fill: { kind: "solid", thickness: 2.2 },
      bit: { kind: "forstner", point: 0.8 },
    },
  ],
  slot: { depth: 3.62, tang: 1.7 },
  pour: { waste: 0 },
};

const MESH: Mesh = { chord: 0.5, sides: 128 };
/** Rounding of the solids, mm or mm³ on a small part of one. */
const ROUNDING = 1e-7;
/** How near a bound comes to the true extreme, mm, as docs/formulas.md says. */
const NEAR = 0.01;

/** Depth of each rim: as planned, or as the setting that serves the hole says. */
function depthsOf({ holes, stops }: Report): number[] {
  return holes.map(({ planned }, i) => {
    const setting = stops.settings.find(({ holes: served }) => served.includes(i));
    const depth = planned?.depth ?? setting?.depth;
    if (depth === undefined) throw new Error(`no depth for hole ${i}`);
    return depth;
  });
}

/** The blank with every hole drilled. */
function drilled(design: Design, { holes }: Report, depths: readonly number[]): Solid {
  const tools = holes.map((hole, i) => toolOf(hole, depths[i] ?? 0, 1, MESH, "around"));
  return blankOf(design).subtract(Manifold.union(tools));
}

/** Area of a hole's ground as the mesh has it. */
function groundArea(hole: Hole): number {
  return columnOf(hole, 0, 1, MESH, "within").volume();
}

describe("a sound board", () => {
  const report = checkDesign(WHOLE);
  const depths = depthsOf(report);
  let surfaces: Surfaces;
  beforeAll(() => {
    surfaces = surfacesOf(WHOLE, MESH);
  }, 120_000);
  afterAll(release);

  /** Each hole, its rim's depth, and its filling after radiusing. */
  const fillings = () =>
    report.holes.map((hole, i) => {
      const depth = depths[i] ?? Number.NaN;
      const filling = fillingOf(hole, depth, MESH, "within");
      return { hole, depth, filling, finished: leftOf(filling, surfaces.within) };
    });

  it("passes the check with one setting for all ten holes", () => {
    expect(report.findings.map(({ code }) => code)).not.toContain("no-depth");
    expect(report.ok).toBe(true);
    expect(report.holes).toHaveLength(10);
    expect(report.stops.settings).toHaveLength(1);
  });

  it("has no hole through it: drilled, it is one piece without a handle", () => {
    const board = drilled(WHOLE, report, depths);
    expect(board.genus()).toBe(0);
    expect(board.decompose()).toHaveLength(1);
  });

  it("misses nothing of a kept marker: each filling covers its whole disc at the finished surface", () => {
    for (const { hole, depth, filling, finished } of fillings()) {
      // all that stands between the rim's floor and the finished surface is filling
      const above = leftOf(columnOf(hole, -depth, 5, MESH, "within"), surfaces.within);
      expect(above.subtract(filling).volume()).toBeLessThan(ROUNDING);
      expect(finished.project().area()).toBeCloseTo(groundArea(hole), 6);
    }
  });

  it("has at least keep of every filling left, over its whole disc", () => {
    for (const { hole, depth, finished } of fillings()) {
      const { high } = greatestRemoval(hole, surfaces);
      expect(depth - high).toBeGreaterThan(hole.fill.keep);
      const atKeep = finished.slice(hole.fill.keep - depth);
      expect(atKeep.area()).toBeCloseTo(groundArea(hole), 6);
    }
  });

  it("the poured fillings hold what the report says is to be poured, waste aside", () => {
    const poured = report.holes.flatMap((hole, i) => {
      return hole.fill.kind === "poured" ? [{ hole, depth: depths[i] ?? 0 }] : [];
    });
    expect(poured).toHaveLength(8);
    const volume = (fit: "within" | "around") =>
      poured.reduce((sum, { hole, depth }) => sum + fillingOf(hole, depth, MESH, fit).volume(), 0);
    const [low, high] = [volume("within"), volume("around")];
    // ml and mm³
    expect((report.pour?.volume ?? 0) * 1000).toBeGreaterThan(low);
    expect((report.pour?.volume ?? 0) * 1000).toBeLessThan(high);
    expect(high - low).toBeLessThan(0.002 * low);
  });

  it("lost as much wood to the radius as the removal adds up to", () => {
    const volume = removalVolume(WHOLE);
    const wood = (mesh: Mesh): Reading => {
      const { within, around } = surfacesOf(WHOLE, mesh);
      const blank = blankOf(WHOLE);
      return {
        low: removedFrom(blank, around).volume(),
        high: removedFrom(blank, within).volume(),
      };
    };
    const [coarse, fine] = [wood({ ...MESH, chord: 1 }), wood(finer({ ...MESH, chord: 1 }))];
    for (const { low, high } of [coarse, fine]) {
      expect(volume).toBeGreaterThan(low);
      expect(volume).toBeLessThan(high);
    }
    const ratio = (coarse.high - coarse.low) / (fine.high - fine.low);
    expect(ratio).toBeGreaterThan(3.5);
    expect(ratio).toBeLessThan(4.5);
    expect(fine.high - fine.low).toBeLessThan(2e-4 * volume);
  });

  it("has the edges that the report states", () => {
    let count = 0;
    for (const { along, removal, thickness } of report.edges) {
      const offset = valueAt(WHOLE.board.width, WHOLE, along) / 2;
      const { low, high } = removalAtPoint(surfaces, along, offset);
      expect(removal).toBeGreaterThan(low - ROUNDING);
      expect(removal).toBeLessThan(high + ROUNDING);
      expect(thickness + removal).toBeCloseTo(valueAt(WHOLE.board.thickness, WHOLE, along), 9);
      count++;
    }
    expect(count).toBe(24);
  });

  it("needs its slots as deep as the report states", () => {
    const { slots } = checkDesign({ ...WHOLE, tolerance: EXACT });
    const [hole] = report.holes;
    if (slots === undefined || hole === undefined) throw new Error("a slot and a hole are stated");
    for (const { fret, least } of slots.frets) {
      const along = 648 * (1 - 2 ** (-fret / 12));
      const half = valueAt(WHOLE.board.width, WHOLE, along) / 2;
      const { low, high } = greatestRemoval({ ...hole, outline: kerf(along, half) }, surfaces);
      // tang 1.7 and the usual clearance of 0.2 below the finished edge
      expect(least - 1.9).toBeGreaterThan(low - ROUNDING);
      expect(least - 1.9).toBeLessThan(high + NEAR);
    }
    expect(slots.frets).toHaveLength(22);
  });
});

/** The line of a saw cut. */
function kerf(along: number, half: number) {
  const thin = 1e-6;
  return [
    { along: along - thin, offset: -half },
    { along: along + thin, offset: -half },
    { along: along + thin, offset: half },
    { along: along - thin, offset: half },
  ];
}

/** ∫∫ removal over the board, by Simpson's rule on each stretch without a knot. */
function removalVolume(design: Design): number {
  const lines = linesOf(design.crown ?? 0.15, design);
  const across = (along: number) => {
    const half = valueAt(design.board.width, design, along) / 2;
    return 2 * simpson(0, half, 8, (x) => removalAt(design, along, x));
  };
  return lines.reduce((sum, { from, to }) => sum + simpson(from, to, 16, across), 0);
}

function simpson(from: number, to: number, panels: number, f: (s: number) => number): number {
  const h = (to - from) / panels;
  let sum = f(from) + f(to);
  for (let i = 1; i < panels; i++) sum += (i % 2 === 0 ? 2 : 4) * f(from + i * h);
  return (sum * h) / 3;
}

describe("a broken board shows in the solid", () => {
  it("a bit through: as many handles as the report finds holes that break through", () => {
    // by hand, at 3.6: the cone's 1.91 and the channel's 1.4 take 6.91 of a blank that tapers from 7 to 6.6; fret 3 has
    // 6.93 there, frets 5 to 19 less, fret 21 lies past the channel's end, and the pair beside it
    for (const [depth, through] of [
      [3.3, 0],
      [3.6, 6],
      [6.2, 10],
    ] as const) {
      const design: Design = { ...WHOLE, tolerance: EXACT, depth };
      const report = checkDesign(design);
      const found = report.findings.filter(({ code }) => code === "breaks-through");
      const genus = judged(() => drilled(design, report, depthsOf(report)).genus());
      expect(genus).toBe(found.length);
      expect(genus).toBe(through);
    }
  });

  it("markers gone: the discs that are not whole are those of which the report says nothing is left", () => {
    const gone = [0.7, 0.5, 0.3].map((depth) => {
      const design: Design = { ...WHOLE, tolerance: EXACT, depth };
      const report = checkDesign(design);
      const cut = judged(() => {
        const surfaces = surfacesOf(design, MESH);
        return report.holes.flatMap((hole, i) => {
          const floor = columnOf(hole, -depth, 5, MESH, "within");
          const disc = leftOf(floor, surfaces.within).project().area();
          return disc < groundArea(hole) - 1e-6 ? [i] : [];
        });
      });
      const found = report.findings.filter(({ code }) => code === "nothing-left");
      expect(cut).toEqual(found.map(({ hole }) => hole));
      return cut.length;
    });
    // fret 12's pair first, then fret 21 where the board falls away
    expect(gone).toEqual([0, 3, 6]);
  });

  it("a dot too deep: air above it is what the report calls below the surface", () => {
    const depths = [2.5, 2.6];
    const sunk = depths.map((depth) => {
      const design: Design = { ...WHOLE, tolerance: EXACT, depth };
      const report = checkDesign(design);
      const found = report.findings.filter(({ code }) => code === "below-surface");
      const open = judged(() => {
        const { within } = surfacesOf(design, MESH);
        return report.holes.flatMap((hole, i) => {
          const above = leftOf(columnOf(hole, -depth, 5, MESH, "within"), within);
          const air = above.subtract(fillingOf(hole, depth, MESH, "within")).volume();
          return air > ROUNDING ? [i] : [];
        });
      });
      expect(open).toEqual(found.map(({ hole }) => hole));
      return open.length;
    });
    expect(sunk).toEqual([0, 2]);
  });
});
