/** Slots, side dots and epoxy, worked out by hand from the rules as stated. */
import { describe, expect, test } from "vitest";
import { checkDesign, type Design } from "../../src/index.js";
import { EXACT, FLAT, PLAIN } from "./necks.js";

/** Sagitta by the other form, good enough for a hand's figures. */
const drop = (radius: number, x: number) => radius - Math.sqrt(radius ** 2 - x ** 2);

function codes(design: Design): string[] {
  return checkDesign(design).findings.map(({ code }) => code);
}

describe("fret slots", () => {
  const slot = { depth: 4, tang: 1.7, clearance: 0.3, web: 1.4 };
  const design: Design = { ...PLAIN, slot };

  test("least: tang, clearance and the worst removal at the edge; most: thickness less the web", () => {
    const { slots } = checkDesign(design);
    // one radius, widening board: the last fret loses most at its edges
    const last = 648 * (1 - 2 ** (-22 / 12));
    const half = (43 + (14 * last) / 482) / 2;
    expect(slots?.leastAt).toBe(22);
    expect(slots?.least).toBeCloseTo(1.7 + 0.3 + 0.15 + 0.05 + drop(254, half), 9);
    expect(slots?.most).toBeCloseTo(6 - 0.1 - 1.4, 12);
    expect(slots?.frets).toHaveLength(22);
    expect(slots?.frets[0]).toMatchObject({ fret: 1, mostBy: "web" });
  });

  test("on a strong compound radius the first fret governs, not the widest", () => {
    const { slots } = checkDesign({ ...design, radius: { nut: 184, end: 508 } });
    expect(slots?.leastAt).toBe(1);
  });

  test("with fall-away the end governs, although a compound radius says the nut", () => {
    const crown = { nut: 0.15, fret14: 0.15, end: 1 };
    const { slots } = checkDesign({ ...design, radius: { nut: 184, end: 508 }, crown });
    expect(slots?.leastAt).toBe(22);
  });

  test("over the rod channel less may be sawn", () => {
    const channel = { width: 6, depth: 1, from: 0, to: 200 };
    const { slots } = checkDesign({ ...design, board: { ...PLAIN.board, channel } });
    expect(slots?.most).toBeCloseTo(6 - 0.1 - 1.4 - 1, 12);
    const by = slots?.frets.map(({ mostBy }) => mostBy);
    // fret 6 lies at 189.8 mm, fret 7 at 215.5 mm
    expect(by?.slice(0, 6)).toEqual(Array(6).fill("channel"));
    expect(by?.slice(6)).toEqual(Array(16).fill("web"));
  });

  test("a tapered blank: the thinnest slot governs", () => {
    const board = { ...PLAIN.board, thickness: { nut: 6, end: 5 } };
    const { slots } = checkDesign({ ...design, board });
    expect(slots?.mostAt).toBe(22);
  });

  test("a planned depth is held against every fret", () => {
    const { slots } = checkDesign(design);
    expect(codes(design)).toEqual([]);
    for (const depth of [slots?.least ?? 0, slots?.most ?? 0]) {
      expect(codes({ ...design, slot: { ...slot, depth } })).toEqual([]);
    }
    const shallow = checkDesign({
      ...design,
      slot: { ...slot, depth: (slots?.least ?? 0) - 0.001 },
    });
    expect(shallow.findings.map(({ code, fret }) => `${code} ${fret}`)).toEqual([
      "slot-too-shallow 22",
    ]);
    const deep = codes({ ...design, slot: { ...slot, depth: (slots?.most ?? 0) + 0.001 } });
    expect(deep).toEqual(Array(22).fill("slot-too-deep"));
  });

  test("no saw depth at all", () => {
    const findings = checkDesign({ ...design, slot: { ...slot, tang: 3, depth: 4 } }).findings;
    expect(findings.map(({ code }) => code)).toContain("no-slot-depth");
    const clash = findings.find(({ code }) => code === "no-slot-depth");
    expect(clash?.fret).toBe(22);
    expect(clash?.limit).toBeCloseTo(4.5, 12);
  });

  test("no slot stated, no slots reported", () => {
    expect(checkDesign(PLAIN)).not.toHaveProperty("slots");
  });
});

