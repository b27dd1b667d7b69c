/** The guide to many designs: its code runs, and says what the page says. */
import { existsSync, mkdtempSync, readdirSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
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

test("every block is run here, or is part of a script that is run, or has a test of its own", () => {
  const fences = fileText(PAGE).match(/^```/gm) ?? [];
  const [shell, python] = ["sh", "python"].map((language) => fencedBlocks(PAGE, language));
  expect([shell?.length, python?.length, blocks.length]).toEqual([1, 1, 10]);
  expect(fences).toHaveLength(2 * (blocks.length + 2));
  expect(quoted).toHaveLength(2);
});

test("the page's JavaScript runs and its values are right", async () => {
  const { checks, printed } = await runPage(blocks.filter((block) => !isQuoted(block)));
  expect(checks).toHaveLength(12);
  for (const { actual, expected } of checks) expect(actual).toEqual(expected);
  const examples = exampleFiles();
  expect(examples.length).toBeGreaterThan(2);
  const found = printed.map((line) => /^(\S+): (.+), \d+ findings$/.exec(line)?.slice(1));
  expect(found.slice(0, examples.length)).toEqual(examples);
  expect(printed.slice(examples.length)).toEqual([
    "line 1: 1 setting",
    expect.stringMatching(
      /^line 2: 1 problem .*\n *design: expected JSON with a \\?"\}.* \(line 1, column 65\)$/,
    ),
    "line 3: 1 setting",
    // 5 less the web, with the assumed point of 1 and the tolerances of stop and thickness, is 3.8
    "0 3.80",
    expect.stringMatching(/^1 1 problem .*\n *board\.thickness: expected .*, received "6"$/),
    "2 5.30",
  ]);
});

test("the loop over a folder reads the example of docs/design-file.md", async () => {
  const [file] = fencedBlocks("docs/design-file.md", "json");
  const folder = mkdtempSync(join(tmpdir(), "marker-depth-page-"));
  writeFileSync(join(folder, "linden.json"), file?.text ?? "");
  writeFileSync(join(folder, "slip.json"), (file?.text ?? "").replace('"1/4 in"', '"1/4 inn"'));
  const [loop] = blocks;
  const text = loop?.text.replace('"docs/examples"', JSON.stringify(folder)) ?? "";
  const { printed } = await runPage([{ where: PAGE, text }]);
  rmSync(folder, { recursive: true });
  expect(printed).toEqual([
    expect.stringMatching(/^linden\.json: Linden 22 \(invented example\), \d findings$/),
    expect.stringMatching(
      /^slip\.json: 1 problem .*\n *board\.thickness: expected .*"1\/4 inn" \(line 5, /,
    ),
  ]);
});

/** Each example's file, and the name that stands in it. */
function exampleFiles(): string[][] {
  const files = readdirSync(new URL("../../docs/examples/", import.meta.url)).sort();
  const designs = files.filter((file) => file.endsWith(".json"));
  return designs.map((file) => [file, JSON.parse(fileText(`docs/examples/${file}`)).name]);
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
