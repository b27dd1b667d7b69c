/** In this process and from src, so that mutants are met: what test/draw/figures.test.ts does with the build. */
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";

const KEPT = new URL("../../docs/pictures/", import.meta.url).pathname;

test("the pictures of the docs", async () => {
  const made = mkdtempSync(join(tmpdir(), "marker-depth-pictures-"));
  const words = process.argv;
  process.argv = [words[0] ?? "", "draw.mjs", made];
  const script = "../../docs/pictures/draw.mjs";
  await import(script);
  process.argv = words;
  const names = readdirSync(KEPT).filter((name) => name.endsWith(".svg"));
  expect(readdirSync(made).sort()).toEqual(names.sort());
  for (const name of names) {
    expect(readFileSync(join(made, name), "utf8")).toBe(readFileSync(join(KEPT, name), "utf8"));
  }
  rmSync(made, { recursive: true });
});