describe("side dots", () => {
  const sideDots = { diameter: 2, margin: 0.5, depth: 3 };

  test("their line lies in the middle of what is left of the edge face", () => {
    const { edges } = checkDesign({ ...PLAIN, sideDots });
    const [nut] = edges;
    expect(nut?.sideDotLine).toBeCloseTo((6 - 0.15 - drop(254, 21.5)) / 2, 9);
    for (const { sideDotLine, thickness } of edges) expect(sideDotLine).toBe(thickness / 2);
    expect(checkDesign(PLAIN).edges[0]).not.toHaveProperty("sideDotLine");
  });

  test("the face must hold the dot and its margins in the worst case", () => {
    const design: Design = { ...PLAIN, tolerance: EXACT, sideDots };
    const at = checkDesign(design).holes.find(({ fret }) => fret === 21)?.along ?? 0;
    const face = 6 - 0.15 - drop(254, (43 + (14 * at) / 482) / 2);
    expect(codes({ ...design, sideDots: { ...sideDots, diameter: face - 1 - 1e-6 } })).toEqual([]);
    const [finding, next] = checkDesign({
      ...design,
      sideDots: { ...sideDots, diameter: face - 1 + 1e-6 },
    }).findings;
    expect(finding).toMatchObject({ code: "side-dot-tight", fret: 21 });
    expect(finding?.value).toBeCloseTo(face, 9);
    expect(next).toBeUndefined();
  });

  test("a dot near the edge is met by a side dot's hole that goes in far enough", () => {
    // flat board, 50 wide, 6 thick: the line at 2.9 mm, the side dot up to 3.9 mm
    const markers = [{ frets: [5], diameter: 6, arrangement: "double", spread: 36 }] as const;
    const flat: Design = { ...FLAT, markers, tolerance: EXACT, bit: { kind: "end-mill" } };
    const clear = { ...flat, depth: 2, sideDots: { ...sideDots, depth: 3.9 } };
    expect(codes(clear)).toEqual([]);
    // drilled to 2.2 mm the hole's floor stands 3.8 mm above the underside
    expect(codes({ ...clear, depth: 2.2 })).toEqual([]);
    const meeting = checkDesign({ ...clear, depth: 2.2, sideDots: { ...sideDots, depth: 4.1 } });
    expect(meeting.findings.map(({ code, side }) => `${code} ${side}`)).toEqual([
      "side-dot-meets-hole bass",
    ]);
    expect(meeting.findings[0]?.value).toBeCloseTo(-0.1, 9);
  });

  test("a cone counts where the side dot reaches under it", () => {
    const markers = [{ frets: [5], diameter: 6, arrangement: "double", spread: 36 }] as const;
    const bit = { kind: "twist", angle: 90 } as const;
    const flat: Design = { ...FLAT, markers, tolerance: EXACT, bit, depth: 1.5, web: 0 };
    // 5 mm in: 2 mm from the axis, where the cone has 1 mm left: its floor at 6 − 1.5 − 1 = 3.5 mm
    const report = checkDesign({ ...flat, sideDots: { ...sideDots, depth: 5 } });
    expect(report.findings.map(({ code }) => code)).toEqual(["side-dot-meets-hole"]);
    expect(report.findings[0]?.value).toBeCloseTo(3.5 - 3.9, 9);
  });

  test("a side dot that reaches a slot must lie below its floor", () => {
    const design: Design = {
      ...FLAT,
      scale: { positions: [20, 23] },
      markers: [{ frets: [2], diameter: 1.5 }],
      tolerance: EXACT,
      sideDots: { diameter: 3.2, margin: 0.1 },
      slot: { depth: 1.5, tang: 1, clearance: 0, web: 1 },
    };
    // the line at 2.9 mm, the dot up to 4.5 mm; a slot 1.5 mm deep ends at 4.5 mm
    expect(codes(design)).not.toContain("side-dot-meets-slot");
    const deeper = { ...design, slot: { depth: 1.6, tang: 1, clearance: 0, web: 1 } };
    expect(codes(deeper)).toContain("side-dot-meets-slot");
    const apart = { ...deeper, sideDots: { diameter: 2.9, margin: 0.1 } };
    expect(codes(apart)).not.toContain("side-dot-meets-slot");
  });
});

