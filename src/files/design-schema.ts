/** The design as a Standard Schema, so that other tools can validate with it. */
import type { Design } from "../design/design.js";
import type { DesignInput } from "./design-input.js";
import { readWritten } from "./read-whole.js";

/** The interface of Standard Schema, version 1 (standardschema.dev), written out. */
export interface StandardSchema<Input, Output> {
  /** What tools look for. */
  readonly "~standard": {
    /** The version of the interface. */
    readonly version: 1;
    /** The library that the schema is of. */
    readonly vendor: string;
    /** Tells the value as it was read, or what is wrong with it. */
    readonly validate: (value: unknown) => StandardResult<Output>;
    /** For the compiler alone. */
    readonly types?:
      | {
          /** What may be written. */
          readonly input: Input;
          /** What comes out. */
          readonly output: Output;
        }
      | undefined;
  };
}

/** A value as it was read, or what is wrong with it. */
export type StandardResult<Output> =
  | {
      /** As it was read. */
      readonly value: Output;
      readonly issues?: undefined;
    }
  | {
      /** All that is wrong with it. */
      readonly issues: readonly StandardIssue[];
    };

/** A problem and its place. */
export interface StandardIssue {
  /** What was expected, and what came. */
  readonly message: string;
  /** The keys that lead to it. */
  readonly path?: readonly PropertyKey[] | undefined;
}

/**
 * A design as it may be written, as a Standard Schema: lengths may be numbers of mm or texts with a unit, a radius may
 * be "flat", and what comes out is a `Design` in mm. What `checkDesign` would refuse is an issue.
 *
 * @example
 * const result = designSchema["~standard"].validate({ radius: "flat" });
 * result.issues.map(({ path }) => path.join(".")) // ["scale", "board", "markers"]
 */
export const designSchema: StandardSchema<DesignInput, Design> = {
  "~standard": { version: 1, vendor: "marker-depth", validate },
};

function validate(value: unknown): StandardResult<Design> {
  const { design, issues } = readWritten(value);
  if (design !== undefined && issues.length === 0) return { value: design };
  return { issues: issues.map(({ message, path }) => ({ message, path: splitPath(path) })) };
}

/** A list's items by their number. */
function splitPath(path: string): PropertyKey[] {
  if (path === "") return [];
  return path.split(".").map((key) => (/^\d+$/.test(key) ? Number(key) : key));
}
