/** Checks what the command line names, in its order. */
import { mkdir } from "node:fs/promises";
import { csvHeader } from "./csv.js";
import { findingHeader } from "./findings-csv.js";
import { type Finished, finish, type Order, type Task } from "./finished.js";
import type { Options } from "./options.js";
import type { Readings } from "./outcome.js";
import { hasColours, type Output, paintFor } from "./paint.js";
import { newNames } from "./pictures.js";
import { progressOn } from "./progress.js";
import { findSources, lineSources, readBytes, type Source, STANDARD_INPUT } from "./sources.js";
import { chooseExitCode, count, doneIn, emptyTally, summarize } from "./tally.js";
import { write } from "./write.js";

/** The three streams of a process. */
export interface Streams {
  readonly stdin: AsyncIterable<Uint8Array> & { readonly destroy?: () => unknown };
  readonly stdout: Output;
  readonly stderr: Output;
}

/** Checks every design; the exit code. Rejects where something cannot be written. */
export async function run(options: Options, streams: Streams, script: string): Promise<number> {
  const { stdin, stdout, stderr } = streams;
  for (const folder of [options.svg, options.template]) {
    if (folder !== undefined) await mkdir(folder, { recursive: true });
  }
  const sources = await findSources(options.inputs, options.isDeep);
  const order = { options, coloured: { out: hasColours(stdout), err: hasColours(stderr) } };
  const progress = progressOn(stderr, countSources(sources));
  const tally = emptyTally();
  await write(stdout, headerFor(options));
  try {
    for await (const one of await finishTasks(listTasks(sources, stdin), order, script)) {
      count(tally, one);
      if (one.err !== "" || stdout.isTTY) await progress.clear();
      await write(stderr, one.err);
      await write(stdout, one.out);
      await progress.tell(doneIn(tally));
    }
  } finally {
    // a reader that went away must not leave the command waiting for its input
    stdin.destroy?.();
  }
  await progress.clear();
  if (options.format === "cards")
    await write(stdout, summarize(tally, paintFor(order.coloured.out)));
  return chooseExitCode(tally);
}

function headerFor({ format, unit }: Options): string {
  if (format === "findings") return findingHeader();
  return format === "csv" ? csvHeader(unit) : "";
}

/** How many there will be, unless they stream in. */
function countSources(sources: readonly Source[]): number | undefined {
  return sources.some(({ file }) => file === STANDARD_INPUT) ? undefined : sources.length;
}

/** What is to be checked; what comes in together, together. */
async function* listTasks(sources: readonly Source[], stdin: Streams["stdin"]) {
  const nameOf = newNames();
  const named = (source: Source): Task => ({ source, name: nameOf(source) });
  for (const source of sources) {
    if (source.file !== STANDARD_INPUT) yield [named(source)];
    else for await (const lines of lineSources(stdin)) yield lines.map(named);
  }
}

/** What the tasks come to, in their order: here, or in threads, which are loaded where they are asked for. */
async function finishTasks(
  groups: AsyncIterable<readonly Task[]>,
  order: Order,
  script: string,
): Promise<AsyncIterable<Finished>> {
  if (order.options.jobs === 1) return finishHere(groups, order);
  const { finishInPool } = await import("./pool.js");
  return finishInPool(groups, order, script);
}

async function* finishHere(groups: AsyncIterable<readonly Task[]>, order: Order) {
  const { sanding } = order.options;
  const readings = sanding === undefined ? undefined : readingsIn(sanding);
  for await (const tasks of groups) {
    for (const task of tasks) yield finish(task, order, readings);
  }
}

/** Read once for all designs, since it may be a pipe. */
function readingsIn(file: string): Readings {
  const bytes = readBytes({ file, origin: { kind: "named" } });
  // told where the first design asks for it
  bytes.catch(() => {});
  return { file, bytes };
}
