/**
 * How far a surface of radius R has dropped at distance x from its crest. All lengths in one unit.
 * A compound radius is a cone: R is linear along the board, with slope m = dR/ds, and cut square to
 * the centre line the surface is a conic with K = −m² (sag equation of ISO 10110-12, no aspheric terms).
 */
import { refused } from "../errors/errors.js";

/**
 * Sagitta: the drop at distance `x` from the crest of a surface of radius `radius`.
 *
 * h = x² / (R + √(R² − (1 + K)x²)), K = −slope². With slope 0 the section is a circle, and
 * x² = h(2R − h) (intersecting chords). This form, since R − √(R² − x²) cancels.
 *
 * @param radius radius R, any length unit; greater than 0, `Infinity` is flat
 * @param x distance from the crest, same unit; its sign does not matter
 * @param slope change of the radius per length along the board, m = dR/ds; 0 is a circle
 * @returns the drop h, same unit, 0 or more
 * @throws RangeError where an argument is not a number in its range, or the surface does not reach `x`
 * @example
 * sagitta(254, 20).toFixed(4) // "0.7886"
 * sagitta(Infinity, 20) // 0
 */
export function sagitta(radius: number, x: number, slope = 0): number {
  if (!(typeof radius === "number" && radius > 0)) throw refused("radius", radius, "more than 0");
  if (!Number.isFinite(x)) throw refused("x", x, "a finite distance");
  if (!Number.isFinite(slope)) throw refused("slope", slope, "a finite number");
  // so far below the radius the root is R itself, and the square of x might leave the range of numbers
  if (Math.abs(x) < TINY_SHARE * radius) return x * (x / radius / 2);
  // the drop scales with its lengths; a power of two near the greater keeps squares of extreme ones in range, exactly
  const unit = 2 ** Math.floor(Math.log2(Math.max(radius, Math.abs(x))));
  const h = sag(radius / unit, x / unit, slope) * unit;
  if (!(h < Infinity)) {
    throw refused("x", x, `a distance that a radius of ${radius} reaches`);
  }
  return h;
}

/**
 * Radius of the circle that drops `h` at distance `x` from its crest: R = (x² + h²) / (2h).
 * With `x` half a chord this is the radius of a segment from its chord and height.
 *
 * @param x distance from the crest, any length unit; its sign does not matter
 * @param h drop there, same unit; 0 or more, and 0 (flat) only where `x` is not 0
 * @returns the radius, same unit; `Infinity` where `h` is 0
 * @throws RangeError where an argument is not a number in its range
 * @example
 * radiusFromSagitta(8, 6).toFixed(4) // "8.3333"
 */
export function radiusFromSagitta(x: number, h: number): number {
  if (!Number.isFinite(x)) throw refused("x", x, "a finite distance");
  if (!(Number.isFinite(h) && h >= 0)) throw refused("h", h, "a finite drop of 0 or more");
  if (h === 0 && x === 0) throw refused("h", h, "more than 0 where x is 0");
  if (h === 0) return Infinity;
  // x²/(2h) + h/2; lifting both by a power of two, exactly, keeps the ratio of a hardly measurable drop in range
  const lift = h < 2 ** -900 ? 2 ** 100 : 1;
  return (x / (h * lift)) * ((x * lift) / 2) + h / 2;
}

/**
 * The formula itself, unchecked: `Infinity` where the surface does not reach `x`, never NaN for
 * finite `x` and `m`. h = x · (x / (R + √((R − x)(R + x) + (mx)²))), x ≥ 0.
 */
export function sag(radius: number, x: number, m: number): number {
  const root = rootOf(radius, x, m);
  return root >= 0 && radius > 0 ? x * (x / (radius + root)) : Infinity;
}

/** √(R² − (1 + K)x²), which is R − (1 + K)h; NaN where the surface does not reach `x`. */
export function rootOf(radius: number, x: number, m: number): number {
  const mx = m * x;
  return Math.sqrt((radius - x) * (radius + x) + mx * mx);
}

/** Below this part of the radius, x² is nothing beside R². */
const TINY_SHARE = 1e-20;
