/** The stop: what a travel is counted from, and the fewest settings, on boards and number lines that can be counted. Lengths in mm. */
import { describe, expect, test } from "vitest";
import { checkDesign, type Design, type Size, stopSettings } from "../../src/index.js";
import { type Change, designOf, drop, FORSTNER, holeOf, TWIST } from "./bench.js";

/** The travel and the rise of a hole whose floor is meant to lie 2 deep. */
function travelOf(change: Change, offset = 0) {
  const { planned, rise } = holeOf({ depth: 2, ...change }, offset);
  expect(planned?.depth).toBe(2);
  return { travel: planned?.travel, rise };
}

describe("a travel is the depth and the lead, less the rise and the correction", () => {
  test.each<[string, Change, number, number]>([
    ["from the wood of a blank", { bit: FORSTNER }, 2 + 1.5, 0],
    ["with a foot there", { bit: FORSTNER, stop: { foot: 20 } }, 2 + 1.5, 0],
    ["a tip that goes farther than set", { bit: FORSTNER, stop: { correction: 0.25 } }, 3.25, 0],
    ["and less far", { bit: FORSTNER, stop: { correction: -0.25 } }, 3.75, 0],
    ["a drilled hole has none", { depth: 2 }, 2, 0],
  ])("%s", (_, change, travel, rise) => {
    expect(travelOf(change)).toEqual({ travel, rise });
  });

  test("a planned travel says how deep the floor comes", () => {
    const stop = { from: "wood", correction: 0.25 } as const;
    const { planned, window } = holeOf({ bit: FORSTNER, stop, travel: 3.5 });
    expect(planned).toMatchObject({ travel: 3.5, depth: 3.5 + 0.25 - 1.5 });
    // 0.25 are sanded off, 6 thick: the point goes 3.75 deep
    expect(planned).toMatchObject({ markerLeft: 2.25 - 0.25, woodLeft: 6 - 3.75 });
    // the window is of depths: the correction moves travels alone
    expect([window.min, window.max]).toEqual([0.75, 6 - 1.5 - 1]);
    const { common } = checkDesign(designOf({ bit: FORSTNER, stop })).stops;
    expect([common?.min, common?.max]).toEqual([0.75 + 1.5 - 0.25, 3.5 + 1.5 - 0.25]);
  });
});

describe("from the wood of an existing radius of 25: at 15 it has dropped 5, at 20 10, at 7 1", () => {
  const curved = {
    existing: { radius: 25 },
    radius: "flat",
    sanding: 20,
    board: { width: 49 },
  } as const;
  const bit = FORSTNER;

  test.each<[string, Change, number, number]>([
    ["a point touches where it drills", { bit }, 20, 0],
    ["a foot of 10 bears 5 nearer the crest", { bit, stop: { foot: 10 } }, 20, 5 - 10],
    ["on the bass side as well", { bit, stop: { foot: 10 } }, -20, 5 - 10],
    ["a foot over the crest bears on it", { bit, stop: { foot: 40 } }, 15, -5],
    ["an end mill of 8 bears with its own width", {}, 11, 1 - drop(25, 11)],
    ["or with a wider foot", { stop: { foot: 22 } }, 11, 0 - drop(25, 11)],
  ])("%s", (_, change, offset, rise) => {
    const found = travelOf({ ...curved, ...change }, offset);
    expect(found.rise).toBeCloseTo(rise, 12);
    expect(found.travel).toBeCloseTo(2 + (change.bit ? 1.5 : 0) - rise, 12);
  });

  test("a pocket's mill has the foot alone", () => {
    const shape = { kind: "rectangle", length: 6, width: 8 } as const;
    const markers = [{ places: [{ along: 200, offset: 11 }], shape }];
    expect(travelOf({ ...curved, markers }).rise).toBe(0);
  });

  test("off its mark by 3 the floor sinks with what bears, from 15 aside to 12", () => {
    const marker = { places: [{ along: 200, offset: 20 }], diameter: 2 };
    const tolerance = { layout: 3 };
    const { window } = holeOf({ ...curved, bit, stop: { foot: 10 }, markers: [marker], tolerance });
    // planed flat at 20; the top at the mark is 10 down, where the foot bears 5
    expect(window.min).toBeCloseTo(20 - (10 + drop(25, 12) - 5) + 0.5, 11);
    const thick = { width: 49, thickness: 40 };
    const deep = holeOf({
      ...curved,
      board: thick,
      bit,
      stop: { foot: 10 },
      markers: [marker],
      tolerance,
    });
    // off by 3 the other way it bears at 18
    expect(deep.window.max).toBeCloseTo(40 - (10 + drop(25, 18) - 5) - 1.5 - 1, 11);
  });
});

