/** The guide: every block of code runs and says what the page says, every link leads somewhere. */
import { existsSync, readdirSync } from "node:fs";
import { describe, expect, test } from "vitest";
import { drillCard } from "../../src/card/index.js";
import { readDesign } from "../../src/files/index.js";
import { checkDesign } from "../../src/index.js";
import { fencedBlocks, fileText, headings, linksIn, runPage } from "./blocks.js";

/** How many values and printed lines each page shows; a page that lost its checks must fail. */
const PAGES: Readonly<Record<string, { readonly checks: number; readonly printed: number }>> = {
  "docs/README.md": { checks: 0, printed: 0 },
  "docs/chance.md": { checks: 9, printed: 0 },
  "docs/choose-a-radius.md": { checks: 6, printed: 4 },
  "docs/design-file.md": { checks: 1, printed: 0 },
  "docs/drill.md": { checks: 10, printed: 1 },
  "docs/examples/README.md": { checks: 0, printed: 0 },
  "docs/findings.md": { checks: 3, printed: 0 },
  "docs/fix-a-hole.md": { checks: 5, printed: 1 },
  "docs/formulas.md": { checks: 9, printed: 0 },
  "docs/measure.md": { checks: 24, printed: 1 },
  "docs/packages.md": { checks: 0, printed: 0 },
  "docs/slots.md": { checks: 6, printed: 0 },
  "docs/sources.md": { checks: 0, printed: 0 },
  "docs/start.md": { checks: 0, printed: 0 },
};
/** The block of a page that a script writes from the first example's card; it has a test of its own. */
const CARD_PAGE = "docs/start.md";
const ALL = [
  ...["README.md", "DEVELOPERS.md", "CHANGELOG.md"],
  ...readdirSync(new URL("../../docs/", import.meta.url))
    .filter((file) => file.endsWith(".md"))
    .map((file) => `docs/${file}`),
  "docs/examples/README.md",
];

describe.each(Object.entries(PAGES))("%s", (page, { checks, printed }) => {
  test("its JavaScript runs, and its values are right", async () => {
    const run = await runPage(fencedBlocks(page, "js"));
    for (const { actual, expected } of run.checks) expect(actual).toEqual(expected);
    expect(run.checks).toHaveLength(checks);
    expect(run.printed).toHaveLength(printed);
    // what a page says is printed is what was printed
    for (const { text } of page === CARD_PAGE ? [] : fencedBlocks(page, "text")) {
      expect(run.printed.join("\n")).toContain(text.trimEnd());
    }
  });

  test("its design files are read and checked", () => {
    for (const { text, where } of fencedBlocks(page, "json")) {
      expect(checkDesign(readDesign(text)).holes.length, where).toBeGreaterThan(0);
    }
  });

  test("every block of it is of a kind that is tried", () => {
    const fences = fileText(page).match(/^```/gm) ?? [];
    const tried = ["js", "text", "json", "sh"].flatMap((kind) => fencedBlocks(page, kind));
    expect(fences).toHaveLength(2 * tried.length);
  });
});

test("docs/start.md's design is the first example, and its card begins as that one's does", () => {
  const example = JSON.parse(fileText("docs/examples/acacia-22.json"));
  const [file, ...more] = fencedBlocks(CARD_PAGE, "json");
  expect(more).toEqual([]);
  expect(readDesign(file?.text ?? "")).toEqual(example);
  const [card] = fencedBlocks(CARD_PAGE, "text");
  expect(card?.text.split("\n").length).toBeGreaterThan(20);
  const whole = drillCard(checkDesign(example), { design: example });
  expect(whole.startsWith(card?.text.trimEnd() ?? "no card")).toBe(true);
});

test("the guide's pages are all tried", () => {
  const elsewhere = ["docs/batch.md", "docs/recipes.md", "docs/trust.md"];
  const here = ALL.filter((page) => page.startsWith("docs/") && !elsewhere.includes(page));
  expect(Object.keys(PAGES)).toEqual(here.sort());
});

test.each(ALL)("%s: its links lead to files, and to headings in them", (page) => {
  for (const { path, heading } of linksIn(page)) {
    expect(existsSync(new URL(`../../${path}`, import.meta.url)), path).toBe(true);
    if (heading) expect(headings(path), `${path}#${heading}`).toContain(heading);
  }
});

test("there are links at all", () => {
  expect(ALL.flatMap(linksIn).length).toBeGreaterThan(25);
});
