/** The pictures of the docs are what their script makes now, from the built package. */
import { spawnSync } from "node:child_process";
import { mkdtempSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { drawSection } from "../../src/draw/index.js";
import { reportOf } from "./gallery.js";
import { KEPT, picturesIn } from "./kept.js";

const ROOT = new URL("../../", import.meta.url).pathname;
const made = mkdtempSync(join(tmpdir(), "marker-depth-"));

afterAll(() => rmSync(made, { recursive: true, force: true }));

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
