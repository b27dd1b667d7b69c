/** The entry as a package: what it brings along, and its examples. */
import { describe, expect, test } from "vitest";
import * as files from "../../src/files/index.js";
import * as core from "../../src/index.js";
import { docstringExamples, run } from "../docs/blocks.js";
import { bundle, packagesOf } from "../package/bundle.js";

test("it brings jsonc-parser along, and no mathjs", async () => {
  const { used } = await bundle("files/index.ts");
  expect(packagesOf(used)).toEqual(["jsonc-parser"]);
  // the JSON Schema is made when the package is built
  expect(used.filter((name) => name.includes("json-schema"))).toEqual([]);
});

describe("its examples say what happens", () => {
  const examples = docstringExamples().filter(({ where }) => where.startsWith("src/files/"));

  test("there is one for each function and for the schema", () => {
    const declared = examples.map(({ where }) => where.replace(/^\S+ export (\w+ \w+).*$/, "$1"));
    expect(declared.sort()).toEqual([
      "const designSchema",
      "function readDesign",
      "function writeDesign",
    ]);
  });

  test.each(examples)("$where", ({ text }) => {
    const { checks } = run(text, { ...core, ...files });
    expect(checks.length).toBeGreaterThan(0);
    for (const { actual, expected } of checks) expect(actual).toEqual(expected);
  });
});
