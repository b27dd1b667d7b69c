/** How far the sanding has come, as a note to work by at the bench. */
import { tellSanding } from "../measured/sanding-findings.js";
import type { SandingProgress } from "../measured/sanding-progress.js";
import type { Unit } from "../text/length-text.js";
import { table, wrapped } from "../text/text-layout.js";
import {
  type CardOptions,
  cautionLines,
  headLines,
  layPage,
  readOptions,
  unitNamed,
} from "./page.js";

/**
 * How far the sanding has come, as a note: what is to go at each reading, what is left of each marker now and at the
 * end, what is wrong, and the cautions. What is to go and what is left are rounded down.
 *
 * @param progress what `sandingProgress` returned
 * @param options `unit`, as for `drillCard`
 * @returns plain text, lines of at most 100 characters, ended by a newline
 * @throws RangeError for another unit
 * @example
 * // an invented neck
 * const design = {
 *   name: "Invented neck",
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: 50, thickness: 6 },
 *   radius: 254,
 *   depth: 2.5,
 *   markers: [{ frets: [12], diameter: 6 }],
 * };
 * const note = sandingNote(sandingProgress(design, [{ along: "fret12", centre: 5.9, bass: 5.2 }]));
 * note.split("\n")[0] // "SANDING: Invented neck"
 */
export function sandingNote(
  progress: SandingProgress,
  options: Pick<CardOptions, "unit"> = {},
): string {
  const unit = unitNamed(readOptions(options).unit);
  return layPage([
    headLines(`SANDING: ${progress.name ?? "unnamed neck"}`, tellVerdict(progress), unit),
    readingLines(progress, unit),
    markerLines(progress, unit),
    findingLines(progress, unit),
    cautionLines(progress.cautions),
  ]);
}

/** Whether to go on, in a sentence. */
export function tellVerdict({ findings, holes }: SandingProgress): string {
  const errors = findings.filter(({ severity }) => severity === "error").length;
  if (errors > 0)
    return `STOP: ${errors} of ${holes.length} markers may be left with less than they keep.`;
  return findings.length > 0
    ? "STOP where the sanding is past the finished surface; so far every marker keeps enough."
    : "Nothing is past the finished surface; so far every marker keeps enough.";
}

const ABSENT = "-";

function readingLines({ readings }: SandingProgress, unit: Unit): string[] {
  const told = (value: number | undefined, write = unit.bare) =>
    value === undefined ? ABSENT : value === Infinity ? "flat" : write(value);
  const key =
    "TO GO   (what the finished surface still asks for at each reading; less than 0: past it)";
  const head = ["from nut", "bass", "centre", "treble", "off so far", "radius now", "crest at"];
  const rows = readings.map(({ along, sanding, radius, crest, toGo }) => [
    unit.bare(along),
    ...[toGo.bass, toGo.centre, toGo.treble].map((value) => told(value, unit.most)),
    unit.bare(sanding),
    told(radius),
    told(crest),
  ]);
  return [...wrapped(key, "", "        "), ...table([head, ...rows], 1)];
}

function markerLines({ holes }: SandingProgress, unit: Unit): string[] {
  const key = "MARKERS   (the least that is left of each, in the worst case of its depth)";
  const head = ["hole", "now", "finished"];
  const rows = holes.map(({ name, markerLeft: { now, finished } }) => [
    name,
    unit.most(now),
    unit.most(finished),
  ]);
  return [key, ...(rows.length > 0 ? table([head, ...rows], 1) : ["  None whose depth is known."])];
}

function findingLines({ findings }: SandingProgress, unit: Unit): string[] {
  const lines = findings.flatMap((finding) =>
    wrapped(
      `${finding.severity === "error" ? "!" : "?"} ${tellSanding(finding, unit)}`,
      "  ",
      "    ",
    ),
  );
  return lines.length > 0
    ? ["FINDINGS   (! error: it costs a marker; ? warning: sand no more there)", ...lines]
    : ["FINDINGS", "  None."];
}
