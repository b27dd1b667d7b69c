/** The entry: its names, its examples, and that it brings no package along. */
import { expect, test } from "vitest";
import * as notebook from "../../src/notebook/index.js";
import { docstringExamples, run } from "../docs/blocks.js";
import { bundle } from "../package/bundle.js";

const examples = docstringExamples().filter(({ where }) => where.startsWith("src/notebook/"));

test("its exports", () => {
  expect(Object.keys(notebook).sort()).toEqual(["checkDesign", "html", "show"]);
});

test("every function has an example", () => {
  expect(examples.map(({ where }) => /function (\w+)/.exec(where)?.[1]).sort()).toEqual(
    Object.keys(notebook).sort(),
  );
});

test.each(examples)("$where", ({ text }) => {
  const { checks } = run(text, notebook);
  expect(checks.length).toBeGreaterThan(0);
  for (const { actual, expected } of checks) expect(actual).toEqual(expected);
});

test("it brings no package along", async () => {
  const { inputs } = await bundle("notebook/index.ts");
  expect(inputs.length).toBeGreaterThan(20);
  expect(inputs.filter((name) => !name.startsWith("src/"))).toEqual([]);
});
