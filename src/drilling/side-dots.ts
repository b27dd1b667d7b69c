/**
 * Side dots, drilled into the bass edge's face after radiusing, mid-face and beside each marked fret, and what their
 * holes may meet. Heights in mm above the underside.
 */

import type { Board } from "../board/board.js";
import { leanBetween, type Marker } from "../board/markers.js";
import { lineAt } from "../board/slot-ends.js";
import type { Spec } from "../design/spec.js";
import { valueAt } from "../geometry/track.js";
import { leadBeyond } from "./bits.js";
import { faceAt, worstFaceAt } from "./edges.js";

/** A side dot beside a marked fret, and the room it has. */
export interface SideDot {
  readonly fret: number;
  readonly along: number;
  /** Least height of the edge face there, in the worst case. */
  readonly face: number;
  /** From the dot's top up to the floor of the fret slot it reaches; Infinity where it reaches none. */
  readonly belowSlot: number;
}

/** The side dots, one for each marked fret; none where the design states none. */
export function sideDotsOf(board: Board, spec: Spec, markers: readonly Marker[]): SideDot[] {
  const { sideDots, slot, tolerance } = spec;
  if (sideDots === undefined) return [];
  const first = markers.filter(({ fret }, i) => fret !== markers[i - 1]?.fret);
  return first.map((marker) => {
    const { fret } = marker;
    const along = besideMarker(board, marker);
    const face = worstFaceAt(board, along, tolerance.thickness);
    const below = slot ? belowSlot(board, slot.depth, sideDots.diameter, fret, along) : Infinity;
    return { fret, along, face, belowSlot: below };
  });
}

/**
 * From the side dot's top up to the floor of a marker's hole, drilled to `depth`; negative where they meet, Infinity
 * where the side dot's hole does not go in so far.
 */
export function belowHole(board: Board, spec: Spec, marker: Marker, depth: number): number {
  const { sideDots, tolerance } = spec;
  if (sideDots === undefined) return Infinity;
  const along = besideMarker(board, marker);
  const innerEnd = valueAt(board.width, along) / 2 - sideDots.depth;
  const distance = Math.max(0, innerEnd + marker.offset - tolerance.layout);
  const reached = marker.outline
    ? distance < marker.diameter / 2
    : leadBeyond(marker.group.bit, marker.diameter, distance);
  if (reached === undefined || reached === false) return Infinity;
  const lead = reached === true ? 0 : reached;
  const floor = valueAt(board.thickness, marker.along) - depth - lead - tolerance.stop;
  return floor - topOf(board, along, sideDots.diameter);
}

function belowSlot(
  board: Board,
  sawn: number,
  diameter: number,
  fret: number,
  along: number,
): number {
  const before = along - lineAt(board, fret - 1).bass;
  const after = lineAt(board, fret).bass - along;
  // the nut is no slot
  const room = fret === 1 ? after : Math.min(before, after);
  if (room >= diameter / 2) return Infinity;
  return valueAt(board.thickness, along) - sawn - topOf(board, along, diameter);
}

/** Where a line through the marker, running as the slots beside it do, meets the bass edge. */
function besideMarker(board: Board, marker: Marker): number {
  const half = valueAt(board.width, marker.along) / 2;
  return marker.along - leanBetween(board, marker.fret) * (half + marker.offset);
}

/** Height of the dot's top, sitting in the middle of the face. */
function topOf(board: Board, along: number, diameter: number): number {
  return faceAt(board, along) / 2 + diameter / 2;
}
