/** The entry as a package: its names, and what it brings along. */
import { gzipSync } from "node:zlib";
import { build } from "esbuild";
import { expect, test } from "vitest";
import * as units from "../../src/units/index.js";

const root = new URL("../../", import.meta.url).pathname;

async function bundle(entry: string) {
  const result = await build({
    entryPoints: [`${root}src/${entry}`],
    absWorkingDir: root,
    bundle: true,
    minify: true,
    format: "esm",
    platform: "browser",
    target: "es2022",
    metafile: true,
    write: false,
  });
  const text = result.outputFiles[0]?.text ?? "";
  expect(text.length).toBeGreaterThan(1000);
  const inputs = Object.values(result.metafile.outputs)[0]?.inputs ?? {};
  const used = Object.keys(inputs).filter((name) => (inputs[name]?.bytesInOutput ?? 0) > 0);
  return { gzipped: gzipSync(text, { level: 9 }).length, used };
}

test("its exports", () => {
  expect(Object.keys(units).sort()).toEqual(["formatLength", "length", "mathFunctions"]);
  expect(Object.keys(units.mathFunctions).sort()).toEqual([
    "diagonalCrossing",
    "fretPosition",
    "radiusFromSagitta",
    "sagitta",
  ]);
});

test("it adds at most 75 kB gzipped to a page, with just the parts of mathjs that are used", async () => {
  const { gzipped, used } = await bundle("units/index.ts");
  expect(gzipped).toBeLessThanOrEqual(75_000);
  expect(used.some((name) => name.includes("mathjs/lib/esm/type/unit/Unit.js"))).toBe(true);
  // the packages whose licences must be kept in what is published
  const packages = used.flatMap(
    (name) => name.match(/node_modules\/((?:@[^/]+\/)?[^/]+)/)?.[1] ?? [],
  );
  expect([...new Set(packages)].sort()).toEqual(["@babel/runtime", "fraction.js", "mathjs"]);
});

test("the core and the card bring no package along", async () => {
  for (const entry of ["index.ts", "card.ts"]) {
    const { used } = await bundle(entry);
    expect(used.filter((name) => name.includes("node_modules"))).toEqual([]);
  }
});
