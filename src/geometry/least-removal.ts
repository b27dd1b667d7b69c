/**
 * The least removal over the ground that a hole may cover, never too great.
 *
 * On a piece of the surface without a knot the removal is a convex function of (along, offset): every tangent plane
 * lies below it. The plane that touches where the removal is least bounds it there, and everywhere.
 */

import { type Footprint, halfChord, polygonAround, reachOn } from "./footprint.js";
import { lowestBetween } from "./lowest-between.js";
import { clipped, type Point, type Polygon } from "./polygon.js";
import { sag } from "./sagitta.js";
import {
  isLevel,
  type Piece,
  radiusAt,
  radiusSlopeOf,
  removalAt,
  sandingAt,
  slopesAt,
} from "./surface.js";

/** The least on one piece. Exact where the piece is level. */
export function leastOnPiece(piece: Piece, footprint: Footprint): number {
  const { from, to } = piece;
  const sanding = Math.min(sandingAt(piece, from), sandingAt(piece, to));
  const radius = Math.max(radiusAt(piece, from), radiusAt(piece, to));
  const { near } = reachOn(footprint, from, to);
  const apart = sanding + sag(radius, near, radiusSlopeOf(piece));
  if (isLevel(piece)) return apart;
  const ground = footprint.outline
    ? underPolygon(clipped(polygonAround(footprint), from, to))
    : underDisc(footprint, from, to);
  return Math.max(apart, tangentBound(piece, ground));
}

/** What of the ground a piece holds. */
export interface Ground {
  /** The offset nearest the centre line at a place along the board; its size is a convex function of the place. */
  readonly innerAt: (along: number) => number;
  /** Where a plane of these slopes is lowest; its slope outward, under the offset `innerAt`, is 0 or more. */
  readonly lowest: (alongSlope: number, offsetSlope: number) => Point;
  readonly from: number;
  readonly to: number;
}

function tangentBound(piece: Piece, ground: Ground): number {
  const height = (s: number) => removalAt(piece, s, ground.innerAt(s));
  const along = lowestBetween(height, ground.from, ground.to, SECTIONS);
  const offset = ground.innerAt(along);
  const slopes = slopesAt(piece, along, offset);
  if (slopes === undefined) return -Infinity;
  const lowest = ground.lowest(slopes.along, slopes.offset);
  const fall = slopes.along * (lowest.along - along) + slopes.offset * (lowest.offset - offset);
  return removalAt(piece, along, offset) + fall;
}

/** Whatever comes of so many, the tangent plane there is a bound. */
const SECTIONS = 14;

/** A disc's part on [from, to]: bounded inward by its arc, and by the centre line where it lies over that. */
export function underDisc(disc: Footprint, from: number, to: number): Ground {
  const { along, offset, radius } = disc;
  const innerAt = (s: number) => Math.max(0, offset - halfChord(disc, s));
  const lowest = (alongSlope: number, offsetSlope: number) => {
    const slope = Math.hypot(alongSlope, offsetSlope);
    let place = slope > 0 ? along - (radius * alongSlope) / slope : along;
    // beyond the centre line the plane is mirrored: the lowest place lies where the arc meets the line
    if (offset < halfChord(disc, place)) {
      place = along - Math.sign(alongSlope) * Math.sqrt((radius - offset) * (radius + offset));
    }
    const s = Math.min(to, Math.max(from, place));
    return { along: s, offset: innerAt(s) };
  };
  return { innerAt, lowest, from, to };
}

/** A polygon's part on one piece. */
export function underPolygon(polygon: Polygon): Ground {
  const alongs = polygon.map(({ along }) => along);
  const innerAt = (s: number) => {
    const offsets = clipped(polygon, s, s).map(({ offset }) => offset);
    const least = Math.min(...offsets);
    const most = Math.max(...offsets);
    // no corner there, by rounding: any offset gives a bound
    if (!(least <= most)) return 0;
    return least > 0 ? least : Math.min(most, 0);
  };
  const lowest = (alongSlope: number, offsetSlope: number) => {
    const height = ({ along, offset }: Point) => alongSlope * along + offsetSlope * offset;
    return polygon.reduce((low, corner) => (height(corner) < height(low) ? corner : low));
  };
  return { innerAt, lowest, from: Math.min(...alongs), to: Math.max(...alongs) };
}
