/** Marks by their measures on paper: lines, hatching, words, dimensions, scales. Lengths in mm. */
import fc from "fast-check";
import { describe, expect, test } from "vitest";
import { dimension, type Level, runningDimension, ticks } from "../../src/draw/dimension.js";
import { measure, table, text, wrap } from "../../src/draw/label.js";
import * as marks from "../../src/draw/line.js";
import { writePage } from "../../src/draw/paper.js";
import { chooseScale, chooseTicks, spread } from "../../src/draw/scale.js";
import { element, plain } from "../../src/draw/xml.js";
import { advance, paperIn, read, runsOf, textsIn } from "./svg.js";

/** What is drawn: the paths of narrow lines, and the texts. */
function drawn(all: readonly marks.Mark[]) {
  const page = { title: "", heading: [], legend: [], notes: [], spoken: [] };
  const drawing = read(writePage({ ...page, marks: all }));
  const narrow = drawing.elements.filter(({ tag, pen }) => tag === "path" && pen === "narrow");
  const texts = textsIn(drawing).filter(({ words }) => words !== "");
  return { lines: narrow.map(({ attributes }) => attributes.d), texts, drawing };
}
const SQUARE = marks.corners([0, 0], [10, 10]);
const box = (left: number, top: number, right: number, bottom: number) => ({
  left,
  top,
  right,
  bottom,
});

describe("marks", () => {
  test("know their pen, their name and the room they take", () => {
    const svg = '<path class="fret" d="M3 -1L0 4L1 2"/>';
    const fret = marks.line("wide fret", [3, -1], [0, 4], [1, 2]);
    expect(fret).toEqual({ pen: "wide", name: "fret", svg, box: box(0, -1, 3, 4) });
    expect(marks.outline("tint", SQUARE).svg).toBe('<path d="M0 0L10 0L10 10L0 10Z"/>');
    expect(marks.cross("narrow", [0, 0], [2, 1]).svg).toBe('<path d="M0 0L2 1M2 0L0 1"/>');
    expect(marks.circle("solid", [2, 3], 0.5).box).toEqual(box(1.5, 2.5, 2.5, 3.5));
    expect(marks.boxAround([])).toEqual(box(0, 0, 0, 0));
  });

  test("an arrowhead is 3 long and 1 wide, its point at the spot, and flies from another", () => {
    expect(marks.arrow([10, 5], [2, 5]).svg).toContain("M10 5L7 5.5L7 4.5Z");
    expect(marks.arrow([10, 5], [10, 6]).svg).toContain("M10 5L10.5 8L9.5 8Z");
  });

  test("a number has three decimals at most, and none is refused", () => {
    expect([1.23456, -0.0001, -0, -1.5].map(plain)).toEqual(["1.235", "0", "0", "-1.5"]);
    for (const none of [Number.NaN, Infinity]) expect(() => plain(none)).toThrow(RangeError);
  });

  // XML 1.0, 2.2 and 4.6: the characters that it allows, its five entities
  test("what XML does not allow is written otherwise", () => {
    const attributes = { x: 1.0004, y: undefined, class: 'a"<' };
    const found = element("text", attributes, "a & 'b' > \u0000\ud800\ufffe\n");
    const words = "a &amp; &#39;b&#39; &gt; \ufffd\ufffd\ufffd\n";
    expect(found).toBe(`<text x="1" class="a&quot;&lt;">${words}</text>`);
  });
});

describe("hatching", () => {
  const runsIn = (area: readonly marks.Spot[], slope: 1 | -1, apart: number) => {
    const runs = runsOf(/ d="(.*)"/.exec(marks.hatch(area, slope, apart).svg)?.[1] ?? "");
    return runs.map(([a = [0, 0], b = [0, 0]]) => [a, b] as const);
  };
  const NOTCH = [...marks.corners([6, 10], [4, 4])].reverse();
  const NOTCHED = [...SQUARE.slice(0, 3), ...[NOTCH[3], NOTCH[0], NOTCH[1], NOTCH[2]], SQUARE[3]];

  // lines a distance apart cover an area: length · distance ≈ area
  test.each([
    [SQUARE, 100, 1],
    [NOTCHED, 88, 1],
    [NOTCHED, 88, -1],
  ] as const)("covers the area", (area, size, slope) => {
    const runs = runsIn(area as marks.Spot[], slope, 0.1);
    const lengths = runs.map(([a, b]) => Math.hypot(b[0] - a[0], b[1] - a[1]));
    expect(lengths.reduce((sum, length) => sum + length, 0) * 0.1).toBeCloseTo(size, 0);
  });

  test("runs at 45° and ends on the outline", () => {
    const runs = runsIn(SQUARE, 1, 3);
    expect(runs.length).toBeGreaterThan(2);
    for (const [a, b] of runs) {
      expect((b[1] - a[1]) / (b[0] - a[0])).toBeCloseTo(1, 2);
      for (const [x, y] of [a, b]) expect(Math.min(x, y, 10 - x, 10 - y)).toBeCloseTo(0, 2);
    }
  });
});

