/** The scripts of the guide, run as a reader runs them: against the built package. */
import { spawnSync } from "node:child_process";
import { expect, test } from "vitest";
import { checkDesign } from "../../src/index.js";
import { SCRIPTS } from "./scripts.js";

const root = new URL("../../", import.meta.url);

/** What a script prints, line by line. */
function printed(script: string): string[] {
  const { status, stdout, stderr } = spawnSync(process.execPath, [script], {
    cwd: root,
    encoding: "utf8",
  });
  expect(stderr).toBe("");
  expect(status).toBe(0);
  return stdout.trim().split("\n");
}

test("ranges in worker threads have the same bytes as the whole", () => {
  expect(printed(SCRIPTS[0])).toEqual([
    "min: 36000 bytes, the same",
    "max: 36000 bytes, the same",
    "minHole: 18000 bytes, the same",
    "maxHole: 18000 bytes, the same",
    "settings: 18000 bytes, the same",
  ]);
});

test("what DuckDB reads from the Parquet file is what the check says of each design", () => {
  const lines = printed(SCRIPTS[1]);
  expect(lines).toHaveLength(4);
  const radii = [184, 254, 305, 406];
  expect(lines).toEqual(radii.map(lineFor));
});

/** The same answer, one check for each board. */
function lineFor(radius: number): string {
  const works = Array.from({ length: 20 }, (_, i) => (30 + i) / 10).filter((thickness) => {
    const report = checkDesign({
      scale: { length: 648, frets: 22 },
      board: { length: 482, width: { nut: 43, end: 57 }, thickness },
      radius,
      markers: [
        { frets: [3, 5, 7, 9, 15, 17, 19, 21], diameter: 6.35 },
        { frets: [12], diameter: 6, arrangement: "double" },
      ],
    });
    return report.stops.common !== null;
  });
  return `radius ${radius}: ${works[0]} mm or more, ${works.length} of 20 boards`;
}
