/**
 * The ground that a hole may cover, its layout error included: a convex polygon around it, and the box around
 * that. Lengths in mm; offsets are unsigned where the hole lies on one side, since both sides are alike; `near` and
 * `far` are the least and greatest distance from the centre line.
 */
import { hullOf, type Point, type Polygon } from "./polygon.js";

/** What a hole may cover. */
export interface Footprint {
  /** The stretch of the board that it covers. */
  readonly from: number;
  readonly to: number;
  readonly near: number;
  readonly far: number;
  /** A polygon around it, made when asked for. */
  readonly polygon: () => Polygon;
}

/** The footprint of a disc around a point. */
export function discFootprint({ along, offset }: Point, radius: number): Footprint {
  const aside = Math.abs(offset);
  return {
    from: along - radius,
    to: along + radius,
    near: Math.max(0, aside - radius),
    far: aside + radius,
    polygon: () => around({ along, offset: aside }, radius, DISC),
  };
}

/** The footprint of an outline whose every point may be off by `error`. */
export function outlineFootprint(outline: Polygon, error: number): Footprint {
  const alongs = outline.map(({ along }) => along);
  const offsets = outline.map(({ offset }) => offset);
  const least = Math.min(...offsets) - error;
  const most = Math.max(...offsets) + error;
  return {
    from: Math.min(...alongs) - error,
    to: Math.max(...alongs) + error,
    near: Math.max(0, least, -most),
    far: Math.max(-least, most),
    polygon: () => {
      // both sides are alike: the greater part is turned to the treble side
      const sign = least + most < 0 ? -1 : 1;
      const folded = outline.map(({ along, offset }) => ({ along, offset: sign * offset }));
      return hullOf(folded.flatMap((corner) => around(corner, error, DISC)));
    },
  };
}

const SIDES = 32;

/** A regular polygon that touches the unit circle from outside: its corners lie 1/cos(π/n) from the centre. */
const DISC: Polygon = Array.from({ length: SIDES }, (_, k) => {
  const angle = ((2 * k + 1) * Math.PI) / SIDES;
  const reach = 1 / Math.cos(Math.PI / SIDES);
  return { along: reach * Math.sin(angle), offset: reach * Math.cos(angle) };
});

function around({ along, offset }: Point, radius: number, unit: Polygon): Polygon {
  return unit.map((corner) => ({
    along: along + radius * corner.along,
    offset: offset + radius * corner.offset,
  }));
}
