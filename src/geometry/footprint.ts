/**
 * The ground that a hole may cover, its layout error included: a convex polygon around it, and the box around
 * that. Lengths in mm; offsets are unsigned where the hole lies on one side, since both sides are alike; `near` and
 * `far` are the least and greatest distance from the centre line.
 */
import { clipped, findHull, type Point, type Polygon } from "./polygon.js";

/** What a hole may cover. */
export interface Footprint {
  /** The stretch of the board that it covers. */
  readonly from: number;
  readonly to: number;
  readonly near: number;
  readonly far: number;
  /** Its middle, for a disc. */
  readonly along: number;
  readonly offset: number;
  /** The disc's radius; 0 for an outline. */
  readonly radius: number;
  /** The outline, every point of which may be off by `error`. */
  readonly outline?: Polygon;
  readonly error?: number;
}

/** The footprint of a disc around a point. */
export function discFootprint({ along, offset }: Point, radius: number): Footprint {
  const aside = Math.abs(offset);
  return {
    from: along - radius,
    to: along + radius,
    near: Math.max(0, aside - radius),
    far: aside + radius,
    along,
    offset: aside,
    radius,
  };
}

/** The footprint of an outline whose every point may be off by `error`. */
export function outlineFootprint(outline: Polygon, error: number): Footprint {
  const alongs = outline.map(({ along }) => along);
  const offsets = outline.map(({ offset }) => offset);
  const from = Math.min(...alongs) - error;
  const to = Math.max(...alongs) + error;
  const least = Math.min(...offsets) - error;
  const most = Math.max(...offsets) + error;
  // both sides are alike: the greater part is turned to the treble side
  const sign = least + most < 0 ? -1 : 1;
  return {
    from,
    to,
    near: Math.max(0, least, -most),
    far: Math.max(-least, most),
    along: (from + to) / 2,
    offset: (sign * (least + most)) / 2,
    radius: 0,
    outline: outline.map(({ along, offset }) => ({ along, offset: sign * offset })),
    error,
  };
}

/** The least and the greatest distance from the centre line on the stretch from `from` to `to`. */
export function reachOn(footprint: Footprint, from: number, to: number) {
  const { near, far } = footprint;
  if (from <= footprint.from && footprint.to <= to) return { near, far };
  if (footprint.outline) {
    const offsets = clipped(polygonAround(footprint), from, to).map(({ offset }) => offset);
    const least = Math.min(...offsets);
    const most = Math.max(...offsets);
    return offsets.length === 0
      ? { near, far }
      : { near: Math.max(0, least, -most), far: Math.max(-least, most) };
  }
  const { along, offset } = footprint;
  const half = halfChord(footprint, Math.min(to, Math.max(from, along)));
  return { near: Math.max(0, offset - half), far: offset + half };
}

/** Half of a disc's chord across the board at a place. */
export function halfChord({ along, radius }: Footprint, place: number): number {
  const away = place - along;
  return Math.sqrt(Math.max(0, (radius - away) * (radius + away)));
}

/** A convex polygon around the footprint. */
export function polygonAround(footprint: Footprint): Polygon {
  const { outline, error = 0, radius } = footprint;
  if (outline && error === 0) return findHull(outline);
  return outline
    ? findHull(outline.flatMap((corner) => discAround(corner, error)))
    : discAround(footprint, radius);
}

const SIDES = 32;

/** A regular polygon that touches the unit circle from outside: its corners lie 1/cos(π/n) from the centre. */
const DISC: Polygon = Array.from({ length: SIDES }, (_, k) => {
  const angle = ((2 * k + 1) * Math.PI) / SIDES;
  const reach = 1 / Math.cos(Math.PI / SIDES);
  return { along: reach * Math.sin(angle), offset: reach * Math.cos(angle) };
});

function discAround({ along, offset }: Point, radius: number): Polygon {
  return DISC.map((corner) => ({
    along: along + radius * corner.along,
    offset: offset + radius * corner.offset,
  }));
}
