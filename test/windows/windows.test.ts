/** Windows worked by hand, rule by rule, on boards whose bounds are sums. Radii by whole triangles: 7-24-25, 15-20-25, 16-63-65. */
import { describe, expect, test } from "vitest";
import { type Bit, checkDesign, holeWindow, type PocketShape } from "../../src/index.js";
import { type Change, designOf, drop, FORSTNER, holeOf, TWIST } from "./bench.js";

/** Holds the least depth, or the greatest and its rule. */
function least(change: Change, min: number, offset = 0): void {
  const { window } = holeOf(change, offset);
  expect([window.min, window.minBy]).toEqual([expect.closeTo(min, 11), "keep"]);
}
function most(change: Change, max: number, maxBy: string, offset = 0): void {
  const { window } = holeOf(change, offset);
  expect([window.max, window.maxBy]).toEqual([expect.closeTo(max, 11), maxBy]);
}

describe("keep: what is removed, what is kept, and every error that makes the floor shallower", () => {
  test("without tolerances the sanding and the keep", () => least({}, 0.25 + 0.5));

  test.each<[string, Change["tolerance"], Bit, number]>([
    ["sanding", { sanding: 0.125 }, { kind: "end-mill" }, 0.125],
    ["stop", { stop: 0.125 }, { kind: "end-mill" }, 0.125],
    ["a stop's limit with its law", { stop: { limit: 0.125, shape: "normal" } }, FORSTNER, 0.125],
    ["point, of a bit that has one", { point: 0.125 }, FORSTNER, 0.125],
    ["point, of a cone", { point: 0.125 }, TWIST, 0.125],
    ["point, of an end mill", { point: 0.125 }, { kind: "end-mill" }, 0],
    ["point, of no length", { point: 0.125 }, { kind: "forstner", point: 0 }, 0],
    ["seat, from the wood", { seat: 0.125 }, FORSTNER, 0],
    ["thickness", { thickness: 0.125 }, FORSTNER, 0],
    ["fill, of epoxy", { fill: 0.125 }, FORSTNER, 0],
    ["existing, on a blank", { existing: 0.125 }, FORSTNER, 0],
  ])("tolerance of %s", (_, tolerance, bit, more) => {
    least({ tolerance, bit }, 0.75 + more);
  });

  test("the radius counts at the rim farthest out, off by layout and crest, at its tightest", () => {
    // a dot of 2 at 6: its rim at 7, where a radius of 25 has dropped 25 − 24; at 15 it has dropped 5
    const at = (offset: number, change: Change = {}): Change => ({
      radius: 25,
      board: { width: 20 },
      markers: [{ places: [{ along: 200, offset }], diameter: 2 }],
      ...change,
    });
    for (const offset of [6, -6]) {
      least(at(offset), 0.75 + 1);
      least(at(offset, { tolerance: { layout: 8 } }), 0.75 + 5);
      least(at(offset, { tolerance: { crest: 8 } }), 0.75 + 5);
      // 20 % less than 31.25
      least(at(offset, { radius: 31.25, tolerance: { radius: 0.2 } }), 0.75 + 1);
    }
  });

  test("of a pocket the farthest corner counts, with the crest off to either side", () => {
    // a square of 2 at 6 reaches as far as the dot
    const at = (offset: number, crest: number): Change => ({
      radius: 25,
      board: { width: 20 },
      markers: [
        { places: [{ along: 200, offset }], shape: { kind: "rectangle", length: 2, width: 2 } },
      ],
      tolerance: { crest },
    });
    for (const offset of [6, -6]) {
      least(at(offset, 0), 0.75 + 1);
      least(at(offset, 8), 0.75 + 5);
    }
  });

  test("on 254 mm a crest 1 mm aside takes 0.07 mm more from a double", () => {
    // its rim at 18: (19² − 18²) / 508 = 0.0728, and a little
    const double = (crest: number) => holeOf({ radius: 254, tolerance: { crest } }, 14).window.min;
    expect(double(1) - double(0)).toBeCloseTo(drop(254, 19) - drop(254, 18), 9);
    expect(double(1) - double(0)).toBeCloseTo(0.073, 3);
  });

  test("sanding that deepens toward the end counts at the body-side rim", () => {
    // 0.01 per mm: 2 at the hole, 4 more in its radius, 1 in the layout error
    least({ sanding: { nut: 0, end: 4 }, tolerance: { layout: 1 } }, 2.05 + 0.5);
  });
});

