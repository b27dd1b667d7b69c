/** The entry as a package: its names, what it brings along, and its examples. */
import { describe, expect, test } from "vitest";
import * as files from "../../src/files/index.js";
import { docstringExamples, run } from "../docs/blocks.js";
import { bundle, packagesOf } from "../package/bundle.js";

test("its exports", () => {
  expect(Object.keys(files).sort()).toEqual(["FILE_LIMITS", "designSchema", "readDesign"]);
});

test("it brings valibot and jsonc-parser along, and no mathjs", async () => {
  const { gzipped, used } = await bundle("files/index.ts");
  expect(packagesOf(used)).toEqual(["jsonc-parser", "valibot"]);
  // all of it with the check's own reading and geometry
  expect(gzipped).toBeLessThanOrEqual(25_000);
  expect(used.filter((name) => name.includes("json-schema"))).toEqual([]);
});

test.each(["index.ts", "card.ts", "units/index.ts"])("%s is free of it", async (entry) => {
  const { used } = await bundle(entry);
  expect(used.filter((name) => /valibot|jsonc-parser|src\/files/.test(name))).toEqual([]);
});

describe("its examples say what happens", () => {
  const examples = docstringExamples().filter(({ where }) => where.startsWith("src/files/"));

  test("there is one for each function and for the schema", () => {
    const declared = examples.map(({ where }) => where.replace(/^\S+ export (\w+ \w+).*$/, "$1"));
    expect(declared.sort()).toEqual(["const designSchema", "function readDesign"]);
  });

  test.each(examples)("$where", ({ text }) => {
    const { checks } = run(text, { ...files });
    expect(checks.length).toBeGreaterThan(0);
    for (const { actual, expected } of checks) expect(actual).toEqual(expected);
  });
});
