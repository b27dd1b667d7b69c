/** Room for labels: moved apart along a line, or stacked in rows. Lengths in mm on paper. */
import { elementAt } from "../geometry/element-at.js";

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

/** A label to the right of an upright line at x. */
export interface Flown {
  readonly x: number;
  readonly width: number;
}

/**
 * Rows for flags, 0 the lowest, so that no two overlap and no flag's line runs through another flag: a flag
 * that would reach a line to its right flies higher than that line's own.
 */
export function flagRows(flags: readonly Flown[]): number[] {
  const order = flags.map((_, i) => i).sort((a, b) => xOf(flags, b) - xOf(flags, a) || b - a);
  const rows = flags.map(() => 0);
  order.forEach((i, k) => {
    const reach = xOf(flags, i) + elementAt(flags, i).width;
    const below = order.slice(0, k).filter((j) => xOf(flags, j) <= reach);
    rows[i] = Math.max(-1, ...below.map((j) => elementAt(rows, j))) + 1;
  });
  return rows;
}

function xOf(flags: readonly Flown[], i: number): number {
  return elementAt(flags, i).x;
}
