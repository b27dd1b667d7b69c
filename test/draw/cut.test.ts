/**
 * The board cut across, by hand: a board 64 wide and 8 thick, its surface a cylinder of 65 mm (65² = 63² + 16² =
 * 60² + 25²) under a crown of half a millimetre. Lengths in mm of the board.
 */
import { describe, expect, test } from "vitest";
import {
  bitProfile,
  type Cut,
  cutAt,
  filling,
  finishedTop,
  markerLeft,
  pointHalf,
  underside,
  woodTop,
  woodUnder,
} from "../../src/draw/cut.js";
import { paperFor } from "../../src/draw/section-paper.js";
import { checkDesign } from "../../src/index.js";
import { SQUARED } from "../check/necks.js";

const ROUND = { ...SQUARED, radius: 65 };

function cutOf(change: object, index = 0): Cut {
  const cut = cutAt(checkDesign({ ...ROUND, ...change }), index);
  if (cut === undefined) throw new Error("no cut");
  return cut;
}

const dot = (change: object) => ({ markers: [{ frets: [2], diameter: 32, ...change }] });
const endMill = { bit: { kind: "end-mill" } };
const board = (change: object) => ({ board: { ...SQUARED.board, ...change } });
const near = (value: number) => expect.closeTo(value, 9);
/** The depth of a run of places at an offset, the deepest where it jumps there. */
const depthAt = (places: readonly (readonly [number, number])[], offset: number) =>
  Math.max(...places.filter(([x]) => Math.abs(x - offset) < 1e-9).map(([, depth]) => depth));

describe("the cut", () => {
  test("has the board's width and thickness there, and its finished surface", () => {
    const cut = cutOf({});
    expect(cut).toMatchObject({ half: 32, blank: 8, channel: undefined });
    expect(cut.surface(0)).toBe(0.5);
    expect([cut.surface(16), cut.surface(-16), cut.surface(25)]).toEqual([
      near(2.5),
      near(2.5),
      near(5.5),
    ]);
    const top = finishedTop(cut);
    expect(top[0]).toEqual([-32, near(0.5 + 65 - Math.sqrt(65 ** 2 - 32 ** 2))]);
    expect(top.at(-1)?.[0]).toBe(32);
    expect(depthAt(top, 0)).toBe(0.5);
    const offsets = top.map(([x]) => x);
    expect(offsets).toEqual([...offsets].sort((a, b) => a - b));
    expect(offsets.length).toBeGreaterThanOrEqual(49);
    expect(cutAt(checkDesign(ROUND), 1)).toBeUndefined();
    expect(cutAt(checkDesign(ROUND), -1)).toBeUndefined();
  });

  test("goes through the channel where there is one", () => {
    const at = (channel: object) => cutOf(board({ channel: { depth: 2, ...channel } })).channel;
    expect(at({ width: 8 })).toEqual({ half: 4, roof: 6 });
    // the hole lies at 48
    expect(at({ width: 8, from: 48, to: 60 })).toBeDefined();
    expect(at({ width: 8, from: 10, to: 48 })).toBeDefined();
    expect(at({ width: 8, from: 48.5, to: 60 })).toBeUndefined();
    expect(at({ width: 8, from: 10, to: 47.5 })).toBeUndefined();
    // wider than the board
    expect(at({ width: 80 })).toEqual({ half: 32, roof: 6 });
  });

  test("shows the hole's walls, and those of its twin", () => {
    const cut = cutOf(dot({ diameter: 8, arrangement: "double", spread: 24 }));
    expect(cut.holes.map(({ from, to, index }) => [from, to, index])).toEqual([
      [-16, -8, 0],
      [8, 16, 1],
    ]);
    expect(cut.main.index).toBe(0);
    expect(cutOf(dot({ diameter: 8, arrangement: "double", spread: 24 }), 1).main.index).toBe(1);
    const rectangle = { kind: "rectangle", length: 6, width: 20 };
    const pocket = cutOf({ markers: [{ frets: [2], shape: rectangle }] });
    expect([pocket.main.from, pocket.main.to]).toEqual([-10, 10]);
  });

  test("meets another group's dot beside its middle in a chord", () => {
    // 13 in diameter, 2.5 apart: half the chord is 6
    const scale = { positions: [40, 85] };
    const markers = [
      { frets: [2], diameter: 13, along: "midpoint", arrangement: "double", spread: 40 },
      { frets: [2], diameter: 4, along: "diagonals" },
    ];
    const width = { nut: 64, end: 64 };
    const cut = cutOf({ scale, ...board({ width }), markers }, 1);
    expect(cut.holes.map(({ from, to }) => [from, to])).toEqual([
      [-26.5, -13.5],
      [-2, 2],
      [13.5, 26.5],
    ]);
  });

  test("goes through a pocket that lies beside the crossing it is laid out by", () => {
    // widths of 44.8 and 49.6 at 32 and 64: the diagonals cross at 47.19, the pocket runs from 47.9 to 48.1
    const shape = { kind: "trapezoid", slotGap: 15.9, edgeGap: 6 };
    const markers = [{ frets: [2], shape }];
    const cut = cutOf({ ...board({ width: { nut: 40, end: 64 } }), radius: Infinity, markers });
    expect(cut.main.hole.along).toBeCloseTo(47.19, 2);
    expect(cut.along).toBeCloseTo(48, 9);
    // 47.2 wide in the middle; 6 off either edge, square to it
    const half = 23.6 - 6 * Math.hypot(1, 12 / 160);
    expect([cut.main.from, cut.main.to]).toEqual([near(-half), near(half)]);
  });

  test("does not meet a hole whose edge it only touches", () => {
    const markers = [
      { frets: [2], diameter: 8 },
      { frets: [3], diameter: 64 },
    ];
    expect(cutOf({ radius: Infinity, markers }).holes.map(({ index }) => index)).toEqual([0]);
  });

  test("is drawn to the planned depth, else to the setting's, else to the least", () => {
    expect(cutOf({ depth: 3 }).main).toMatchObject({ depth: 3, why: "planned" });
    const flat = { radius: Infinity };
    // from 1.5 to 6
    expect(cutOf(flat).main).toMatchObject({ depth: 3.75, why: "setting" });
    const thin = cutOf({ ...flat, ...board({ thickness: 2 }) }).main;
    expect(thin).toMatchObject({ depth: 1.5, why: "least" });
  });

  test("of a report that was written as JSON: a flat board's radius is no number there", () => {
    const report = JSON.parse(JSON.stringify(checkDesign({ ...SQUARED, radius: Infinity })));
    const cut = cutAt(report, 0);
    expect(cut?.main.hole.radius).toBe(Infinity);
    expect(cut?.surface(20)).toBe(0.5);
  });
});

