/** Every public function of every entry, as the entries themselves list them, and what each says that it throws. */
import { readdirSync, readFileSync } from "node:fs";
import * as card from "../../src/card/index.js";
import * as draw from "../../src/draw/index.js";
import * as files from "../../src/files/index.js";
import * as core from "../../src/index.js";
import * as notebook from "../../src/notebook/index.js";
import * as units from "../../src/units/index.js";

export type AnyFunction = (...args: readonly unknown[]) => unknown;

type Module = Readonly<Record<string, unknown>>;

export const MODULES: Readonly<Record<string, Module>> = {
  core,
  card,
  units,
  files,
  draw,
  notebook,
};

/** The entries that the package has, by the names in package.json. */
export function publishedEntries(): string[] {
  const text = readFileSync(new URL("../../package.json", import.meta.url), "utf8");
  const { exports } = JSON.parse(text) as { exports: object };
  return Object.keys(exports)
    .filter((name) => !name.endsWith(".json"))
    .map((name) => (name === "." ? "core" : name.slice(2)));
}

/** The functions by `entry.name`; those within an exported object by `entry.object.name`; classes left out. */
export function publicFunctions(): Map<string, AnyFunction> {
  const found = new Map<string, AnyFunction>();
  for (const [entry, module] of Object.entries(MODULES)) {
    for (const [name, value] of Object.entries(module)) collect(`${entry}.${name}`, value, found);
  }
  return found;
}

function collect(name: string, value: unknown, found: Map<string, AnyFunction>): void {
  if (typeof value === "function") {
    if (!isErrorClass(value)) found.set(name, value as AnyFunction);
  } else if (isSchema(value)) {
    found.set(`${name}.validate`, value["~standard"].validate);
  } else if (typeof value === "object" && value !== null) {
    for (const [inner, method] of Object.entries(value)) {
      if (typeof method === "function") collect(`${name}.${inner}`, method, found);
    }
  }
}

function isErrorClass(value: object): boolean {
  return (value as { prototype?: unknown }).prototype instanceof Error;
}

function isSchema(value: unknown): value is { "~standard": { validate: AnyFunction } } {
  return typeof value === "object" && value !== null && "~standard" in value;
}

const SRC = new URL("../../src/", import.meta.url);

/** The names after `@throws` in the docstring of an exported function or constant. */
export function promisedErrors(name: string): Set<string> {
  const [entry = "", exported = ""] = name.split(".");
  const promised = new Set<string>();
  for (const path of sourcesOf(entry)) {
    const docstring = docstringOf(readFileSync(new URL(path, SRC), "utf8"), exported);
    for (const [, error = ""] of docstring.matchAll(/^ \* @throws (\w+)/gm)) promised.add(error);
  }
  return promised;
}

/** The files that may declare what an entry exports: notebook has a `checkDesign` of its own. */
function sourcesOf(entry: string): string[] {
  return readdirSync(SRC, { recursive: true, encoding: "utf8" })
    .filter((path) => path.endsWith(".ts"))
    .filter((path) => path.startsWith("notebook/") === (entry === "notebook"));
}

function docstringOf(source: string, exported: string): string {
  const declared = new RegExp(`^export (?:async )?(?:function\\*?|const) ${exported}\\b`, "m");
  const at = source.search(declared);
  if (at < 0) return "";
  const before = source.slice(0, at);
  const start = before.lastIndexOf("/**");
  return start < 0 || /^\}/m.test(before.slice(start)) ? "" : before.slice(start);
}
