/**
 * Surfaces by the textbook's form of the formulas, from nothing in src but their knots: the removal at a point, and the
 * places where dense sampling of a hole's ground finds its extremes.
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

/** Removal: the sanding and the near root h of (1 + K)h² − 2Rh + x² = 0, by the quadratic's textbook solution. */
export function removal({ sanding, radius }: Surface, s: number, x: number): number {
  const { value: R, slope } = lineAt(radius, s);
  const top = lineAt(sanding, s).value;
  if (R === Infinity) return top;
  const a = 1 - slope * slope;
  return top + (R - Math.sqrt(R * R - a * x * x)) / a;
}

const FINE = 900;

/**
 * Where a disc's extremes may lie: densely on its rim, and where the lines across at `bends` and the centre line
 * meet the rim and one another. Elsewhere the removal is convex and has no valley.
 */
export function* discPoints({ along: s, offset: x }: Point, r: number, bends: readonly number[]) {
  for (let i = 0; i < FINE; i++) {
    const angle = (2 * Math.PI * i) / FINE;
    yield point(s + r * Math.sin(angle), x + r * Math.cos(angle));
  }
  const reached = Math.sqrt(Math.max(0, r * r - x * x));
  if (Math.abs(x) <= r) yield* [point(s - reached, 0), point(s + reached, 0)];
  for (const bend of bends) {
    const chord = Math.sqrt(r * r - (bend - s) ** 2);
    if (chord >= 0) yield* [point(bend, x - chord), point(bend, x + chord)];
    if (chord >= Math.abs(x)) yield point(bend, 0);
  }
}

/** A block that tapers: its sides' offsets at its two ends. */
export interface Block {
  readonly from: number;
  readonly to: number;
  readonly low: readonly [number, number];
  readonly high: readonly [number, number];
}

/** The same for a block, two sides of which lie straight across the board. */
export function* blockPoints({ from, to, low, high }: Block, bends: readonly number[]) {
  const even = Array.from({ length: FINE + 1 }, (_, i) => from + ((to - from) * i) / FINE);
  for (const s of [...even, ...bends.filter((bend) => from <= bend && bend <= to)]) {
    const [a, b] = [low, high].map(([u, v]) => u + ((v - u) * (s - from)) / (to - from));
    yield* [point(s, a ?? 0), point(s, b ?? 0)];
    if ((a ?? 0) <= 0 && 0 <= (b ?? 0)) yield point(s, 0);
  }
}

function point(along: number, offset: number): Point {
  return { along, offset };
}
