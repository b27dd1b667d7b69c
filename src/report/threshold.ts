/** Where a rule that is broken begins to be kept. */

/** How near a threshold is come to, as a part of the value that stands. */
const FINE = 1e-14;

/** A value at which the rule is broken, and by how much. */
interface Failure {
  readonly at: number;
  readonly miss: number;
}

/**
 * The nearest value to `from` at which a rule is kept, all but exactly; undefined where it is broken even at `far`.
 * `missAt` says by how much it is broken, 0 where it is kept. The way between is halved; the straight line through
 * the last two failures says where to look besides, once a little to either side, which is all that a linear rule
 * needs.
 */
export function thresholdBetween(
  from: number,
  far: number,
  missAt: (value: number) => number,
): number | undefined {
  if (missAt(far) > 0) return undefined;
  const near = FINE * Math.abs(from);
  let passes = far;
  let last: Failure = { at: from, miss: missAt(from) };
  let before = last;
  for (let round = 0; ; round++) {
    const middle = last.at + (passes - last.at) / 2;
    const isNear = Math.abs(passes - last.at) <= near || middle === last.at || middle === passes;
    if (isNear) return passes;
    const aside = (round % 3 === 1 ? near : -near) / 4;
    const aim = round % 3 === 0 ? middle : rootOf(before, last) + aside;
    // where the two miss by as much, or by no number, the line says nothing
    const inside = (aim - last.at) * (aim - passes) < 0;
    const at = inside ? aim : middle;
    const miss = missAt(at);
    if (miss > 0) {
      before = last;
      last = { at, miss };
    } else passes = at;
  }
}

/** Where the line through two failures meets zero; no number, or none between, where it does not. */
function rootOf(before: Failure, last: Failure): number {
  return last.at - (last.miss * (last.at - before.at)) / (last.miss - before.miss);
}
