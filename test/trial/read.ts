/** Reads a trial's file; what is wrong with it is told with its line. */

import type { ErrorObject } from "ajv/dist/2020.js";
import {
  findNodeAtLocation,
  type Node,
  type ParseError,
  parseTree,
  printParseErrorCode,
} from "jsonc-parser";
import { type FileIssue, readDesign } from "../../src/files/index.js";
import { type Design, DesignError } from "../../src/index.js";
import { isTrial, type TrialFile } from "./format.js";

/** A trial, its design in mm. */
export interface Trial extends Omit<TrialFile, "design"> {
  readonly design: Design | undefined;
}

/** A file that cannot be read; the message names each line. */
export class TrialError extends Error {
  override readonly name = "TrialError";
}

/** Reads a text; throws a `TrialError`. */
export function readTrial(file: string, text: string): Trial {
  const mistakes: ParseError[] = [];
  const root = parseTree(text, mistakes, { disallowComments: true });
  const told = mistakes.map(({ error, offset }) => {
    return `${file}:${lineOf(text, offset)}: no JSON: ${printParseErrorCode(error)}`;
  });
  if (root === undefined || told.length > 0) {
    throw new TrialError(told.join("\n") || `${file}:1: no JSON: the text is empty`);
  }
  const trial: unknown = JSON.parse(text);
  if (!isTrial(trial)) {
    const [error] = isTrial.errors ?? [];
    throw new TrialError(shapeWords(file, text, root, error as ErrorObject));
  }
  return { ...trial, design: designIn(file, text, findNodeAtLocation(root, ["design"])) };
}

function shapeWords(file: string, text: string, root: Node, error: ErrorObject): string {
  const { instancePath, params, message } = error;
  const keys = [...instancePath.split("/").slice(1), ...unknownKey(params)];
  const place = nearestNode(
    root,
    keys.map((key) => (/^\d+$/.test(key) ? Number(key) : key)),
  );
  return `${file}:${lineOf(text, place.offset)}: ${keys.join(".") || "trial"}: ${message}`;
}

function unknownKey({ additionalProperty }: Record<string, unknown>): string[] {
  return typeof additionalProperty === "string" ? [additionalProperty] : [];
}

/** What stands at a path, or at the part of it that is there. */
function nearestNode(root: Node, keys: readonly (string | number)[]): Node {
  for (let length = keys.length; length > 0; length--) {
    const node = findNodeAtLocation(root, keys.slice(0, length));
    if (node) return node;
  }
  return root;
}

/** The design, read as a design file is; its lines are those of the whole file. */
function designIn(file: string, text: string, node: Node | undefined): Design | undefined {
  if (node === undefined) return undefined;
  const above = lineOf(text, node.offset) - 1;
  try {
    return readDesign(text.slice(node.offset, node.offset + node.length));
  } catch (error) {
    if (!(error instanceof DesignError)) throw error;
    const lines = (error.issues as readonly FileIssue[]).map(({ path, expected, line }) => {
      return `${file}:${above + line}: design.${path}: expected ${expected}`;
    });
    throw new TrialError(lines.join("\n"));
  }
}

function lineOf(text: string, offset: number): number {
  return text.slice(0, offset).split("\n").length;
}
