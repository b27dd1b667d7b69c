/**
 * The surface as it is now, from thicknesses: across the board a circle, along it linear between the readings. Depths
 * below the centre of the reading, downward, mm; tilts are sines.
 */
import type { Bore } from "../board/markers.js";
import { spreadFootprint } from "../drilling/grounds.js";
import {
  breaksWithin,
  constantTrack,
  type Track,
  trackThrough,
  valueAt,
} from "../geometry/track.js";

/** The circle through the thicknesses on the centre line and at the edges. */
export interface AcrossNow {
  /** 1/radius, per mm: 0 is flat, negative hollow. */
  readonly curvature: number;
  /** Sine of the slope on the centre line: more than 0 falls toward the treble edge. */
  readonly tilt: number;
  /** mm; Infinity is flat, negative hollow. */
  readonly radius: number;
  /** Offset of the crest, mm; not finite where flat. */
  readonly crest: number;
}

/**
 * The circle through (−b, l), (0, 0) and (b, r), the depths downward: x² + d² + 2gx − 2fd = 0 with
 * f = (2b² + l² + r²) / (2(l + r)) and g = (2fr − b² − r²) / (2b) (intersecting chords); both are taken times l + r
 * here, so that flat is an ordinary case. Where one edge was not read, as if it were like the other.
 */
export function acrossNow(
  half: number,
  centre: number,
  bass: number | undefined,
  treble: number | undefined,
): AcrossNow | undefined {
  const edge = bass ?? treble;
  if (edge === undefined) return undefined;
  const left = centre - (bass ?? edge);
  const right = centre - (treble ?? edge);
  const sum = left + right;
  const f = (2 * half * half + left * left + right * right) / 2;
  const g = (2 * f * right - (half * half + right * right) * sum) / (2 * half);
  const size = Math.hypot(f, g);
  return { curvature: sum / size, tilt: g / size, radius: size / sum, crest: 0 - g / sum };
}

/** The depth at an offset: d = q / (cos + √(cos² − κq)), q = κx² + 2x · sin, from the circle's equation. */
function depthAt(curvature: number, tilt: number, x: number): number {
  const q = x * (curvature * x + 2 * tilt);
  const square = (1 - tilt) * (1 + tilt);
  // a hole past the edge may lie where the circle does not reach: there it is told as upright, or deeper
  return q / (Math.sqrt(square) + Math.sqrt(Math.max(0, square - curvature * q)));
}

/** What is off on the centre line, the curvature and the tilt, along the board. */
export interface SurfaceNow {
  readonly sanding: Track;
  readonly curvature: Track;
  readonly tilt: Track;
}

/** A track through knots in any order, constant beyond the first and the last; 0 where there are none. */
export function heldTrack(
  knots: readonly { readonly along: number; readonly value: number }[],
): Track {
  const sorted = [...knots].sort((a, b) => a.along - b.along);
  const [first] = sorted;
  const last = sorted.at(-1);
  if (first === undefined || last === undefined) return constantTrack(0);
  if (first === last) return constantTrack(first.value);
  const before = { along: first.along - 1, value: first.value };
  const after = { along: last.along + 1, value: last.value };
  const held = [before, ...sorted, after];
  return trackThrough(
    held.map(({ along }) => along),
    held.map(({ value }) => value),
  );
}

/** The most that is off over a hole, never too little: each part of the surface at its worst within the hole's box. */
export function greatestNow({ sanding, curvature, tilt }: SurfaceNow, hole: Bore): number {
  const { from, to } = spreadFootprint(hole, 0);
  const places = [
    from,
    to,
    ...[sanding, curvature, tilt].flatMap((t) => breaksWithin(t, from, to)),
  ];
  const over = (track: Track) => places.map((s) => valueAt(track, s));
  const bend = Math.max(...over(curvature));
  const tilts = over(tilt);
  const [left, right] = measureReach(hole);
  const depths = [Math.min(...tilts), Math.max(...tilts)].flatMap((sine) => {
    // a hollow is deepest where it is level
    const level = Math.min(right, Math.max(left, -sine / bend));
    const offsets = bend < 0 ? [left, right, level] : [left, right];
    return offsets.map((x) => depthAt(bend, sine, x));
  });
  return Math.max(...over(sanding)) + Math.max(...depths);
}

/** The least and the greatest offset of a hole. */
function measureReach({ outline, offset, width }: Bore): [number, number] {
  if (outline === undefined) return [offset - width / 2, offset + width / 2];
  const offsets = outline.map((corner) => corner.offset);
  return [Math.min(...offsets), Math.max(...offsets)];
}
