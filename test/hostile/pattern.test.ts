/** Every regular expression in src takes time in proportion to its text. */
import { readdirSync, readFileSync } from "node:fs";
import ts from "typescript";
import { expect, test } from "vitest";
import { LENGTH_PATTERN } from "../../src/files/length.js";
import { whyNotLinear } from "./pattern.js";

const SRC = new URL("../../src/", import.meta.url);

interface Found {
  readonly file: string;
  readonly text: string;
}

/** The literals, and the arguments of every `RegExp(…)`. */
function found(): { literals: Found[]; made: Found[] } {
  const literals: Found[] = [];
  const made: Found[] = [];
  const files = readdirSync(SRC, { recursive: true, encoding: "utf8" });
  for (const file of files.filter((name) => /\.(?:ts|mjs)$/.test(name))) {
    const source = ts.createSourceFile(
      file,
      readFileSync(new URL(file, SRC), "utf8"),
      ts.ScriptTarget.Latest,
    );
    const visit = (node: ts.Node): void => {
      if (ts.isRegularExpressionLiteral(node)) literals.push({ file, text: node.text });
      const isCall = ts.isNewExpression(node) || ts.isCallExpression(node);
      if (isCall && node.expression.getText(source) === "RegExp") {
        made.push({ file, text: node.arguments?.map((each) => each.getText(source)).join() ?? "" });
      }
      ts.forEachChild(node, visit);
    };
    visit(source);
  }
  return { literals, made };
}

const { literals, made } = found();

/** Patterns put together while the library is loaded, each as it comes out. */
const MADE: Readonly<Record<string, readonly string[]>> = {
  // biome-ignore-start lint/suspicious/noTemplateCurlyInString: text of the source
  "paths.ts `^board\\\\.width${STATION}$`": [
    "^board\\.width(?:\\.(?:nut|end|fret[1-9]\\d{0,2}))?$",
  ],
  "paths.ts `^(?:radius|crown)${STATION}$`": [
    "^(?:radius|crown)(?:\\.(?:nut|end|fret[1-9]\\d{0,2}))?$",
  ],
  "paths.ts `^board\\\\.thickness${STATION}$`": [
    "^board\\.thickness(?:\\.(?:nut|end|fret[1-9]\\d{0,2}))?$",
  ],
  'files/length.ts `^(?:${written})$`,"i"': [
    "^(?:mm|millimet(?:er|re)s?)$",
    "^(?:cm|centimet(?:er|re)s?)$",
    "^(?:m|met(?:er|re)s?)$",
    "^(?:in[.]?|inch(?:es)?|[\"″”]|''|′′|’’)$",
    "^(?:ft[.]?|foot|feet)$",
  ],
  // biome-ignore-end lint/suspicious/noTemplateCurlyInString: text of the source
};

/** Not proved by structure; linear by the argument given. */
const ARGUED: Readonly<Record<string, string>> = {};

test("literals are found", () => {
  expect(literals.length).toBeGreaterThan(30);
});

test.each(literals.map(({ file, text }) => [file, text] as const))("%s: %s", (_, text) => {
  const end = text.lastIndexOf("/");
  const why = whyNotLinear(text.slice(1, end), text.slice(end + 1));
  expect(why === undefined ? undefined : ARGUED[text]).toBe(why && expect.any(String));
});

test("no argument is left over", () => {
  for (const text of Object.keys(ARGUED)) expect(literals.map((each) => each.text)).toContain(text);
});

test("patterns that are put together are all known, and linear", () => {
  const names = made.map(({ file, text }) => `${file} ${text}`);
  expect(names.sort()).toEqual(Object.keys(MADE).sort());
  for (const pattern of Object.values(MADE).flat())
    expect(whyNotLinear(pattern, "i")).toBeUndefined();
});

test("the pattern for lengths in the JSON Schema, which editors run", () => {
  expect(whyNotLinear(LENGTH_PATTERN, "u")).toBeUndefined();
});

test.each([
  ["^(a+)+$", ""],
  ["^(?:a|a)*$", ""],
  ["^a*a*$", ""],
  ["^\\d+\\w+$", ""],
  ["^a+b?a+$", ""],
  ["\\s+$", ""],
  ["x\\w*y", ""],
  ["^a*b|a*c", ""],
  ["^a*b", "m"],
])("the proof refuses /%s/%s", (source, flags) => {
  expect(whyNotLinear(source, flags)).toBeTypeOf("string");
});

test.each(["^a+b+$", "\\s+", "^-?\\d+$", "^x(.*)y$", " \\(line \\d+, column \\d+\\)$", "a|b|[cd]"])(
  "and grants /%s/",
  (source) => {
    expect(whyNotLinear(source, "")).toBeUndefined();
  },
);
