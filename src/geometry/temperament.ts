/**
 * Positions of frets 1 to `count` on a string of `length`, from the nut, in the unit of `length`.
 * Twelve-tone equal temperament: s_n = L(1 − 2^(−n/12)).
 */
export function equalTemperament(length: number, count: number): number[] {
  const positions: number[] = [];
  for (let n = 1; n <= count; n++) positions.push(length * shareAt(n));
  return positions;
}

/** Share of the string between the nut and fret `n`; `n` may be a fraction. */
export function shareAt(n: number): number {
  return WHOLE_FRETS[n] ?? findShare(n);
}

/** 1 − 2^(−n/12), without the cancellation for small n. */
function findShare(n: number): number {
  return -Math.expm1((-n * Math.LN2) / 12);
}

/** The shares of whole frets, since nearly all are. */
const WHOLE_FRETS: readonly number[] = Array.from({ length: 37 }, (_, n) => findShare(n));