describe("epoxy", () => {
  // Machinery's Handbook, 31st ed., p. 89: a cylinder of diameter 2.5, height 20 holds 98.17
  test("a cylinder's volume", () => {
    const design: Design = {
      ...FLAT,
      board: { length: 320, width: 50, thickness: 40.8 },
      crown: 0,
      markers: [{ frets: [5], diameter: 2.5 }],
      fill: { kind: "poured", keep: 0 },
      bit: { kind: "end-mill" },
      web: 0.8,
      tolerance: EXACT,
      pour: { waste: 0 },
    };
    const { stops, pour } = checkDesign(design);
    expect(stops.settings[0]?.depth).toBe(20);
    expect(((pour?.volume ?? 0) * 1000).toFixed(2)).toBe("98.17");
  });

  // Machinery's Handbook, 31st ed., p. 90: a cone of diameter 6, height 4 holds 37.7
  test("a twist bit's cone", () => {
    const angle = (2 * Math.atan(3 / 4) * 180) / Math.PI;
    const base: Design = { ...FLAT, pour: { waste: 0 }, depth: 2 };
    const volume = (design: Design) => (checkDesign(design).pour?.volume ?? 0) * 1000;
    const depth = (design: Design) => checkDesign(design).stops.settings[0]?.depth ?? 0;
    const board = { ...FLAT.board, thickness: 16 };
    const twist: Design = { ...base, board, bit: { kind: "twist", angle } };
    expect(checkDesign(twist).holes[0]?.lead).toBeCloseTo(4, 12);
    expect((volume(twist) - 9 * Math.PI * depth(twist)).toFixed(1)).toBe("37.7");
  });

  test("each hole at its stop setting, with waste, split by ratio", () => {
    const { pour, stops, holes } = checkDesign({ ...PLAIN, pour: { waste: 0.2, ratio: [3, 1] } });
    const depth = stops.settings[0]?.depth ?? 0;
    const volume = (1.2 * holes.length * Math.PI * 3.175 ** 2 * depth) / 1000;
    expect(pour?.volume).toBeCloseTo(volume, 12);
    expect(pour?.resin).toBeCloseTo((volume * 3) / 4, 12);
    expect(pour?.hardener).toBeCloseTo(volume / 4, 12);
  });

  test("solid dots take none", () => {
    const fill = { kind: "solid", thickness: 2 } as const;
    expect(checkDesign({ ...PLAIN, fill })).not.toHaveProperty("pour");
    const [singles, doubles] = PLAIN.markers;
    if (!singles || !doubles) throw new Error("the plain neck has two groups");
    const mixed = checkDesign({ ...PLAIN, markers: [{ ...singles, fill } as never, doubles] });
    const all = checkDesign(PLAIN);
    const share = (mixed.pour?.volume ?? 0) / (all.pour?.volume ?? 1);
    const depths = (mixed.stops.settings[0]?.depth ?? 0) / (all.stops.settings[0]?.depth ?? 1);
    expect(share).toBeCloseTo((2 / 10) * depths, 12);
  });

  test("a tiny batch is warned of", () => {
    const { cautions, pour } = checkDesign(PLAIN);
    expect(pour?.volume).toBeLessThan(10);
    expect(cautions.join("\n")).toContain("hard to measure");
    const big = checkDesign({ ...PLAIN, pour: { waste: 20 } });
    expect(big.pour?.volume).toBeGreaterThan(10);
    expect(big.cautions.join("\n")).not.toContain("hard to measure");
  });
});

describe("cautions, by what a design uses", () => {
  const of = (design: Design) => checkDesign(design).cautions.join("\n");
  test("each with the title that it rests on", () => {
    const poured = of(PLAIN);
    for (const title of [
      "OSHA 29 CFR 1910.213",
      "Wood Dust – Hazard Recognition",
      "HSE RR79",
      "flame",
    ]) {
      expect(poured).toContain(title);
    }
    expect(poured).toContain("local codes");
    expect(poured).not.toMatch(/nacre|twist bit/);
  });
  test("shell dust for solid dots, grabbing for twist bits", () => {
    const solid = of({ ...PLAIN, fill: { kind: "solid", thickness: 2 }, bit: { kind: "twist" } });
    expect(solid).toMatch(/Eur Respir J 10:780–786/);
    expect(solid).toMatch(/twist bit can grab/);
    expect(solid).not.toMatch(/epoxy|flame/);
  });
});
