/** How a report must answer when one thing in the design changes. */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import {
  checkDesign,
  type Design,
  type Fill,
  type MarkerGroup,
  type Profile,
  type Report,
} from "../../src/index.js";
import { anyNeck, between, ordinaryNeck, plain, spelledOut, tried } from "./designs.js";
import { profileValue, stationsOf } from "./oracle.js";

/** What "never" allows: a bound over a disc may lie on the safe side of the extreme by some 1e-9 of its radius. */
const SLACK = 1e-9;

type Judge = (before: Report, after: Report) => void;

/** Draws designs, changes one thing by a drawn amount and judges both reports; counts the pairs judged. */
function compare(
  by: fc.Arbitrary<number>,
  change: (design: Design, by: number) => Design,
  judge: Judge,
): number {
  let compared = 0;
  fc.assert(
    fc.property(anyNeck, by, ({ design }, amount) => {
      const after = tried(change(design, amount));
      // a change may carry an odd design beyond what can be built; counted below
      if (after === undefined) return;
      compared++;
      judge(checkDesign(design), after);
    }),
  );
  return compared;
}

/** The windows of both reports, hole by hole. */
function eachWindow(before: Report, after: Report, judge: (a: Wide, b: Wide) => void): void {
  expect(after.holes.length).toBe(before.holes.length);
  before.holes.forEach((hole, i) => {
    const other = after.holes[i];
    if (other === undefined) throw new Error("a hole was lost");
    judge(hole.window, other.window);
  });
}

interface Wide {
  readonly min: number;
  readonly max: number;
}

/** `a` is not above `b`, but for a bound's own slack. */
function notAbove(a: number, b: number): void {
  expect(a - b).toBeLessThanOrEqual(SLACK * Math.max(1, Math.abs(b)));
}

/** A profile with something done to each value. */
function mapped(profile: Profile, change: (value: number) => number): Profile {
  if (typeof profile === "number") return change(profile);
  return Object.fromEntries(stationsOf(profile).map(([at, value]) => [at, change(value)]));
}

