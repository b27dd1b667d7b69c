/** Dimension lines and running dimensions by their measures on paper. Lengths in mm. */
import { describe, expect, test } from "vitest";
import { ABOVE, across, upward } from "../../src/draw/dimensions.js";
import { widthOf } from "../../src/draw/lettering.js";
import { levelMarks } from "../../src/draw/levels.js";
import type { Mark } from "../../src/draw/marks.js";
import { runsOf } from "./svg.js";

const FIGURE = "12.34";
const WIDTH = widthOf(FIGURE);

const drawn = (marks: readonly Mark[]) => marks.filter(({ tag }) => tag === "path");
const spotsOf = ({ attributes }: Mark) => runsOf(String(attributes.d)).flat();
const linesOf = (marks: readonly Mark[]) =>
  drawn(marks)
    .filter(({ pen }) => pen === "narrow")
    .map(spotsOf);
const headsOf = (marks: readonly Mark[]) =>
  drawn(marks)
    .filter(({ pen }) => pen === "solid")
    .map(spotsOf);
const figureOf = (marks: readonly Mark[]) => {
  const [found] = marks.filter(({ tag }) => tag === "text");
  return [Number(found?.attributes.x), Number(found?.attributes.y)] as const;
};

const span = (from: number, to: number, change: object = {}) => ({
  from,
  to,
  at: -10,
  edges: [0, -2] as const,
  figure: FIGURE,
  beside: "to" as const,
  ...change,
});

describe("a dimension across", () => {
  test("extension lines start off the part and go past the line", () => {
    const [first, second] = linesOf(across(span(0, 60)));
    expect(first).toEqual([
      [0, -1],
      [0, -11.5],
    ]);
    expect(second).toEqual([
      [60, -3],
      [60, -11.5],
    ]);
    const [below] = linesOf(across(span(0, 60, { at: 10 })));
    expect(below).toEqual([
      [0, 1],
      [0, 11.5],
    ]);
  });

  test("with room: the line from end to end, arrows outward, the figure above its middle", () => {
    const marks = across(span(10, 70));
    expect(linesOf(marks)[2]).toEqual([
      [10, -10],
      [70, -10],
    ]);
    expect(headsOf(marks).map(([tip]) => tip)).toEqual([
      [10, -10],
      [70, -10],
    ]);
    const [left = [], right = []] = headsOf(marks).map((head) => head.map(([x]) => x));
    expect(Math.min(...left)).toBe(10);
    expect(Math.max(...right)).toBe(70);
    const [x, y] = figureOf(marks);
    expect(x).toBe(40);
    expect(y).toBeCloseTo(-10 - ABOVE, 3);
  });

  test("the figure finds room in its width and one more, and else stands beside", () => {
    const fits = WIDTH + 1;
    expect(figureOf(across(span(0, fits)))[0]).toBeCloseTo(fits / 2, 3);
    const [x] = figureOf(across(span(0, fits - 0.01)));
    expect(x).toBeGreaterThan(fits + WIDTH / 2);
    expect(figureOf(across(span(0, fits - 0.01, { beside: "from" })))[0]).toBeLessThan(-WIDTH / 2);
    // as far from the one end as from the other
    const [other] = figureOf(across(span(0, fits - 0.01, { beside: "from" })));
    expect(fits - 0.01 + -other).toBeCloseTo(x, 2);
  });

  test("it stands beside a crowded line even where it would find room, clear of what else stands there", () => {
    const [x] = figureOf(across(span(0, 60, { crowded: true })));
    expect(x).toBeGreaterThan(60 + WIDTH / 2);
    expect(figureOf(across(span(0, 60, { crowded: false })))[0]).toBe(30);
    const clear = figureOf(across(span(0, 60, { crowded: true, clear: 80 })));
    expect(clear[0]).toBeCloseTo(80 + WIDTH / 2, 3);
    const mirrored = across(span(-60, 0, { crowded: true, clear: 80, beside: "from" }));
    expect(figureOf(mirrored)[0]).toBeCloseTo(-80 - WIDTH / 2, 3);
    // clear of it as it stands
    expect(figureOf(across(span(0, 60, { crowded: true, clear: 5 })))[0]).toBe(x);
    // the line goes on below the figure
    const [, , line] = linesOf(across(span(0, 60, { crowded: true, clear: 80 })));
    expect(line?.[0]).toEqual([0, -10]);
    expect(line?.[1]?.[0]).toBeCloseTo(80 + WIDTH, 2);
  });

  test("where two arrowheads find no room they come from outside, on a line that goes on", () => {
    const marks = across(span(0, 2));
    const [left = [], right = []] = headsOf(marks).map((head) => head.map(([x]) => x));
    expect(Math.max(...left)).toBe(0);
    expect(Math.min(...right)).toBe(2);
    const [, , line] = linesOf(marks);
    const length = -Math.min(...left);
    expect(line?.[0]?.[0]).toBeCloseTo(-length - 1.5, 3);
    expect(line?.[1]?.[0]).toBeGreaterThan(2 + WIDTH);
  });
});

