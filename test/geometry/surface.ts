/**
 * Surfaces by the textbook's form of the formulas, from nothing in src but their knots: the removal at a point, and
 * the extremes that dense sampling of a hole's ground finds.
 */

import type { Point } from "../../src/geometry/polygon.js";
import type { Surface } from "../../src/geometry/surface.js";
import type { Track } from "../../src/geometry/track.js";

/** The straight piece between two knots that holds a place; the first and last are drawn on outward. */
function lineAt({ at, value }: Track, s: number) {
  let i = 0;
  while (i < at.length - 2 && s > (at[i + 1] ?? Infinity)) i++;
  const a = at[i] ?? 0;
  const u = value[i] ?? Number.NaN;
  if (at.length === 1) return { value: u, slope: 0 };
  const slope = ((value[i + 1] ?? Number.NaN) - u) / ((at[i + 1] ?? 0) - a);
  return { value: u + slope * (s - a), slope };
}

/** Removal: the crown and the near root h of (1 + K)h² − 2Rh + x² = 0, by the quadratic's textbook solution. */
export function removal({ crown, radius }: Surface, s: number, x: number): number {
  const { value: R, slope } = lineAt(radius, s);
  const top = lineAt(crown, s).value;
  if (R === Infinity) return top;
  const a = 1 - slope * slope;
  return top + (R - Math.sqrt(R * R - a * x * x)) / a;
}

/** Greatest and least removal of some points of the flat. */
export function extremes(surface: Surface, points: Iterable<readonly [number, number]>) {
  let greatest = -Infinity;
  let least = Infinity;
  let count = 0;
  for (const [s, x] of points) {
    const taken = removal(surface, s, x);
    greatest = Math.max(greatest, taken);
    least = Math.min(least, taken);
    count++;
  }
  return { greatest, least, count };
}

const FINE = 900;

/**
 * Where a disc's extremes may lie: densely on its rim, and where the lines across at `bends` and the centre line
 * meet the rim and one another. Elsewhere the removal is convex and has no valley.
 */
export function* disc(s: number, x: number, r: number, bends: readonly number[]) {
  for (let i = 0; i < FINE; i++) {
    const angle = (2 * Math.PI * i) / FINE;
    yield at(s + r * Math.sin(angle), x + r * Math.cos(angle));
  }
  const reached = Math.sqrt(Math.max(0, r * r - x * x));
  if (Math.abs(x) <= r) yield* [at(s - reached, 0), at(s + reached, 0)];
  for (const bend of bends) {
    const chord = Math.sqrt(r * r - (bend - s) ** 2);
    if (chord >= 0) yield* [at(bend, x - chord), at(bend, x + chord)];
    if (chord >= Math.abs(x)) yield at(bend, 0);
  }
}

/** The same for a quadrilateral, two sides of which lie straight across the board. */
export function* blockPoints(block: Block, bends: readonly number[]) {
  const { from, to } = block;
  const cuts = bends.filter((s) => from <= s && s <= to);
  for (const s of [
    ...Array.from({ length: FINE + 1 }, (_, i) => from + ((to - from) * i) / FINE),
    ...cuts,
  ]) {
    const [low, high] = sidesOf(block, s);
    yield* [at(s, low), at(s, high)];
    if (low <= 0 && 0 <= high) yield at(s, 0);
  }
}

/** A block that tapers: its sides' offsets at its two ends. */
export interface Block {
  readonly from: number;
  readonly to: number;
  readonly low: readonly [number, number];
  readonly high: readonly [number, number];
}

function sidesOf({ from, to, low, high }: Block, s: number): [number, number] {
  const t = (s - from) / (to - from);
  return [low[0] + (low[1] - low[0]) * t, high[0] + (high[1] - high[0]) * t];
}

/** Its corners in order. */
export function cornersOf({ from, to, low, high }: Block): Point[] {
  return [
    { along: from, offset: low[0] },
    { along: to, offset: low[1] },
    { along: to, offset: high[1] },
    { along: from, offset: high[0] },
  ];
}

function at(s: number, x: number): readonly [number, number] {
  return [s, x];
}
