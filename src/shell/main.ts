/** The command: from its words to its exit code. */

import { visible } from "../text/plain-words.js";
import { EXIT } from "./exit-codes.js";
import { HELP, HINT } from "./help.js";
import { readOptions, UsageError } from "./options.js";
import { run, type Streams } from "./run.js";
import { version } from "./version.js";
import { isBrokenPipe, write } from "./write.js";

/** Does what the words ask for, and tells the exit code. `script` is the file that a thread of it runs. */
export async function main(
  words: readonly string[],
  streams: Streams,
  script: string,
): Promise<number> {
  // a write that fails rejects; the event beside it must not end the process
  for (const stream of [streams.stdout, streams.stderr]) stream.on("error", () => {});
  try {
    return await done(words, streams, script);
  } catch (error) {
    if (isBrokenPipe(error)) return EXIT.brokenPipe;
    await write(streams.stderr, mistake(error)).catch(() => {});
    return EXIT.unread;
  }
}

async function done(words: readonly string[], streams: Streams, script: string) {
  const options = readOptions(words);
  if (options.ask === "check") return run(options, streams, script);
  await write(streams.stdout, options.ask === "help" ? HELP : `${version()}\n`);
  return EXIT.pass;
}

/** The error in one line, and where to find help after a wrong command line. */
function mistake(error: unknown): string {
  const message = error instanceof Error ? error.message : String(error);
  return `marker-depth: ${visible(message)}\n${error instanceof UsageError ? HINT : ""}`;
}
