/**
 * Random necks, judged by solids. All tolerances are 0, so the report's worst case is the board itself; the depth is
 * anywhere. Two readings of each quantity hold the true one between them, and they close up with the square of the
 * mesh. Source of the solid's shape: docs/formulas.md (a compound radius is a cone, and its stated radius is what a
 * gauge square to the board reads; the depth of the sanding is piecewise linear).
 */
import fc from "fast-check";
import { beforeAll, describe, expect, it } from "vitest";
import { checkDesign, type Design, type Hole } from "../../src/index.js";
import { inventedNeck } from "./necks.js";
import {
  finer,
  greatestRemoval,
  judged,
  leastRemoval,
  linesOf,
  type Mesh,
  type Reading,
  surfacesOf,
  valueAt,
  webUnder,
} from "./solid.js";

const NECKS = 26;
const COARSE: Mesh = { chord: 4, sides: 24 };
const MESHES = [COARSE, finer(COARSE), finer(finer(COARSE))];
/** Rounding of the solids, mm. */
const ROUNDING = 1e-7;
/** How near a bound comes to the true extreme on an ordinary board, mm, as docs/formulas.md says. */
const NEAR = 0.01;

/** One hole: what the report says of it, and what the solids read, mesh by mesh. */
interface Judged {
  readonly design: Design;
  readonly hole: Hole;
  readonly depth: number;
  /** Of the filling: from the rim's floor up to the finished surface where that is lowest. */
  readonly left: readonly Reading[];
  readonly least: readonly Reading[];
  readonly web: readonly Reading[];
}

let holes: readonly Judged[] = [];

beforeAll(() => {
  holes = fc.sample(inventedNeck, NECKS).flatMap((design) => judged(() => judge(design)));
}, 120_000);

function judge(design: Design): Judged[] {
  const surfaces = MESHES.map((mesh) => surfacesOf(design, mesh));
  return checkDesign(design).holes.map((hole) => {
    const depth = hole.planned?.depth ?? Number.NaN;
    const greatest = surfaces.map((surface) => greatestRemoval(hole, surface));
    return {
      design,
      hole,
      depth,
      left: greatest.map(({ low, high }) => ({ low: depth - high, high: depth - low })),
      least: isFlush(hole) ? surfaces.map((surface) => leastRemoval(hole, surface)) : [],
      web: MESHES.map((mesh) => webUnder(design, hole, depth, mesh)),
    };
  });
}

/** Holds every reading of many holes against what the report says. */
function eachReading(
  which: "left" | "least" | "web",
  among: (judged: Judged) => boolean,
  check: (reading: Reading, judged: Judged, story: string) => void,
): number {
  const chosen = holes.filter(among);
  for (const judged of chosen) {
    for (const reading of judged[which]) check(reading, judged, story(judged));
  }
  return chosen.length;
}

function story({ design, hole: { fret, side } }: Judged): string {
  return `fret ${fret} ${side} of ${JSON.stringify(design)}`;
}

/** By how much the two readings part, all together, mesh by mesh. */
function partings(which: "left" | "least" | "web", among: (judged: Judged) => boolean): number[] {
  const chosen = holes.filter(among);
  expect(chosen.length).toBeGreaterThan(2);
  return MESHES.map((_, i) => {
    const parts = chosen.map(({ [which]: readings }) => {
      const reading = readings[i];
      return reading ? reading.high - reading.low : Number.NaN;
    });
    return parts.reduce((sum, part) => sum + part, 0) / chosen.length;
  });
}

/** Half the mesh, a quarter of the error. */
function fallsAsTheSquare([coarse, middle, fine]: readonly number[]): void {
  for (const [wide, narrow] of [
    [coarse, middle],
    [middle, fine],
  ]) {
    const ratio = (wide ?? Number.NaN) / (narrow ?? Number.NaN);
    expect(ratio).toBeGreaterThan(3.5);
    expect(ratio).toBeLessThan(4.5);
  }
}

const always = () => true;

/** One radius or flat, one crown, a round hole: the report's bounds are exact there. */
const isPlain = ({ design: { radius, crown }, hole }: Judged) =>
  typeof radius === "number" && typeof crown === "number" && hole.outline === undefined;

/** The flush rule governs: the report states the least removal. */
const isFlush = ({ window, fill }: Hole) => window.maxBy === "flush" && fill.kind === "solid";

const flush = ({ hole }: Judged) => isFlush(hole);

/** A twist bit's cone that reaches over the channel beside its axis: what is left under it depends on the mesh. */
const coneMeetsChannel = ({ design, hole, web }: Judged) =>
  design.board.channel !== undefined &&
  hole.bit.kind === "twist" &&
  web.every(({ low, high }) => high - low > 1e-5);

