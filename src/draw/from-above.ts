/** What is seen from above, on the plan and on the template alike. Lengths in mm of the board. */
import type { Point } from "../geometry/polygon.js";
import { circle, type Mark, outline, type Spot, type Style } from "./line.js";
import type { DrawnBoard, DrawnHole } from "./reading.js";

/** Corners that a hole lies between. */
export function listCorners({ along, offset, width, outline }: DrawnHole): readonly Point[] {
  const r = width / 2;
  return outline ?? [-r, r].map((d) => ({ along: along + d, offset: offset + d }));
}

/** How far the board and its holes reach: along, and from the centre line. */
export function measureExtent({ lines }: DrawnBoard, holes: readonly DrawnHole[]) {
  const ends = lines.flatMap(({ bass, treble }) => [bass, treble]);
  const points = [...ends, ...holes.flatMap(listCorners)];
  const alongs = points.map(({ along }) => along);
  const reach = Math.max(...points.map(({ offset }) => Math.abs(offset)));
  return { from: Math.min(...alongs), to: Math.max(...alongs), reach };
}

/** A hole's rim. */
export function drawRim(
  style: Style,
  hole: DrawnHole,
  spot: (place: Point) => Spot,
  scale = 1,
): Mark {
  return hole.outline
    ? outline(style, hole.outline.map(spot))
    : circle(style, spot(hole), (hole.width / 2) * scale);
}
