/** The plan: frets, markers and the channel lie where they should, read back at the scale that the picture states. */
import { describe, expect, test } from "vitest";
import { drawBoard } from "../../src/draw/index.js";
import { checkDesign, type Report } from "../../src/index.js";
import { reportOf } from "./gallery.js";
import { classed, type Drawing, read, runsOf, textsOf } from "./svg.js";

function scaleOf(drawing: Drawing): number {
  const words = textsOf(drawing)
    .map((text) => text.words)
    .join(" ");
  const [, over, under] = /Scale ([\d.]+) : ([\d.]+)\./.exec(words) ?? [];
  return Number(over) / Number(under);
}

/** Both ends of each fret, in mm of the board: along, offset; bass first. */
function fretsOf(drawing: Drawing): [number, number][][] {
  const scale = scaleOf(drawing);
  return classed(drawing, "fret").map(({ attributes }) =>
    runsOf(attributes.d ?? "")
      .flat()
      .map(([x, y]): [number, number] => [x / scale, -y / scale]),
  );
}

/** The middle of each round marker, and its diameter. */
function dotsOf(drawing: Drawing): { along: number; offset: number; diameter: number }[] {
  const scale = scaleOf(drawing);
  return classed(drawing, "marker").map(({ attributes: { cx, cy, r } }) => ({
    along: Number(cx) / scale,
    offset: -Number(cy) / scale,
    diameter: (2 * Number(r)) / scale,
  }));
}

describe("frets", () => {
  // physics textbook problem, 7th ed., ch. 12 Q43 (seen in a solution): L = 75.0 cm, frets 1–6, in cm
  test("lie where a textbook has them", () => {
    const printed = ["4.21", "8.18", "11.9", "15.5", "18.8", "22.0"];
    const report = checkDesign({
      scale: { length: 750, frets: 6 },
      board: { length: 240, width: { nut: 44, end: 50 }, thickness: 6 },
      radius: 300,
      markers: [],
    });
    const frets = fretsOf(read(drawBoard(report)));
    const seen = frets.map(([bass]) => (bass?.[0] ?? 0) / 10);
    expect(seen.map((cm, i) => cm.toFixed(i < 2 ? 2 : 1))).toEqual(printed);
    for (const [bass, treble] of frets) {
      expect(treble?.[0]).toBe(bass?.[0]);
      // 44 to 50 wide over 240
      const half = 22 + ((bass?.[0] ?? 0) * 3) / 240;
      expect(bass?.[1]).toBeCloseTo(-half, 2);
      expect(treble?.[1]).toBeCloseTo(half, 2);
    }
  });

  test("fanned: the octave is half of either scale, and one fret is square to the board", () => {
    const report = reportOf("fanned");
    const drawing = read(drawBoard(report));
    const frets = fretsOf(drawing);
    expect(frets).toHaveLength(24);
    const outline = runsOf(classed(drawing, "board")[0]?.attributes.d ?? "").flat();
    const scale = scaleOf(drawing);
    const nutBass = (outline[0]?.[0] ?? 0) / scale;
    // the last corner but the one that closes the outline
    const nutTreble = (outline.at(-2)?.[0] ?? 0) / scale;
    expect((frets[11]?.[0]?.[0] ?? 0) - nutBass).toBeCloseTo(686 / 2, 1);
    expect((frets[11]?.[1]?.[0] ?? 0) - nutTreble).toBeCloseTo(648 / 2, 1);
    const leans = frets.map(([bass, treble]) => (treble?.[0] ?? 0) - (bass?.[0] ?? 0));
    expect(leans[6]).toBeCloseTo(0, 1);
    expect(leans[0]).toBeGreaterThan(5);
    expect(leans[23]).toBeLessThan(-5);
  });

  test("bear their numbers, each within its own space", () => {
    const drawing = read(drawBoard(reportOf("larch-22")));
    const numbers = textsOf(drawing).filter(({ words }) => /^\d+$/.test(words));
    expect(numbers.length).toBeGreaterThanOrEqual(20);
    const frets = classed(drawing, "fret").map(({ attributes }) => {
      return runsOf(attributes.d ?? "")[0]?.[0]?.[0] ?? 0;
    });
    for (const { words, box } of numbers) {
      const x = frets[Number(words) - 1] ?? 0;
      expect(Math.abs((box.left + box.right) / 2 - x)).toBeLessThan(1.5);
    }
  });
});

