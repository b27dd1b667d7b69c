/** Edges and fret slots: a radius of 25 drops 10 at 20 from its crest (15-20-25) and 5 at 15. Lengths in mm. */
import { describe, expect, test } from "vitest";
import { checkDesign, type Design } from "../../src/index.js";
import { EXACT } from "../check/necks.js";

/** 200 long, 16 thick, 30 wide at the nut and 40 from fret 1 on; 1 is sanded off. */
const BOARD = {
  scale: { positions: [100, 200] },
  board: { length: 200, width: { nut: 30, fret1: 40, end: 40 }, thickness: 16 },
  radius: 25,
  sanding: 1,
  markers: [],
  tolerance: EXACT,
} satisfies Design;

const SLOT = { tang: 2, clearance: 0.25, web: 1.5 };
const onBoard = (change: object) => ({ ...BOARD, board: { ...BOARD.board, ...change } }) as Design;
/** All but that so tight a radius is unlikely. */
const findingsOf = (design: Design) =>
  checkDesign(design).findings.filter(({ code }) => code !== "unlikely-value");
const codesOf = (design: Design) => findingsOf(design).map(({ code }) => code);

describe("edges", () => {
  // at 15 from the crest 25 − 20 = 5 go, at 20 from it 25 − 15 = 10; and 1 everywhere
  const nut = { station: "nut", along: 0, offset: 15, sanding: 1, removal: 6, thickness: 10 };
  const fret = { ...nut, station: "fret1", along: 100, offset: 20, removal: 11, thickness: 5 };
  const rest = [
    { ...fret, station: "fret2", along: 200 },
    { ...fret, station: "end", along: 200 },
  ];

  test("the nut, each fret, the end; with side dots the middle of the face", () => {
    expect(checkDesign(BOARD).edges).toStrictEqual([nut, fret, ...rest]);
    const sideDots = { diameter: 1 };
    const lines = checkDesign({ ...BOARD, sideDots }).edges.map(({ sideDotLine }) => sideDotLine);
    expect(lines).toEqual([5, 2.5, 2.5, 2.5]);
  });

  test("an existing radius: what goes is less, what is left is the same", () => {
    const edges = checkDesign({ ...BOARD, existing: { radius: 65 } }).edges;
    // 65 has dropped 65 − √(65² − 15²) at the nut; sanding that does not reach it leaves it
    const old = 65 - Math.sqrt(65 ** 2 - 15 ** 2);
    expect(edges[0]?.removal).toBeCloseTo(6 - old, 12);
    expect(edges[0]?.thickness).toBe(10);
    const kept = checkDesign({ ...BOARD, existing: { radius: 25 }, radius: "flat" }).edges;
    expect(kept[0]).toMatchObject({ removal: 0, thickness: 11 });
  });

  test("fanned frets: each edge by itself, but for the end, and none beyond it", () => {
    const scale = { bass: 200, treble: 240, square: 0, frets: 12 };
    const design = { ...onBoard({ length: 110, width: 40 }), scale };
    const { edges } = checkDesign(design);
    expect(edges.slice(0, 4).map(({ station, side }) => [station, side])).toEqual([
      ["nut", "bass"],
      ["nut", "treble"],
      ["fret1", "bass"],
      ["fret1", "treble"],
    ]);
    // fret 11 lies at 94.1 and 112.9
    expect(edges.at(-2)).toMatchObject({ station: "fret10", side: "treble" });
    expect(edges.at(-1)).toMatchObject({ station: "end", along: 110 });
    expect(edges.at(-1)).not.toHaveProperty("side");
    const [finding] = findingsOf(design);
    expect(finding).toMatchObject({ code: "fret-past-end", fret: 11, limit: 110 });
    expect(finding?.value).toBeCloseTo(240 * (1 - 2 ** (-11 / 12)), 9);
  });

  test("the worst case of the face: thickness, sanding, radius and crest", () => {
    const thin = (change: object, web: number) =>
      findingsOf({ ...onBoard({ width: 30 }), web, tolerance: { ...EXACT, ...change } });
    // 16 − 1 − 5 as designed; as thick as the web still passes
    expect(thin({}, 10)).toEqual([]);
    expect(thin({}, 10.001)[0]).toMatchObject({ code: "thin-edge", station: "nut", limit: 10.001 });
    expect(thin({ thickness: 0.25, sanding: 0.5 }, 9.25)).toEqual([]);
    expect(thin({ thickness: 0.25, sanding: 0.5 }, 9.26)).toHaveLength(4);
    // a crest 5 aside: 20 from it
    expect(thin({ crest: 5 }, 5)).toEqual([]);
    expect(thin({ crest: 5 }, 5.001).map(({ fret }) => fret)).toEqual([undefined, 1, 2, undefined]);
  });
});

