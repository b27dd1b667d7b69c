/** How far a dot stays clear of its fret slots, of the board's edge and of its neighbours. Lengths in mm. */
import type { Board } from "./board.js";
import type { Marker } from "./markers.js";
import { breaksWithin, knot, valueAt } from "./track.js";

/** From the dot's rim to the nearer of the slots on either side of it; negative where it cuts one. */
export function slotGap(board: Board, marker: Marker): number {
  const before = marker.along - knot(board.slots, marker.fret - 1);
  const after = knot(board.slots, marker.fret) - marker.along;
  return Math.min(before, after) - marker.diameter / 2;
}

/** From the dot's rim to the board's edge or end; negative where it passes it. */
export function edgeGap(board: Board, marker: Marker): number {
  const { along, diameter } = marker;
  return Math.min(distanceToSide(board, marker), board.length - along) - diameter / 2;
}

/** From the dot's centre to the nearest point of the tapered side, as far along as the dot reaches; negative outside. */
function distanceToSide(board: Board, marker: Marker): number {
  const { along, diameter } = marker;
  const offset = Math.abs(marker.offset);
  const from = along - diameter / 2;
  const to = along + diameter / 2;
  const ends = [from, ...breaksWithin(board.width, from, to), to];
  let nearest = Infinity;
  for (let i = 1; i < ends.length; i++) {
    const a = knot(ends, i - 1);
    const b = knot(ends, i);
    const rise = (valueAt(board.width, b) - valueAt(board.width, a)) / 2;
    const half = valueAt(board.width, a) / 2;
    const run = b - a;
    if (!(run > 0)) continue;
    const along0 = along - a;
    const across0 = offset - half;
    const share = (along0 * run + across0 * rise) / (run * run + rise * rise);
    const t = Math.min(1, Math.max(0, share));
    nearest = Math.min(nearest, Math.hypot(along0 - t * run, across0 - t * rise));
  }
  return valueAt(board.width, along) / 2 >= offset ? nearest : -nearest;
}

/** A pair of dots that stand in each other's way. */
export interface Overlap {
  readonly fret: number;
  /** Centre to centre. */
  readonly distance: number;
  /** The two radii together. */
  readonly touching: number;
}

/** Every pair of dots at one fret that overlap; markers come by fret. */
export function overlaps(markers: readonly Marker[]): Overlap[] {
  const found: Overlap[] = [];
  markers.forEach((marker, i) => {
    for (let j = i + 1; j < markers.length && markers[j]?.fret === marker.fret; j++) {
      const other = markers[j] as Marker;
      const distance = Math.hypot(other.along - marker.along, other.offset - marker.offset);
      const touching = (marker.diameter + other.diameter) / 2;
      if (distance < touching) found.push({ fret: marker.fret, distance, touching });
    }
  });
  return found;
}
