/** Designs as cards, repairs and sandings as notes. */
import { drillCard, repairNote, sandingNote } from "../card/index.js";
import { summarizeChance } from "../chance/index.js";
import { visible } from "../text/plain-words.js";
import type { Options } from "./options.js";
import { type Outcome, passes } from "./outcome.js";
import type { Paint } from "./paint.js";

/**
 * The design's card, or the note that is asked for, with where it came from, and an empty line; nothing where it could
 * not be read.
 */
export function pageText(outcome: Outcome, options: Options, paint: Paint): string {
  if (outcome.report === undefined) return "";
  const { file, line, report, design, repair, sanding } = outcome;
  const { unit, remedies } = options;
  const chance = options.chance ? summarizeChance(design) : undefined;
  const place = line === undefined ? file : `${file}, line ${line}`;
  const name = report.name ?? place;
  const named = { ...design, name };
  const text = sanding
    ? sandingNote({ ...sanding, name }, { unit })
    : repair
      ? repairNote(repair, { unit, design: named })
      : drillCard({ ...report, name }, { unit, design: named, remedies, chance });
  return painted(`${text}\nFrom: ${place.replaceAll("\n", "\uFFFD")}\n`, passes(outcome), paint);
}

/** The text with its verdict, the third line, in colour. */
function painted(text: string, isGood: boolean, paint: Paint): string {
  const [title = "", rule = "", verdict = "", ...rest] = visible(text).split("\n");
  const inColour = isGood ? paint.good(verdict) : paint.bad(verdict);
  return `${[title, rule, inColour, ...rest].join("\n")}\n`;
}
