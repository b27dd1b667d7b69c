/**
 * The geometry as functions to import into a mathjs instance. A length is a mathjs unit or a plain number;
 * a call has either units throughout, and then its result is in mm, or numbers of one unit throughout.
 * mathjs itself is not needed here: a result is made by the class of the unit that came in.
 */

import { diagonalCrossing } from "../board/markers.js";
import { MANY } from "../design/bounds.js";
import { radiusFromSagitta, sagitta } from "../geometry/sagitta.js";
import { shareAt } from "../geometry/temperament.js";
import { isUnit, lengthScale, plainNumber, refused } from "./math-values.js";

/** A length as a mathjs unit. */
export interface MathUnit {
  /** Its value in a unit. */
  toNumeric(unit: string): unknown;
  /** Whether it is a length, say. */
  hasBase(base: string): boolean;
}

/** A crossing of the diagonals, in the unit given. */
export interface Crossing<Length> {
  /** From the first slot. */
  readonly along: Length;
  /** Of each dot of a double from the centre line. */
  readonly offset: Length;
}

/** The functions, each with the arguments of the building block of its name. */
export interface MathFunctions {
  /** How far a surface of a radius has dropped at distance x from its crest; plain numbers or units of length. */
  readonly sagitta: {
    (radius: number, x: number, slope?: number): number;
    <U extends MathUnit>(radius: U | number, x: U, slope?: number): U;
  };
  /** The radius whose surface drops by h at distance x; plain numbers or units of length. */
  readonly radiusFromSagitta: {
    (x: number, h: number): number;
    <U extends MathUnit>(x: U, h: U): U;
  };
  /** Distance of fret n from the nut on a scale of this length; a plain number or a unit of length. */
  readonly fretPosition: {
    (length: number, n: number): number;
    <U extends MathUnit>(length: U, n: number): U;
  };
  /** Where the diagonals between two slots cross; plain numbers or units of length. */
  readonly diagonalCrossing: {
    (gap: number, widthA: number, widthB: number): Crossing<number>;
    <U extends MathUnit>(gap: U, widthA: U, widthB: U): Crossing<U>;
  };
}

/**
 * Functions to import into a mathjs instance of your own, whole or in part: `sagitta(radius, x, slope)`,
 * `radiusFromSagitta(x, h)`, `fretPosition(length, n)` and `diagonalCrossing(gap, widthA, widthB)`.
 *
 * Lengths have a unit throughout, and the result is in mm; or none throughout, and it is a plain number in
 * their own unit. Only a flat radius, `Infinity`, needs no unit. A slope and a fret number have none.
 * Big numbers give big numbers, of a double's accuracy; fractions give plain numbers.
 * An error names the argument, and tells lengths that have a unit in mm.
 *
 * @throws RangeError naming the argument, for a length that is none, or units for some lengths only
 * @example
 * const math = create(all);
 * math.import(mathFunctions);
 * math.evaluate("sagitta(12 in, 16 mm) to mm").toNumber("mm").toFixed(4) // "0.4202"
 * math.evaluate("fretPosition(25.5 in, 12) to in").toString() // "12.75 in"
 * math.evaluate("radiusFromSagitta(8, 6)").toFixed(4) // "8.3333"
 * math.evaluate("diagonalCrossing(450 mm, 44 mm, 56 mm).along").toString() // "198 mm"
 * math.evaluate("sagitta(12 kg, 16 mm)") // RangeError: radius: expected a length with its unit, received "12 kg"
 */
export const mathFunctions: MathFunctions = {
  sagitta: ((radius: unknown, x: unknown, slope: unknown = 0) => {
    const scale = lengthScale(radius, x);
    const drop = sagitta(scale.read("radius", radius), scale.read("x", x), ratio("slope", slope));
    return scale.write(drop);
  }) as MathFunctions["sagitta"],

  radiusFromSagitta: ((x: unknown, h: unknown) => {
    const scale = lengthScale(x, h);
    return scale.write(radiusFromSagitta(scale.read("x", x), scale.read("h", h)));
  }) as MathFunctions["radiusFromSagitta"],

  // s_n = L(1 − 2^(−n/12))
  fretPosition: ((length: unknown, n: unknown) => {
    const scale = lengthScale(length);
    return scale.write(stringLength(scale.read("length", length)) * shareAt(fretNumber(n)));
  }) as MathFunctions["fretPosition"],

  diagonalCrossing: ((gap: unknown, widthA: unknown, widthB: unknown) => {
    const scale = lengthScale(gap, widthA, widthB);
    const { along, offset } = diagonalCrossing(
      scale.read("gap", gap),
      scale.read("widthA", widthA),
      scale.read("widthB", widthB),
    );
    return { along: scale.write(along), offset: scale.write(offset) };
  }) as MathFunctions["diagonalCrossing"],
};

function stringLength(length: number): number {
  if (length > 0 && length < Infinity) return length;
  throw refused("length", "a finite length greater than 0", length);
}

function fretNumber(value: unknown): number {
  const n = plainNumber(value);
  if (n !== undefined && Number.isInteger(n) && n >= 0 && n <= MANY) return n;
  throw refused("n", `a fret's number, a whole number from 0 to ${MANY}`, value);
}

/** A number without a unit, or a unit whose dimensions cancel. */
function ratio(name: string, value: unknown): number {
  const number = plainNumber(isUnit(value) && value.hasBase("NONE") ? value.value : value);
  if (number !== undefined) return number;
  throw refused(name, "a number without a unit", value);
}
