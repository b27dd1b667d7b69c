import { expect, test } from "vitest";
import * as card from "../../src/card/index.js";
import * as core from "../../src/index.js";
import { fencedBlocks, fileText, runPage } from "./blocks.js";

const PAGES = ["README.md", "DEVELOPERS.md", "CHANGELOG.md"];
const scripts = Object.keys(JSON.parse(fileText("package.json")).scripts);

test("the README's JavaScript runs", async () => {
  const blocks = fencedBlocks("README.md", "js");
  expect(blocks.length).toBeGreaterThan(0);
  const { printed } = await runPage(blocks);
  expect(printed.join("\n")).toMatch(/^Set the stop to \d+\.\d\d mm from the point's touch\.$/m);
});

test("the README's card is what the example prints", () => {
  const design = JSON.parse(fileText("docs/examples/larch-22.json"));
  const [block] = fencedBlocks("README.md", "text");
  expect(block?.text.length).toBeGreaterThan(500);
  expect(card.drillCard(core.checkDesign(design)).startsWith(block?.text.trimEnd() ?? "")).toBe(
    true,
  );
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
test("the README's table of the twelfth and the twenty-fourth fret", () => {
  const report = core.checkDesign({
    scale: { length: 648, frets: 24 },
    board: { length: 500, width: { nut: 43, end: 58 }, thickness: 6 },
    radius: 254,
    markers: [
      { frets: [3, 5, 7, 9, 15, 17, 19, 21], diameter: 6.35 },
      { frets: [12, 24], diameter: 6.35, arrangement: "double" },
    ],
  });
  const rows = report.holes
    .filter(({ side }) => side === "bass")
    .map(({ fret, offset, removal, window }) => {
      const [aside, outer, min] = [
        [-offset, 2],
        [removal.outer, 3],
        [window.min, 3],
      ].map(([value = 0, digits]) => `${value.toFixed(digits)} mm`);
      return `| ${fret} | ${aside} | ${outer} | ${min} |`;
    });
  expect(rows).toHaveLength(2);
  for (const row of rows) expect(fileText("README.md")).toContain(row);
  expect(report.holes[report.stops.common?.minHole ?? 0]?.fret).toBe(24);
});