describe("monotone", () => {
  it("a marker moved outward never has a lower min", () => {
    const spreads = fc.tuple(between(0.5, 40), between(0, 20));
    let compared = 0;
    fc.assert(
      fc.property(anyNeck, spreads, ({ design }, [spread, more]) => {
        const at = (width: number): Design => ({
          ...design,
          markers: design.markers.map((group) => doubled(group, width)),
        });
        const [inner, outer] = [tried(at(spread)), tried(at(spread + more))];
        if (inner === undefined || outer === undefined) return;
        compared++;
        eachWindow(inner, outer, (a, b) => notAbove(a.min, b.min));
      }),
    );
    expect(compared).toBeGreaterThan(150);
  });

  it("a flatter radius, by a factor on the whole profile, never has a higher min", () => {
    const compared = compare(
      fc.double({ min: 1, max: 10, noNaN: true }),
      (design, factor) => ({ ...design, radius: mapped(design.radius, (R) => R * factor) }),
      (before, after) => eachWindow(before, after, (a, b) => notAbove(b.min, a.min)),
    );
    expect(compared).toBeGreaterThan(290);
  });

  it("a greater constant radius never has a higher min, and flat has the least", () => {
    const radii = fc.tuple(between(100, 600), fc.oneof(between(0, 400), fc.constant(Infinity)));
    let compared = 0;
    fc.assert(
      fc.property(anyNeck, radii, ({ design }, [radius, more]) => {
        const [less, flatter] = [
          tried({ ...design, radius }),
          tried({ ...design, radius: radius + more }),
        ];
        if (less === undefined || flatter === undefined) return;
        compared++;
        eachWindow(less, flatter, (a, b) => notAbove(b.min, a.min));
      }),
    );
    expect(compared).toBeGreaterThan(290);
  });

  it("a thicker board never has a lower max", () => {
    const compared = compare(
      between(0, 5),
      ({ board, ...design }, by) => {
        const thickness = mapped(board.thickness, (t) => t + by);
        return { ...design, board: { ...board, thickness } };
      },
      (before, after) => eachWindow(before, after, (a, b) => notAbove(a.max, b.max)),
    );
    expect(compared).toBeGreaterThan(290);
  });

  it.each(["width", "depth"] as const)("a channel of more %s never has a higher max", (name) => {
    let channels = 0;
    compare(
      between(0, 5),
      ({ board, ...design }, by) => {
        const { channel } = board;
        if (channel === undefined) return { ...design, board };
        channels++;
        return {
          ...design,
          board: { ...board, channel: { ...channel, [name]: channel[name] + by } },
        };
      },
      (before, after) => eachWindow(before, after, (a, b) => notAbove(b.max, a.max)),
    );
    expect(channels).toBeGreaterThan(90);
  });

  it("more to keep raises min by as much, more web never raises max", () => {
    fc.assert(
      fc.property(anyNeck, between(0, 2), ({ design }, more) => {
        const stated = spelledOut(design);
        const keeping = checkDesign({
          ...stated,
          fill: keepMore(stated.fill, more),
          markers: stated.markers.map((g) => (g.fill ? { ...g, fill: keepMore(g.fill, more) } : g)),
          web: (stated.web ?? 0) + more,
        });
        eachWindow(checkDesign(design), keeping, (a, b) => {
          expect(b.min - a.min).toBeCloseTo(more, 9);
          notAbove(b.max, a.max);
        });
      }),
    );
  });

  const TOLERANCES = ["stop", "layout", "thickness", "crown", "radius"] as const;
  it.each(TOLERANCES)("a greater tolerance of %s only narrows a window", (name) => {
    const compared = compare(
      between(0, name === "radius" ? 0.2 : 2),
      (design, by) => {
        const { tolerance } = spelledOut(design);
        return { ...design, tolerance: { ...tolerance, [name]: (tolerance?.[name] ?? 0) + by } };
      },
      (before, after) =>
        eachWindow(before, after, (a, b) => {
          notAbove(a.min, b.min);
          notAbove(b.max, a.max);
        }),
    );
    expect(compared).toBeGreaterThan(200);
  });
});

/** The group as a double of a given spread. */
function doubled(group: MarkerGroup, spread: number): MarkerGroup {
  return { ...group, arrangement: "double", spread };
}

function keepMore(fill: Fill | undefined, more: number): Fill {
  const stated = fill ?? { kind: "poured" };
  return { ...stated, keep: (stated.keep ?? 0) + more };
}

describe("symmetry", () => {
  it("bass and treble dots have the same window, removal and place but for the side", () => {
    let pairs = 0;
    fc.assert(
      fc.property(anyNeck, ({ design }) => {
        const { holes } = checkDesign(design);
        const bass = holes.filter(({ side }) => side === "bass");
        const treble = holes.filter(({ side }) => side === "treble");
        expect(treble.length).toBe(bass.length);
        pairs += bass.length;
        const mirrored = bass.map((hole) => ({ ...hole, side: "treble", offset: -hole.offset }));
        expect(sorted(mirrored)).toEqual(sorted(treble));
      }),
    );
    expect(pairs).toBeGreaterThan(300);
  });

  it("a hole tells the profiles where it stands", () => {
    fc.assert(
      fc.property(anyNeck, ({ design, layout }) => {
        const { radius, crown = 0.15, board } = design;
        for (const hole of checkDesign(design).holes) {
          const at = (profile: Profile) => profileValue(profile, layout, hole.along);
          expect(hole.radius / at(radius)).toBeCloseTo(1, 9);
          expect(hole.crown).toBeCloseTo(at(crown), 9);
          expect(hole.blank).toBeCloseTo(at(board.thickness), 9);
          expect(hole.halfWidth).toBeCloseTo(at(board.width) / 2, 9);
        }
      }),
    );
  });

  it("a hole's removal rises outward and starts at the crown in the middle", () => {
    fc.assert(
      fc.property(anyNeck, ({ design, layout }) => {
        const crown = design.crown ?? 0.15;
        for (const { removal, offset, along } of checkDesign(design).holes) {
          expect(removal.inner).toBeLessThanOrEqual(removal.centre);
          expect(removal.centre).toBeLessThanOrEqual(removal.outer);
          if (offset !== 0) continue;
          expect(removal.centre).toBeCloseTo(profileValue(crown, layout, along), 9);
        }
      }),
    );
  });
});

