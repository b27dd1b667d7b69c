/** The command line, read by Node's own parser. */
import { parseArgs } from "node:util";
import { didYouMean } from "../design/read-fields.js";
import { nearestName } from "../text/nearest-name.js";

const OPTIONS = {
  json: { type: "boolean" },
  csv: { type: "boolean" },
  inches: { type: "boolean" },
  svg: { type: "string" },
  help: { type: "boolean" },
  version: { type: "boolean" },
} as const;

/** How the designs are printed. */
export type Format = "cards" | "json" | "csv";

/** What the command line asks for. */
export interface Options {
  readonly ask: "check" | "help" | "version";
  readonly inputs: readonly string[];
  readonly format: Format;
  readonly unit: "mm" | "in";
  /** The folder for pictures. */
  readonly svg?: string;
}

/** A mistake in the command line. */
export class UsageError extends Error {
  override readonly name = "UsageError";
}

/** Reads the words after the command's name. Throws a `UsageError`. */
export function readOptions(words: readonly string[]): Options {
  const { values, positionals } = parsed(words);
  const { json = false, csv = false, inches = false, help, version, svg } = values;
  const format = json ? "json" : csv ? "csv" : "cards";
  const unit = inches ? "in" : "mm";
  const options = {
    inputs: positionals,
    format,
    unit,
    ...(svg === undefined ? {} : { svg }),
  } as const;
  if (help || version) return { ask: help ? "help" : "version", ...options };
  if (json && csv) throw new UsageError("--json and --csv exclude each other");
  if (json && inches) throw new UsageError("--json is in mm: --inches is for cards and --csv");
  if (svg === "") throw new UsageError("--svg wants a folder");
  if (positionals.length === 0) throw new UsageError("no FILE is named");
  if (positionals.filter((input) => input === "-").length > 1) {
    throw new UsageError("standard input (-) can be read once");
  }
  return { ask: "check", ...options };
}

function parsed(words: readonly string[]) {
  try {
    return parseArgs({ args: [...words], options: OPTIONS, allowPositionals: true });
  } catch (error) {
    throw new UsageError(mistakeIn(error));
  }
}

/** The parser's first sentence, with the option that may be meant. */
function mistakeIn(error: unknown): string {
  const [sentence = ""] = (error instanceof Error ? error.message : String(error)).split(/\. |\n/);
  const [, unknown] = /^Unknown option '--(.*)'/.exec(sentence) ?? [];
  if (unknown === undefined) return sentence;
  const near = nearestName(unknown, Object.keys(OPTIONS));
  return sentence + didYouMean(near === undefined ? undefined : `--${near}`);
}
