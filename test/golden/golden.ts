/** Texts and drawings as they are kept in this folder. `UPDATE=1` writes them anew; the difference is to be read. */
import { existsSync, mkdirSync, readFileSync, writeFileSync } from "node:fs";
import { dirname } from "node:path";
import { expect } from "vitest";

/** Holds a text against the file of that name. */
export function golden(name: string, text: string): void {
  const file = new URL(name, import.meta.url).pathname;
  if (process.env.UPDATE === "1") {
    mkdirSync(dirname(file), { recursive: true });
    writeFileSync(file, text);
  }
  expect(existsSync(file), `${name} is not kept yet: UPDATE=1 writes it`).toBe(true);
  expect(text).toBe(readFileSync(file, "utf8"));
}
