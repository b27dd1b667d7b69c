/**
 * What a report says of its holes and of its board, on an invented board whose sanded surface is a cylinder of 65 mm:
 * 65² = 63² + 16² = 60² + 25² = 56² + 33² = 52² + 39² = 25² + 60², so that all its drops are whole numbers.
 */
import { describe, expect, test } from "vitest";
import { checkDesign, type Hole } from "../../src/index.js";
import { SQUARED } from "./necks.js";

const ROUND = { ...SQUARED, radius: 65, crown: 0.5 };

function holesOf(change: object): readonly Hole[] {
  return checkDesign({ ...ROUND, ...change }).holes;
}

const bit = { kind: "end-mill" } as const;
const rectangle = (length: number, width: number) => ({
  shape: { kind: "rectangle", length, width },
});
const pair = { frets: [2], arrangement: "double", spread: 41 } as const;

describe("what the radius removes", () => {
  test.each<[string, object, number, number, number]>([
    // at 16, 20.5 and 25 mm from the centre line
    ["a dot aside", { ...pair, diameter: 9 }, 2, 65 - Math.sqrt(65 ** 2 - 20.5 ** 2), 5],
    // its inner side lies beyond the centre line: the least is on the line
    ["a dot over the line", { frets: [2], diameter: 32 }, 0, 0, 2],
    ["a pocket aside", { ...pair, ...rectangle(6, 9) }, 2, 65 - Math.sqrt(65 ** 2 - 20.5 ** 2), 5],
    ["a pocket over the line", { frets: [2], ...rectangle(6, 50) }, 0, 0, 5],
  ])("%s", (_, group, inner, centre, outer) => {
    const holes = holesOf({ bit, markers: [group] });
    expect(holes.length).toBeGreaterThan(0);
    for (const { removal } of holes) {
      expect(removal.inner).toBeCloseTo(inner + 0.5, 12);
      expect(removal.centre).toBeCloseTo(centre + 0.5, 12);
      expect(removal.outer).toBeCloseTo(outer + 0.5, 12);
    }
  });

  test("a pocket whose sides are not of one height: at its farthest corner", () => {
    // radius 65 to 130 over the board: the corners nearer to the nut lose more
    const [hole] = holesOf({
      bit,
      radius: { nut: 65, end: 130 },
      markers: [{ frets: [2], ...rectangle(16, 50) }],
    });
    // 40 mm along, half the pocket before 48: a quarter of the way
    expect(hole?.along).toBe(48);
    const [radius, slope] = [65 * 1.25, 65 / 160];
    const drop = (hole?.removal.outer ?? Number.NaN) - 0.5;
    // a conic: (1 + K)h² − 2Rh + x² = 0 with K = −m² (ISO 10110-12)
    expect((1 - slope ** 2) * drop ** 2 - 2 * radius * drop + 25 ** 2).toBeCloseTo(0, 9);
    expect(drop).toBeLessThan(5);
    expect(hole?.slope).toBeCloseTo(slope, 12);
  });
});

describe("a hole", () => {
  test("says where it lies, how large it is, and what the board is there", () => {
    const holes = holesOf({
      board: { length: 160, width: { nut: 40, end: 60 }, thickness: { nut: 8, end: 10 } },
      crown: { nut: 0.25, end: 0.75 },
      bit,
      markers: [{ ...pair, spread: 20, diameter: 8, along: "midpoint" }],
    });
    const facts = { fret: 2, along: 48, diameter: 8, radius: 65, slope: 0, lead: 0, bit };
    const fill = { kind: "poured", keep: 1 };
    // 48 of 160 mm: three tenths
    const there = { crown: 0.4, blank: 8.6, halfWidth: 23 };
    expect(holes).toHaveLength(2);
    holes.forEach((hole, i) => {
      const { removal, window, crown, blank, halfWidth, ...rest } = hole;
      expect(rest).toEqual({
        ...facts,
        fill,
        ...[
          { side: "bass", offset: -10 },
          { side: "treble", offset: 10 },
        ][i],
      });
      expect(crown).toBeCloseTo(there.crown, 12);
      expect(blank).toBeCloseTo(there.blank, 12);
      expect(halfWidth).toBeCloseTo(there.halfWidth, 12);
      expect(Object.keys(window)).toEqual(["min", "max", "minBy", "maxBy"]);
      expect(removal.centre).toBeCloseTo(65 - Math.sqrt(65 ** 2 - 10 ** 2) + 0.4, 12);
    });
  });

  test("a pocket has its corners, a dot has none", () => {
    const [pocket] = holesOf({ bit, markers: [{ frets: [2], ...rectangle(6, 10) }] });
    expect(pocket?.diameter).toBe(10);
    const corners = pocket?.outline?.map(({ along, offset }) => `${along} ${offset}`);
    expect(corners?.sort()).toEqual(["45 -5", "45 5", "51 -5", "51 5"]);
    const [dot] = holesOf({});
    expect(dot).toBeDefined();
    expect(dot).not.toHaveProperty("outline");
  });

  test("a planned depth says what it leaves; without one nothing is said", () => {
    const flat = { radius: Infinity, depth: 3 };
    // 8 mm less the depth and a point of 1 mm; of the marker 3 less the crown
    expect(holesOf(flat)[0]?.planned).toEqual({ depth: 3, left: 2.5, web: 4 });
    expect(holesOf({})[0]).not.toHaveProperty("planned");
  });
});