describe("the wood", () => {
  test("its top is the finished surface, and the floor where a hole is", () => {
    const cut = cutOf({ ...dot({}), ...endMill, depth: 4 });
    const top = woodTop(cut);
    expect(depthAt(top, 0)).toBe(4);
    expect(depthAt(top, 10)).toBe(4);
    // beside the wall, at 16, the surface lies at 2.5: a step
    const wall = top.filter(([x]) => x === 16).map(([, depth]) => depth);
    expect(wall).toEqual([4, near(2.5)]);
    expect(top[0]?.[0]).toBe(-32);
    expect(top.at(-1)?.[0]).toBe(32);
    // where the surface lies deeper than the floor, nothing of the hole is left
    const shallow = woodTop(cutOf({ ...dot({}), ...endMill, depth: 1.5 }));
    expect(depthAt(shallow, 0)).toBe(1.5);
    expect(depthAt(shallow, 16)).toEqual(near(2.5));
  });

  test("a hole that goes through ends at the underside, or at the channel's roof", () => {
    expect(depthAt(woodTop(cutOf({ ...dot({}), ...endMill, depth: 9 })), 0)).toBe(8);
    const channel = { ...board({ channel: { width: 8, depth: 2 } }) };
    const top = woodTop(cutOf({ ...dot({}), ...endMill, ...channel, depth: 9 }));
    expect(depthAt(top, 0)).toBe(6);
    expect(depthAt(top, 8)).toBe(8);
    const inside = top.filter(([x]) => Math.abs(x) < 3.99).map(([, depth]) => depth);
    expect(new Set(inside)).toEqual(new Set([6]));
    expect(inside.length).toBeGreaterThan(40);
  });

  test("its underside, with the channel", () => {
    expect(underside(cutOf({}))).toEqual([
      [32, 8],
      [-32, 8],
    ]);
    expect(underside(cutOf(board({ channel: { width: 8, depth: 2 } })))).toEqual([
      [32, 8],
      [4, 8],
      [4, 6],
      [-4, 6],
      [-4, 8],
      [-32, 8],
    ]);
  });

  test("what is left under the bit, and of the marker", () => {
    expect(woodUnder(cutOf({ ...dot({}), ...endMill, depth: 3 }))).toBe(5);
    // a point of 1
    expect(woodUnder(cutOf({ ...dot({}), depth: 3 }))).toBe(4);
    expect(woodUnder(cutOf({ ...dot({}), depth: 8 }))).toBe(-1);
    const channel = board({ channel: { width: 8, depth: 2 } });
    expect(woodUnder(cutOf({ ...dot({}), ...endMill, ...channel, depth: 3 }))).toBe(3);
    // a 90° point leads by 2 in the middle of a hole of 4
    const cone = { bit: { kind: "twist", angle: 90 } };
    expect(woodUnder(cutOf({ ...dot({ diameter: 4 }), ...cone, depth: 3 }))).toEqual(near(3));
    // the surface lies at 2.5 at its walls
    expect(markerLeft(cutOf({ ...dot({}), depth: 4 }))).toEqual(near(1.5));
    expect(markerLeft(cutOf({ ...dot({}), depth: 2 }))).toEqual(near(-0.5));
    // of two, the side farther out
    const aside = cutOf({ ...dot({ diameter: 9, arrangement: "double", spread: 41 }), depth: 6 });
    expect(markerLeft(aside)).toEqual(near(0.5));
  });
});

