/**
 * The kinds of fields that a design is described by, as plain data. `says` and `source` are for readers alone: the build
 * leaves them out of the core.
 */

/** What every field carries. */
interface Described {
  /** The field may be left out. */
  readonly optional?: true;
  /** What it is, in one sentence or two. */
  readonly says: string;
  /** What is assumed where it is left out, and where that comes from. */
  readonly usual?: number;
  readonly source?: string;
}

/** A number's bounds. */
export interface NumberKind {
  readonly kind:
    | "length"
    | "radius"
    | "position"
    | "angle"
    | "fraction"
    | "count"
    | "fret"
    | "factor";
  readonly unit: string;
  readonly least: number;
  readonly most: number;
  /** 0 is taken too, below `least`. */
  readonly orZero?: true;
  /** The greatest is itself too much. */
  readonly below?: true;
  /** Whole numbers alone. */
  readonly whole?: true;
  /** Outside of these it is likely a slip, such as inches for mm. */
  readonly plausible?: readonly [number, number];
}

export interface NumberField extends NumberKind, Described {}

/** A quantity along the board: one number, or numbers at stations. */
export interface ProfileField extends Described {
  readonly kind: "profile";
  readonly of: NumberKind;
}

/** A tolerance: a limit, or a limit and its law. */
export interface ToleranceField extends Described {
  readonly kind: "tolerance";
  readonly of: NumberKind;
  /** It may be each hole's own. */
  readonly perHole?: true;
}

/** One of a few words; where it may be left out the first is meant. */
export interface WordField extends Described {
  readonly kind: "word";
  readonly words: readonly [string, ...string[]];
}

/** Any text. */
export interface TextField extends Described {
  readonly kind: "text";
}

/** `true`, or left out. */
export interface FlagField extends Described {
  readonly kind: "flag";
}

/** Items of one kind, so many. */
export interface ListField extends Described {
  readonly kind: "list";
  readonly item: NumberKind | ObjectKind;
  readonly one: string;
  readonly many: string;
  readonly least: number;
  readonly most: number;
  /** Each item once. */
  readonly distinct?: true;
  /** Each item more than the one before it. */
  readonly rising?: true;
}

/** An object; a word may stand in its place. */
export interface ObjectKind extends Form {
  readonly kind: "object";
  readonly or?: string;
}

export interface ObjectField extends ObjectKind, Described {}

/** The fields of an object, and those that it has in some cases alone. */
export interface Form {
  readonly fields: Fields;
  readonly variants?: readonly Variant[];
}

/**
 * Cases of an object. The word at `tag` tells which it is, the first where it is left out. Without a tag, a key that a
 * case has alone tells it; where none stands it is the last.
 */
export interface Variant {
  readonly tag?: string;
  /** The tag may be left out. */
  readonly optional?: true;
  readonly says?: string;
  readonly cases: { readonly [name: string]: Form };
}

export interface Fields {
  readonly [key: string]: Field;
}

export type Field =
  | NumberField
  | ProfileField
  | ToleranceField
  | WordField
  | TextField
  | FlagField
  | ListField
  | ObjectField;

/** The fields of a form with those of all its cases, by key; a key that several cases have comes once for each. */
export function listFields(form: Form): [string, Field][] {
  const cases = (form.variants ?? []).flatMap((variant) => Object.values(variant.cases));
  return [...Object.entries(form.fields), ...cases.flatMap(listFields)];
}

/** The field of what stands at a key of a field's value; undefined where there is none. */
export function fieldUnder(
  field: Field | NumberKind | ObjectKind | undefined,
  key: string,
): Field | NumberKind | ObjectKind | undefined {
  switch (field?.kind) {
    case "list":
      return field.item;
    case "profile":
      return field.of;
    case "tolerance":
      return key === "limit" ? field.of : undefined;
    case "object":
      return listFields(field).find(([name]) => name === key)?.[1];
    default:
      return undefined;
  }
}
