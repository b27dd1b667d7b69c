/** What scripts write into the docs is what they would write now. */
import { execFileSync } from "node:child_process";
import { mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileURLToPath } from "node:url";
import { expect, test } from "vitest";
import { DEFAULTS, FINDING_CODES } from "../../src/index.js";
import { fileText } from "./blocks.js";

const ROOT = fileURLToPath(new URL("../../", import.meta.url));

/** Every file under a folder, by its path in it. */
function filesIn(folder: string): Map<string, string> {
  const names = readdirSync(folder, { recursive: true, encoding: "utf8" }).sort();
  const files = names.filter((name) => name.endsWith(".md"));
  return new Map(files.map((name) => [name, readFileSync(join(folder, name), "utf8")]));
}

test("the API reference follows from the docstrings", { timeout: 120_000 }, () => {
  const out = mkdtempSync(join(tmpdir(), "api-"));
  try {
    execFileSync("npx", ["typedoc", "--out", out, "--logLevel", "Warn"], { cwd: ROOT });
    const now = filesIn(out);
    expect(now.size).toBeGreaterThan(4);
    expect(filesIn(join(ROOT, "docs/api"))).toEqual(now);
  } finally {
    rmSync(out, { recursive: true });
  }
});

test("the table of finding codes follows from the code", () => {
  const script = join(ROOT, "docs/scripts/codes.mjs");
  const table = execFileSync(process.execPath, [script, "--print"], { encoding: "utf8" });
  expect(table.trim().split("\n")).toHaveLength(2 + Object.keys(FINDING_CODES).length);
  expect(fileText("docs/findings.md")).toContain(table.trim());
});

test("the tables of fields and defaults follow from the JSON Schema and the code", () => {
  const script = join(ROOT, "docs/scripts/fields.mjs");
  const printed = execFileSync(process.execPath, [script, "--print"], { encoding: "utf8" });
  const { fields, defaults } = JSON.parse(printed);
  expect(fields.split("\n").length).toBeGreaterThan(50);
  expect(defaults.split("\n")).toHaveLength(2 + Object.keys(DEFAULTS).length);
  for (const table of [fields, defaults]) expect(fileText("docs/design-file.md")).toContain(table);
});