describe("what fills the hole", () => {
  test("epoxy: from the surface to the floor, down into the point's hole", () => {
    const cut = cutOf({ ...dot({}), depth: 4 });
    const area = filling(cut, cut.main) ?? [];
    expect(area[0]).toEqual([-16, near(2.5)]);
    expect(area.at(-1)).toEqual([-16, near(4)]);
    expect(depthAt(area, 0)).toBe(5);
    // the point is 0.6 to either side
    expect(pointHalf(cut.main.hole)).toBe(0.6);
    expect(depthAt(area, 0.6)).toEqual(near(4));
    expect(Math.min(...area.map(([, depth]) => depth))).toEqual(near(0.5));
  });

  test("a solid dot: from where it was glued, or from the surface, to the rim", () => {
    const solid = (thickness: number, depth: number) => {
      const cut = cutOf({ ...dot({}), depth, fill: { kind: "solid", thickness, keep: 0.1 } });
      return filling(cut, cut.main);
    };
    // 4 − 2 = 2 lies below the surface in the middle, above it at the walls
    const low = solid(2, 4) ?? [];
    expect(Math.min(...low.map(([, depth]) => depth))).toBe(2);
    expect(Math.max(...low.map(([, depth]) => depth))).toBe(4);
    expect(low[0]).toEqual([-16, near(2.5)]);
    expect(Math.min(...(solid(5, 4) ?? []).map(([, depth]) => depth))).toEqual(near(0.5));
  });

  test("nothing, where it is sanded away; no more than the wood is thick", () => {
    const away = cutOf({ ...dot({}), ...endMill, depth: 0.5 });
    expect(filling(away, away.main)).toBeUndefined();
    const through = cutOf({ ...dot({}), ...endMill, depth: 9 });
    const area = filling(through, through.main) ?? [];
    expect(Math.max(...area.map(([, depth]) => depth))).toBe(8);
  });

  test("what is left in the middle, where the walls are sanded away", () => {
    const cut = cutOf({ ...dot({}), ...endMill, depth: 2 });
    const area = filling(cut, cut.main) ?? [];
    // between the surface and the floor in the middle, none at the walls
    expect(area.filter(([x]) => x === 0).map(([, depth]) => depth)).toEqual([0.5, 2]);
    expect(area.filter(([x]) => x === 16).map(([, depth]) => depth)).toEqual([
      near(2.5),
      near(2.5),
    ]);
  });

  test("nothing of a hole that lies off the board", () => {
    const off = { ...dot({ diameter: 4, arrangement: "double", spread: 80 }), radius: Infinity };
    const cut = cutOf({ ...off, depth: 4 });
    expect([cut.main.from, cut.main.to]).toEqual([-42, -38]);
    expect(filling(cut, cut.main)).toBeUndefined();
    // its edge just at the board's
    const beside = { ...dot({ diameter: 4, arrangement: "double", spread: 68 }), radius: Infinity };
    const edge = cutOf({ ...beside, depth: 4 });
    expect(filling(edge, edge.main)).toBeUndefined();
  });

  test("on the board alone, where the hole reaches past its edge", () => {
    const cut = cutOf({
      ...dot({ diameter: 9, arrangement: "double", spread: 61 }),
      radius: Infinity,
      ...endMill,
      depth: 4,
    });
    expect([cut.main.from, cut.main.to]).toEqual([-35, -26]);
    const offsets = filling(cut, cut.main)?.map(([x]) => x) ?? [];
    expect([Math.min(...offsets), Math.max(...offsets)]).toEqual([-32, -26]);
    expect(woodUnder(cut)).toBe(4);
  });
});

