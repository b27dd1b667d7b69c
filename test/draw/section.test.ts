/** The section: what is drawn lies where the geometry says, read back at the scale that the picture states. */
import { describe, expect, test } from "vitest";
import { drawSection } from "../../src/draw/index.js";
import { type Bit, checkDesign, type Design, type Report } from "../../src/index.js";
import { EXACT } from "../check/necks.js";
import { reportOf } from "./gallery.js";
import { classed, type Drawing, read, runsOf, textsOf, writingOf } from "./svg.js";

/** mm on paper for each mm of the board, as the picture says. */
function scalesOf(drawing: Drawing): { across: number; upright: number } {
  const words = textsOf(drawing)
    .map((text) => text.words)
    .join("\n");
  const two = /Scale ([\d.]+) : ([\d.]+) across, ([\d.]+) : ([\d.]+) in height\./.exec(words);
  const one = /True proportions\. Scale ([\d.]+) : ([\d.]+)\./.exec(words);
  const ratio = (over?: string, under?: string) => Number(over) / Number(under);
  const across = two ? ratio(two[1], two[2]) : ratio(one?.[1], one?.[2]);
  return { across, upright: two ? ratio(two[3], two[4]) : across };
}

/** The spots of a path of one class, in mm of the board: offset, depth. */
function placesOf(drawing: Drawing, name: string): [number, number][] {
  const { across, upright } = scalesOf(drawing);
  const paths = classed(drawing, name);
  expect(paths.length).toBeGreaterThan(0);
  return paths
    .flatMap(({ attributes }) => runsOf(attributes.d ?? "").flat())
    .map(([x, y]) => [x / across, y / upright]);
}

function wordsOf(drawing: Drawing): string[] {
  return textsOf(drawing).map(({ words }) => words);
}

function indexOf(report: Report, fret: number, side = "centre"): number {
  return report.holes.findIndex((hole) => hole.fret === fret && hole.side === side);
}

/** A parallel board with one dot on the centre line, no tolerances and nothing off the crown. */
function plank(width: number, radius: number, thickness: number): Report {
  return checkDesign({
    scale: { length: 600, frets: 12 },
    board: { length: 320, width, thickness },
    radius,
    crown: 0,
    tolerance: EXACT,
    markers: [{ frets: [5], diameter: 2 }],
  });
}

describe("the finished arc", () => {
  // Machinery's Handbook, 31st ed., p. 79 (seen): chord 16, h = 6: r = 8 1/3
  test("chord 16, height 6: radius 8 1/3", () => {
    const drawing = read(drawSection(plank(16, 8 + 1 / 3, 8), 0));
    const arc = placesOf(drawing, "finished");
    expect(arc[0]?.[0]).toBeCloseTo(-8, 3);
    expect(arc[0]?.[1]).toBeCloseTo(6, 3);
    expect(arc.at(-1)?.[1]).toBeCloseTo(6, 3);
    expect(Math.min(...arc.map(([, depth]) => depth))).toBeCloseTo(0, 3);
    // what is left at the edges of a blank 8 thick
    expect(wordsOf(drawing)).toContain("2.00");
  });

  // intersecting chords: x² = h(2R − h)
  test.each([1, 4, 9])("a circle, %d times too high", (exaggeration) => {
    const arc = placesOf(read(drawSection(plank(50, 254, 6), 0, { exaggeration })), "finished");
    expect(arc.length).toBeGreaterThan(40);
    for (const [x, h] of arc) expect(h * (2 * 254 - h)).toBeCloseTo(x * x, 0);
  });

  // a cone: (1 + K)h² − 2Rh + x² = 0, K = −m², R linear between its stations
  test("a compound radius", () => {
    const report = checkDesign({
      scale: { length: 600, frets: 12 },
      board: { length: 320, width: 60, thickness: 12 },
      radius: { nut: 100, end: 260 },
      crown: 0.25,
      markers: [{ frets: [7], diameter: 6 }],
    });
    const m = (260 - 100) / 320;
    const radius = 100 + m * (report.holes[0]?.along ?? 0);
    const arc = placesOf(read(drawSection(report, 0)), "finished");
    for (const [x, depth] of arc) {
      const h = depth - 0.25;
      expect((1 - m * m) * h * h - 2 * radius * h + x * x).toBeCloseTo(0, 0);
    }
    const edge = (arc[0]?.[1] ?? 0) - 0.25;
    // farther than rounding from the circle of the same radius
    expect(Math.abs(edge * (2 * radius - edge) - 900)).toBeGreaterThan(0.5);
  });

  test("a flat board", () => {
    const drawing = read(drawSection(reportOf("flat board"), 0));
    for (const [, depth] of placesOf(drawing, "finished")) expect(depth).toBe(0);
    expect(wordsOf(drawing)).toContain("flat");
  });
});

