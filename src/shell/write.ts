/** Writing to a stream whose reader may go away. */
import type { Writable } from "node:stream";

/** Writes, and waits until it is written, so that nothing piles up. Rejects where the reader went away. */
export function write(stream: Writable, text: string | Uint8Array): Promise<void> {
  if (text.length === 0) return Promise.resolve();
  return new Promise((resolve, reject) => {
    stream.write(text, (error) => (error ? reject(error) : resolve()));
  });
}

/** Whether an error says that the reader went away. */
export function isBrokenPipe(error: unknown): boolean {
  return error instanceof Error && "code" in error && error.code === "EPIPE";
}
