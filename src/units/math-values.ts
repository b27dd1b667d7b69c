/** Reading the values of any mathjs instance, and writing results as values of the same kind. */
import { refused as refusal } from "../errors/errors.js";

/** A unit of any mathjs instance, as far as it is used here. */
interface AnyUnit {
  readonly constructor: new (value: unknown, unit: string) => unknown;
  /** In SI units; null for a unit without a number. */
  readonly value: unknown;
  hasBase(base: string): boolean;
  toNumeric(unit: string): unknown;
}

/** How the lengths of one call are read, and its result is written. */
export interface LengthScale {
  /** The length in mm, or as it is where no length of the call has a unit. */
  read(name: string, value: unknown): number;
  /** The result: a unit in mm, or a plain number; of big numbers where one came in. */
  write(value: number): unknown;
}

/** The scale that fits a call's lengths. */
export function lengthScale(...lengths: readonly unknown[]): LengthScale {
  const unit = lengths.find(isUnit);
  const BigNumber = lengths.map(bigNumberClass).find(Boolean);
  const number = (value: number) => (BigNumber ? new BigNumber(value) : value);
  return unit === undefined
    ? { read: readPlain, write: number }
    : { read: readMillimetres, write: (mm) => new unit.constructor(number(mm), "mm") };
}

/** A number, big number, fraction or big integer as a number; undefined for anything else. */
export function plainNumber(value: unknown): number | undefined {
  if (typeof value === "number") return value;
  if (typeof value === "bigint" || isKind(value, "isBigNumber")) return Number(value);
  return isKind(value, "isFraction") ? Number(value) : undefined;
}

export function isUnit(value: unknown): value is AnyUnit {
  return isKind(value, "isUnit");
}

/** The error for an argument. */
export function refused(name: string, expected: string, value: unknown): RangeError {
  const received = isUnit(value) ? String(value) : (plainNumber(value) ?? value);
  return refusal(name, received, expected);
}

function readPlain(name: string, value: unknown): number {
  const number = plainNumber(value);
  if (number !== undefined) return number;
  throw refused(name, "a length, or a number in the unit of the others", value);
}

function readMillimetres(name: string, value: unknown): number {
  if (plainNumber(value) === Infinity) return Infinity;
  const isLength = isUnit(value) && value.value !== null && value.hasBase("LENGTH");
  const mm = isLength ? plainNumber(value.toNumeric("mm")) : undefined;
  if (mm !== undefined) return mm;
  throw refused(name, "a length with its unit", value);
}

function bigNumberClass(length: unknown): (new (value: number) => unknown) | undefined {
  const number = isUnit(length) ? length.value : length;
  return isKind(number, "isBigNumber") ? number.constructor : undefined;
}

/** Whether a value is of a mathjs class: the mark is on its class, so no object of a user's can pretend. */
function isKind(
  value: unknown,
  mark: "isUnit" | "isBigNumber" | "isFraction",
): value is { readonly constructor: new (...parts: readonly unknown[]) => unknown } {
  if (typeof value !== "object" || value === null) return false;
  try {
    return value.constructor?.prototype?.[mark] === true;
  } catch {
    // what will not be touched is no value of mathjs
    return false;
  }
}
