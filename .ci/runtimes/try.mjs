// Tries the packed tarball in an empty project, on every runtime. Wants a tree that is built, and `npm ci` here.
import { rmSync } from "node:fs";
import { packedProject } from "./project.mjs";
import * as steps from "./steps.mjs";

const packed = packedProject();
const tries = [
  ...[20, 22, 24].map((major) => [`Node ${major}`, () => steps.onNode(major, packed)]),
  ["Deno", () => steps.onDeno(packed)],
  ["Bun", () => steps.onBun(packed)],
  ...["node16", "nodenext", "bundler"].map((way) => [way, () => steps.types(way, packed)]),
  ["Chromium", () => steps.inBrowser(packed)],
  ["paper", () => steps.onPaper(packed)],
  ["publint", () => steps.publint(packed)],
  ["attw", () => steps.attw(packed)],
  ["publishing", () => steps.publishing()],
];

let failed = 0;
for (const [name, work] of tries) {
  try {
    console.log(`✓ ${await work()}`);
  } catch (error) {
    failed++;
    console.error(`✗ ${name}: ${error.message}`);
  }
}
rmSync(packed.folder, { recursive: true, force: true });
console.log(
  `${tries.length - failed} of ${tries.length} tries of the packed tarball came out well`,
);
process.exitCode = failed > 0 ? 1 : 0;