describe("web: under the tip at the axis, under floor and spurs over the whole hole", () => {
  test.each<[string, Bit, number]>([
    ["an end mill", { kind: "end-mill" }, 0],
    ["a Forstner bit's point", FORSTNER, 1.5],
    ["a brad point", { kind: "brad-point", point: 2.25, spur: 0 }, 2.25],
    ["a twist bit's cone of 90°, half its diameter", TWIST, 4],
    [
      "a blunter one, 4 out and 3 up",
      { kind: "twist", angle: (360 / Math.PI) * Math.atan(4 / 3) },
      3,
    ],
  ])("%s leads the floor", (_, bit, lead) => {
    expect(holeOf({ bit }).lead).toBeCloseTo(lead, 12);
    most({ bit }, 6 - 1 - lead, "web");
  });

  test("stop and thickness count, the point does not: the stop holds the tip", () => {
    const tolerance = { stop: 0.125, thickness: 0.25, point: 0.5 };
    most({ bit: FORSTNER, tolerance }, 6 - 1 - 1.5 - 0.125 - 0.25, "web");
  });

  test("spurs as long as the point: floor and spurs, with the point's error, govern", () => {
    const bit = { kind: "forstner", point: 0.5, spur: 0.5 } as const;
    most({ bit, tolerance: { point: 0.125 } }, 6 - 1 - 0.5 - 0.125, "web");
  });

  test("on a tapered blank the tip counts at the axis, the floor over the hole", () => {
    // 8 at one end, 4 at the other: 6 at the axis, 5.99 within the layout, 5.95 at the rim 5 farther
    for (const [nut, end] of [
      [8, 4],
      [4, 8],
    ] as const) {
      const tapered = { board: { thickness: { nut, end } }, tolerance: { layout: 1 } };
      most({ ...tapered, bit: { ...FORSTNER, spur: 0 } }, 5.99 - 1.5 - 1, "web");
      most({ ...tapered, bit: { ...FORSTNER, spur: 1.5 } }, 5.95 - 1.5 - 1, "web");
      most(tapered, 5.95 - 1, "web");
    }
  });

  test("the neck's wood under the board counts too", () => {
    const neck = { thickness: 12 };
    most({ neck, board: { channel: "none" }, bit: FORSTNER }, 18 - 1.5 - 1, "web");
  });
});

