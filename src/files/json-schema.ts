/** The JSON Schema of a design file, made of the table of fields. Not bundled: the build publishes what it makes. */
import { DESIGN, LAW } from "../design/fields.js";
import {
  type Field,
  type Form,
  type ListField,
  listFields,
  type NumberKind,
  type ObjectKind,
  type ToleranceField,
  type Variant,
} from "../design/kinds.js";
import { LONGEST } from "../units/scan.js";
import { lengthPattern } from "./length.js";

/** A schema, or a part of one. */
export type Schema = Readonly<Record<string, unknown>>;

/** The JSON Schema, draft 2020-12. */
export function designJsonSchema(): Schema {
  const $defs: Record<string, Schema> = {};
  const { properties, ...rest } = formSchema(DESIGN, { $defs, shared: sharedFields() });
  return {
    $schema: "https://json-schema.org/draft/2020-12/schema",
    title: "A guitar neck, for marker-depth",
    description:
      'Lengths are numbers of mm or texts with a unit, as "1/4 in" or "6.35 mm"; angles in degrees.',
    properties: { $schema: SCHEMA_KEY, ...(properties as Schema) },
    ...rest,
    $defs,
  };
}

const SCHEMA_KEY = {
  type: "string",
  description: "Where this JSON Schema is, for the editor.",
};

/** What is defined once and referred to: lengths by the name of their kind, and fields that a group shares. */
interface Definitions {
  readonly $defs: Record<string, Schema>;
  readonly shared: ReadonlyMap<unknown, string>;
}

/** The fields of the design that stand in its groups too, by their keys. */
function sharedFields(): Map<unknown, string> {
  const inGroups = new Set(Object.values(DESIGN.fields.markers.item.fields) as unknown[]);
  const shared = Object.entries(DESIGN.fields).filter(([, field]) => inGroups.has(field));
  return new Map(shared.map(([key, field]) => [field, key]));
}

function refer(name: string, schema: () => Schema, { $defs }: Definitions): Schema {
  $defs[name] ??= schema();
  return { $ref: `#/$defs/${name}` };
}

/** A field with what it says and what is assumed without it. */
function describe(field: Field, definitions: Definitions): Schema {
  const name = definitions.shared.get(field);
  const schema = name
    ? refer(name, () => fieldSchema(field, definitions), definitions)
    : fieldSchema(field, definitions);
  return { ...schema, ...describeField(field) };
}

function describeField(field: Field): Schema {
  const usual = findUsual(field);
  return {
    description: field.says,
    ...(usual !== undefined && field.optional && { default: usual }),
  };
}

function findUsual(field: Field): unknown {
  if (field.kind === "word") return field.words[0];
  return field.kind === "list" && field.usual !== undefined
    ? Array(field.least).fill(field.usual)
    : field.usual;
}

function fieldSchema(field: Field | NumberKind | ObjectKind, definitions: Definitions): Schema {
  switch (field.kind) {
    case "text":
      return { type: "string" };
    case "flag":
      return { const: true };
    case "word":
      return { enum: field.words };
    case "list":
      return listSchema(field, definitions);
    case "profile": {
      const { of } = field;
      return refer(`${nameNumber(of)}Profile`, () => profileSchema(of, definitions), definitions);
    }
    case "tolerance": {
      const name = `${nameNumber(field.of)}Tolerance${field.perHole ? "PerHole" : ""}`;
      return refer(name, () => toleranceSchema(field, definitions), definitions);
    }
    case "object": {
      const schema = formSchema(field, definitions);
      return field.or === undefined ? schema : { anyOf: [{ const: field.or }, schema] };
    }
    default:
      return field.unit === "mm"
        ? refer(nameNumber(field), () => numberSchema(field), definitions)
        : numberSchema(field);
  }
}

/** A length's name among the definitions. */
function nameNumber({ kind, orZero }: NumberKind): string {
  return orZero ? `${kind}OrZero` : kind;
}

function numberSchema(kind: NumberKind): Schema {
  const { unit, least, most, orZero, below, whole } = kind;
  const range = {
    minimum: orZero ? 0 : least,
    [below ? "exclusiveMaximum" : "maximum"]: most,
    ...(orZero && { not: { type: "number", exclusiveMinimum: 0, exclusiveMaximum: least } }),
  };
  if (unit !== "mm") return { type: whole ? "integer" : "number", ...range };
  const flat = kind.kind === "radius" ? "^flat$|" : "";
  const pattern = flat + lengthPattern(least < 0 ? "[+−-]" : "[+]");
  return { type: ["number", "string"], ...range, pattern, maxLength: LONGEST };
}

