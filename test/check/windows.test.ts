/** Windows worked out by hand, from the rules as stated. */
import { describe, expect, test } from "vitest";
import { type Bit, checkDesign, type Design, holeWindow } from "../../src/index.js";
import { EXACT, FLAT, PLAIN } from "./necks.js";

function hole(design: Design, index = 0) {
  const found = checkDesign(design).holes[index];
  if (found === undefined) throw new Error("no such hole");
  return found;
}

describe("a flat board: every bound is a sum", () => {
  test("poured, Forstner bit", () => {
    const { window, lead, removal, radius } = hole(FLAT);
    // crown 0.2 + its tolerance 0.05 + keep 0.7 + stop 0.1
    expect(window.min).toBeCloseTo(1.05, 12);
    // 6 − thickness 0.15 − stop 0.1 − web 1.1 − point 0.9
    expect(window.max).toBeCloseTo(3.75, 12);
    expect(window).toMatchObject({ minBy: "keep", maxBy: "web" });
    expect(lead).toBe(0.9);
    expect(radius).toBe(Infinity);
    expect(removal).toEqual({ inner: 0.2, centre: 0.2, outer: 0.2 });
  });

  test.each<[Bit, number]>([
    [{ kind: "end-mill" }, 0],
    [{ kind: "brad-point", point: 2.2 }, 2.2],
    [{ kind: "twist", angle: 90 }, 3],
    // 3 / tan 59°
    [{ kind: "twist" }, 1.802582],
  ])("%j leads its rim by %f", (bit, lead) => {
    const found = hole({ ...FLAT, bit });
    expect(found.lead).toBeCloseTo(lead, 6);
    expect(found.window.max).toBeCloseTo(4.65 - lead, 6);
  });

  test("solid: flush limits the depth where the dot is thin", () => {
    const fill = { kind: "solid", thickness: 2, keep: 0.4 } as const;
    const { window } = hole({ ...FLAT, fill });
    expect(window.min).toBeCloseTo(0.25 + 0.4 + 0.1, 12);
    // 2 + crown 0.2 − its tolerance 0.05 − stop 0.1
    expect(window.max).toBeCloseTo(2.05, 12);
    expect(window.maxBy).toBe("flush");
  });

  test("solid: the least crown is not below nothing", () => {
    const fill = { kind: "solid", thickness: 2 } as const;
    const { window } = hole({ ...FLAT, crown: 0.02, fill });
    expect(window.max).toBeCloseTo(2 - 0.1, 12);
  });

  test("a group's own fill, bit and depth stand before the design's", () => {
    const markers = [
      { frets: [3], diameter: 6 },
      {
        frets: [5],
        diameter: 6,
        fill: { kind: "poured", keep: 1 } as const,
        bit: { kind: "end-mill" } as const,
        depth: 2,
      },
    ];
    const report = checkDesign({ ...FLAT, depth: 3, markers });
    expect(report.holes.map(({ window }) => window.min.toFixed(2))).toEqual(["1.05", "1.35"]);
    expect(report.holes.map(({ lead }) => lead)).toEqual([0.9, 0]);
    expect(report.holes.map(({ planned }) => planned?.depth)).toEqual([3, 2]);
  });

  test("what a planned depth leaves, in the worst case", () => {
    const { planned } = hole({ ...FLAT, depth: 2 });
    expect(planned?.left).toBeCloseTo(2 - 0.1 - 0.25, 12);
    expect(planned?.web).toBeCloseTo(6 - 0.15 - 0.1 - 2 - 0.9, 12);
  });
});

