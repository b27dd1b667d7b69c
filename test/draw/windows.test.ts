/** The windows: bars and settings lie where the depths say, read back on the picture's own axis. */
import { describe, expect, test } from "vitest";
import { drawWindows } from "../../src/draw/index.js";
import { checkDesign, type Design, type Report } from "../../src/index.js";
import { SQUARED } from "../check/necks.js";
import { examples, gallery, reportOf } from "./gallery.js";
import { classed, type Drawing, linesOf, read, textsOf, writingOf } from "./svg.js";

/** What depth a place across the picture means, from two figures of its axis. */
function axisOf(drawing: Drawing): (x: number) => number {
  const ticks = linesOf(drawing)
    .filter(({ name }) => name === "tick")
    .map(({ from }) => from[0]);
  const figures = textsOf(drawing).filter(({ words }) => /^−?[\d.]+$/.test(words));
  const marked = ticks.flatMap((x) => {
    const below = figures.find(({ box }) => Math.abs((box.left + box.right) / 2 - x) < 0.05);
    return below ? [[x, Number(below.words.replace("−", "-"))] as const] : [];
  });
  expect(marked).toHaveLength(ticks.length);
  const [first, last] = [marked[0], marked.at(-1)];
  if (!first || !last || first === last) throw new Error("an axis without figures");
  const [x0, d0] = first;
  return (x) => d0 + ((x - x0) * (last[1] - d0)) / (last[0] - x0);
}

function boxOf(d: string): { left: number; right: number; y: number } {
  const spots = d.split(/[MLZ]/).flatMap((spot) => (spot ? [spot.split(" ").map(Number)] : []));
  const [xs, ys] = [0, 1].map((k) => spots.map((spot) => spot[k] ?? 0));
  return {
    left: Math.min(...(xs ?? [])),
    right: Math.max(...(xs ?? [])),
    y: (Math.min(...(ys ?? [])) + Math.max(...(ys ?? []))) / 2,
  };
}

/** The bars by row. */
function barsOf(drawing: Drawing) {
  const bars = classed(drawing, "window").map(({ attributes }) => ({
    ...boxOf(attributes.d ?? ""),
    none: (attributes.class ?? "").includes("none"),
  }));
  return bars.sort((a, b) => a.y - b.y);
}

describe.each(gallery.filter(({ report }) => report.holes.length > 1))("$name", ({ report }) => {
  // drawn in each test: what is worked out while the tests are gathered meets no mutant
  const drawn = () => {
    const drawing = read(drawWindows(report));
    return { drawing, depthAt: axisOf(drawing), bars: barsOf(drawing) };
  };
  const span = Math.max(...report.holes.map(({ window: { min, max } }) => Math.abs(max - min)));

  test("every hole has a bar from limit to limit, crossed out where these clash", () => {
    const { depthAt, bars } = drawn();
    expect(bars).toHaveLength(report.holes.length);
    report.holes.forEach(({ window: { min, max } }, i) => {
      const bar = bars[i];
      expect(bar?.none).toBe(min > max);
      expect(depthAt(bar?.left ?? 0) - Math.min(min, max)).toBeCloseTo(0, span > 10 ? 1 : 2);
      expect(depthAt(bar?.right ?? 0) - Math.max(min, max)).toBeCloseTo(0, span > 10 ? 1 : 2);
    });
  });

  test("every setting's line runs through the bars that it serves, with a dot in each", () => {
    const { drawing, depthAt, bars } = drawn();
    const lines = linesOf(drawing).filter(({ name }) => name === "setting");
    expect(lines).toHaveLength(report.stops.settings.length);
    const dots = classed(drawing, "served").map(({ attributes }) => attributes);
    const served = report.stops.settings.flatMap(({ holes }) => holes);
    expect(dots).toHaveLength(served.length);
    report.stops.settings.forEach(({ depth, holes }, k) => {
      const x = lines[k]?.from[0] ?? 0;
      expect(depthAt(x) - depth).toBeCloseTo(0, span > 10 ? 1 : 2);
      for (const i of holes) {
        const bar = bars[i];
        expect(x).toBeGreaterThanOrEqual((bar?.left ?? Infinity) - 0.002);
        expect(x).toBeLessThanOrEqual((bar?.right ?? -Infinity) + 0.002);
        const [low, high] = [lines[k]?.from[1] ?? 0, lines[k]?.to[1] ?? 0].sort((a, b) => a - b);
        expect((low ?? 0) < (bar?.y ?? 0) && (bar?.y ?? 0) < (high ?? 0)).toBe(true);
      }
    });
  });

  test("where no setting suits all, every line misses some bar", () => {
    const { drawing, bars } = drawn();
    if (report.stops.common) {
      expect(classed(drawing, "common")).toHaveLength(1);
      return;
    }
    expect(classed(drawing, "common")).toHaveLength(0);
    for (const { from } of linesOf(drawing).filter(({ name }) => name === "setting")) {
      const missed = bars.filter(
        ({ left, right, none }) => none || from[0] < left || from[0] > right,
      );
      expect(missed.length).toBeGreaterThan(0);
    }
  });
});

