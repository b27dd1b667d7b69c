/**
 * Marks on paper: lines, areas and texts, each with the pen that draws it and the box that it fills.
 * Lengths in mm on paper, x to the right, y downward.
 */
import { HANG, LETTER, RISE, widthOf } from "./lettering.js";
import { type Attributes, plain } from "./xml.js";

/** A place on paper: x, y. */
export type Spot = readonly [number, number];

/** The room that marks take. */
export interface Box {
  readonly left: number;
  readonly top: number;
  readonly right: number;
  readonly bottom: number;
}

/** One mark. */
export interface Mark {
  readonly pen: Pen;
  /** What it stands for, where that is to be told apart: its class. */
  readonly name?: string | undefined;
  readonly tag: "path" | "circle" | "text";
  readonly attributes: Attributes;
  readonly words?: string;
  readonly box: Box;
}

/** Line widths: wide and narrow 2 : 1 (ISO 128-2, line group 0.5; memory). */
export const WIDE = 0.5;
export const NARROW = 0.25;

// ISO 128-2 (memory), in line widths d: dash 12 d, long dash 24 d, gap 3 d. Its dot is at most half a line width
// long; here it is a whole one, so that a screen shows it.
const DASH = 12 * NARROW;
const LONG = 24 * NARROW;
const GAP = 3 * NARROW;
const DOT = NARROW;

const LINE = { fill: "none", stroke: "currentColor" };
const AREA = { fill: "currentColor", stroke: "none" };

/** How each kind of line is drawn; which kind stands for what, after ISO 128-2 (memory). */
export const PENS = {
  /** Light areas: what suits. */
  tint: { ...AREA, "fill-opacity": 0.16 },
  /** Dimension, extension, leader and hatching lines. */
  narrow: { ...LINE, "stroke-width": NARROW },
  /** What lies hidden. */
  hidden: { ...LINE, "stroke-width": NARROW, "stroke-dasharray": `${DASH} ${GAP}` },
  /** Centre lines. */
  centre: { ...LINE, "stroke-width": NARROW, "stroke-dasharray": `${LONG} ${GAP} ${DOT} ${GAP}` },
  /** What was there before forming: the blank. */
  before: {
    ...LINE,
    "stroke-width": NARROW,
    "stroke-dasharray": `${LONG} ${GAP} ${DOT} ${GAP} ${DOT} ${GAP}`,
  },
  /** Edges that are seen. */
  wide: { ...LINE, "stroke-width": WIDE },
  /** Arrowheads and dots. */
  solid: AREA,
  /** Letters. */
  letter: { ...AREA, "font-family": "sans-serif", "font-size": LETTER },
} as const;

/** A kind of line. */
export type Pen = keyof typeof PENS;

/** A line through spots. */
export function line(pen: Pen, spots: readonly Spot[], name?: string): Mark {
  const d = `M${spots.map(([x, y]) => `${plain(x)} ${plain(y)}`).join("L")}`;
  return { pen, name, tag: "path", attributes: { d }, box: around(spots) };
}

/** A closed outline, or an area where the pen fills. */
export function outline(pen: Pen, spots: readonly Spot[], name?: string): Mark {
  const d = `M${spots.map(([x, y]) => `${plain(x)} ${plain(y)}`).join("L")}Z`;
  return { pen, name, tag: "path", attributes: { d }, box: around(spots) };
}

/** Many separate lines as one mark. */
export function strokes(pen: Pen, ends: readonly (readonly [Spot, Spot])[], name?: string): Mark {
  const d = ends
    .map(([[x1, y1], [x2, y2]]) => `M${plain(x1)} ${plain(y1)}L${plain(x2)} ${plain(y2)}`)
    .join("");
  return { pen, name, tag: "path", attributes: { d }, box: around(ends.flat()) };
}

/** A rectangle between two corners. */
export function rectangle(pen: Pen, [x1, y1]: Spot, [x2, y2]: Spot, name?: string): Mark {
  const corners: Spot[] = [
    [x1, y1],
    [x2, y1],
    [x2, y2],
    [x1, y2],
  ];
  return outline(pen, corners, name);
}

/** A circle. */
export function circle(pen: Pen, [cx, cy]: Spot, r: number, name?: string): Mark {
  const box = { left: cx - r, top: cy - r, right: cx + r, bottom: cy + r };
  return { pen, name, tag: "circle", attributes: { cx, cy, r }, box };
}

/** How a text stands. */
export interface TextOptions {
  readonly anchor?: "start" | "middle" | "end" | undefined;
  readonly height?: number | undefined;
  /** Read from the right: it runs upward, and its base line lies at x. */
  readonly turned?: boolean | undefined;
}

/** A text whose base line begins, is centred or ends at a spot. */
export function text(content: string, [x, y]: Spot, options: TextOptions = {}): Mark {
  const { anchor = "start", height = LETTER, turned = false } = options;
  const before = widthOf(content, height) * { start: 0, middle: 0.5, end: 1 }[anchor];
  const after = widthOf(content, height) - before;
  const flat = { left: -before, top: -RISE * height, right: after, bottom: HANG * height };
  const box = turned
    ? { left: x + flat.top, top: y - flat.right, right: x + flat.bottom, bottom: y - flat.left }
    : { left: x + flat.left, top: y + flat.top, right: x + flat.right, bottom: y + flat.bottom };
  const attributes = {
    x,
    y,
    "font-size": height === LETTER ? undefined : height,
    "text-anchor": anchor === "start" ? undefined : anchor,
    transform: turned ? `rotate(-90 ${plain(x)} ${plain(y)})` : undefined,
  };
  return { pen: "letter", tag: "text", attributes, words: content, box };
}

const ARROW = 3;
const ARROW_HALF = 0.5;

/** Length of an arrowhead. */
export const ARROW_LENGTH = ARROW;

/** An arrowhead whose point is at a spot; (dx, dy) is the unit vector that it points along. */
export function arrow([x, y]: Spot, [dx, dy]: Spot): Mark {
  const base: Spot = [x - ARROW * dx, y - ARROW * dy];
  const left: Spot = [base[0] - ARROW_HALF * dy, base[1] + ARROW_HALF * dx];
  const right: Spot = [base[0] + ARROW_HALF * dy, base[1] - ARROW_HALF * dx];
  return outline("solid", [[x, y], left, right]);
}

function around(spots: readonly Spot[]): Box {
  return spots.map(([x, y]) => ({ left: x, top: y, right: x, bottom: y })).reduce(joined, NOWHERE);
}

const NOWHERE: Box = { left: Infinity, top: Infinity, right: -Infinity, bottom: -Infinity };

function joined(a: Box, b: Box): Box {
  return {
    left: Math.min(a.left, b.left),
    top: Math.min(a.top, b.top),
    right: Math.max(a.right, b.right),
    bottom: Math.max(a.bottom, b.bottom),
  };
}

/** The box around marks; one of no size at the origin where there are none. */
export function boxOf(marks: readonly Mark[]): Box {
  const box = marks.map((mark) => mark.box).reduce(joined, NOWHERE);
  return box.left <= box.right ? box : { left: 0, top: 0, right: 0, bottom: 0 };
}
