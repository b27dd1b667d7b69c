/** The pictures of the docs are what their script makes now, from the built package, and what the source draws. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { drawBoard } from "../../src/draw/index.js";
import { checkDesign } from "../../src/index.js";

const ROOT = new URL("../../", import.meta.url).pathname;
const made = mkdtempSync(join(tmpdir(), "marker-depth-"));
afterAll(() => rmSync(made, { recursive: true, force: true }));

function picturesIn(folder: string): [string, string][] {
  const files = readdirSync(folder).filter((file) => file.endsWith(".svg"));
  return files.sort().map((file) => [file, readFileSync(join(folder, file), "utf8")]);
}

test("the script makes what is kept", () => {
  const options = { cwd: ROOT, encoding: "utf8" } as const;
  const run = spawnSync(process.execPath, ["docs/pictures/draw.mjs", made], options);
  expect(run).toMatchObject({ stderr: "", status: 0 });
  const kept = picturesIn(join(ROOT, "docs/pictures"));
  expect(kept.length).toBeGreaterThanOrEqual(17);
  expect(picturesIn(made)).toEqual(kept);
  const design = JSON.parse(readFileSync(join(ROOT, "docs/examples/larch-22.json"), "utf8"));
  expect(new Map(kept).get("larch-22-board.svg")).toBe(drawBoard(checkDesign(design)));
});
