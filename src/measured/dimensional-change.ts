/** How wood swells and shrinks. */
import type { DesignIssue } from "../errors/errors.js";
import { between, readNumber, refuseAll, SIZE_OR_ZERO } from "./read.js";

const MOISTURE = between(0, 30, "percent");

/**
 * Change of a wood's size across the grain with its moisture: ΔD = D · C · (M_F − M_I) (Wood Handbook, FPL-GTR-190,
 * eq. 13-2), which the book states for 6 to 14 %. The coefficients C, radial and tangential, are its table 13-5.
 *
 * @param size at the moisture `from`, mm, from 0 to 1e6
 * @param coefficient C, change per size and percent of moisture, from 0 to 0.03
 * @param from moisture before, percent, from 0 to 30
 * @param to moisture after, percent, from 0 to 30
 * @returns the change, mm; negative where the wood shrinks
 * @throws RangeError where an argument is not a number in its range, with every one
 * @example
 * dimensionalChange(232, 0.00245, 8, 11).toFixed(1) // "1.7"
 */
export function dimensionalChange(
  size: number,
  coefficient: number,
  from: number,
  to: number,
): number {
  const issues: DesignIssue[] = [];
  const d = readNumber(size, "size", SIZE_OR_ZERO, issues);
  const c = readNumber(
    coefficient,
    "coefficient",
    between(0, 0.03, "per percent of moisture"),
    issues,
  );
  const start = readNumber(from, "from", MOISTURE, issues);
  const end = readNumber(to, "to", MOISTURE, issues);
  refuseAll(issues);
  return d * c * (end - start);
}
