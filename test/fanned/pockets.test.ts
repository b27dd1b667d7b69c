/**
 * Routed pockets, straight and fanned: their outlines by the distance of lines, their windows by dense sampling of the
 * outline grown by the layout error (every point of it may lie off by so much, any way), their clearances and volumes.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkDesign, type Design, DesignError, type Hole, type Report } from "../../src/index.js";
import { profileValue } from "../properties/oracle.js";
import {
  between,
  counter,
  type Fan,
  fannedNeck,
  fromLine,
  groupOf,
  linesOf,
  pockets,
  quadrilateral,
  type Spot,
} from "./fan.js";
import {
  bendsWithin,
  pointAt,
  pointsBetween,
  thicknessOver,
  tolerancesOf,
  worstCases,
} from "./surface.js";

const ROUNDING = 1e-9;
/** How near a bound comes to the true extreme on an ordinary board, mm, as docs/formulas.md says. */
const NEAR = 0.01;

/** A fanned neck, or the straight one with its bass length. */
function eitherWay(bentEdges: boolean): fc.Arbitrary<Design> {
  return fc
    .tuple(fannedNeck({ bentEdges, markers: pockets }), fc.boolean())
    .map(([design, fanned]) => {
      if (fanned || !("bass" in design.scale)) return design;
      const { bass, frets } = design.scale;
      return { ...design, scale: { length: bass, frets } };
    });
}

const neck = eitherWay(false);
const bentNeck = eitherWay(true);

/** The report; undefined where the design is refused. */
function tried(design: Design): Report | undefined {
  try {
    return checkDesign(design);
  } catch (error) {
    if (error instanceof DesignError) return undefined;
    throw error;
  }
}

/** Runs over every pocket of many necks. */
function eachPocket(
  necks: fc.Arbitrary<Design>,
  runs: number,
  judge: (seen: {
    design: Design;
    fan: Fan;
    hole: Hole;
    outline: Spot[];
    group: Group;
    index: number;
    report: Report;
  }) => void,
): void {
  fc.assert(
    fc.property(necks, (design) => {
      const report = tried(design);
      if (report === undefined) return;
      const fan = linesOf(design);
      report.holes.forEach((hole, index) => {
        const group = groupOf(design, hole);
        if (group === undefined || hole.outline === undefined) return;
        const outline = hole.outline.map(({ along, offset }): Spot => [along, offset]);
        judge({ design, fan, hole, outline, group, index, report });
      });
    }),
    { numRuns: runs },
  );
}

type Group = Design["markers"][number];

/** The rim of a convex outline grown by a disc: sides moved out, and an arc about each corner. */
function grownRim(outline: readonly Spot[], by: number): Spot[] {
  const turn = areaOf(outline) > 0 ? 1 : -1;
  const normals = outline.map((a, i) => {
    const b = outline[(i + 1) % outline.length] ?? a;
    const length = Math.hypot(b[0] - a[0], b[1] - a[1]);
    return Math.atan2((-turn * (b[0] - a[0])) / length, (turn * (b[1] - a[1])) / length);
  });
  return outline.flatMap((a, i) => {
    const b = outline[(i + 1) % outline.length] ?? a;
    const here = normals[i] ?? 0;
    const next = normals[(i + 1) % outline.length] ?? 0;
    const out = ([s, x]: Spot, angle: number): Spot => [
      s + by * Math.cos(angle),
      x + by * Math.sin(angle),
    ];
    const swing = turn * (((((next - here) * turn) % TURN) + TURN) % TURN);
    const arc = Array.from({ length: 17 }, (_, k) => out(b, here + (swing * k) / 16));
    return [...pointsBetween(out(a, here), out(b, here), 24), ...arc];
  });
}
const TURN = 2 * Math.PI;

/** Area, positive where the corners run counter-clockwise (along to the right, offset up). */
function areaOf(outline: readonly Spot[]): number {
  const parts = outline.map(([s, x], i) => {
    const [u, v] = outline[(i + 1) % outline.length] ?? [0, 0];
    return s * v - u * x;
  });
  return parts.reduce((sum, part) => sum + part, 0) / 2;
}

/** Points across a convex rim at one place along. */
function acrossAt(rim: readonly Spot[], along: number): Spot[] {
  const offsets = rim.flatMap((a, i) => {
    const b = rim[(i + 1) % rim.length] ?? a;
    const crosses = a[0] !== b[0] && (a[0] - along) * (b[0] - along) <= 0;
    return crosses ? [pointAt(a, b, along)[1]] : [];
  });
  if (offsets.length < 2) return [];
  return pointsBetween([along, Math.min(...offsets)], [along, Math.max(...offsets)], 80);
}

