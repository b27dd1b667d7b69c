/** Fanned frets: necks whose nut can be worked out by hand. Lengths in mm. */
import { describe, expect, test } from "vitest";
import { fretLines } from "../../src/board/fret-lines.js";

/** Share of a string between the nut and fret n. */
const share = (n: number) => 1 - 2 ** (-n / 12);

test("straight frets, the nut before them", () => {
  const lines = fretLines({ positions: [30, 58.5] }, () => 40);
  expect(lines).toEqual([0, 30, 58.5].map((s) => ({ along: s, bass: s, treble: s })));
});

test("between parallel edges every slot crosses the centre line midway", () => {
  // skew (640 − 700) / 2 = −30, shared alike by both ends of the nut
  const scale = { bass: 700, treble: 640, square: 12, frets: 12 };
  const lines = fretLines(scale, () => 50);
  expect(lines).toHaveLength(13);
  expect(lines?.[0]).toEqual({ along: 0, bass: -15, treble: 15 });
  lines?.forEach((line, n) => {
    expect(line.bass).toBeCloseTo(-15 + 700 * share(n), 9);
    expect(line.treble).toBeCloseTo(15 + 640 * share(n), 9);
    expect(line.along).toBeCloseTo(670 * share(n), 9);
  });
});

describe("between edges that part by 1 in 20", () => {
  // Width 38 + s/20. The nut from 20 to −19, 39 and 37.05 wide: −20 / 39 = −19 / 37.05, so it meets the
  // centre line at 0. Skew 39 = (678 − 600) / 2, square at fret 12.
  const width = (along: number) => 38 + along / 20;
  const lines = fretLines({ bass: 600, treble: 678, square: 12, frets: 24 }, width);

  test("the nut, the fret that is square, and the last one", () => {
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
    expect(lines).toHaveLength(25);
    lines?.forEach(({ along, bass, treble }) => {
      expect((along - bass) * width(treble)).toBeCloseTo((treble - along) * width(bass), 7);
    });
  });
});

test("a search that finds no width, or never lies still, ends without lines", () => {
  const scale = { bass: 640, treble: 600, square: 2, frets: 1 };
  expect(fretLines(scale, () => Number.NaN)).toBeUndefined();
  // every other round finds the treble end wider
  let calls = 0;
  const restless = () => {
    calls++;
    return calls % 2 === 0 && Math.ceil(calls / 4) % 2 === 1 ? 60 : 20;
  };
  expect(fretLines(scale, restless)).toBeUndefined();
  expect(calls).toBe(200 * 4);
});
