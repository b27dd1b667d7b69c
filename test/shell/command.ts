/** Runs the built command as a child process, as a batch script does. */
import { spawnSync } from "node:child_process";
import { mkdirSync, mkdtempSync, rmSync, writeFileSync } from "node:fs";
import { tmpdir } from "node:os";
import { dirname, join } from "node:path";
import type { Design } from "../../src/index.js";

export const ROOT = new URL("../../", import.meta.url).pathname;
export const COMMAND = join(ROOT, "dist/cli.js");

/** What a run came to. */
export interface Ran {
  readonly code: number | null;
  readonly out: string;
  readonly err: string;
}

export interface Settings {
  readonly input?: string | Uint8Array;
  readonly cwd?: string;
  readonly env?: Readonly<Record<string, string>>;
}

/** Runs the command with these words. */
export function command(words: readonly string[], settings: Settings = {}): Ran {
  return ran(process.execPath, [COMMAND, ...words], settings);
}

/** Runs a line of bash, in which `$MD` is the command. */
export function shell(line: string, settings: Settings = {}): Ran {
  const env = { MD: `${process.execPath} ${COMMAND}`, ...settings.env };
  return ran("bash", ["-c", line], { ...settings, env });
}

/** What of the surroundings decides on colours: a test must find the same on every machine. */
const COLOURS =
  /^(NO_COLOR|FORCE_COLOR|NODE_DISABLE_COLORS|COLORTERM|TMUX|CI|TF_BUILD|TEAMCITY_\w+)$/;

function ran(file: string, words: readonly string[], { input = "", cwd, env }: Settings): Ran {
  const kept = Object.entries(process.env).filter(([key]) => !COLOURS.test(key));
  const { status, stdout, stderr, error } = spawnSync(file, words, {
    input,
    cwd: cwd ?? ROOT,
    env: { ...Object.fromEntries(kept), TERM: "xterm-256color", ...env },
    encoding: "utf8",
    maxBuffer: 1e9,
  });
  if (error) throw error;
  return { code: status, out: stdout, err: stderr };
}

const folders: string[] = [];

/** A folder of its own, with these files in it. */
export function folderWith(files: Readonly<Record<string, string | Uint8Array | object>>): string {
  const folder = mkdtempSync(join(tmpdir(), "marker-depth-shell-"));
  folders.push(folder);
  for (const [name, content] of Object.entries(files)) {
    const isText = typeof content === "string" || content instanceof Uint8Array;
    mkdirSync(dirname(join(folder, name)), { recursive: true });
    writeFileSync(join(folder, name), isText ? content : JSON.stringify(content));
  }
  return folder;
}

/** Takes the folders away again. */
export function removeFolders(): void {
  for (const folder of folders.splice(0)) rmSync(folder, { recursive: true, force: true });
}

/** Invented; nothing is wrong with it. */
export const GOOD: Design = {
  name: "invented",
  scale: { length: 648, frets: 22 },
  board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
  radius: 254,
  markers: [{ frets: [12], diameter: 6, arrangement: "double" }],
  bit: { kind: "forstner", point: 1 },
};

/** Invented; its planned depth is too little. */
export const FAILS: Design = { ...GOOD, name: "too shallow", depth: 1.2 };

/** The lines of a text, without the empty one after the last. */
export function linesOf(text: string): string[] {
  return text.split("\n").slice(0, -1);
}