test("two arrowheads and one more find room in 7, whether or not the figure does", () => {
  const outside = (room: number, change: object = {}) => {
    const [left = []] = headsOf(across(span(0, room, change))).map((head) => head.map(([x]) => x));
    return Math.max(...left) === 0;
  };
  expect([7, 6.99].map((room) => outside(room, { crowded: true }))).toEqual([false, true]);
  expect([7, 6.99].map((room) => outside(room, { figure: "1" }))).toEqual([false, true]);
  // a line whose arrows come from outside reaches beyond them, though the figure stands within
  const [, , line] = linesOf(across(span(0, 6.99, { figure: "1" })));
  expect(line?.map(([x]) => x)).toEqual([-4.5, 11.49]);
});

test("an extension line runs toward the dimension's, from whichever side", () => {
  const [first, second] = linesOf(across(span(0, 60, { edges: [-20, 20] })));
  expect(first?.map(([, y]) => y)).toEqual([-19, -8.5]);
  expect(second?.map(([, y]) => y)).toEqual([19, -11.5]);
});

test("a dimension upward is one across, turned", () => {
  const marks = upward({ ...span(60, 0), at: -10 });
  expect(linesOf(marks)[2]).toEqual([
    [-10, 60],
    [-10, 0],
  ]);
  const [x, y] = figureOf(marks);
  expect(y).toBe(30);
  expect(x).toBeCloseTo(-10 - ABOVE, 3);
  const [figure] = marks.filter(({ tag }) => tag === "text");
  expect(figure?.attributes.transform).toBe(`rotate(-90 ${x} ${y})`);
});

describe("running dimensions", () => {
  const running = {
    out: 5,
    spot: (along: number, out: number) => [along, out] as const,
    anchor: "start" as const,
  };
  const levels = (...alongs: number[]) => alongs.map((along) => ({ along, out: 1, words: FIGURE }));

  test("one line from the origin as far as they reach, to either side", () => {
    const last = (...alongs: number[]) => linesOf(levelMarks(levels(...alongs), running)).at(-1);
    expect(last(20, 60, 40)).toEqual([
      [0, 5],
      [60, 5],
    ]);
    expect(last(-30, 60)).toEqual([
      [-30, 5],
      [60, 5],
    ]);
    expect(last(-30)).toEqual([
      [-30, 5],
      [0, 5],
    ]);
  });

  test("an arrowhead at each place, away from the origin; a dot where two are too near", () => {
    const marks = levelMarks(levels(-30, 40, 80), running);
    expect(headsOf(marks).map(([tip]) => tip)).toEqual([
      [-30, 5],
      [40, 5],
      [80, 5],
    ]);
    const farthest = headsOf(marks).map((head) => Math.max(...head.map(([x]) => Math.abs(x))));
    expect(farthest).toEqual([30, 40, 80]);
    const near = levelMarks(levels(40, 40.5, 80), running);
    expect(headsOf(near).map(([tip]) => tip)).toEqual([[80, 5]]);
    const dots = near.filter(({ tag, pen }) => tag === "circle" && pen === "solid");
    expect(dots.map(({ attributes }) => Number(attributes.cx))).toEqual([40, 40.5]);
    // one at the origin has none: its circle stands there
    const origin = levelMarks(levels(0, 40), running);
    expect(headsOf(origin)).toHaveLength(1);
    const circles = origin.filter(({ tag, pen }) => tag === "circle" && pen === "narrow");
    expect(circles.map(({ attributes }) => Number(attributes.cx))).toEqual([0]);
  });

  test("an arrowhead needs 3 to the next; it points along the line, wherever that lies", () => {
    expect(headsOf(levelMarks(levels(40, 43), running))).toHaveLength(2);
    expect(headsOf(levelMarks(levels(40, 42.9), running))).toHaveLength(0);
    const moved = {
      ...running,
      spot: (along: number, out: number) => [out - 7, along + 90] as const,
    };
    const [head] = headsOf(levelMarks(levels(40), moved));
    expect(head?.slice(0, 3)).toEqual([
      [-2, 130],
      [-2.5, 127],
      [-1.5, 127],
    ]);
  });

  test("an extension line from the part to its figure, bent where figures would meet", () => {
    const [straight] = linesOf(levelMarks(levels(40), running));
    // 3 beyond the running line, 8 for the bend, then below the words
    expect(straight?.slice(0, 3)).toEqual([
      [40, 1],
      [40, 8],
      [40, 16],
    ]);
    expect(straight?.[3]?.[1]).toBeCloseTo(16 + WIDTH, 2);
    const [first, second] = linesOf(levelMarks(levels(41, 40), running));
    // in the order in which they lie
    expect([first?.[0]?.[0], second?.[0]?.[0]]).toEqual([40, 41]);
    const [left = 0, right = 0] = [first, second].map((line) => line?.[2]?.[0] ?? Number.NaN);
    expect(left + right).toBeCloseTo(81, 2);
    expect(right - left).toBeCloseTo(1.55 * 3.5, 2);
  });
});
