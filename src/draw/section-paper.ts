/** Where the parts of a section lie on paper. */
import type { Cut, Place } from "./cut.js";
import type { Spot } from "./marks.js";
import { scaleWithin } from "./scale.js";

/** A section's paper: its origin is the middle of the flat top. */
export interface Paper {
  /** mm on paper for each mm, from side to side and in height. */
  readonly across: number;
  readonly upright: number;
  readonly exaggeration: number;
  readonly spot: (place: Place) => Spot;
  /** The side on which the depths are written: the hole's own. */
  readonly side: 1 | -1;
  /** From the centre line to the farthest of the board and the hole, and the highest and lowest of both. */
  readonly reach: number;
  readonly top: number;
  readonly bottom: number;
}

/** The room for the board. */
const WIDTH = 130;
const HEIGHT = 120;

/** The paper for a cut. */
export function paperFor(cut: Cut, exaggeration: number): Paper {
  const { half, blank, main } = cut;
  const { window, lead, offset } = main.hole;
  const reach = Math.max(half, Math.abs(main.from), Math.abs(main.to));
  const highest = Math.min(0, window.min, window.max);
  const lowest = Math.max(blank, main.depth + lead, window.min, window.max);
  const room = HEIGHT / ((lowest - highest) * exaggeration);
  const across = scaleWithin(Math.min(WIDTH / (2 * reach), room));
  const upright = across * exaggeration;
  return {
    across,
    upright,
    exaggeration,
    spot: ([x, depth]) => [x * across, depth * upright],
    side: offset < 0 ? -1 : 1,
    reach: reach * across,
    top: highest * upright,
    bottom: Math.max(blank, main.depth + lead) * upright,
  };
}
