/** A misdrilled hole drilled again. An off-centre hole is filled and drilled again with the next larger bit: common practice, no source. */
import { describe, expect, test } from "vitest";
import {
  checkDesign,
  type Design,
  HALF_MILLIMETRES,
  type Repair,
  repairHole,
  SIXTEENTHS,
  WHOLE_MILLIMETRES,
} from "../../src/index.js";
import { pathsOf } from "./issues.js";
import { FLAT, PLAIN, SQUARED } from "./necks.js";

const codesOf = ({ ruledOut }: Repair) =>
  ruledOut.map(({ diameter, findings }) => [diameter, ...findings.map((f) => f.code)].join(" "));
const dots = (group: object, design = SQUARED) =>
  ({ ...design, markers: [{ frets: [2], diameter: 8, ...group }] }) as Design;
const PAIR = { arrangement: "double", spread: 20 };

test("racks: sixteenths of an inch, whole and half millimetres", () => {
  // 1/4 in = 6.35 mm, 1 in = 25.4 mm exactly (NIST SP 811, memory)
  const off = SIXTEENTHS.map((bit, i) => bit - 1.5875 * (i + 2));
  expect(off).toEqual(Array(11).fill(expect.closeTo(0, 12)));
  expect(WHOLE_MILLIMETRES.slice(0, 3)).toEqual([2, 3, 4]);
  expect(HALF_MILLIMETRES.slice(0, 3)).toEqual([2, 2.5, 3]);
});

describe("the next bit", () => {
  test("swallows the old hole: D + 2 · (error + layout error)", () => {
    const repair = repairHole(FLAT, { fret: 5, error: 0.3 }, [8, 7, 7.2, 6]);
    expect(repair.least).toBeCloseTo(6 + 2 * (0.3 + 0.25), 12);
    expect(repair.diameter).toBe(7.2);
    expect(codesOf(repair)).toEqual(["6", "7"]);
    expect(repair.hole).toEqual(checkDesign(FLAT).holes[0]);
    // a bit of just that size does
    expect(repairHole(dots({}), { fret: 2, error: 0.5 }, [9]).diameter).toBe(9);
    expect(repairHole(dots({}), { fret: 2, error: 0.501 }, [9])).toMatchObject({
      diameter: null,
      report: null,
    });
  });

  test("the report has the new hole at the depth in use, and the others as they were", () => {
    const before = checkDesign(PLAIN);
    const { report } = repairHole(PLAIN, { fret: 5, error: 0.3 }, [8]);
    const depth = before.holes[1]?.recommended?.depth;
    expect(report?.holes[1]).toMatchObject({ fret: 5, diameter: 8, planned: { depth } });
    expect([report?.holes[0], report?.ok]).toEqual([before.holes[0], true]);
  });

  test("of a pair both are drilled alike, across the board and along it; another group at the fret is not", () => {
    const other = { places: [{ along: 48, offset: 28 }], diameter: 4 };
    for (const arrangement of ["double", "lengthwise"]) {
      const design = dots({ ...PAIR, arrangement });
      const [, second] = checkDesign(design).holes;
      const hole = { path: second?.path as string, error: 0.5 };
      const markers = [...design.markers, other];
      const { report } = repairHole({ ...design, markers }, hole, [9]);
      expect(report?.holes.map(({ diameter }) => diameter)).toEqual(
        arrangement === "double" ? [9, 9, 4] : [9, 4, 9],
      );
    }
  });

  test("a hole is known by its path, or by its fret and side where that tells it", () => {
    const markers = [
      { frets: [2, 3], diameter: 8, ...PAIR },
      { places: [{ along: 40, offset: 28 }], diameter: 4 },
    ] as Design["markers"];
    const found = (hole: object) =>
      repairHole({ ...SQUARED, markers }, { ...hole, error: 0 } as never, [20]).hole.path;
    expect(found({ path: "markers.0.frets.1.treble" })).toBe("markers.0.frets.1.treble");
    expect(found({ fret: 2, side: "bass" })).toBe("markers.0.frets.0.bass");
    const refused = (hole: object) => pathsOf(() => found(hole));
    expect(refused({ fret: 2 })).toEqual(["hole.path"]);
    expect(refused({ fret: 3 })).toEqual(["hole.side"]);
    expect(refused({ fret: 2, side: "treble" })).toEqual(["hole.path"]);
    expect(refused({ fret: 3, side: "centre" })).toEqual(["hole"]);
    expect(refused({ path: "markers.0.frets.2.treble" })).toEqual(["hole"]);
  });

  test("what is wrong elsewhere does not rule a bit out", () => {
    const markers = [
      { frets: [2], diameter: 8, arrangement: "double", spread: 7 } as const,
      { frets: [5], diameter: 6 },
    ];
    const design = { ...FLAT, markers, slot: { depth: 1, tang: 1.7 } };
    const repair = repairHole(design, { fret: 5, error: 0 }, [7]);
    expect([repair.diameter, repair.report?.ok]).toEqual([7, false]);
  });
});

