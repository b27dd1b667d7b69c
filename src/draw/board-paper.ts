/** Where the parts of a board seen from above lie on paper. */
import type { Point } from "../geometry/polygon.js";
import type { Hole } from "../report/report.js";
import { APART } from "./levels.js";
import type { Spot } from "./marks.js";
import type { Plan } from "./outline.js";
import { scaleWithin } from "./scale.js";

/** A plan's paper: its origin is where the nut crosses the centre line; treble is up, as the nut is on the left. */
export interface BoardPaper {
  /** mm on paper for each mm. */
  readonly scale: number;
  readonly spot: (point: Point) => Spot;
  /** The farthest that the board and its markers reach on paper. */
  readonly left: number;
  readonly right: number;
  readonly top: number;
  readonly bottom: number;
}

/** The room for the board: longer where many markers are to be named below it. */
const LENGTH = 245;
const WIDTH = 120;

/** The paper for a plan on which so many figures stand side by side. */
export function boardPaperFor(
  { frets, end, half }: Plan,
  holes: readonly Hole[],
  figures: number,
): BoardPaper {
  const alongs = [...frets, end].flatMap(({ bass, treble }) => [bass.along, treble.along]);
  const [from, to] = [Math.min(...alongs), Math.max(...alongs)];
  const reach = Math.max(half, ...holes.map((hole) => Math.abs(hole.offset) + hole.diameter / 2));
  const room = Math.max(LENGTH, figures * APART);
  const scale = scaleWithin(Math.min(room / (to - from), WIDTH / (2 * reach)));
  const before = holes.map((hole) => hole.along * scale - ringReach(hole, scale));
  const after = holes.map((hole) => hole.along * scale + ringReach(hole, scale));
  // holes past the edge have their rings
  const edge = reach > half ? reach * scale + RING : half * scale;
  return {
    scale,
    spot: ({ along, offset }) => [along * scale, -offset * scale],
    left: Math.min(from * scale, ...before),
    right: Math.max(to * scale, ...after),
    top: -edge,
    bottom: edge,
  };
}

/** How far a ring stands off its marker, on paper. */
const RING = 1;

/** How far the ring around a hole that governs stands out from its centre, along the board, on paper. */
export function ringReach({ along, diameter, outline }: Hole, scale: number): number {
  const half = outline
    ? Math.max(...outline.map((corner) => Math.abs(corner.along - along)))
    : diameter / 2;
  return half * scale + RING;
}

/** A pocket's corners moved out from its middle, on paper, so that they go around it. */
export function ringAround(corners: readonly Spot[], [cx, cy]: Spot): Spot[] {
  return corners.map(([x, y]) => {
    const away = Math.hypot(x - cx, y - cy);
    const grown = (away + RING * Math.SQRT2) / away;
    return [cx + (x - cx) * grown, cy + (y - cy) * grown];
  });
}
