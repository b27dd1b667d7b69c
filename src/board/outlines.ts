/** Outlines of routed pockets. Lengths in mm. */

import type { Corner, PocketShape } from "../design/design.js";
import type { GroupSpec } from "../design/spec.js";
import {
  areaOf,
  distanceToLine,
  findCrossing,
  type Point,
  type Polygon,
} from "../geometry/polygon.js";
import { breaksWithin, valueAt } from "../geometry/track.js";
import type { Frame } from "./board.js";
import { type Half, lineAt, placeEnds } from "./slot-ends.js";

/** A pocket that does not hang on slots. */
type Centred = Exclude<PocketShape, { readonly kind: "trapezoid" }>;

/** A pocket's corners in order, about its centre. */
export function cornersAround(shape: Centred, { along, offset }: Point): Polygon {
  return listCorners(shape).map(({ x, y }) => ({ along: along + x, offset: offset + y }));
}

function listCorners(shape: Centred): readonly Corner[] {
  if (shape.kind === "polygon") return shape.corners;
  const x = shape.length / 2;
  const y = shape.width / 2;
  return [
    { x: -x, y: -y },
    { x, y: -y },
    { x, y },
    { x: -x, y },
  ];
}

/** How far a group's dot or pocket reaches from its centre toward an edge; a trapezoid has its edge gap instead. */
export function measureReach({ diameter, shape }: GroupSpec, side: Half): number {
  if (diameter !== undefined) return diameter / 2;
  if (shape === undefined || shape.kind === "trapezoid") return 0;
  return Math.max(...listCorners(shape).map(({ y }) => (side === "bass" ? -y : y)));
}

/** The quadrilateral between two slots and the edges, each side moved inward by its gap; undefined without room. */
export function trapezoidWithin(
  board: Frame,
  { slotGap, edgeGap }: { readonly slotGap: number; readonly edgeGap: number },
  fret: number,
): Polygon | undefined {
  const before = placeEnds(board, lineAt(board, fret - 1));
  const after = placeEnds(board, lineAt(board, fret));
  const bassGap = edgeGap + bendWithin(board, before.bass, after.bass);
  const trebleGap = edgeGap + bendWithin(board, after.treble, before.treble);
  const sides: [Point, Point][] = [
    inward(before.treble, before.bass, slotGap),
    inward(before.bass, after.bass, bassGap),
    inward(after.bass, after.treble, slotGap),
    inward(after.treble, before.treble, trebleGap),
  ];
  const corners = sides.map(([a, b], i) => {
    const [c, d] = sides[(i + 1) % 4] as [Point, Point];
    return findCrossing(a, b, c, d);
  });
  const outline = corners.filter((corner) => corner !== undefined);
  // gaps that meet turn the outline inside out: then some corner lies beyond a side
  const within = outline.every((corner) =>
    sides.every(([a, b]) => distanceToLine(corner, a, b) >= -1e-9 * board.length),
  );
  return outline.length === 4 && within && areaOf(outline) > 0 ? outline : undefined;
}

/** How far the board's edge bends in, to the left of the straight line between two of its points a and b. */
function bendWithin({ width }: Frame, a: Point, b: Point): number {
  const from = Math.min(a.along, b.along);
  const to = Math.max(a.along, b.along);
  const bends = breaksWithin(width, from, to).map((along) => {
    const offset = (Math.sign(a.offset) * valueAt(width, along)) / 2;
    return distanceToLine({ along, offset }, a, b);
  });
  return Math.max(0, ...bends);
}

/** The line from a to b moved to its left by `gap`. */
function inward(a: Point, b: Point, gap: number): [Point, Point] {
  const along = b.along - a.along;
  const offset = b.offset - a.offset;
  const scale = gap / Math.hypot(along, offset);
  const move = (point: Point) => ({
    along: point.along - offset * scale,
    offset: point.offset + along * scale,
  });
  return [move(a), move(b)];
}
