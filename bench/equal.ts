/** What is compared must be equal first. */

/** The greatest difference of two rows of numbers, as a share of the number or of 1, whichever is greater; NaN where one is. */
export function apart(ours: ArrayLike<number>, theirs: ArrayLike<number>): number {
  let most = 0;
  for (let i = 0; i < ours.length; i++) {
    const [a, b] = [ours[i] as number, theirs[i] as number];
    const difference = Math.abs(a - b) / Math.max(1, Math.abs(a));
    if (Number.isNaN(difference)) return difference;
    if (difference > most) most = difference;
  }
  return most;
}

/** Throws where they differ by more than `most`, in length, or where there is nothing to compare. */
export function mustEqual(
  what: string,
  ours: ArrayLike<number>,
  theirs: ArrayLike<number>,
  most = 1e-9,
): number {
  if (ours.length === 0 || ours.length !== theirs.length) {
    throw new Error(`${what}: ${ours.length} numbers against ${theirs.length}`);
  }
  const difference = apart(ours, theirs);
  if (!(difference <= most)) throw new Error(`${what}: ${difference} apart`);
  return ours.length;
}