/** The rim, the places where the surface bends, the centre line and a grid between. */
function pointsOver(
  design: Design,
  fan: Fan,
  rim: readonly Spot[],
): { points: Spot[]; bent: number } {
  const alongs = rim.map(([along]) => along);
  const [from, to] = [Math.min(...alongs), Math.max(...alongs)];
  const bent = bendsWithin(design, fan, from, to);
  const grid = Array.from({ length: 9 }, (_, i) => from + ((to - from) * (i + 0.5)) / 9);
  const offsets = rim.map(([, offset]) => offset);
  const overCentre = Math.min(...offsets) < 0 && Math.max(...offsets) > 0;
  const inside = [...bent, ...grid].flatMap((along) => acrossAt(rim, along));
  const centre = overCentre
    ? [...bent, ...grid, ...onCentreLine(rim)].map((s): Spot => [s, 0])
    : [];
  const within = centre.filter(([s]) => insideAt(rim, s));
  return { points: [...rim, ...inside, ...within], bent: bent.length };
}

/** Where a rim crosses the centre line. */
function onCentreLine(rim: readonly Spot[]): number[] {
  return rim.flatMap((a, i) => {
    const b = rim[(i + 1) % rim.length] ?? a;
    if (a[1] === b[1] || a[1] * b[1] > 0) return [];
    return [a[0] + ((b[0] - a[0]) * a[1]) / (a[1] - b[1])];
  });
}

/** The centre line lies within the rim there. */
function insideAt(rim: readonly Spot[], along: number): boolean {
  const crossings = onCentreLine(rim);
  return along >= Math.min(...crossings) && along <= Math.max(...crossings);
}

/** Never below nothing, but for rounding, and within 0.01 mm. */
function closeAbove(gap: number, what: string): void {
  if (!(gap >= -ROUNDING && gap <= NEAR)) expect.fail(`${what}: off by ${gap}`);
}

describe("windows of pockets", () => {
  it("min is never below the greatest removal sampled, and within 0.01 mm of it", () => {
    const cases = counter();
    eachPocket(bentNeck, 250, ({ design, fan, hole, outline, group }) => {
      const { layout, stop } = tolerancesOf(design);
      const { points, bent } = pointsOver(design, fan, grownRim(outline, layout));
      const { most } = worstCases(design, fan);
      const greatest = Math.max(...points.map(most));
      closeAbove(hole.window.min - hole.fill.keep - stop - greatest, "min");
      closeAbove(
        (hole.planned?.depth ?? 0) - stop - greatest - (hole.planned?.left ?? -stop - greatest),
        "left",
      );
      cases.add(group.shape?.kind ?? "");
      cases.add("bass" in design.scale ? "fanned" : "straight");
      if (bent > 0) cases.add("bent");
      if (layout > 0.1) cases.add("grown");
    });
    for (const what of ["rectangle", "trapezoid", "fanned", "straight", "bent", "grown"]) {
      expect(cases.of(what), what).toBeGreaterThan(4);
    }
  });

  it("max, flush: never above the least removal sampled, and within 0.01 mm of it", () => {
    const cases = counter();
    eachPocket(bentNeck, 350, ({ design, fan, hole, outline, group }) => {
      if (hole.window.maxBy !== "flush" || hole.fill.kind !== "solid") return;
      const { layout, stop } = tolerancesOf(design);
      const { points, bent } = pointsOver(design, fan, grownRim(outline, layout));
      const { least } = worstCases(design, fan);
      const sampled = Math.min(...points.map(least));
      closeAbove(sampled + hole.fill.thickness - stop - hole.window.max, "max");
      cases.add(group.shape?.kind ?? "");
      if (bent > 0) cases.add("bent");
    });
    for (const what of ["rectangle", "trapezoid", "bent"]) {
      expect(cases.of(what), what).toBeGreaterThan(4);
    }
  });

  it("max, flush, stays near where the board falls away under a slanted pocket", () => {
    // the least removal lies on the slanted side, off the corners and off the centre line
    const design: Design = {
      scale: { bass: 730, treble: 672, perpendicular: 20, frets: 20 },
      board: { length: 540, width: { nut: 45, end: 60 }, thickness: 8 },
      radius: 357,
      crown: { nut: 0.3, end: 4 },
      markers: [
        {
          frets: [4],
          shape: { kind: "trapezoid", slotGap: 0.7, edgeGap: 5 },
          fill: { kind: "solid", thickness: 1 },
        },
      ],
      tolerance: { stop: 0, layout: 0, thickness: 0, crown: 0, radius: 0 },
    };
    const [hole] = checkDesign(design).holes;
    const outline = hole?.outline?.map(({ along, offset }): Spot => [along, offset]) ?? [];
    const fan = linesOf(design);
    const { points } = pointsOver(design, fan, grownRim(outline, 0));
    const { least } = worstCases(design, fan);
    closeAbove(1 + Math.min(...points.map(least)) - (hole?.window.max ?? Number.NaN), "max");
  });

  it("max, web and channel: the least thickness under the pocket, less over the channel", () => {
    const cases = counter();
    eachPocket(bentNeck, 250, ({ design, fan, hole, outline }) => {
      const { layout, stop, thickness } = tolerancesOf(design);
      const rim = grownRim(outline, layout);
      const alongs = outline.map(([along]) => along);
      const ends = [Math.min(...alongs) - layout, Math.max(...alongs) + layout] as const;
      const under = thicknessOver(design, fan, ...ends).least - thickness - stop;
      const over = overChannel(design, rim);
      // just beside the channel the bound may count it
      if (over !== overChannel(design, grownRim(outline, layout * 1.01 + ROUNDING))) return;
      const web = under - (over ? (design.board.channel?.depth ?? 0) : 0);
      if (hole.planned) closeAbove(web - hole.planned.depth - hole.planned.web, "web");
      const { max, maxBy } = hole.window;
      if (maxBy !== "flush") closeAbove(web - (design.web ?? 1) - max, "max");
      else expect(max).toBeLessThanOrEqual(web - (design.web ?? 1) + ROUNDING);
      cases.add(maxBy);
    });
    for (const what of ["web", "channel"]) expect(cases.of(what), what).toBeGreaterThan(20);
  });
});

