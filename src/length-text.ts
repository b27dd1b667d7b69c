/** Lengths as a person at the bench reads them. The only place where lengths are rounded. */

/** 1 inch, in mm; exact (NIST SP 811). */
export const INCH = 25.4;

/** Writes a length, given in mm, for a reader. */
export type LengthWriter = (mm: number) => string;

/** A unit that a card is written in. */
export interface Unit {
  /** Its name, for a heading. */
  readonly name: string;
  /** What it is rounded to, mm. */
  readonly step: number;
  /** A length without its unit, for a table. */
  readonly bare: LengthWriter;
  /** A length with its unit, for a sentence. */
  readonly full: LengthWriter;
}

/** Millimetres to two decimals. */
export const MILLIMETRES: Unit = {
  name: "mm",
  step: 0.01,
  bare: (mm) => fixed(mm, 2),
  full: (mm) => `${fixed(mm, 2)} mm`,
};

/** Inches to the nearest 1/64, the decimal beside it. */
export const INCHES: Unit = {
  name: "inches, to the nearest 1/64 with the decimal beside it",
  step: INCH / 1000,
  bare: (mm) => inchText(mm, 64),
  full: (mm) => `${inchText(mm, 64)} in`,
};

/** The unit's next step at or above a length, so that a least is never read too small. */
export function notBelow(mm: number, { step }: Unit): number {
  return Number.isFinite(mm) ? Math.ceil(mm / step - TINY) * step : mm;
}

/** The unit's next step at or below a length, so that a most is never read too great. */
export function notAbove(mm: number, { step }: Unit): number {
  return Number.isFinite(mm) ? Math.floor(mm / step + TINY) * step : mm;
}

/** A step's rounding error, in steps: far below what a bench can hold. */
const TINY = 1e-9;

function inchText(mm: number, denominator: number): string {
  const inches = mm / INCH;
  return Number.isFinite(inches)
    ? `${nearestFraction(inches, denominator)} (${fixed(inches, 3).replace(/^(-?)0\./, "$1.")})`
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
