/**
 * Every bound held against dense sampling of the disc, by formulas written again from docs/formulas.md
 * (oracle.ts). Ordinary boards: radius 180 to 500 with a slope up to 0.4, sanding slope up to 0.01, dots up to
 * 10 mm. A bound may never be on the wrong side of a sampled point, and lies within a micrometre of the worst one.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { type Bit, checkDesign, type Design, type Fill, type Hole } from "../../src/index.js";
import { type Drawn, oddNeck, ordinaryNeck, pushedNeck, spelledOut } from "./designs.js";
import { bends, type Layout, pointsOver, profileValue, surfaceOf } from "./oracle.js";

/** What a bound may be off by rounding. */
const ROUNDING = 1e-9;
/** How near a bound comes on an ordinary board, mm. docs/formulas.md says 0.01; the code is held to a micrometre. */
const NEAR = 0.001;

/** The worst that sampling finds for one hole. */
interface Sampled {
  /** Greatest removal, the most that the tolerances allow. */
  readonly removal: number;
  /** Least thickness. */
  readonly thickness: number;
  /** How far the bit leads its rim where it lies over the channel; −Infinity where no part of it does. */
  readonly channelLead: number;
  /** Least removal, the least that the tolerances allow. */
  readonly least: number;
  /** Least of what is above the channel or the underside less what leads the rim, point by point. */
  readonly standing: number;
}

type Stated = Required<NonNullable<Design["tolerance"]>>;

/** Samples the disc that a hole may cover. */
function sampled(design: Design, layout: Layout, hole: Hole, bit: Bit): Sampled {
  const { radius, crown = 0.15, board } = design;
  const tolerance = design.tolerance as Stated;
  const high = surfaceOf(radius, crown, layout, {
    crown: tolerance.crown,
    radius: 1 - tolerance.radius,
  });
  const low = surfaceOf(radius, crown, layout, {
    crown: -tolerance.crown,
    radius: 1 + tolerance.radius,
  });
  const reach = hole.diameter / 2 + tolerance.layout;
  const profiles = [radius, crown, board.thickness].flatMap((profile) => bends(profile, layout));
  const lines = [...profiles, ...floors(design, layout)];
  const worst = { removal: -Infinity, thickness: Infinity, channelLead: -Infinity };
  const found = { ...worst, least: Infinity, standing: Infinity };
  const points = pointsOver(hole, reach, lines);
  const corner = nearestOfChannel(design, hole);
  if (corner) points.push(corner);
  for (const [along, offset] of points) {
    const from = Math.hypot(along - hole.along, offset - hole.offset);
    if (from > reach * (1 + ROUNDING)) continue;
    // the layout error may bring the axis so much nearer
    const lead = leadAt(bit, hole.diameter, Math.max(0, from - tolerance.layout));
    const thickness = profileValue(board.thickness, layout, along);
    const over = overChannel(design, along, offset) && lead !== undefined;
    const cut = over ? (board.channel?.depth ?? 0) : 0;
    found.removal = Math.max(found.removal, high(along, offset).greatest);
    found.least = Math.min(found.least, low(along, offset).least);
    found.thickness = Math.min(found.thickness, thickness);
    if (over) found.channelLead = Math.max(found.channelLead, lead);
    if (lead !== undefined) found.standing = Math.min(found.standing, thickness - cut - lead);
  }
  return found;
}

/** Where the crown less its tolerance meets zero: the floored crown bends there. */
function floors(design: Design, layout: Layout): number[] {
  const { crown = 0.15 } = design;
  if (typeof crown === "number") return [];
  const by = design.tolerance?.crown ?? 0.05;
  const knots = [0, ...bends(crown, layout), layout.length];
  return knots.slice(1).flatMap((to, i) => {
    const from = knots[i] ?? 0;
    const [a, b] = [from, to].map((s) => profileValue(crown, layout, s) - by);
    if (a === undefined || b === undefined || a === b) return [];
    return [from + ((to - from) * a) / (a - b)];
  });
}