test("the examples show one setting, or two", () => {
  expect(examples.length).toBeGreaterThanOrEqual(4);
  for (const { name, report } of examples) {
    const drawing = read(drawWindows(report));
    const settings = linesOf(drawing).filter((line) => line.name === "setting");
    expect(settings, name).toHaveLength(name === "wren-tenor" ? 2 : 1);
  }
});

test("a planned depth is a broken line of its own; where it misses a bar, the words say so", () => {
  const drawing = read(drawWindows(reportOf("heron-bass")));
  const [plan, ...others] = linesOf(drawing).filter(({ name }) => name === "plan");
  expect(others).toEqual([]);
  expect(plan?.pen).toBe("hidden");
  expect(axisOf(drawing)(plan?.from[0] ?? 0)).toBeCloseTo(2.9, 2);
  const words = textsOf(drawing).map((text) => text.words);
  // 0.3004 of 7 mm leads the rim (handbook table, memory)
  expect(words).toContain("planned: 2.90, travel 5.00");
  const heron = reportOf("heron-bass");
  const deep = heron.holes.filter(({ window }) => window.max < 2.9).length;
  expect(deep).toBeGreaterThan(0);
  expect(words.filter((line) => line.includes("planned too deep"))).toHaveLength(deep);
});

test("without holes it says so", () => {
  const drawing = read(drawWindows(reportOf("no holes")));
  expect(textsOf(drawing).map(({ words }) => words)).toEqual([
    "Depth windows",
    "The design has no holes.",
  ]);
});

describe("the legend and the words", () => {
  const LEGEND = [
    "depths that suit",
    "no depth suits",
    "what all share",
    "served by the setting",
    "governs the setting",
    "planned depth",
  ];
  const legendOf = (report: Report) => {
    const { words } = writingOf(drawWindows(report));
    return LEGEND.filter((entry) => words.includes(entry));
  };
  const onBoard = (change: object) => checkDesign({ ...SQUARED, ...change } as Design);
  const solid = { frets: [3], diameter: 8, fill: { kind: "solid", thickness: 1, keep: 2 } };
  const thin = { board: { ...SQUARED.board, thickness: 2 } };

  test("tell what there is, and nothing else", () => {
    const [suits, none, shared, served, governs, planned] = LEGEND;
    expect(legendOf(onBoard({}))).toEqual([suits, shared, served, governs]);
    expect(legendOf(onBoard({ depth: 3 }))).toEqual([suits, shared, served, governs, planned]);
    const some = [
      { ...SQUARED.markers[0], depth: 3 },
      { frets: [3], diameter: 8 },
    ];
    expect(legendOf(onBoard({ markers: some }))).toEqual([suits, shared, served, governs, planned]);
    expect(legendOf(onBoard({ markers: [...SQUARED.markers, solid] }))).toEqual([
      suits,
      none,
      served,
      governs,
    ]);
    expect(legendOf(onBoard(thin))).toEqual([none]);
  });

  test("a crossed-out sample for what no depth suits", () => {
    const samples = (change: object) => {
      const { elements } = read(drawWindows(onBoard(change)));
      return elements.filter(({ pen, tag }) => pen === "hidden" && tag === "path").length;
    };
    // its bar and the legend's
    expect([samples(thin), samples({})]).toEqual([2, 0]);
  });

  test("the description has each hole's depths, or its limits that clash", () => {
    const wordsOf = (change: object) => writingOf(drawWindows(onBoard(change))).description;
    expect(wordsOf({})).toMatch(/ fret 2: 1\.50 to 6\.00; /);
    expect(wordsOf(thin)).toMatch(/ fret 2: at least 1\.50, at most 0\.00/);
    expect(wordsOf({ markers: [] })).toBe("The design has no holes.");
  });
});
