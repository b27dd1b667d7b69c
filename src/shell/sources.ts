/** Where designs come from: files, folders, and lines on standard input. Plain data, which goes to another thread as it is. */
import { createReadStream } from "node:fs";
import { readdir, stat } from "node:fs/promises";
import { join } from "node:path";
import { errorWords } from "./error-words.js";
import { splitLines, upTo } from "./lines.js";
import { MOST_BYTES } from "./text.js";

/** One design that is yet to be read. */
export interface Source {
  /** As it was named on the command line; a folder's file with the folder before it. */
  readonly file: string;
  /** On standard input, counted from 1. */
  readonly line?: number;
  readonly origin: Origin;
}

/** A file that was named, which may be a pipe; one that a folder holds; bytes that came in; or nothing, and why. */
export type Origin =
  | { readonly kind: "named" | "found" }
  | { readonly kind: "bytes"; readonly bytes: Uint8Array }
  | { readonly kind: "none"; readonly why: string };

/** The name of standard input. */
export const STANDARD_INPUT = "-";

/** Every source of the inputs in their order; standard input is one that gives many. */
export async function findSources(inputs: readonly string[], isDeep: boolean): Promise<Source[]> {
  const sources: Source[] = [];
  for (const input of inputs) {
    if (input === STANDARD_INPUT || !(await isDirectory(input))) {
      sources.push({ file: input, origin: { kind: "named" } });
    } else {
      const before = sources.length;
      for await (const source of findIn(input, isDeep)) sources.push(source);
      if (sources.length === before) sources.push(unreadable(input, noneIn(isDeep)));
    }
  }
  return sources;
}

/** The designs of standard input as they come in, those of one piece of it together. Empty lines are none. */
export async function* lineSources(
  input: AsyncIterable<Uint8Array>,
): AsyncGenerator<Source[], void, undefined> {
  let count = 0;
  let line = 0;
  for await (const lines of splitLines(input, MOST_BYTES + 1)) {
    const sources: Source[] = [];
    for (const bytes of lines) {
      line++;
      if (isBlank(bytes)) continue;
      sources.push({ file: STANDARD_INPUT, line, origin: { kind: "bytes", bytes } });
    }
    count += sources.length;
    if (sources.length > 0) yield sources;
  }
  if (count === 0) yield [unreadable(STANDARD_INPUT, "no design on standard input")];
}

/** Reads a source's bytes; of too long a file no more than shows that it is. */
export async function readBytes({ file, origin }: Source): Promise<Uint8Array> {
  if (origin.kind === "bytes") return origin.bytes;
  if (origin.kind === "none") throw new Error(origin.why);
  // whoever named a folder did not ask for a pipe or a device in it, which may have no end
  if (origin.kind === "found" && !(await stat(file)).isFile()) throw new Error("not a file");
  return upTo(createReadStream(file), MOST_BYTES + 1);
}

async function isDirectory(path: string): Promise<boolean> {
  try {
    return (await stat(path)).isDirectory();
  } catch {
    // what is wrong is told when it is read
    return false;
  }
}

/** The folder's designs by name; where `isDeep`, those of the folders in it too, each where it stands. */
async function* findIn(folder: string, isDeep: boolean): AsyncGenerator<Source, void, undefined> {
  try {
    const entries = await readdir(folder, { withFileTypes: true });
    for (const entry of entries.sort((a, b) => (a.name < b.name ? -1 : 1))) {
      const file = join(folder, entry.name);
      if (isDeep && entry.isDirectory()) {
        if (!isPassedOver(entry.name)) yield* findIn(file, isDeep);
      } else if (entry.name.toLowerCase().endsWith(".json")) {
        yield { file, origin: { kind: "found" } };
      }
    }
  } catch (error) {
    yield unreadable(folder, errorWords(error));
  }
}

/** Folders in which nobody keeps a design of his own. */
function isPassedOver(name: string): boolean {
  return name.startsWith(".") || name === "node_modules";
}

function noneIn(isDeep: boolean): string {
  return `no .json file in this folder${isDeep ? " or below it" : ""}`;
}

function unreadable(file: string, why: string): Source {
  return { file, origin: { kind: "none", why } };
}

/** Nothing but spaces; of a line that is too long not all is known. */
function isBlank(bytes: Uint8Array): boolean {
  const isWhole = bytes.length <= MOST_BYTES;
  return isWhole && bytes.every((byte) => byte === 0x20 || byte === 0x09 || byte === 0x0d);
}
