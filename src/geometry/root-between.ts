const MOST_STEPS = 60;
const NEAR = 1e-15;

/**
 * Where a function crosses zero between two places at which its signs differ: secants inside the bracket (the Illinois
 * rule), until a step is no more than rounding, or the function is 0. Its values at both places may be known.
 */
export function rootBetween(
  f: (x: number) => number,
  from: number,
  to: number,
  atFrom = f(from),
  atTo = f(to),
): number {
  let [a, fa, b, fb] = [from, atFrom, to, atTo];
  for (let i = 0; i < MOST_STEPS && fb !== 0; i++) {
    const c = b - (fb * (b - a)) / (fb - fa);
    const fc = f(c);
    if (fc > 0 === fb > 0) fa /= 2;
    else [a, fa] = [b, fb];
    const isThere = Math.abs(c - b) <= NEAR * Math.max(1, Math.abs(c));
    [b, fb] = [c, fc];
    if (isThere) break;
  }
  return b;
}
