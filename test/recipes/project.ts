/** A project of its own with the package in it, in which the blocks of a page are run as a reader runs them. */
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, symlinkSync } from "node:fs";
import { tmpdir } from "node:os";
import { join } from "node:path";
import { fileText } from "../docs/blocks.js";

const ROOT = new URL("../../", import.meta.url).pathname;

/** An empty project with the package and these others laid into it. */
export function newProject(packages: readonly string[] = []): string {
  const folder = mkdtempSync(join(tmpdir(), "marker-depth-recipes-"));
  mkdirSync(join(folder, "node_modules/.bin"), { recursive: true });
  symlinkSync(ROOT, join(folder, "node_modules/marker-depth"));
  symlinkSync(join(ROOT, "dist/cli.js"), join(folder, "node_modules/.bin/marker-depth"));
  for (const name of packages) {
    symlinkSync(join(ROOT, "node_modules", name), join(folder, "node_modules", name));
  }
  return folder;
}

/** Takes it away again. */
export function removeProject(folder: string): void {
  rmSync(folder, { recursive: true, force: true });
}

/** What a program came to. */
export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

/** Runs a program in a folder. */
export function run(folder: string, file: string, ...words: readonly string[]): Ran {
  const { status, stdout, stderr, error } = spawnSync(file, words, {
    cwd: folder,
    encoding: "utf8",
    maxBuffer: 1e9,
  });
  if (error) throw error;
  return { code: status, out: stdout, err: stderr };
}

/** Whether a program is there, and runs. */
export function isThere(file: string, ...words: readonly string[]): boolean {
  return spawnSync(file, words, { stdio: "ignore" }).status === 0;
}

/** A block of a page: its language and its text. */
export interface Fenced {
  readonly language: string;
  readonly text: string;
}

/** The blocks under a heading of a page, or above the first one, in their order. */
export function blocksUnder(page: string, heading: string): Fenced[] {
  const parts = fileText(page).split(/^## /m);
  const part = heading === "" ? parts[0] : parts.find((each) => each.startsWith(`${heading}\n`));
  if (part === undefined) throw new Error(`${page} has no "${heading}"`);
  const blocks = part.matchAll(/^```(\w+)\n([\s\S]*?)^```/gm);
  return [...blocks].map(([, language = "", text = ""]) => ({ language, text }));
}