describe("slots: straight floors, measured from the crest", () => {
  const slotsOf = (design: Design, slot: object = {}) =>
    checkDesign({ ...design, slot: { ...SLOT, ...slot } }).slots;

  test("least: tang, clearance, sanding and drop at the edge; most: the wood less the web", () => {
    expect(slotsOf(BOARD)).toEqual({ min: 2.25 + 1 + 10, max: 16 - 1.5, minAt: 1, maxAt: 1 });
    expect(checkDesign(BOARD)).not.toHaveProperty("slots");
  });

  test("the worst case: sanding, crest, radius and thickness; the old top where it still shows", () => {
    const worst = (tolerance: object, change: object = {}) =>
      slotsOf({ ...onBoard({ width: 30 }), ...change, tolerance: { ...EXACT, ...tolerance } });
    expect(worst({ sanding: 0.5, thickness: 0.25 })).toMatchObject({ min: 8.25 + 0.5, max: 14.25 });
    expect(worst({ crest: 5 })?.min).toBe(2.25 + 1 + 10);
    // 31.25 less a fifth is 25
    expect(worst({ radius: 0.2 }, { radius: 31.25 })?.min).toBeCloseTo(2.25 + 1 + 5, 12);
    const old = { radius: "flat", existing: { radius: 25 } };
    expect(worst({ crest: 5 }, old)?.min).toBe(2.25 + 5);
    expect(worst({}, { ...old, sanding: 6 })?.min).toBe(2.25 + 6);
  });

  test("the frets that govern, and none beyond the end", () => {
    const falling = { ...BOARD, sanding: { nut: 0, end: 2 } };
    expect(slotsOf(falling)).toMatchObject({ min: 2.25 + 2 + 10, minAt: 2 });
    const thickness = { nut: 20, end: 16 };
    expect(slotsOf(onBoard({ thickness }))).toMatchObject({ max: 14.5, maxAt: 2 });
    expect(slotsOf(onBoard({ thickness, length: 190 }))).toMatchObject({ maxAt: 1 });
    expect(slotsOf(onBoard({ length: 90 }))).toBeUndefined();
  });

  test("a slanted slot over a ridge of the sanding: at its ends, and where it crosses the ridge", () => {
    // fret 12 runs from 330 to 320 and crosses the ridge of 7 on the centre line, at 325; 1 at fret 11 and at 345
    const fanned = (ridge: number) =>
      slotsOf({
        ...BOARD,
        scale: { bass: 660, treble: 640, square: 0, frets: 12 },
        board: { length: 345, width: 40, thickness: 40 },
        sanding: { nut: 1, fret11: 1, fret12: ridge, end: 1 },
      });
    // at its bass end a quarter of the way down to 1, and 10 of drop
    expect(fanned(7)).toMatchObject({ minAt: 12, min: expect.closeTo(2.25 + 5.5 + 10, 9) });
    // so high that no drop at the ends makes up for it
    expect(fanned(49)).toMatchObject({ minAt: 12, min: expect.closeTo(2.25 + 49, 9) });
  });

  test("over the rod channel less may be sawn, as far as it runs", () => {
    const over = (from: number, to: number) =>
      slotsOf(onBoard({ channel: { width: 6, depth: 2, from, to } }));
    expect(over(0, 99)).toMatchObject({ max: 14.5, maxAt: 1 });
    expect(over(0, 100)).toMatchObject({ max: 12.5, maxAt: 1 });
    expect(over(101, 200)).toMatchObject({ max: 12.5, maxAt: 2 });
    expect(over(101, 199)).toMatchObject({ max: 14.5 });
  });

  test("a planned depth is held against every fret; its very limits pass", () => {
    const saw = (depth: number, slot: object = {}) =>
      codesOf({ ...onBoard({ width: 30 }), slot: { ...SLOT, depth, ...slot } });
    // 8.25 to 14.5
    expect(saw(8.25)).toEqual([]);
    expect(saw(8.2499)).toEqual(["slot-too-shallow", "slot-too-shallow"]);
    expect(saw(14.5)).toEqual([]);
    expect(saw(14.5001)).toEqual(["slot-too-deep", "slot-too-deep"]);
    expect(saw(9, { web: 7.75 })).toEqual(["slot-too-deep", "slot-too-deep"]);
    expect(saw(8.25, { web: 7.76 })[0]).toBe("no-slot-depth");
  });
});

