/**
 * A track: a profile made ready for arithmetic, a piecewise-linear function of `along`.
 * `slope[i]` holds from knot i to the next one; the first and last pieces extend outward.
 */

export interface Track {
  readonly at: readonly number[];
  readonly value: readonly number[];
  readonly slope: readonly number[];
}

/** The track through knots that rise strictly in `at`; one knot is a constant. */
export function trackThrough(at: readonly number[], value: readonly number[]): Track {
  const slope = new Array<number>(at.length).fill(0);
  writeSlopes(at, value, slope);
  return { at, value, slope };
}

/** Writes the slopes of a track through knots. */
export function writeSlopes(
  at: readonly number[],
  value: readonly number[],
  slope: number[],
): void {
  const last = at.length - 1;
  for (let i = 0; i < last; i++) {
    slope[i] =
      ((value[i + 1] as number) - (value[i] as number)) /
      ((at[i + 1] as number) - (at[i] as number));
  }
  slope[last] = last > 0 ? (slope[last - 1] as number) : 0;
}

/** The track that has one value everywhere. */
export function constantTrack(value: number): Track {
  return { at: [0], value: [value], slope: [0] };
}

/** The track has one value everywhere. */
export function isConstant({ at }: Track): boolean {
  return at.length === 1;
}

/** Index of the piece that holds `along`; a knot belongs to the piece that begins there. */
export function pieceAt(track: Track, along: number): number {
  const { at } = track;
  let i = at.length - 1;
  while (i > 0 && !((at[i] as number) <= along)) i--;
  return i;
}

/** Index of the piece that ends at `along`, or holds it. */
export function pieceBefore(track: Track, along: number): number {
  const i = pieceAt(track, along);
  return i > 0 && (track.at[i] as number) === along ? i - 1 : i;
}

/** Index of the piece that holds all of [from, to]; −1 where the slope may change in it. */
export function solePiece(track: Track, from: number, to: number): number {
  const { at } = track;
  const last = at.length - 2;
  let i = 0;
  while (i < last && (at[i + 1] as number) < from) i++;
  return i < last && (at[i + 1] as number) <= to ? -1 : i;
}

/** Value of piece `i`, extended to any `along`. */
export function valueOnPiece(track: Track, i: number, along: number): number {
  return (
    (track.value[i] as number) + (track.slope[i] as number) * (along - (track.at[i] as number))
  );
}

/** Value at `along`. */
export function valueAt(track: Track, along: number): number {
  return valueOnPiece(track, pieceAt(track, along), along);
}

/** Slope of the piece that holds `along`. */
export function slopeAt(track: Track, along: number): number {
  return track.slope[pieceAt(track, along)] as number;
}

/** Least value over [from, to]: at one of the ends or a knot between. */
export function leastOver(track: Track, from: number, to: number): number {
  let least = Math.min(valueAt(track, from), valueAt(track, to));
  for (let i = 0; i < track.at.length; i++) {
    const s = track.at[i] as number;
    if (from < s && s < to) least = Math.min(least, track.value[i] as number);
  }
  return least;
}

/** Greatest value over [from, to]. */
export function greatestOver(track: Track, from: number, to: number): number {
  let greatest = Math.max(valueAt(track, from), valueAt(track, to));
  for (let i = 0; i < track.at.length; i++) {
    const s = track.at[i] as number;
    if (from < s && s < to) greatest = Math.max(greatest, track.value[i] as number);
  }
  return greatest;
}

/** Slopes of the pieces that lie in [from, to]. */
export function slopesOver(track: Track, from: number, to: number): readonly number[] {
  const first = pieceBefore(track, from);
  return track.slope.slice(first, pieceAt(track, to) + 1);
}

/** The knots where the slope may change, strictly inside or on the ends of [from, to]. */
export function breaksWithin(track: Track, from: number, to: number): number[] {
  if (track.at.length < 3) return [];
  return track.at.slice(1, -1).filter((s) => from <= s && s <= to);
}

/** The track moved by `by` everywhere. */
export function shifted(track: Track, by: number): Track {
  const { at, value, slope } = track;
  return by === 0 ? track : { at, value: value.map((v) => v + by), slope };
}

/** One track plus `sign` times another: a knot wherever either has one. */
export function combined(a: Track, b: Track, sign: 1 | -1): Track {
  if (isConstant(b)) return shifted(a, sign * (b.value[0] as number));
  const at = [...new Set([...(isConstant(a) ? [] : a.at), ...b.at])].sort((p, q) => p - q);
  return trackThrough(
    at,
    at.map((s) => valueAt(a, s) + sign * valueAt(b, s)),
  );
}

/** The track times `factor`, its slopes too. */
export function scaled(track: Track, factor: number): Track {
  if (factor === 1) return track;
  const times = (v: number) => v * factor;
  return { at: track.at, value: track.value.map(times), slope: track.slope.map(times) };
}

/** The greater of the track and zero, with a knot wherever it meets zero. */
export function flooredAtZero(track: Track): Track {
  if (track.at.length === 1) return constantTrack(Math.max(0, track.value[0] as number));
  const at = [...track.at];
  for (let i = 0; i < track.at.length; i++) {
    const zero = (track.at[i] as number) - (track.value[i] as number) / (track.slope[i] as number);
    if (Number.isFinite(zero)) at.push(zero);
  }
  at.sort((a, b) => a - b);
  const rising = at.filter((s, i) => i === 0 || s > (at[i - 1] as number));
  // a knot more on either side, so that a piece which is zero there extends as zero
  const first = rising[0] as number;
  const last = rising[rising.length - 1] as number;
  const span = last - first;
  const knots = [first - span, ...rising, last + span];
  return trackThrough(
    knots,
    knots.map((s) => Math.max(0, valueAt(track, s))),
  );
}
