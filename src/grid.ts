/** Combinations of values: where each stands in the grid, and results kept for those values that they hang on. */

/** The count of values of each axis; the last varies fastest. */
export type Shape = readonly number[];

/** How many combinations there are. */
export function sizeOf(shape: Shape): number {
  return shape.reduce((size, count) => size * count, 1);
}

/** Which value of each axis combination `i` has. */
export function digitsOf(shape: Shape, i: number): number[] {
  const digits = shape.map(() => 0);
  let rest = i;
  for (let axis = shape.length - 1; axis >= 0; axis--) {
    const count = shape[axis] as number;
    digits[axis] = rest % count;
    rest = Math.floor(rest / count);
  }
  return digits;
}

/** Moves to the next combination; the first axis whose value has changed, −1 after the last combination. */
export function advance(digits: number[], shape: Shape): number {
  for (let axis = shape.length - 1; axis >= 0; axis--) {
    const next = (digits[axis] as number) + 1;
    if (next < (shape[axis] as number)) {
      digits[axis] = next;
      return axis;
    }
    digits[axis] = 0;
  }
  return -1;
}

/** A result that hangs on some axes only, worked out once for each combination of their values. */
export interface Kept<T> {
  /** The result for these digits. */
  readonly at: (digits: readonly number[]) => T;
  /** Whether it can change when the axes from `first` on do. */
  readonly changesFrom: (first: number) => boolean;
}

const MOST_KEPT = 1 << 16;

/** Keeps the results of `work`, which hangs on `axes` only; where they would be too many, just the last one. */
export function keep<T>(
  shape: Shape,
  axes: readonly number[],
  work: (digits: readonly number[]) => T,
): Kept<T> {
  const last = Math.max(-1, ...axes);
  const keysOf = axes.map((axis) => shape[axis] as number);
  const size = sizeOf(keysOf);
  const kept: (T | undefined)[] = [];
  const changesFrom = (first: number) => first <= last;
  let lastKey = -1;
  const at = (digits: readonly number[]) => {
    let key = 0;
    for (let i = 0; i < axes.length; i++) {
      key = key * (keysOf[i] as number) + (digits[axes[i] as number] as number);
    }
    const slot = size <= MOST_KEPT ? key : 0;
    if (kept[slot] === undefined || (size > MOST_KEPT && key !== lastKey))
      kept[slot] = work(digits);
    lastKey = key;
    return kept[slot] as T;
  };
  return { at, changesFrom };
}