describe("what is left of each filling", () => {
  it("agrees with planned.left: never less than said, and within 0.01 mm of it", () => {
    const count = eachReading("left", always, ({ low, high }, { hole }, where) => {
      expect(hole.planned?.left, where).toBeLessThanOrEqual(high + ROUNDING);
      expect(hole.planned?.left, where).toBeGreaterThanOrEqual(low - NEAR);
    });
    expect(count).toBeGreaterThan(4 * NECKS);
  });

  it("agrees to the mesh's error alone under one radius", () => {
    const count = eachReading("left", isPlain, ({ low, high }, { hole }, where) => {
      expect(hole.planned?.left, where).toBeLessThanOrEqual(high + ROUNDING);
      expect(hole.planned?.left, where).toBeGreaterThanOrEqual(low - ROUNDING);
    });
    expect(count).toBeGreaterThan(9);
  });

  it("the window's least depth leaves just the keep", () => {
    const count = eachReading("left", always, ({ low, high }, { hole, depth }, where) => {
      const by = depth - hole.window.min;
      expect(hole.fill.keep, where).toBeLessThanOrEqual(high - by + ROUNDING);
      expect(hole.fill.keep, where).toBeGreaterThanOrEqual(low - by - NEAR);
    });
    expect(count).toBeGreaterThan(4 * NECKS);
  });

  it("is read ever more closely, with the square of the mesh", () => {
    const parted = partings("left", ({ design }) => design.radius !== Infinity);
    fallsAsTheSquare(parted);
    expect(parted[2]).toBeLessThan(0.001);
  });
});

describe("flush dots", () => {
  it("the window's greatest depth puts a dot's top at the finished surface where that is highest", () => {
    const count = eachReading("least", flush, ({ low, high }, { hole }, where) => {
      const thickness = hole.fill.kind === "solid" ? hole.fill.thickness : Number.NaN;
      expect(hole.window.max - thickness, where).toBeLessThanOrEqual(high + ROUNDING);
      expect(hole.window.max - thickness, where).toBeGreaterThanOrEqual(low - NEAR);
    });
    expect(count).toBeGreaterThan(NECKS);
  });

  it("is read ever more closely, with the square of the mesh", () => {
    fallsAsTheSquare(partings("least", (hole) => flush(hole) && hole.design.radius !== Infinity));
  });
});

describe("what is left under each hole", () => {
  it("agrees with planned.web: never less than said, and more only by the blank's taper under the hole", () => {
    const count = eachReading("web", always, ({ low, high }, { design, hole }, where) => {
      expect(hole.planned?.web, where).toBeLessThanOrEqual(high + ROUNDING);
      expect(hole.planned?.web, where).toBeGreaterThanOrEqual(low - taper(design, hole) - ROUNDING);
    });
    expect(count).toBeGreaterThan(4 * NECKS);
  });

  it("the bit's cone over the channel's side is read ever more closely, with the square of the mesh", () => {
    fallsAsTheSquare(partings("web", coneMeetsChannel));
  });

  it("saw holes through the board, holes into the channel, and none", () => {
    const cut = holes.filter(({ hole }) => (hole.planned?.web ?? 0) < 0);
    expect(cut.length).toBeGreaterThan(2);
    expect(holes.length - cut.length).toBeGreaterThan(NECKS);
  });
});

/** How much the blank's thickness changes over a hole's ground. */
function taper(design: Design, { along, diameter, outline }: Hole): number {
  const alongs = outline?.map((corner) => corner.along) ?? [
    along - diameter / 2,
    along + diameter / 2,
  ];
  const { thickness } = design.board;
  const from = Math.min(...alongs);
  const to = Math.max(...alongs);
  const knots = linesOf(thickness, design).map((line) => line.to);
  const places = [from, to, ...knots.filter((s) => from < s && s < to)];
  const found = places.map((s) => valueAt(thickness, design, s));
  return Math.max(...found) - Math.min(...found);
}

describe("the necks", () => {
  it("were of every kind", () => {
    const kinds = holes.map(({ design, hole }) => {
      const radius = typeof design.radius === "number" ? "one radius" : "cone";
      return [radius, hole.outline ? "pocket" : hole.bit.kind, hole.fill.kind];
    });
    for (const kind of [
      "one radius",
      "cone",
      "pocket",
      "forstner",
      "brad-point",
      "twist",
      "end-mill",
      "poured",
      "solid",
    ]) {
      expect(kinds.filter((all) => all.includes(kind)).length, kind).toBeGreaterThan(2);
    }
  });

  it("had knots of the radius or the crown inside holes", () => {
    const knotted = holes.filter(({ design, hole }) => {
      const reach = hole.outline
        ? Math.max(...hole.outline.map(({ along }) => Math.abs(along - hole.along)))
        : hole.diameter / 2;
      const lines = [design.radius, design.crown ?? 0.15].flatMap((p) => linesOf(p, design));
      const ends = lines.map(({ to }) => to).filter((s) => s < design.board.length);
      return ends.some((s) => Math.abs(s - hole.along) < reach);
    });
    expect(knotted.length).toBeGreaterThan(4);
  });
});
