/**
 * Dimension lines after ISO 129-1 (memory): narrow lines with filled arrowheads, extension lines a little past
 * them, the figure above the line; where there is no room, arrows come from outside and the figure stands beside.
 * Lengths in mm on paper.
 */
import { elementAt } from "../geometry/element-at.js";
import { LETTER, widthOf } from "./lettering.js";
import { ARROW_LENGTH, arrow, line, type Mark, type Spot, text } from "./marks.js";

/** How far an extension line goes past its dimension line, and how far off the part it starts. */
const PAST = 1.5;
const OFF = 1;
/** Between a figure and the line below it. */
export const ABOVE = 0.8 + 0.25 * LETTER;

/** Least room for two arrowheads between their ends. */
const CLEAR = 2 * ARROW_LENGTH + 1;

/** Two ends of a dimension line, where the extension lines start, and where a figure goes that finds no room. */
export interface Span {
  readonly from: number;
  readonly to: number;
  /** Across the dimension: the line itself, and the part's own edge at either end. */
  readonly at: number;
  readonly edges: readonly [number, number];
  readonly figure: string;
  /** Beside the first end or the second. */
  readonly beside: "from" | "to";
  /** The figure stands beside even where it finds room, as other lines run between the ends. */
  readonly crowded?: boolean;
  /** How far from 0 a figure beside must stand at least, clear of other lines. */
  readonly clear?: number;
}

/** A dimension from left to right; `from` < `to` are x, `at` and `edges` are y. */
export function across(span: Span): Mark[] {
  return dimension(span, ([u, v]) => [u, v], false);
}

/** A dimension upward; `from` > `to` are y, `at` and `edges` are x; its figure is read from the right. */
export function upward(span: Span): Mark[] {
  const mirrored = { ...span, from: -span.from, to: -span.to };
  return dimension(mirrored, ([u, v]) => [v, -u], true);
}

type Turn = (spot: Spot) => Spot;

function dimension(span: Span, turn: Turn, turned: boolean): Mark[] {
  const { from, to, at, figure } = span;
  const width = widthOf(figure);
  const room = to - from;
  const figureFits = span.crowded !== true && room >= width + 1;
  const arrowsFit = room >= CLEAR;
  const [start, end, middle] = figureFits ? [from, to, (from + to) / 2] : besideEnds(span, width);
  const lead = arrowsFit ? 0 : ARROW_LENGTH + 1.5;
  const heads = arrowsFit ? 1 : -1;
  return [
    ...extensions(span, turn),
    line("narrow", [
      turn([Math.min(start, from - lead), at]),
      turn([Math.max(end, to + lead), at]),
    ]),
    arrow(turn([from, at]), direction(turn, -heads)),
    arrow(turn([to, at]), direction(turn, heads)),
    text(figure, turn([middle, at - ABOVE]), { anchor: "middle", turned }),
  ];
}

/** The line's ends and the figure's middle, where the figure stands beside. */
function besideEnds({ from, to, beside, clear }: Span, width: number): [number, number, number] {
  const gap = ARROW_LENGTH + 2;
  if (beside === "to") {
    const start = Math.max(to + gap, clear ?? -Infinity);
    return [from, start + width, start + width / 2];
  }
  const end = Math.min(from - gap, -(clear ?? -Infinity));
  return [end - width, to, end - width / 2];
}

function direction(turn: Turn, sign: number): Spot {
  const [x, y] = turn([sign, 0]);
  return [x, y];
}

function extensions({ from, to, at, edges }: Span, turn: Turn): Mark[] {
  return [from, to].map((end, i) => {
    const edge = elementAt(edges, i);
    const away = Math.sign(at - edge);
    return line("narrow", [turn([end, edge + OFF * away]), turn([end, at + PAST * away])]);
  });
}
