/** Designs as cards. */
import { drillCard } from "../card/index.js";
import { visible } from "../text/plain-words.js";
import type { Outcome } from "./outcome.js";
import type { Paint } from "./paint.js";

/** The design's card and an empty line; nothing where it could not be read. */
export function cardText({ file, line, report }: Outcome, unit: "mm" | "in", paint: Paint): string {
  if (report === undefined) return "";
  const name = report.name ?? (line === undefined ? file : `${file}, line ${line}`);
  const card = visible(drillCard({ ...report, name }, { unit }));
  const [title = "", rule = "", verdict = "", ...rest] = card.split("\n");
  const painted = report.ok ? paint.good(verdict) : paint.bad(verdict);
  return `${[title, rule, painted, ...rest].join("\n")}\n`;
}
