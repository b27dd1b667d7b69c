/** The package as it is packed and installed. Runs on what `npm run build` made. */
import { execFileSync } from "node:child_process";
import {
  existsSync,
  mkdirSync,
  mkdtempSync,
  readdirSync,
  readFileSync,
  rmSync,
  writeFileSync,
} from "node:fs";
import { tmpdir } from "node:os";
import { join, relative } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";
import * as card from "../../src/card/index.js";
import * as chance from "../../src/chance/index.js";
import { DESIGN as TABLE } from "../../src/design/fields.js";
import * as draw from "../../src/draw/index.js";
import * as files from "../../src/files/index.js";
import { designJsonSchema } from "../../src/files/json-schema.js";
import * as core from "../../src/index.js";
import * as measured from "../../src/measured/index.js";
import * as notebook from "../../src/notebook/index.js";
import * as units from "../../src/units/index.js";
import { fencedBlocks, fileText, headings, linksIn } from "../docs/blocks.js";

const ROOT = new URL("../../", import.meta.url).pathname;
const PACKAGE = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8"));
const ENTRIES = [
  ["marker-depth", core],
  ["marker-depth/card", card],
  ["marker-depth/units", units],
  ["marker-depth/files", files],
  ["marker-depth/draw", draw],
  ["marker-depth/notebook", notebook],
  ["marker-depth/measured", measured],
  ["marker-depth/chance", chance],
] as const;
let project = "";
let home = "";
let packed: readonly string[] = [];

function run(command: string, ...words: string[]): string {
  return execFileSync(command, words, { cwd: project, encoding: "utf8" });
}

/** An empty project with the tarball's files where npm would lay them. */
beforeAll(() => {
  project = mkdtempSync(join(tmpdir(), "marker-depth-"));
  const words = ["pack", "--json", "--ignore-scripts", "--pack-destination", project];
  const told = execFileSync("npm", words, { cwd: ROOT, encoding: "utf8" });
  const [pack] = Object.values(JSON.parse(told)) as { filename: string }[];
  home = join(project, "node_modules/marker-depth");
  mkdirSync(home, { recursive: true });
  run("tar", "-xzf", pack?.filename ?? "", "-C", home, "--strip-components=1");
  const files = readdirSync(home, { recursive: true, withFileTypes: true });
  packed = files
    .filter((file) => file.isFile())
    .map((file) => relative(home, join(file.parentPath, file.name)));
  writeFileSync(join(project, "package.json"), '{ "name": "empty", "private": true }\n');
});

afterAll(() => rmSync(project, { recursive: true, force: true }));

const DESIGN = `{
  scale: { length: 648, frets: 22 },
  board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
  radius: 254,
  markers: [{ frets: [12], diameter: 6, arrangement: "double" }],
}`;

