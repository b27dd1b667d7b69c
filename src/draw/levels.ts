/**
 * Depths from the flat top as running dimensions (ISO 129-1, memory): one line from an origin, an arrowhead at each
 * depth, an extension line to its figure. Where figures would meet, their lines bend and the figures move apart.
 * Lengths in mm on paper.
 */
import { ABOVE } from "./dimensions.js";
import { LETTER, widthOf } from "./lettering.js";
import { ARROW_LENGTH, arrow, circle, line, type Mark, type Spot, text } from "./marks.js";
import { spread } from "./spread.js";

/** A depth to be shown. */
export interface Level {
  /** Where its extension line starts. */
  readonly start: Spot;
  readonly words: string;
}

/** Where the column stands. */
export interface Column {
  /** The running dimension line. */
  readonly x: number;
  /** Figures to the right of it, or to the left. */
  readonly side: 1 | -1;
  /** The flat top. */
  readonly origin: number;
}

const APART = 1.55 * LETTER;
const RUN = 3;
const BEND = 8;

/** The levels' marks. */
export function levelMarks(levels: readonly Level[], column: Column): Mark[] {
  const sorted = [...levels].sort((a, b) => a.start[1] - b.start[1]);
  const places = spread(
    sorted.map(({ start: [, y] }) => y),
    APART,
  );
  return [
    ...sorted.flatMap((level, i) => labelMarks(level, places[i] ?? 0, column)),
    ...runningLine(
      sorted.map(({ start: [, y] }) => y),
      column,
    ),
  ];
}

function labelMarks({ start, words }: Level, place: number, { x, side }: Column): Mark[] {
  const bend = x + side * RUN;
  const foot = bend + side * BEND;
  const end = foot + side * widthOf(words);
  return [
    line("narrow", [start, [bend, start[1]], [foot, place], [end, place]]),
    text(words, [foot, place - ABOVE], { anchor: side > 0 ? "start" : "end" }),
  ];
}

/** From the origin's circle both ways; a dot in place of an arrowhead where two depths are too near for it. */
function runningLine(ys: readonly number[], { x, origin }: Column): Mark[] {
  const ends = [Math.min(origin, ...ys), Math.max(origin, ...ys)] as const;
  const heads = ys
    .filter((y) => y !== origin)
    .map((y) => {
      const others = [origin, ...ys].filter((other) => other !== y);
      const room = Math.min(...others.map((other) => Math.abs(other - y)));
      const roomy = room >= ARROW_LENGTH;
      return roomy ? arrow([x, y], [0, Math.sign(y - origin)]) : circle("solid", [x, y], 0.5);
    });
  return [
    line("narrow", [
      [x, ends[0]],
      [x, ends[1]],
    ]),
    circle("narrow", [x, origin], 1),
    ...heads,
  ];
}