describe("the rod channel", () => {
  const channel = { width: 10, depth: 2 };
  const over = (spread: number, bit: Bit): Design => ({
    ...FLAT,
    board: { ...FLAT.board, channel },
    markers: [{ frets: [5], diameter: 6, arrangement: "double", spread }],
    tolerance: { ...FLAT.tolerance, layout: 0 },
    bit,
  });
  const TWIST: Bit = { kind: "twist", angle: 90 };
  const FORSTNER: Bit = { kind: "forstner", point: 0.9 };

  test.each<[string, number, Bit, number, string]>([
    ["a point over it", 8, FORSTNER, 6 - 0.25 - 1.1 - 2 - 0.9, "channel"],
    ["only the rim over it", 12, FORSTNER, 6 - 0.25 - 1.1 - 2, "channel"],
    // an end mill of 6 mm, 8 mm aside, meets the side of a channel of 10 mm in one point: no part lies over it
    ["just touching it", 16, { kind: "end-mill" }, 6 - 0.25 - 1.1, "web"],
    ["beside it", 17, FORSTNER, 6 - 0.25 - 1.1 - 0.9, "web"],
    // the axis is 1.5 mm aside, where a 90° cone of 6 mm has come up by half of its 3 mm
    ["a cone's flank over it", 13, TWIST, 6 - 0.25 - 1.1 - 2 - 1.5, "channel"],
    // 2.9 mm aside: 0.1 mm of the cone, and then the tip over full wood rules
    ["a cone's rim over it", 15.8, TWIST, 6 - 0.25 - 1.1 - 3, "web"],
  ])("%s", (_, spread, bit, max, maxBy) => {
    const { window } = hole(over(spread, bit));
    expect(window.max).toBeCloseTo(max, 12);
    expect(window.maxBy).toBe(maxBy);
  });

  test("a layout error can carry the point over it", () => {
    const design = over(10.4, FORSTNER);
    const { window } = hole({ ...design, tolerance: { ...design.tolerance, layout: 0.25 } });
    expect(window.max).toBeCloseTo(6 - 0.25 - 1.1 - 2 - 0.9, 12);
  });

  test("it runs from nut to end where it does not say, and no farther than it says", () => {
    const along = hole({ ...FLAT, board: { ...FLAT.board, channel } });
    expect(along.window.maxBy).toBe("channel");
    const short = { ...channel, from: along.along + 3.5, to: 300 };
    expect(hole({ ...FLAT, board: { ...FLAT.board, channel: short } }).window.maxBy).toBe("web");
    const touching = { ...channel, from: along.along + 3.2, to: 300 };
    const { window } = hole({ ...FLAT, board: { ...FLAT.board, channel: touching } });
    expect(window.maxBy).toBe("channel");
    const report = checkDesign({ ...FLAT, board: { ...FLAT.board, channel } });
    expect(report.assumed).toMatchObject({ "board.channel.from": 0, "board.channel.to": 320 });
  });
});

describe("layout", () => {
  test("singles by the diagonals, from the nut-side slot gap · Wa / (Wa + Wb)", () => {
    // PlanetMath, "Harmonic mean in trapezoid": widths 44 and 56, length 450: 198 from the narrow end
    const design: Design = {
      scale: { positions: [450] },
      board: { length: 450, width: { nut: 44, end: 56 }, thickness: 6 },
      radius: 300,
      markers: [{ frets: [1], diameter: 6, arrangement: "double" }],
    };
    const { holes } = checkDesign(design);
    expect(holes.map(({ along }) => along)).toEqual([198, 198]);
    // 44 · 56 / (2 · 100)
    expect(holes.map(({ offset }) => offset)).toEqual([-12.32, 12.32]);
    expect(holes.map(({ side }) => side)).toEqual(["bass", "treble"]);
  });

  test("midpoints: a double a quarter of the width there from the centre line", () => {
    const markers = [
      { frets: [12], diameter: 6, arrangement: "double", along: "midpoint" },
    ] as const;
    const [bass, treble] = checkDesign({ ...PLAIN, markers }).holes;
    const from = 648 * (1 - 2 ** (-11 / 12));
    expect(bass?.along).toBeCloseTo((from + 324) / 2, 9);
    const width = 43 + (14 * ((from + 324) / 2)) / 482;
    expect(treble?.offset).toBeCloseTo(width / 4, 9);
    expect(bass?.offset).toBeCloseTo(-width / 4, 9);
  });

  test("a spread stands in place of the diagonals", () => {
    const markers = [{ frets: [12], diameter: 6, arrangement: "double", spread: 20 }] as const;
    expect(checkDesign({ ...PLAIN, markers }).holes.map(({ offset }) => offset)).toEqual([-10, 10]);
  });

  test("holes come by fret, bass before treble, whatever the order of the groups", () => {
    const markers = [
      { frets: [12], diameter: 5, arrangement: "double" },
      { frets: [12, 3], diameter: 5 },
    ] as const;
    const { holes } = checkDesign({ ...PLAIN, markers });
    expect(holes.map(({ fret, side }) => `${fret} ${side}`)).toEqual([
      "3 centre",
      "12 bass",
      "12 centre",
      "12 treble",
    ]);
  });
});

