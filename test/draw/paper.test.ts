/** The board's outline from a report, and where it lies on paper, on an invented board of 160 by 64. Lengths in mm. */
import { describe, expect, test } from "vitest";
import { boardPaperFor, ringAround, ringReach } from "../../src/draw/board-paper.js";
import { planOf } from "../../src/draw/outline.js";
import { scaleWords } from "../../src/draw/scale.js";
import { checkDesign, type Design } from "../../src/index.js";
import { SQUARED } from "../check/necks.js";

const reportOn = (change: object) => checkDesign({ ...SQUARED, ...change } as Design);

describe("the plan", () => {
  test("frets and the nut from edge to edge, corners along both edges", () => {
    const plan = planOf(reportOn({ board: { ...SQUARED.board, width: { nut: 48, end: 64 } } }));
    expect(plan.half).toBe(32);
    expect(plan.frets.map(({ name }) => name)).toEqual(["nut", "1", "2", "3", "4"]);
    expect(plan.frets[0]).toEqual({
      name: "nut",
      bass: { along: 0, offset: -24 },
      treble: { along: 0, offset: 24 },
    });
    expect(plan.end).toEqual({
      name: "end",
      bass: { along: 160, offset: -32 },
      treble: { along: 160, offset: 32 },
    });
    const { corners } = plan;
    expect(corners[0]).toEqual({ along: 0, offset: -24 });
    expect(corners.at(-1)).toEqual({ along: 0, offset: 24 });
    // nut, four frets, a hole and the end, on either edge
    expect(corners).toHaveLength(14);
    expect(corners.slice(0, 7).map(({ along }) => along)).toEqual(
      corners
        .slice(7)
        .map(({ along }) => along)
        .reverse(),
    );
    for (const { along, offset } of corners) {
      expect(Math.abs(offset)).toBeCloseTo(24 + along / 20, 9);
    }
    const bass = corners.slice(0, 7).map(({ along }) => along);
    expect(bass).toEqual([...bass].sort((a, b) => a - b));
  });

  test("fanned: each edge from its own end of the nut to its own end; no fret that runs off the board", () => {
    const fanned = { bass: 520, treble: 400, perpendicular: 2, frets: 6 };
    const board = { length: 110, width: 40, thickness: 8 };
    const plan = planOf(reportOn({ scale: fanned, board, markers: [] }));
    const [nut] = plan.frets;
    expect(nut?.bass.along).toBeLessThan(0);
    expect(nut?.treble.along).toBeGreaterThan(0);
    const bass = plan.corners.filter(({ offset }) => offset < 0);
    const treble = plan.corners.filter(({ offset }) => offset > 0);
    expect(bass[0]?.along).toBe(nut?.bass.along);
    expect(treble.at(-1)?.along).toBe(nut?.treble.along);
    for (const { along } of [...bass, ...treble]) expect(along).toBeLessThanOrEqual(110 + 20);
    for (const { bass: b, treble: t } of plan.frets) {
      expect(b.offset).toBe(-20);
      expect(t.offset).toBe(20);
    }
  });
});

describe("its paper", () => {
  const paperOn = (change: object, figures = 2) => {
    const report = reportOn(change);
    return boardPaperFor(planOf(report), report.holes, figures);
  };

  test("245 by 120 at most, at a round scale; longer for many figures", () => {
    // 245 / 160 = 1.53
    const paper = paperOn({});
    expect(paper).toMatchObject({ scale: 1.5, left: 0, right: 240, top: -48, bottom: 48 });
    expect(paper.spot({ along: 10, offset: 4 })).toEqual([15, -6]);
    // 120 / 64 = 1.875
    expect(paperOn({}, 100).scale).toBe(1.5);
    expect(paperOn({ board: { ...SQUARED.board, width: 120 } }).scale).toBe(1);
    const long = { ...SQUARED.board, length: 320 };
    // 245 / 320 and, for 70 figures 5.425 apart, 380 / 320
    expect([paperOn({ board: long }).scale, paperOn({ board: long }, 70).scale]).toEqual([
      1 / 1.5,
      1,
    ]);
  });

  test("makes room for rings past the edges and the ends", () => {
    const pair = { frets: [1], diameter: 12, arrangement: "double", spread: 62 };
    const paper = paperOn({ markers: [pair] });
    // 37 from the centre line: 120 / 74, and a ring of 1 around it
    expect(paper).toMatchObject({ scale: 1.5, top: -56.5, bottom: 56.5 });
    expect([paper.left, paper.right]).toEqual([0, 240]);
    const wide = paperOn({ markers: [{ frets: [1], diameter: 40 }] });
    // at 16, 20 to either side
    expect(wide.left).toBe(-4 * 1.5 - 1);
    expect(paperOn({ markers: [{ frets: [1], diameter: 32 }] }).left).toBe(-1);
  });

  test("a ring stands 1 off its marker, also off a pocket's sides", () => {
    const [dot] = reportOn({}).holes;
    const shape = { kind: "rectangle", length: 6, width: 20 };
    const [pocket] = reportOn({ markers: [{ frets: [2], shape }] }).holes;
    expect(dot && ringReach(dot, 1.5)).toBe(4 * 1.5 + 1);
    expect(pocket && ringReach(pocket, 1.5)).toBe(3 * 1.5 + 1);
    const corners = [
      [13, 24],
      [7, 16],
    ] as const;
    // 5 from the middle at (10, 20), moved out by √2
    const far = Math.SQRT2 / 5;
    expect(ringAround(corners, [10, 20])).toEqual([
      [expect.closeTo(13 + 3 * far, 9), expect.closeTo(24 + 4 * far, 9)],
      [expect.closeTo(7 - 3 * far, 9), expect.closeTo(16 - 4 * far, 9)],
    ]);
  });

  test("a scale in words: round, to four digits", () => {
    expect([1, 2.5, 0.5, 1 / 1.5, 1 / 3].map(scaleWords)).toEqual([
      "1 : 1",
      "2.5 : 1",
      "1 : 2",
      "1 : 1.5",
      "1 : 3",
    ]);
  });
});
