/** The sanding that a new radius needs on a board that has one already. Lengths in mm. */
import { type DesignIssue, makeIssue } from "../errors/errors.js";
import { sag } from "../geometry/sagitta.js";
import { RADIUS, readNumber, refuseAll, SIZE } from "./read.js";

/**
 * Least sanding on the centre line that reaches a new radius all across a board.
 *
 * A tighter radius needs none: it takes wood at the edges first. A flatter one leaves the old edges standing below it
 * until the crest has come down by sag(existing, b) − sag(next, b), the sagittas of circles at half-width b. On a
 * compound radius ask at several places along the board.
 *
 * @param existing the radius that the board has, mm, at least `halfWidth` and 1e12 at most; "flat" or Infinity
 * @param next the radius that it is to have, likewise
 * @param halfWidth half the board's width, from 1e-6 to 1e6 mm
 * @returns the sanding, mm; 0 where the existing radius is not the tighter
 * @throws RangeError where an argument is not in its range, with every one
 * @example
 * leastSanding(184, 305, 26).toFixed(4) // "0.7360"
 * leastSanding("flat", 305, 26) // 0
 */
export function leastSanding(
  existing: number | "flat",
  next: number | "flat",
  halfWidth: number,
): number {
  const issues: DesignIssue[] = [];
  const half = readNumber(halfWidth, "halfWidth", SIZE, issues);
  const old = dropAt(existing, "existing", half, issues);
  const now = dropAt(next, "next", half, issues);
  refuseAll(issues);
  return Math.max(0, old - now);
}

function dropAt(radius: unknown, path: string, half: number, issues: DesignIssue[]): number {
  const read = readNumber(radius === "flat" ? Infinity : radius, path, RADIUS, issues);
  if (read < half) issues.push(makeIssue(path, radius, `${half} mm, the half-width, or more`));
  return sag(read, half, 0);
}
