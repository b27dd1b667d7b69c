/** The entry: its names, its examples, and that it brings no package along. */
import { expect, test } from "vitest";
import * as draw from "../../src/draw/index.js";
import * as core from "../../src/index.js";
import { docstringExamples, run } from "../docs/blocks.js";
import { bundle } from "../package/bundle.js";

const examples = docstringExamples().filter(({ where }) => where.startsWith("src/draw/"));

test("its exports", () => {
  expect(Object.keys(draw).sort()).toEqual([
    "drawBoard",
    "drawChance",
    "drawSanding",
    "drawSection",
    "drawSweep",
    "drawTemplate",
    "drawWindows",
  ]);
});

test("every function has an example", () => {
  expect(examples.map(({ where }) => /function (\w+)/.exec(where)?.[1]).sort()).toEqual(
    Object.keys(draw).sort(),
  );
});

test.each(examples)("$where", ({ text }) => {
  const { checks } = run(text, { ...core, ...draw });
  expect(checks.length).toBeGreaterThan(0);
  for (const { actual, expected } of checks) expect(actual).toEqual(expected);
});

test("it brings no package along", async () => {
  const { inputs } = await bundle("draw/index.ts");
  expect(inputs.length).toBeGreaterThan(5);
  expect(inputs.filter((name) => !name.startsWith("src/"))).toEqual([]);
});
