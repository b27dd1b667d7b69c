/** Boards that are measured: exact surfaces, by identities of their own, and readings off them. */
import fc from "fast-check";
import { seeded } from "../../bench/random.js";

export interface Point {
  readonly offset: number;
  readonly height: number;
}

/** How far a conic of vertex radius R and slope m has dropped: from (1 − m²)h² − 2Rh + x² = 0, negative where hollow. */
export function dropOf(radius: number, x: number, m = 0): number {
  if (!Number.isFinite(radius)) return 0;
  const [r, k] = [Math.abs(radius), 1 - m * m];
  // its smaller root, as the product of the roots, x²/(1 − m²), over the greater one
  return (Math.sign(radius) * x * x) / (r + Math.sqrt(r * r - k * x * x));
}

/** Points across a board, as many as asked for, evenly from edge to edge, the crest at height 0. */
export function across(radius: number, half: number, count: number, m = 0): Point[] {
  return Array.from({ length: count }, (_, i) => {
    const offset = -half + (2 * half * i) / (count - 1);
    return { offset, height: -dropOf(radius, offset, m) };
  });
}

/** The same points in a frame that is turned by an angle (radians) about (0, 0), then moved. */
export function turned(points: readonly Point[], angle: number, aside = 0, up = 0): Point[] {
  const [c, s] = [Math.cos(angle), Math.sin(angle)];
  return points.map(({ offset, height }) => ({
    offset: c * offset - s * height + aside,
    height: s * offset + c * height + up,
  }));
}

/** Readings with errors within ± `limit`, evenly likely. */
export function read(points: readonly Point[], limit: number, random: Random): Point[] {
  return points.map(({ offset, height }) => ({ offset, height: height + random(-limit, limit) }));
}

export type Random = (from: number, to: number) => number;

/** Numbers by the seed of the run. */
export function random(): Random {
  return seeded(fc.readConfigureGlobal().seed ?? 1);
}