describe("channel: over it, and within the web of it on every side, each part of the bit at its own height", () => {
  // 6 wide and 2 deep from 20 to 200; the web is 1, so the tip counts as far as 4 from the centre line
  const channel = { width: 6, depth: 2, from: 20, to: 200 };
  const over = (bit: Bit): Change => ({ board: { channel }, bit, tolerance: { point: 0.25 } });
  const hole = (along: number, offset: number, change: Change) => ({
    ...change,
    markers: [{ places: [{ along, offset }], diameter: 6 }],
  });

  test.each<[string, number, number, Bit, number | undefined]>([
    ["the point over it", 100, 0, FORSTNER, 4 - 1.5],
    ["the point within the web of it", 100, -4, FORSTNER, 4 - 1.5],
    // the floor may come deeper by the point's error: 0.5 + 0.25 below where it should be
    ["a spur 1.5 from it", 100, 5.5, FORSTNER, 4 - 0.75],
    ["a spur 3.9 from it", 100, 6.9, FORSTNER, 4 - 0.75],
    ["the whole rim farther than the web", 100, 7, FORSTNER, undefined],
    ["the point within the web beyond its end", 201, 0, FORSTNER, 4 - 1.5],
    ["a spur beyond its end", 202, 0, FORSTNER, 4 - 0.75],
    // 3 beyond, 4 aside: 5 from the corner, 4 from the web about it
    ["past its corner", 203, 7, FORSTNER, undefined],
    ["4 past its corner, by 2.4 and 3.2", 202.4, 6.2, FORSTNER, undefined],
    ["3.5 past its corner, by 2.1 and 2.8", 202.1, 5.8, FORSTNER, 4 - 0.75],
    ["an end mill's floor", 100, 6.9, { kind: "end-mill" }, 4],
    // 1 from the axis a cone of 90° has 2 of its 3 left, and a third of the point's error
    ["a cone's flank", 100, 5, TWIST, 4 - 2 - 0.25 / 3],
    ["a cone's tip", 100, 3, TWIST, 4 - 3],
  ])("%s", (_, along, offset, bit, deepest) => {
    const lead = bit.kind === "twist" ? 3 : bit.kind === "end-mill" ? 0 : 1.5;
    const open = 6 - 1 - lead;
    const max = deepest === undefined ? open : Math.min(open, deepest - 1);
    const by = max === open ? "web" : "channel";
    most(hole(along, offset, over(bit)), max, by);
  });

  test("a layout error brings it nearer", () => {
    const change = { ...over(FORSTNER), tolerance: { layout: 0.5 } };
    most(hole(100, 7.25, change), 4 - 0.5 - 1, "channel");
    most(hole(100, 7.5, change), 6 - 1.5 - 1, "web");
  });

  test("its depth is a profile, and counts where it is deepest under the hole", () => {
    // 1 at the nut, 3 at the end: 2 at the axis, 2.015 at the rim 3 farther
    const deeper = { width: 6, depth: { nut: 1, end: 3 } };
    most(hole(200, 0, { board: { channel: deeper } }), 6 - 2.015 - 1, "channel");
  });

  test("with a neck the board alone lies over it, whole where the channel is in the neck", () => {
    const glued = { neck: { thickness: 12 }, board: { channel: { width: 6 } } };
    most(hole(100, 0, glued), 6 - 1, "channel");
    most(hole(100, 12, glued), 18 - 1, "web");
  });

  const pocket = (along: number, offset: number, shape: PocketShape, to = 200): Change => ({
    board: { channel: { ...channel, to } },
    markers: [{ places: [{ along, offset }], shape }],
  });

  test("a pocket within the web of it counts whole", () => {
    const at = (offset: number) => pocket(100, offset, { kind: "rectangle", length: 10, width: 8 });
    most(at(8), 4 - 1, "channel");
    most(at(8.01), 6 - 1, "web");
    most(at(-7), 4 - 1, "channel");
  });

  test("a pocket that slants past the channel's end by less than the web", () => {
    // its upper side runs from (100, −12) to (126, 14), its lower one from (104, −12) to (130, 14)
    const xs = [-15, -11, 15, 11];
    const corners = xs.map((x, i) => ({ x, y: i < 2 ? -13 : 13 }));
    const slanted = (to: number) => pocket(115, 1, { kind: "polygon", corners }, to);
    // that side, offset = along − 112, lies (109 − to) / √2 from the channel's corner at offset −3
    most(slanted(109 - 1.001 * Math.SQRT2), 6 - 1, "web");
    most(slanted(109 - 0.999 * Math.SQRT2), 4 - 1, "channel");
  });
});