function sorted(holes: readonly object[]): string[] {
  return holes.map((hole) => JSON.stringify(hole)).sort();
}

describe("degenerate profiles", () => {
  const ends = fc.constantFrom(
    ["nut", "end"],
    ["nut", "fret1"],
    ["fret1", "fret2", "end"],
    ["end"],
  );

  it("a cone with equal ends is the cylinder, bit for bit", () => {
    const even = (value: number | undefined, at: readonly string[]): Profile =>
      Object.fromEntries(at.map((station) => [station, value ?? 1]));
    const values = fc.record({
      radius: fc.oneof(between(100, 900), fc.constant(Infinity)),
      thickness: between(1, 9),
      crown: between(0, 2),
    });
    fc.assert(
      fc.property(ordinaryNeck, values, ends, ({ design }, { radius, thickness, crown }, at) => {
        const level = { ...design, radius, crown, board: { ...design.board, thickness } };
        const coned = {
          ...design,
          radius: even(radius, at),
          crown: even(crown, at),
          board: { ...design.board, thickness: even(thickness, at) },
        };
        expect(plain(checkDesign(coned))).toEqual(plain(checkDesign(level)));
      }),
    );
  });

  it("a station on a straight piece changes nothing but the rounding", () => {
    const share = between(0, 1);
    let holes = 0;
    fc.assert(
      fc.property(ordinaryNeck, share, share, ({ design, layout }, a, b) => {
        const radius = { nut: 180 + 100 * a, end: 180 + 100 * b };
        const crown = { nut: a, end: b };
        const middle = (profile: Profile) =>
          profileValue(profile, layout, layout.positions[0] ?? 0);
        const plain = checkDesign({ ...design, radius, crown });
        const knotted = checkDesign({
          ...design,
          radius: { ...radius, fret1: middle(radius) },
          crown: { ...crown, fret1: middle(crown) },
        });
        eachWindow(plain, knotted, (w, v) => {
          holes++;
          expect(Math.abs(w.min - v.min)).toBeLessThanOrEqual(0.001);
          expect(Math.abs(w.max - v.max)).toBeLessThanOrEqual(0.001);
        });
      }),
    );
    expect(holes).toBeGreaterThan(300);
  });
});

describe("scale", () => {
  it("every length × 2^k scales every answer exactly", () => {
    const power = fc.integer({ min: -20, max: 20 });
    fc.assert(
      fc.property(anyNeck, power, ({ design }, k) => {
        const stated = spelledOut(design);
        const f = 2 ** k;
        const [scaled, report] = [checkDesign(lengthsTimes(stated, f)), checkDesign(stated)];
        expect(comparable(scaled)).toEqual(lengthsTimes(comparable(report), f));
        expect(scaled.pour?.volume).toBe(report.pour && report.pour.volume * f ** 3);
      }),
    );
  });

  it("every length × 10^k scales every answer, to 1e-9", () => {
    const power = fc.integer({ min: -6, max: 6 });
    let compared = 0;
    fc.assert(
      fc.property(anyNeck, power, ({ design }, k) => {
        // where a hole nearly reaches the surface's upright end, a rounding of R moves the drop without limit
        const rounder = { ...design, radius: mapped(design.radius, (R) => R * 0.9) };
        if (tried(rounder) === undefined) return;
        compared++;
        // a step of the stop decides by rounding, and so may jump
        const { stopStep, ...stated } = offGrid(spelledOut(design));
        const f = 10 ** k;
        const scaled = comparable(checkDesign(lengthsTimes(stated, f)));
        const expected = lengthsTimes(comparable(checkDesign(stated)), f);
        expectNear(scaled, expected, 10 * f, "report");
      }),
    );
    expect(compared).toBeGreaterThan(250);
  });
});

