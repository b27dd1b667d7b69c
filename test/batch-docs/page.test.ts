/** The guide to many designs: its code runs, and says what the page says. */
import { existsSync, readdirSync } from "node:fs";
import { expect, test } from "vitest";
import { type Block, fencedBlocks, fileText, runPage } from "../docs/blocks.js";
import { SCRIPTS } from "./scripts.js";

const PAGE = "docs/batch.md";
const blocks = fencedBlocks(PAGE, "js");
const quoted = blocks.filter(isQuoted);

/** A block that stands in a script, word for word; the scripts are run by a test of their own. */
function isQuoted({ text }: Block): boolean {
  return SCRIPTS.some((script) => fileText(script).includes(text));
}

test("every block is run here, or is part of a script that is run", () => {
  const fences = fileText(PAGE).match(/^```/gm) ?? [];
  expect(fences).toHaveLength(2 * blocks.length);
  expect(blocks).toHaveLength(9);
  expect(quoted).toHaveLength(2);
});

test("the page's JavaScript runs and its values are right", async () => {
  const { checks, printed } = await runPage(blocks.filter((block) => !isQuoted(block)));
  expect(checks).toHaveLength(12);
  for (const { actual, expected } of checks) expect(actual).toEqual(expected);
  const names = exampleNames();
  expect(names.length).toBeGreaterThan(2);
  const found = printed.map((line) => /^(\d+) (.+): \d+ findings$/.exec(line)?.slice(1));
  expect(found.slice(0, names.length)).toEqual(names.map((name, i) => [String(i), name]));
  expect(printed.slice(names.length)).toEqual([
    "line 1: 1 setting",
    "line 2: DesignError",
    "line 3: 1 setting",
  ]);
});

function exampleNames(): string[] {
  const files = readdirSync(new URL("../../docs/examples/", import.meta.url)).sort();
  const designs = files.filter((file) => file.endsWith(".json"));
  return designs.map((file) => JSON.parse(fileText(`docs/examples/${file}`)).name);
}

test("its links lead somewhere, and its command is a script of the package", () => {
  const links = [...fileText(PAGE).matchAll(/\]\((?!http|#)([^)]+)\)/g)];
  expect(links.length).toBeGreaterThan(1);
  for (const [, path] of links) {
    expect(existsSync(new URL(`../../docs/${path}`, import.meta.url)), path).toBe(true);
  }
  expect(JSON.parse(fileText("package.json")).scripts).toHaveProperty("bench");
});

test("the table is there, for the goals that are spoken of", () => {
  const [, table = ""] =
    /<!-- bench:begin -->\n([\s\S]*)<!-- bench:end -->/.exec(fileText(PAGE)) ?? [];
  const rows = table.split("\n").filter((line) => line.startsWith("| "));
  for (const name of [
    "`sweep`, columns used again",
    "`checkDesign`",
    "`checkMany`",
    "`marker-depth`",
  ]) {
    expect(rows.filter((row) => row.startsWith(`| ${name} |`)).length, name).toBeGreaterThan(0);
  }
});
