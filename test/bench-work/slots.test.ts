/** Saw depths. Boards 40 wide; a radius of 25 drops 10 at the edges (15-20-25), and 5 at 15. Lengths in mm. */
import { describe, expect, test } from "vitest";
import type { FretLine } from "../../src/board/fret-lines.js";
import type { Spec } from "../../src/design/spec.js";
import { prepare } from "../../src/drilling/neck.js";
import { slotsOf } from "../../src/drilling/slots.js";
import type { Surface } from "../../src/geometry/surface.js";
import { constantTrack, type Track, trackThrough } from "../../src/geometry/track.js";
import { boardOf, leaning, square } from "../layout/frames.js";

const { spec } = prepare({
  scale: { length: 600, frets: 12 },
  board: { length: 320, width: 50, thickness: 6 },
  radius: 300,
  tolerance: { stop: 0, thickness: 0.5, layout: 0, crown: 0, radius: 0 },
  slot: { depth: 3, tang: 2, clearance: 0.25, web: 1 },
  markers: [{ frets: [5], diameter: 6 }],
});

interface Stated {
  readonly thickness?: Track;
  readonly deepest?: Partial<Surface>;
  readonly channel?: Spec["channel"];
}

/** The plan of these slots behind a square nut; tang + clearance are 2.25, web + tolerance 1.5. */
function planOf(slots: readonly FretLine[], { thickness, deepest, channel }: Stated = {}) {
  const surface = { crown: constantTrack(0), radius: constantTrack(25), ...deepest };
  const board = boardOf([square(0), ...slots], 40, {
    length: 300,
    thickness: thickness ?? constantTrack(20),
    deepest: surface,
  });
  return slotsOf(board, { ...spec, channel });
}

/** From bass 100 to treble 140: 1 along for 1 across, 120 on the centre line. */
const SLANTED = leaning(100, 140);
/** The same turned about the centre line. */
const TURNED = leaning(140, 100);

describe("which frets govern", () => {
  test("frets alike: the first of them", () => {
    const plan = planOf([square(50), square(90), square(120)]);
    expect(plan).toMatchObject({ least: 12.25, most: 18.5, leastAt: 1, mostAt: 1 });
    expect(plan?.frets).toHaveLength(3);
  });

  test("the deepest and the thinnest, wherever they stand", () => {
    const plan = planOf([square(50), square(90), square(120)], {
      thickness: trackThrough([50, 90, 120], [20, 18, 19]),
      deepest: { crown: trackThrough([50, 90, 120], [0, 1, 3]) },
    });
    expect(plan).toMatchObject({ least: 15.25, most: 16.5, leastAt: 3, mostAt: 2 });
  });

  test("no fret on the board: no plan", () => {
    expect(planOf([])).toBeUndefined();
    expect(planOf([square(301)])).toBeUndefined();
    expect(planOf([leaning(290, 301)])).toBeUndefined();
  });
});

describe("the most", () => {
  test.each([SLANTED, TURNED])("is held by the thinnest place under a slanted slot", (slot) => {
    const plan = planOf([slot], { thickness: trackThrough([0, 120, 300], [16, 4, 16]) });
    expect(plan?.most).toBe(4 - 1.5);
    const beyond = planOf([slot], { thickness: trackThrough([0, 150, 300], [19, 4, 19]) });
    expect(beyond?.most).toBeCloseTo(5 - 1.5, 12);
  });

  // the part over a channel 8 wide runs from 116 to 124
  test.each([SLANTED, TURNED])(
    "over the channel is held by the slot's part there alone",
    (slot) => {
      const channel = { width: 8, depth: 2, from: 20, to: 250 };
      const inside = planOf([slot], {
        channel,
        thickness: trackThrough([0, 118, 300], [15.8, 4, 16]),
      });
      expect(inside?.frets[0]).toMatchObject({ most: 4 - 2 - 1.5, mostBy: "channel" });
      const past = planOf([slot], {
        channel,
        thickness: trackThrough([0, 126, 300], [16.6, 4, 4.5]),
      });
      // 4.2 at 124
      expect(past?.most).toBeCloseTo(4.2 - 2 - 1.5, 12);
      const before = planOf([slot], {
        channel,
        thickness: trackThrough([0, 114, 300], [4.5, 4, 22.6]),
      });
      // 4.2 at 116
      expect(before?.most).toBeCloseTo(4.2 - 2 - 1.5, 12);
    },
  );

  test.each([SLANTED, TURNED])(
    "a channel that ends before the slot's part, or begins behind it",
    (slot) => {
      const most = (from: number, to: number) =>
        planOf([slot], { channel: { width: 8, depth: 2, from, to } })?.frets[0];
      expect(most(20, 115.9)).toMatchObject({ most: 18.5, mostBy: "web" });
      expect(most(20, 116)).toMatchObject({ most: 16.5, mostBy: "channel" });
      expect(most(124, 250)).toMatchObject({ most: 16.5, mostBy: "channel" });
      expect(most(124.1, 250)).toMatchObject({ most: 18.5, mostBy: "web" });
    },
  );

  test.each([SLANTED, TURNED])("a channel wider than the board runs to its edges", (slot) => {
    const channel = { width: 60, depth: 2, from: 20, to: 250 };
    const plan = planOf([slot], { channel, thickness: trackThrough([0, 90, 300], [13, 4, 25]) });
    // 5 at 100
    expect(plan?.most).toBeCloseTo(5 - 2 - 1.5, 12);
  });

  test("a channel of no depth is no reason", () => {
    const channel = { width: 8, depth: 0, from: 20, to: 250 };
    expect(planOf([square(100)], { channel })?.frets[0]).toMatchObject({
      most: 18.5,
      mostBy: "web",
    });
  });
});

describe("the least", () => {
  test.each([
    { slot: SLANTED, at: "treble" },
    { slot: TURNED, at: "bass" },
  ])("is set by a ridge of the crown under a slanted slot, on its $at half", ({ slot }) => {
    // at 135 the slot is 15 off the centre line: 30 + 5; at 140 15 + 10, at 100 22.2 + 10
    const plan = planOf([slot], { deepest: { crown: trackThrough([0, 135, 145], [0, 30, 0]) } });
    expect(plan?.least).toBeCloseTo(2.25 + 35, 9);
  });

  test("is set by an end where the crown falls evenly", () => {
    const crown = trackThrough([0, 300], [0, 30]);
    expect(planOf([SLANTED], { deepest: { crown } })?.least).toBeCloseTo(2.25 + 14 + 10, 9);
    expect(planOf([square(100)], { deepest: { crown } })?.least).toBeCloseTo(2.25 + 10 + 10, 9);
  });

  // a cone of slope 0.1 and radius 25 drops 400 / (25 + √(225 + 4)) = 9.97 at 20, a cylinder 10
  test.each([
    [140, [39, 25, 25]],
    [140 + 1e-8, [39, 25, 25]],
    [100, [25, 25, 45]],
    [100 - 1e-8, [25, 25, 45]],
  ])("counts both sides of a bend at the slot's end, %d", (bend, radii) => {
    const radius = trackThrough([0, bend, 300], radii);
    for (const slot of [SLANTED, TURNED]) {
      expect(planOf([slot], { deepest: { radius } })?.least).toBeCloseTo(2.25 + 10, 6);
    }
  });
});
