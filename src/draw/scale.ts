/** Places along a line: drawing scales, ticks, and labels moved apart. */

const ROUND = [1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10];

/** mm on paper for each mm of the board: the greatest that is not above `most` and round, as 2.5 : 1 or 1 : 2.5. */
export function chooseScale(most: number): number {
  const power = 10 ** Math.floor(Math.log10(most));
  const steps = most >= 1 ? ROUND : ROUND.map((step) => 10 / step);
  return power * Math.max(...steps.filter((step) => step * power <= most * (1 + 1e-9)));
}

/** Round places from one to another, 1, 2 or 5 tens apart, at most `count` steps; and the decimals that they need. */
export function chooseTicks(from: number, to: number, count: number) {
  const wanted = (to - from) / count;
  const power = 10 ** Math.floor(Math.log10(wanted));
  const step = power * ([1, 2, 5].find((n) => n * power >= wanted) ?? 10);
  const first = Math.ceil(from / step);
  const places = Array.from(
    { length: Math.floor(to / step) - first + 1 },
    (_, i) => (first + i) * step,
  );
  return { places, decimals: Math.max(0, Math.ceil(-Math.log10(step) - 1e-9)) };
}

/**
 * Places at least `apart` from each other, as near to the wanted ones as can be (least squares), in the same
 * order. Without the spacing the rising sequence nearest to `wanted[i] − i · apart` is sought: neighbours that
 * fall are pooled at their mean (pool adjacent violators).
 *
 * `wanted` rises.
 */
export function spread(wanted: readonly number[], apart: number): number[] {
  const pools: { mean: number; count: number }[] = [];
  wanted.forEach((place, i) => {
    let pool = { mean: place - i * apart, count: 1 };
    for (let last = pools.at(-1); last && last.mean > pool.mean; last = pools.at(-1)) {
      const count = last.count + pool.count;
      pool = { mean: (last.mean * last.count + pool.mean * pool.count) / count, count };
      pools.pop();
    }
    pools.push(pool);
  });
  const means = pools.flatMap(({ mean, count }) => Array.from({ length: count }, () => mean));
  return means.map((mean, i) => mean + i * apart);
}
