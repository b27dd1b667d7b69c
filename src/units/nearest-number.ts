/** Exact lengths made numbers. */
import { LENGTHS } from "../design/bounds.js";

const { least, most } = LENGTHS;

/** What a length of either sign may be. */
export const SIZE = `0 mm, or a size from ${least.toExponential()} to ${most.toExponential()} mm`;

/** Whether a number of mm is such a length. */
export function isLength(mm: number): boolean {
  const size = Math.abs(mm);
  return size === 0 || (size >= least && size <= most);
}

/** The number nearest to numerator / denominator mm; or what was expected, where that is no length. */
export function nearestNumber(numerator: bigint, denominator: bigint): number | string {
  if (numerator < 0n) {
    const size = nearestNumber(-numerator, denominator);
    return typeof size === "number" ? -size : size;
  }
  if (numerator === 0n) return 0;
  if (numerator > denominator * BigInt(most)) return SIZE;
  if (numerator * BigInt(Math.round(1 / least)) < denominator) return SIZE;
  // at least 80 bits of quotient, and one for whatever is left, so that BigInt to Number rounds just once
  const scaled = numerator << 120n;
  const rest = scaled % denominator === 0n ? 0n : 1n;
  return Number(((scaled / denominator) << 1n) | rest) / 2 ** 121;
}
