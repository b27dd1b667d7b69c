/** A report as a card to work by at the bench. */
import type { Design } from "../design/design.js";
import { readNeck } from "../drilling/work.js";
import { refused } from "../errors/errors.js";
import type { Report } from "../report/report.js";
import { holeNames } from "../text/plain-words.js";
import { wrapped } from "../text/text-layout.js";
import { assumedLines } from "./assumed.js";
import { chanceLines } from "./chance.js";
import { choosePart, findingLines, type Part } from "./findings.js";
import { holeLines } from "./holes.js";
import type { Job } from "./job.js";
import {
  type CardOptions,
  cautionLines,
  headLines,
  layPage,
  readOptions,
  stepLines,
  unitNamed,
} from "./page.js";
import { secondSheet } from "./second-sheet.js";
import { writeSettings } from "./settings.js";
import { buildSteps } from "./steps.js";

/**
 * The report as a card: what to do at the bench, step by step; what was found and what cures it; a row for every hole;
 * what was assumed; the cautions; and, on a second sheet, the edges and the slots.
 *
 * Without the design the card has no remedies.
 *
 * @param report what `checkDesign` returned
 * @param options `unit`, `design`, `remedies`, `chance`; what is set in inches is a fraction that lies inside its range where one
 * does
 * @returns plain text, lines of at most 100 characters, ended by a newline
 * @throws RangeError for another unit, or for a design that the report is not of
 * @example
 * // an invented neck
 * const design = {
 *   name: "Invented neck",
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
 *   radius: 254,
 *   markers: [{ frets: [12], diameter: 6, arrangement: "double" }],
 * };
 * drillCard(checkDesign(design), { design }).split("\n")[0] // "DRILL CARD: Invented neck"
 */
export function drillCard(report: Report, options: CardOptions = {}): string {
  const { unit, design, settings, chance } = readJob(report, options);
  const title = report.name ?? "unnamed neck";
  return layPage([
    headLines(`DRILL CARD: ${title}`, verdictLine(report), unit),
    [
      ...stepLines(stepsHeading(report), buildSteps({ report, settings, unit })),
      ...tellUnserved(report).flatMap((text) => wrapped(text, "  ")),
    ],
    findingLines(report, settings, unit, design),
    chanceLines(chance, unit),
    holeLines(report, settings, unit),
    assumedLines(report, unit),
    cautionLines(report.cautions),
    headLines(`SECOND SHEET: ${title}`, "Edges and slots, after the holes.", unit).slice(0, 3),
    ...secondSheet(report, unit),
  ]);
}

/** What a report is written from, and the design that remedies are sought for: none where they are not wanted. */
export function readJob(
  report: Report,
  options: CardOptions,
): Job & Pick<CardOptions, "chance"> & { readonly design: Design | undefined } {
  const { unit: name, design, remedies = true, chance } = readOptions(options);
  const unit = unitNamed(name);
  if (design !== undefined) checkSame(report, design);
  const settings = writeSettings(report, unit);
  return { report, settings, unit, chance, design: remedies ? design : undefined };
}

/** Throws where the design is not the one that the report is of. */
function checkSame({ holes }: Report, design: Design): void {
  const own = readNeck(design).holes;
  const isSame =
    own.length === holes.length && own.every(({ marker }, i) => marker.path === holes[i]?.path);
  if (!isSame) throw refused("options.design", design, "the design that the report is of");
}

/** Holes and slots apart: what is found of one does not stop the other. */
export function verdictLine(report: Report): string {
  const { holes, slots } = report;
  const parts = [holes.length === 0 ? "Holes: none" : `Holes: ${tellState(report, "holes")}`];
  if (slots || countFindings(report, "slots", "error") > 0)
    parts.push(`Slots: ${tellState(report, "slots")}`);
  return `${[...parts, `Edges: ${tellState(report, "edges")}`].join(". ")}.`;
}

function tellState(report: Report, part: Part): string {
  const errors = countFindings(report, part, "error");
  const warnings = countFindings(report, part, "warning");
  const counts = [counted(errors, "error"), counted(warnings, "warning")]
    .filter(Boolean)
    .join(", ");
  const stop = part === "holes" && errors > 0 ? "DO NOT DRILL YET" : "";
  const go = part === "holes" && errors === 0 ? "nothing stops the drilling" : "";
  return [stop || go, counts].filter(Boolean).join(", ") || "nothing found";
}

function countFindings({ findings }: Report, part: Part, severity: string): number {
  return findings.filter((finding) => finding.severity === severity && choosePart(finding) === part)
    .length;
}

function counted(count: number, word: string): string {
  return count === 0 ? "" : `${count} ${word}${count === 1 ? "" : "s"}`;
}

function stepsHeading(report: Report): string {
  const stops = countFindings(report, "holes", "error") > 0;
  return stops ? "STEPS   (not before the errors of the holes are cured)" : "STEPS";
}

/** Holes that no setting serves. */
export function tellUnserved({ holes }: Report): string[] {
  const names = holeNames(holes);
  const left = names.filter((_, i) => !holes[i]?.drilled && holes[i]?.recommended === undefined);
  return left.length === 0 ? [] : [`No setting serves ${left.join("; ")}.`];
}