/** The point of the channel nearest to the bit's axis. */
function nearestOfChannel(design: Design, hole: Hole): [number, number] | undefined {
  const { channel, length } = design.board;
  if (channel === undefined) return undefined;
  const { from = 0, to = length, width } = channel;
  const along = Math.min(to, Math.max(from, hole.along));
  return [along, Math.min(width / 2, Math.max(-width / 2, hole.offset))];
}

function overChannel({ board }: Design, along: number, offset: number): boolean {
  const { channel, length } = board;
  if (channel === undefined) return false;
  const { from = 0, to = length, width } = channel;
  return from <= along && along <= to && Math.abs(offset) <= width / 2;
}

/**
 * How far the bit leads its rim at a distance from its axis: a twist bit's cone tapers, the point of a
 * Forstner or brad-point bit stands on the axis alone, an end mill leads by nothing. Undefined beyond its rim.
 */
function leadAt(bit: Bit, diameter: number, distance: number): number | undefined {
  if (!(distance < diameter / 2)) return undefined;
  if (bit.kind === "end-mill") return 0;
  if (bit.kind !== "twist") return distance === 0 ? bit.point : 0;
  return (diameter / 2 - distance) / Math.tan((((bit.angle ?? 118) / 2) * Math.PI) / 180);
}

/** The two sides of the window that follow, with each rule's own limit. */
function windowFrom(design: Design, bit: Bit, fill: Fill, hole: Hole, worst: Sampled) {
  const { stop, thickness } = design.tolerance as Stated;
  const under = worst.thickness - thickness - stop - (design.web ?? 1);
  const lead = leadAt(bit, hole.diameter, 0) ?? 0;
  const deep = design.board.channel?.depth ?? 0;
  const channel = worst.channelLead === -Infinity ? Infinity : under - deep - worst.channelLead;
  const flush = fill.kind === "solid" ? fill.thickness + worst.least - stop : Infinity;
  return {
    min: worst.removal + (fill.keep ?? 0) + stop,
    limits: { web: under - lead, channel, flush },
  };
}

/** A hole's own group: the one whose frets and diameter it has. */
function groupsOf(design: Design, hole: Hole) {
  return design.markers.filter(
    (group) =>
      group.frets.includes(hole.fret) &&
      group.diameter === hole.diameter &&
      (group.arrangement === "double") === (hole.side !== "centre"),
  );
}

/** Every hole of a design with its bit and fill; a hole that could be of either of two groups is left out. */
function* holesOf(design: Design): Generator<{ hole: Hole; bit: Bit; fill: Fill }> {
  for (const hole of checkDesign(design).holes) {
    const groups = groupsOf(design, hole);
    const [group] = groups;
    const bit = group?.bit ?? design.bit;
    const fill = group?.fill ?? design.fill;
    if (groups.length !== 1 || bit === undefined || fill === undefined) continue;
    yield { hole, bit, fill };
  }
}

/** Runs over every hole of many necks. */
function eachHole(necks: fc.Arbitrary<Drawn>, judge: Judge): void {
  fc.assert(
    fc.property(necks, ({ design, layout }) => {
      const stated = spelledOut(design);
      for (const { hole, bit, fill } of holesOf(stated)) {
        const worst = sampled(stated, layout, hole, bit);
        judge({ hole, worst, design: stated, ...windowFrom(stated, bit, fill, hole, worst) });
      }
    }),
  );
}

type Judge = (
  seen: ReturnType<typeof windowFrom> & {
    readonly hole: Hole;
    readonly worst: Sampled;
    readonly design: Design;
  },
) => void;

/** Counts what the cases exercised. */
function counter() {
  const counts = new Map<string, number>();
  return {
    add: (what: string) => counts.set(what, (counts.get(what) ?? 0) + 1),
    of: (what: string) => counts.get(what) ?? 0,
  };
}

/** Never below nothing, but for rounding, and within reach of it. */
function closeAbove(gap: number, what: string): void {
  expect(gap, what).toBeGreaterThanOrEqual(-ROUNDING);
  expect(gap, what).toBeLessThanOrEqual(NEAR);
}

