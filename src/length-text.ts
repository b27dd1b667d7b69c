/** Lengths as a person at the bench reads them. The only place where lengths are rounded. */

/** 1 inch, in mm; exact (NIST SP 811). */
export const INCH = 25.4;

/** Writes a length, given in mm, for a reader. */
export type LengthWriter = (mm: number) => string;

/** A unit that a card is written in. */
export interface Unit {
  /** Its name, for a heading. */
  readonly name: string;
  /** A length without its unit, for a table. */
  readonly bare: LengthWriter;
  /** A length with its unit, for a sentence. */
  readonly full: LengthWriter;
}

/** Millimetres to two decimals. */
export const MILLIMETRES: Unit = {
  name: "mm",
  bare: (mm) => fixed(mm, 2),
  full: (mm) => `${fixed(mm, 2)} mm`,
};

/** Inches to the nearest 1/64, the decimal beside it. */
export const INCHES: Unit = {
  name: "inches, nearest 1/64 and decimal",
  bare: (mm) => inchText(mm, 64),
  full: (mm) => `${inchText(mm, 64)} in`,
};

function inchText(mm: number, denominator: number): string {
  const inches = mm / INCH;
  return Number.isFinite(inches)
    ? `${nearestFraction(inches, denominator)} (${fixed(inches, 3)})`
    : String(inches);
}

/** A number to the nearest fraction, in lowest terms: “1 3/8”, “-5/64”, “0”. */
export function nearestFraction(value: number, denominator: number): string {
  const sixtyFourths = Math.round(Math.abs(value) * denominator);
  const whole = Math.floor(sixtyFourths / denominator);
  const rest = sixtyFourths % denominator;
  const common = greatestCommonDivisor(rest, denominator);
  const fraction = rest === 0 ? "" : `${rest / common}/${denominator / common}`;
  const text = [whole > 0 ? String(whole) : "", fraction].filter(Boolean).join(" ") || "0";
  return value < 0 && text !== "0" ? `-${text}` : text;
}

/** Fixed decimals, without a minus before nothing. */
export function fixed(value: number, decimals: number): string {
  const text = value.toFixed(decimals);
  return Number(text) === 0 ? text.replace("-", "") : text;
}

function greatestCommonDivisor(a: number, b: number): number {
  return b === 0 ? a : greatestCommonDivisor(b, a % b);
}
