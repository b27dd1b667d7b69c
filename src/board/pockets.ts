/** Outlines of routed pockets. Lengths in mm. */

import type { PocketShape } from "../design/design.js";
import {
  areaOf,
  crossingOf,
  distanceToLine,
  type Point,
  type Polygon,
} from "../geometry/polygon.js";
import { breaksWithin, valueAt } from "../geometry/track.js";
import type { Frame } from "./board.js";
import { endsOf, lineAt } from "./slot-ends.js";

/** A pocket's corners, in order; undefined where its gaps leave no room. */
export function outlineOf(
  board: Frame,
  shape: PocketShape,
  fret: number,
  centre: Point,
): Polygon | undefined {
  return shape.kind === "rectangle"
    ? rectangleAround(centre, shape)
    : trapezoidWithin(board, shape, fret);
}

function rectangleAround(
  { along, offset }: Point,
  { length, width }: { readonly length: number; readonly width: number },
): Polygon {
  const corner = (s: 1 | -1, x: 1 | -1) => ({
    along: along + (s * length) / 2,
    offset: offset + (x * width) / 2,
  });
  return [corner(-1, -1), corner(1, -1), corner(1, 1), corner(-1, 1)];
}

/** The quadrilateral between two slots and the edges, each side moved inward by its gap. */
function trapezoidWithin(
  board: Frame,
  { slotGap, edgeGap }: { readonly slotGap: number; readonly edgeGap: number },
  fret: number,
): Polygon | undefined {
  const before = endsOf(board, lineAt(board, fret - 1));
  const after = endsOf(board, lineAt(board, fret));
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
    return crossingOf(a, b, c, d);
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
