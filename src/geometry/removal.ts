/**
 * How much wood the radius takes. Removal at (along, offset) = sanding + sagitta, in mm, downward from the blank's flat
 * top. The bounds over a hole's ground are on the safe side whatever the slopes.
 */

import type { Footprint } from "./footprint.js";
import { greatestOnPiece, greatestUnderTangent } from "./greatest-removal.js";
import { leastOnPiece } from "./least-removal.js";
import { sag } from "./sagitta.js";
import type { Surface } from "./surface.js";
import { splitSurface } from "./surface.js";
import { isConstant, pieceAt, solePiece, valueAt, valueOnPiece } from "./track.js";

/** Removal at a point; `Infinity` where the surface does not reach it. */
export function removalOn({ sanding, radius }: Surface, along: number, offset: number): number {
  const i = pieceAt(radius, along);
  const h = sag(valueOnPiece(radius, i, along), offset, radius.slope[i] as number);
  return valueAt(sanding, along) + h;
}

/** The greatest removal over a footprint, never too small; `Infinity` where the surface does not reach it. */
export function greatestRemoval(surface: Surface, footprint: Footprint): number {
  if (isUniform(surface)) return removalOn(surface, footprint.from, footprint.far);
  const { along, from, to, offset, far, radius: reach } = footprint;
  const { sanding, radius } = surface;
  const c = solePiece(sanding, from, to);
  const r = solePiece(radius, from, to);
  if (c >= 0 && r >= 0 && reach > 0) {
    const greatest = greatestUnderTangent(
      valueOnPiece(sanding, c, along),
      sanding.slope[c] as number,
      valueOnPiece(radius, r, along),
      radius.slope[r] as number,
      offset,
      far,
      reach,
    );
    if (greatest < Infinity) return greatest;
  }
  const pieces = splitSurface(surface, footprint.from, footprint.to);
  return Math.max(...pieces.map((piece) => greatestOnPiece(piece, footprint)));
}

/** The least removal over a footprint, never too great. */
export function leastRemoval(surface: Surface, footprint: Footprint): number {
  if (isUniform(surface)) return removalOn(surface, footprint.from, footprint.near);
  const pieces = splitSurface(surface, footprint.from, footprint.to);
  return Math.min(...pieces.map((piece) => leastOnPiece(piece, footprint)));
}

/** Neither sanding nor radius changes along the board: the removal hangs on the distance from the centre line alone. */
function isUniform({ sanding, radius }: Surface): boolean {
  return isConstant(sanding) && isConstant(radius);
}
