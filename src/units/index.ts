/**
 * Lengths as builders type them, through mathjs.
 *
 * @module marker-depth/units
 */

// text and millimetres
export { type Denominator, formatLength, type LengthFormat } from "./format-length.js";
export { length } from "./length.js";
// functions for a mathjs instance
export {
  type Crossing,
  type MathFunctions,
  type MathUnit,
  mathFunctions,
} from "./math-functions.js";
