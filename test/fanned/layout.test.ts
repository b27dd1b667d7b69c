/**
 * Where fanned frets and their markers lie, held against the design page and the crossing of lines by mathjs
 * `intersect`.
 */
import fc from "fast-check";
import { describe, expect, it } from "vitest";
import { checkDesign, type Design, fretLines, type Hole, type Report } from "../../src/index.js";
import { profileValue } from "../properties/oracle.js";
import { crossing, onCentre } from "./crossing.js";
import {
  counter,
  dots,
  fannedNeck,
  fromLine,
  groupOf,
  linesOf,
  pockets,
  quadrilateral,
  type Spot,
  share,
} from "./fan.js";

/** Lengths of several hundred mm, found by repetition to 1e-13 of the scale. */
const CLOSE = 1e-9;

const neck = fannedNeck({ bentEdges: true, markers: dots });
const pocketed = fannedNeck({
  bentEdges: true,
  markers: (frets) => fc.oneof(dots(frets), pockets(frets)),
});

function fanOf({ scale }: Design) {
  if (!("bass" in scale)) throw new Error("a fanned scale is drawn");
  return scale;
}

const RUNS = 150;

/** How near a bound comes to the true extreme, mm, by the design page. */
const NEAR = 0.01;

function near(found: number, wanted: number, what: string, by = CLOSE): void {
  if (!(Math.abs(found - wanted) <= by)) expect.fail(`${what}: ${found}, not ${wanted}`);
}

describe("the frets", () => {
  it("lie L(1 − 2^(−n/12)) from the nut along either edge, straight between, the nut on the centre line at 0", () => {
    const cases = counter();
    fc.assert(
      fc.property(neck, (design) => {
        const { bass, treble, frets } = fanOf(design);
        const fan = linesOf(design);
        const { lines } = fan;
        expect(lines).toHaveLength(frets + 1);
        lines.forEach((line, n) => {
          near(line.bass - (lines[0]?.bass ?? Number.NaN), bass * share(n), "along the bass edge");
          near(
            line.treble - (lines[0]?.treble ?? Number.NaN),
            treble * share(n),
            "along the treble edge",
          );
          const ends = fan.ends(n);
          near(onCentre(ends.bass, ends.treble)[0], line.along, "on the centre line");
          cases.add("line");
        });
        near(lines[0]?.along ?? Number.NaN, 0, "the nut", 0);
      }),
      { numRuns: RUNS },
    );
    expect(cases.of("line")).toBeGreaterThan(RUNS * 20);
  });

  it("the perpendicular one is square to the centre line, also between two frets", () => {
    const cases = counter();
    fc.assert(
      fc.property(neck, (design) => {
        const { bass, treble, perpendicular } = fanOf(design);
        const lines = fretLines(design);
        const [nut] = lines;
        if (nut === undefined) throw new Error("no nut");
        near(
          nut.bass + bass * share(perpendicular),
          nut.treble + treble * share(perpendicular),
          "square",
        );
        const fret = lines[perpendicular];
        cases.add(fret ? "fret" : "between");
        if (fret) for (const end of [fret.bass, fret.treble]) near(end, fret.along, "the fret");
        // those before it lean one way, those after it the other
        lines.forEach((line, n) => {
          const lean =
            (line.bass - line.treble) * Math.sign(bass - treble) * Math.sign(n - perpendicular);
          if (!(lean >= -CLOSE)) expect.fail(`fret ${n} leans the wrong way`);
        });
      }),
      { numRuns: RUNS },
    );
    expect(cases.of("fret")).toBeGreaterThan(30);
    expect(cases.of("between")).toBeGreaterThan(30);
  });

  it("one worked by hand: parallel edges, the nut perpendicular", () => {
    // edges 50 apart throughout: every fret crosses the centre line midway between its ends
    const lines = fretLines({
      scale: { bass: 700, treble: 640, perpendicular: 0, frets: 12 },
      board: { length: 380, width: 50, thickness: 6 },
      radius: 300,
      markers: [],
    });
    expect(lines[0]).toEqual({ along: 0, bass: 0, treble: 0 });
    near(lines[12]?.bass ?? 0, 350, "half of 700");
    near(lines[12]?.treble ?? 0, 320, "half of 640");
    near(lines[12]?.along ?? 0, 335, "midway");
  });

  it("edges stand in the report for either side, as far along as the fret lies there", () => {
    const cases = counter();
    fc.assert(
      fc.property(neck, (design) => {
        const { edges } = checkDesign(design);
        const { layout, lines } = linesOf(design);
        expect(edges).toHaveLength(2 * lines.length + 1);
        lines.forEach((line, n) => {
          const station = n === 0 ? "nut" : `fret${n}`;
          for (const side of ["bass", "treble"] as const) {
            const edge = edges.find((e) => e.station === station && e.side === side);
            near(edge?.along ?? Number.NaN, line[side], station);
            const width = profileValue(design.board.width, layout, line[side]);
            near(edge?.offset ?? Number.NaN, width / 2, "offset");
            const thickness = profileValue(design.board.thickness, layout, line[side]);
            near((edge?.thickness ?? 0) + (edge?.removal ?? 0), thickness, "thickness");
            cases.add("edge");
          }
        });
      }),
      { numRuns: 100 },
    );
    expect(cases.of("edge")).toBeGreaterThan(4000);
  });
});

