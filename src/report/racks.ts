/** Racks of bits, as diameters in mm, rising. */
import { INCH } from "../text/length-text.js";

/** Sixteenths of an inch, from 1/8 to 3/4. */
export const SIXTEENTHS: readonly number[] = steps(2, 12, INCH, 16);

/** Whole millimetres, from 2 to 20. */
export const WHOLE_MILLIMETRES: readonly number[] = steps(2, 20, 1, 1);

/** Half millimetres, from 2 to 20. */
export const HALF_MILLIMETRES: readonly number[] = steps(4, 40, 1, 2);

function steps(first: number, last: number, unit: number, parts: number): number[] {
  return Array.from({ length: last - first + 1 }, (_, i) => ((first + i) * unit) / parts);
}
