/**
 * Reads JSON text, with the place of everything in it. The values are of `JSON.parse`; what is wrong with a
 * text, and where things stand, is told by jsonc-parser, which reads on after an error.
 */
import { createScanner, type JSONPath, printParseErrorCode, visit } from "jsonc-parser";
import { type DesignIssue, issueOf } from "../errors.js";
import { join } from "../read/fields.js";
import {
  isConfusing,
  isEvident,
  type Mistake,
  mistakeExpected,
  mistakeStart,
} from "./json-mistakes.js";

/** What keeps the work on a text bounded; a text beyond is refused. */
export const FILE_LIMITS = {
  text: { value: 1_000_000, unit: "characters" },
  depth: { value: 32, unit: "levels" },
} as const;

/** A place in a text, counted from 1; columns in UTF-16 units, as editors count them. */
export interface Place {
  readonly line: number;
  readonly column: number;
}

/** A problem of a design file, with its place. */
export interface FileIssue extends DesignIssue, Place {}

/** A text that was read: its value, where it is JSON at all, and what is wrong with it. */
export interface JsonText {
  readonly value: unknown;
  readonly isJson: boolean;
  readonly issues: readonly FileIssue[];
}

const BYTE_ORDER_MARK = "\uFEFF";

/** Reads a text. Keys that stand twice are told, and so are numbers that are too large for a number. */
export function readJson(text: string): JsonText {
  const beyond = beyondLimits(text);
  if (beyond !== undefined) return { value: undefined, isJson: false, issues: [beyond] };
  const isMarked = text.startsWith(BYTE_ORDER_MARK);
  const json = isMarked ? ` ${text.slice(1)}` : text;
  const { mistakes, issues } = inspect(json);
  const mark = isMarked ? [markIssue()] : [];
  const faults = [...mark, ...toldMistakes(json, mistakes)];
  if (faults.length > 0) return { value: undefined, isJson: false, issues: faults };
  return { value: JSON.parse(json), isJson: true, issues };
}

/** The issue with its place, in its message too. */
export function placed(issue: DesignIssue, { line, column }: Place): FileIssue {
  const message = `${issue.message} (line ${line}, column ${column})`;
  return { ...issue, message, line, column };
}

/**
 * The place of each path of a JSON text: where a field's name stands, or where a list's item begins. A path
 * that is not there has the place of the object that it is missing from.
 */
export function placesIn(text: string): (path: string) => Place {
  const places = new Map<string, Place>();
  const note = (path: string, line: number, column: number) =>
    places.set(path, { line: line + 1, column: column + 1 });
  const noteItem = (line: number, column: number, path: JSONPath) => {
    const last = path.at(-1);
    if (last === undefined || typeof last === "number") note(path.join("."), line, column);
  };
  visit(text, {
    onObjectBegin: (_start, _length, line, column, path) => noteItem(line, column, path()),
    onArrayBegin: (_start, _length, line, column, path) => noteItem(line, column, path()),
    onLiteralValue: (_value, _start, _length, line, column, path) => noteItem(line, column, path()),
    onObjectProperty: (key, _start, _length, line, column, path) =>
      note(join(path().join("."), key), line, column),
  });
  return (path) => nearestPlace(path, places);
}

function nearestPlace(path: string, places: ReadonlyMap<string, Place>): Place {
  for (let at = path; at !== ""; at = at.slice(0, Math.max(0, at.lastIndexOf(".")))) {
    const place = places.get(at);
    if (place !== undefined) return place;
  }
  return places.get("") ?? { line: 1, column: 1 };
}

function beyondLimits(text: string): FileIssue | undefined {
  const { text: most, depth } = FILE_LIMITS;
  if (text.length > most.value) {
    const issue = issueOf("", text, `a text of at most ${most.value} ${most.unit}`);
    return placed(issue, { line: 1, column: 1 });
  }
  const start = tooDeepAt(text, depth.value);
  if (start === undefined) return undefined;
  const issue = issueOf("", text[start], `JSON of at most ${depth.value} ${depth.unit}`);
  return placed(issue, placeAt(text, start));
}

/** Where the text goes beyond so many levels. Found without recursion, which could run out of stack. */
function tooDeepAt(text: string, most: number): number | undefined {
  const scanner = createScanner(text, true);
  let depth = 0;
  while (scanner.getPosition() < text.length) {
    scanner.scan();
    const sign = text[scanner.getTokenOffset()];
    if (sign === "{" || sign === "[") depth++;
    if (sign === "}" || sign === "]") depth--;
    if (depth > most) return scanner.getTokenOffset();
  }
  return undefined;
}

/** What is wrong with a text: mistakes that make it no JSON, and issues of what it says. */
function inspect(text: string) {
  const mistakes: Mistake[] = [];
  const issues: FileIssue[] = [];
  const open: Map<string, number>[] = [];
  visit(
    text,
    {
      onError: (code, start, length) => {
        mistakes.push({ code: printParseErrorCode(code), start, length });
      },
      onObjectBegin: () => {
        open.push(new Map());
      },
      onObjectEnd: () => {
        open.pop();
      },
      onObjectProperty: (key, _start, _length, line, column, path) => {
        const first = open.at(-1)?.get(key);
        const place = { line: line + 1, column: column + 1 };
        if (first === undefined) open.at(-1)?.set(key, place.line);
        else issues.push(repeatedKey(join(path().join("."), key), key, first, place));
      },
      onLiteralValue: (value, start, length, line, column, path) => {
        if (typeof value !== "number" || Number.isFinite(value)) return;
        const issue = issueOf(path().join("."), text.slice(start, start + length), LARGEST);
        issues.push(placed(issue, { line: line + 1, column: column + 1 }));
      },
    },
    { disallowComments: true },
  );
  return { mistakes, issues };
}

const LARGEST = `a number of at most ${Number.MAX_VALUE.toPrecision(2)}`;

function repeatedKey(path: string, key: string, first: number, place: Place): FileIssue {
  return placed(issueOf(path, key, `each key once; it is on line ${first} too`), place);
}

function markIssue(): FileIssue {
  const expected = "JSON with no byte order mark; save it as plain UTF-8";
  return placed(issueOf("", BYTE_ORDER_MARK, expected), { line: 1, column: 1 });
}

/** The first mistake of each line, without those that may be consequences of others. */
function toldMistakes(text: string, mistakes: readonly Mistake[]): FileIssue[] {
  const told: FileIssue[] = [];
  let isConfused = false;
  for (const [i, mistake] of mistakes.entries()) {
    const next = mistakes[i + 1];
    const isTold = isEvident(text, mistake) || !isConfused;
    isConfused ||= isConfusing(mistake, next);
    const issue = mistakeIssue(text, mistake, next);
    if (isTold && issue.line !== told.at(-1)?.line) told.push(issue);
  }
  return told;
}

function mistakeIssue(text: string, mistake: Mistake, next: Mistake | undefined): FileIssue {
  const { start, length } = mistakeStart(text, mistake);
  const received = length === 0 ? "the end of the text" : text.slice(start, start + length);
  const expected = `JSON with ${mistakeExpected(text, mistake, next)}`;
  return placed(issueOf("", received, expected), placeAt(text, start));
}

/** The place of a character. Lines end as in an editor: with a line feed, a return, or both. */
function placeAt(text: string, start: number): Place {
  const lines = text.slice(0, start).split(/\r\n|\r|\n/);
  return { line: lines.length, column: (lines.at(-1)?.length ?? 0) + 1 };
}