const BOARDS = [
  ["ordinary boards", ordinaryNeck, 100],
  ["ordinary boards at the ends of their ranges", pushedNeck, 100],
] as const;

describe.each(BOARDS)("%s", (_, necks, often) => {
  it("min is never below the greatest removal sampled, and close to it", () => {
    const cases = counter();
    eachHole(necks, ({ hole, min, worst, design }) => {
      cases.add("hole");
      if (typeof design.radius !== "number") cases.add("compound");
      if (typeof design.crown !== "number") cases.add("crown");
      closeAbove(hole.window.min - min, "min");
      if (hole.planned === undefined) return;
      cases.add("planned");
      const left = hole.planned.depth - (design.tolerance?.stop ?? 0) - worst.removal;
      closeAbove(left - hole.planned.left, "left");
    });
    for (const what of ["hole", "compound", "crown", "planned"]) {
      expect(cases.of(what), what).toBeGreaterThan(3 * often);
    }
  });

  it("max is never above the least limit sampled, close to it, and names its rule", () => {
    const cases = counter();
    eachHole(necks, ({ hole, limits, design }) => {
      const { max, maxBy } = hole.window;
      const least = Math.min(limits.web, limits.channel, limits.flush);
      closeAbove(least - max, "max");
      expect(limits[maxBy] - least).toBeLessThanOrEqual(NEAR);
      cases.add(maxBy);
      if (hole.planned === undefined) return;
      const wood = Math.min(limits.web, limits.channel) + (design.web ?? 0);
      closeAbove(wood - hole.planned.depth - hole.planned.web, "web");
    });
    for (const rule of ["web", "channel", "flush"]) {
      expect(cases.of(rule), rule).toBeGreaterThan(often);
    }
  });

  it("knots, and ends of the rod channel, fell inside discs", () => {
    const cases = counter();
    fc.assert(
      fc.property(necks, ({ design, layout }) => {
        const stated = spelledOut(design);
        for (const hole of checkDesign(design).holes) insideDisc(stated, layout, hole, cases.add);
      }),
    );
    for (const what of ["radius", "crown", "thickness", "from", "to"]) {
      expect(cases.of(what), what).toBeGreaterThan(10);
    }
  });
});

/** Adds what bends or ends inside a hole's disc. */
function insideDisc(design: Design, layout: Layout, hole: Hole, add: (what: string) => void): void {
  const reach = hole.diameter / 2 + (design.tolerance?.layout ?? 0);
  const { radius, crown = 0.15, board } = design;
  const places = {
    radius: bends(radius, layout),
    crown: bends(crown, layout),
    thickness: bends(board.thickness, layout),
    from: board.channel?.from === undefined ? [] : [board.channel.from],
    to: board.channel?.to === undefined ? [] : [board.channel.to],
  };
  for (const [what, at] of Object.entries(places)) {
    if (at.some((s) => Math.abs(s - hole.along) < reach)) add(what);
  }
}

describe("odd boards", () => {
  it("min and max are on the safe side, however odd the board", () => {
    const cases = counter();
    eachHole(oddNeck, ({ hole, min, limits }) => {
      const { max, maxBy } = hole.window;
      const least = Math.min(limits.web, limits.channel, limits.flush);
      expect(hole.window.min - min).toBeGreaterThanOrEqual(-ROUNDING);
      expect(least - max).toBeGreaterThanOrEqual(-ROUNDING);
      cases.add(maxBy);
    });
    for (const rule of ["web", "channel", "flush"]) expect(cases.of(rule)).toBeGreaterThan(20);
  });

  it("no bit goes nearer than web to the underside or the channel, taken point by point", () => {
    const cases = counter();
    eachHole(fc.oneof(ordinaryNeck, oddNeck), ({ hole, worst, design }) => {
      cases.add("hole");
      const { stop, thickness } = design.tolerance as Stated;
      const left = worst.standing - thickness - stop - hole.window.max;
      expect(left - (design.web ?? 0)).toBeGreaterThanOrEqual(-ROUNDING);
    });
    expect(cases.of("hole")).toBeGreaterThan(1000);
  });
});
