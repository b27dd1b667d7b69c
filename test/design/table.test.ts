/** The table of fields is the one place: the types say what it says, and no bound, default or path stands elsewhere. */
import { readdirSync, readFileSync } from "node:fs";
import ts from "typescript";
import { describe, expect, test } from "vitest";
import { DESIGN } from "../../src/design/fields.js";
import { type Field, type Form, listFields } from "../../src/design/kinds.js";
import { listPaths } from "../../src/design/paths.js";
import { lawOf } from "./arbitrary.js";
import { pathsOf } from "./walk.js";

const SRC = new URL("../../src/", import.meta.url).pathname;

/** What is said of each path: one text, or several where cases differ. */
type Said = Record<string, Set<string>>;

function note(said: Said, path: string, text: string): void {
  said[path] ??= new Set();
  said[path].add(text);
}

/** What the table says. */
function saidIn(form: Form, before = "", said: Said = {}): Said {
  for (const { tag, says = "" } of taggedIn(form)) note(said, before + tag, says);
  for (const [key, field] of listFields(form)) {
    note(said, before + key, field.says);
    const inner = innerOf(field);
    if (inner) saidIn(inner, `${before}${key}.`, said);
  }
  return said;
}

function taggedIn({ variants = [] }: Form): { tag: string; says?: string | undefined }[] {
  return variants.flatMap(({ tag, says, cases }) => [
    ...(tag === undefined ? [] : [{ tag, says }]),
    ...Object.values(cases).flatMap(taggedIn),
  ]);
}

function innerOf(field: Field): Form | undefined {
  if (field.kind === "tolerance") return lawOf(field);
  if (field.kind === "object") return field;
  return field.kind === "list" && field.item.kind === "object" ? field.item : undefined;
}

/** What editors show over the fields of `Design`. */
function shown(): Said {
  const file = `${SRC}design/design.ts`;
  const program = ts.createProgram([file], { strict: true, target: ts.ScriptTarget.ES2022 });
  const checker = program.getTypeChecker();
  const source = program.getSourceFile(file) as ts.SourceFile;
  const exported = checker.getExportsOfModule(checker.getSymbolAtLocation(source) as ts.Symbol);
  const design = exported.find(({ name }) => name === "Design") as ts.Symbol;
  const said: Said = {};
  const walk = (type: ts.Type, before: string): void => {
    // alternatives, and the items of a list, stand at the same path
    const items = checker.isArrayType(type)
      ? checker.getTypeArguments(type as ts.TypeReference)
      : [];
    for (const each of type.isUnion() ? type.types : items) walk(each, before);
    if (checker.isArrayType(type) || checker.isTupleType(type)) return;
    const isObject = type.flags & (ts.TypeFlags.Object | ts.TypeFlags.Intersection);
    const properties = isObject ? type.getProperties() : [];
    // a profile's stations are no fields
    if (properties.some(({ name }) => name === "nut")) return;
    for (const property of properties) {
      const path = before + property.name;
      note(said, path, ts.displayPartsToString(property.getDocumentationComment(checker)));
      walk(checker.getTypeOfSymbol(property), `${path}.`);
    }
  };
  walk(checker.getDeclaredTypeOfSymbol(design), "");
  return said;
}

describe("what is said of a field", () => {
  const table = saidIn(DESIGN);

  test("is the same in an editor and in the table", () => {
    expect(Object.keys(table).length).toBeGreaterThan(130);
    expect(shown()).toEqual(table);
  });

  test("is a sentence, with more than the field's own name in it, and the unit of a number", () => {
    for (const [path, texts] of Object.entries(table)) {
      const name = path.split(".").at(-1) as string;
      for (const text of texts) {
        expect(text, path).toMatch(/^[A-Z].*\.$/s);
        const words = text.toLowerCase().match(/[a-z]+/g) ?? [];
        expect(
          words.filter((word) => !name.toLowerCase().includes(word)).length,
          path,
        ).toBeGreaterThan(1);
      }
    }
    const unitless = listPaths().filter((path) => {
      const texts = [...(table[path.replace(/\.\d+/g, "")] ?? [])];
      return !texts.every((text) =>
        /\bmm\b|degrees|fraction|frets?\b|parts|deviations/i.test(text),
      );
    });
    expect(unitless).toEqual([]);
  });
});

interface Source {
  readonly file: string;
  readonly tree: ts.SourceFile;
}

const SOURCES: Source[] = readdirSync(SRC, { recursive: true, encoding: "utf8" })
  .filter((file) => file.endsWith(".ts") && !/^design\/(?:fields|bounds)\.ts$/.test(file))
  .map((file) => {
    const text = readFileSync(SRC + file, "utf8");
    return { file, tree: ts.createSourceFile(file, text, ts.ScriptTarget.Latest, true) };
  });

/** What a finder finds in a source, each with its file. */
function found(find: (node: ts.Node) => string | undefined, sources = SOURCES): string[] {
  return sources.flatMap(({ file, tree }) => {
    const all: string[] = [];
    const visit = (node: ts.Node): void => {
      const text = find(node);
      if (text !== undefined) all.push(`${file}: ${text}`);
      ts.forEachChild(node, visit);
    };
    visit(tree);
    return all;
  });
}

const ROWS = allRows(DESIGN);
const NAMES = new Set(ROWS.map(([key]) => key));

function allRows(form: Form): [string, Field][] {
  return listFields(form).flatMap(([key, field]) => {
    const inner = innerOf(field);
    return [[key, field] as [string, Field], ...(inner ? allRows(inner) : [])];
  });
}