describe("from the table", () => {
  // 5 thick at the nut, 3 at the end: 4.5 at 100, 4 at 200
  const tapered = { board: { thickness: { nut: 5, end: 3 } } };
  const table = { from: "table", zero: 100 } as const;

  test("on a blank that tapers a hole comes out shallower by the fall since the touch", () => {
    expect(travelOf({ ...tapered, bit: FORSTNER, stop: table })).toEqual({
      travel: 2 + 1.5 + 0.5,
      rise: 4 - 4.5,
    });
  });

  test("zeroed half way between the nut and fret 1 where nothing is said", () => {
    const scale = { positions: [80, 390] };
    const { rise } = travelOf({ ...tapered, scale, stop: { from: "table" } });
    expect(rise).toBeCloseTo(4 - 4.8, 12);
  });

  test("the neck under the board counts, or a height that is stated", () => {
    const neck = { thickness: { nut: 12, end: 16 } };
    const board = { ...tapered.board, channel: "none" } as const;
    expect(travelOf({ neck, board, stop: table }).rise).toBeCloseTo(4 + 14 - (4.5 + 13), 12);
    const height = { nut: 20, end: 16 };
    expect(travelOf({ neck, board, stop: { ...table, height } }).rise).toBeCloseTo(18 - 19, 12);
  });

  test("the tip stays level: an existing radius drops away under it", () => {
    const curved = { existing: { radius: 25 }, sanding: 20, board: { width: 48 } };
    expect(travelOf({ ...curved, stop: table }, 15).rise).toBe(-5);
    // off its mark it stays where it is; the finished surface and the floor are level
    const { window } = holeOf({ ...curved, stop: table, tolerance: { layout: 3 } }, 15);
    expect(window.min).toBeCloseTo(20 - 5 + 0.5, 12);
  });

  test("the floor is level while the crest falls: 0.005 per mm over 4 of hole and 1 of layout", () => {
    const change = { ...tapered, stop: table, tolerance: { layout: 1 } };
    const { window } = holeOf(change);
    expect(window.min).toBeCloseTo(0.25 + 0.005 * 5 + 0.5, 12);
    // the underside is level too: the wood is as thick all over
    expect(window.max).toBeCloseTo(4 - 1, 12);
    const fill = { kind: "solid", thickness: 1, keep: 0.5 } as const;
    expect(holeOf({ ...change, fill }).window.max).toBeCloseTo(1 + 0.25 - 0.005 * 5, 12);
  });

  test("over a channel of one depth the wood is as thick all over as well", () => {
    const channel = { width: 6, depth: 1 };
    const { window } = holeOf({ board: { ...tapered.board, channel }, stop: table });
    expect(window).toMatchObject({ max: 4 - 1 - 1, maxBy: "channel" });
  });

  test("seat counts with the stop, from the table alone", () => {
    const tolerance = { stop: 0.125, seat: 0.25 };
    const { window } = holeOf({ stop: { from: "table" }, tolerance });
    expect(window).toMatchObject({ min: 0.75 + 0.375, max: 5 - 0.375 });
    expect(holeOf({ tolerance }).window).toMatchObject({ min: 0.75 + 0.125, max: 5 - 0.125 });
  });

  test("the work lies level: a height that changes by more than 0.02 per mm is an issue", () => {
    const stop = (end: number): Change => ({ stop: { ...table, height: { nut: 20, end } } });
    expect(travelOf(stop(12)).rise).toBeCloseTo(16 - 18, 12);
    expect(() => checkDesign(designOf(stop(11.9)))).toThrow(
      /stop\.height: expected a height .*0\.02/,
    );
    expect(() => checkDesign(designOf(stop(28.1)))).toThrow(/stop\.height/);
  });
});

const window = (min: number, max: number, tool?: string) => ({ min, max, tool });
const travelsOf = (...windows: ReturnType<typeof window>[]) =>
  stopSettings(windows).settings.map(({ travel, holes }) => [travel, ...holes]);

