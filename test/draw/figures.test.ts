/** The pictures of the docs are what their script makes now, from the built package. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { drawSection } from "../../src/draw/index.js";
import { reportOf } from "./gallery.js";

const ROOT = new URL("../../", import.meta.url).pathname;
const KEPT = join(ROOT, "docs/pictures");
const made = mkdtempSync(join(tmpdir(), "marker-depth-"));

afterAll(() => rmSync(made, { recursive: true, force: true }));

function picturesIn(folder: string): Map<string, string> {
  const files = readdirSync(folder)
    .filter((file) => file.endsWith(".svg"))
    .sort();
  return new Map(files.map((file) => [file, readFileSync(join(folder, file), "utf8")]));
}

test("the script makes what is kept", () => {
  const { status, stderr } = spawnSync(process.execPath, ["docs/pictures/draw.mjs", made], {
    cwd: ROOT,
    encoding: "utf8",
  });
  expect(stderr).toBe("");
  expect(status).toBe(0);
  const kept = picturesIn(KEPT);
  expect(kept.size).toBeGreaterThanOrEqual(17);
  expect([...picturesIn(made)]).toEqual([...kept]);
});

test("they are what the source draws", () => {
  const report = reportOf("larch-22");
  const hole = report.holes.findIndex(({ fret, side }) => fret === 12 && side === "bass");
  expect(picturesIn(KEPT).get("larch-22-section.svg")).toBe(drawSection(report, hole));
});
