/** The pictures of the docs, which were looked at. */
import { readdirSync, readFileSync } from "node:fs";
import { join } from "node:path";

/** Their folder. */
export const KEPT = new URL("../../docs/pictures/", import.meta.url).pathname;

/** The pictures of a folder by their file's name, in order. */
export function picturesIn(folder: string): Map<string, string> {
  const files = readdirSync(folder)
    .filter((file) => file.endsWith(".svg"))
    .sort();
  return new Map(files.map((file) => [file, readFileSync(join(folder, file), "utf8")]));
}
