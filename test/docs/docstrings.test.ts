import { expect, test } from "vitest";
import * as card from "../../src/card/index.js";
import * as core from "../../src/index.js";
import { docstringExamples, run } from "./blocks.js";

const SCOPE = { ...core, ...card };
const examples = docstringExamples().filter(({ where }) => /^src\/[a-z-]+\.ts/.test(where));

test("docstrings hold examples", () => {
  expect(examples.length).toBeGreaterThanOrEqual(10);
});

test.each(examples)("$where", ({ text }) => {
  const { checks } = run(text, SCOPE);
  expect(checks.length).toBeGreaterThan(0);
  for (const { actual, expected } of checks) expect(actual).toEqual(expected);
});

test("every exported function of the core and the card has an example that is run", () => {
  const functions = Object.entries(SCOPE)
    .filter(([name, value]) => typeof value === "function" && name !== "DesignError")
    .map(([name]) => name);
  expect(functions.length).toBeGreaterThan(10);
  for (const name of functions) {
    expect(examples.some(({ where }) => where.includes(`function ${name}(`))).toBe(true);
  }
});
