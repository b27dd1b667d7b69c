/** An element that the caller knows to exist. */
export function elementAt<T>(values: ArrayLike<T>, i: number): T {
  return values[i] as T;
}
