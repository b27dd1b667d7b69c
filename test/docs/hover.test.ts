/** What an editor shows over each export: no field, parameter or function of any entry is without words. */
import { readFileSync } from "node:fs";
import ts from "typescript";
import { expect, test } from "vitest";

const ROOT = new URL("../..", import.meta.url).pathname;
const { typedocOptions } = JSON.parse(readFileSync(`${ROOT}package.json`, "utf8"));
const ENTRIES = typedocOptions.entryPoints as readonly string[];
const { config } = ts.readConfigFile(`${ROOT}tsconfig.json`, ts.sys.readFile);
const { options } = ts.parseJsonConfigFileContent(config, ts.sys, ROOT);
const program = ts.createProgram(
  ENTRIES.map((entry) => ROOT + entry),
  options,
);
const checker = program.getTypeChecker();

const wordsOf = (symbol: ts.Symbol | undefined) =>
  ts.displayPartsToString(symbol?.getDocumentationComment(checker)).trim();

/** What `undefined` alone may be needs no words: it only tells two cases apart. */
const isNothing = (node: ts.Node) =>
  ts.isPropertySignature(node) && node.type?.kind === ts.SyntaxKind.UndefinedKeyword;

interface Named {
  readonly name: string;
  readonly words: string;
}

/** The fields written within a node, each by its path. */
function fieldsWithin(node: ts.Node, path: string): Named[] {
  const found: Named[] = [];
  ts.forEachChild(node, (child) => {
    const isField = ts.isPropertySignature(child) || ts.isPropertyDeclaration(child);
    const isMethod = ts.isMethodSignature(child);
    if (!(isField || isMethod) || ts.isComputedPropertyName(child.name)) {
      // a private type's key, such as a mapped type's, is no field
      found.push(...fieldsWithin(child, path));
    } else if (!isNothing(child)) {
      const name = `${path}.${child.name.getText()}`;
      found.push({ name, words: wordsOf(checker.getSymbolAtLocation(child.name)) });
      found.push(...fieldsWithin(child, name));
    }
  });
  return found;
}

/** A function's parameters with their fields, what it returns, and an example. */
function partsOf(declaration: ts.FunctionDeclaration, name: string): Named[] {
  if (declaration.body !== undefined && isOverloaded(declaration)) return [];
  const parameters = declaration.parameters.flatMap((parameter) => [
    {
      name: `${name}(${parameter.name.getText()})`,
      words: wordsOf(checker.getSymbolAtLocation(parameter.name)),
    },
    ...fieldsWithin(parameter, `${name}(${parameter.name.getText()})`),
  ]);
  const tags = ts.getJSDocTags(declaration).map(({ tagName }) => tagName.text);
  const told = ["returns", "example"].map((tag) => ({
    name: `${name} @${tag}`,
    words: tags.includes(tag) ? tag : "",
  }));
  const returned = declaration.type ? fieldsWithin(declaration.type, `${name}()`) : [];
  return [...parameters, ...told, ...returned];
}

function isOverloaded(declaration: ts.FunctionDeclaration): boolean {
  const symbol = declaration.name && checker.getSymbolAtLocation(declaration.name);
  return (symbol?.declarations?.length ?? 0) > 1;
}

function exportsOf(entry: string): Named[] {
  const file = program.getSourceFile(entry);
  const module = file && checker.getSymbolAtLocation(file);
  const symbols = module ? checker.getExportsOfModule(module) : [];
  return symbols.flatMap((each) => {
    const symbol = each.flags & ts.SymbolFlags.Alias ? checker.getAliasedSymbol(each) : each;
    const { name, declarations = [] } = symbol;
    return [
      { name, words: wordsOf(symbol) },
      ...declarations.flatMap((declaration) =>
        ts.isFunctionDeclaration(declaration)
          ? partsOf(declaration, name)
          : fieldsWithin(declaration, name),
      ),
    ];
  });
}

test.each(ENTRIES)("%s", (entry) => {
  const all = exportsOf(ROOT + entry);
  expect(all.length).toBeGreaterThan(3);
  expect(all.filter(({ words }) => words === "").map(({ name }) => name)).toEqual([]);
});
