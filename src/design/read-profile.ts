/** Reads profiles: one number, or values at stations. */

import { type DesignIssue, isArray, issueOf } from "../errors/errors.js";
import { nearestName } from "../text/nearest-name.js";
import { LIMITS, type Station } from "./design.js";
import {
  type Bound,
  didYouMean,
  fieldOf,
  isWhole,
  join,
  namesOf,
  readNumber,
} from "./read-fields.js";
import type { ProfileSpec } from "./spec.js";

/** Reads a profile; its stations are checked against the number of frets, where that is known. */
export function readProfile(
  value: unknown,
  path: string,
  bound: Bound,
  fretCount: number | undefined,
  issues: DesignIssue[],
): ProfileSpec | undefined {
  if (typeof value !== "object" || value === null) return readNumber(value, path, bound, issues);
  if (isArray(value)) {
    issues.push(issueOf(path, value, `${bound.what}, or values at stations`));
    return undefined;
  }
  const names = namesOf(value, path, issues);
  const stations: [Station, number][] = [];
  let stated = 0;
  for (const name of names) {
    const at = fieldOf(value, name, path, issues);
    if (at === undefined) continue;
    stated++;
    const where = join(path, name);
    const wrong = stationProblem(name, fretCount);
    if (wrong !== undefined) issues.push(issueOf(where, at, wrong));
    const number = readNumber(at, where, bound, issues);
    if (wrong === undefined && number !== undefined) stations.push([name as Station, number]);
  }
  if (stated === 0) {
    issues.push(issueOf(path, value, `${bound.what}, or a value at one station or more`));
  }
  const flat = stations.filter(([, number]) => number === Infinity).length;
  if (flat > 0 && flat < stations.length) {
    issues.push(issueOf(path, value, "a radius that is Infinity at every station or at none"));
    return undefined;
  }
  return stated > 0 && stations.length === stated ? stations : undefined;
}

function stationProblem(name: string, fretCount: number | undefined): string | undefined {
  if (name === "nut" || name === "end") return undefined;
  const most = fretCount ?? LIMITS.frets.value;
  const fret = Number(name.slice(4));
  if (isWhole(fret, 1, most) && name === `fret${fret}`) return undefined;
  const known = ["nut", "end", ...Array.from({ length: most }, (_, i) => `fret${i + 1}`)];
  return `a station: "nut", "end", "fret1" to "fret${most}"${didYouMean(nearestName(name, known))}`;
}
