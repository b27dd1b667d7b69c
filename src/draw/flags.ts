/**
 * Flags: words on a line that flies from an upright one, all to the same side, so stacked that none meets another.
 * Lengths in mm on paper.
 */
import { elementAt } from "../geometry/element-at.js";
import { ABOVE } from "./dimensions.js";
import { LETTER, widthOf } from "./lettering.js";
import { line, type Mark, type Pen, text } from "./marks.js";
import { flagRows } from "./spread.js";

/** A flag to fly. */
export interface Flag {
  readonly x: number;
  /** The lower end of its upright line. */
  readonly foot: number;
  readonly words: string;
  readonly pen: Pen;
  readonly name?: string;
}

const ROW = 1.6 * LETTER;

/** The flags' marks; the lowest of their lines lies at `y`; `side` 1 to the right, −1 to the left. */
export function flagMarks(flags: readonly Flag[], y: number, side: 1 | -1 = 1): Mark[] {
  const rows = flagRows(
    flags.map(({ x, words }) => ({ x: side * x, width: widthOf(words) + 2 * ABOVE })),
  );
  return flags.flatMap(({ x, foot, words, pen, name }, i) => {
    const top = y - elementAt(rows, i) * ROW;
    const end = x + side * (widthOf(words) + ABOVE);
    const anchor = side > 0 ? ("start" as const) : ("end" as const);
    return [
      line(
        pen,
        [
          [x, foot],
          [x, top],
        ],
        name,
      ),
      line("narrow", [
        [x, top],
        [end, top],
      ]),
      text(words, [x + side * ABOVE, top - ABOVE], { anchor }),
    ];
  });
}
