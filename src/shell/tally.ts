/** How many designs passed, and which did not. */

import { visible } from "../text/plain-words.js";
import { EXIT } from "./exit-codes.js";
import type { Finished } from "./finished.js";
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

/** Adds what one design came to. */
export function count(tally: Tally, { file, line, verdict }: Finished): void {
  tally[verdict]++;
  if (verdict !== "fail" || tally.failing.length === MOST_NAMED) return;
  tally.failing.push(line === undefined ? file : `${file}:${line}`);
}

/** How many came to something. */
export function doneIn({ pass, fail, unread }: Tally): number {
  return pass + fail + unread;
}

/** What was counted, as one line. */
export function summarize({ pass, fail, unread, failing }: Tally, paint: Paint): string {
  const total = pass + fail;
  const rest = fail > failing.length ? `, and ${fail - failing.length} more` : "";
  const named = fail > 0 ? ` (${failing.map(shown).join(", ")}${rest})` : "";
  const words = [
    `${total} ${total === 1 ? "design" : "designs"} checked`,
    `${pass} ${pass === 1 ? "passes" : "pass"}`,
    `${fail} ${fail === 1 ? "fails" : "fail"}${named}`,
    ...(unread > 0 ? [`${unread} could not be read`] : []),
  ].join(", ");
  return `${fail + unread > 0 ? paint.bad(words) : paint.good(words)}\n`;
}

/** A name that cannot end the line. */
function shown(name: string): string {
  return visible(name).replaceAll("\n", "\uFFFD");
}

/** What is worst decides. */
export function chooseExitCode({ fail, unread }: Tally): number {
  return unread > 0 ? EXIT.unread : fail > 0 ? EXIT.fails : EXIT.pass;
}
