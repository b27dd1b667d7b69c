// Joins the licences of the packages that the build puts into dist into one file beside it.
import { readFileSync, writeFileSync } from "node:fs";

const LICENCES = [
  "mathjs/LICENSE",
  "mathjs/NOTICE",
  "fraction.js/LICENSE",
  "@babel/runtime/LICENSE",
  "jsonc-parser/LICENSE.md",
  "p-map/license",
  "workerpool/LICENSE",
];
const root = new URL("../../", import.meta.url);

const texts = LICENCES.map((path) => {
  const text = readFileSync(new URL(`node_modules/${path}`, root), "utf8");
  return `${path}\n${"=".repeat(path.length)}\n\n${text.trim()}\n`;
});
const intro = "The files beside this one contain parts of the packages below.\n";
writeFileSync(new URL("dist/THIRD-PARTY-LICENSES.txt", root), [intro, ...texts].join("\n"));
