/** What one design comes to, printed: plain data, which comes from another thread as it is. */
import { pageText } from "./cards.js";
import { csvRows } from "./csv.js";
import { findingRows } from "./findings-csv.js";
import { jsonLine } from "./json-lines.js";
import type { Options } from "./options.js";
import { findOutcome, type Outcome, passes, type Readings, sandingOutcome } from "./outcome.js";
import { type Paint, paintFor } from "./paint.js";
import { drawn } from "./pictures.js";
import type { Source } from "./sources.js";
import { troubleLines } from "./troubles.js";

/** A design that is to be checked. */
export interface Task {
  readonly source: Source;
  /** The name that its pictures begin with. */
  readonly name: string;
}

/** What is to be done with each. */
export interface Order {
  readonly options: Options;
  readonly coloured: { readonly out: boolean; readonly err: boolean };
}

/** A design that was checked: how it ended, and what is to be printed of it. */
export interface Finished extends Pick<Source, "file" | "line"> {
  readonly verdict: "pass" | "fail" | "unread";
  /** Text, or its bytes in UTF-8. */
  readonly out: string | Uint8Array;
  readonly err: string;
}

/** Checks a design, writes its pictures, and tells what is to be printed. Rejects where a picture cannot be written. */
export async function finish(
  { source, name }: Task,
  { options, coloured }: Order,
  readings?: Readings,
): Promise<Finished> {
  const checked = readings
    ? await sandingOutcome(source, readings)
    : await findOutcome(source, options.repair);
  const outcome = await drawn(checked, name, options);
  const { file, line } = outcome;
  return {
    ...(line === undefined ? { file } : { file, line }),
    verdict: outcome.report === undefined ? "unread" : passes(outcome) ? "pass" : "fail",
    out: printed(outcome, options, paintFor(coloured.out)),
    err: outcome.issues ? paintFor(coloured.err).bad(troubleLines(outcome)) : "",
  };
}

function printed(outcome: Outcome, options: Options, paint: Paint): string {
  const { format, unit, remedies } = options;
  if (format === "json") return jsonLine(outcome, remedies);
  if (format === "findings") return findingRows(outcome, unit);
  return format === "csv" ? csvRows(outcome, unit) : pageText(outcome, options, paint);
}
