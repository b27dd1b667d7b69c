/** The package as it is packed and installed. Runs on what `npm run build` made. */
import { execFileSync } from "node:child_process";
import { cpSync, mkdirSync, mkdtempSync, readFileSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { afterAll, beforeAll, describe, expect, test } from "vitest";

const ROOT = new URL("../../", import.meta.url).pathname;
const PACKAGE = JSON.parse(readFileSync(join(ROOT, "package.json"), "utf8"));
let project = "";
let packed: readonly string[] = [];

function run(command: string, ...words: string[]): string {
  return execFileSync(command, words, { cwd: project, encoding: "utf8" });
}

/** An empty project with the packed files laid where npm would install them. */
beforeAll(() => {
  project = mkdtempSync(join(tmpdir(), "marker-depth-"));
  const list = execFileSync("npm", ["pack", "--dry-run", "--json", "--ignore-scripts"], {
    cwd: ROOT,
    encoding: "utf8",
  });
  const [pack] = Object.values(JSON.parse(list)) as { files: { path: string }[] }[];
  packed = pack?.files.map(({ path }) => path) ?? [];
  const home = join(project, "node_modules/marker-depth");
  for (const path of packed) {
    mkdirSync(join(home, path, ".."), { recursive: true });
    cpSync(join(ROOT, path), join(home, path));
  }
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
    expect(packed.length).toBeGreaterThan(10);
    for (const path of packed) {
      expect(path).toMatch(/^(?:dist\/[^/]+|package\.json|README\.md|CHANGELOG\.md|LICENSE)$/);
    }
    for (const entry of Object.keys(PACKAGE.exports)) {
      const targets = JSON.stringify(PACKAGE.exports[entry]).match(/dist\/[^"]+/g) ?? [];
      for (const target of targets) expect(packed).toContain(target);
    }
  });

  test("have no install script and need no package", () => {
    expect(PACKAGE.scripts).not.toHaveProperty("install");
    expect(PACKAGE.scripts).not.toHaveProperty("postinstall");
    const core = readFileSync(join(ROOT, "dist/index.js"), "utf8");
    expect(core).not.toMatch(/from "(?!\.)/);
  });
});

describe("in an empty project", () => {
  test("import", () => {
    const script = `
      import { checkDesign } from "marker-depth";
      import { drillCard } from "marker-depth/card";
      import { length } from "marker-depth/units";
      const report = checkDesign(${DESIGN});
      console.log(report.ok, drillCard(report).split("\\n")[0], length("1/4 in"));`;
    writeFileSync(join(project, "try.mjs"), script);
    expect(run("node", "try.mjs").trim()).toBe("true DRILL CARD: unnamed neck 6.35");
  });

  test("require; an error is the same class in every entry", () => {
    const script = `
      const { checkDesign, DesignError } = require("marker-depth");
      const { drillCard } = require("marker-depth/card");
      const { length } = require("marker-depth/units");
      const report = checkDesign(${DESIGN});
      let caught;
      try { checkDesign({}); } catch (error) { caught = error instanceof DesignError && error instanceof RangeError; }
      console.log(report.ok, drillCard(report).length > 100, length("1 1/2 in"), caught);`;
    writeFileSync(join(project, "try.cjs"), script);
    expect(run("node", "try.cjs").trim()).toBe("true true 38.1 true");
  });

  test.each(["node16", "nodenext", "bundler"])("types, with moduleResolution %s", (resolution) => {
    const script = `
      import { checkDesign, type Design, type Report } from "marker-depth";
      import { drillCard } from "marker-depth/card";
      import { length } from "marker-depth/units";
      const design: Design = ${DESIGN};
      const report: Report = checkDesign(design);
      const text: string = drillCard(report, { unit: "in" });
      const mm: number = length("1/4 in");
      // @ts-expect-error: a scale is wanted
      checkDesign({ board: design.board, radius: 1, markers: [] });
      export { mm, text };`;
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
