/** What cards and notes have in common: their options, their head, their steps and cautions. */
import type { ChanceSummary } from "../chance/summary.js";
import type { Design } from "../design/design.js";
import { refused, tryRead } from "../errors/errors.js";
import { INCHES, MILLIMETRES, type Unit } from "../text/length-text.js";
import { visible } from "../text/plain-words.js";
import { COLUMNS, wrapped } from "../text/text-layout.js";
import { readSummary } from "./chance.js";
import type { Step } from "./job.js";

/** How a card or a note is written. */
export interface CardOptions {
  /** "mm" (two decimals) or "in" (three; what is set as a fraction, where one serves); "mm" where left out. */
  readonly unit?: "mm" | "in" | undefined;
  /** The design that was checked: with it the card tells where to zero, how near a trial must come, and remedies. */
  readonly design?: Design | undefined;
  /** `false` leaves the remedies off the card: to seek them takes many times longer than the check. */
  readonly remedies?: boolean | undefined;
  /** What `summarizeChance` of marker-depth/chance says of the design: then the card tells how likely all goes well. */
  readonly chance?: ChanceSummary | undefined;
}

/** The options, each read once. */
export function readOptions(options: CardOptions): CardOptions & { readonly unit: "mm" | "in" } {
  const read = tryRead("options", options, () => {
    const { unit = "mm", design, remedies, chance } = options;
    return { unit, design, remedies, chance };
  });
  return { ...read, chance: readSummary(read.chance) };
}

/** The unit of that name. */
export function unitNamed(name: string): Unit {
  if (name === "mm") return MILLIMETRES;
  if (name === "in") return INCHES;
  throw refused("unit", name, '"mm" or "in"');
}

/** What lengths are in. */
export const UNIT_LINES: Readonly<Record<Unit["short"], string>> = {
  mm: "Lengths in mm.",
  in: "Lengths in inches; what is set, as a fraction of them where one serves.",
};

/** Title, verdict, unit. */
export function headLines(title: string, verdict: string, { short }: Unit): string[] {
  const line = visible(title.replace(/\s+/g, " ")).slice(0, COLUMNS);
  return [line, "=".repeat(line.length), verdict, UNIT_LINES[short]];
}

/** The steps with their numbers. */
export function stepLines(heading: string, steps: readonly Step[]): string[] {
  const lines = steps.flatMap(({ text, list = [] }, i) => [
    ...wrapped(text, `${String(i + 1).padStart(3)}. `, "     "),
    ...list.flatMap((line) => wrapped(`- ${line}`, "     ", "       ")),
  ]);
  return [heading, ...lines];
}

/** The cautions, one by one. */
export function cautionLines(cautions: readonly string[]): string[] {
  return ["CAUTIONS", ...cautions.flatMap((caution) => wrapped(`- ${caution}`, "  ", "    "))];
}

/** Sections with an empty line between them. */
export function layPage(sections: readonly (readonly string[])[]): string {
  const texts = sections.filter((lines) => lines.length > 0).map((lines) => lines.join("\n"));
  return `${texts.join("\n\n")}\n`;
}
