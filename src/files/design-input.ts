/** A design as it may be written: the design itself, with lengths as numbers of mm or as text. */
import type { Design } from "../design/design.js";

/** The numbers that are no lengths: counts, places between frets, angles, fractions and ratios. */
type Pure = "frets" | "perpendicular" | "angle" | "waste" | "ratio";

/** The type with every length as a number of mm or a text such as "1/4 in"; a radius may be "flat". */
type Written<T> = T extends number
  ? number | string
  : T extends readonly unknown[]
    ? { readonly [I in keyof T]: Written<T[I]> }
    : T extends object
      ? { readonly [K in keyof T]: K extends Pure ? T[K] : Written<T[K]> }
      : T;

/** The tolerance of the radius is a fraction; the others are lengths. */
type WrittenTolerance = Omit<Written<NonNullable<Design["tolerance"]>>, "radius"> & {
  readonly radius?: number;
};

/**
 * A design as `designSchema` takes it: lengths are numbers of mm or texts with a unit, a radius may be
 * "flat", and `$schema` may name the JSON Schema for an editor.
 */
export type DesignInput = Omit<Written<Design>, "tolerance"> & {
  readonly tolerance?: WrittenTolerance;
  readonly $schema?: string;
};
