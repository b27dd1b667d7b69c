/** A length as text or number, read into millimetres. */
import { refused } from "../errors/errors.js";
import { exactMillimetres } from "./mathjs.js";
import { isLength, nearestNumber, SIZE } from "./nearest-number.js";
import { FORMS, scanQuantity } from "./scan.js";
import { unitExpected, unitNamed } from "./unit-names.js";

/**
 * Reads a length: a number of mm, or text as a builder types it.
 *
 * Text is one number and one unit: mm, cm, m, in or ft, their long names, or an inch mark (`"`). Inches may
 * be whole, decimal, a fraction or mixed: `1 1/2`, `1-1/2` and `1½` are all 38.1 mm. A decimal number
 * without a unit is mm; a fraction without a unit is refused. A leading minus makes it negative, the whole
 * of a mixed number too, since an offset toward the bass is. The result is the exact value, rounded once.
 * Nothing is evaluated, and a comma is refused, since it marks thousands for some and decimals for others.
 *
 * @param value a number of mm, or at most 100 characters of text
 * @returns the length, mm: 0, or a size from 1e-12 to 1e12, of either sign
 * @throws RangeError naming what was expected and what came
 * @example
 * length("1 1/2 in") // 38.1
 * length("1-1/2 in") // 38.1
 * length("1½ in") // 38.1
 * length('25.5"') // 647.7
 * length("0.5 cm") // 5
 * length("6.35 mm") // 6.35
 * length("6.35") // 6.35
 * length(6.35) // 6.35
 * length("-1/4 in") // -6.35
 * length("1/4") // RangeError: length: expected a unit after a fraction, as in "1/4 in", received "1/4"
 * length("2 kg") // RangeError: length: expected a length in mm, cm, m, in or ft ("kg" is a unit of mass), received "2 kg"
 */
export function length(value: string | number): number {
  const mm = typeof value === "string" ? fromText(value) : fromNumber(value);
  if (typeof mm === "number") return mm;
  throw refused("length", value, mm);
}

/** The length in mm, or what was expected. */
function fromNumber(value: unknown): number | string {
  if (typeof value !== "number") return `a number of mm, or ${FORMS}`;
  return isLength(value) ? value + 0 : SIZE;
}

function fromText(text: string): number | string {
  const quantity = scanQuantity(text);
  if (typeof quantity === "string") return quantity;
  const { numerator, denominator, unit, isFraction } = quantity;
  if (unit === "" && isFraction) return 'a unit after a fraction, as in "1/4 in"';
  const name = unit === "" ? "mm" : unitNamed(unit);
  if (name === undefined) return unitExpected(unit);
  const mm = exactMillimetres(numerator, denominator, name);
  return nearestNumber(mm.numerator, mm.denominator);
}
