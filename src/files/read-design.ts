/** Reads a design file. */
import type { Design } from "../design/design.js";
import type { Neck } from "../drilling/work.js";
import { DesignError, type DesignIssue, makeIssue } from "../errors/errors.js";
import { readJson } from "./json.js";
import { type FileIssue, pathPlaces, placed, START } from "./places.js";
import { readWritten } from "./read-whole.js";

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
 * // an invented neck
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
  return readBuilt(text).design;
}

/** The same, with the neck that was built to see that nothing is wrong with it. */
export function readBuilt(text: string): { readonly design: Design; readonly neck: Neck } {
  if (typeof text !== "string") {
    throw new DesignError([placed(makeIssue("", text, "a text of JSON"), START)]);
  }
  const json = readJson(text);
  if (!json.isJson) throw new DesignError(json.issues);
  const { design, neck, issues } = readWritten(json.value);
  const found = placeAll(text, json.issues, issues);
  if (design === undefined || neck === undefined || found.length > 0) throw new DesignError(found);
  return { design, neck };
}

/** The issues in the order of the text. Where the text itself has an issue at a path, no other is told. */
function placeAll(
  text: string,
  ofText: readonly FileIssue[],
  ofDesign: readonly DesignIssue[],
): FileIssue[] {
  if (ofText.length + ofDesign.length === 0) return [];
  const placeOf = pathPlaces(text);
  const told = new Set(ofText.map(({ path }) => path));
  const rest = ofDesign.filter(({ path }) => !told.has(path));
  return [...ofText, ...rest.map((issue) => placed(issue, placeOf(issue.path)))].sort(
    (a, b) => a.line - b.line || a.column - b.column,
  );
}
