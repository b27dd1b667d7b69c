/** Reading values of unknown shape: proxies and getters may throw; each problem becomes an issue. */
import { type DesignIssue, makeIssue } from "./errors.js";

/** The dotted path of a key under a path. */
export function join(path: string, key: string | number): string {
  return path === "" ? String(key) : `${path}.${key}`;
}

/** An object's enumerable own names; an issue where it will not give them. */
export function listNames(value: object, path: string, issues: DesignIssue[]): string[] {
  try {
    return Object.keys(value);
  } catch {
    issues.push(makeIssue(path, value, "an object whose keys can be read"));
    return [];
  }
}

/** One field, read once; an issue where its getter throws. */
export function readKey(value: object, key: string, path: string, issues: DesignIssue[]): unknown {
  try {
    return (value as Record<string, unknown>)[key];
  } catch {
    issues.push(makeIssue(join(path, key), undefined, "a value that can be read"));
    return undefined;
  }
}

/** An array's items, as they were when read; an issue where it is none, or too long. */
export function readItems(
  value: unknown,
  path: string,
  expected: string,
  most: number,
  issues: DesignIssue[],
): unknown[] | undefined {
  const length = isArray(value) ? readKey(value, "length", path, issues) : undefined;
  if (!isWhole(length, 0, most)) {
    issues.push(makeIssue(path, value, expected));
    return undefined;
  }
  return Array.from({ length }, (_, i) => readKey(value as object, String(i), path, issues));
}

/** `Array.isArray`, false where a revoked proxy makes even that throw. */
export function isArray(value: unknown): value is readonly unknown[] {
  try {
    return Array.isArray(value);
  } catch {
    return false;
  }
}

/** An object with keys: no list, not null. */
export function isObject(value: unknown): value is object {
  return typeof value === "object" && value !== null && !isArray(value);
}

/** A whole number from `least` to `most`. */
export function isWhole(value: unknown, least: number, most: number): value is number {
  return Number.isInteger(value) && (value as number) >= least && (value as number) <= most;
}