describe("epoxy", () => {
  // flat, the sanding 1, a keep of 1 and a web of 1: 2 to 15 deep, so 8.5
  const poured = (group: object, change: object = {}) =>
    checkDesign({
      ...BOARD,
      radius: "flat",
      fill: { kind: "poured", keep: 1 },
      bit: { kind: "end-mill" },
      markers: [{ places: [{ along: 50, offset: 0 }], ...group }],
      pour: { waste: 0.25, ratio: [3, 2] },
      ...change,
    } as unknown as Design).pour;

  test("cylinders to the floor, with waste, by the ratio", () => {
    const pour = poured({ diameter: 20 });
    // π · 10² · 8.5 mm³, a quarter more
    expect(pour?.volume).toBeCloseTo(1.25 * 0.85 * Math.PI, 12);
    expect(pour?.resin).toBeCloseTo(0.6 * 1.25 * 0.85 * Math.PI, 12);
    expect(pour?.hardener).toBeCloseTo(0.4 * 1.25 * 0.85 * Math.PI, 12);
  });

  test("a twist bit of 90° leaves a cone as deep as its radius, and takes 5 of the window", () => {
    const pour = poured({ diameter: 10 }, { bit: { kind: "twist", angle: 90 } });
    // 2 to 10: 6, and a third of 5
    expect(pour?.volume).toBeCloseTo((1.25 * Math.PI * 25 * (6 + 5 / 3)) / 1000, 12);
  });

  test("a pocket: its area times its depth; a hole that no depth suits: its planned depth, or none", () => {
    const shape = { kind: "rectangle", length: 40, width: 20 };
    expect(poured({ shape })?.volume).toBeCloseTo(1.25 * 0.8 * 8.5, 12);
    const none = { fill: { kind: "poured", keep: 15 } };
    expect(poured({ shape, ...none })?.volume).toBe(0);
    expect(poured({ shape, ...none, depth: 10 })?.volume).toBeCloseTo(1.25 * 8, 12);
    // the deeper of what is planned and what is recommended, 8.5, whichever of the two is drilled
    expect(poured({ shape, depth: 10 })?.volume).toBeCloseTo(1.25 * 8, 12);
    expect(poured({ shape, depth: 5 })?.volume).toBeCloseTo(1.25 * 0.8 * 8.5, 12);
  });

  test("none for solid dots, nor for what is drilled", () => {
    expect(poured({ diameter: 5, fill: { kind: "solid", thickness: 2 } })).toBeUndefined();
    const old = { diameter: 5, depth: 3, drilled: true };
    expect(poured(old)).toBeUndefined();
    const fresh = { places: [{ along: 150, offset: 0 }], diameter: 20 };
    const markers = [{ ...fresh, places: [{ along: 50, offset: 0 }], ...old }, fresh];
    expect(poured({}, { markers })).toEqual(poured({ diameter: 20 }));
  });
});