/** The numbers of a field's name, other than 0 and 1: what is usual, and its bounds. */
const FACTS = new Map<string, Set<number>>();
for (const [key, field] of ROWS) {
  const kind = "of" in field ? field.of : field;
  const bounds = "least" in kind ? [kind.least, kind.most] : [];
  const all = [field.usual, ...bounds, ...(("plausible" in kind && kind.plausible) || [])];
  const facts = FACTS.get(key) ?? new Set();
  for (const fact of all) if (fact !== undefined && fact !== 0 && fact !== 1) facts.add(fact);
  FACTS.set(key, facts);
}

function numberIn(node: ts.Node | undefined): number | undefined {
  return node && ts.isNumericLiteral(node) ? Number(node.text) : undefined;
}

/** The field that an expression names last. */
function fieldNamed(node: ts.Node): string | undefined {
  const name = ts.isPropertyAccessExpression(node)
    ? node.name.text
    : ts.isIdentifier(node)
      ? node.text
      : undefined;
  return name !== undefined && NAMES.has(name) ? name : undefined;
}

/** A number that is assumed for a field, or that a field is held against. */
function restated(node: ts.Node): string | undefined {
  if (ts.isBinaryExpression(node)) {
    const sides = [
      [node.left, node.right],
      [node.right, node.left],
    ] as const;
    for (const [one, other] of sides) {
      const [name, number] = [fieldNamed(one), numberIn(other)];
      if (name === undefined || number === undefined) continue;
      const isAssumed = node.operatorToken.kind === ts.SyntaxKind.QuestionQuestionToken;
      if (isAssumed ? number !== 0 : FACTS.get(name)?.has(number)) return node.getText();
    }
  }
  const isBound =
    ts.isBindingElement(node) || ts.isParameter(node) || ts.isPropertyAssignment(node);
  if (!isBound || !ts.isIdentifier(node.name)) return undefined;
  const number = numberIn(node.initializer);
  return number !== undefined && FACTS.get(node.name.text)?.has(number)
    ? node.getText()
    : undefined;
}

/** A number that stands for nothing but a bound. */
function bound(node: ts.Node): string | undefined {
  const number = numberIn(node);
  const isBound = number !== undefined && [1e12, 250, 179, 118, 1200].includes(number);
  return isBound ? node.parent.getText().slice(0, 60) : undefined;
}

const TABLE_PATHS = [...pathsOf(), ...listPaths()].filter((path) => path.includes("."));

function isPath(node: ts.Node): boolean {
  const literal = ts.isLiteralTypeNode(node) ? node.literal : node;
  return ts.isStringLiteralLike(literal) && TABLE_PATHS.includes(literal.text);
}

/** Three paths or more in one list, or a pattern that picks as many. */
function listOfPaths(node: ts.Node): string | undefined {
  if (ts.isRegularExpressionLiteral(node)) {
    const [, source = "", flags] = node.text.match(/^\/(.*)\/(\w*)$/s) ?? [];
    const pattern = new RegExp(source, flags);
    const isOfPaths = /\\\.|\^/.test(source) && !pattern.test("any.other");
    const picked = pathsOf().filter((path) => pattern.test(path));
    return isOfPaths && picked.length > 2 ? node.text : undefined;
  }
  const items = ts.isArrayLiteralExpression(node)
    ? node.elements
    : ts.isUnionTypeNode(node)
      ? node.types
      : [];
  return items.filter(isPath).length > 2 ? node.getText().slice(0, 60) : undefined;
}

describe("outside of the table", () => {
  const OF_DESIGNS = SOURCES.filter(({ file }) =>
    /^(?:design|board|drilling|report|batch|card|files|units)\//.test(file),
  );

  test("no bound and no default is stated again", () => {
    expect(SOURCES.length).toBeGreaterThan(100);
    expect(found(restated, OF_DESIGNS)).toEqual([]);
    expect(found(bound, OF_DESIGNS)).toEqual([]);
  });

  test("no paths are listed", () => {
    // the few numbers that a pair of changes is sought among, and what of the work each path has a part in
    const apart = /^(?:report\/pairs|batch\/stages)\.ts/;
    expect(found(listOfPaths).filter((each) => !apart.test(each))).toEqual([]);
  });

  test("each path that is named is one of the table", () => {
    const tops = Object.keys(DESIGN.fields).join("|");
    const isLike = new RegExp(`^(?:${tops})(?:\\.[a-z]\\w*)+$`);
    const named = found(
      (node) => (ts.isStringLiteralLike(node) && isLike.test(node.text) ? node.text : undefined),
      OF_DESIGNS,
    );
    expect(named.length).toBeGreaterThan(20);
    expect(named.filter((each) => !TABLE_PATHS.includes(each.split(": ")[1] as string))).toEqual(
      [],
    );
  });

  test.each([
    ["const keep = fill.keep ?? 0.8;", restated],
    ["const { web = 1.5 } = slot;", restated],
    ["const usual = { layout: 0.25 };", restated],
    ["if (angle > 179) throw 0;", restated],
    ["const most = 250;", bound],
    ['type Path = "board.length" | "board.width" | "fill.keep";', listOfPaths],
    ['const paths = ["board.length", "board.width", "fill.keep"];', listOfPaths],
    ["const pattern = /^board\\.(?:length|width|thickness)$/;", listOfPaths],
  ])("%s would be found", (text, find) => {
    const tree = ts.createSourceFile("a.ts", text, ts.ScriptTarget.Latest, true);
    expect(found(find, [{ file: "a.ts", tree }])).toHaveLength(1);
  });
});