describe("the whole", () => {
  test("its name, where the design has one", () => {
    expect(checkDesign({ ...ROUND, name: "Squared (invented)" }).name).toBe("Squared (invented)");
    expect(checkDesign({ ...ROUND, name: "" }).name).toBe("");
    expect(checkDesign(ROUND)).not.toHaveProperty("name");
  });

  test("what of the board the windows rest on", () => {
    expect(checkDesign(ROUND).board).toStrictEqual({ length: 160, web: 1 });
    const channel = { width: 6, depth: 2, from: 8, to: 120 };
    const board = { ...ROUND.board, channel };
    expect(checkDesign({ ...ROUND, board }).board).toEqual({ length: 160, web: 1, channel });
  });

  test("what all holes share, and which governs", () => {
    const design = {
      ...ROUND,
      radius: Infinity,
      board: { ...ROUND.board, thickness: { nut: 8, end: 16 } },
      markers: [{ frets: [2, 3], diameter: 8 }],
    };
    const { common } = checkDesign(design).stops;
    expect(common).toMatchObject({ min: 1.5, minBy: "keep", maxBy: "web", maxHole: 0 });
    // nearest to the nut the blank has 8 + 44/20 mm, less web and point
    expect(common?.max).toBeCloseTo(8 + 44 / 20 - 2, 12);
    // no depth leaves a marker in a blank of 2 mm
    const thin = { ...ROUND, radius: Infinity, board: { ...ROUND.board, thickness: 2 } };
    expect(checkDesign(thin).stops.common).toBeNull();
  });

  test("it is well where nothing is an error", () => {
    const flat = { ...ROUND, radius: Infinity };
    expect(checkDesign({ ...flat, depth: 3 })).toMatchObject({ ok: true, findings: [] });
    const near = checkDesign({ ...flat, markers: [{ frets: [2], diameter: 31.5 }] });
    expect(near.findings.map(({ severity }) => severity)).toEqual(["warning"]);
    expect(near.ok).toBe(true);
    expect(checkDesign({ ...flat, depth: 0.25 }).ok).toBe(false);
  });
});

describe("what is assumed", () => {
  const { fill: _fill, bit: _bit, ...open } = ROUND;
  const assumedIn = (change: object) => checkDesign({ ...open, ...change }).assumed;

  test("of a fill its kind's keep, of a twist bit its usual point, of no bit a Forstner bit", () => {
    expect(assumedIn({})).toMatchObject({ "fill.keep": 0.8, "bit.point": 1 });
    expect(assumedIn({ fill: { kind: "poured" } })).toMatchObject({ "fill.keep": 0.8 });
    expect(assumedIn({ fill: { kind: "solid", thickness: 2 } })).toMatchObject({
      "fill.keep": 0.5,
    });
    expect(assumedIn({ bit: { kind: "twist" } })).toMatchObject({ "bit.angle": 118 });
    const [hole] = checkDesign(open).holes;
    expect(hole?.bit).toEqual({ kind: "forstner", point: 1 });
    expect(hole?.fill).toEqual({ kind: "poured", keep: 0.8 });
  });
});