describe("words", () => {
  test("take no more room than is kept for them, nor far less", () => {
    const letters = Array.from({ length: 95 }, (_, i) => String.fromCharCode(32 + i));
    for (const letter of letters)
      expect(measure(letter, 1)).toBeGreaterThanOrEqual(advance(letter));
    const words = "Seen from above, the nut on the left.";
    expect(measure(words, 1)).toBeLessThan(1.25 * advance(words));
    expect(measure(["i", "mm", "m"], 1)).toBe(measure("mm", 1));
  });

  test("stand from their start, their middle or their end, flat or turned", () => {
    const width = measure("fret");
    const flat = text("fret", [10, 20]).box;
    expect([flat.left, flat.right]).toEqual([10, 10 + width]);
    expect(text("fret", [10, 20], "end").box.left).toBeCloseTo(10 - width, 9);
    const turned = text("fret", [10, 20], "middle", true).box;
    expect([turned.top, turned.bottom]).toEqual([20 - width / 2, 20 + width / 2]);
    expect(turned.right - turned.left).toBeCloseTo(flat.bottom - flat.top, 9);
  });

  test("are wrapped within the width, and nothing is lost that finds room", () => {
    const widths = fc.integer({ min: 20, max: 200 });
    const property = fc.property(fc.string({ maxLength: 200 }), widths, (words, width) => {
      const rows = wrap(words, width, 3.5, 1000);
      for (const row of rows) expect(measure(row)).toBeLessThanOrEqual(width + 1e-9);
      const all = rows.join("").replace(/\s/g, "");
      if (!all.includes("…")) expect(all).toBe(words.replace(/\s/g, ""));
    });
    fc.assert(property);
  });

  // by hand, letters 1 high: m is 1 wide, i and a space 0.42, … 1.05
  test("to the last hair", () => {
    expect(measure("m m", 1)).toBeCloseTo(2.42, 9);
    expect(wrap("m m", 2.42 + 1e-9, 1)).toEqual(["m m"]);
    expect(wrap("m m", 2.41, 1)).toEqual(["m", "m"]);
    expect(wrap("mmm", 2.05, 1)).toEqual(["m…"]);
    expect(wrap("mmmm mmm mmmm", 5.6, 1, 2)).toEqual(["mmmm", "mmm m…"]);
    expect(wrap("", 5, 1)).toEqual([""]);
  });

  test("in columns stand by their starts or their ends, apart", () => {
    const names = ["hole", ["a", "mmm"], "start"] as const;
    const { texts } = drawn(table([names, ["", ["1", "22"], "end"]], 0, (i) => 10 * i));
    const end = expect.closeTo(measure("mmm") + 4 + measure("22"), 2);
    expect(texts.map(({ words }) => words)).toEqual(["hole", "a", "mmm", "1", "22"]);
    expect(texts.map(({ at }) => at[0])).toEqual([0, 0, 0, end, end]);
  });
});

// ISO 129-1 (memory)
describe("a dimension", () => {
  const of = (room: number, figure = "12.34") => {
    const { lines, texts } = drawn(dimension("across", [0, room], -10, [0, -2], figure));
    return { lines, bottom: texts[0]?.box.bottom, at: texts[0]?.at };
  };

  test("has extension lines off the part and a little past its line, the figure above the middle", () => {
    const { lines, bottom, at } = of(60);
    expect(lines).toEqual(["M0 -1L0 -11.5", "M60 -3L60 -11.5", "M0 -10L60 -10"]);
    expect(at?.[0]).toBe(30);
    expect(bottom).toBeLessThan(-10);
    expect(bottom).toBeGreaterThan(-11.5);
    const [below] = drawn(dimension("across", [0, 60], 10, [0, 0], "1")).lines;
    expect(below).toBe("M0 1L0 11.5");
  });

  test("has a figure beyond its line, arrowheads from outside, where these find no room", () => {
    const room = measure("12.34");
    expect(of(room + 1).bottom).toBeGreaterThan(-11.5);
    expect(of(room + 0.9).bottom).toBeLessThan(-11.5);
    expect(of(7, "1").lines[2]).toBe("M0 -10L7 -10");
    expect(of(6.9, "1").lines[2]).toBe("M-4.5 -10L11.4 -10");
  });

  test("upright is one across, turned, and its ends may come in either order", () => {
    const { lines, texts } = drawn(dimension("upright", [40, 0], -10, [0, 0], "1"));
    expect(lines[2]).toBe("M-10 0L-10 40");
    expect(texts[0]?.at[1]).toBe(20);
    expect(texts[0]?.box.right).toBeLessThan(-10);
  });

  test("that runs has a line from its origin, a head or a dot at each place, the figures in order", () => {
    const levels = ["20 b", "0 origin", "21 c", "-30 a"].map((level): Level => {
      const [along, words = ""] = level.split(" ");
      return [Number(along), 0, words];
    });
    const spot = (along: number, out: number) => [out, along] as const;
    const { lines, texts, drawing } = drawn(runningDimension(levels, 5, spot, "start", false));
    expect(texts.map(({ words }) => words)).toEqual(["a", "origin", "b", "c"]);
    const heights = texts.map(({ at }) => at[1]);
    const gaps = heights.slice(1).map((y, i) => y - (heights[i] ?? 0));
    expect(Math.min(...gaps)).toBeGreaterThan(5.4);
    expect(lines.at(-1)).toBe("M5 -30L5 21");
    // the origin's, and dots where 20 and 21 are too near
    const round = drawing.elements.filter(({ tag }) => tag === "circle");
    expect(round.map(({ attributes }) => attributes.r)).toEqual(["1", "0.5", "0.5"]);
  });

  test("ticks stand out of their axis, labelled", () => {
    const both = [...ticks("across", 9, [[4, "x"]]), ...ticks("upright", 9, [[4, "y"]])];
    const { lines, texts } = drawn(both);
    expect(lines).toEqual(["M4 9L4 10.5", "M7.5 4L9 4"]);
    expect(texts[0]?.box.top).toBeGreaterThan(10.5);
    expect(texts[1]?.box.right).toBeLessThan(7.5);
  });
});

