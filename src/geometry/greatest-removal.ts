/**
 * The greatest removal over the ground that a hole may cover, never too small.
 *
 * On a piece of the surface without a knot the solid under the cone is convex and the sanding is linear, so the removal
 * is a convex function of (along, offset), and grows outward. Over a polygon such a function is greatest at a corner.
 */

import { type Footprint, polygonAround, reachOn } from "./footprint.js";
import { clipped, type Polygon } from "./polygon.js";
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

/** How much the bound below a tangent may exceed the greatest on a disc, mm. */
export const EXCESS = 1e-4;

/**
 * The greatest over a disc without a knot, by two places alone; NaN where two do not come near. At the disc's centre the
 * sanding is `sanded` with slope `k`, the radius `R` with slope `m`; `far` is its outermost offset, `reach` its radius.
 *
 * The disc lies between its ends along the board, below its tangent x = offset + ρ√(1 + t²) − t(s − along) of any slope t.
 * Removal grows outward and is convex, so that over this ground it is greatest at an end of the tangent. With t the
 * removal's own slopes, k R/x − m x/2R, the ends exceed the disc by no more than half the square of their distance times
 * the bend along the tangent, (t + m x/R)²/R.
 */
export function greatestUnderTangent(
  sanded: number,
  k: number,
  R: number,
  m: number,
  offset: number,
  far: number,
  reach: number,
): number {
  const q = far / R;
  const t = (k === 0 ? 0 : k / q) - (m * q) / 2;
  const lean = Math.abs(t);
  const bend = (1 + lean) * reach * (lean + Math.abs(m) * q);
  if (!(bend * bend <= 2 * EXCESS * R && R < Infinity)) return Number.NaN;
  // √(1 + t²) ≤ 1 + t²/2
  const top = offset + reach * (1 + (t * t) / 2);
  const before = sanded - k * reach + sag(R - m * reach, top + t * reach, m);
  const after = sanded + k * reach + sag(R + m * reach, top - t * reach, m);
  return Math.max(before, after);
}

/** The greatest on one piece; `Infinity` where the surface does not reach. Exact where the piece is level. */
export function greatestOnPiece(piece: Piece, footprint: Footprint): number {
  const { from, to } = piece;
  const sanding = Math.max(sandingAt(piece, from), sandingAt(piece, to));
  const radius = Math.min(radiusAt(piece, from), radiusAt(piece, to));
  const { far } = reachOn(footprint, from, to);
  const apart = sanding + sag(radius, far, radiusSlopeOf(piece));
  if (isLevel(piece)) return apart;
  const together = footprint.outline
    ? greatestAtCorners(piece, polygonAround(footprint))
    : greatestOnArc(piece, footprint);
  return Math.min(apart, together);
}

function greatestAtCorners(piece: Piece, polygon: Polygon): number {
  const corners = clipped(polygon, piece.from, piece.to);
  if (corners.length === 0) return Infinity;
  return Math.max(...corners.map(({ along, offset }) => removalAt(piece, along, offset)));
}

const FINEST = 0.02;
const COARSER = 3;

/**
 * A disc: the greatest lies on its outer arc, below the corners of any chain of tangents around that. The chain
 * is fine where the removal is greatest and coarser by steps away from there. With G the slope times the disc's
 * radius, a corner over an arc of half-width w exceeds the arc by G w²/2, while at an angle a from the greatest the
 * removal has fallen by G a²/2: only the finest arcs matter, and their excess is G · 0.00005, some 0.00001 mm.
 */
function greatestOnArc(piece: Piece, disc: Footprint): number {
  const first = angleAt(disc, piece.from);
  const last = angleAt(disc, piece.to);
  const peak = Math.min(last, Math.max(first, steepestAngle(piece, disc)));
  return Math.max(
    onArc(piece, disc, first, 0),
    onArc(piece, disc, last, 0),
    chainFrom(piece, disc, peak, last),
    chainFrom(piece, disc, peak, first),
  );
}

/** The greatest at the corners of a chain of tangents from one angle to another. */
function chainFrom(piece: Piece, disc: Footprint, start: number, end: number): number {
  const sign = end < start ? -1 : 1;
  let greatest = -Infinity;
  let at = start;
  for (let step = FINEST; sign * (end - at) > 0; step *= COARSER) {
    const next = sign * (end - at) > step ? at + sign * step : end;
    greatest = Math.max(greatest, onArc(piece, disc, (at + next) / 2, Math.abs(next - at) / 2));
    at = next;
  }
  return greatest;
}

/** Removal at an angle of the disc's rim; with a half-width, at the corner of the tangents to the arc around it. */
function onArc(piece: Piece, disc: Footprint, angle: number, halfWidth: number): number {
  const reach = disc.radius / Math.cos(halfWidth);
  const along = disc.along + reach * Math.sin(angle);
  return removalAt(piece, along, disc.offset + reach * Math.cos(angle));
}

/** The angle of the outer arc at a place along the board: −90° where the disc begins, 90° where it ends. */
function angleAt({ along, radius }: Footprint, place: number): number {
  return radius > 0 ? Math.asin(Math.min(1, Math.max(-1, (place - along) / radius))) : 0;
}

const STEPS_UPHILL = 12;

/** Where on the rim the removal is greatest, or near it: each step goes to where the last slope points. */
function steepestAngle(piece: Piece, { along, offset, radius }: Footprint): number {
  let angle = 0;
  for (let i = 0; i < STEPS_UPHILL; i++) {
    const place = along + radius * Math.sin(angle);
    const slopes = slopesAt(piece, place, offset + radius * Math.cos(angle));
    if (slopes === undefined) return angle;
    const next = Math.atan2(slopes.along, slopes.offset);
    if (Math.abs(next - angle) < FINEST / 10) return next;
    angle = next;
  }
  return angle;
}
