import { expect, test } from "vitest";
import * as card from "../../src/card/index.js";
import { designSchema } from "../../src/files/index.js";
import * as core from "../../src/index.js";
import * as measured from "../../src/measured/index.js";
import { docstringExamples, run } from "./blocks.js";

const SCOPE = { ...core, ...card, ...measured, designSchema };
/** Rooms whose own tests run their examples. */
const ELSEWHERE = /^src\/(?:chance|draw|files|notebook|shell|units)\//;
const examples = docstringExamples().filter(({ where }) => !ELSEWHERE.test(where));

test("docstrings hold examples", () => {
  expect(examples.length).toBeGreaterThanOrEqual(20);
});

test.each(examples)("$where", ({ text }) => {
  const { checks } = run(text, SCOPE);
  expect(checks.length).toBeGreaterThan(0);
  for (const { actual, expected } of checks) expect(actual).toEqual(expected);
});

test("every exported function of these entries has an example that is run", () => {
  const functions = Object.entries(SCOPE)
    .filter(([name, value]) => typeof value === "function" && name !== "DesignError")
    .map(([name]) => name);
  expect(functions.length).toBeGreaterThan(20);
  for (const name of functions) {
    expect(
      examples.some(({ where }) => where.includes(`function ${name}(`)),
      name,
    ).toBe(true);
  }
});
