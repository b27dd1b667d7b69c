// What is tried on the packed tarball. Each step throws where it fails, and returns a few words where it does not.
import assert from "node:assert/strict";
import { cpSync, existsSync, readFileSync, writeFileSync } from "node:fs";
import { delimiter, join } from "node:path";
import { pathToFileURL } from "node:url";
import { build } from "esbuild";
import { chromium } from "playwright-core";
import { printTemplate } from "./print.mjs";
import { HERE, ROOT, run } from "./project.mjs";

const TOOLS = join(ROOT, "node_modules/.bin");
const CHROMIUM = "/usr/bin/chromium";

/** Held against each other: every runtime must come to the same. */
const seen = [];

function compare(text, runtime) {
  const { runtime: told, ...result } = JSON.parse(text);
  assert.match(told, runtime);
  assert.deepEqual(result.lengths, [647.7, 6.35, 38.1]);
  assert.deepEqual(result.refused, [true, 4, "board.thickness"]);
  assert.deepEqual(result.pictures, [true, true, true]);
  assert.ok(result.flat && result.holes === 8 && result.many === 2);
  assert.match(result.card, /^DRILL CARD: tried on every runtime\n/);
  seen.push(result);
  assert.deepEqual(result, seen[0]);
  return told;
}

/** Both module systems, and the command, on one version of Node. */
export function onNode(major, { project }) {
  const bin = join(HERE, `node_modules/node${major}/bin`);
  const node = join(bin, "node");
  const version = new RegExp(`^node v${major}\\.`);
  const told = ["consumer.mjs", "consumer.cjs"].map((file) =>
    compare(run(node, [file], { cwd: project }), version),
  );
  const [example, says] = ["js", "text"].map((language) => firstBlock("README.md", language));
  writeFileSync(join(project, "stop.mjs"), example);
  assert.equal(run(node, ["stop.mjs"], { cwd: project }), says);
  const path = [bin, process.env.PATH].join(delimiter);
  cpSync(join(ROOT, "docs/examples/larch-22.json"), join(project, "neck.json"));
  const card = run("npx", ["marker-depth", "neck.json"], { cwd: project, env: { PATH: path } });
  assert.match(card, /^DRILL CARD: Larch 22/);
  assert.match(card, /\n1 design checked, 1 passes, 0 fail\n$/);
  return `${told[0]}: import, require, the README's example, npx marker-depth`;
}

/** The first block of a page in this language, as it would be pasted. */
function firstBlock(page, language) {
  const text = readFileSync(join(ROOT, page), "utf8");
  const [, block] = new RegExp(`^\`\`\`${language}\\n([\\s\\S]*?)^\`\`\``, "m").exec(text);
  return block;
}

export function onDeno({ project }) {
  const deno = join(HERE, "node_modules/.bin/deno");
  const words = ["--node-modules-dir=manual", "--no-lock"];
  const told = ["consumer.mjs", "consumer.cjs"].map((file) =>
    compare(run(deno, ["run", ...words, "--allow-read", file], { cwd: project }), /^deno \d/),
  );
  run(deno, ["check", ...words, "consumer.mts"], { cwd: project });
  run(deno, ["run", ...words, "--allow-read", "consumer.mts"], { cwd: project });
  return `${told[0]}: import, require, TypeScript checked and run`;
}

export function onBun({ project }) {
  const bun = join(HERE, "node_modules/.bin/bun");
  const told = ["consumer.mjs", "consumer.cjs"].map((file) =>
    compare(run(bun, [file], { cwd: project }), /^bun \d/),
  );
  run(bun, ["consumer.mts"], { cwd: project });
  return `${told[0]}: import, require, TypeScript run`;
}

