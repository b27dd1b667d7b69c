/** Walks a design beside the table of fields. */
import { DESIGN } from "../../src/design/fields.js";
import {
  type Field,
  type Form,
  fieldUnder,
  listFields,
  type NumberKind,
  type ObjectKind,
} from "../../src/design/kinds.js";
import { lawOf } from "./arbitrary.js";

/** A value of a design and its row in the table. */
export interface Spot {
  readonly path: string;
  readonly row: Field | NumberKind | ObjectKind;
  readonly value: unknown;
}

/** Every value in a design, itself included; tags are values of no row. */
export function spotsIn(value: unknown, stated: Spot["row"] = DESIGN, path = ""): Spot[] {
  const isBox = typeof value === "object" && value !== null;
  const row: Spot["row"] =
    isBox && stated.kind === "tolerance" ? { kind: "object", ...lawOf(stated) } : stated;
  const within = isBox ? Object.entries(value) : [];
  return [
    { path, row, value },
    ...within.flatMap(([key, inner]) => {
      const under = fieldUnder(row, key);
      return under ? spotsIn(inner, under, path === "" ? key : `${path}.${key}`) : [];
    }),
  ];
}

/** A number's row; that of a profile or a tolerance is of the number in it. */
export function numberRow({ row, value }: Spot): NumberKind | undefined {
  if (typeof value !== "number") return undefined;
  const kind = "of" in row ? row.of : row;
  return "least" in kind && kind.kind !== "list" ? kind : undefined;
}

/** A path without the indices and frets in it. */
export function general(path: string): string {
  return path.replace(/\.\d+/g, "").replace(/\.(?:nut|end|fret\d+)$/, "");
}

/** Every path of the table, tags included. */
export function pathsOf(form: Form = DESIGN, before = ""): string[] {
  const tags = tagsOf(form).map((tag) => before + tag);
  const paths = listFields(form).flatMap(([key, field]) => {
    const path = before + key;
    if (field.kind === "object") return [path, ...pathsOf(field, `${path}.`)];
    if (field.kind === "tolerance") return [path, ...pathsOf(lawOf(field), `${path}.`)];
    const isList = field.kind === "list" && field.item.kind === "object";
    return isList ? [path, ...pathsOf(field.item as ObjectKind, `${path}.`)] : [path];
  });
  return [...new Set([...tags, ...paths])];
}

/** The tags of a form, and of its cases. */
export function tagsOf({ variants = [] }: Form): string[] {
  return variants.flatMap(({ tag, cases }) => [
    ...(tag === undefined ? [] : [tag]),
    ...Object.values(cases).flatMap(tagsOf),
  ]);
}

/** A copy with the value at a path replaced; `undefined` removes it. What is no object there is made one. */
export function withValue<T>(value: T, path: string, other: unknown): T {
  const [key, ...rest] = path.split(".") as [string, ...string[]];
  const isBox = typeof value === "object" && value !== null;
  const copy = (Array.isArray(value) ? [...value] : isBox ? { ...value } : {}) as Record<
    string,
    unknown
  >;
  const inner = rest.length > 0 ? withValue(copy[key], rest.join("."), other) : other;
  if (inner === undefined) delete copy[key];
  else Object.defineProperty(copy, key, { value: inner, enumerable: true, configurable: true });
  return copy as T;
}