describe("flush: a solid dot's top may not end below the finished surface", () => {
  const solid = { fill: { kind: "solid", thickness: 2, keep: 0.5 } } as const;

  test("dot, less its error, and the least that is sanded off", () => {
    least(solid, 0.75);
    most(solid, 2 + 0.25, "flush");
    const tolerance = { fill: 0.0625, sanding: 0.125, stop: 0.25, point: 0.5 };
    most({ ...solid, tolerance }, 2 - 0.0625 + 0.125 - 0.25, "flush");
    const bit = { ...FORSTNER, spur: 0 };
    most({ ...solid, bit, tolerance }, 2 - 0.0625 + 0.125 - 0.25 - 0.5, "flush");
  });

  test("the least sanding is not below nothing", () => {
    most({ ...solid, tolerance: { sanding: 0.5 } }, 2, "flush");
  });

  test("the radius counts at the rim nearest the crest, at its flattest", () => {
    // a dot of 8 at 11: its near rim at 7
    const round = { ...solid, radius: 25, board: { width: 48 } };
    most(round, 2.25 + 1, "flush", 11);
    most({ ...round, tolerance: { layout: 7 } }, 2.25, "flush", 11);
    most(
      { ...round, board: { width: 30 }, tolerance: { crest: 4 } },
      2.25 + drop(25, 3),
      "flush",
      11,
    );
    most({ ...round, tolerance: { crest: 0.5, radius: 0 }, radius: 65 }, 2.25 + 2, "flush", 20.5);
    most({ ...round, radius: 50, tolerance: { radius: 0.3 } }, 2.25 + 2, "flush", 20);
  });
});

describe("a radius that the top has already", () => {
  // 25: at 7 it has dropped 1, at 15 5, at 20 10
  const bit = { kind: "forstner", point: 0 } as const;
  const curved = { existing: { radius: 25 }, board: { width: 48 }, sanding: 20, bit };
  const small = (offset: number) => ({
    ...curved,
    board: { width: 48, thickness: 30 },
    markers: [{ places: [{ along: 200, offset }], diameter: 2 }],
  });

  test("depths count from the top at the hole: planed flat, 20 − 5 goes at the centre", () => {
    least(curved, 20 - 5 + 0.5, 15);
    const removals = Object.values(holeOf(curved, 16).removal);
    expect(removals).toEqual([12, 16, 20].map((x) => expect.closeTo(20 - drop(25, x), 12)));
  });

  test("where the new radius is not reached the old top stays", () => {
    // nothing sanded off: at the rim, 20 aside, the old top lies 10 down
    least({ ...curved, sanding: 0 }, 10 - drop(25, 16) + 0.5, 16);
    expect(Object.values(holeOf({ ...curved, sanding: 0 }, 16).removal)).toEqual([0, 0, 0]);
  });

  test("off by 8 toward the crest the top is only 1 down, outward 7 more: the floor sinks with it", () => {
    least({ ...small(15), tolerance: { layout: 8 } }, 20 - 1 + 0.5);
    const solid = { fill: { kind: "solid", thickness: 9, keep: 0.5 } } as const;
    most({ ...small(15), ...solid, tolerance: { layout: 5 } }, 9 + 20 - 10, "flush");
    // the wood below the crest plane, less where the top lies
    most(small(15), 30 - 5 - 1, "web");
    most({ ...small(15), tolerance: { layout: 5 } }, 30 - 10 - 1, "web");
  });

  test("a crest off aside shifts the new radius, not the old", () => {
    // both 65, 20 sanded off: rim at 16 from the old crest, at 25 from the new
    const same = { existing: { radius: 65 }, radius: 65, sanding: 20 };
    least({ ...same, tolerance: { crest: 9 } }, 20 + 5 - drop(65, 12) + 0.5, 12);
  });

  test("its error shifts the old top alone", () => {
    // within 20 % a radius of 31.25 is 25 to 37.5: the flattest puts the top highest
    const loose = { ...curved, existing: { radius: 31.25 }, tolerance: { existing: 0.2 } };
    least({ ...loose, board: { width: 48, thickness: 30 } }, 20 - drop(37.5, 15) + 0.5, 15);
    most({ ...loose, board: { width: 48, thickness: 30 } }, 30 - 5 - 1, "web", 15);
  });

  test("184 to 305 on a half-width of 26 takes 0.736, and 0.448 at 16.3", () => {
    const turned = { existing: { radius: 184 }, radius: 305, board: { width: 52 } };
    const [finding] = checkDesign(designOf({ ...turned, sanding: 0.7 })).findings;
    expect(finding).toMatchObject({ code: "radius-not-reached", value: 0.7, path: "sanding" });
    // 184 − √(184² − 26²) less 305 − √(305² − 26²)
    expect(finding?.limit).toBeCloseTo(drop(184, 26) - drop(305, 26), 9);
    expect(finding?.limit.toFixed(3)).toBe("0.736");
    const enough = { ...turned, sanding: finding?.limit as number };
    expect(checkDesign(designOf(enough)).findings).toEqual([]);
    expect(holeOf(enough, 16.3).removal.centre.toFixed(3)).toBe("0.448");
  });
});