describe("surfaces", () => {
  test("fall-away: the crown counts at the dot's body-side rim", () => {
    const crown = { nut: 0.1, fret7: 0.1, end: 1.1 };
    const markers = [{ frets: [12], diameter: 6 }];
    const design: Design = { ...FLAT, crown, markers, tolerance: EXACT };
    const { window, along } = hole(design);
    const fret7 = 600 * (1 - 2 ** (-7 / 12));
    const slope = 1 / (320 - fret7);
    expect(window.min).toBeCloseTo(0.1 + slope * (along + 3 - fret7) + 0.7, 9);
  });

  test("tapered thickness: the least over the disc", () => {
    const board = { ...FLAT.board, thickness: { nut: 6, end: 5 } };
    const { window, along } = hole({ ...FLAT, board, tolerance: EXACT });
    expect(window.max).toBeCloseTo(6 - (along + 3) / 320 - 1.1 - 0.9, 9);
  });

  test("a radius tolerance takes the tighter radius for the least, the flatter for flush", () => {
    const fill = { kind: "solid", thickness: 2, keep: 0.4 } as const;
    const markers = [{ frets: [5], diameter: 6, arrangement: "double", spread: 30 }] as const;
    const design: Design = { ...FLAT, radius: 300, fill, markers };
    const { window } = hole({ ...design, tolerance: { ...EXACT, radius: 0.1 } });
    const drop = (radius: number, x: number) => radius - Math.sqrt(radius ** 2 - x ** 2);
    expect(window.min).toBeCloseTo(0.2 + drop(270, 18) + 0.4, 9);
    expect(window.max).toBeCloseTo(2 + 0.2 + drop(330, 12), 9);
  });

  test("holeWindow agrees with the report", () => {
    const report = checkDesign(PLAIN);
    for (const { along, offset, diameter, window, lead } of report.holes) {
      expect(holeWindow(PLAIN, { along, offset, diameter })).toEqual({ ...window, lead });
    }
  });
});

describe("what is assumed", () => {
  test("a bare design: every default that was used, by its path, and no other", () => {
    expect(checkDesign(PLAIN).assumed).toEqual({
      "fill.keep": 0.8,
      "bit.point": 1,
      web: 1,
      crown: 0.15,
      "tolerance.stop": 0.1,
      "tolerance.layout": 0.25,
      "tolerance.thickness": 0.1,
      "tolerance.crown": 0.05,
      "tolerance.radius": 0,
      "pour.waste": 0.5,
      "pour.ratio.0": 1,
      "pour.ratio.1": 1,
    });
  });

  test("a group's own parts are assumed under the group's path", () => {
    const markers = [
      { frets: [3], diameter: 6, fill: { kind: "solid", thickness: 2 }, bit: { kind: "twist" } },
    ] as const;
    const { assumed } = checkDesign({ ...PLAIN, markers });
    expect(assumed).toMatchObject({ "markers.0.fill.keep": 0.5, "markers.0.bit.angle": 118 });
    for (const unused of ["fill.keep", "bit.point", "pour.waste"]) {
      expect(assumed).not.toHaveProperty([unused]);
    }
  });

  test("nothing is assumed of what is stated", () => {
    expect(checkDesign(FLAT).assumed).toEqual({
      "pour.waste": 0.5,
      "pour.ratio.0": 1,
      "pour.ratio.1": 1,
    });
  });
});
