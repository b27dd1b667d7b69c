/** What the marks of a drawing stand for: samples with their words, in rows. Lengths in mm on paper. */
import { LETTER, widthOf } from "./lettering.js";
import { type Box, boxOf, type Mark, type Spot, text } from "./marks.js";

/** One sample, drawn in a box of SAMPLE from its top left corner, and what it stands for. */
export interface Entry {
  readonly sample: (corner: Spot) => readonly Mark[];
  readonly words: string;
}

/** The room for a sample. */
export const SAMPLE = { width: 10, height: LETTER } as const;

/** The corner across from a sample's first one. */
export function farFrom([x, y]: Spot): Spot {
  return [x + SAMPLE.width, y + SAMPLE.height];
}

/** A sample's ends, moved to the middle of its height; the first is its top left corner. */
export function middled([x, y]: Spot, i: number): Spot {
  return [x, y + (i === 0 ? SAMPLE.height : -SAMPLE.height) / 2];
}

const GAP = 2;
const BETWEEN = 7;
const ROW = 1.7 * LETTER;
const LEAST_WIDTH = 150;

/** The drawing's marks with a legend below them, as wide as they are. */
export function withLegend(marks: readonly Mark[], entries: readonly Entry[]): Mark[] {
  return [...marks, ...legendMarks(entries, boxOf(marks))];
}

function legendMarks(entries: readonly Entry[], { left, right, bottom }: Box): Mark[] {
  const end = Math.max(right, left + LEAST_WIDTH);
  let x = left;
  let y = bottom + 2 * LETTER;
  return entries.flatMap(({ sample, words }) => {
    const width = SAMPLE.width + GAP + widthOf(words);
    if (x > left && x + width > end) {
      x = left;
      y += ROW;
    }
    const corner: Spot = [x, y];
    x += width + BETWEEN;
    const foot: Spot = [corner[0] + SAMPLE.width + GAP, y + 0.85 * SAMPLE.height];
    // a sample is not what it stands for
    const marks = sample(corner).map((mark) => ({ ...mark, name: undefined }));
    return [...marks, text(words, foot)];
  });
}
