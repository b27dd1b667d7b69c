/** The command in this process, with streams that keep what is written to them. */
import { Writable } from "node:stream";
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
