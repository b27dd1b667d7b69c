/**
 * A circle in curvature: by its foot p (a point of it), the direction n of its normal there (outward where κ > 0), and
 * its curvature κ. A straight line is the circle with κ = 0, and no pole. All lengths in one unit.
 */

/** A place in the section, or a direction. */
export interface Vector {
  readonly x: number;
  readonly y: number;
}

/** Foot and normal of a circle. */
export interface Arc {
  readonly foot: Vector;
  readonly normal: Vector;
}

/** A point's signed distance, and its slopes as the foot moves along the normal, the normal turns, κ grows. */
export interface Distance {
  readonly value: number;
  readonly move: number;
  readonly turn: number;
  readonly bend: number;
}

/**
 * With w = r − p and F = n·w + κ|w|²/2 the distance is d = 2F/(1 + q), q = √(1 + 2κF) = |n + κw|, where nothing
 * cancels; so F = d + κd²/2, from which the slopes follow: ∂d/∂F = 1/q, ∂d/∂κ = (|w|² − d²)/(2q).
 */
export function distanceTo({ foot, normal }: Arc, curvature: number, point: Vector): Distance {
  const w = { x: point.x - foot.x, y: point.y - foot.y };
  const up = normal.x * w.x + normal.y * w.y;
  const square = w.x * w.x + w.y * w.y;
  const q = Math.hypot(normal.x + curvature * w.x, normal.y + curvature * w.y);
  const value = (2 * up + curvature * square) / (1 + q);
  return {
    value,
    move: -(1 + curvature * up) / q,
    turn: (normal.y * w.x - normal.x * w.y) / q,
    bend: (square - value * value) / (2 * q),
  };
}

/** The circle after a step: the foot along the normal, the normal turned clockwise. */
export function movedArc({ foot, normal }: Arc, move: number, turn: number): Arc {
  const x = normal.x + turn * normal.y;
  const y = normal.y - turn * normal.x;
  const length = Math.hypot(x, y);
  return {
    foot: { x: foot.x + move * normal.x, y: foot.y + move * normal.y },
    normal: { x: x / length, y: y / length },
  };
}

/** The level line through (0, 0), from which the first step of a fit goes to a parabola. */
export const LEVEL: Arc = { foot: { x: 0, y: 0 }, normal: { x: 0, y: 1 } };
