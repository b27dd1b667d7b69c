/**
 * Reading unknown values: each function returns what it read, or notes an issue and returns undefined.
 * Nothing is clamped or repaired, and nothing read is changed. Comparisons are written so that NaN fails.
 */

import { type DesignIssue, isArray, issueOf } from "../errors/errors.js";
import { nearestName } from "../text/nearest-name.js";
import { LIMITS } from "./design.js";

/** A range for a number, and the words that tell it. */
export interface Bound {
  readonly what: string;
  readonly accepts: (value: number) => boolean;
}

const LEAST = LIMITS.leastLength.value;
const MOST = LIMITS.mostLength.value;
const RANGE = `(${LEAST.toExponential()} to ${MOST.toExponential()} mm)`;

/** A size: more than zero. */
export const SIZE: Bound = {
  what: `a length of more than 0 mm ${RANGE}`,
  accepts: (value) => value >= LEAST && value <= MOST,
};

/** A size that may be nothing at all. */
export const SIZE_OR_ZERO: Bound = {
  what: `a length of 0 mm or more ${RANGE}`,
  accepts: (value) => value === 0 || SIZE.accepts(value),
};

/** A radius: a size, or infinite for flat. */
export const RADIUS: Bound = {
  what: `a radius of more than 0 mm ${RANGE}, or Infinity for flat`,
  accepts: (value) => value === Infinity || SIZE.accepts(value),
};

/** A fraction that stays below the whole. */
export const FRACTION: Bound = {
  what: "a fraction of 0 or more and less than 1",
  accepts: (value) => value >= 0 && value < 1,
};

/** A share or a factor that may exceed the whole. */
export const SHARE: Bound = {
  what: "a fraction from 0 to 1000",
  accepts: (value) => value >= 0 && value <= 1000,
};

/** A part of a ratio. */
export const PART: Bound = {
  what: "a number greater than 0 (from 0.001 to 1000)",
  accepts: (value) => value >= 0.001 && value <= 1000,
};

/** The included angle of a twist bit's point. */
export const ANGLE: Bound = {
  what: `an angle from ${LIMITS.leastAngle.value} to ${LIMITS.mostAngle.value} degrees`,
  accepts: (value) => value >= LIMITS.leastAngle.value && value <= LIMITS.mostAngle.value,
};

/** A whole number from 1 to `most`. */
export function wholeUpTo(most: number): Bound {
  return {
    what: `a whole number from 1 to ${most}`,
    accepts: (value) => Number.isInteger(value) && value >= 1 && value <= most,
  };
}

/** Where issues go, and where defaults are noted, each by its path. */
export interface Context {
  readonly issues: DesignIssue[];
  readonly assumed: Record<string, number>;
}

/** An object's own fields, by name, as they were when read. */
export type Fields = Readonly<Record<string, unknown>>;

/** Reads an object: its known keys, with an issue for every key that is not known. */
export function readFields(
  value: unknown,
  path: string,
  known: readonly string[],
  issues: DesignIssue[],
): Fields | undefined {
  if (typeof value !== "object" || value === null || isArray(value)) {
    issues.push(issueOf(path, value, `an object with ${listOf(known)}`));
    return undefined;
  }
  return fieldsOf(value, path, known, issues);
}

/** Reads the fields of what is known to be an object. */
export function fieldsOf(
  value: object,
  path: string,
  known: readonly string[],
  issues: DesignIssue[],
): Fields {
  const fields: Record<string, unknown> = {};
  for (const key of namesOf(value, path, issues)) {
    if (known.includes(key)) continue;
    issues.push(
      issueOf(join(path, key), fieldOf(value, key, path, issues), unknownKey(key, known)),
    );
  }
  for (const key of known) fields[key] = fieldOf(value, key, path, issues);
  return fields;
}

/** Reads an array's items, as they were when read. */
export function readItems(
  value: unknown,
  path: string,
  what: string,
  most: number,
  issues: DesignIssue[],
): readonly unknown[] | undefined {
  const length = isArray(value) ? fieldOf(value, "length", path, issues) : undefined;
  if (!isWhole(length, 0, most)) {
    issues.push(issueOf(path, value, `an array of ${what}, ${most} at most`));
    return undefined;
  }
  const items: unknown[] = [];
  for (let i = 0; i < length; i++) items.push(fieldOf(value as object, String(i), path, issues));
  return items;
}

