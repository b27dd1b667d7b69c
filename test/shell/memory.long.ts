/** The command on long streams: the memory that it takes does not grow with them. */
import { join } from "node:path";
import { afterAll, expect, test } from "vitest";
import { FAILS, folderWith, GOOD, linesOf, removeFolders, shell } from "./command.js";

afterAll(removeFolders);

const LINE = JSON.stringify(GOOD);

/** The most memory, in kB, that a run of the command took on what is fed to it; so many lines must come of it. */
function greatestMemory(feed: string, run: string, line: string, lines: number): number {
  const script = 'process.on("exit", () => console.error(process.resourceUsage().maxRSS));';
  const file = join(folderWith({ "memory.cjs": script }), "memory.cjs");
  const env = { LINE: line, NODE_OPTIONS: `--require=${file}` };
  const { out, err } = shell(`(${feed}) | $MD ${run} - | wc -l`, { env });
  expect(Number(out)).toBe(lines);
  const kilobytes = Number(linesOf(err).at(-1));
  expect(kilobytes).toBeGreaterThan(10_000);
  return kilobytes;
}

const repeated = (lines: number) => `for i in $(seq ${lines}); do printf '%s\\n' "$LINE"; done`;

test("200 MB in many lines, or in one that is refused, take no more than a few MB", () => {
  const padded = `${LINE}${" ".repeat(50_000)}`;
  const many = (lines: number) => greatestMemory(repeated(lines), "--csv", padded, 1 + 2 * lines);
  expect(many(4000) - many(200)).toBeLessThan(80_000);
  const one = (bytes: number) =>
    greatestMemory(`head -c ${bytes} /dev/zero | tr '\\0' x`, "--csv", LINE, 1);
  expect(one(200_000_000) - one(4_000_000)).toBeLessThan(80_000);
});

test("in threads too", () => {
  const many = (lines: number) =>
    greatestMemory(repeated(lines), "--jobs 2 --json", JSON.stringify(FAILS), lines);
  expect(many(8000) - many(2000)).toBeLessThan(80_000);
});
