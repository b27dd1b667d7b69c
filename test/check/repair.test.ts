import { describe, expect, test } from "vitest";
import {
  checkDesign,
  type Design,
  DesignError,
  HALF_MILLIMETRES,
  type Repair,
  repairHole,
  SIXTEENTHS,
  WHOLE_MILLIMETRES,
} from "../../src/index.js";
import { FLAT, PLAIN } from "./necks.js";

const codesOf = ({ ruledOut }: Repair) =>
  ruledOut.map(({ diameter, findings }) => [diameter, ...findings.map(({ code }) => code)]);

describe("racks", () => {
  // 1/4 in = 6.35 mm, 1 in = 25.4 mm exactly (NIST SP 811, memory)
  test("sixteenths of an inch, whole and half millimetres", () => {
    expect(SIXTEENTHS).toHaveLength(11);
    for (const [i, bit] of SIXTEENTHS.entries()) expect(bit).toBeCloseTo(1.5875 * (i + 2), 12);
    expect(SIXTEENTHS[2]).toBe(6.35);
    expect(WHOLE_MILLIMETRES.slice(0, 3)).toEqual([2, 3, 4]);
    expect(HALF_MILLIMETRES.slice(0, 3)).toEqual([2, 2.5, 3]);
  });
});

describe("the next bit", () => {
  // an off-centre hole is filled and drilled again with the next larger bit: common practice, no source
  test("swallows the old hole: D + 2 · error", () => {
    const repair = repairHole(PLAIN, { fret: 5, error: 0.3 }, HALF_MILLIMETRES);
    expect(repair.least).toBeCloseTo(6.95, 12);
    expect(repair.diameter).toBe(7);
    expect(codesOf(repair)).toEqual(
      HALF_MILLIMETRES.filter((bit) => bit < 6.95).map((bit) => [bit]),
    );
    expect(repair.ruledOut[0]?.why[0]).toMatch(/^Too small: 6\.95 mm is needed/);
  });

  test("a bit of just that size swallows it", () => {
    expect(repairHole(FLAT, { fret: 5, error: 0.5 }, [7]).diameter).toBe(7);
    expect(repairHole(FLAT, { fret: 5, error: 0.5 + 1e-9 }, [7]).diameter).toBeNull();
  });

  test("the report has the new hole, at the depth in use, and the other holes as they were", () => {
    const { report } = repairHole(PLAIN, { fret: 12, side: "treble", error: 0.8 }, [8]);
    const before = checkDesign(PLAIN);
    const depth = before.stops.settings[0]?.depth;
    expect(report?.holes.map(({ diameter }) => diameter)).toEqual(
      before.holes.map(({ diameter, side }) => (side === "treble" ? 8 : diameter)),
    );
    expect(report?.holes.find(({ side }) => side === "treble")?.planned?.depth).toBe(depth);
    expect(report?.holes[0]).toEqual(before.holes[0]);
    expect(report?.ok).toBe(true);
  });

  test("what is repaired: the hole's fret, side and place in the report", () => {
    const { hole } = repairHole(PLAIN, { fret: 12, side: "treble", error: 0.8 }, [8]);
    const index = checkDesign(PLAIN).holes.findIndex(
      ({ fret, side }) => fret === 12 && side === "treble",
    );
    expect(hole).toEqual({ fret: 12, side: "treble", index });
    expect(repairHole(PLAIN, { fret: 5, side: "centre", error: 0.3 }, [7]).hole.fret).toBe(5);
  });

  test("what is wrong elsewhere on the board does not rule a bit out", () => {
    // the pair at fret 2 overlaps, and the saw depth fails at every slot
    const markers = [
      { frets: [2], diameter: 8, arrangement: "double", spread: 7 } as const,
      { frets: [5], diameter: 6 },
    ];
    const slot = { depth: 1, tang: 1.7 };
    const repair = repairHole({ ...FLAT, markers, slot }, { fret: 5, error: 0.3 }, [7]);
    expect(repair.diameter).toBe(7);
    expect(repair.report?.ok).toBe(false);
  });

  test("the order of the rack does not matter", () => {
    const hole = { fret: 5, error: 0.4 };
    const turned = repairHole(PLAIN, hole, [...WHOLE_MILLIMETRES].reverse());
    expect(codesOf(turned)).toEqual(codesOf(repairHole(PLAIN, hole, WHOLE_MILLIMETRES)));
  });
});

