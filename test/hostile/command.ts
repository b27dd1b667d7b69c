/** The command in this process, with streams that keep what is written to them. */
import { Writable } from "node:stream";
import { expect } from "vitest";
import { main } from "../../src/shell/main.js";

/** A stream that keeps what is written to it. */
class Kept extends Writable {
  text = "";

  override _write(chunk: Buffer, _: string, done: () => void): void {
    this.text += chunk.toString();
    done();
  }
}

async function* chunksOf(bytes: Uint8Array, size: number) {
  for (let at = 0; at < bytes.length; at += size) yield bytes.subarray(at, at + size);
}

/** Runs the command with these words, and the input in chunks of a size. */
export async function ran(
  words: readonly string[],
  input: Uint8Array = Buffer.alloc(0),
  size = 4096,
) {
  const [stdout, stderr] = [new Kept(), new Kept()];
  const code = await main(words, { stdin: chunksOf(input, size), stdout, stderr });
  return { code, out: stdout.text, err: stderr.text };
}

/** What must hold of any run: an exit code of its own, no NaN, no stack of calls, no control character but in data. */
export function expectFit(
  words: readonly string[],
  { code, out, err }: { readonly code: number; readonly out: string; readonly err: string },
): void {
  expect([0, 1, 2]).toContain(code);
  expect(code === 2).toBe(err !== "");
  for (const text of [out, err]) {
    expect(text).not.toMatch(/\bNaN\b|\n\s+at .*:\d+:\d+/);
    if (!words.includes("--csv")) expect(text).not.toMatch(/[^\P{Cc}\n]/u);
  }
  expect(err).not.toMatch(/TypeError|Cannot read|is not a function|Maximum call stack/);
}
