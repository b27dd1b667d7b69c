/** Checks what the command line names, one design at a time. */

import { visible } from "../text/plain-words.js";
import { pageText } from "./cards.js";
import { csvHeader, csvRows } from "./csv.js";
import { jsonLine } from "./json-lines.js";
import type { Options } from "./options.js";
import { type Outcome, outcomeOf, sandingOutcome } from "./outcome.js";
import { type Output, type Paint, paintFor } from "./paint.js";
import { picturesIn } from "./pictures.js";
import { progressOn } from "./progress.js";
import { lineSources, readOnce, type Source, STANDARD_INPUT, sourcesOf } from "./sources.js";
import { count, emptyTally, exitCodeOf, summaryOf } from "./tally.js";
import { troubleLines } from "./troubles.js";
import { write } from "./write.js";

/** The three streams of a process. */
export interface Streams {
  readonly stdin: AsyncIterable<Uint8Array>;
  readonly stdout: Output;
  readonly stderr: Output;
}

/** Checks every design; the exit code. Rejects where something cannot be written. */
export async function run(options: Options, { stdin, stdout, stderr }: Streams): Promise<number> {
  const draw = options.svg === undefined ? undefined : await picturesIn(options.svg);
  const readings = options.sanding === undefined ? undefined : readOnce(options.sanding);
  const sources = await sourcesOf(options.inputs);
  const progress = progressOn(stderr, stdout, totalOf(sources));
  const paints = { out: paintFor(stdout), err: paintFor(stderr) };
  const tally = emptyTally();
  if (options.format === "csv") await write(stdout, csvHeader(options.unit));
  for await (const source of each(sources, stdin)) {
    const outcome = await (readings
      ? sandingOutcome(source, readings)
      : outcomeOf(source, options.repair));
    count(tally, outcome);
    if (outcome.issues) {
      await progress.clear();
      await write(stderr, paints.err.bad(visible(troubleLines(outcome))));
    }
    await draw?.(outcome);
    await write(stdout, printed(outcome, options, paints.out));
    await progress.tell(tally.pass + tally.fail + tally.unread);
  }
  await progress.clear();
  if (options.format === "cards") await write(stdout, summaryOf(tally, paints.out));
  return exitCodeOf(tally);
}

/** How many there will be, unless they stream in. */
function totalOf(sources: readonly Source[]): number | undefined {
  return sources.some(({ file }) => file === STANDARD_INPUT) ? undefined : sources.length;
}

async function* each(sources: readonly Source[], stdin: Streams["stdin"]) {
  for (const source of sources) {
    if (source.file === STANDARD_INPUT) yield* lineSources(stdin);
    else yield source;
  }
}

function printed(outcome: Outcome, options: Options, paint: Paint): string {
  const { format, unit, remedies } = options;
  if (format === "json") return jsonLine(outcome, remedies);
  return format === "csv" ? csvRows(outcome, unit) : pageText(outcome, options, paint);
}