describe("the bit", () => {
  test("its walls and its rim, and its point at the axis", () => {
    const { main } = cutOf({ ...dot({}), depth: 4 });
    expect(bitProfile(main)).toEqual([
      [-16, 0],
      [-16, 4],
      [-0.6, near(4)],
      [0, 5],
      [0.6, near(4)],
      [16, 4],
      [16, 0],
    ]);
  });

  test("of a hole that is cut aside of its axis only what lies between the walls", () => {
    const { main } = cutOf({ ...dot({}), depth: 4 });
    const offsets = (from: number, to: number) =>
      bitProfile({ ...main, from, to })
        .slice(2, -2)
        .map(([x]) => x);
    expect(offsets(-1, 1)).toEqual([-0.6, 0, 0.6]);
    expect(offsets(-0.5, 1)).toEqual([0, 0.6]);
    expect(offsets(-1, 0.5)).toEqual([-0.6, 0]);
    expect(offsets(0, 0.6)).toEqual([]);
  });

  test("a cone leads most at its axis", () => {
    // 90°: as deep as the hole's half width
    const { main } = cutOf({
      ...dot({ diameter: 4 }),
      bit: { kind: "twist", angle: 90 },
      depth: 3,
    });
    expect(main.floor(0)).toEqual(near(5));
    expect(main.floor(1)).toEqual(near(4));
    expect(main.floor(-2)).toEqual(near(3));
    // of a small hole an eighth of its width
    expect(pointHalf(main.hole)).toBe(0.5);
  });
});

describe("its paper", () => {
  test("as large as finds room, heights as many times larger as asked", () => {
    // 130 for 64 mm: 2 : 1; heights 120 / (8 · 4)
    const flat = { ...dot({}), radius: Infinity, depth: 4 };
    const paper = paperFor(cutOf(flat), 4);
    expect(paper).toMatchObject({ across: 2, upright: 8, exaggeration: 4, side: 1 });
    expect(paper.spot([-3, 5])).toEqual([-6, 40]);
    expect(paper).toMatchObject({ reach: 64, top: near(0), bottom: 64 });
    // 120 for 8 · 10 mm
    expect(paperFor(cutOf(flat), 10).across).toBe(1.5);
  });

  test("makes room for a hole past the edge, a tip below the board, a window above it", () => {
    const past = dot({ diameter: 9, arrangement: "double", spread: 61 });
    const paper = paperFor(cutOf({ ...past, radius: Infinity, depth: 4 }), 1);
    // 130 for 70 mm
    expect(paper).toMatchObject({ across: 1.5, reach: 52.5, side: -1 });
    const deep = paperFor(cutOf({ ...dot({}), depth: 9 }), 1);
    expect(deep.bottom).toEqual(near(10 * deep.upright));
    // a web of 9 on 8 mm: at most −2
    const high = paperFor(cutOf({ radius: Infinity, web: 9 }), 1);
    expect(high.top).toEqual(near(-2 * high.upright));
    expect(paperFor(cutOf({ ...past, radius: Infinity }, 1), 1).side).toBe(1);
    // 120 for 10 · 10
    expect(paperFor(cutOf({ radius: Infinity, web: 9 }), 10).across).toBe(1);
  });
});
