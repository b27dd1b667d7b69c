/** Fanned frets: necks whose nut can be worked out by hand. Lengths in mm. */
import { describe, expect, test } from "vitest";
import { fretLines, type WidthAt } from "../../src/board/fret-lines.js";

/** Share of a string between the nut and fret n. */
const share = (n: number) => 1 - 2 ** (-n / 12);

/** Keeps the stations of every call, and stops a search without end. */
function watched(widthAt: WidthAt): { widthAt: WidthAt; calls: (readonly number[])[] } {
  const calls: (readonly number[])[] = [];
  return {
    calls,
    widthAt: (along, slots) => {
      if (calls.length > 5000) throw new Error("a search without end");
      calls.push(slots);
      return widthAt(along, slots);
    },
  };
}

test("straight frets, the nut before them", () => {
  const lines = fretLines({ kind: "straight", positions: [30, 58.5] }, () => 40);
  expect(lines).toEqual([0, 30, 58.5].map((s) => ({ along: s, bass: s, treble: s })));
});

describe("between parallel edges every slot crosses the centre line midway", () => {
  // skew (640 − 700) / 2 = −30, shared alike by both ends of the nut
  const scale = { kind: "fanned", bass: 700, treble: 640, perpendicular: 12, frets: 12 } as const;

  test("the nut and every fret", () => {
    const lines = fretLines(scale, () => 50);
    expect(lines).toHaveLength(13);
    expect(lines?.[0]).toEqual({ along: 0, bass: -15, treble: 15 });
    lines?.forEach((line, n) => {
      expect(line.bass).toBeCloseTo(-15 + 700 * share(n), 9);
      expect(line.treble).toBeCloseTo(15 + 640 * share(n), 9);
      expect(line.along).toBeCloseTo(670 * share(n), 9);
    });
  });

  test("so the first guess is right, and each end's width is asked for once", () => {
    const { widthAt, calls } = watched(() => 50);
    fretLines(scale, widthAt);
    expect(calls).toHaveLength(2 * 13);
    for (const slots of calls) {
      expect(slots).toHaveLength(13);
      slots.forEach((s, n) => {
        expect(s).toBeCloseTo(670 * share(n), 9);
      });
    }
  });
});

describe("between edges that part by 1 in 20", () => {
  // Width 38 + s/20. The nut from 20 to −19, 39 and 37.05 wide: −20 / 39 = −19 / 37.05, so it meets the
  // centre line at 0. Skew 39 = (678 − 600) / 2, square at fret 12.
  const width = (along: number) => 38 + along / 20;
  const scale = { kind: "fanned", bass: 600, treble: 678, perpendicular: 12, frets: 24 } as const;

  test("the nut, the fret that is square, and the last one", () => {
    const lines = fretLines(scale, width);
    expect(lines).toHaveLength(25);
    const [nut, twelfth, last] = [0, 12, 24].map((n) => lines?.[n]);
    expect(nut?.along).toBe(0);
    expect(nut?.bass).toBeCloseTo(20, 9);
    expect(nut?.treble).toBeCloseTo(-19, 9);
    for (const place of [twelfth?.along, twelfth?.bass, twelfth?.treble]) {
      expect(place).toBeCloseTo(320, 9);
    }
    expect(last?.bass).toBeCloseTo(20 + 450, 9);
    expect(last?.treble).toBeCloseTo(-19 + 508.5, 9);
  });

  test("every slot is straight: as far to the centre line on either side as the widths tell", () => {
    const lines = fretLines(scale, width);
    expect(lines).toHaveLength(25);
    lines?.forEach(({ along, bass, treble }) => {
      expect((along - bass) * width(treble)).toBeCloseTo((treble - along) * width(bass), 7);
    });
  });

  test("the nut is the station at 0 in every round", () => {
    const { widthAt, calls } = watched(width);
    fretLines(scale, widthAt);
    expect(calls.length).toBeGreaterThan(2 * 25);
    for (const slots of calls) expect(slots[0]).toBe(0);
  });
});

describe("when the search ends", () => {
  test("a nut that moves by 1e-13 of the mean scale length, and no more, lies still", () => {
    // Ten thousand kilometres long, so that 1e-13 of it is 1/1024 mm. The nut leans by 1 mm, from 0.5 to −0.5;
    // its ends are 511 and 513 wide, so it meets the centre line at 0.5 − 511/1024 = 1/1024.
    const mean = 1e13 / 1024;
    const { widthAt, calls } = watched((along) => (along > 0 ? 511 : 513));
    const scale = { bass: mean - 1, treble: mean + 1, perpendicular: 12, frets: 0 };
    expect(fretLines({ kind: "fanned", ...scale }, widthAt)).toEqual([
      { along: 0, bass: 0.5, treble: -0.5 },
    ]);
    expect(calls).toHaveLength(2);
  });

  const scale = { kind: "fanned", bass: 640, treble: 600, perpendicular: 2, frets: 1 } as const;

  test("at once where the board has no width", () => {
    const { widthAt, calls } = watched(() => Number.NaN);
    expect(fretLines(scale, widthAt)).toBeUndefined();
    expect(calls).toHaveLength(4);
  });

  test("after 200 rounds where the width never lies still", () => {
    // each round asks for both ends of the nut and of the fret; every other one finds the treble end wider
    const { widthAt, calls } = watched(() => {
      const isTreble = calls.length % 2 === 0;
      const isOther = Math.ceil(calls.length / 4) % 2 === 1;
      return isTreble && isOther ? 60 : 20;
    });
    expect(fretLines(scale, widthAt)).toBeUndefined();
    expect(calls).toHaveLength(200 * 4);
  });
});