/** Reads a number within its bound. */
export function readNumber(
  value: unknown,
  path: string,
  bound: Bound,
  issues: DesignIssue[],
): number | undefined {
  if (typeof value === "number" && bound.accepts(value)) return value + 0;
  issues.push(issueOf(path, value, bound.what));
  return undefined;
}

/** Reads one of a few words. */
export function readWord<Word extends string>(
  value: unknown,
  path: string,
  words: readonly Word[],
  issues: DesignIssue[],
): Word | undefined {
  const word = words.find((candidate) => candidate === value);
  if (word !== undefined) return word;
  const near = typeof value === "string" ? nearestName(value, words) : undefined;
  issues.push(issueOf(path, value, listOf(words, "or") + didYouMean(near)));
  return undefined;
}

/** Reads a number that may be left out. */
export function readOptional(
  value: unknown,
  path: string,
  bound: Bound,
  issues: DesignIssue[],
): number | undefined {
  return value === undefined ? undefined : readNumber(value, path, bound, issues);
}

/** Reads a number, or assumes the usual one and notes it. */
export function readOr(
  value: unknown,
  path: string,
  usual: number,
  bound: Bound,
  context: Context,
): number | undefined {
  return value === undefined
    ? assume(context, path, usual)
    : readNumber(value, path, bound, context.issues);
}

/** Reads one of a few words; the first where nothing is stated. */
export function readWordOr<Word extends string>(
  value: unknown,
  path: string,
  words: readonly [Word, ...Word[]],
  issues: DesignIssue[],
): Word | undefined {
  return value === undefined ? words[0] : readWord(value, path, words, issues);
}

/** Notes a default that is used. */
export function assume(context: Context, path: string, value: number): number {
  context.assumed[path] = value;
  return value;
}

/** The record, where every field of it could be read. */
export function complete<Key extends string>(
  record: Readonly<Record<Key, number | undefined>>,
): Readonly<Record<Key, number>> | undefined {
  const values: readonly unknown[] = Object.values(record);
  return values.includes(undefined) ? undefined : (record as Record<Key, number>);
}

/** Reads the `kind` of an object that comes in several kinds, each with the keys of its own. */
export function readKind<Kind extends string>(
  value: unknown,
  path: string,
  keys: Readonly<Record<Kind, readonly string[]>>,
  issues: DesignIssue[],
): { readonly kind: Kind; readonly fields: Fields } | undefined {
  const kinds = Object.keys(keys) as Kind[];
  if (typeof value !== "object" || value === null || isArray(value)) {
    issues.push(issueOf(path, value, `an object whose kind is ${listOf(kinds, "or")}`));
    return undefined;
  }
  const stated = fieldOf(value, "kind", path, issues);
  const kind = readWord(stated, join(path, "kind"), kinds, issues);
  return kind && { kind, fields: fieldsOf(value, path, ["kind", ...keys[kind]], issues) };
}

/** The dotted path of a key under a path. */
export function join(path: string, key: string | number): string {
  return path === "" ? String(key) : `${path}.${key}`;
}

/** “a, b and c”, each in quotes. */
export function listOf(words: readonly string[], last: "and" | "or" = "and"): string {
  const quoted = words.map((word) => `"${word}"`);
  if (quoted.length < 2) return String(quoted);
  return `${quoted.slice(0, -1).join(", ")} ${last} ${quoted[quoted.length - 1]}`;
}

/** The end of a sentence that offers a near name, or nothing. */
export function didYouMean(near: string | undefined): string {
  return near === undefined ? "" : `; did you mean "${near}"?`;
}

/** An object's enumerable own names; an issue where it will not give them. */
export function namesOf(value: object, path: string, issues: DesignIssue[]): string[] {
  try {
    return Object.keys(value);
  } catch {
    issues.push(issueOf(path, value, "an object whose keys can be read"));
    return [];
  }
}

/** One field, read once; an issue where its getter throws. */
export function fieldOf(value: object, key: string, path: string, issues: DesignIssue[]): unknown {
  try {
    return (value as Record<string, unknown>)[key];
  } catch {
    issues.push(issueOf(join(path, key), undefined, "a value that can be read"));
    return undefined;
  }
}

function unknownKey(key: string, known: readonly string[]): string {
  const near = nearestName(key, known);
  return `a known key: ${listOf(known, "or")}${didYouMean(near)}`;
}

/** A whole number from `least` to `most`. */
export function isWhole(value: unknown, least: number, most: number): value is number {
  return Number.isInteger(value) && (value as number) >= least && (value as number) <= most;
}
