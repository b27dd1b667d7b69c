/** In this process and from src, so that mutants are met: what test/draw/figures.test.ts does with the build. */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";

const KEPT = new URL("../../docs/pictures/", import.meta.url).pathname;

function picturesIn(folder: string): [string, string][] {
  const files = readdirSync(folder).filter((file) => file.endsWith(".svg"));
  return files.sort().map((file) => [file, readFileSync(join(folder, file), "utf8")]);
}

test("the pictures of the docs", async () => {
  const made = mkdtempSync(join(tmpdir(), "marker-depth-pictures-"));
  const words = process.argv;
  process.argv = [words[0] ?? "", "draw.mjs", made];
  const script = "../../docs/pictures/draw.mjs";
  try {
    await import(script);
    expect(picturesIn(made)).toEqual(picturesIn(KEPT));
  } finally {
    process.argv = words;
    rmSync(made, { recursive: true });
  }
});
