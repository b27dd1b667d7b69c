/** Reads a design file. */
import * as v from "valibot";
import type { Design } from "../design/design.js";
import { prepare } from "../drilling/neck.js";
import { DesignError, type DesignIssue, issueOf } from "../errors/errors.js";
import { expectedBy, isObject } from "./choice.js";
import { readJson } from "./json.js";
import { lengthIn } from "./length.js";
import { type FileIssue, pathPlaces, placed, START } from "./places.js";
import { designSchema } from "./schema.js";

/**
 * Reads a design from JSON text.
 *
 * A length is a number of mm, or a text with its unit as "1/4 in", "25.5 in" or "6.35 mm"; a radius may be
 * "flat". Angles, fractions and counts are numbers. What `checkDesign` would refuse is refused here, every
 * problem at once, each with its line and column. The text may name its JSON Schema by `$schema`.
 *
 * @param text JSON of at most 1 000 000 characters, 32 levels and 10 000 keys, without a byte order mark
 * @returns the design in mm, which `checkDesign` takes; a flat radius is `Infinity`
 * @throws DesignError; its issues are `FileIssue`s, with `line` and `column`. Of a text that is no JSON
 * they tell just that, at path ""
 * @example
 * const design = readDesign(`{
 *   "scale": { "length": "25.5 in", "frets": 22 },
 *   "board": { "length": 482, "width": { "nut": 43, "end": 57 }, "thickness": "1/4 in" },
 *   "radius": "flat",
 *   "markers": [{ "frets": [3, 5, 7, 9, 12], "diameter": 6.35 }]
 * }`);
 * design.scale.length // 647.7
 * design.board.thickness // 6.35
 * design.radius // Infinity
 */
export function readDesign(text: string): Design {
  if (typeof text !== "string") {
    throw new DesignError([placed(issueOf("", text, "a text of JSON"), START)]);
  }
  const { value, isJson, issues } = readJson(text);
  if (!isJson) throw new DesignError(issues);
  const shape = v.safeParse(designSchema, value, { abortEarly: false, abortPipeEarly: false });
  const shapeIssues = shape.issues?.map(shapeIssue) ?? [];
  const restIssues = coreIssues(shape.success ? shape.output : numbersIn(value));
  const found = inText(text, issues, shapeIssues, restIssues);
  if (found.length > 0) throw new DesignError(found);
  return shape.output as Design;
}

/** The issues in the order of the text; of several kinds of issue at one path, only the first kind. */
function inText(
  text: string,
  issues: readonly FileIssue[],
  ...later: readonly (readonly DesignIssue[])[]
): FileIssue[] {
  if (issues.length === 0 && later.every((kind) => kind.length === 0)) return [];
  const placeOf = pathPlaces(text);
  const found = [...issues];
  for (const kind of later) {
    const told = new Set(found.map(({ path }) => path));
    const fresh = kind.filter(({ path }) => !told.has(path));
    for (const issue of fresh) found.push(placed(issue, placeOf(issue.path)));
  }
  return found.sort((a, b) => a.line - b.line || a.column - b.column);
}

function shapeIssue(issue: v.BaseIssue<unknown>): DesignIssue {
  const path = issue.path?.map(({ key }) => String(key)).join(".") ?? "";
  const value = issue.path === undefined ? issue.input : issue.path.at(-1)?.value;
  return issueOf(path, value, expectedBy(issue.message));
}

/** What `checkDesign` would say. */
function coreIssues(design: unknown): readonly DesignIssue[] {
  try {
    prepare(design);
    return [];
  } catch (error) {
    if (error instanceof DesignError) return error.issues;
    throw error;
  }
}

/** A value of the wrong shape with its lengths in mm, as far as they can be read, for what else is wrong. */
function numbersIn(value: unknown): unknown {
  if (!isObject(value)) return value;
  const { $schema, name, ...fields } = value;
  return { ...(name === undefined ? {} : { name }), ...(withNumbers(fields) as object) };
}

function withNumbers(value: unknown): unknown {
  if (typeof value === "string") return numberFor(value);
  if (Array.isArray(value)) return value.map(withNumbers);
  if (!isObject(value)) return value;
  return Object.fromEntries(Object.entries(value).map(([key, inner]) => [key, withNumbers(inner)]));
}

function numberFor(text: string): unknown {
  if (text === "flat") return Infinity;
  const mm = lengthIn(text);
  return typeof mm === "number" ? mm : text;
}
