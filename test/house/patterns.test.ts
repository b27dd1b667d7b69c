/** No regular expression of src takes more time than its text is long, by scslre, which finds those that may. */
import { readdirSync, readFileSync } from "node:fs";
import { analyse } from "scslre";
import ts from "typescript";
import { expect, test } from "vitest";

const SRC = new URL("../../src/", import.meta.url);

/** Every literal pattern, with where it stands. */
function patternsIn(file: string): { where: string; literal: RegExp }[] {
  const text = readFileSync(new URL(file, SRC), "utf8");
  const source = ts.createSourceFile(file, text, ts.ScriptTarget.ES2022, true);
  const found: { where: string; literal: RegExp }[] = [];
  const visit = (node: ts.Node) => {
    if (ts.isRegularExpressionLiteral(node)) {
      const [, pattern = "", flags = ""] = /^\/([\s\S]*)\/([a-z]*)$/.exec(node.text) ?? [];
      found.push({ where: `${file}: ${node.text}`, literal: new RegExp(pattern, flags) });
    }
    ts.forEachChild(node, visit);
  };
  visit(source);
  return found;
}

const files = readdirSync(SRC, { recursive: true, encoding: "utf8" });
const patterns = files.filter((file) => file.endsWith(".ts")).flatMap(patternsIn);

test("src has patterns, and the judge finds what is slow", () => {
  expect(patterns.length).toBeGreaterThan(20);
  expect(analyse(/^(a+)+$/).reports.length).toBeGreaterThan(0);
  expect(analyse(/\s+$/).reports.length).toBeGreaterThan(0);
});

test.each(patterns)("$where", ({ literal }) => {
  const { reports } = analyse(literal);
  expect(reports.map(({ type, exponential }) => ({ type, exponential }))).toEqual([]);
});
