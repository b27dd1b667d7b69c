/** The surface that the radius leaves, and its stretches without a knot, on which sanding and radius are linear. Lengths in mm. */
import type { Point } from "./polygon.js";
import { rootOf, sag } from "./sagitta.js";
import { breaksWithin, pieceAt, pieceBefore, type Track, valueOnPiece } from "./track.js";

/** The surface that the radius leaves: removal at (along, offset) is the sanding and the sagitta there. */
export interface Surface {
  readonly sanding: Track;
  readonly radius: Track;
}

/** The stretch from `from` to `to`: pieces `c` and `r` of the sanding's and the radius's tracks. */
export interface Piece {
  readonly surface: Surface;
  readonly from: number;
  readonly to: number;
  readonly c: number;
  readonly r: number;
}

/** The pieces of a surface between two places. */
export function splitSurface(surface: Surface, from: number, to: number): Piece[] {
  const { sanding, radius } = surface;
  const breaks = [...breaksWithin(sanding, from, to), ...breaksWithin(radius, from, to)];
  if (breaks.length === 0) {
    return [{ surface, from, to, c: pieceBefore(sanding, to), r: pieceBefore(radius, to) }];
  }
  const ends = [from, ...breaks.sort((a, b) => a - b), to];
  return ends.slice(1).map((end, i) => {
    const start = ends[i] as number;
    // the first may have no length: then it is the end of the piece before
    const within = (track: Track) =>
      i === 0 ? pieceBefore(track, end) : pieceAt(track, (start + end) / 2);
    return { surface, from: start, to: end, c: within(sanding), r: within(radius) };
  });
}

export function sandingAt({ surface, c }: Piece, along: number): number {
  return valueOnPiece(surface.sanding, c, along);
}

export function radiusAt({ surface, r }: Piece, along: number): number {
  return valueOnPiece(surface.radius, r, along);
}

export function sandingSlopeOf({ surface, c }: Piece): number {
  return surface.sanding.slope[c] as number;
}

export function radiusSlopeOf({ surface, r }: Piece): number {
  return surface.radius.slope[r] as number;
}

/** Removal at a point of the piece, or of the piece drawn on beyond its ends. */
export function removalAt(piece: Piece, along: number, offset: number): number {
  return sandingAt(piece, along) + sag(radiusAt(piece, along), offset, radiusSlopeOf(piece));
}

/** Neither sanding nor radius changes along it. */
export function isLevel(piece: Piece): boolean {
  return sandingSlopeOf(piece) === 0 && radiusSlopeOf(piece) === 0;
}

/** The tangent plane's slopes along and across the board; undefined where the surface ends or stands upright. */
export function slopesAt(piece: Piece, along: number, offset: number): Point | undefined {
  const radius = radiusAt(piece, along);
  const m = radiusSlopeOf(piece);
  const root = rootOf(radius, offset, m);
  if (!(root > 0 && radius > 0)) return undefined;
  // from (1 + K)h² − 2Rh + x² = 0: ∂h/∂x = x / root, ∂h/∂s = −m h / root
  const h = sag(radius, offset, m);
  return { along: sandingSlopeOf(piece) - (m * h) / root, offset: offset / root };
}
