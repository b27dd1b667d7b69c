/** How far a marker stays clear of its fret slots, of the board's edge and of its neighbours. Lengths in mm. */
import type { Board } from "../board/board.js";
import type { Marker } from "../board/markers.js";
import { endsOf, lineAt } from "../board/slot-ends.js";
import { elementAt } from "../geometry/element-at.js";
import {
  distanceToLine,
  distanceToSegment,
  gapToPolygon,
  type Point,
  type Polygon,
} from "../geometry/polygon.js";
import { breaksWithin, slopeAt, valueAt } from "../geometry/track.js";

/** From the marker's rim to the nearer of the slots on either side of it; negative where it cuts one. */
export function slotGap(board: Board, marker: Marker): number {
  const { fret, outline } = marker;
  if (outline === undefined) return pointGap(board, fret, marker) - marker.diameter / 2;
  return Math.min(...outline.map((corner) => pointGap(board, fret, corner)));
}

/** From a point to the nearer of the slots before and after it. */
function pointGap(board: Board, fret: number, point: Point): number {
  const before = lineAt(board, fret - 1);
  const after = lineAt(board, fret);
  if (!board.fanned) return Math.min(point.along - before.along, after.along - point.along);
  const first = endsOf(board, before);
  const last = endsOf(board, after);
  return Math.min(
    distanceToLine(point, first.treble, first.bass),
    distanceToLine(point, last.bass, last.treble),
  );
}

/** From the marker's rim to the board's edge or end; negative where it passes it. */
export function edgeGap(board: Board, marker: Marker): number {
  if (marker.outline) return pocketEdgeGap(board, marker.outline);
  const radius = marker.diameter / 2;
  return sideGap(board, marker, radius) - radius;
}

/** From the nearest corner to the edge, or from a bend of the edge to the pocket. */
function pocketEdgeGap(board: Board, outline: Polygon): number {
  const alongs = outline.map(({ along }) => along);
  const bends = breaksWithin(board.width, Math.min(...alongs), Math.max(...alongs));
  const gaps = outline.map((corner) => sideGap(board, corner, 0));
  for (const along of bends) {
    const half = valueAt(board.width, along) / 2;
    gaps.push(gapToPolygon({ along, offset: -half }, outline));
    gaps.push(gapToPolygon({ along, offset: half }, outline));
  }
  return Math.min(...gaps);
}

/** From a point to the tapered side, as far along as `reach`, or to the board's end; negative outside. */
function sideGap(board: Board, { along, offset }: Point, reach: number): number {
  const aside = Math.abs(offset);
  const half = valueAt(board.width, along) / 2;
  const knots = breaksWithin(board.width, along - reach, along + reach);
  const toSide =
    knots.length === 0
      ? (half - aside) / Math.hypot(1, slopeAt(board.width, along) / 2)
      : Math.sign(half - aside) *
        distanceToKnottedSide(board, { along, offset: aside }, reach, knots);
  return Math.min(toSide, board.length - along);
}

function distanceToKnottedSide(
  board: Board,
  point: Point,
  reach: number,
  knots: readonly number[],
): number {
  const side = [point.along - reach, ...knots, point.along + reach].map((along) => ({
    along,
    offset: valueAt(board.width, along) / 2,
  }));
  const distances = side
    .slice(1)
    .map((end, i) => distanceToSegment(point, elementAt(side, i), end));
  return Math.min(...distances);
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
    for (let j = i + 1; markers[j]?.fret === marker.fret; j++) {
      const other = elementAt(markers, j);
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
