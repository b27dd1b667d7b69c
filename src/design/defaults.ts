/** The defaults and limits of the table, for those who import the library. */
import { DESIGN } from "./fields.js";
import type { Field, Form } from "./kinds.js";

/** What is assumed where a design is silent, by the field's path; a case's own name stands before it. */
export const DEFAULTS: Readonly<Record<string, Default>> = Object.fromEntries(
  defaultsIn(DESIGN, ""),
);

/** Bounds that keep the work finite; a value outside is refused. */
export const LIMITS = {
  frets: {
    value: DESIGN.fields.markers.item.variants[0].cases.frets.fields.frets.most,
    unit: "frets",
  },
  groups: { value: DESIGN.fields.markers.most, unit: "marker groups" },
} as const;

/** What is assumed, with its unit. */
export interface Default {
  /** What is assumed. */
  readonly value: number;
  /** "mm", "degrees", "fraction", "part" or "standard deviations". */
  readonly unit: string;
}

function defaultsIn(form: Form, path: string): [string, Default][] {
  const named = Object.values(form.variants ?? []).flatMap(({ cases, tag }) =>
    Object.entries(cases).flatMap(([name, inner]) =>
      defaultsIn(inner, tag === undefined ? path : `${path}${name}.`),
    ),
  );
  return [
    ...Object.entries(form.fields).flatMap(([key, field]) => listDefault(field, path + key)),
    ...named,
  ];
}

function listDefault(field: Field, path: string): [string, Default][] {
  const within = field.kind === "object" ? defaultsIn(field, `${path}.`) : [];
  if (field.usual === undefined) return within;
  const of = field.kind === "profile" || field.kind === "tolerance" ? field.of : field;
  const unit =
    "unit" in of ? of.unit : field.kind === "list" && "unit" in field.item ? field.item.unit : "";
  return [[path, { value: field.usual, unit }]];
}