describe("the hole", () => {
  // handbook table (memory): a 118° point is .3004 of its diameter high
  test("a twist bit's cone", () => {
    const report = reportOf("heron-bass");
    const drawing = read(drawSection(report, indexOf(report, 3)));
    const bit = placesOf(drawing, "bit");
    expect(Math.max(...bit.map(([, depth]) => depth))).toBeCloseTo(2.9 + 0.3004 * 7, 3);
    expect(Math.max(...bit.map(([x]) => x))).toBeCloseTo(3.5, 3);
    expect(wordsOf(drawing)).toContain("Ø 7.00");
  });

  test("it goes down to the planned depth, else to its stop setting, else to the least", () => {
    const rim = (report: Report, i: number) => {
      const bit = placesOf(read(drawSection(report, i)), "bit");
      const wall = Math.max(...bit.map(([x]) => x));
      return Math.max(...bit.filter(([x]) => x === wall).map(([, depth]) => depth));
    };
    expect(rim(reportOf("larch-22"), 0)).toBeCloseTo(3, 3);
    const served = reportOf("alder-24");
    expect(rim(served, 0)).toBeCloseTo(served.stops.settings[0]?.depth ?? 0, 3);
    const none = reportOf("no window");
    expect(rim(none, 0)).toBeCloseTo(none.holes[0]?.window.min ?? 0, 3);
  });

  test("a double shows both dots where the cut goes through both, a single one", () => {
    const report = reportOf("larch-22");
    const markers = (i: number) => classed(read(drawSection(report, i)), "marker").length;
    expect(markers(indexOf(report, 12, "bass"))).toBe(2);
    expect(markers(indexOf(report, 5))).toBe(1);
  });

  test("of a fanned double, the other dot is cut beside its middle: a chord √(r² − d²) to either side", () => {
    const report = reportOf("fanned");
    const [i, j] = [indexOf(report, 12, "bass"), indexOf(report, 12, "treble")];
    const [one, other] = [report.holes[i], report.holes[j]];
    const d = (one?.along ?? 0) - (other?.along ?? 0);
    expect(Math.abs(d)).toBeGreaterThan(1);
    const other1 = placesOf(read(drawSection(report, i)), "other").map(([x]) => x);
    const half = Math.sqrt(9 - d * d);
    expect(Math.max(...other1)).toBeCloseTo((other?.offset ?? 0) + half, 2);
    expect(Math.min(...other1)).toBeCloseTo((other?.offset ?? 0) - half, 2);
  });

  test("a hole is drawn on its own side, bass on the left", () => {
    const report = reportOf("larch-22");
    for (const [side, sign] of [
      ["bass", -1],
      ["treble", 1],
    ] as const) {
      const drawing = read(drawSection(report, indexOf(report, 12, side)));
      const level = textsOf(drawing).find(({ words }) => words.endsWith("least depth"));
      expect(Math.sign(level?.box.left ?? 0)).toBe(sign);
      const names = textsOf(drawing).filter(({ words }) => words === "bass" || words === "treble");
      expect(names.map(({ words, box }) => [words, Math.sign(box.left)])).toEqual([
        ["bass", -1],
        ["treble", 1],
      ]);
    }
  });
});

describe("the board", () => {
  test("the rod channel is cut into the underside where it runs, and not beyond", () => {
    const report = reportOf("heron-bass");
    const inside = placesOf(read(drawSection(report, indexOf(report, 9))), "board");
    // 9.5 wide, 1.5 deep in a blank of 7.5
    for (const sign of [-1, 1]) {
      const corners = inside.filter(([x]) => Math.abs(x - sign * 4.75) < 0.002);
      expect(corners.some(([, depth]) => Math.abs(depth - 6) < 0.002)).toBe(true);
      expect(corners.some(([, depth]) => Math.abs(depth - 7.5) < 0.002)).toBe(true);
    }
    const beyond = read(drawSection(report, indexOf(report, 19)));
    expect(placesOf(beyond, "board").some(([, depth]) => Math.abs(depth - 6) < 0.002)).toBe(false);
    expect(wordsOf(beyond).some((words) => words.includes("channel"))).toBe(false);
  });

  test("what is poured ends at the finished surface; a solid dot is as thick as it is, above its rim", () => {
    const poured = read(drawSection(reportOf("larch-22"), 0));
    const top = Math.min(...placesOf(poured, "marker").map(([, depth]) => depth));
    expect(top).toBeCloseTo(0.15, 3);
    // below the surface on all sides: rim at 3, dot 1.2 thick
    const sunk: Design = {
      scale: { length: 600, frets: 12 },
      board: { length: 320, width: 50, thickness: 6 },
      radius: 300,
      markers: [{ frets: [5], diameter: 6 }],
      fill: { kind: "solid", thickness: 1.2 },
      depth: 3,
    };
    const depths = placesOf(read(drawSection(checkDesign(sunk), 0)), "marker").map(([, d]) => d);
    expect(Math.min(...depths)).toBeCloseTo(1.8, 3);
    expect(Math.max(...depths)).toBeCloseTo(3, 3);
  });

  test("a bit that goes through is drawn below the board, and the words say so", () => {
    const drawing = read(drawSection(reportOf("breaks through"), 0));
    expect(Math.max(...placesOf(drawing, "board").map(([, depth]) => depth))).toBeCloseTo(4, 3);
    expect(Math.max(...placesOf(drawing, "bit").map(([, depth]) => depth))).toBeCloseTo(5.5, 3);
    expect(wordsOf(drawing).some((words) => words.endsWith("1.50 through the wood"))).toBe(true);
  });

  test("a marker that is sanded away has no filling but in the point's hole", () => {
    const report = reportOf("sanded away");
    const drawing = read(drawSection(report, indexOf(report, 12, "bass")));
    const wall = report.holes[indexOf(report, 12, "bass")]?.removal.outer ?? 0;
    const left = wordsOf(drawing).find((words) => words.includes("no marker left"));
    expect(left).toContain(`${(wall - 0.3).toFixed(2)} short`);
  });
});

