import { expect, test } from "vitest";
import type { Design } from "../../src/index.js";
import * as core from "../../src/index.js";
import { fencedBlocks, fileText, runPage } from "./blocks.js";

const PAGES = ["README.md", "DEVELOPERS.md", "CHANGELOG.md"];
const scripts = Object.keys(JSON.parse(fileText("package.json")).scripts);

test("the README's example runs as it stands, and prints what the page says", async () => {
  const [block, ...more] = fencedBlocks("README.md", "js");
  expect(more).toEqual([]);
  const { printed } = await runPage(block ? [block] : []);
  const [says] = fencedBlocks("README.md", "text");
  expect(printed.length).toBeGreaterThan(1);
  expect(says?.text.trimEnd()).toBe(printed.join("\n"));
});

test("the README's neck is that of the first example", async () => {
  const [block] = fencedBlocks("README.md", "js");
  const [, literal] = /checkDesign\((\{[\s\S]*?\n\})\)/.exec(block?.text ?? "") ?? [];
  const design = new Function(`return ${literal}`)() as Design;
  const example: Design = JSON.parse(fileText("docs/examples/acacia-22.json"));
  for (const key of ["scale", "board", "neck", "radius", "markers", "stop"] as const) {
    expect(design[key], key).toEqual(example[key]);
  }
});

test("the commands that the pages name are scripts of the package", () => {
  const named = PAGES.flatMap((page) => [
    ...fileText(page).matchAll(/npm (?:run )?(start|test|[a-z-]+)/g),
  ]).flatMap(([command, name]) => {
    return command.startsWith("npm run ") || name === "start" || name === "test" ? [name] : [];
  });
  expect(named.length).toBeGreaterThan(3);
  for (const name of named) expect(scripts).toContain(name);
});

// Facts of the trade: common practice, no source. The numbers are our own neck's, held against the check.
test("docs/drill.md's table of the twelfth and the twenty-fourth fret", () => {
  const report = core.checkDesign({
    scale: { length: 648, frets: 24 },
    board: { length: 500, width: { nut: 43, end: 58 }, thickness: 6 },
    radius: 254,
    stop: { from: "wood" },
    markers: [
      { frets: [3, 5, 7, 9, 15, 17, 19, 21], diameter: 6.35 },
      { frets: [12, 24], diameter: 6.35, arrangement: "double" },
    ],
  });
  const rows = report.holes
    .filter(({ side }) => side === "bass")
    .map(({ fret, offset, removal, window }) => {
      const [aside, outer, min] = [
        [-offset, 3],
        [removal.outer, 3],
        [window.min, 3],
      ].map(([value = 0, digits]) => `${value.toFixed(digits)} mm`);
      return `| ${fret} | ${aside} | ${outer} | ${min} |`;
    });
  expect(rows).toHaveLength(2);
  for (const row of rows) expect(fileText("docs/drill.md")).toContain(row);
  expect(report.holes[report.stops.common?.minHole ?? 0]?.fret).toBe(24);
});
