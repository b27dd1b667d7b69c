/** What the check found, and what cures it. */
import type { Design } from "../design/design.js";
import { withNumber } from "../design/paths.js";
import { elementAt } from "../geometry/element-at.js";
import { type Remedy, remediesFor } from "../report/remedies.js";
import { checkDesign, type Finding, type Report } from "../report/report.js";
import { tell, tellRemedy } from "../report/sentences.js";
import type { Unit } from "../text/length-text.js";
import { holeNames, listNames, stationName } from "../text/plain-words.js";
import { wrapped } from "../text/text-layout.js";
import type { WrittenSetting } from "./settings.js";

/** What part of the work a finding is about. */
export type Part = "holes" | "slots" | "edges";

/** A finding that names a hole is about the holes, whatever else is in its way. */
export function choosePart({ code, hole }: Finding): Part {
  if (hole !== undefined) return "holes";
  if (/slot/.test(code)) return "slots";
  return /edge|side-dot/.test(code) ? "edges" : "holes";
}

/** Findings of one code: the sentence of the worst with the other places, and what cures them all. */
export interface FindingEntry {
  readonly severity: Finding["severity"];
  readonly words: string;
  readonly remedies?: string;
}

/** The findings, those of one code as one entry; remedies where the design is given. */
export function tellFindings(
  report: Report,
  settings: readonly WrittenSetting[],
  unit: Unit,
  design: Design | undefined,
): FindingEntry[] {
  const { findings } = report;
  const codes = [...new Set(findings.map(({ code }) => code))];
  return codes.map((code) => {
    const alike = findings.filter((finding) => finding.code === code);
    const { severity } = elementAt(alike, 0);
    const words = entryWords(report, alike, settings, unit);
    const remedies = design && remedyWords(report, alike, unit, design);
    return { severity, words, ...(remedies ? { remedies } : {}) };
  });
}

/** The same as lines. */
export function findingLines(
  report: Report,
  settings: readonly WrittenSetting[],
  unit: Unit,
  design: Design | undefined,
): string[] {
  const entries = tellFindings(report, settings, unit, design);
  if (entries.length === 0) return ["FINDINGS", "  None."];
  const lines = entries.flatMap(({ severity, words, remedies }) => [
    ...wrapped(`${severity === "error" ? "!" : "?"} ${words}`, "  ", "    "),
    ...(remedies ? wrapped(`remedies: ${remedies}.`, "    ", "      ") : []),
  ]);
  const each = design ? "; each remedy by itself is enough" : "";
  const key = `FINDINGS   (! error: cure it before the work; ? warning: it wants care${each})`;
  return [...wrapped(key, "", "           "), ...lines];
}

/** The worst one speaks, the other places follow. */
function entryWords(
  report: Report,
  alike: readonly Finding[],
  settings: readonly WrittenSetting[],
  unit: Unit,
): string {
  const worst = elementAt(alike, 0);
  const names = holeNames(report.holes);
  const places = [...new Set(alike.map((finding) => placeWords(finding, names)))];
  const others = alike.length > 1 ? ` (The worst of ${alike.length}: ${listNames(places)}.)` : "";
  return `${tell(asWritten(worst, settings), unit)}${others}`;
}

/** Travels as the steps have them. */
function asWritten(finding: Finding, settings: readonly WrittenSetting[]): Finding {
  return /^several-/.test(finding.code)
    ? { ...finding, suits: settings.map(({ set }) => set.mm) }
    : finding;
}

function placeWords({ hole, fret, station, path }: Finding, names: readonly string[]): string {
  if (hole !== undefined) return elementAt(names, hole);
  const place = station ?? (fret === undefined ? undefined : `fret${fret}`);
  return place === undefined ? String(path) : stationName(place);
}

/** A design of more holes takes seconds for each kind of finding. */
const MOST_HOLES = 100;

function remedyWords(
  { holes, assumed }: Report,
  alike: readonly Finding[],
  unit: Unit,
  design: Design,
): string {
  if (holes.length > MOST_HOLES) return `not sought, since there are more than ${MOST_HOLES} holes`;
  const remedies = remediesOfAll(design, alike);
  return remedies.map((remedy) => tellRemedy(remedy, unit, assumed)).join("; ");
}

/** The remedies of the worst finding that cure all those like it. */
function remediesOfAll(design: Design, alike: readonly Finding[]): Remedy[] {
  const worst = elementAt(alike, 0);
  const remedies = remediesFor(design, worst);
  if (alike.length === 1) return [...remedies];
  return remedies.filter(({ change, to }) => {
    const { findings } = checkDesign(withNumber(design, change, to));
    return findings.every(({ code }) => code !== worst.code);
  });
}