// without tolerances the worst case is what is drawn: the check's own margins, reached by another way
describe("what is left", () => {
  const neck = (bit: Bit, channel: number): Report =>
    checkDesign({
      scale: { length: 648, frets: 22 },
      board: {
        length: 482,
        width: 50,
        thickness: 6,
        ...(channel > 0 ? { channel: { width: channel, depth: 1.1 } } : {}),
      },
      radius: 241.3,
      bit,
      depth: 2.2,
      tolerance: EXACT,
      markers: [
        { frets: [3, 5], diameter: 7 },
        { frets: [12], diameter: 7, arrangement: "double", spread: 11 },
      ],
    });
  const bits: readonly Bit[] = [
    { kind: "twist", angle: 118 },
    { kind: "brad-point", point: 1.7 },
    { kind: "forstner", point: 0.8 },
    { kind: "end-mill" },
  ];

  test.each(bits.flatMap((bit) => [0, 3, 9, 13].map((channel) => ({ bit, channel }))))(
    "$bit.kind, channel $channel wide",
    ({ bit, channel }) => {
      const report = neck(bit, channel);
      expect(report.holes).toHaveLength(4);
      report.holes.forEach(({ planned }, i) => {
        const { description: said } = writingOf(drawSection(report, i));
        const amounts = /which leaves ([\d.]+) of the marker and ([\d.]+) of wood/.exec(said ?? "");
        expect(Math.abs(Number(amounts?.[1]) - (planned?.left ?? Number.NaN))).toBeLessThan(0.006);
        expect(Math.abs(Number(amounts?.[2]) - (planned?.web ?? Number.NaN))).toBeLessThan(0.006);
      });
    },
  );
});

describe("the window", () => {
  test("runs from its least to its most depth", () => {
    const report = reportOf("larch-22");
    report.holes.forEach(({ window }, i) => {
      const depths = placesOf(read(drawSection(report, i)), "window").map(([, depth]) => depth);
      expect(Math.min(...depths)).toBeCloseTo(window.min, 3);
      expect(Math.max(...depths)).toBeCloseTo(window.max, 3);
    });
  });

  test("is crossed out where no depth suits", () => {
    const drawing = read(drawSection(reportOf("no window"), 0));
    expect(classed(drawing, "none")).toHaveLength(1);
    expect(classed(drawing, "none")[0]?.pen).toBe("hidden");
    expect(wordsOf(drawing).some((words) => words.startsWith("No depth suits this hole"))).toBe(
      true,
    );
  });

  // 1.121 and 3.404: a least depth is written no smaller, a most no greater
  test("its figures are rounded to the safe side", () => {
    const report = reportOf("larch-22");
    let seen = 0;
    report.holes.forEach(({ window }, i) => {
      const words = wordsOf(read(drawSection(report, i)));
      const least = Number(words.find((w) => w.endsWith("least depth"))?.split(" ")[0]);
      const most = Number(words.find((w) => w.includes("most depth"))?.split(" ")[0]);
      expect(least).toBeGreaterThanOrEqual(window.min - 1e-9);
      expect(most).toBeLessThanOrEqual(window.max + 1e-9);
      expect(least - window.min + window.max - most).toBeLessThan(0.02);
      seen++;
    });
    expect(seen).toBe(10);
  });
});

describe("proportions", () => {
  test("are true where asked, else heights are four times too large", () => {
    const report = reportOf("larch-22");
    const usual = scalesOf(read(drawSection(report, 0)));
    expect(usual.upright / usual.across).toBe(4);
    const words = wordsOf(read(drawSection(report, 0, { exaggeration: 1 })));
    expect(words.some((line) => line.startsWith("True proportions."))).toBe(true);
    expect(drawSection(report, 0, { exaggeration: 4 })).toBe(drawSection(report, 0));
  });

  test.each([0.99, 0, -4, 100.5, Number.NaN, Infinity])("%d is refused", (exaggeration) => {
    const draw = () => drawSection(reportOf("larch-22"), 0, { exaggeration });
    expect(draw).toThrow(RangeError);
    expect(draw).toThrow(/^exaggeration: expected a number from 1 to 100, received /);
  });

  test.each([-1, 10, 0.5, Number.NaN])("there is no hole %d", (index) => {
    const draw = () => drawSection(reportOf("larch-22"), index);
    expect(draw).toThrow(RangeError);
    expect(draw).toThrow(/^holeIndex: expected an index into the report's 10 holes, received /);
  });
});
