/** The entry as a package: its names, and what it brings along. */
import { expect, test } from "vitest";
import * as units from "../../src/units/index.js";
import { bundle, packagesOf } from "../package/bundle.js";

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
  expect(packagesOf(used)).toEqual(["@babel/runtime", "fraction.js", "mathjs"]);
});

test("the core and the card bring no package along", async () => {
  for (const entry of ["index.ts", "card/index.ts"]) {
    const { used } = await bundle(entry);
    expect(used.filter((name) => name.includes("node_modules"))).toEqual([]);
  }
});
