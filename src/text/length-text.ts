/** Lengths as a person at the bench reads them. The only place where lengths are rounded. */

/** 1 inch, in mm; exact (NIST SP 811). */
export const INCH = 25.4;

/** Writes a length, given in mm, for a reader. */
export type LengthWriter = (mm: number) => string;

/** A unit that a card is written in. */
export interface Unit {
  /** Its name, for a heading. */
  readonly name: string;
  /** Its sign. */
  readonly short: string;
  /** A length without its unit, for a table. */
  readonly bare: LengthWriter;
  /** A length with its unit, for a sentence. */
  readonly full: LengthWriter;
  /** A least: never written smaller than it is. Without its unit. */
  readonly least: LengthWriter;
  /** A most: never written greater than it is. Without its unit. */
  readonly most: LengthWriter;
  /** A setting that must stay between two lengths as it is read. Without its unit. */
  readonly between: (mm: number, least: number, most: number) => string;
}

/** Millimetres to two decimals. */
export const MILLIMETRES: Unit = {
  name: "mm",
  short: "mm",
  bare: (mm) => fixed(mm, 2),
  full: (mm) => `${fixed(mm, 2)} mm`,
  least: (mm) => fixed(notBelow(mm, STEP_MM), 2),
  most: (mm) => fixed(notAbove(mm, STEP_MM), 2),
  between: (mm) => fixed(mm, 2),
};

/** Inches to the nearest 1/64, the decimal beside it; limits to the 1/64 and the decimal on the safe side. */
export const INCHES: Unit = {
  name: "inches, to the nearest 1/64 (limits: to the safe side) with the decimal beside it",
  short: "in",
  bare: (mm) => inchText(mm, mm / INCH, mm / INCH),
  full: (mm) => `${inchText(mm, mm / INCH, mm / INCH)} in`,
  least: (mm) => inchText(mm, notBelow(mm / INCH, 1 / 64), notBelow(mm / INCH, STEP_INCH)),
  most: (mm) => inchText(mm, notAbove(mm / INCH, 1 / 64), notAbove(mm / INCH, STEP_INCH)),
  between: (mm, least, most) => {
    const read = (Math.round((mm / INCH) * 64) / 64) * INCH;
    return least <= read && read <= most ? INCHES.bare(mm) : inchDecimal(mm / INCH);
  },
};

const STEP_MM = 0.01;
const STEP_INCH = 0.001;

/** The next step at or above a length, so that a least is never read too small. */
function notBelow(length: number, step: number): number {
  return Number.isFinite(length) ? Math.ceil(length / step - TINY) * step : length;
}

/** The next step at or below a length, so that a most is never read too great. */
function notAbove(length: number, step: number): number {
  return Number.isFinite(length) ? Math.floor(length / step + TINY) * step : length;
}

/** A step's rounding error, in steps: far below what a bench can hold. */
const TINY = 1e-9;

/** Inches as the nearest fraction to one number, with the decimals of another beside it. */
function inchText(mm: number, fraction: number, decimal: number): string {
  return Number.isFinite(mm)
    ? `${nearestFraction(fraction, 64)} (${inchDecimal(decimal)})`
    : String(mm);
}

function inchDecimal(inches: number): string {
  return fixed(inches, 3).replace(/^(-?)0\./, "$1.");
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
