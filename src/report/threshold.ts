/** Where a rule that is broken begins to be kept. */

/** How near a threshold is come to, as a part of the value that stands. */
const FINE = 1e-13;

/** A value at which the rule is broken, and by how much. */
interface Failure {
  readonly at: number;
  readonly miss: number;
}

/**
 * The nearest value to `from` at which a rule is kept that is broken at `from` and kept at `far`, all but exactly.
 * `missAt` says by how much it is broken, 0 where it is kept. The way between is halved; the straight line through the
 * last two failures says where to look besides, once a little to either side, which is all that a linear rule needs.
 */
export function thresholdBetween(
  from: number,
  far: number,
  missAt: (value: number) => number,
): number {
  const near = FINE * Math.max(Math.abs(from), Math.abs(far));
  let passes = far;
  let last: Failure = { at: from, miss: missAt(from) };
  let before = last;
  for (let round = 0; ; round++) {
    const middle = last.at + (passes - last.at) / 2;
    const isNear = Math.abs(passes - last.at) <= near || middle === last.at || middle === passes;
    if (isNear) return passes;
    const aside = (round % 3 === 1 ? near : -near) / 4;
    const aim = round % 3 === 0 ? middle : interpolateRoot(before, last) + aside;
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
function interpolateRoot(before: Failure, last: Failure): number {
  return last.at - (last.miss * (last.at - before.at)) / (last.miss - before.miss);
}

const GOLDEN = (Math.sqrt(5) - 1) / 2;
const SECTIONS = 24;

/** A value between two at which the rule is kept, sought where it is broken least; undefined where none was met. */
export function leastBetween(
  a: number,
  b: number,
  missAt: (value: number) => number,
): number | undefined {
  let [low, high] = [Math.min(a, b), Math.max(a, b)];
  for (let i = 0; i < SECTIONS; i++) {
    const left = high - GOLDEN * (high - low);
    const right = low + GOLDEN * (high - low);
    const [atLeft, atRight] = [missAt(left), missAt(right)];
    if (atLeft === 0) return left;
    if (atRight === 0) return right;
    if (atLeft <= atRight) high = right;
    else low = left;
  }
  return undefined;
}
