/** The types, written by hand, are those of the table, both ways. The compiler checks (`npm run types`). */
import { expect, test } from "vitest";
import type { Design, DesignDraft, Station } from "../../src/design/design.js";
import { DESIGN, LAW } from "../../src/design/fields.js";
import type { DesignInput } from "../../src/files/index.js";

/** The cases that are meant where their tag is left out. */
const UNTAGGED = ["wood", "single", "rectangular"] as const;
type Untagged = (typeof UNTAGGED)[number];

type NumberOf<K> = K extends { readonly kind: "radius" } ? number | "flat" : number;
type LawOf<F> = FormOf<{
  readonly fields: { readonly limit: { readonly kind: "length" } };
  readonly variants: typeof LAW.variants;
}> &
  (F extends { readonly perHole: true } ? FieldsOf<typeof LAW.perHole> : unknown);
type ValueOf<F> = F extends { readonly kind: "text" }
  ? string
  : F extends { readonly kind: "flag" }
    ? true
    : F extends { readonly kind: "word"; readonly words: readonly (infer Word)[] }
      ? Word
      : F extends { readonly kind: "profile"; readonly of: infer N }
        ? NumberOf<N> | { readonly [S in Station]?: NumberOf<N> | undefined }
        : F extends { readonly kind: "tolerance" }
          ? number | LawOf<F>
          : F extends {
                readonly kind: "list";
                readonly item: infer Item;
                readonly most: infer Most;
              }
            ? Most extends 2
              ? readonly [ValueOf<Item>, ValueOf<Item>]
              : readonly ValueOf<Item>[]
            : F extends { readonly kind: "object" }
              ? FormOf<F> | (F extends { readonly or: infer Word } ? Word : never)
              : NumberOf<F>;
type FieldsOf<Fs> = {
  readonly [K in keyof Fs as Fs[K] extends { readonly optional: true } ? never : K]: ValueOf<Fs[K]>;
} & {
  readonly [K in keyof Fs as Fs[K] extends { readonly optional: true } ? K : never]?:
    | ValueOf<Fs[K]>
    | undefined;
};
type FormOf<F> = (F extends { readonly fields: infer Fs } ? FieldsOf<Fs> : unknown) &
  (F extends { readonly variants: infer Vs } ? VariantsOf<Vs> : unknown);
type VariantsOf<Vs> = Vs extends readonly [infer V, ...infer Rest]
  ? CasesOf<V> & VariantsOf<Rest>
  : unknown;
type CasesOf<V> = V extends { readonly cases: infer Cases }
  ? { [Name in keyof Cases]: TagOf<V, Name> & FormOf<Cases[Name]> }[keyof Cases]
  : never;
type TagOf<V, Name> = V extends { readonly tag: infer Tag extends string }
  ? Name extends Untagged
    ? { readonly [K in Tag]?: Name | undefined }
    : { readonly [K in Tag]: Name }
  : unknown;

/** A type spelt out: what may be left out is named, so that a key that is missing is told. */
type Spelt<T> = T extends readonly (infer Item)[]
  ? number extends T["length"]
    ? readonly Spelt<Item>[]
    : { readonly [I in keyof T]: Spelt<T[I]> }
  : T extends object
    ? {
        readonly [K in keyof T]-?: undefined extends T[K]
          ? Spelt<T[K] & {}> | "left out"
          : Spelt<T[K]>;
      }
    : T;

/** Whether either may stand for the other. */
type Alike<A, B> = [A] extends [B] ? ([B] extends [A] ? true : false) : false;

/** Compiles for `true` alone. */
function is<Answer extends true>(): Answer | undefined {
  return undefined;
}

type Table = FormOf<typeof DESIGN>;
/** Never an intersection of answers: `true & false` would pass. */
type Same<K extends keyof Design> = Alike<Spelt<Pick<Table, K>>, Spelt<Pick<Design, K>>>;

test("the cases without a tag are the first ones of the table", () => {
  const [stop] = DESIGN.fields.stop.variants;
  const [arrangement] = DESIGN.fields.markers.item.variants[0].cases.frets.variants;
  const firsts = [stop, arrangement, LAW.variants[0]].map(({ cases }) => Object.keys(cases)[0]);
  expect(firsts).toEqual(UNTAGGED);
});

test("each field of a design, both ways", () => {
  is<Alike<keyof Table, keyof Design>>();
  is<Same<Exclude<keyof Design, "markers">>>();
  is<Same<"markers">>();
});

test("the check can fail", () => {
  type Without<K extends keyof Design> = Omit<Design, K>;
  // @ts-expect-error a bit that must be there
  is<Alike<Spelt<Pick<Table, "bit">>, Spelt<{ readonly bit: NonNullable<Design["bit"]> }>>>();
  // @ts-expect-error a key that is missing
  is<Alike<Spelt<Table>, Spelt<Without<"web">>>>();
  // @ts-expect-error a slot without its web
  is<Alike<Spelt<Table["slot"]>, Spelt<Omit<NonNullable<Design["slot"]>, "web"> | undefined>>>();
  type Inner = Exclude<Design["markers"][number], { arrangement: "edge" }>;
  // @ts-expect-error groups without those at an edge
  is<Alike<Spelt<Table["markers"]>, Spelt<readonly Inner[]>>>();
  // @ts-expect-error a fill without the solid one
  is<Alike<Spelt<Table["fill"]>, Spelt<Extract<Design["fill"], { kind: "poured" }>> | undefined>>();
});

test("a draft may lack anything, and holds nothing that a design may not", () => {
  is<Design extends DesignDraft ? true : false>();
  const drafts: DesignDraft[] = [
    {},
    { scale: { length: 648 } },
    { board: { width: { nut: 43 } }, markers: [{ frets: [3] }, {}] },
    { bit: { kind: "twist" }, tolerance: { stop: { shape: "normal" } } },
  ];
  // @ts-expect-error a length is a number
  drafts.push({ board: { length: "482" } });
  // @ts-expect-error a key that is none
  drafts.push({ markers: [{ fret: 3 }] });
  expect(drafts).toHaveLength(6);
});

test("a file may hold a design as it is, and texts for its lengths alone", () => {
  is<Design extends DesignInput ? true : false>();
  is<Alike<DesignInput["depth"], number | string | undefined>>();
  is<
    Alike<
      NonNullable<DesignInput["tolerance"]>["radius"],
      NonNullable<Design["tolerance"]>["radius"]
    >
  >();
  is<Alike<NonNullable<DesignInput["pour"]>["waste"], number | undefined>>();
  // @ts-expect-error an angle is a number
  const angle: DesignInput["bit"] = { kind: "twist", angle: "118" };
  // @ts-expect-error a key that is none
  const web: DesignInput["slot"] = { depth: 3, tang: 1, wbe: 1 };
  const law: DesignInput["tolerance"] = {
    stop: { limit: "1/64 in", shape: "normal", coverage: 2 },
  };
  expect([angle, web, law]).toHaveLength(3);
});