describe("the markers", () => {
  it("lie at the crossing of the diagonals of the true quadrilateral, doubles in each half", () => {
    const cases = counter();
    fc.assert(
      fc.property(neck, (design) => {
        const fan = linesOf(design);
        for (const hole of checkDesign(design).holes) {
          const group = groupOf(design, hole);
          if (group === undefined || group.along === "midpoint" || group.spread !== undefined)
            continue;
          const [a, b, c, d] = quadrilateral(fan, hole.fret);
          const [from, to] = [onCentre(a, b), onCentre(d, c)];
          const [along, offset] = {
            centre: crossing(a, c, b, d),
            bass: crossing(a, to, from, d),
            treble: crossing(from, c, b, to),
          }[hole.side];
          near(hole.along, along, "along");
          near(hole.offset, offset, "offset");
          cases.add(hole.side);
        }
      }),
      { numRuns: RUNS },
    );
    for (const side of ["centre", "bass", "treble"]) expect(cases.of(side)).toBeGreaterThan(9);
  });

  it("at the midpoint: midway between both slots, and a double a quarter of the width from the centre line", () => {
    const cases = counter();
    fc.assert(
      fc.property(neck, (design) => {
        const fan = linesOf(design);
        for (const hole of checkDesign(design).holes) {
          const group = groupOf(design, hole);
          if (group?.along !== "midpoint" || group.spread !== undefined) continue;
          const [a, b, c, d] = quadrilateral(fan, hole.fret);
          const across = (offset: number) => {
            const [one, other] = [
              [0, offset],
              [1, offset],
            ] as const;
            return (crossing(a, b, one, other)[0] + crossing(d, c, one, other)[0]) / 2;
          };
          near(hole.along, across(hole.offset), "midway");
          const quarter = profileValue(design.board.width, fan.layout, across(0)) / 4;
          near(hole.offset, { bass: -quarter, centre: 0, treble: quarter }[hole.side], "offset");
          cases.add(hole.side);
        }
      }),
      { numRuns: RUNS },
    );
    for (const side of ["centre", "bass", "treble"]) expect(cases.of(side)).toBeGreaterThan(9);
  });

  it("a spread lies about the single marker's place, so far across, and leans as the slots beside it do", () => {
    const cases = counter();
    fc.assert(
      fc.property(neck, (design) => {
        const fan = linesOf(design);
        const { holes } = checkDesign(design);
        const single = checkDesign({ ...design, markers: design.markers.map(alone) }).holes;
        holes.forEach((bass, i) => {
          const group = groupOf(design, bass);
          const treble = holes[i + 1];
          if (group?.spread === undefined || bass.side !== "bass" || treble === undefined) return;
          const middle = single.find(({ fret }) => fret === bass.fret);
          if (single.filter(({ fret }) => fret === bass.fret).length !== 1) return;
          near(treble.offset - bass.offset, group.spread, "spread");
          near((treble.offset + bass.offset) / 2, middle?.offset ?? Number.NaN, "about its place");
          near((treble.along + bass.along) / 2, middle?.along ?? Number.NaN, "about its place");
          const [a, b, c, d] = quadrilateral(fan, bass.fret);
          const lean = (p: Spot, q: Spot) => (q[0] - p[0]) / (q[1] - p[1]);
          const leans = [lean(a, b), lean(d, c)];
          const found = (treble.along - bass.along) / group.spread;
          if (!(found >= Math.min(...leans) - CLOSE && found <= Math.max(...leans) + CLOSE)) {
            expect.fail(`lean ${found}, slots ${leans}`);
          }
          cases.add("pair");
        });
      }),
      { numRuns: RUNS },
    );
    expect(cases.of("pair")).toBeGreaterThan(30);
  });

  it("each lies between its slots", () => {
    const cases = counter();
    fc.assert(
      fc.property(neck, (design) => {
        const fan = linesOf(design);
        for (const hole of checkDesign(design).holes) {
          const [a, b, c, d] = quadrilateral(fan, hole.fret);
          const spot: Spot = [hole.along, hole.offset];
          expect(Math.min(fromLine(spot, b, a), fromLine(spot, d, c))).toBeGreaterThan(0);
          cases.add("hole");
        }
      }),
      { numRuns: RUNS },
    );
    expect(cases.of("hole")).toBeGreaterThan(500);
  });
});

