/** docs/recipes.md: each recipe, taken out of the page and run with the program that it is for. */
import { readdirSync, readFileSync, writeFileSync } from "node:fs";
import { join } from "node:path";
import { afterAll, beforeAll, expect, test } from "vitest";
import { drillCard } from "../../src/card/index.js";
import { readDesign } from "../../src/files/index.js";
import { checkDesign } from "../../src/index.js";
import { fileText } from "../docs/blocks.js";
import { blocksUnder, isThere, newProject, removeProject, run } from "./project.js";

const PAGE = "docs/recipes.md";
let project = "";

/** The page's first block makes the files that the recipes read. */
beforeAll(() => {
  project = newProject(["@duckdb"]);
  const [make] = blocksUnder(PAGE, "");
  expect(run(project, "bash", "-ec", make?.text ?? "false")).toEqual({ code: 0, out: "", err: "" });
});

afterAll(() => removeProject(project));

test("every block of the page is run here", () => {
  const headings = [...fileText(PAGE).matchAll(/^## (.+)$/gm)].map(([, name]) => name);
  expect(headings).toEqual(["jq", "DuckDB", "A spreadsheet", "A web page"]);
  const kinds = ["", ...headings].map((name) =>
    blocksUnder(PAGE, name ?? "").map(({ language }) => language),
  );
  expect(kinds).toEqual([["sh"], ["sh", "text"], ["js", "text"], ["sh"], ["html"]]);
});

const reports = readdirSync(new URL("../../docs/examples/", import.meta.url))
  .filter((file) => file.endsWith(".json"))
  .map((file) => checkDesign(readDesign(fileText(`docs/examples/${file}`))));

const hasJq = isThere("jq", "--version");
test.skipIf(!hasJq)(`jq prints what the page says${hasJq ? "" : ": jq is not installed"}`, () => {
  const [ask, says] = blocksUnder(PAGE, "jq");
  const { code, out, err } = run(project, "bash", "-ec", ask?.text ?? "false");
  expect([code, err, out]).toEqual([0, "", says?.text]);
  const several = reports.filter(({ stops }) => stops.settings.length > 1);
  const lines = several.flatMap(({ name, stops }) => [
    name,
    ...stops.settings.map(
      ({ travel, holes }) => `  travel ${travel.toFixed(2)} mm, ${holes.length} holes`,
    ),
  ]);
  expect(out).toBe(`${lines.join("\n")}\n`);
});

test("DuckDB prints what the page says, from CSV and from Parquet", () => {
  const [script, says] = blocksUnder(PAGE, "DuckDB");
  writeFileSync(join(project, "query.mjs"), script?.text ?? "throw 0");
  const { code, out, err } = run(project, process.execPath, "query.mjs");
  expect([code, err, out]).toEqual([0, "", says?.text]);
  const rows = reports.map(({ name, holes, findings }) => {
    const least = Math.min(...holes.flatMap(({ recommended }) => recommended?.woodLeft ?? []));
    return { least, line: `${name}; ${holes.length}; ${least.toFixed(2)}; ${findings.length}\n` };
  });
  const leanest = rows.sort((a, b) => a.least - b.least).slice(0, 3);
  expect(out).toBe(leanest.map(({ line }) => line).join(""));
  // Apache Parquet: the file begins and ends with these bytes
  const bytes = readFileSync(join(project, "holes.parquet"));
  expect([bytes.subarray(0, 4), bytes.subarray(-4)].map(String)).toEqual(["PAR1", "PAR1"]);
});

const hasSheets = isThere("ssconvert", "--version");
const why = hasSheets ? "" : ": ssconvert is not installed";
test.skipIf(!hasSheets)(`a spreadsheet has the same cells${why}`, () => {
  const [convert] = blocksUnder(PAGE, "A spreadsheet");
  const { code } = run(project, "bash", "-ec", convert?.text ?? "false");
  const back = ["--export-type=Gnumeric_stf:stf_assistant", "-O", "separator=, format=raw"];
  expect([code, run(project, "ssconvert", ...back, "holes.xlsx", "back.txt").code]).toEqual([0, 0]);
  const [was, is] = ["holes.csv", "back.txt"].map((file) =>
    readFileSync(join(project, file), "utf8")
      .trim()
      .split(/\r?\n/)
      .map((line) => line.split(",").map(cell)),
  );
  expect(was?.length).toBeGreaterThan(50);
  expect(is).toEqual(was);
});

/** A number to fifteen digits, which is what a sheet's file keeps; a text without its quotes; a truth in small letters. */
function cell(text: string): string | number {
  const bare = text.replace(/^"(.*)"$/, "$1");
  if (/^(?:true|false)$/i.test(bare)) return bare.toLowerCase();
  return bare === "" || Number.isNaN(Number(bare)) ? bare : Number(Number(bare).toPrecision(14));
}

const CHROMIUM = "/usr/bin/chromium";
const hasBrowser = isThere(CHROMIUM, "--version");
test.skipIf(!hasBrowser)(
  `a web page checks a design, and tells what is wrong with one${hasBrowser ? "" : ": chromium is not installed"}`,
  () => {
    const [page] = blocksUnder(PAGE, "A web page");
    writeFileSync(join(project, "check.html"), page?.text ?? "");
    const script = new URL("browse.mjs", import.meta.url).pathname;
    const { code, out, err } = run(project, process.execPath, script, project, CHROMIUM);
    expect([code, err]).toEqual([0, ""]);
    const shown = JSON.parse(out);
    const design = readDesign(shown.design);
    expect(shown.card).toBe(drillCard(checkDesign(design), { design }));
    expect(shown.refused).toMatch(/^radius: expected .*"12 inn" \(line 5, /);
    expect(shown.errors).toEqual([]);
  },
);
