/** Marks on paper: lines, areas, circles. Lengths in mm on paper, x to the right, y downward. */
import { elementAt } from "../geometry/element-at.js";
import { type Attributes, element, plain } from "./xml.js";

/** A place on paper: x, y. */
export type Spot = readonly [number, number];

/** The room that marks take. */
export type Box = Readonly<Record<"left" | "top" | "right" | "bottom", number>>;

/** One mark: the pen that draws it, what it stands for (its class), its element, and its room. */
export interface Mark {
  readonly pen: Pen;
  readonly name: string | undefined;
  readonly svg: string;
  readonly box: Box;
}

/** Height of plain letters, of the series 2.5, 3.5, 5 of ISO 3098 (memory). */
export const LETTER = 3.5;

/** Line widths: wide and narrow 2 : 1 (ISO 128-2, line group 0.5; memory). */
const [WIDE, NARROW] = [0.5, 0.25];

const LINE = { fill: "none", stroke: "currentColor", "stroke-width": NARROW };
const AREA = { fill: "currentColor", stroke: "none" };

/**
 * A dashed line, in line widths d (ISO 128-2, memory): dash 12 d, long dash 24 d, gap 3 d. Its dot is at most half a
 * line width long there; here it is a whole one, so that a screen shows it.
 */
function dashed(...dashes: readonly number[]) {
  const widths = dashes.flatMap((dash) => [dash * NARROW, 3 * NARROW]);
  return { ...LINE, "stroke-dasharray": widths.join(" ") };
}

/** How each kind of line is drawn; which kind stands for what, after ISO 128-2 (memory). */
export const PENS = {
  /** Light areas: what suits. */
  tint: { ...AREA, "fill-opacity": 0.16 },
  /** Dimension, extension, leader and hatching lines. */
  narrow: LINE,
  hidden: dashed(12),
  centre: dashed(24, 1),
  /** What was there before forming: the blank. */
  before: dashed(24, 1, 1),
  /** Edges that are seen. */
  wide: { ...LINE, "stroke-width": WIDE, "stroke-linecap": "square" },
  /** Arrowheads and dots. */
  solid: AREA,
  letter: { ...AREA, "font-family": "sans-serif", "font-size": LETTER },
} as const;

/** A kind of line. */
export type Pen = keyof typeof PENS;

/** A pen, and after it what is drawn: “wide fret”. */
export type Style = Pen | `${Pen} ${string}`;

/** A mark of a style; its class tells what it stands for. */
export function mark(style: Style, tag: string, attributes: Attributes, box: Box): Mark {
  const [pen, ...names] = style.split(" ") as [Pen, ...string[]];
  const name = names.join(" ") || undefined;
  return { pen, name, svg: element(tag, { class: name, ...attributes }), box };
}

/** Lines, each through its spots, as one mark. */
export function lines(style: Style, runs: readonly (readonly Spot[])[], end = ""): Mark {
  const paths = runs.map((run) => `M${run.map(([x, y]) => `${plain(x)} ${plain(y)}`).join("L")}`);
  const spots = runs.flat().map(([x, y]) => ({ left: x, top: y, right: x, bottom: y }));
  const d = paths.map((path) => path + end).join("");
  return mark(style, "path", { d }, spots.reduce(join, NOWHERE));
}

/** A line through spots. */
export function line(style: Style, ...spots: readonly Spot[]): Mark {
  return lines(style, [spots]);
}

/** A closed outline, or an area where the pen fills. */
export function outline(style: Style, spots: readonly Spot[]): Mark {
  return lines(style, [spots], "Z");
}

/** The corners of a rectangle between two of them, in order. */
export function corners(from: Spot, to: Spot): [Spot, Spot, Spot, Spot] {
  return [from, [to[0], from[1]], to, [from[0], to[1]]];
}

/** Both diagonals of a rectangle. */
export function cross(style: Style, from: Spot, to: Spot): Mark {
  const [a, b, c, d] = corners(from, to);
  const [falling, rising] = [[a, c] as const, [b, d] as const];
  return lines(style, [falling, rising]);
}

/** An upright cross about a spot, so far to each side. */
export function plus(style: Style, [x, y]: Spot, reach: number): Mark {
  const ends = [-reach, reach];
  return lines(style, [ends.map((d): Spot => [x + d, y]), ends.map((d): Spot => [x, y + d])]);
}

/** A range as a bar: filled, or crossed out where it is empty. */
export function bar(from: Spot, to: Spot, open: boolean): Mark[] {
  const around = corners(from, to);
  return open
    ? [outline("tint", around), outline("wide window", around)]
    : [outline("hidden window none", around), cross("narrow", from, to)];
}

/** A circle. */
export function circle(style: Style, [cx, cy]: Spot, r: number): Mark {
  const box = { left: cx - r, top: cy - r, right: cx + r, bottom: cy + r };
  return mark(style, "circle", { cx, cy, r }, box);
}

/** Length of an arrowhead, and half its width. */
export const [ARROW, ARROW_HALF] = [3, 0.5];

/** An arrowhead whose point is at a spot, flying from another. */
export function arrow([x, y]: Spot, from: Spot): Mark {
  const length = Math.hypot(x - from[0], y - from[1]);
  const [dx, dy] = [(x - from[0]) / length, (y - from[1]) / length];
  const base = (aside: number): Spot => [x - ARROW * dx - aside * dy, y - ARROW * dy + aside * dx];
  return outline("solid", [[x, y], base(ARROW_HALF), base(-ARROW_HALF)]);
}

/**
 * Hatching: the parts of the lines y = slope · x + k · `apart` · √2 that lie inside a polygon (even-odd rule).
 * They are worked out rather than drawn through a clip, so that the picture needs no names of its own.
 */
export function hatch(
  area: readonly Spot[],
  slope: 1 | -1,
  apart: number,
  style: Style = "narrow",
) {
  const heights = area.map(([x, y]) => y - slope * x);
  const [step, top] = [apart * Math.SQRT2, Math.max(...heights)];
  const parts: Spot[][] = [];
  for (let k = Math.ceil(Math.min(...heights) / step); k * step <= top; k++) {
    const xs = area.flatMap(([x], i) => {
      const next = (i + 1) % area.length;
      const [a, b] = [elementAt(heights, i) - k * step, elementAt(heights, next) - k * step];
      // a side's lower end counts, its upper one does not
      return a >= 0 === b >= 0 ? [] : [x + ((elementAt(area, next)[0] - x) * a) / (a - b)];
    });
    const spots = xs.sort((a, b) => a - b).map((x): Spot => [x, slope * x + k * step]);
    for (let i = 0; i + 1 < spots.length; i += 2) parts.push(spots.slice(i, i + 2));
  }
  return lines(style, parts);
}

/** An area, hatched and with an outline. */
export function hatched(
  area: readonly Spot[],
  slope: 1 | -1,
  apart: number,
  [inside, around]: readonly [inside: Style, around: Style] = ["narrow", "narrow"],
): Mark[] {
  return [hatch(area, slope, apart, inside), outline(around, area)];
}

const NOWHERE: Box = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };

function join(a: Box, b: Box): Box {
  return {
    left: Math.min(a.left, b.left),
    top: Math.min(a.top, b.top),
    right: Math.max(a.right, b.right),
    bottom: Math.max(a.bottom, b.bottom),
  };
}

/** The box around marks; one of no size at the origin where there are none. */
export function boxAround(marks: readonly Mark[]): Box {
  const box = marks.map((mark) => mark.box).reduce(join, NOWHERE);
  return box.left <= box.right ? box : { left: 0, top: 0, right: 0, bottom: 0 };
}
