/** How many designs passed, and which did not. */

import { visible } from "../text/plain-words.js";
import { EXIT } from "./exit-codes.js";
import { type Outcome, passes } from "./outcome.js";
import type { Paint } from "./paint.js";

const MOST_NAMED = 10;

/** Counts; of those that fail only the first are named, however many there are. */
export interface Tally {
  pass: number;
  fail: number;
  unread: number;
  readonly failing: string[];
}

export function emptyTally(): Tally {
  return { pass: 0, fail: 0, unread: 0, failing: [] };
}

/** Adds an outcome. */
export function count(tally: Tally, outcome: Outcome): void {
  const { file, line } = outcome;
  if (outcome.report === undefined) tally.unread++;
  else if (passes(outcome)) tally.pass++;
  else {
    tally.fail++;
    const name = line === undefined ? file : `${file}:${line}`;
    if (tally.failing.length < MOST_NAMED) tally.failing.push(name);
  }
}

/** What was counted, as one line. */
export function summaryOf({ pass, fail, unread, failing }: Tally, paint: Paint): string {
  const total = pass + fail;
  const rest = fail > failing.length ? `, and ${fail - failing.length} more` : "";
  const named = fail > 0 ? ` (${failing.map(visible).join(", ")}${rest})` : "";
  const words = [
    `${total} ${total === 1 ? "design" : "designs"} checked`,
    `${pass} ${pass === 1 ? "passes" : "pass"}`,
    `${fail} ${fail === 1 ? "fails" : "fail"}${named}`,
    ...(unread > 0 ? [`${unread} could not be read`] : []),
  ].join(", ");
  return `${fail + unread > 0 ? paint.bad(words) : paint.good(words)}\n`;
}

/** What is worst decides. */
export function exitCodeOf({ fail, unread }: Tally): number {
  return unread > 0 ? EXIT.unread : fail > 0 ? EXIT.fails : EXIT.pass;
}
