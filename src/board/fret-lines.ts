/** Where each fret lies on the board. Lengths in mm. */

import type { EqualScale, FannedScale, ListedScale, Scale } from "../design/design.js";
import { elementAt } from "../geometry/element-at.js";
import { equalTemperament, shareAt } from "../geometry/temperament.js";

/** A straight line across the board: where it meets the centre line and either edge, all as `along`. */
export interface FretLine {
  /** Where it crosses the centre line, mm from the nut. */
  readonly along: number;
  /** Where it meets the bass edge, mm from the nut along the centre line. */
  readonly bass: number;
  /** Where it meets the treble edge, mm from the nut along the centre line. */
  readonly treble: number;
}

/** The width of the board at a place, given where the frets cross the centre line. */
export type WidthAt = (along: number, slots: readonly number[]) => number;

/** The nut and every fret. Straight ones are square to the centre line. */
export function fretLines(scale: Scale, widthAt: WidthAt): FretLine[] | undefined {
  if ("bass" in scale) return fannedLines(scale, widthAt);
  return [0, ...straightFrets(scale)].map((along) => ({ along, bass: along, treble: along }));
}

/** Where frets square to the centre line cross it. */
export function straightFrets(scale: EqualScale | ListedScale): readonly number[] {
  return "positions" in scale ? scale.positions : equalTemperament(scale.length, scale.frets);
}

const ROUNDS = 200;

/**
 * Fanned frets. Along the bass edge fret n lies at b₀ + L_bass(1 − 2^(−n/12)), along the treble edge at
 * t₀ + L_treble(1 − 2^(−n/12)); the fret `square` has both alike, and the nut crosses the centre line
 * at 0. The width where a line meets an edge depends on b₀, and through stations on the lines themselves, so
 * both are found by repetition. Undefined where that does not settle.
 */
function fannedLines(scale: FannedScale, widthAt: WidthAt): FretLine[] | undefined {
  const skew = (scale.treble - scale.bass) * shareAt(scale.square);
  const mean = (scale.bass + scale.treble) / 2;
  let slots = Array.from({ length: scale.frets + 1 }, (_, n) => mean * shareAt(n));
  let nutBass = skew / 2;
  for (let round = 0; round < ROUNDS; round++) {
    const lines = slots.map((_, n) => {
      const bass = nutBass + scale.bass * shareAt(n);
      const treble = nutBass - skew + scale.treble * shareAt(n);
      return { bass, treble, along: findCentre(bass, treble, slots, widthAt) };
    });
    const nut = elementAt(
      lines.map(({ along }) => along),
      0,
    );
    const moved = lines.map(({ along }) => along - nut);
    const change = Math.max(
      ...moved.map((s, n) => Math.abs(s - (slots[n] as number))),
      Math.abs(nut),
    );
    if (!Number.isFinite(change)) return undefined;
    if (change <= 1e-13 * mean)
      return lines.map((line, n) => (n === 0 ? { ...line, along: 0 } : line));
    slots = moved;
    nutBass -= nut;
  }
  return undefined;
}

/** Where the line between two edge points crosses the centre line. */
function findCentre(
  bass: number,
  treble: number,
  slots: readonly number[],
  widthAt: WidthAt,
): number {
  const bassHalf = widthAt(bass, slots);
  const trebleHalf = widthAt(treble, slots);
  return bass + ((treble - bass) * bassHalf) / (bassHalf + trebleHalf);
}
