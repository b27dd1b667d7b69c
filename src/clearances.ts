/** How far a marker stays clear of its fret slots, of the board's edge and of its neighbours. Lengths in mm. */
import type { Board } from "./board.js";
import { endsOf, lineAt, type Marker } from "./markers.js";
import { distanceToLine, distanceToSegment, type Point } from "./polygon.js";
import { breaksWithin, knot, slopeAt, valueAt } from "./track.js";

/** From the marker's rim to the nearer of the slots on either side of it; negative where it cuts one. */
export function slotGap(board: Board, marker: Marker): number {
  const before = endsOf(board, lineAt(board, marker.fret - 1), "whole");
  const after = endsOf(board, lineAt(board, marker.fret), "whole");
  const gap = (point: Point) =>
    Math.min(
      distanceToLine(point, before.treble, before.bass),
      distanceToLine(point, after.bass, after.treble),
    );
  return marker.outline ? Math.min(...marker.outline.map(gap)) : gap(marker) - marker.diameter / 2;
}

/** From the marker's rim to the board's edge or end; negative where it passes it. */
export function edgeGap(board: Board, marker: Marker): number {
  if (marker.outline) return Math.min(...marker.outline.map((corner) => cornerGap(board, corner)));
  const { along, diameter } = marker;
  return Math.min(distanceToSide(board, marker), board.length - along) - diameter / 2;
}

function cornerGap(board: Board, { along, offset }: Point): number {
  const across = valueAt(board.width, along) / 2 - Math.abs(offset);
  return Math.min(across / Math.hypot(1, slopeAt(board.width, along) / 2), board.length - along);
}

/** From the dot's centre to the tapered side, as far along as the dot reaches; negative outside. */
function distanceToSide(board: Board, { along, offset, diameter }: Marker): number {
  const centre = { along, offset: Math.abs(offset) };
  const from = along - diameter / 2;
  const to = along + diameter / 2;
  const side = [from, ...breaksWithin(board.width, from, to), to].map((s) => ({
    along: s,
    offset: valueAt(board.width, s) / 2,
  }));
  const distances = side.slice(1).map((end, i) => distanceToSegment(centre, side[i] ?? end, end));
  const nearest = Math.min(...distances);
  return valueAt(board.width, along) / 2 >= centre.offset ? nearest : -nearest;
}

/** A pair of markers that stand in each other's way. */
export interface Overlap {
  readonly fret: number;
  /** Index of the second marker of the two. */
  readonly hole: number;
  /** Centre to centre. */
  readonly distance: number;
  /** Half of both together. */
  readonly touching: number;
}

/** Every pair of markers at one fret that overlap; markers come by fret. */
export function overlaps(markers: readonly Marker[]): Overlap[] {
  const found: Overlap[] = [];
  markers.forEach((marker, i) => {
    for (let j = i + 1; j < markers.length && markers[j]?.fret === marker.fret; j++) {
      const other = knot(markers, j);
      const distance = distanceBetween(marker, other);
      const touching = (marker.diameter + other.diameter) / 2;
      if (distance < touching) found.push({ fret: marker.fret, hole: j, distance, touching });
    }
  });
  return found;
}

/** Centre to centre; across the board alone where one is a pocket, as both lie midway between the slots. */
function distanceBetween(a: Marker, b: Marker): number {
  const across = b.offset - a.offset;
  return a.outline || b.outline ? Math.abs(across) : Math.hypot(b.along - a.along, across);
}
