/** Where things stand in a text. */
import { type JSONPath, visit } from "jsonc-parser";
import type { DesignIssue } from "../errors/errors.js";
import { join } from "../errors/unknown.js";
import { elementAt } from "../geometry/element-at.js";

/** A place in a text, counted from 1; columns in UTF-16 units, as editors count them. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

/** A problem of a design file, with its place. */
export interface FileIssue extends DesignIssue, Place {}

/** Where a text begins. */
export const START: Place = { line: 1, column: 1 };

/** The issue with its place, in its message too. */
export function placed(issue: DesignIssue, { line, column }: Place): FileIssue {
  const message = `${issue.message} (line ${line}, column ${column})`;
  return { ...issue, message, line, column };
}

/** The place of a line and a column counted from 0. */
export function placeFrom0(line: number, column: number): Place {
  return { line: line + 1, column: column + 1 };
}

/** The place of each character. Lines end as in an editor: with a line feed, a return, or both. */
export function characterPlaces(text: string): (at: number) => Place {
  const ends = [...text.matchAll(/\r\n|\r|\n/g)];
  const starts = [0, ...ends.map(({ 0: end, index }) => index + end.length)];
  return (at) => {
    const line = countUpTo(at, starts);
    return { line, column: at - elementAt(starts, line - 1) + 1 };
  };
}

/** How many of the rising numbers are at most `most`. */
function countUpTo(most: number, numbers: readonly number[]): number {
  let low = 0;
  let high = numbers.length;
  while (low < high) {
    const middle = (low + high) >> 1;
    if (elementAt(numbers, middle) <= most) low = middle + 1;
    else high = middle;
  }
  return low;
}

/**
 * The place of each path of a JSON text: where a field's name stands, or where a list's item begins. A path
 * that is not there has the place of the object that it is missing from.
 */
export function pathPlaces(text: string): (path: string) => Place {
  const places = new Map<string, Place>();
  const note = (path: string, line: number, column: number) =>
    places.set(path, placeFrom0(line, column));
  const noteItem = (line: number, column: number, path: JSONPath) => {
    const last = path.at(-1);
    if (last === undefined || typeof last === "number") note(path.join("."), line, column);
  };
  visit(text, {
    onObjectBegin: (_start, _length, line, column, path) => {
      noteItem(line, column, path());
    },
    onArrayBegin: (_start, _length, line, column, path) => {
      noteItem(line, column, path());
    },
    onLiteralValue: (_value, _start, _length, line, column, path) => {
      noteItem(line, column, path());
    },
    onObjectProperty: (key, _start, _length, line, column, path) => {
      note(join(path().join("."), key), line, column);
    },
  });
  return (path) => nearestPlace(path, places);
}

function nearestPlace(path: string, places: ReadonlyMap<string, Place>): Place {
  for (let at = path; at !== ""; at = at.slice(0, Math.max(0, at.lastIndexOf(".")))) {
    const place = places.get(at);
    if (place !== undefined) return place;
  }
  return places.get("") ?? START;
}
