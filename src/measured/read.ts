/**
 * Reading measurements: each function returns what it read, or notes an issue. `refuseAll` then throws them all at
 * once, so what stands for a value that could not be read (NaN, an empty list) gets no farther.
 */
import { type DesignIssue, makeIssue } from "../errors/errors.js";
import { isObject, join, listNames, readItems, readKey } from "../errors/unknown.js";

/** A range for a number, and the words that tell it. NaN is in none. */
export interface Bound {
  readonly what: string;
  readonly accepts: (value: number) => boolean;
}

const LEAST = 1e-6;
const MOST = 1e6;

export const POSITION = between(-MOST, MOST, "mm");
export const SIZE = between(LEAST, MOST, "mm");
export const SIZE_OR_ZERO = between(0, MOST, "mm");

const FINITE_RADIUS = between(LEAST, 1e12, "mm");

/** A radius; Infinity is flat. */
export const RADIUS: Bound = {
  what: `${FINITE_RADIUS.what}, or Infinity for flat`,
  accepts: (value) => value === Infinity || FINITE_RADIUS.accepts(value),
};

export function between(least: number, most: number, unit: string): Bound {
  return {
    what: `a number from ${least} to ${most}${unit === "" ? "" : ` ${unit}`}`,
    accepts: (value) => value >= least && value <= most,
  };
}

/** A number within its bound, else NaN. */
export function readNumber(
  value: unknown,
  path: string,
  bound: Bound,
  issues: DesignIssue[],
): number {
  if (typeof value === "number" && bound.accepts(value)) return value;
  issues.push(makeIssue(path, value, bound.what));
  return Number.NaN;
}

/** A number that may be left out. */
export function readOptional<Usual>(
  value: unknown,
  path: string,
  bound: Bound,
  usual: Usual,
  issues: DesignIssue[],
): number | Usual {
  return value === undefined ? usual : readNumber(value, path, bound, issues);
}

/** The known keys of an object, with an issue for every other; none where it is no object. */
export function readFields<Key extends string>(
  value: unknown,
  path: string,
  known: readonly Key[],
  issues: DesignIssue[],
): { readonly [key in Key]?: unknown } | undefined {
  if (!isObject(value)) {
    issues.push(makeIssue(path, value, `an object with ${known.join(", ")}`));
    return undefined;
  }
  for (const key of listNames(value, path, issues)) {
    if ((known as readonly string[]).includes(key)) continue;
    const stated = readKey(value, key, path, issues);
    issues.push(makeIssue(join(path, key), stated, `a known key: ${known.join(", ")}`));
  }
  const read = known.map((key) => [key, readKey(value, key, path, issues)]);
  return Object.fromEntries(read);
}

/** The items of an array, each read; none where it is no array, or has too few or too many. */
export function readList<Item>(
  value: unknown,
  path: string,
  { least, most, what }: { readonly least: number; readonly most: number; readonly what: string },
  issues: DesignIssue[],
  readItem: (item: unknown, path: string) => Item | undefined,
): Item[] {
  const expected = `an array of ${least} to ${most} ${what}`;
  const items = readItems(value, path, expected, most, issues);
  if (items && items.length < least)
    issues.push(makeIssue(`${path}.length`, items.length, expected));
  return (items ?? []).flatMap((item, i) => readItem(item, join(path, i)) ?? []);
}

const SHOWN = 20;

/** Throws all issues as one error, a line each, where there are any. */
export function refuseAll(issues: readonly DesignIssue[]): void {
  if (issues.length === 0) return;
  const lines = issues.slice(0, SHOWN).map(({ message }) => message);
  if (issues.length > SHOWN) lines.push(`… and ${issues.length - SHOWN} more`);
  throw new RangeError(lines.join("\n"));
}
