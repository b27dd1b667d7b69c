/** The shape of a trial's file, as a JSON Schema, and the same as a type. */
import { Ajv2020 } from "ajv/dist/2020.js";

/** How a value is known. */
type Mark = "seen" | "second-hand" | "computed" | "memory";

export interface Expectation {
  /** Path into the report, or into what the call gives. */
  readonly what?: string;
  readonly call?: string;
  readonly with?: readonly unknown[];
  readonly value: number | string | boolean | null;
  readonly within?: number | string;
  readonly digits?: number;
  readonly misprint?: number | string;
  /** Where it is known otherwise than the trial's other values. */
  readonly mark?: Mark;
}

export interface TrialFile {
  readonly name: string;
  readonly source: string;
  readonly mark: Mark;
  readonly note?: string;
  readonly design?: object;
  readonly expect: readonly Expectation[];
}

const text = { type: "string", minLength: 1 };
const quantity = { type: ["number", "string"] };
const mark = { enum: ["seen", "second-hand", "computed", "memory"] };

const expectation = {
  type: "object",
  additionalProperties: false,
  required: ["value"],
  properties: {
    what: text,
    call: text,
    with: { type: "array" },
    value: { type: ["number", "string", "boolean", "null"] },
    within: quantity,
    digits: { type: "integer", minimum: 0, maximum: 15 },
    misprint: quantity,
    mark,
  },
};

/** Whether a value is a trial; what is wrong with it is in `errors`. */
export const isTrial = new Ajv2020({ allowUnionTypes: true }).compile<TrialFile>({
  type: "object",
  additionalProperties: false,
  required: ["name", "source", "mark", "expect"],
  properties: {
    name: text,
    source: text,
    mark,
    note: { type: "string" },
    design: { type: "object" },
    expect: { type: "array", minItems: 1, items: expectation },
  },
});