describe("what is in the board already", () => {
  const old = { places: [{ along: 200, offset: 0 }], diameter: 8, drilled: true } as const;
  const tolerance = { stop: 0.125, point: 0.25, sanding: 0.5, thickness: 0.0625 };

  test("only what is kept counts, without the errors of drilling", () => {
    const { holes, stops, pour } = checkDesign(
      designOf({ bit: FORSTNER, tolerance, depth: 2, markers: [old] }),
    );
    expect(holes[0]?.window).toMatchObject({ min: 0.25 + 0.5 + 0.5, max: 6 - 0.0625 });
    expect(holes[0]).toMatchObject({ lead: 0, rise: 0, drilled: true });
    expect(holes[0]).not.toHaveProperty("bit");
    expect(holes[0]?.planned).toEqual({ depth: 2, markerLeft: 2 - 0.75, woodLeft: 4 - 0.0625 });
    expect(stops).toEqual({ common: null, settings: [] });
    expect(pour).toBeUndefined();
  });

  test("it takes no part in the settings of the others", () => {
    const fresh = { places: [{ along: 100, offset: 0 }], diameter: 8 };
    const { stops } = checkDesign(designOf({ markers: [{ ...old, depth: 0.1 }, fresh] }));
    expect(stops.common).toMatchObject({ min: 0.75, max: 5, minHole: 0, maxHole: 0 });
    expect(stops.settings.map(({ holes }) => holes)).toEqual([[0]]);
  });
});

test("what a planned depth leaves, in the worst case: of the marker, and of the wood, over the channel too", () => {
  const tolerance = { stop: 0.125, point: 0.25, sanding: 0.5, thickness: 0.0625 };
  const planned = (board: Change["board"]) =>
    holeOf({ bit: FORSTNER, tolerance, depth: 2, ...(board && { board }) }).planned;
  expect(planned({})).toMatchObject({
    markerLeft: 2 - 0.75 - 0.125 - 0.25,
    woodLeft: 2.5 - 0.1875,
  });
  expect(planned({ channel: { width: 6, depth: 1 } })).toMatchObject({ woodLeft: 1.5 - 0.1875 });
});

test("holeWindow says what the report says, and takes the design's own fill, bit and stop", () => {
  const change = { bit: FORSTNER, stop: { from: "table", zero: 100 } as const };
  const tapered = { ...change, board: { thickness: { nut: 8, end: 4 } } };
  const { window, lead, rise } = holeOf(tapered, 3);
  const place = { along: 200, offset: 3, diameter: 8 };
  expect(holeWindow(designOf(tapered), place)).toEqual({ ...window, lead, rise });
  const own = { fill: { kind: "poured", keep: 2 }, bit: TWIST, stop: { from: "wood" } } as const;
  const other = holeWindow(designOf(tapered), { ...place, ...own });
  expect(other).toMatchObject({ rise: 0, minBy: "keep" });
  expect(other.lead).toBeCloseTo(4, 12);
  expect(other.min).toBeCloseTo(0.25 + 2, 12);
});