/** Strict, and the declarations themselves are checked. */
export function types(resolution, { project }) {
  const compilerOptions = {
    strict: true,
    exactOptionalPropertyTypes: true,
    skipLibCheck: false,
    noEmit: true,
    target: "es2022",
    lib: ["es2022"],
    types: [],
    module: resolution === "bundler" ? "esnext" : resolution,
    moduleResolution: resolution,
  };
  const config = { compilerOptions, files: ["consumer.mts"] };
  writeFileSync(join(project, "tsconfig.json"), JSON.stringify(config));
  run(join(TOOLS, "tsc"), ["-p", "."], { cwd: project });
  const listed = run(join(TOOLS, "tsc"), ["-p", ".", "--listFiles"], { cwd: project });
  const own = listed.split("\n").filter((file) => file.includes("/marker-depth/dist/"));
  assert.ok(own.length >= 5, "the package's declarations were read");
  return `types with ${resolution}: ${own.length} declaration files`;
}

/** A page with everything bundled into it, which fetches nothing. */
export async function inBrowser({ project }) {
  const bundle = await build({
    entryPoints: [join(project, "consumer.mjs")],
    bundle: true,
    format: "esm",
    platform: "browser",
    target: "es2022",
    write: false,
  });
  const [{ text }] = bundle.outputFiles;
  const page = join(project, "page.html");
  const script = text.replaceAll("</script", "<\\/script");
  writeFileSync(
    page,
    `<!doctype html><meta charset="utf-8"><script type="module">${script}</script>`,
  );
  const result = await resultOf(pathToFileURL(page).href);
  compare(result, /^browser .*Chrome\/\d/);
  return `headless Chromium: ${(text.length / 1000).toFixed(0)} kB in a page`;
}

/** The pages of a template, printed at 1 : 1. */
export function onPaper({ project }) {
  return withPage((page) => printTemplate(page, project));
}

/** What a page leaves in `result`. */
function resultOf(url) {
  return withPage(async (page) => {
    const errors = [];
    const requests = [];
    page.on("pageerror", (error) => errors.push(String(error)));
    page.on("request", (request) => requests.push(request.url()));
    await page.goto(url, { waitUntil: "load" });
    assert.deepEqual({ errors, requests }, { errors: [], requests: [url] });
    return await page.evaluate("globalThis.result");
  });
}

async function withPage(work) {
  assert.ok(existsSync(CHROMIUM), `${CHROMIUM} is not installed`);
  const browser = await chromium.launch({ executablePath: CHROMIUM, args: ["--no-sandbox"] });
  try {
    return await work(await browser.newPage());
  } finally {
    await browser.close();
  }
}

export function publint({ tarball }) {
  const told = run(join(TOOLS, "publint"), ["run", tarball, "--strict"]);
  assert.match(told, /All good!/);
  return "publint --strict: all good";
}

export function attw({ tarball }) {
  const told = JSON.parse(run(join(TOOLS, "attw"), [tarball, "--format", "json"]));
  const entries = Object.keys(told.analysis.entrypoints);
  assert.deepEqual(told.analysis.problems, []);
  assert.ok(entries.length >= 5, `entries: ${entries}`);
  return `are the types wrong: no, in ${entries.length} entries`;
}

/** What would be published, held against the patterns of what is meant to be. */
export function publishing() {
  const told = run("npm", ["publish", "--dry-run", "--json", "--ignore-scripts"]);
  const answer = JSON.parse(told);
  const { files } = answer.files ? answer : Object.values(answer)[0];
  const paths = files.map(({ path }) => path);
  const meant = JSON.parse(readFileSync(join(HERE, "meant.json"), "utf8")).map(
    (pattern) => new RegExp(`^${pattern}$`),
  );
  const unmeant = paths.filter((path) => !meant.some((pattern) => pattern.test(path)));
  const missing = meant.filter((pattern) => !paths.some((path) => pattern.test(path))).map(String);
  assert.deepEqual({ unmeant, missing }, { unmeant: [], missing: [] });
  return `npm publish --dry-run: ${paths.length} files, each meant`;
}
