/** Interval arithmetic, by the library `interval-arithmetic`: every operation is rounded outward. */
import * as library from "interval-arithmetic";

export const { Interval, add, div, mul, sqrt, sub } = library;
export type Interval = InstanceType<typeof library.Interval>;

/** One number. */
export function point(value: number): Interval {
  return new Interval(value, value);
}

/** The square: never below 0, unlike a product of an interval with itself. */
export function square(x: Interval): Interval {
  return library.pow(x, 2);
}
