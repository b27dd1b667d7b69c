/** The shape of a trial's file. */
import * as v from "valibot";

const quantity = v.union([v.number(), v.string()], "expected a number, or a length as text");
const digits = v.pipe(
  v.number("expected a whole number of decimals"),
  v.integer("expected a whole number of decimals"),
  v.minValue(0, "expected 0 decimals or more"),
  v.maxValue(15, "expected 15 decimals at most"),
);

/** How a value is known. */
const mark = v.picklist(
  ["seen", "second-hand", "computed", "memory"],
  'expected "seen", "second-hand", "computed" or "memory"',
);

const expectation = v.strictObject({
  /** Path into the report, or into what the call gives. */
  what: v.optional(v.string("expected a path, as holes.0.window.min")),
  call: v.optional(v.string("expected the name of a building block")),
  with: v.optional(v.array(v.unknown(), "expected a list of arguments")),
  value: v.union([v.number(), v.string(), v.boolean(), v.null()], "expected a value"),
  within: v.optional(quantity),
  digits: v.optional(digits),
  misprint: v.optional(quantity),
  /** Where it is known otherwise than the trial's other values. */
  mark: v.optional(mark),
});

export const trialSchema = v.strictObject({
  name: v.pipe(v.string("expected a name"), v.nonEmpty("expected a name")),
  source: v.pipe(v.string("expected a source"), v.nonEmpty("expected a source")),
  mark,
  note: v.optional(v.string("expected a text")),
  design: v.optional(v.record(v.string(), v.unknown(), "expected a design")),
  expect: v.pipe(
    v.array(expectation, "expected a list of expectations"),
    v.minLength(1, "expected one expectation or more"),
  ),
});

export type Expectation = v.InferOutput<typeof expectation>;
export type TrialFile = v.InferOutput<typeof trialSchema>;