describe("markers", () => {
  // widths 44 and 56, length 450: the diagonals cross 198 from the narrow end (computed, two libraries agree)
  test("lie where the diagonals cross", () => {
    const report = checkDesign({
      scale: { positions: [450] },
      board: { length: 500, width: { nut: 44, fret1: 56 }, thickness: 6 },
      radius: 300,
      markers: [{ frets: [1], diameter: 6 }],
    });
    const [dot] = dotsOf(read(drawBoard(report)));
    expect(dot?.along).toBeCloseTo(198, 2);
    expect(dot?.offset).toBeCloseTo(0, 9);
    expect(dot?.diameter).toBeCloseTo(6, 2);
  });

  test("are all drawn, treble above bass, and named with their distances", () => {
    const report = reportOf("larch-22");
    const drawing = read(drawBoard(report));
    const dots = dotsOf(drawing);
    expect(dots).toHaveLength(10);
    report.holes.forEach((hole, i) => {
      expect(dots[i]?.along).toBeCloseTo(hole.along, 2);
      expect(dots[i]?.offset).toBeCloseTo(hole.offset, 2);
    });
    const words = textsOf(drawing).map((text) => text.words);
    const twelfth = report.holes.find(({ fret }) => fret === 12);
    expect(words).toContain(
      `fret 12: ${twelfth?.along.toFixed(2)}, ± ${Math.abs(twelfth?.offset ?? 0).toFixed(2)}`,
    );
  });

  test("pockets follow their outline", () => {
    const report = reportOf("fanned pockets");
    const drawing = read(drawBoard(report));
    const scale = scaleOf(drawing);
    const outlines = classed(drawing, "marker");
    expect(outlines).toHaveLength(4);
    outlines.forEach(({ attributes }, i) => {
      const corners = runsOf(attributes.d ?? "").flat();
      report.holes[i]?.outline?.forEach(({ along, offset }, k) => {
        expect((corners[k]?.[0] ?? 0) / scale).toBeCloseTo(along, 2);
        expect((corners[k]?.[1] ?? 0) / scale).toBeCloseTo(-offset, 2);
      });
    });
  });

  test("those that govern a setting bear a ring and a flag, those without a depth a cross", () => {
    const count = (report: Report) => {
      const drawing = read(drawBoard(report));
      const flags = textsOf(drawing).filter(({ words }) => /^sets .*: /.test(words));
      return ["governs", "none"].map((name) => classed(drawing, name).length).concat(flags.length);
    };
    expect(count(reportOf("larch-22"))).toEqual([2, 0, 2]);
    expect(count(reportOf("wren-tenor"))).toEqual([3, 0, 3]);
    expect(count(reportOf("no window"))).toEqual([0, 10, 0]);
    expect(count(reportOf("no holes"))).toEqual([0, 0, 0]);
  });
});

test("the rod channel is hidden, from its start to its end", () => {
  const drawing = read(drawBoard(reportOf("heron-bass")));
  const [channel] = classed(drawing, "channel");
  expect(channel?.pen).toBe("hidden");
  const scale = scaleOf(drawing);
  const spots = runsOf(channel?.attributes.d ?? "").flat();
  const [xs, ys] = [0, 1].map((k) => spots.map((spot) => (spot[k] ?? 0) / scale));
  expect(Math.min(...(xs ?? []))).toBeCloseTo(12, 2);
  expect(Math.max(...(xs ?? []))).toBeCloseTo(560, 2);
  expect(Math.max(...(ys ?? []))).toBeCloseTo(4.75, 2);
});
