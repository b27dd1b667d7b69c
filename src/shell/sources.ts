/** Where designs come from: files, folders, and lines on standard input. */
import { createReadStream } from "node:fs";
import { readdir, stat } from "node:fs/promises";
import { join } from "node:path";
import { linesOf, upTo } from "./lines.js";
import { MOST_BYTES } from "./text.js";

/** One design that is yet to be read. */
export interface Source {
  /** As it was named on the command line; a folder's file with the folder before it. */
  readonly file: string;
  /** On standard input, counted from 1. */
  readonly line?: number;
  readonly read: () => Promise<Uint8Array>;
}

/** The name of standard input. */
export const STANDARD_INPUT = "-";

/** Every source of the inputs in their order; standard input is one that gives many. */
export async function sourcesOf(inputs: readonly string[]): Promise<Source[]> {
  const sources: Source[] = [];
  for (const input of inputs) {
    const isFolder = input !== STANDARD_INPUT && (await isDirectory(input));
    sources.push(...(isFolder ? await filesIn(input) : [fileSource(input)]));
  }
  return sources;
}

/** The designs of standard input, as they come in. Empty lines are none. */
export async function* lineSources(
  input: AsyncIterable<Uint8Array>,
): AsyncGenerator<Source, void, undefined> {
  let count = 0;
  let line = 0;
  for await (const bytes of linesOf(input, MOST_BYTES + 1)) {
    line++;
    if (isBlank(bytes)) continue;
    count++;
    yield { file: STANDARD_INPUT, line, read: async () => bytes };
  }
  if (count === 0) yield failing(STANDARD_INPUT, "no design on standard input");
}

async function isDirectory(path: string): Promise<boolean> {
  try {
    return (await stat(path)).isDirectory();
  } catch {
    // what is wrong is told when it is read
    return false;
  }
}

async function filesIn(folder: string): Promise<Source[]> {
  try {
    const names = (await readdir(folder)).filter((name) => name.toLowerCase().endsWith(".json"));
    if (names.length === 0) return [failing(folder, "no .json file in this folder")];
    return names.sort().map((name) => foundSource(join(folder, name)));
  } catch (error) {
    return [{ file: folder, read: () => Promise.reject(error) }];
  }
}

/** A file, which may be a pipe, whose bytes are read once for all designs. */
export function readOnce(file: string): Source {
  let bytes: Promise<Uint8Array> | undefined;
  const { read } = fileSource(file);
  return {
    file,
    read: () => {
      bytes ??= read();
      return bytes;
    },
  };
}

function fileSource(file: string): Source {
  return { file, read: () => upTo(createReadStream(file), MOST_BYTES + 1) };
}

/** A file that a folder holds: whoever named the folder did not ask for a pipe or a device, which may have no end. */
function foundSource(file: string): Source {
  const read = async () => {
    if (!(await stat(file)).isFile()) throw new Error("not a file");
    return fileSource(file).read();
  };
  return { file, read };
}

function failing(file: string, message: string): Source {
  return { file, read: () => Promise.reject(new Error(message)) };
}

/** Nothing but spaces; of a line that is too long not all is known. */
function isBlank(bytes: Uint8Array): boolean {
  const isWhole = bytes.length <= MOST_BYTES;
  return isWhole && bytes.every((byte) => byte === 0x20 || byte === 0x09 || byte === 0x0d);
}
