/**
 * The one part of mathjs that is used here: its unit class, over exact fractions.
 *
 * mathjs builds each class from the parts that it depends on. Unit asks for all of its arithmetic, for
 * every kind of number: 70 kB, most of it for matrices and big decimals. Converting a fraction needs only
 * the three operations below, so they are all that is handed in; asking for another part throws.
 */

import * as mathjs from "mathjs";
import { elementAt } from "../geometry/element-at.js";

/** An exact fraction of mathjs: sign · n / d. */
interface ExactFraction {
  readonly s: bigint;
  readonly n: bigint;
  readonly d: bigint;
  mul(other: ExactFraction): ExactFraction;
  div(other: ExactFraction): ExactFraction;
  pow(other: ExactFraction): ExactFraction;
}

type FractionClass = new (numerator: bigint, denominator: bigint) => ExactFraction;

interface ExactUnit {
  readonly units: readonly { readonly unit: { readonly base: { readonly key: string } } }[];
  hasBase(base: string): boolean;
  toNumeric(unit: string): ExactFraction;
}

interface UnitClass {
  new (value: ExactFraction | undefined, unit: string): ExactUnit;
  isValuelessUnit(word: string): boolean;
}

/** What mathjs exports and its types leave out. */
interface Factories {
  createFractionClass(parts: object): FractionClass;
  createUnitClass(parts: object): UnitClass;
}

const Fraction = /* @__PURE__ */ (mathjs as unknown as Factories).createFractionClass({});

const Unit = /* @__PURE__ */ (mathjs as unknown as Factories).createUnitClass({
  config: { number: "Fraction" },
  Fraction,
  isNumeric: (value: unknown) => value instanceof Fraction,
  multiplyScalar: (a: ExactFraction, b: ExactFraction) => a.mul(b),
  divideScalar: (a: ExactFraction, b: ExactFraction) => a.div(b),
  pow: (a: ExactFraction, b: ExactFraction) => a.pow(b),
  addScalar: notLoaded,
  subtractScalar: notLoaded,
  abs: notLoaded,
  fix: notLoaded,
  round: notLoaded,
  equal: notLoaded,
  format: notLoaded,
  number: notLoaded,
  Complex: notLoaded,
  BigNumber: notLoaded,
});

/** numerator / denominator of a unit in mm, exactly; the unit by its mathjs name. */
export function exactMillimetres(
  numerator: bigint,
  denominator: bigint,
  unit: string,
): { readonly numerator: bigint; readonly denominator: bigint } {
  const mm = new Unit(new Fraction(numerator, denominator), unit).toNumeric("mm");
  return { numerator: mm.s * mm.n, denominator: mm.d };
}

/** What a word measures: “length”, “mass”, “electric current”; undefined where it is no unit. */
export function measuredBy(word: string): string | undefined {
  if (!Unit.isValuelessUnit(word)) return undefined;
  const { key } = elementAt(new Unit(undefined, word).units, 0).unit.base;
  return key.toLowerCase().replaceAll("_", " ");
}

function notLoaded(): never {
  throw new Error("this part of mathjs is not loaded");
}
