/** How far a marker stays clear of its fret slots, of the board's edge and of its neighbours. Lengths in mm. */
import type { Frame } from "../board/board.js";
import type { Marker } from "../board/markers.js";
import { lineAt, placeEnds } from "../board/slot-ends.js";
import {
  distanceToLine,
  distanceToSegment,
  gapBetween,
  gapToPolygon,
  type Point,
  type Polygon,
} from "../geometry/polygon.js";
import { breaksWithin, slopeAt, valueAt } from "../geometry/track.js";

/** From the marker's rim to the nearer of the slots on either side of it, or to the nut; negative where it cuts one. */
export function slotGap(board: Frame, marker: Marker): number {
  const { fret, outline } = marker;
  if (outline === undefined) return pointGap(board, fret, marker) - marker.width / 2;
  return Math.min(...outline.map((corner) => pointGap(board, fret, corner)));
}

/** From a point to the nearer of the slots before and after it; past the last fret there is none after. */
function pointGap(board: Frame, fret: number, point: Point): number {
  const before = lineAt(board, fret - 1);
  const after = board.slots[fret];
  if (!board.fanned) {
    return Math.min(point.along - before.along, (after?.along ?? Infinity) - point.along);
  }
  const first = placeEnds(board, before);
  const toFirst = distanceToLine(point, first.treble, first.bass);
  if (after === undefined) return toFirst;
  const last = placeEnds(board, after);
  return Math.min(toFirst, distanceToLine(point, last.bass, last.treble));
}

/** From the marker's rim to the board's edge or end; negative where it passes it. */
export function edgeGap(board: Frame, marker: Marker): number {
  if (marker.outline) return pocketEdgeGap(board, marker.outline);
  const radius = marker.width / 2;
  return sideGap(board, marker, radius) - radius;
}

/** From the nearest corner to the edge, or from a bend of the edge to the pocket. */
function pocketEdgeGap(board: Frame, outline: Polygon): number {
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
function sideGap(board: Frame, { along, offset }: Point, reach: number): number {
  const aside = Math.abs(offset);
  const half = valueAt(board.width, along) / 2;
  const knots = breaksWithin(board.width, along - reach, along + reach);
  const toSide =
    knots.length === 0
      ? (half - aside) / Math.sqrt(1 + (slopeAt(board.width, along) / 2) ** 2)
      : Math.sign(half - aside) *
        distanceToKnottedSide(board, { along, offset: aside }, reach, knots);
  return Math.min(toSide, board.length - along);
}

function distanceToKnottedSide(
  board: Frame,
  point: Point,
  reach: number,
  knots: readonly number[],
): number {
  const side = [point.along - reach, ...knots, point.along + reach].map((along) => ({
    along,
    offset: valueAt(board.width, along) / 2,
  }));
  const distances = side.slice(1).map((end, i) => distanceToSegment(point, side[i] as Point, end));
  return Math.min(...distances);
}

/** A pair of markers that stand in each other's way. */
export interface Overlap {
  /** Index of the second of the two, and of the first. */
  readonly hole: number;
  readonly other: number;
  /** Between their rims, and negative. */
  readonly gap: number;
}

/** Every pair of markers on the board that overlap. */
export function findOverlaps(markers: readonly Marker[]): Overlap[] {
  const found: Overlap[] = [];
  for (let hole = 1; hole < markers.length; hole++) {
    const own = markers[hole] as Marker;
    for (let other = 0; other < hole; other++) {
      const before = markers[other] as Marker;
      if (isFarApart(before, own)) continue;
      const gap = rimGap(before, own);
      if (gap < 0) found.push({ hole, other, gap });
    }
  }
  return found;
}

/** Two dots that lie farther apart along the board than their rims reach. */
function isFarApart(a: Marker, b: Marker): boolean {
  const isDots = a.outline === undefined && b.outline === undefined;
  return isDots && Math.abs(b.along - a.along) > (a.width + b.width) / 2;
}

/** Between the rims of two markers; negative where they overlap. */
function rimGap(a: Marker, b: Marker): number {
  const reach = (a.width + b.width) / 2;
  if (a.outline === undefined && b.outline === undefined) {
    return Math.hypot(b.along - a.along, b.offset - a.offset) - reach;
  }
  if (a.outline === undefined) return gapToPolygon(a, b.outline as Polygon) - a.width / 2;
  return b.outline === undefined
    ? gapToPolygon(b, a.outline) - b.width / 2
    : gapBetween(a.outline, b.outline);
}
