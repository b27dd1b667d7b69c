/** In this process and from src, so that mutants are met: what test/draw/figures.test.ts does with the build. */
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";
import { KEPT, picturesIn } from "../draw/kept.js";

test("the pictures of the docs", async () => {
  const made = mkdtempSync(join(tmpdir(), "marker-depth-pictures-"));
  const words = process.argv;
  process.argv = [words[0] ?? "", "draw.mjs", made];
  const script = "../../docs/pictures/draw.mjs";
  await import(script);
  process.argv = words;
  expect([...picturesIn(made)]).toEqual([...picturesIn(KEPT)]);
  rmSync(made, { recursive: true });
});
