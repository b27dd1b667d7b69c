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
  /** From the centre line to the farthest of all that is drawn, and the highest and the lowest of it. */
  readonly reach: number;
  readonly top: number;
  readonly bottom: number;
}

/** The room for the board. */
const WIDTH = 130;
const HEIGHT = 120;

/** The paper for a cut. */
export function paperFor(cut: Cut, exaggeration: number): Paper {
  const { half, main, holes } = cut;
  const reach = Math.max(half, ...holes.flatMap(({ from, to }) => [Math.abs(from), Math.abs(to)]));
  const [highest, lowest] = heightsOf(cut);
  const room = HEIGHT / ((lowest - highest) * exaggeration);
  const across = scaleWithin(Math.min(WIDTH / (2 * reach), room));
  const upright = across * exaggeration;
  return {
    across,
    upright,
    exaggeration,
    spot: ([x, depth]) => [x * across, depth * upright],
    side: main.hole.offset < 0 ? -1 : 1,
    reach: reach * across,
    top: highest * upright,
    bottom: lowest * upright,
  };
}

/** The least and the greatest depth of all that is drawn. */
function heightsOf({ half, blank, main, holes, channel, surface }: Cut): [number, number] {
  const { min, max } = main.hole.window;
  const tips = holes.map(({ depth, hole }) => depth + hole.lead);
  const highest = Math.min(0, min, max, channel?.roof ?? 0);
  return [highest, Math.max(blank, surface(half), min, max, ...tips)];
}
