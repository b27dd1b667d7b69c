/** The JSON Schema of a design file, made of the valibot schema. Not shipped: what it makes is. */
import { type ConversionConfig, toJsonSchema } from "@valibot/to-json-schema";
import type * as v from "valibot";
import { definitions, designObject } from "./schema.js";

type OverrideSchema = NonNullable<ConversionConfig["overrideSchema"]>;

/** The JSON Schema, draft 2020-12. */
export function designJsonSchema(): Readonly<Record<string, unknown>> {
  const { $schema, ...schema } = toJsonSchema(designObject, {
    target: "draft-2020-12",
    typeMode: "input",
    // a check's bound is told by the metadata beside it; JSON knows no readonly
    ignoreActions: ["check", "readonly"],
    definitions: Object.fromEntries(
      Object.entries(definitions).map(([name, schema]) => [name, bare(schema)]),
    ),
    overrideSchema: (context) => byStation(context) ?? byType(context),
  });
  const title = "A guitar neck, for marker-depth";
  const description =
    'Lengths are numbers of mm or texts with a unit, as "1/4 in" or "6.35 mm"; angles in degrees.';
  return { $schema, title, description, ...schema };
}

/** What a lazy schema stands for. */
function bare(schema: (typeof definitions)[keyof typeof definitions]): v.GenericSchema {
  return schema.getter(undefined);
}

/** One pattern for the frets in place of a property for each. */
const byStation: OverrideSchema = ({ jsonSchema }) => {
  const { nut, end, fret1 } = jsonSchema.properties ?? {};
  if (nut === undefined || end === undefined || fret1 === undefined) return undefined;
  const { required, ...rest } = jsonSchema;
  return { ...rest, properties: { nut, end }, patternProperties: { [FRET_NAME]: fret1 } };
};

/**
 * Alternatives of different types as one schema. Each keyword is for one type alone, and what an editor says
 * against a value is then what its own type asks for.
 */
const byType: OverrideSchema = ({ jsonSchema: { anyOf, ...rest } }) => {
  const types = anyOf?.map((one) => (typeof one === "object" ? one.type : undefined)) ?? [];
  const isClear = types.every((type) => typeof type === "string");
  if (anyOf === undefined || !isClear || new Set(types).size < types.length) return undefined;
  return Object.assign({}, rest, ...anyOf, { type: types });
};

/** The frets that may be stations: 1 to 250, which a test holds against the limit. */
const FRET_NAME = "^fret([1-9][0-9]?|1[0-9]{2}|2[0-4][0-9]|250)$";
