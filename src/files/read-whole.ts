/** Reads all of a design: what is stated, and what `checkDesign` would refuse of it. */
import type { Design } from "../design/design.js";
import { newReading, type Reading, readStated } from "../design/read.js";
import { buildNeck, type Neck, specFrom } from "../drilling/work.js";
import { type DesignIssue, makeIssue } from "../errors/errors.js";
import { isObject } from "../errors/unknown.js";
import { lengthIn } from "./length.js";

/** A design as far as it could be read, with everything that is wrong with it. */
export interface WholeDesign {
  readonly design: Design | undefined;
  /** Where nothing is wrong with it. */
  readonly neck: Neck | undefined;
  readonly issues: readonly DesignIssue[];
}

/** Reads a design as it is in code. */
export function readWhole(value: unknown, inMm?: Reading["inMm"]): WholeDesign {
  const issues: DesignIssue[] = [];
  const design = readStated(value, newReading(issues, inMm));
  const neck = design && buildNeck(specFrom(design, issues), issues);
  return { design, neck, issues };
}

/** Reads a design as it may be written: lengths as numbers of mm or texts with a unit, with its schema named. */
export function readWritten(value: unknown): WholeDesign {
  const { design, neck, issues } = readWhole(withoutSchema(value), lengthIn);
  const told = issues.map((issue) => asWritten(issue, value));
  return { design, neck, issues: [...schemaIssues(value), ...told] };
}

/** Without the place of its JSON Schema, which is for editors alone. */
function withoutSchema(value: unknown): unknown {
  if (!namesSchema(value)) return value;
  const { $schema, ...design } = value;
  return design;
}

function schemaIssues(value: unknown): DesignIssue[] {
  if (!namesSchema(value) || typeof value.$schema === "string") return [];
  return [makeIssue("$schema", value.$schema, "a text")];
}

function namesSchema(value: unknown): value is { readonly $schema: unknown } {
  return isObject(value) && Object.hasOwn(value, "$schema");
}

/** An issue about a length shows it as it was written. */
function asWritten(issue: DesignIssue, design: unknown): DesignIssue {
  if (typeof issue.value !== "number") return issue;
  const written = issue.path.split(".").reduce(valueAt, design);
  return typeof written === "string" ? makeIssue(issue.path, written, issue.expected) : issue;
}

function valueAt(value: unknown, key: string): unknown {
  const isBox = typeof value === "object" && value !== null;
  return isBox && Object.hasOwn(value, key) ? (value as Record<string, unknown>)[key] : undefined;
}