describe("what rules a bit out", () => {
  test("the depth in use is not in its window: a cone of 90° is as long as its radius", () => {
    // 8 less a web of 1 and 4.5 are 2.5 for a bit of 9
    const twist = dots({}, { ...SQUARED, bit: { kind: "twist", angle: 90 }, depth: 2.499 });
    expect(repairHole(twist, { fret: 2, error: 0 }, [9]).diameter).toBe(9);
    const next = repairHole(twist, { fret: 2, error: 0.6 }, [9, 9.5]);
    expect(codesOf(next)).toEqual(["9", "9.5 below-web"]);
    expect(next.ruledOut[1]?.why).toEqual(next.ruledOut[1]?.findings.map(({ message }) => message));
  });

  test("a slot too near, the board's edge, the other dot of the pair, which grows as well", () => {
    const codes = (group: object, bit: number) => {
      const [hole] = checkDesign(dots(group)).holes;
      return codesOf(repairHole(dots(group), { path: hole?.path as string, error: 0.5 }, [bit]))[0];
    };
    const near = [31, 31.5, 33].map((bit) => codes({}, bit));
    expect(near).toEqual([undefined, "31.5 near-slot", "33 cuts-slot"]);
    expect(codes({ ...PAIR, spread: 55 }, 10)).toBe("10 past-edge past-edge");
    const close = [9, 10].map((bit) => codes({ ...PAIR, spread: 9.5 }, bit));
    expect(close).toEqual([undefined, "10 dots-overlap"]);
  });

  test("the surface ends before the bit does", () => {
    const round = { ...SQUARED, radius: 32.5, board: { ...SQUARED.board, thickness: 99 } };
    const steep = dots({ ...PAIR, spread: 56 }, round);
    const { ruledOut } = repairHole(steep, { fret: 2, side: "bass", error: 0.5 }, [9.5]);
    expect(ruledOut[0]?.findings).toEqual([]);
    expect(ruledOut[0]?.why).toEqual([expect.stringMatching(/surface does not reach/)]);
  });
});

test.each<[string, object]>([
  ["hole", { fret: 4 }],
  ["hole.fret", { fret: 24 }],
  ["hole.fret", { fret: undefined }],
  ["hole.path", { fret: undefined, path: 7 }],
  ["hole.error", { error: -0.3 }],
  ["hole.error", { error: Number.NaN }],
  ["hole.error", { error: undefined }],
  ["hole.side", { side: "base" }],
  ["hole.bit", { bit: 7 }],
])("refused: %s of %j", (path, change) => {
  const hole = { fret: 5, error: 0.3, ...change } as never;
  expect(pathsOf(() => repairHole(PLAIN, hole, [7]))).toEqual([path]);
});

test("refused: no hole, a pocket, racks of nothing, of too much, of no kind; a hole and a rack at once", () => {
  const hole = { fret: 5, error: 0.3 };
  const refused = (rack: unknown, change: object | null = hole, design = PLAIN) =>
    pathsOf(() => repairHole(design, change as never, rack as never)).join(" ");
  const pocket = dots({ diameter: undefined, shape: { kind: "rectangle", length: 6, width: 6 } });
  expect([refused([7], null), refused([7], { fret: 2, error: 0 }, pocket)]).toEqual([
    "hole",
    "hole",
  ]);
  expect([[], 7, Array(1001).fill(7), [7, -1]].map((rack) => refused(rack))).toEqual([
    "rack",
    "rack",
    "rack",
    "rack.1",
  ]);
  expect(refused([7, -1], { fret: 4, error: 0.4 })).toBe("rack.1 hole");
});
