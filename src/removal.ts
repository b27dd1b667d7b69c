/**
 * How much wood the radius takes. Removal at (along, offset) = crown + sagitta, in mm, downward from
 * the blank's flat top.
 *
 * The bounds over a footprint rest on one fact: on a stretch without a knot the solid under a cone
 * is convex and the crown is linear, so the removal is a convex function of (along, offset). The greatest value of
 * such a function over a polygon stands at a corner, and each tangent plane lies below it everywhere.
 * So both bounds are on the safe side, whatever the slopes.
 */
import type { Surface } from "./board.js";
import type { Footprint } from "./footprint.js";
import { clipped, type Point, type Polygon } from "./polygon.js";
import { rootOf, sag } from "./sagitta.js";
import { breaksWithin, knot, pieceAt, slopeAt, valueAt, valueOnPiece } from "./track.js";

/** Removal at a point; `Infinity` where the surface does not reach it. */
export function removalOn(surface: Surface, along: number, offset: number): number {
  const radius = valueAt(surface.radius, along);
  return valueAt(surface.crown, along) + sag(radius, offset, slopeAt(surface.radius, along));
}

/** The greatest removal over a footprint, never too small; `Infinity` where the surface does not reach it. */
export function greatestRemoval(surface: Surface, footprint: Footprint): number {
  let greatest = -Infinity;
  for (const piece of pieces(surface, footprint)) {
    greatest = Math.max(greatest, greatestOnPiece(piece, footprint));
  }
  return greatest;
}

/** The least removal over a footprint, never too great. */
export function leastRemoval(surface: Surface, footprint: Footprint): number {
  let least = Infinity;
  for (const piece of pieces(surface, footprint)) {
    least = Math.min(least, leastOnPiece(piece, footprint));
  }
  return least;
}

/** A stretch of the surface without a knot: crown and radius are linear. */
interface Piece {
  readonly from: number;
  readonly to: number;
  readonly crown: (along: number) => number;
  readonly radius: (along: number) => number;
  readonly crownSlope: number;
  readonly radiusSlope: number;
}

function pieces(surface: Surface, footprint: Footprint): Piece[] {
  const { crown, radius } = surface;
  const { from, to } = footprint;
  const breaks = [...breaksWithin(crown, from, to), ...breaksWithin(radius, from, to)];
  const ends = [from, ...breaks.sort((a, b) => a - b), to];
  return ends.slice(1).map((end, i) => {
    const start = knot(ends, i);
    const middle = (start + end) / 2;
    return pieceAround(surface, middle, start, end);
  });
}

function pieceAround(surface: Surface, middle: number, from: number, to: number): Piece {
  const { crown, radius } = surface;
  const c = pieceAt(crown, middle);
  const r = pieceAt(radius, middle);
  return {
    from,
    to,
    crown: (along) => valueOnPiece(crown, c, along),
    radius: (along) => valueOnPiece(radius, r, along),
    crownSlope: knot(crown.slope, c),
    radiusSlope: knot(radius.slope, r),
  };
}

/** Bounded twice: by the worst of each quantity apart (exact on a cylinder), and by the polygon's corners. */
function greatestOnPiece(piece: Piece, footprint: Footprint): number {
  const { from, to, radiusSlope: m } = piece;
  const crown = Math.max(piece.crown(from), piece.crown(to));
  const radius = Math.min(piece.radius(from), piece.radius(to));
  const apart = crown + sag(radius, footprint.far, m);
  if (piece.crownSlope === 0 && m === 0) return apart;
  const corners = clipped(footprint.polygon(), from, to);
  if (corners.length === 0) return apart;
  const removals = corners.map(({ along, offset }) => {
    return piece.crown(along) + sag(piece.radius(along), offset, m);
  });
  return Math.min(apart, Math.max(...removals));
}

/** Bounded by the least of each quantity apart (exact on a cylinder), and by tangent planes. */
function leastOnPiece(piece: Piece, footprint: Footprint): number {
  const { from, to, radiusSlope: m } = piece;
  const crown = Math.min(piece.crown(from), piece.crown(to));
  const radius = Math.max(piece.radius(from), piece.radius(to));
  const apart = crown + sag(radius, footprint.near, m);
  if (piece.crownSlope === 0 && m === 0) return apart;
  const corners = clipped(footprint.polygon(), from, to);
  if (corners.length === 0) return apart;
  let least = apart;
  for (const start of [from, (from + to) / 2, to]) {
    least = Math.max(least, tangentBound(piece, corners, start, footprint.near));
  }
  return least;
}

const TANGENTS = 4;

/**
 * The best of a few tangent planes' least values over the polygon. Each plane touches where the last one was
 * least, so they close in on the true least value; every one of them is a bound.
 */
function tangentBound(piece: Piece, corners: Polygon, along: number, offset: number): number {
  let best = -Infinity;
  let s = along;
  let x = offset;
  for (let i = 0; i < TANGENTS; i++) {
    const radius = piece.radius(s);
    const root = rootOf(radius, x, piece.radiusSlope);
    // no tangent plane where the surface ends or stands upright
    if (!(root > 0 && root < Infinity && radius > 0)) break;
    const h = sag(radius, x, piece.radiusSlope);
    // from (1 + K)h² − 2Rh + x² = 0: ∂h/∂x = x / root, ∂h/∂s = −m h / root
    const alongSlope = piece.crownSlope - (piece.radiusSlope * h) / root;
    const offsetSlope = x / root;
    const lowest = lowestCorner(corners, alongSlope, offsetSlope);
    const fall = alongSlope * (lowest.along - s) + offsetSlope * (lowest.offset - x);
    best = Math.max(best, piece.crown(s) + h + fall);
    s = lowest.along;
    x = lowest.offset;
  }
  return best;
}

function lowestCorner(corners: Polygon, alongSlope: number, offsetSlope: number): Point {
  const height = ({ along, offset }: Point) => alongSlope * along + offsetSlope * offset;
  return corners.reduce((lowest, corner) => (height(corner) < height(lowest) ? corner : lowest));
}
