/** A length in millimetres, written for a reader. */
import { LENGTHS } from "../design/bounds.js";
import { refused, tryRead } from "../errors/errors.js";
import { fixed, INCH, nearestFraction } from "../text/length-text.js";

const DENOMINATORS = [1, 2, 4, 8, 16, 32, 64] as const;

/** The finest fraction of an inch on the ruler at hand. */
export type Denominator = (typeof DENOMINATORS)[number];

/** How to write a length. */
export interface LengthFormat {
  /** "mm" where left out. */
  readonly unit?: "mm" | "in";
  /** Inches to the nearest 1/denominator; 64 where left out. Millimetres do not need it. */
  readonly denominator?: Denominator;
}

/**
 * Writes a length: millimetres to two decimals, inches as the nearest fraction.
 *
 * Where the fraction is not the length itself, the bracket tells what to add to it for the length, in
 * inches to four decimals; it is left out where it would say 0.0000. Half way between two fractions, the
 * one farther from 0 is written. `length` reads the text back, without the bracket.
 *
 * @param mm the length, mm; at most 1e12 of either sign
 * @param format `unit` "mm" or "in"; `denominator` a power of two up to 64
 * @returns the length with its unit
 * @throws RangeError where an argument is not in its range
 * @example
 * formatLength(38.1, { unit: "in" }) // "1 1/2 in"
 * formatLength(3.6125, { unit: "in" }) // "9/64 in (+0.0016 in)"
 * formatLength(6, { unit: "in", denominator: 16 }) // "1/4 in (-0.0138 in)"
 * formatLength(6.35) // "6.35 mm"
 */
export function formatLength(mm: number, format: LengthFormat = {}): string {
  const { unit = "mm", denominator = 64 } = tryRead("format", format, () => {
    const { unit, denominator } = format;
    return { unit, denominator };
  });
  if (!(typeof mm === "number" && Math.abs(mm) <= LENGTHS.most)) {
    throw refused("mm", mm, `a length of at most ${LENGTHS.most.toExponential()} mm`);
  }
  if (!DENOMINATORS.includes(denominator)) {
    throw refused("denominator", denominator, "1, 2, 4, 8, 16, 32 or 64");
  }
  if (unit === "mm") return `${fixed(mm, 2)} mm`;
  if (unit === "in")
    return `${nearestFraction(mm / INCH, denominator)} in${error(mm, denominator)}`;
  throw refused("unit", unit, '"mm" or "in"');
}

/** The length less its fraction, in brackets; nothing where it rounds to 0. */
function error(mm: number, denominator: number): string {
  const inches = Math.abs(mm / INCH);
  const over = (inches - Math.round(inches * denominator) / denominator) * Math.sign(mm);
  const text = fixed(over, 4);
  return Number(text) === 0 ? "" : ` (${over > 0 ? "+" : ""}${text} in)`;
}