describe("what rules a bit out", () => {
  test("the depth in use is not in its window", () => {
    const twist: Design = { ...FLAT, bit: { kind: "twist", angle: 90 }, depth: 1.6 };
    // 6 − 0.15 − 0.1 − 1.1 − D/2 ≥ 1.6 as far as D = 6.1
    const repair = repairHole(twist, { fret: 5, error: 0 }, [6, 6.2]);
    expect(repair.diameter).toBe(6);
    const next = repairHole(twist, { fret: 5, error: 0.1 }, [6, 6.2]);
    expect(next.diameter).toBeNull();
    expect(next.report).toBeNull();
    expect(codesOf(next)).toEqual([[6], [6.2, "below-web"]]);
    expect(next.ruledOut[1]?.why[0]).toMatch(/wood may be left under the bit/);
  });

  test("a slot too near, the board's edge, the other dot of the pair", () => {
    const near: Design = {
      ...FLAT,
      scale: { positions: [20, 40, 60, 80, 90] },
      markers: [{ frets: [5], diameter: 6 }],
    };
    const close = repairHole(near, { fret: 5, error: 0.2 }, [8, 9.5, 11]);
    expect(close.diameter).toBe(8);
    expect(codesOf(repairHole(near, { fret: 5, error: 1.2 }, [9.5, 11]))).toEqual([
      [9.5, "near-slot"],
      [11, "cuts-slot"],
    ]);
    const pair = (spread: number): Design => ({
      ...FLAT,
      markers: [{ frets: [2], diameter: 6, arrangement: "double", spread }],
    });
    const stray = { fret: 2, side: "bass", error: 0.5 } as const;
    expect(codesOf(repairHole(pair(43), stray, [8]))).toEqual([[8, "past-edge"]]);
    expect(codesOf(repairHole(pair(6.5), stray, [8]))).toEqual([[8, "dots-overlap"]]);
  });

  test("the surface ends before the bit does", () => {
    const steep: Design = {
      ...FLAT,
      radius: 25.5,
      web: 0,
      markers: [{ frets: [2], diameter: 6, arrangement: "double", spread: 44 }],
    };
    const { diameter, ruledOut } = repairHole(steep, { fret: 2, side: "bass", error: 0.5 }, [8]);
    expect(diameter).toBeNull();
    expect(ruledOut[0]?.findings).toEqual([]);
    expect(ruledOut[0]?.why).toEqual([
      "The finished surface does not reach so far from the centre line.",
    ]);
  });
});

describe("what cannot be read", () => {
  test.each<[unknown, unknown, string]>([
    [{ fret: 4, error: 0.3 }, [7], "hole"],
    [{ fret: 23, error: 0.3 }, [7], "hole.fret"],
    [{ fret: 5, error: -0.3 }, [7], "hole.error"],
    [{ fret: 5, error: Number.NaN }, [7], "hole.error"],
    [{ fret: 5, side: "base", error: 0.3 }, [7], "hole.side"],
    [{ fret: 12, error: 0.3 }, [7], "hole.side"],
    [{ fret: 5, side: "bass", error: 0.3 }, [7], "hole"],
    [{ fret: 5, error: 0.3 }, [], "rack"],
    [{ fret: 5, error: 0.3 }, [7, -1], "rack.1"],
    [{ fret: 5, error: 0.3 }, 7, "rack"],
    [null, [7], "hole"],
  ])("%j with %j", (hole, rack, path) => {
    try {
      repairHole(PLAIN, hole as never, rack as never);
      expect.unreachable();
    } catch (error) {
      expect(error).toBeInstanceOf(DesignError);
      expect((error as DesignError).issues.map((issue) => issue.path)).toEqual([path]);
    }
  });
});