describe("the plan", () => {
  test("one travel for all in the middle of what they share, and the holes that govern", () => {
    const plan = stopSettings([window(1, 9), window(2, 8), window(0, 7), window(1.5, 7.5)]);
    expect(plan.common).toEqual({ min: 2, max: 7, minHole: 1, maxHole: 2 });
    expect(plan.settings).toEqual([{ ...plan.common, travel: 4.5, holes: [0, 1, 2, 3] }]);
    expect(travelsOf(window(1, 2), window(2, 3))).toEqual([[2, 0, 1]]);
  });

  test("of holes alike the first governs", () => {
    const { common } = stopSettings([window(1, 3), window(1, 3), window(0, 4)]);
    expect(common).toMatchObject({ minHole: 0, maxHole: 0 });
  });

  test("the fewest settings, each hole at the one that lies deepest inside its window", () => {
    expect(travelsOf(window(1, 2), window(5, 6), window(1.9, 7))).toEqual([
      [1.5, 0],
      [5.5, 1, 2],
    ]);
    expect(travelsOf(window(7, 8), window(1, 2), window(4, 5), window(1.5, 4.5))).toHaveLength(3);
    expect(travelsOf(window(1, 4), window(3, 6), window(5, 8), window(2, 7))).toHaveLength(2);
  });

  test("a hole that no travel suits is left aside, and no travel suits all", () => {
    const { common, settings } = stopSettings([window(1, 2), window(4, 3), window(1, 3)]);
    expect(common).toBeNull();
    expect(settings).toMatchObject([{ holes: [0, 2], min: 1, max: 2, travel: 1.5 }]);
    expect(stopSettings([window(3, 2)]).settings).toEqual([]);
    expect(stopSettings([])).toEqual({ common: null, settings: [] });
  });

  test("tool by tool where one travel does not serve all, and only then", () => {
    expect(travelsOf(window(1, 4, "a"), window(3, 6, "b"))).toEqual([[3.5, 0, 1]]);
    // without tools two stabs, at 4 and 8, would do
    const mixed = [window(1, 4, "a"), window(5, 8, "a"), window(2, 7, "b"), window(3, 8, "b")];
    expect(travelsOf(...mixed)).toEqual([
      [2.5, 0],
      [5, 2, 3],
      [6.5, 1],
    ]);
  });

  test.each([
    // a step on the window's own ends suits; none inside leaves the middle
    [1, 2, 2.9, 2],
    [1, 2.1, 3, 3],
    [1, 2.25, 2.75, 2.5],
    [1, 1.2, 3.4, 2],
    // no step at all is none
    [4, -1, 2, 0.5],
    // 23 · 0.1 is 2.3000000000000003
    [0.1, 2.3, 2.3, 2.3],
    [0.1, 2.26, 2.3, 2.3],
    // so is the sum of 0.1 and 2.2
    [0.1, 0.1 + 2.2, 0.1 + 2.2, 2.3],
  ])("on a step of %d within %d and %d: %d", (step, min, max, travel) => {
    expect(stopSettings([window(min, max)], { step }).settings[0]?.travel).toBe(travel);
  });

  test("each stop of the design has its settings, and there is no common travel then", () => {
    const at = (along: number) => ({ places: [{ along, offset: 0 }] });
    const press = { from: "table", zero: 100 } as const;
    const pocket = { shape: { kind: "rectangle", length: 6, width: 8 } } as const;
    const markers: Design["markers"] = [
      { ...at(100), diameter: 8, bit: FORSTNER, stop: press },
      { ...at(200), diameter: 8, bit: TWIST, stop: press },
      { ...at(300), ...pocket, stop: { from: "wood", step: 0.5 } },
    ];
    const { stops, findings } = checkDesign(designOf({ markers }));
    expect(stops.common).toBeNull();
    // dots at 0.75 to 3.5 and to 1 deep: as travels 2.25 to 5 and 4.75 to 5; a pocket at 0.75 to 5
    expect(stops.settings.map(({ holes }) => holes)).toEqual([[0, 1], [2]]);
    expect(stops.settings[0]?.travel).toBeCloseTo((4.75 + 5) / 2, 12);
    expect(stops.settings[0]).not.toHaveProperty("bit");
    expect(stops.settings[1]).toMatchObject({ travel: 3, bit: { kind: "end-mill" } });
    expect(findings).toEqual([]);
    // one stop for all, however its profile is written
    const height = { nut: 6, end: 6 };
    const same = [
      { ...at(100), diameter: 8, stop: { ...press, height } },
      { ...at(200), diameter: 6, stop: { ...press, height: { end: 6, nut: 6 } } },
    ];
    expect(checkDesign(designOf({ markers: same })).stops.common).toMatchObject({ min: 0.75 });
  });

  test("a tool is a bit with its diameter; all mills of pockets are one", () => {
    const fills = [
      { kind: "poured", keep: 4.5 },
      { kind: "solid", thickness: 1 },
      { kind: "solid", thickness: 1 },
    ] as const;
    const found = (...sizes: readonly Size[]) => {
      const markers = sizes.map((size, i) => {
        const places = [{ along: 90 * (i + 1), offset: 0 }];
        return { places, ...size, fill: fills[i] };
      });
      const { stops, findings } = checkDesign(designOf({ markers }));
      expect(findings).toHaveLength(1);
      return [findings[0]?.code, ...stops.settings.map(({ diameter }) => diameter)];
    };
    const pocket = (width: number): Size => ({
      shape: { kind: "rectangle", length: 6, width },
    });
    expect(found({ diameter: 6 }, { diameter: 8 })).toEqual(["several-travels", 8, 6]);
    expect(found({ diameter: 6 }, { diameter: 6 })).toEqual(["several-settings", 6, 6]);
    const mill = ["several-settings", undefined, undefined];
    expect(found(pocket(6), pocket(8), pocket(10))).toEqual(mill);
  });
});
