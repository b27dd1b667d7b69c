/**
 * Side dots, drilled into the bass edge's face after radiusing, mid-face and beside each marked fret, and what their
 * holes may meet. Their line is scribed at a fixed height above the underside. Heights in mm above the underside.
 */
import type { Board } from "../board/board.js";
import { leanBetween, type Marker } from "../board/markers.js";
import type { Spec } from "../design/spec.js";
import { valueAt } from "../geometry/track.js";
import { dropBeyond } from "./bits.js";
import { faceAt, topAt, worstFaceAt } from "./edges.js";
import type { Bounds } from "./windows.js";

/** A side dot beside a marked fret, and the room it has. */
export interface SideDot {
  readonly fret: number;
  readonly along: number;
  /** Least height of the edge face there, in the worst case. */
  readonly face: number;
  /** Least from the dot's top up to the floor of the fret slot it reaches; Infinity where it reaches none. */
  readonly belowSlot: number;
}

/** The side dots, one for each marked fret; none where the design states none. */
export function buildSideDots(board: Board, spec: Spec, markers: readonly Marker[]): SideDot[] {
  const { sideDots, tolerance } = spec;
  if (sideDots === undefined) return [];
  const first = markers.filter(({ fret }, i) => fret !== markers[i - 1]?.fret);
  return first.map((marker) => {
    const { fret } = marker;
    const along = besideMarker(board, marker);
    const face = worstFaceAt(board, along, tolerance.thickness.limit);
    return { fret, along, face, belowSlot: belowSlot(board, spec, fret, along) };
  });
}

/**
 * Least from the side dot's top up to what is drilled for a marker to `depth`; negative where they meet, Infinity where
 * the side dot's hole does not go in so far.
 */
export function belowHole(
  board: Board,
  spec: Spec,
  marker: Marker,
  bounds: Bounds,
  depth: number,
): number {
  const { sideDots, tolerance } = spec;
  if (sideDots === undefined) return Infinity;
  const along = besideMarker(board, marker);
  const innerEnd = valueAt(board.width, along) / 2 - sideDots.depth;
  const reached = Math.max(0, innerEnd + marker.offset - tolerance.layout.limit);
  const drop = dropToward(spec, marker, reached);
  if (drop === undefined) return Infinity;
  const { along: s, offset } = marker;
  const top = valueAt(board.wood.thickness, s) - topAt(board.nominal, s, offset);
  const floor = top - depth - drop - tolerance.thickness.limit - bounds.error;
  return floor - findTop(board, along, sideDots.diameter);
}

/** The most that what is drilled goes below its floor, so far from its axis or farther; undefined where it ends before. */
function dropToward(spec: Spec, { group, outline, width }: Marker, distance: number) {
  const { bit, drilled } = group;
  if (outline === undefined && !drilled) {
    return dropBeyond(bit, width, distance, spec.tolerance.point.limit);
  }
  return distance < width / 2 ? 0 : undefined;
}

function belowSlot(
  board: Board,
  { slot, sideDots, tolerance }: Spec,
  fret: number,
  along: number,
): number {
  const sawn = slot?.depth;
  if (sawn === undefined || sideDots === undefined) return Infinity;
  const slots = board.slots.slice(Math.max(1, fret - 1), fret + 1);
  const room = Math.min(...slots.map(({ bass }) => Math.abs(bass - along)));
  if (room >= sideDots.diameter / 2) return Infinity;
  const floor = valueAt(board.wood.thickness, along) - sawn - tolerance.thickness.limit;
  return floor - findTop(board, along, sideDots.diameter);
}

/** Where a line through the marker, running as the slots beside it do, meets the bass edge. */
function besideMarker(board: Board, marker: Marker): number {
  const half = valueAt(board.width, marker.along) / 2;
  return marker.along - leanBetween(board, marker.fret) * (half + marker.offset);
}

/** Height of the dot's top, sitting in the middle of the face as designed. */
function findTop(board: Board, along: number, diameter: number): number {
  return faceAt(board, along) / 2 + diameter / 2;
}
