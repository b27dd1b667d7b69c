/** Designs as cards, repairs as notes. */
import { drillCard, repairNote } from "../card/index.js";
import { visible } from "../text/plain-words.js";
import type { Options } from "./options.js";
import type { Outcome } from "./outcome.js";
import type { Paint } from "./paint.js";

/** The design's card, or the note of its repair, and an empty line; nothing where it could not be read. */
export function pageText(outcome: Outcome, options: Options, paint: Paint): string {
  if (outcome.report === undefined) return "";
  const { file, line, report, design, repair } = outcome;
  const { unit, remedies } = options;
  const name = report.name ?? (line === undefined ? file : `${file}, line ${line}`);
  const named = { ...design, name };
  return repair
    ? painted(repairNote(repair, { unit, design: named }), repair.diameter !== null, paint)
    : painted(drillCard({ ...report, name }, { unit, design: named, remedies }), report.ok, paint);
}

/** The text with its verdict, the third line, in colour. */
function painted(text: string, isGood: boolean, paint: Paint): string {
  const [title = "", rule = "", verdict = "", ...rest] = visible(text).split("\n");
  const inColour = isGood ? paint.good(verdict) : paint.bad(verdict);
  return `${[title, rule, inColour, ...rest].join("\n")}\n`;
}