describe("scales", () => {
  test("are round, the largest that fits, over thirty powers of ten", () => {
    const scales = [2.99, 3, 1.24, 0.5, 0.49, 0.39, 0.0399].map(chooseScale);
    const round = [2.5, 3, 1, 1 / 2, 1 / 2.5, 1 / 3, 1 / 30];
    expect(scales).toEqual(round.map((scale) => expect.closeTo(scale, 9)));
    const powers = fc.double({ min: -15, max: 15, noNaN: true });
    const property = fc.property(powers, (power) => {
      const most = 10 ** power;
      expect(chooseScale(most)).toBeLessThanOrEqual(most * (1 + 1e-8));
      expect(chooseScale(most)).toBeGreaterThan(most / 1.51);
    });
    fc.assert(property);
  });

  test("ticks are 1, 2 or 5 tens apart, within the range, few enough and told apart", () => {
    const starts = fc.integer({ min: -5000, max: 5000 });
    const sizes = fc.integer({ min: 50, max: 90_000 });
    const property = fc.property(starts, sizes, (start, size) => {
      const [from, to] = [start / 100, (start + size) / 100];
      const { places, decimals } = chooseTicks(from, to, 9);
      const [first = Number.NaN, second = Number.NaN] = places;
      expect((second - first).toPrecision(6)).toMatch(/^0?\.?0*[125][.0]*$/);
      expect(first).toBeGreaterThanOrEqual(from - 1e-9);
      expect(places.at(-1)).toBeLessThanOrEqual(to + 1e-9);
      expect(places.length >= 3 && places.length <= 10).toBe(true);
      expect(new Set(places.map((place) => place.toFixed(decimals))).size).toBe(places.length);
    });
    fc.assert(property);
  });
});

describe("labels moved apart", () => {
  const places = fc
    .array(fc.integer({ min: -500, max: 500 }), { minLength: 1, maxLength: 20 })
    .map((values) => values.map((value) => value / 10).sort((a, b) => a - b));

  test("keep their distance and order; their moves add up to nothing, as least squares want", () => {
    const property = fc.property(places, (wanted) => {
      const got = spread(wanted, 5);
      expect(got).toHaveLength(wanted.length);
      const gaps = got.slice(1).map((place, i) => place - (got[i] ?? 0));
      expect(Math.min(5, ...gaps)).toBeGreaterThanOrEqual(5 - 1e-9);
      const sum = got.reduce((total, place, i) => total + place - (wanted[i] ?? 0), 0);
      expect(sum).toBeCloseTo(0, 6);
    });
    fc.assert(property);
  });

  test("move only where they must, a crowd evenly around its middle", () => {
    expect(spread([0, 5, 11, 30], 5)).toEqual([0, 5, 11, 30]);
    expect(spread([10, 10, 10], 4)).toEqual([6, 10, 14]);
  });
});

test("the paper is as large as what stands on it and 4 mm; a legend shows what there is", () => {
  const sample = (from: marks.Spot, to: marks.Spot) => [marks.line("wide board", from, to)];
  const svg = writePage({
    title: "Title",
    heading: ["A heading.", "Another."],
    marks: [marks.outline("wide board", marks.corners([0, 0], [200, 100]))],
    legend: ["board", "fret"].map((name) => [name, `the ${name}`, sample] as const),
    notes: ["A note.", "long ".repeat(60)],
    spoken: ["Spoken."],
  });
  const paper = paperIn(read(svg));
  expect([paper.left, paper.right]).toEqual([-4, 204]);
  const texts = textsIn(read(svg));
  const [heights, said] = [texts.map(({ at }) => at[1]), texts.map(({ words }) => words)];
  expect(said.slice(0, 5)).toEqual(["Title", "A heading.", "Another.", "the board", "A note."]);
  expect(heights[2]).toBe(-7);
  expect(said.length).toBeGreaterThan(5);
  expect(heights).toEqual([...heights].sort((a, b) => a - b));
  expect(paper.bottom - (heights.at(-1) ?? 0)).toBeCloseTo(4 + 0.25 * 3.5, 2);
  // a sample is not what it stands for
  expect(svg.match(/class="board"/g)).toHaveLength(1);
  expect(svg).toContain("A heading. Another. Spoken. A note.");
});