/** A number, a text or values at stations: each keyword is for one type alone. */
function profileSchema(of: NumberKind, definitions: Definitions): Schema {
  const at = (place: string) => ({
    ...fieldSchema(of, definitions),
    description: `At ${place}${of.unit === "mm" ? ", mm" : ""}.`,
  });
  const number = numberSchema(of);
  return {
    ...number,
    type: [number.type, "object"].flat(),
    properties: { nut: at("the nut"), end: at("the body end") },
    patternProperties: { [FRET_NAME]: at("this fret") },
    additionalProperties: false,
    minProperties: 1,
  };
}

function toleranceSchema({ of, perHole }: ToleranceField, definitions: Definitions): Schema {
  const limit = { ...of, ...LAW.limit };
  const fields = perHole ? { limit, ...LAW.perHole } : { limit };
  return { anyOf: [numberSchema(of), formSchema({ fields, variants: LAW.variants }, definitions)] };
}

/** The frets that may be stations: 1 to 250, which a test holds against the limit. */
const FRET_NAME = "^fret([1-9][0-9]?|1[0-9]{2}|2[0-4][0-9]|250)$";

function listSchema({ item, least, most, distinct }: ListField, definitions: Definitions): Schema {
  return {
    type: "array",
    items: fieldSchema(item, definitions),
    minItems: least,
    maxItems: most,
    ...(distinct && { uniqueItems: true }),
  };
}

/** An object: the fields of all its cases at once, so that editors offer them, and what each case has of them. */
function formSchema(form: Form, definitions: Definitions): Schema {
  const { fields, variants = [] } = form;
  const choices = variants.map(choiceSchema);
  return {
    type: "object",
    properties: makeProperties(form, definitions),
    required: requiredIn(fields),
    additionalProperties: false,
    ...(choices.length === 1 ? choices[0] : choices.length > 1 && { allOf: choices }),
  };
}

function makeProperties(form: Form, definitions: Definitions): Record<string, Schema> {
  const tags = listTags(form).map(({ tag, cases, optional, says }) => {
    const words = Object.keys(cases);
    return [tag, { enum: words, description: says, ...(optional && { default: words[0] }) }];
  });
  const fields = listFields(form).map(([key, field]) => {
    const { default: usual, ...schema } = describe(field, definitions);
    // what is assumed in one case alone is told there
    return [key, isTold(key, form, field) ? schema : { ...schema, ...describeField(field) }];
  });
  return Object.fromEntries([...tags, ...fields]);
}

/** The variants of a form that have a tag, however deep. */
function listTags({ variants = [] }: Form): (Variant & { readonly tag: string })[] {
  return variants.flatMap((variant) => {
    const { tag, cases } = variant;
    const own = tag === undefined ? [] : [{ ...variant, tag }];
    return [...own, ...Object.values(cases).flatMap(listTags)];
  });
}

/** Other cases say something else of the key. */
function isTold(key: string, form: Form, field: Field): boolean {
  const words = JSON.stringify(describeField(field));
  const rows = listFields(form).filter(([name]) => name === key);
  return rows.some(([, other]) => JSON.stringify(describeField(other)) !== words);
}

function requiredIn(fields: Form["fields"]): string[] {
  return Object.keys(fields).filter((key) => !fields[key]?.optional);
}

/** Just one of the cases: with its tag, with the fields that it needs, and without those of the others. */
function choiceSchema({ tag, optional, cases }: Variant): Schema {
  const names = Object.keys(cases);
  const all = names.flatMap((name) => allKeys(cases[name] as Form));
  return {
    oneOf: names.map((name) => {
      const form = cases[name] as Form;
      const own = new Set(allKeys(form));
      const others = [...new Set(all)].filter((key) => !own.has(key)).map((key) => [key, false]);
      const tagged = tag === undefined ? [] : [[tag, { const: name }]];
      const told = listFields(form)
        .filter(([key, field]) => isTold(key, { fields: {}, variants: [{ cases }] }, field))
        .map(([key, field]) => [key, describeField(field)]);
      const needed = tag !== undefined && !(optional && name === names[0]) ? [tag] : [];
      const inner = (form.variants ?? []).map(choiceSchema);
      return {
        properties: Object.fromEntries([...tagged, ...told, ...others]),
        required: [...needed, ...requiredIn(form.fields)],
        ...(inner.length > 0 && { allOf: inner }),
      };
    }),
  };
}

function allKeys(form: Form): string[] {
  return [...listTags(form).map(({ tag }) => tag), ...listFields(form).map(([key]) => key)];
}
