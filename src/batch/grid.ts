/** The count of values of each axis; the last varies fastest. */
export type Shape = readonly number[];

/** How many combinations there are. */
export function countRows(shape: Shape): number {
  return shape.reduce((size, count) => size * count, 1);
}

/** Which value of each axis combination `i` has. */
export function splitIndex(shape: Shape, i: number): number[] {
  const digits = shape.map(() => 0);
  let rest = i;
  for (let axis = shape.length - 1; axis >= 0; axis--) {
    const count = shape[axis] as number;
    digits[axis] = rest % count;
    rest = Math.floor(rest / count);
  }
  return digits;
}

/** Moves to the next combination of the axes before the last one. */
export function advanceRow(digits: number[], shape: Shape): void {
  for (let axis = shape.length - 2; axis >= 0; axis--) {
    const next = (digits[axis] as number) + 1;
    if (next < (shape[axis] as number)) {
      digits[axis] = next;
      return;
    }
    digits[axis] = 0;
  }
}

/** A result that hangs on some axes only, worked out once for each combination of their values. */
export interface Kept<T> {
  readonly axes: readonly number[];
  /** The result for these digits. */
  readonly at: (digits: readonly number[]) => T;
}

/** Results that hang on some axes only, all those along the last axis at once. */
export interface KeptRows<T> {
  /** The results for these digits, whatever the last one, by that of the last axis; worked out from `start` to `end`. */
  readonly along: (digits: readonly number[], start: number, end: number) => readonly T[];
}

const MOST_KEPT = 1 << 16;

/** Keeps the results of `work`, which hangs on `axes` only; where they would be too many, just the last one. */
export function memoize<T>(
  shape: Shape,
  axes: readonly number[],
  work: (digits: readonly number[]) => T,
): Kept<T> {
  const { size, keyOf } = makeKeys(shape, axes);
  const kept: T[] = [];
  let lastKey = -1;
  const at = (digits: readonly number[]) => {
    const key = keyOf(digits);
    const slot = size <= MOST_KEPT ? key : 0;
    if (!(slot in kept) || (size > MOST_KEPT && key !== lastKey)) kept[slot] = work(digits);
    lastKey = key;
    return kept[slot] as T;
  };
  return { axes, at };
}

/**
 * Keeps the results of `work` by rows along the last axis; where they would be too many, just the last row. `work` is
 * handed one array of digits for all of a run, and what it may use again: the result that stands in the way.
 */
export function memoizeRows<T>(
  shape: Shape,
  axes: readonly number[],
  work: (digits: readonly number[], old: T | undefined) => T,
): KeptRows<T> {
  const last = shape.length - 1;
  const count = shape[last] ?? 1;
  const varies = axes.includes(last);
  const { size, keyOf } = makeKeys(
    shape,
    axes.filter((axis) => axis !== last),
  );
  const isMany = size * count > MOST_KEPT;
  const rows: Row<T>[] = [];
  let lastKey = -1;
  const along = (digits: readonly number[], start: number, end: number) => {
    const key = keyOf(digits);
    const slot = isMany ? 0 : key;
    let row = rows[slot];
    if (row === undefined) {
      row = { results: new Array<T>(count), isKnown: new Uint8Array(count), known: 0 };
      rows[slot] = row;
    } else if (isMany && key !== lastKey) {
      row.isKnown.fill(0);
      row.known = 0;
    }
    lastKey = key;
    if (row.known < count) learn(row, digits, start, end);
    return row.results;
  };
  const learn = (row: Row<T>, digits: readonly number[], start: number, end: number) => {
    const { results, isKnown } = row;
    if (!varies) {
      const result = work(digits, results[0]);
      for (let digit = 0; digit < count; digit++) results[digit] = result;
      row.known = count;
      return;
    }
    const here = [...digits];
    for (let digit = start; digit < end && row.known < count; digit++) {
      if (isKnown[digit] === 1) continue;
      here[last] = digit;
      results[digit] = work(here, results[digit]);
      isKnown[digit] = 1;
      row.known++;
    }
  };
  return { along };
}

interface Row<T> {
  readonly results: T[];
  readonly isKnown: Uint8Array;
  known: number;
}

/** Numbers the combinations of some axes. */
function makeKeys(shape: Shape, axes: readonly number[]) {
  const counts = axes.map((axis) => shape[axis] as number);
  const keyOf = (digits: readonly number[]) => {
    let key = 0;
    for (let i = 0; i < axes.length; i++) {
      key = key * (counts[i] as number) + (digits[axes[i] as number] as number);
    }
    return key;
  };
  return { size: countRows(counts), keyOf };
}
