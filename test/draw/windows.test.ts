/** The windows: bars and settings lie where the travels say, read back on the picture's own axis. */
import { describe, expect, test } from "vitest";
import { drawWindows } from "../../src/draw/index.js";
import { gallery, reportOf } from "./gallery.js";
import { classed, type Drawing, linesIn, plotsIn, read, runsOf, textsIn, wordsIn } from "./svg.js";

/** The bars, row by row. */
function barsIn(drawing: Drawing) {
  const bars = classed(drawing, "window").map(({ attributes }) => {
    const spots = runsOf(attributes.d ?? "").flat();
    const [xs, ys] = [spots.map(([x]) => x), spots.map(([, y]) => y)];
    const none = attributes.class?.includes("none") ?? false;
    const y = (Math.min(...ys) + Math.max(...ys)) / 2;
    return { left: Math.min(...xs), right: Math.max(...xs), y, none };
  });
  return bars.sort((a, b) => a.y - b.y);
}

const drawnOnes = gallery.filter(({ report }) => report.holes.some(({ drilled }) => !drilled));

describe.each(drawnOnes)("$name", ({ report }) => {
  const holes = report.holes.map((hole, i) => ({ ...hole, i })).filter(({ drilled }) => !drilled);
  // drawn in each test: what is worked out while the tests are gathered meets no mutant
  const drawn = () => {
    const drawing = read(drawWindows(report));
    return { drawing, travelAt: plotsIn(drawing)[0]?.valueAt ?? Number, bars: barsIn(drawing) };
  };
  const near = (value: number) => expect.closeTo(value, Math.abs(value) > 10 ? 1 : 2);

  test("every hole to drill has a bar from limit to limit, crossed out where these clash", () => {
    const { travelAt, bars } = drawn();
    expect(bars).toHaveLength(holes.length);
    holes.forEach(({ window: { min, max }, recommended, planned, lead, rise }, row) => {
      const known = recommended ?? planned;
      const shift = known?.travel === undefined ? lead - rise : known.travel - known.depth;
      const bar = bars[row];
      expect(bar?.none).toBe(min > max);
      expect(travelAt(bar?.left ?? 0)).toEqual(near(Math.min(min, max) + shift));
      expect(travelAt(bar?.right ?? 0)).toEqual(near(Math.max(min, max) + shift));
    });
  });

  test("every setting's line runs through the bars that it serves, with a dot in each", () => {
    const { drawing, travelAt, bars } = drawn();
    const { settings } = report.stops;
    const lines = linesIn(drawing).filter(({ name }) => name === "setting");
    expect(lines).toHaveLength(settings.length);
    expect(classed(drawing, "served")).toHaveLength(settings.flatMap((s) => s.holes).length);
    settings.forEach((setting, k) => {
      const { from: [x = 0, low] = [0, 0], to: [, high] = [0, 0] } = lines[k] ?? {};
      // as it is written, to two decimals
      expect(Math.abs(travelAt(x) - setting.travel)).toBeLessThan(0.0051);
      for (const bar of bars.filter((_, row) => setting.holes.includes(holes[row]?.i ?? -1))) {
        expect(bar.left - 0.002 <= x && x <= bar.right + 0.002).toBe(true);
        expect(high < bar.y && bar.y < low).toBe(true);
      }
    });
  });

  test("the ends of bars that govern are marked, the planned travels ringed, what all share is shaded", () => {
    const { drawing, travelAt } = drawn();
    const { settings } = report.stops;
    const ends = settings.flatMap(({ min, max, minHole, maxHole }) => [
      [minHole, min],
      [maxHole, max],
    ]);
    const marks = classed(drawing, "governs").map(({ attributes }) => {
      const xs = runsOf(attributes.d ?? "")
        .flat()
        .map(([x]) => x);
      return travelAt((Math.min(...xs) + Math.max(...xs)) / 2);
    });
    const sorted = (values: readonly number[]) => [...values].sort((a, b) => a - b);
    expect(sorted(marks)).toEqual(sorted(ends.map(([, travel = 0]) => travel)).map(near));
    const rings = classed(drawing, "planned").map(({ attributes }) =>
      travelAt(Number(attributes.cx)),
    );
    const planned = holes.flatMap((hole) => hole.planned?.travel ?? []);
    expect(sorted(rings)).toEqual(sorted(planned).map(near));
    const all = settings.some((setting) => setting.holes.length === holes.length);
    expect(classed(drawing, "common")).toHaveLength(all ? 1 : 0);
  });

  test("its table says each hole's travels and the depth of its setting", () => {
    const { drawing } = drawn();
    const words = textsIn(drawing);
    const head = (name: string) => words.find((text) => text.words === name);
    holes.forEach(({ recommended, window }, row) => {
      const y = drawn().bars[row]?.y ?? 0;
      const inRow = words.filter(({ at }) => Math.abs(at[1] - y - 0.36 * 3.5) < 0.01);
      const under = (name: string) => inRow.find(({ at }) => at[0] === head(name)?.at[0])?.words;
      expect(under("by")).toBe(window.maxBy);
      if (recommended) expect(under("depth")).toBe(recommended.depth.toFixed(2));
      expect(inRow.some((text) => text.words === "no depth suits")).toBe(window.min > window.max);
    });
  });
});

test("a hole that is drilled already has no row, and without any other there is no chart", () => {
  const report = reportOf("drilled already");
  expect(wordsIn(drawWindows(report)).filter((words) => words.startsWith("fret 5"))).toHaveLength(
    1,
  );
  const holes = report.holes.filter(({ drilled }) => drilled);
  const none = { ...report, holes, stops: { common: null, settings: [] } };
  for (const empty of [none, reportOf("no holes")]) {
    expect(wordsIn(drawWindows(empty))).toEqual(["Travel windows", "There are no holes to drill."]);
  }
});