/** Sizes that meet no limit to the last digit, where rounding alone would decide. */
function offGrid({ board, ...design }: Design): Design {
  const { depth, slot, sideDots, fill, web = 1 } = design;
  const { channel } = board;
  return {
    ...design,
    board: channel
      ? { ...board, channel: { ...channel, depth: channel.depth * 1.00089012 } }
      : board,
    markers: design.markers.map(offGridGroup),
    web: web * 1.00078901,
    ...(fill ? { fill: offGridFill(fill) } : {}),
    ...(depth === undefined ? {} : { depth: depth * 1.00023456 }),
    ...(slot ? { slot: { ...slot, depth: slot.depth * 1.00045678 } } : {}),
    ...(sideDots ? { sideDots: { ...sideDots, diameter: sideDots.diameter * 1.00056789 } } : {}),
  };
}

function offGridGroup(group: MarkerGroup): MarkerGroup {
  if (group.diameter === undefined) return group;
  const { depth, spread, fill } = group;
  return {
    ...group,
    diameter: group.diameter * 1.00067891,
    ...(fill ? { fill: offGridFill(fill) } : {}),
    ...(depth === undefined ? {} : { depth: depth * 1.00012345 }),
    ...(spread === undefined ? {} : { spread: spread * 1.00034567 }),
  };
}

function offGridFill(fill: Fill): Fill {
  return fill.kind === "solid" ? { ...fill, thickness: fill.thickness * 1.00090123 } : fill;
}

/** Numbers that are no length, by the names they go by: counts, indices, angles and shares. */
const NO_LENGTHS = new Set(
  "fret frets hole holes minHole maxHole leastAt mostAt angle slope waste ratio tolerance.radius".split(
    " ",
  ),
);
const SEVERAL = new Set(["several-settings", "several-travels"]);

/** A copy in which every length is multiplied; lists of holes with fields of their own are entered. */
function lengthsTimes<Value>(value: Value, f: number): Value {
  return times(value, f, "", "") as Value;
}

function times(value: unknown, f: number, key: string, parent: string): unknown {
  if (typeof value === "number") {
    const fixed = NO_LENGTHS.has(key) || NO_LENGTHS.has(`${parent}.${key}`);
    return fixed ? value : value * f;
  }
  if (Array.isArray(value)) return value.map((item) => times(item, f, key, parent));
  if (typeof value !== "object" || value === null) return value;
  const counted = "code" in value && SEVERAL.has(String(value.code));
  const entries = Object.entries(value).map(([name, field]) => {
    const count = counted && (name === "value" || name === "limit");
    return [name, count ? field : times(field, f, name, key)];
  });
  return Object.fromEntries(entries);
}

/** What scales: not the findings held against a fixed 0.5 mm. */
function comparable(report: Report) {
  const { holes, edges, stops, slots, ok, findings } = plain(report);
  return { holes, edges, stops, slots, ok, findings: findings.filter(isScaled) };
}

function isScaled({ code }: { readonly code: string }): boolean {
  return code !== "near-slot";
}

/** Deep likeness: numbers to 1e-9 of themselves, or of the size of a board where they nearly cancel. */
function expectNear(a: unknown, b: unknown, size: number, path: string): void {
  if (typeof a === "number" && typeof b === "number") {
    const off = a === b ? 0 : Math.abs(a - b) / Math.max(Math.abs(b), size);
    expect(off, path).toBeLessThanOrEqual(1e-9);
    return;
  }
  if (typeof a !== "object" || a === null || typeof b !== "object" || b === null) {
    expect(a, path).toBe(b);
    return;
  }
  expect(Object.keys(a), path).toEqual(Object.keys(b));
  const other = new Map(Object.entries(b));
  for (const [key, value] of Object.entries(a)) {
    expectNear(value, other.get(key), size, `${path}.${key}`);
  }
}

