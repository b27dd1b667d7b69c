/** Every `@example` of the entry, run as it stands. */
import { readdirSync, readFileSync } from "node:fs";
import { all, create } from "mathjs";
import { describe, expect, test } from "vitest";
import * as units from "../../src/units/index.js";

const folder = new URL("../../src/units/", import.meta.url);
const scope = { ...units, all, create };

/** The `@example` blocks of a source file, without their stars. */
function examplesOf(file: string): string[] {
  const source = readFileSync(new URL(file, folder), "utf8");
  const blocks = source.match(/@example\n(?: \*(?: .*)?\n)+/g) ?? [];
  return blocks.map((block) => block.replace("@example\n", "").replace(/^ \* ?\/?/gm, ""));
}

/** Runs a line after the statements before it: its value, or `RangeError: …`. */
function outcomeOf(statements: string, line: string): unknown {
  const code = `"use strict"; ${statements} return (${line});`;
  try {
    return new Function(...Object.keys(scope), code)(...Object.values(scope));
  } catch (error) {
    return String(error);
  }
}

function check(example: string): number {
  const lines = example.split("\n").filter((line) => line.trim() !== "");
  const checks = lines.filter((line) => line.includes(" // "));
  const statements = lines.filter((line) => !line.includes(" // ")).join("\n");
  for (const line of checks) {
    const [code = "", comment = ""] = line.split(" // ");
    const expected = comment.startsWith("RangeError") ? comment : JSON.parse(comment);
    expect(outcomeOf(statements, code), line).toBe(expected);
  }
  return checks.length;
}

describe.each(["length.ts", "format-length.ts", "math-functions.ts"])("%s", (file) => {
  test("its example says what happens", () => {
    const examples = examplesOf(file);
    expect(examples).toHaveLength(1);
    for (const example of examples) expect(check(example)).toBeGreaterThan(3);
  });
});

test("no example stands elsewhere", () => {
  const files = readdirSync(folder).filter((file) => examplesOf(file).length > 0);
  expect(files.sort()).toEqual(["format-length.ts", "length.ts", "math-functions.ts"]);
});