/** Some of the rim's ground lies over the channel. */
function overChannel({ board }: Design, rim: readonly Spot[]): boolean {
  const { channel } = board;
  if (channel === undefined) return false;
  const { width, from = 0, to = board.length } = channel;
  const alongs = rim.map(([along]) => along);
  const [first, last] = [Math.max(from, Math.min(...alongs)), Math.min(to, Math.max(...alongs))];
  if (!(first <= last)) return false;
  return pointsBetween([first, 0], [last, 0], 60).some(([along]) =>
    acrossAt(rim, along).some(([, offset]) => Math.abs(offset) <= width / 2),
  );
}

describe("outlines", () => {
  it("a trapezoid's sides run parallel to the slots at slotGap and to the edges at edgeGap", () => {
    const cases = counter();
    eachPocket(neck, 250, ({ design, fan, hole, outline, group }) => {
      if (group.shape?.kind !== "trapezoid") return;
      const { slotGap, edgeGap } = group.shape;
      const [a, b, c, d] = quadrilateral(fan, hole.fret);
      const lines = [
        [b, a, slotGap],
        [a, d, edgeGap],
        [d, c, slotGap],
        [c, b, edgeGap],
      ] as const;
      const upward = areaOf([a, b, c, d]) > 0 ? -1 : 1;
      for (const [from, to, gap] of lines) {
        const gaps = outline.map((corner) => upward * fromLine(corner, from, to) - gap);
        if (!gaps.every((off) => off >= -1e-8)) expect.fail(`a corner too near: ${gaps}`);
        // a side lies on the line moved inward: two corners do
        const on = gaps.filter((off) => Math.abs(off) <= 1e-8).length;
        if (on !== 2) expect.fail(`${on} corners at the gap: ${gaps}`);
      }
      cases.add("bass" in design.scale ? "fanned" : "straight");
    });
    expect(cases.of("fanned")).toBeGreaterThan(20);
    expect(cases.of("straight")).toBeGreaterThan(20);
  });

  it("a trapezoid stays edgeGap away from the true edge where the edge bends", () => {
    const cases = counter();
    eachPocket(bentNeck, 300, ({ design, fan, outline, group }) => {
      if (group.shape?.kind !== "trapezoid") return;
      const rim = grownRim(outline, 0);
      const gap = edgeDistance(design, fan, rim);
      if (!(gap >= group.shape.edgeGap - NEAR)) expect.fail(`${gap} of ${group.shape.edgeGap}`);
      cases.add("pocket");
    });
    expect(cases.of("pocket")).toBeGreaterThan(50);
  });

  it("a trapezoid stays edgeGap away from an edge that bends in at a slanted fret", () => {
    const design: Design = {
      scale: { bass: 690, treble: 640, perpendicular: 0, frets: 22 },
      board: { length: 520, width: { nut: 54, fret5: 46, end: 60 }, thickness: 6 },
      radius: 300,
      markers: [{ frets: [5, 6], shape: { kind: "trapezoid", slotGap: 1, edgeGap: 1 } }],
    };
    const fan = linesOf(design);
    const { holes } = checkDesign(design);
    for (const { outline } of holes) {
      const rim = grownRim(outline?.map(({ along, offset }): Spot => [along, offset]) ?? [], 0);
      expect(edgeDistance(design, fan, rim)).toBeGreaterThanOrEqual(1 - 1e-6);
    }
    expect(holes).toHaveLength(2);
  });

  it("a rectangle lies square about its place", () => {
    const cases = counter();
    eachPocket(neck, 100, ({ hole, outline, group }) => {
      if (group.shape?.kind !== "rectangle") return;
      const { length, width } = group.shape;
      const corners = outline.map(([along, offset]) => [along - hole.along, offset - hole.offset]);
      for (const [s, x] of corners) {
        expect(Math.abs(s ?? 0)).toBeCloseTo(length / 2, 9);
        expect(Math.abs(x ?? 0)).toBeCloseTo(width / 2, 9);
      }
      expect(Math.abs(areaOf(outline))).toBeCloseTo(length * width, 6);
      cases.add("pocket");
    });
    expect(cases.of("pocket")).toBeGreaterThan(20);
  });

  it("gaps that leave no room are refused, by the fret; gaps that leave some are not", () => {
    const cases = counter();
    const gaps = fc.record({
      slotGap: between(0, 22),
      edgeGap: between(0, 30),
      fret: fc.integer({ min: 1, max: 20 }),
    });
    fc.assert(
      fc.property(neck, gaps, (design, { slotGap, edgeGap, fret }) => {
        const shape = { kind: "trapezoid", slotGap, edgeGap } as const;
        const pocketed: Design = { ...design, markers: [{ frets: [fret], shape }] };
        const room = roomWithin(linesOf({ ...design, markers: [] }), fret, slotGap, edgeGap);
        const error = refusal(pocketed);
        cases.add(room.length === 4 ? "room" : room.length === 0 ? "none" : "corner");
        if (room.length === 4) expect(error).toBeUndefined();
        if (room.length === 0)
          expect(error?.issues.map(({ path }) => path)).toEqual(["markers.0.frets.0"]);
      }),
    );
    expect(cases.of("room")).toBeGreaterThan(30);
    expect(cases.of("none")).toBeGreaterThan(30);
  });
});