/** The same group as singles. */
function alone(group: Design["markers"][number]): Design["markers"][number] {
  const { spread: _, arrangement: __, ...rest } = group;
  return rest;
}

/** What a report says, bass and treble exchanged. */
function mirrored({ holes, edges }: Report): Pick<Report, "holes" | "edges"> {
  const other = { bass: "treble", centre: "centre", treble: "bass" } as const;
  return {
    holes: holes.map((hole) => ({ ...hole, side: other[hole.side], offset: -hole.offset })),
    edges: edges.map((edge) => (edge.side ? { ...edge, side: other[edge.side] } : edge)),
  };
}

/** The same hole; its greatest depth is a bound found by repetition, within 0.01 mm of the true one. */
function twins(one: Hole, two: Hole): boolean {
  const exact = ({ outline: _, window: { min }, ...hole }: Hole) => ({ ...hole, min });
  return alike(exact(one), exact(two)) && alike(one.window.max, two.window.max, NEAR);
}

it("bass and treble lengths exchanged mirror the report", () => {
  const cases = counter();
  fc.assert(
    fc.property(pocketed, (design) => {
      const fan = fanOf(design);
      const swapped = { ...design, scale: { ...fan, bass: fan.treble, treble: fan.bass } };
      const [found, wanted] = [tried(swapped), tried(design)];
      if (found === undefined || wanted === undefined) {
        expect(found).toBe(wanted);
        return;
      }
      const turned = mirrored(found);
      for (const hole of wanted.holes) {
        const has = turned.holes.some((twin) => twins(twin, hole));
        if (!has) expect.fail(`no twin of ${JSON.stringify(hole)}`);
        cases.add(hole.side);
      }
      for (const edge of wanted.edges) {
        const twin = turned.edges.find((e) => e.station === edge.station && e.side === edge.side);
        if (!alike(twin, edge)) expect.fail(`no twin of ${JSON.stringify(edge)}`);
        cases.add("edge");
      }
      if (!alike(found.slots, wanted.slots)) expect.fail("slots");
      if (!alike(found.pour, wanted.pour, NEAR)) expect.fail("pour");
      const depths = [found, wanted].map(({ stops }) => stops.settings.map(({ depth }) => depth));
      if (!alike(depths[0], depths[1], NEAR)) expect.fail("settings");
      const codes = [found, wanted].map(({ findings }) => findings.map(({ code }) => code).sort());
      expect(codes[0]).toEqual(codes[1]);
    }),
    { numRuns: 150 },
  );
  for (const what of ["bass", "centre", "treble", "edge"])
    expect(cases.of(what)).toBeGreaterThan(100);
});

/** The report; undefined where the design is refused. */
function tried(design: Design): Report | undefined {
  try {
    return checkDesign(design);
  } catch {
    return undefined;
  }
}

/** Equal, but for what repetition and rounding leave. */
function alike(a: unknown, b: unknown, by = 1e-8): boolean {
  if (typeof a === "number" && typeof b === "number" && Number.isFinite(b)) {
    return Math.abs(a - b) <= by;
  }
  if (typeof a !== "object" || typeof b !== "object" || a === null || b === null) {
    return Object.is(a, b);
  }
  const [ones, others] = [new Map(Object.entries(a)), new Map(Object.entries(b))];
  return (
    ones.size === others.size &&
    [...others].every(([key, value]) => alike(ones.get(key), value, by))
  );
}
