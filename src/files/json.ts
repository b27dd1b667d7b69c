/**
 * Reads JSON text. The values are of `JSON.parse`; what is wrong with a text, and where, is told by
 * jsonc-parser, which reads on after a mistake.
 */
import {
  createScanner,
  type JSONPath,
  type JSONVisitor,
  printParseErrorCode,
  visit,
} from "jsonc-parser";
import { type DesignIssue, makeIssue } from "../errors/errors.js";
import { join } from "../errors/unknown.js";
import {
  isConfusing,
  isEcho,
  isEvident,
  type Mistake,
  mistakeExpected,
  mistakeStart,
} from "./json-mistakes.js";
import { characterPlaces, type FileIssue, placed, placeFrom0, START } from "./places.js";

/**
 * What keeps the work on a text bounded: a text beyond is refused, with no word on what else is wrong. Of
 * mistakes that make it no JSON, so many are told.
 */
export const FILE_LIMITS = {
  text: { value: 1_000_000, unit: "characters" },
  depth: { value: 32, unit: "levels" },
  keys: { value: 10_000, unit: "keys" },
  mistakes: { value: 100, unit: "mistakes" },
} as const;

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
  if (beyond !== undefined) return noJson([beyond]);
  const isMarked = text.startsWith(BYTE_ORDER_MARK);
  // what stands where stays the same
  const json = isMarked ? ` ${text.slice(1)}` : text;
  const told = toldMistakes(json, mistakesIn(json));
  if (isMarked) return noJson([MARK_ISSUE, ...told]);
  if (told.length > 0) return noJson(told);
  return { value: JSON.parse(json), isJson: true, issues: abusesIn(json) };
}

function noJson(issues: readonly FileIssue[]): JsonText {
  return { value: undefined, isJson: false, issues };
}

const MARK_ISSUE = placed(
  makeIssue("", BYTE_ORDER_MARK, "JSON with no byte order mark; save it as plain UTF-8"),
  START,
);

function beyondLimits(text: string): FileIssue | undefined {
  const { text: size } = FILE_LIMITS;
  if (text.length > size.value) {
    return placed(makeIssue("", text, `a text of at most ${size.value} ${size.unit}`), START);
  }
  const beyond = firstBeyond(text);
  if (beyond === undefined) return undefined;
  const { at, limit } = beyond;
  const expected = `JSON of at most ${limit.value} ${limit.unit}`;
  return placed(makeIssue("", text.charAt(at), expected), characterPlaces(text)(at));
}

/** Where the text goes beyond a limit. Found without recursion, which could run out of stack. */
function firstBeyond(text: string) {
  const scanner = createScanner(text, true);
  let depth = 0;
  let keys = 0;
  while (scanner.getPosition() < text.length) {
    scanner.scan();
    const at = scanner.getTokenOffset();
    const sign = text.charAt(at);
    if (sign === "{" || sign === "[") depth++;
    if (sign === "}" || sign === "]") depth--;
    if (sign === ":") keys++;
    if (depth > FILE_LIMITS.depth.value) return { at, limit: FILE_LIMITS.depth };
    if (keys > FILE_LIMITS.keys.value) return { at, limit: FILE_LIMITS.keys };
  }
  return undefined;
}

/** What makes a text no JSON. */
function mistakesIn(text: string): Mistake[] {
  const mistakes: Mistake[] = [];
  const onError: JSONVisitor["onError"] = (code, start, length) => {
    mistakes.push({ code: printParseErrorCode(code), start, length });
  };
  visit(text, { onError }, { disallowComments: true });
  return mistakes;
}

/** What JSON allows and a design does not: keys that stand twice, numbers beyond any number. */
function abusesIn(text: string): FileIssue[] {
  const issues: FileIssue[] = [];
  const open: Map<string, number>[] = [];
  visit(text, {
    onObjectBegin: () => {
      open.push(new Map());
    },
    onObjectEnd: () => {
      open.pop();
    },
    onObjectProperty: (key, _start, _length, line, column, path) => {
      const first = open.at(-1)?.get(key);
      if (first === undefined) open.at(-1)?.set(key, line + 1);
      else issues.push(placed(repeatedKey(path(), key, first), placeFrom0(line, column)));
    },
    onLiteralValue: (value, start, length, line, column, path) => {
      if (typeof value !== "number" || Number.isFinite(value)) return;
      const issue = makeIssue(path().join("."), text.slice(start, start + length), LARGEST);
      issues.push(placed(issue, placeFrom0(line, column)));
    },
  });
  return issues;
}

const LARGEST = `a number of at most ${Number.MAX_VALUE.toPrecision(2)}`;

function repeatedKey(path: JSONPath, key: string, first: number): DesignIssue {
  return makeIssue(join(path.join("."), key), key, `each key once; it is on line ${first} too`);
}

/** The first mistake of each line, without those that may be consequences of others. */
function toldMistakes(text: string, mistakes: readonly Mistake[]): FileIssue[] {
  const told: FileIssue[] = [];
  const placeOf = characterPlaces(text);
  for (const mistake of sureMistakes(text, mistakes)) {
    if (told.length === FILE_LIMITS.mistakes.value) break;
    const { start, length } = mistakeStart(text, mistake);
    const place = placeOf(start);
    if (place.line === told.at(-1)?.line) continue;
    const received = length === 0 ? "the end of the text" : text.slice(start, start + length);
    told.push(placed(makeIssue("", received, `JSON with ${mistake.expected}`), place));
  }
  return told;
}

/** The mistakes that are no mere consequences of others, with what was expected. */
function* sureMistakes(text: string, mistakes: readonly Mistake[]) {
  let isConfused = false;
  for (const [i, mistake] of mistakes.entries()) {
    const next = mistakes[i + 1];
    const isSure = isEvident(text, mistake) || !isConfused;
    isConfused ||= isConfusing(mistake, next);
    if (!isSure || isEcho(mistake, mistakes[i - 1])) continue;
    yield { ...mistake, expected: mistakeExpected(text, mistake, next) };
  }
}