function refusal(design: Design): DesignError | undefined {
  try {
    checkDesign(design);
    return undefined;
  } catch (error) {
    if (error instanceof DesignError) return error;
    throw error;
  }
}

/** What is left of the quadrilateral when a strip is cut off along each side; no corners where nothing is. */
function roomWithin(fan: Fan, fret: number, slotGap: number, edgeGap: number): Spot[] {
  const [a, b, c, d] = quadrilateral(fan, fret);
  const turn = areaOf([a, b, c, d]) > 0 ? 1 : -1;
  const strips = [
    [a, b, slotGap],
    [b, c, edgeGap],
    [c, d, slotGap],
    [d, a, edgeGap],
  ] as const;
  let room: Spot[] = [a, b, c, d];
  for (const [from, to, gap] of strips) {
    const inside = (spot: Spot) => turn * fromLine(spot, from, to) - gap;
    room = room.flatMap((spot, i) => {
      const last = room[(i + room.length - 1) % room.length] ?? spot;
      const [was, is] = [inside(last), inside(spot)];
      const share = was / (was - is);
      const between: Spot = [
        last[0] + share * (spot[0] - last[0]),
        last[1] + share * (spot[1] - last[1]),
      ];
      if (was > 0 !== is > 0) return is > 0 ? [between, spot] : [between];
      return is > 0 ? [spot] : [];
    });
  }
  return room;
}

