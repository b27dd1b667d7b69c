/** A design as it may be written: the design itself, with lengths as numbers of mm or as text. */
import type { Design, Tolerances } from "../design/design.js";

/** The numbers that are no lengths: counts, places between frets, angles, parts, and deviations. */
type Pure = "frets" | "square" | "angle" | "waste" | "ratio" | "coverage";

/** The tolerances that are fractions. */
type Fractions = "radius" | "existing";

/** The type with every length as a number of mm or a text such as "1/4 in"; a radius may be "flat". */
type Written<T> = T extends number
  ? number | string
  : T extends readonly unknown[]
    ? { readonly [I in keyof T]: Written<T[I]> }
    : T extends object
      ? { readonly [K in keyof T]: K extends Pure ? T[K] : Written<T[K]> }
      : T;

/**
 * A design as `designSchema` takes it: lengths are numbers of mm or texts with a unit, a radius may be
 * "flat", and `$schema` may name the JSON Schema for an editor.
 */
export type DesignInput = Omit<Written<Design>, "tolerance"> & {
  /** How far things may be off: each ± mm, or a limit with its law; `radius` and `existing` ± a fraction. */
  readonly tolerance?:
    | (Written<Omit<Tolerances, Fractions>> & Pick<Tolerances, Fractions>)
    | undefined;
  /** Where the JSON Schema is, for an editor. */
  readonly $schema?: string | undefined;
};
