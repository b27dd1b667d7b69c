/** What a page carries that imports the core: kB are of 1000 bytes, minified and gzipped. The goals are 20 and 26. */
import { expect, test } from "vitest";
import { bundle, packagesOf } from "./bundle.js";

test.each([
  ["checkDesign alone", "{ checkDesign }", 26_200],
  ["the whole core", "*", 39_700],
])("%s", async (what, names, most) => {
  const { gzipped, inputs } = await bundle("index.ts", names);
  console.log(`${what}: ${(gzipped / 1000).toFixed(1)} kB`);
  expect(packagesOf(inputs)).toEqual([]);
  expect(gzipped).toBeLessThanOrEqual(most);
});
