/**
 * The ground that a hole may cover, its layout error included: a convex polygon around the disc, and the
 * box around that. Lengths in mm, offsets unsigned, since the
 * surface is the same on both sides; `near` and `far` are the least and greatest distance from the centre line.
 */
export interface Footprint {
  /** The stretch of the board that it covers. */
  readonly from: number;
  readonly to: number;
  readonly near: number;
  readonly far: number;
  /** Corners of the polygon in order, as along and offset in turn. */
  readonly corners: () => Corners;
}

/** A polygon's corners in order around it. */
export interface Corners {
  readonly along: readonly number[];
  readonly offset: readonly number[];
}

const SIDES = 32;
// the polygon touches the circle from outside: its corners lie 1/cos(π/n) radii from the centre
const REACH = 1 / Math.cos(Math.PI / SIDES);
const UNIT_CIRCLE: readonly (readonly [number, number])[] = Array.from(
  { length: SIDES },
  (_, k) => {
    const angle = ((2 * k + 1) * Math.PI) / SIDES;
    return [REACH * Math.sin(angle), REACH * Math.cos(angle)];
  },
);

/** The footprint of a disc around (along, offset); the bass side is folded onto the treble side. */
export function discFootprint(along: number, offset: number, radius: number): Footprint {
  const aside = Math.abs(offset);
  return {
    from: along - radius,
    to: along + radius,
    near: Math.max(0, aside - radius),
    far: aside + radius,
    corners: () => ({
      along: UNIT_CIRCLE.map(([s]) => along + radius * s),
      offset: UNIT_CIRCLE.map(([, x]) => aside + radius * x),
    }),
  };
}

/** The part of a convex polygon that lies on the stretch from `from` to `to`. */
export function clipped(corners: Corners, from: number, to: number): Corners {
  return clippedBelow(clippedBelow(corners, 1, to), -1, -from);
}

/** The part where sign · along ≤ bound. */
function clippedBelow(corners: Corners, sign: 1 | -1, bound: number): Corners {
  const { along, offset } = corners;
  if (along.every((s) => sign * s <= bound)) return corners;
  const kept = { along: [] as number[], offset: [] as number[] };
  const keep = (s: number, x: number) => {
    kept.along.push(s);
    kept.offset.push(x);
  };
  along.forEach((s, i) => {
    const before = (i || along.length) - 1;
    const s0 = along[before] as number;
    const x0 = offset[before] as number;
    const x = offset[i] as number;
    if (sign * s0 <= bound !== sign * s <= bound) {
      const cut = sign * bound;
      keep(cut, x0 + ((x - x0) * (cut - s0)) / (s - s0));
    }
    if (sign * s <= bound) keep(s, x);
  });
  return kept;
}