describe("the packed files", () => {
  test("are those that are meant, and nothing of tests or bench", () => {
    const meant: string[] = JSON.parse(fileText(".ci/runtimes/meant.json"));
    const unmeant = packed.filter((path) => !meant.some((each) => RegExp(`^${each}$`).test(path)));
    expect([packed.length > 10, unmeant]).toEqual([true, []]);
    for (const entry of Object.keys(PACKAGE.exports)) {
      const targets = JSON.stringify(PACKAGE.exports[entry]).match(/dist\/[^"]+/g) ?? [];
      for (const target of targets) expect(packed).toContain(target);
    }
  });

  test("lead to each other: every relative link of their pages, and every heading", () => {
    const pages = packed.filter((path) => path.endsWith(".md"));
    expect(pages.sort()).toEqual(expect.arrayContaining(["CHANGELOG.md", "README.md"]));
    const links = pages.flatMap((page) => linksIn(page).map((link) => ({ page, ...link })));
    expect([pages.length > 15, links.length > 50]).toEqual([true, true]);
    const broken = links.filter(({ path, heading }) => {
      return !existsSync(join(home, path)) || (heading && !headings(path).includes(heading));
    });
    expect(broken).toEqual([]);
    // what was followed is what was packed
    for (const page of pages) expect(readFileSync(join(home, page), "utf8")).toBe(fileText(page));
    expect(readFileSync(join(home, "docs/notebook.ipynb"), "utf8")).not.toMatch(/\]\((?!https:)/);
  });

  test("have no install script and need no package", () => {
    expect(PACKAGE.scripts).not.toHaveProperty("install");
    expect(PACKAGE.scripts).not.toHaveProperty("postinstall");
    for (const need of ["dependencies", "peerDependencies", "optionalDependencies"]) {
      expect(PACKAGE).not.toHaveProperty(need);
    }
    const built = packed.filter((path) => /^dist\/.*\.(?:js|cjs|d\.ts|d\.cts)$/.test(path));
    expect(built.length).toBeGreaterThan(20);
    // what the command alone is made of may ask for what Node brings along
    const entries = built.filter((path) => !/-[^/]*$/.test(path) && path !== "dist/cli.js");
    const asked = new Set(entries.flatMap((path) => [...reached(path)]));
    for (const path of built) {
      const outside = namedIn(path).filter((name) => !name.startsWith("./"));
      expect(
        outside.filter((name) => asked.has(path) || !name.startsWith("node:")),
        path,
      ).toEqual([]);
    }
  });

  /** The file, and what it imports, and so on. */
  function reached(path: string, before = new Set<string>()): Set<string> {
    if (before.has(path)) return before;
    before.add(path);
    for (const name of namedIn(path)) {
      if (name.startsWith("./")) reached(join("dist", name), before);
    }
    return before;
  }

  function namedIn(path: string): string[] {
    const file = existsSync(join(home, path)) ? path : path.replace(/\.(c?)js$/, ".d.$1ts");
    const named = readFileSync(join(home, file), "utf8").matchAll(IMPORTED);
    return [...named].map(([, a, b]) => a ?? b ?? "");
  }

  test("tell the licence of every package that is in them", () => {
    const built = packed.filter((path) => /\.c?js$/.test(path));
    const names = built.flatMap((path) =>
      [...readFileSync(join(ROOT, path), "utf8").matchAll(BUNDLED)].map(([, name]) => name),
    );
    const licences = readFileSync(join(ROOT, "dist/THIRD-PARTY-LICENSES.txt"), "utf8");
    const told = [...licences.matchAll(/^(\S+)\/LICENSE(?:\.md)?\n=+$/gim)].map(([, name]) => name);
    expect([...new Set(names)].sort()).toEqual(told.sort());
    expect(told).toEqual(expect.arrayContaining(["jsonc-parser", "p-map", "workerpool"]));
  });

  test("hold the JSON Schema of the table", () => {
    expect(packed).toContain("dist/design.schema.json");
    const published = readFileSync(join(ROOT, "dist/design.schema.json"), "utf8");
    expect(JSON.parse(published)).toEqual(JSON.parse(JSON.stringify(designJsonSchema())));
  });

  test.each(["js", "cjs"])("hold the core in one file, without sentences: index.%s", (form) => {
    const text = readFileSync(join(ROOT, `dist/index.${form}`), "utf8");
    expect(text.match(IMPORTED) ?? []).toEqual([]);
    const told: string[] = [];
    JSON.stringify(TABLE, (key, value) =>
      key === "says" || key === "source" ? told.push(value) : value,
    );
    expect(told.length).toBeGreaterThan(100);
    expect(told.filter((sentence) => text.includes(sentence))).toEqual([]);
    expect(text).toContain('"forstner"');
  });

  test("of the command hold one form, which runs", () => {
    expect(packed.filter((path) => /^dist\/cli\./.test(path))).toEqual(["dist/cli.js"]);
    expect(run("node", join(home, PACKAGE.bin["marker-depth"]), "--version")).toBe(
      `${PACKAGE.version}\n`,
    );
  });
});

/** What a built file imports, requires, or takes its types from. */
const IMPORTED =
  /(?:^(?:import|export)[^'"\n]*?|^\} from )["']([^"'\n]+)["']|\brequire\(["']([^"']+)["']\)/gm;
/** The packages that the bundler names above what it took from them. */
const BUNDLED = /^\/\/ node_modules\/((?:@[^/\n]+\/)?[^/\n]+)\//gm;

describe("in an empty project", () => {
  test("the README's example runs as it is pasted", () => {
    const [block] = fencedBlocks("README.md", "js");
    const [says] = fencedBlocks("README.md", "text");
    writeFileSync(join(project, "stop.mjs"), block?.text ?? "");
    expect(run("node", "stop.mjs")).toBe(says?.text);
  });

  test("the design of docs/start.md gives the card of the page, and that of docs/design-file.md one too", () => {
    const bin = join(home, PACKAGE.bin["marker-depth"]);
    const card = (page: string) => {
      writeFileSync(join(project, "neck.json"), fencedBlocks(page, "json")[0]?.text ?? "");
      return run("node", bin, "neck.json");
    };
    const [says] = fencedBlocks("docs/start.md", "text");
    expect(card("docs/start.md").startsWith(says?.text.trimEnd() ?? "no card")).toBe(true);
    expect(card("docs/design-file.md")).toMatch(/^DRILL CARD: Linden 22 .*\n\n1 design checked, /s);
  });

  test.each(["import", "require"])("%s: every entry has the names of its source", (way) => {
    const take = way === "import" ? "await import(name)" : "require(name)";
    const script = `(async () => {
      const found = {};
      for (const name of ${JSON.stringify(ENTRIES.map(([name]) => name))}) {
        found[name] = Object.keys(${take}).filter((key) => !/^(?:default|__esModule|module\\.exports)$/.test(key)).sort();
      }
      console.log(JSON.stringify(found));
    })();`;
    const file = way === "import" ? "names.mjs" : "names.cjs";
    writeFileSync(join(project, file), script);
    const wanted = ENTRIES.map(([name, source]) => [name, Object.keys(source).sort()]);
    expect(JSON.parse(run("node", file))).toEqual(Object.fromEntries(wanted));
  });

  test("import", () => {
    const script = `
      import { checkDesign } from "marker-depth";
      import { drillCard } from "marker-depth/card";
      import { length } from "marker-depth/units";
      import { readDesign } from "marker-depth/files";
      import { drawBoard } from "marker-depth/draw";
      const report = checkDesign(readDesign(JSON.stringify(${DESIGN})));
      console.log(report.ok, drillCard(report).split("\\n")[0], length("1/4 in"), drawBoard(report).includes("<svg"));`;
    writeFileSync(join(project, "try.mjs"), script);
    expect(run("node", "try.mjs").trim()).toBe("true DRILL CARD: unnamed neck 6.35 true");
  });

  test("require; an error of one entry is known in another by its name", () => {
    const script = `
      const { checkDesign, DesignError } = require("marker-depth");
      const { drillCard } = require("marker-depth/card");
      const { length } = require("marker-depth/units");
      const report = checkDesign(${DESIGN});
      const { readDesign } = require("marker-depth/files");
      const caught = [() => checkDesign({}), () => readDesign("{}")].map((refused) => {
        try { return refused(); } catch (error) { return error.name === DesignError.name && error instanceof RangeError; }
      });
      console.log(report.ok, drillCard(report).length > 100, length("1 1/2 in"), ...caught);`;
    writeFileSync(join(project, "try.cjs"), script);
    expect(run("node", "try.cjs").trim()).toBe("true true 38.1 true true");
  });

  test.each(["node16", "nodenext", "bundler"])("types, with moduleResolution %s", (resolution) => {
    const script = `
      import { checkDesign, type Design, type Report } from "marker-depth";
      import { drillCard } from "marker-depth/card";
      import { length } from "marker-depth/units";
      import { designSchema, readDesign, writeDesign, type DesignInput, type FileIssue } from "marker-depth/files";
      import { leastSanding } from "marker-depth/measured";
      import { drawBoard, drawSection, drawWindows } from "marker-depth/draw";
      const design: Design = ${DESIGN};
      const written: DesignInput = { ...design, radius: "flat" };
      const read: Design = readDesign(writeDesign(design, { unit: "in" }));
      const result = designSchema["~standard"].validate(written);
      const pictures: string[] = [drawBoard(checkDesign(read)), drawWindows(checkDesign(read)), drawSection(checkDesign(read), 0)];
      const lines = (issues: readonly FileIssue[]): number[] => issues.map(({ line }) => line);
      const report: Report = checkDesign(design);
      const text: string = drillCard(report, { unit: "in" });
      const mm: number = length("1/4 in");
      // @ts-expect-error: a scale is wanted
      checkDesign({ board: design.board, radius: 1, markers: [] });
      const sanding: number = leastSanding(184, 305, 26);
      export { mm, text, result, pictures, lines, sanding };`;
    writeFileSync(join(project, "try.mts"), script);
    const options = {
      strict: true,
      skipLibCheck: false,
      noEmit: true,
      target: "es2022",
      lib: ["es2022"],
      types: [],
      module: resolution === "bundler" ? "esnext" : resolution,
      moduleResolution: resolution,
    };
    const config = { compilerOptions: options, files: ["try.mts"] };
    writeFileSync(join(project, "tsconfig.json"), JSON.stringify(config));
    expect(run("node", join(ROOT, "node_modules/typescript/bin/tsc"), "-p", ".")).toBe("");
  });
});
