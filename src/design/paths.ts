/** Numbers of a design by their paths: what each may be, and a design with one of them changed. */
import type { Design, Station } from "./design.js";
import { DESIGN, WITHOUT } from "./fields.js";
import {
  type Field,
  type Form,
  fieldUnder,
  listFields,
  type NumberKind,
  type ObjectKind,
} from "./kinds.js";
import { stationProblem } from "./read.js";

/** A path to a number of a design: its keys with dots between, as "board.thickness.nut" or "markers.0.diameter". */
export type NumberPath = PathsIn<typeof DESIGN>;

type PathsIn<F extends Form> = FieldPaths<F["fields"]> | VariantPaths<F["variants"]>;
type VariantPaths<V> = V extends readonly (infer Variant)[] ? CasePaths<Variant> : never;
// one variant after the other: the cases of several have no key in common
type CasePaths<V> = V extends { readonly cases: infer Cases }
  ? { [Name in keyof Cases]: Cases[Name] extends Form ? PathsIn<Cases[Name]> : never }[keyof Cases]
  : never;
type FieldPaths<Fs> = {
  [Key in keyof Fs & string]: Fs[Key] extends { readonly kind: "object" } & Form
    ? `${Key}.${PathsIn<Fs[Key]>}`
    : Fs[Key] extends { readonly kind: "list"; readonly item: infer Item }
      ? Item extends { readonly kind: "object" } & Form
        ? `${Key}.${number}.${PathsIn<Item>}`
        : `${Key}.${number}`
      : Fs[Key] extends { readonly kind: "profile" }
        ? Key | `${Key}.${Station}`
        : Fs[Key] extends { readonly kind: "text" | "word" | "flag" }
          ? never
          : Key;
}[keyof Fs & string];

/** What the number at a path may be; undefined where a design has no number there. */
export function kindAt(path: string): NumberKind | undefined {
  return kindUnder(DESIGN, path.split("."));
}

function kindUnder(form: Form, [key, ...rest]: readonly string[]): NumberKind | undefined {
  const fields = listFields(form).flatMap(([name, field]) => (name === key ? [field] : []));
  for (const field of fields) {
    const kind = findKind(field, rest);
    if (kind !== undefined) return kind;
  }
  return undefined;
}

function findKind(
  field: Field | NumberKind | ObjectKind,
  rest: readonly string[],
): NumberKind | undefined {
  const [key = "", ...further] = rest;
  switch (field.kind) {
    case "object":
      return kindUnder(field, rest);
    case "list":
      return /^(0|[1-9]\d{0,5})$/.test(key) ? findKind(field.item, further) : undefined;
    case "profile": {
      const isStation = rest.length === 1 && stationProblem(key, undefined) === undefined;
      return rest.length === 0 || isStation ? field.of : undefined;
    }
    case "tolerance":
      return rest.length === 0 ? field.of : undefined;
    case "text":
    case "word":
    case "flag":
      return undefined;
    default:
      return rest.length === 0 ? field : undefined;
  }
}

/** Paths to offer for a misspelt one: each number once, a group's by the first. */
export function listPaths(form: Form = DESIGN, before = ""): string[] {
  const paths = listFields(form).flatMap(([key, field]) => {
    const path = before + key;
    if (field.kind === "object") return listPaths(field, `${path}.`);
    if (field.kind === "list" && field.item.kind === "object")
      return listPaths(field.item, `${path}.0.`);
    return kindAt(path) === undefined ? [] : [path];
  });
  return [...new Set(paths)];
}

/** The item of a list that a path leads through and the design has not: "markers.7"; undefined where it has each. */
export function missingItem(design: Design, path: string): string | undefined {
  let place: unknown = design;
  const walked: string[] = [];
  for (const key of path.split(".")) {
    walked.push(key);
    if (Array.isArray(place) && !(Number(key) < place.length)) return walked.join(".");
    if (typeof place !== "object" || place === null) return undefined;
    place = (place as Record<string, unknown>)[key];
  }
  return undefined;
}

/**
 * The design with one number replaced, and nothing else; all else is shared with the design given. What a group inherits
 * is copied into it first, what is assumed is written out, and a station of a constant leaves the ends where they are.
 */
export function withNumber(design: Design, path: string, value: number): Design {
  const keys = path.split(".");
  return replaced(inherited(design, keys), keys, value, DESIGN, undefined) as Design;
}

/** What a group does not state but the design does. */
function inherited(design: Design, [list, index, key = "", ...rest]: readonly string[]): Design {
  const group = design.markers?.[Number(index)];
  if (list !== "markers" || rest.length === 0 || !(key in WITHOUT)) return design;
  const shared = key as keyof typeof WITHOUT;
  if (group === undefined || group[shared] !== undefined) return design;
  if ("shape" in group && key === "bit") return design;
  const markers = design.markers.map((each) =>
    each === group ? { ...each, [key]: design[shared] ?? assumed(shared) } : each,
  );
  return { ...design, markers };
}

/** What is taken where a design states no such object. */
function assumed(key: keyof typeof WITHOUT): object {
  if (key === "stop") return {};
  const { forstner } = DESIGN.fields.bit.variants[0].cases;
  return key === "fill"
    ? { kind: WITHOUT.fill }
    : { kind: WITHOUT.bit, point: forstner.fields.point.usual };
}

type Described = Field | NumberKind | ObjectKind;

function replaced(
  place: unknown,
  keys: readonly string[],
  value: number,
  field: Described | undefined,
  last: string | undefined,
): unknown {
  const [key, ...rest] = keys;
  if (key === undefined) {
    // of a tolerance with its law only the limit moves
    const isLaw = field?.kind === "tolerance" && typeof place === "object" && place !== null;
    return isLaw ? { ...place, limit: value } : value;
  }
  if (field?.kind === "profile") return withStation(place ?? field.usual, key, value);
  const isList = field?.kind === "list" && Array.isArray(place);
  // a list that is too long is refused as it stands
  if (isList && !(place.length <= field.most)) return place;
  const copy: Record<string, unknown> | unknown[] = isList
    ? [...place]
    : typeof place === "object" && place !== null
      ? { ...place }
      : field?.kind === "list" && field.usual !== undefined
        ? Array.from({ length: field.least }, () => field.usual)
        : last !== undefined && last in WITHOUT
          ? { ...assumed(last as keyof typeof WITHOUT) }
          : {};
  const fields = copy as Record<string, unknown>;
  fields[key] = replaced(fields[key], rest, value, fieldUnder(field, key), key);
  return copy;
}

/** A profile with one station's value; a constant keeps its ends. */
function withStation(
  profile: object | number | string | undefined,
  station: string,
  value: number,
): object {
  const stated = typeof profile === "object" ? profile : {};
  const values = Object.values(stated);
  const constant =
    typeof profile === "object" ? (values.length === 1 ? values[0] : undefined) : profile;
  if (constant === undefined) return { ...stated, [station]: value };
  return { nut: constant, end: constant, ...stated, [station]: value };
}