/** Least distance from points to the board's edges, negative where one lies outside. */
function edgeDistance(design: Design, { layout }: Fan, points: readonly Spot[]): number {
  const half = (along: number) => profileValue(design.board.width, layout, along) / 2;
  const alongs = points.map(([along]) => along);
  const [from, to] = [Math.min(...alongs) - 8, Math.max(...alongs) + 8];
  const knots = bendsOf(design, layout).filter((s) => from < s && s < to);
  const places = [from, ...knots, to].sort((a, b) => a - b);
  const edge = places.map((s): Spot => [s, half(s)]);
  const distances = points.map(([along, offset]) => {
    const spot: Spot = [along, Math.abs(offset)];
    const nearest = Math.min(...edge.slice(1).map((b, i) => fromSegment(spot, edge[i] ?? b, b)));
    return half(along) >= spot[1] ? nearest : -nearest;
  });
  return Math.min(...distances);
}

function bendsOf(design: Design, layout: Fan["layout"]): number[] {
  const { width } = design.board;
  if (typeof width === "number") return [];
  return [0, ...layout.positions, layout.length];
}

function fromSegment([s, x]: Spot, a: Spot, b: Spot): number {
  const [ds, dx] = [b[0] - a[0], b[1] - a[1]];
  const share = Math.min(1, Math.max(0, ((s - a[0]) * ds + (x - a[1]) * dx) / (ds * ds + dx * dx)));
  return Math.hypot(s - a[0] - share * ds, x - a[1] - share * dx);
}

describe("clearances", () => {
  it("a pocket near a slot, over one or past the edge is found, with its distance", () => {
    const cases = counter();
    eachPocket(bentNeck, 300, ({ design, fan, hole, outline, index, report }) => {
      const rim = grownRim(outline, 0);
      const [a, b, c, d] = quadrilateral(fan, hole.fret);
      const upward = areaOf([a, b, c, d]) > 0 ? -1 : 1;
      const slot = Math.min(
        ...rim.map((p) => Math.min(upward * fromLine(p, b, a), upward * fromLine(p, d, c))),
      );
      const edge = Math.min(
        edgeDistance(design, fan, rim),
        ...rim.map(([along]) => design.board.length - along),
      );
      const found = report.findings.filter((finding) => finding.hole === index);
      const near = found.find(({ code }) => code === "cuts-slot" || code === "near-slot");
      const past = found.find(({ code }) => code === "past-edge");
      const wanted = slot < 0 ? "cuts-slot" : slot < 0.5 ? "near-slot" : undefined;
      if (Math.min(Math.abs(slot), Math.abs(slot - 0.5)) > 1e-6) expect(near?.code).toBe(wanted);
      if (near) expect(Math.abs(near.value - slot)).toBeLessThanOrEqual(1e-6);
      if (Math.abs(edge) > 1e-6) expect(past !== undefined, `edge ${edge}`).toBe(edge < 0);
      if (past) closeTo(past.value, edge);
      cases.add(near?.code ?? "clear");
      cases.add(past ? "past" : "on");
    });
    for (const what of ["cuts-slot", "near-slot", "clear", "past", "on"]) {
      expect(cases.of(what), what).toBeGreaterThan(5);
    }
  });
});

function closeTo(found: number, wanted: number): void {
  if (!(Math.abs(found - wanted) <= NEAR)) expect.fail(`${found}, not ${wanted}`);
}

it("the poured volume is the outline's area times the depth of the setting, and waste", () => {
  const cases = counter();
  fc.assert(
    fc.property(neck, (design) => {
      const report = tried({
        ...design,
        fill: { kind: "poured", keep: 0.5 },
        markers: design.markers.map(poured),
      });
      if (report?.pour === undefined) return;
      const volumes = report.holes.map(({ outline, planned }, i) => {
        const setting = report.stops.settings.find(({ holes }) => holes.includes(i));
        const corners = outline?.map(({ along, offset }): Spot => [along, offset]) ?? [];
        return Math.abs(areaOf(corners)) * (setting?.depth ?? planned?.depth ?? 0);
      });
      const waste = design.pour?.waste ?? 0.5;
      const wanted = (volumes.reduce((sum, volume) => sum + volume, 0) * (1 + waste)) / 1000;
      expect(report.pour.volume).toBeCloseTo(wanted, 9);
      cases.add(wanted > 0 ? "poured" : "no depth");
    }),
    { numRuns: 150 },
  );
  expect(cases.of("poured")).toBeGreaterThan(50);
});

function poured({ fill: _, ...group }: Group): Group {
  return group;
}
