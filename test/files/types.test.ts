/**
 * The schema's types are those of `Design`, both ways. The check is the compiler's (`npm run types`): what
 * this file is for is that it compiles.
 */

import type * as v from "valibot";
import { expect, test } from "vitest";
import type { DesignInput, designSchema } from "../../src/files/index.js";
import type { designObject } from "../../src/files/schema.js";
import type { Design, Profile } from "../../src/index.js";

/** Whether two types are one, optional keys and all. */
type Same<A, B> =
  (<T>() => T extends A ? 1 : 2) extends <T>() => T extends B ? 1 : 2 ? true : false;

/** A type spelt out: read only, without keys that may only be undefined, intersections made one. */
type Spelt<T> = T extends readonly unknown[]
  ? { readonly [I in keyof T]: Spelt<T[I]> }
  : T extends object
    ? { readonly [K in keyof T as T[K] extends undefined ? never : K]: Spelt<T[K]> }
    : T;

type Output = v.InferOutput<typeof designObject>;
type Input = v.InferInput<typeof designObject>;

/** Compiles for `true` alone. */
function is<Answer extends true>(): Answer | undefined {
  return undefined;
}

test("what comes out is a Design, and the other way round", () => {
  is<Same<Spelt<Omit<Output, "$schema">>, Spelt<Design>>>();
  is<Same<v.InferOutput<typeof designSchema>, Design>>();
});

test("what goes in is a DesignInput, and the other way round", () => {
  is<Same<Spelt<Input>, Spelt<DesignInput>>>();
  is<Same<v.InferInput<typeof designSchema>, DesignInput>>();
});

test("a Design may go in as it is; so may texts for its lengths, and for nothing else", () => {
  is<Design extends DesignInput ? true : false>();
  is<Same<DesignInput["depth"], number | string | undefined>>();
  is<Same<Spelt<DesignInput["radius"]>, Spelt<WrittenProfile>>>();
  is<Same<NonNullable<DesignInput["tolerance"]>["radius"], number | undefined>>();
  is<Same<NonNullable<DesignInput["pour"]>["waste"], number | undefined>>();
  // @ts-expect-error an angle is a number
  const angle: DesignInput["bit"] = { kind: "twist", angle: "118" };
  // @ts-expect-error a key that is none
  const depth: DesignInput["slot"] = { depth: 3, tang: 1, web: 1, wbe: 1 };
  expect([angle, depth]).toHaveLength(2);
});

type WrittenProfile = number | string | { [K in keyof Exclude<Profile, number>]?: number | string };

test("the check can fail", () => {
  // @ts-expect-error a design without its side dots is another type
  is<Same<Spelt<Omit<Output, "$schema" | "sideDots">>, Spelt<Design>>>();
  // @ts-expect-error a crown that must be there is another type
  is<Same<Spelt<Omit<Output, "$schema" | "crown"> & { crown: Profile }>, Spelt<Design>>>();
});
