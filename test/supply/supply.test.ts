/** What an installation brings along, what the build rests on, and that a pack is the same each time. */
import { execFileSync } from "node:child_process";
import { createHash } from "node:crypto";
import { existsSync, mkdtempSync, readdirSync, readFileSync, rmSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { expect, test } from "vitest";

const ROOT = new URL("../../", import.meta.url).pathname;

interface LockEntry {
  readonly dev?: boolean;
  readonly optional?: boolean;
  readonly license?: string;
  readonly integrity?: string;
  readonly resolved?: string;
  readonly hasInstallScript?: boolean;
  readonly dependencies?: object;
}

function json(path: string): Record<string, unknown> {
  return JSON.parse(readFileSync(join(ROOT, path), "utf8"));
}

const { "": own, ...others } = json("package-lock.json").packages as Record<string, LockEntry>;
const LOCKED = Object.entries(others);
const MANIFEST = json("package.json");

test("the package needs no other: nothing is installed beside it, and no script is run", () => {
  for (const kind of ["dependencies", "optionalDependencies", "peerDependencies"]) {
    expect(MANIFEST).not.toHaveProperty(kind);
    expect(own).not.toHaveProperty(kind);
  }
  expect(MANIFEST).not.toHaveProperty("bundleDependencies");
  const scripts = Object.keys(MANIFEST.scripts as object);
  for (const name of ["preinstall", "install", "postinstall", "prepare", "prepublish"]) {
    expect(scripts).not.toContain(name);
  }
  expect(own?.hasInstallScript).toBeUndefined();
  expect(LOCKED.filter(([, { dev }]) => dev !== true)).toEqual([]);
});

test("of the packages for development just one has an install script, which picks its binary", () => {
  expect(LOCKED.length).toBeGreaterThan(300);
  const scripted = LOCKED.filter(([, { hasInstallScript }]) => hasInstallScript);
  expect(scripted.map(([path]) => path)).toEqual(["node_modules/esbuild"]);
});

test("every locked package is held by a SHA-512, and comes from one place over https", () => {
  for (const [path, { integrity }] of LOCKED) expect(integrity, path).toMatch(/^sha512-\S{86}==/);
  // npm leaves the place out where it is told to, or writes it for each
  const places = LOCKED.flatMap(([, { resolved }]) => (resolved ? [new URL(resolved)] : []));
  expect([0, LOCKED.length]).toContain(places.length);
  expect(new Set(places.map(({ host }) => host)).size).toBeLessThanOrEqual(1);
  for (const { protocol } of places) expect(protocol).toBe("https:");
});

/** Licences that allow use, change and passing on, for what the build and the tests rest on. */
const ALLOWED = [
  ...["0BSD", "Apache-2.0", "BSD-2-Clause", "BSD-3-Clause", "BSL-1.0", "BlueOak-1.0.0"],
  ...["CC-BY-4.0", "ISC", "MIT", "MPL-2.0", "Python-2.0"],
];
/** Run beside the tests, never built into dist: image code that a tool for solids brings along. */
const LGPL = /^node_modules\/@img\/sharp-/;

/** An expression of SPDX as its licences; all of them must be allowed, or one where it says OR. */
function isAllowed(expression: string): boolean {
  const terms = expression.replace(/^\(|\)$/g, "").split(" OR ");
  return terms.some((term) => term.split(" AND ").every((name) => ALLOWED.includes(name)));
}

test("every package for development has an allowed licence", () => {
  const refused = LOCKED.filter(([, { license }]) => !isAllowed(license ?? "none"));
  for (const [path, { license }] of refused) {
    expect(path).toMatch(LGPL);
    expect(license).toMatch(/\bLGPL-3\.0-or-later\b/);
  }
  expect(isAllowed("GPL-3.0-only")).toBe(false);
  expect(isAllowed("MIT AND GPL-3.0-only")).toBe(false);
  expect(isAllowed("(MIT OR GPL-3.0-only)")).toBe(true);
});

/** Where the build notes from which file each part of dist comes. */
const BUNDLED = /^\/\/ node_modules\/((?:@[^/]+\/)?[^/]+)\//gm;

function dist(): string {
  const folder = join(ROOT, "dist");
  if (!existsSync(join(folder, "index.js"))) throw new Error("dist is missing: run npm run build");
  return folder;
}

test("every package that the build puts into dist stands in THIRD-PARTY-LICENSES.txt", () => {
  const files = readdirSync(dist()).filter((name) => /\.c?js$/.test(name));
  const texts = files.map((name) => readFileSync(join(dist(), name), "utf8"));
  const bundled = new Set(
    texts.flatMap((text) => [...text.matchAll(BUNDLED)].map(([, name]) => name)),
  );
  expect([...bundled].sort()).toEqual([
    "@babel/runtime",
    "fraction.js",
    "jsonc-parser",
    "mathjs",
    "p-map",
    "workerpool",
  ]);
  const licences = readFileSync(join(dist(), "THIRD-PARTY-LICENSES.txt"), "utf8");
  for (const name of bundled) {
    expect(licences).toMatch(new RegExp(`^${name}/licen[cs]e(?:\\.md)?\\n=+\\n\\n\\S`, "im"));
    expect(["MIT", "Apache-2.0"]).toContain(json(`node_modules/${name}/package.json`).license);
  }
  // the Apache licence asks for the notice as well
  expect(licences).toContain("mathjs/NOTICE\n");
});

test("two packs have the same bytes", () => {
  dist();
  const [first, second] = [packed(), packed()];
  expect(first).toMatch(/^[0-9a-f]{64}$/);
  expect(second).toBe(first);
}, 60_000);

function packed(): string {
  const folder = mkdtempSync(join(tmpdir(), "marker-depth-pack-"));
  try {
    execFileSync("npm", ["pack", "--ignore-scripts", "--silent", "--pack-destination", folder], {
      cwd: ROOT,
    });
    const [file = ""] = readdirSync(folder);
    return createHash("sha256")
      .update(readFileSync(join(folder, file)))
      .digest("hex");
  } finally {
    rmSync(folder, { recursive: true });
  }
}