describe("defaults", () => {
  it("a design with every default written out has the same report, and assumes nothing", () => {
    fc.assert(
      fc.property(anyNeck, ({ design }) => {
        const { assumed, ...report } = plain(checkDesign(design));
        const { assumed: none, ...stated } = plain(checkDesign(spelledOut(design)));
        expect(stated).toEqual(report);
        expect(none).toEqual({});
        expect(assumed).toEqual(defaultsOf(design));
      }),
    );
  });

  it("each default is left out and stated often", () => {
    const seen = new Map<string, number>();
    fc.assert(
      fc.property(anyNeck, ({ design }) => {
        for (const path of Object.keys(checkDesign(design).assumed)) {
          const name = path.replace(/\d+/g, "N");
          seen.set(name, (seen.get(name) ?? 0) + 1);
        }
      }),
    );
    const rare = EXPECTED_PATHS.filter((path) => !((seen.get(path) ?? 0) > 2));
    expect(rare).toEqual([]);
  });
});

const EXPECTED_PATHS = [
  "web",
  "crown",
  "tolerance.stop",
  "tolerance.layout",
  "tolerance.thickness",
  "tolerance.crown",
  "tolerance.radius",
  "fill.keep",
  "bit.point",
  "bit.angle",
  "markers.N.fill.keep",
  "markers.N.bit.angle",
  "board.channel.from",
  "board.channel.to",
  "slot.clearance",
  "slot.web",
  "sideDots.margin",
  "sideDots.depth",
  "pour.waste",
  "pour.ratio.N",
];

/** The defaults that a design calls for, by its paths: common practice, no source. */
function defaultsOf(design: Design): Record<string, number> {
  const assumed: Record<string, number> = {};
  const unless = (stated: unknown, path: string, value: number) => {
    if (stated === undefined) assumed[path] = value;
  };
  unless(design.web, "web", 1);
  unless(design.crown, "crown", 0.15);
  unless(design.tolerance?.stop, "tolerance.stop", 0.1);
  unless(design.tolerance?.layout, "tolerance.layout", 0.25);
  unless(design.tolerance?.thickness, "tolerance.thickness", 0.1);
  unless(design.tolerance?.crown, "tolerance.crown", 0.05);
  unless(design.tolerance?.radius, "tolerance.radius", 0);
  partDefaults(design, unless);
  fillDefaults(design, unless);
  bitDefaults(design, unless);
  return assumed;
}

type Unless = (stated: unknown, path: string, value: number) => void;

function partDefaults({ board, slot, sideDots }: Design, unless: Unless): void {
  if (board.channel) {
    unless(board.channel.from, "board.channel.from", 0);
    unless(board.channel.to, "board.channel.to", board.length);
  }
  if (slot) {
    unless(slot.clearance, "slot.clearance", 0.2);
    unless(slot.web, "slot.web", 1.5);
  }
  if (sideDots) {
    unless(sideDots.margin, "sideDots.margin", 0.5);
    unless(sideDots.depth, "sideDots.depth", 3);
  }
}

/** The keep of every fill that a group uses, and the pour where one is poured. */
function fillDefaults({ fill, markers, pour }: Design, unless: Unless): void {
  const keepOf = (used: Fill | undefined) => (used?.kind === "solid" ? 0.5 : 0.8);
  markers.forEach((group, i) => {
    if (group.fill) unless(group.fill.keep, `markers.${i}.fill.keep`, keepOf(group.fill));
    else unless(fill?.keep, "fill.keep", keepOf(fill));
  });
  const poured = markers.some((group) => (group.fill ?? fill)?.kind !== "solid");
  if (!poured) return;
  unless(pour?.waste, "pour.waste", 0.5);
  unless(pour?.ratio, "pour.ratio.0", 1);
  unless(pour?.ratio, "pour.ratio.1", 1);
}

/** The point or angle of every bit that a group uses. */
function bitDefaults({ bit, markers }: Design, unless: Unless): void {
  markers.forEach((group, i) => {
    const used = group.bit ?? bit;
    const path = group.bit ? `markers.${i}.bit` : "bit";
    if (used === undefined) unless(undefined, "bit.point", 1);
    if (used?.kind === "twist") unless(used.angle, `${path}.angle`, 118);
  });
}
