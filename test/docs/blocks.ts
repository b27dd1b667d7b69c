/** Examples found in docstrings and Markdown, made runnable. */
import { readdirSync, readFileSync } from "node:fs";
import { posix } from "node:path";

const ROOT = new URL("../../", import.meta.url);

/** One example: where it stands, and its text. */
export interface Block {
  readonly where: string;
  readonly text: string;
}

/** The text of a file of the project. */
export function fileText(path: string): string {
  return readFileSync(new URL(path, ROOT), "utf8");
}

/** Every `@example` in the docstrings of src. */
export function docstringExamples(): Block[] {
  const files = readdirSync(new URL("src/", ROOT), { recursive: true, encoding: "utf8" });
  return files
    .filter((file) => file.endsWith(".ts"))
    .flatMap((file) => examplesIn(`src/${file}`))
    .sort((a, b) => a.where.localeCompare(b.where));
}

function examplesIn(path: string): Block[] {
  const comments = fileText(path).matchAll(/\/\*\*\n(?: \*.*\n)+? \*\/\n(.*)/g);
  return [...comments].flatMap(([comment, declaration]) => {
    const lines = comment.split("\n").map((line) => line.replace(/^ \* ?/, ""));
    const start = lines.indexOf("@example");
    if (start < 0) return [];
    const end = lines.findIndex((line, i) => i > start && (line.startsWith("@") || line === "/"));
    return [{ where: `${path}: ${declaration}`, text: lines.slice(start + 1, end).join("\n") }];
  });
}

/** The fenced blocks of one language in a Markdown file. */
export function fencedBlocks(path: string, language: string): Block[] {
  const pattern = new RegExp(`^\`\`\`${language}\\n([\\s\\S]*?)^\`\`\``, "gm");
  return [...fileText(path).matchAll(pattern)].map(([, text], i) => ({
    where: `${path}, ${language} block ${i + 1}`,
    text: text ?? "",
  }));
}

/** What a run has shown: how many `// value` remarks were checked. */
export interface Run {
  readonly checks: readonly { readonly actual: unknown; readonly expected: unknown }[];
  readonly printed: readonly string[];
}

/** Runs a block with names in scope. A line `expression // value` is a check of one against the other. */
export function run(text: string, scope: Readonly<Record<string, unknown>>): Run {
  const checks: { actual: unknown; expected: unknown }[] = [];
  const printed: string[] = [];
  const all = {
    ...scope,
    $check: (actual: unknown, expected: unknown) => checks.push({ actual, expected }),
    console: { log: (...words: unknown[]) => printed.push(words.join(" ")) },
  };
  const code = `"use strict";\n${checked(text)}`;
  new Function(...Object.keys(all), code)(...Object.values(all));
  return { checks, printed };
}

function checked(text: string): string {
  const out: string[] = [];
  let pending: string[] = [];
  for (const line of text.split("\n")) {
    const remark = /^(.*\S)\s+\/\/ (.+)$/.exec(line);
    if (remark) {
      const expression = [...pending, remark[1]].join("\n");
      out.push(`$check((${expression}), (${remark[2]}));`);
      pending = [];
    } else {
      pending.push(line);
      if (/[;}]\s*$/.test(line) && !/^\s/.test(line)) {
        out.push(pending.join("\n"));
        pending = [];
      }
    }
  }
  return [...out, ...pending].join("\n");
}

type Names = Readonly<Record<string, unknown>>;

/** The entries, as code on a page imports them. */
const ENTRIES: Readonly<Record<string, () => Promise<Names>>> = {
  "marker-depth": () => import("../../src/index.js"),
  "marker-depth/card": () => import("../../src/card/index.js"),
  "marker-depth/chance": () => import("../../src/chance/index.js"),
  "marker-depth/draw": () => import("../../src/draw/index.js"),
  "marker-depth/files": () => import("../../src/files/index.js"),
  "marker-depth/measured": () => import("../../src/measured/index.js"),
  "marker-depth/notebook": () => import("../../src/notebook/index.js"),
  "marker-depth/units": () => import("../../src/units/index.js"),
};

const IMPORT = /^import \{ (.+) \} from "(.+)";$/gm;

/** Runs the blocks of a page one after the other, as one script. */
export async function runPage(blocks: readonly Block[]): Promise<Run> {
  const scope: Record<string, unknown> = {};
  const code: string[] = [];
  for (const { text, where } of blocks) {
    for (const [, names = "", from = ""] of text.matchAll(IMPORT)) {
      const found = await (ENTRIES[from]?.() ?? import(from));
      for (const name of names.split(", ")) {
        if (!(name in found)) throw new Error(`${where}: ${from} has no ${name}`);
        scope[name] = found[name];
      }
    }
    code.push(text.replace(IMPORT, ""));
  }
  let done: Promise<void> | undefined;
  scope.$page = (page: () => Promise<void>) => {
    done = page();
  };
  const result = run(`$page(async () => {;\n${code.join("\n")}\n});`, scope);
  await done;
  return result;
}

/** Where a page's links lead: paths from the root, and headings; links to the web apart. */
export function linksIn(page: string): { path: string; heading: string | undefined }[] {
  const links = [...fileText(page).matchAll(/\]\((?!https?:)([^)\s]+)\)/g)];
  return links.map(([, link = ""]) => {
    const [to = "", heading] = link.split("#");
    return { path: to === "" ? page : posix.join(posix.dirname(page), to), heading };
  });
}

/** The headings of a page, as links name them. */
export function headings(page: string): string[] {
  return [...fileText(page).matchAll(/^#+ (.+)$/gm)].map(([, text = ""]) =>
    text
      .toLowerCase()
      .replace(/[^\p{L}\p{N}\s-]/gu, "")
      .replaceAll(" ", "-"),
  );
}
