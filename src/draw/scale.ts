/** Drawing scales and round steps. */

const ROUND = [1, 1.25, 1.5, 2, 2.5, 3, 4, 5, 6, 8, 10];
const TINY = 1e-9;

/** The greatest round number that is not above `value`; `value` is greater than 0. */
export function roundBelow(value: number, steps: readonly number[] = ROUND): number {
  const power = 10 ** Math.floor(Math.log10(value));
  const step = steps.filter((n) => n <= (value / power) * (1 + TINY)).pop() ?? 1;
  return step * power;
}

/** The least round number that is not below `value`; `value` is greater than 0. */
export function roundAbove(value: number, steps: readonly number[] = ROUND): number {
  const power = 10 ** Math.floor(Math.log10(value));
  const step = steps.find((n) => n >= (value / power) * (1 - TINY)) ?? 10;
  return step * power;
}

/** mm on paper for each mm of the board: a round one, at most `most`. */
export function scaleWithin(most: number): number {
  return most >= 1 ? roundBelow(most) : 1 / roundAbove(1 / most);
}

/** A scale in words: “2.5 : 1”, “1 : 2”. */
export function scaleWords(scale: number): string {
  const digits = (value: number) => String(Number(value.toPrecision(4)));
  return scale >= 1 ? `${digits(scale)} : 1` : `1 : ${digits(1 / scale)}`;
}
