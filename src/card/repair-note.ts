/** A repair as a note to work by at the bench. */
import { cautionsFor } from "../report/cautions.js";
import { isPair, type Repair } from "../report/repair.js";
import type { Hole, Report } from "../report/report.js";
import { tell } from "../report/sentences.js";
import type { Unit } from "../text/length-text.js";
import { holeName, listNames } from "../text/plain-words.js";
import { wrapped } from "../text/text-layout.js";
import type { Step } from "./job.js";
import {
  type CardOptions,
  cautionLines,
  headLines,
  layPage,
  readOptions,
  stepLines,
  unitNamed,
} from "./page.js";
import { touchWords, zeroingWords } from "./setting-steps.js";
import { listTools } from "./tools.js";

/**
 * A repair as a note: the bit to drill again with, step by step, and what ruled out the smaller ones.
 *
 * @param repair what `repairHole` returned
 * @param options `unit` and `design`, as for `drillCard`
 * @returns plain text, lines of at most 100 characters, ended by a newline
 * @throws RangeError for another unit, or for a design that the repair is not of
 * @example
 * // an invented neck
 * const design = {
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
 *   radius: 254,
 *   markers: [{ frets: [5], diameter: 6 }],
 * };
 * const note = repairNote(repairHole(design, { fret: 5, error: 0.4 }, [6, 7, 8]), { design });
 * note.split("\n")[0] // "REPAIR: the marker at fret 5"
 */
export function repairNote(repair: Repair, options: CardOptions = {}): string {
  const { unit: name, design } = readOptions(options);
  const unit = unitNamed(name);
  const { hole, diameter, report } = repair;
  const marker = hole.side === "centre" ? "the marker" : `the ${hole.side} marker`;
  const named = (design ?? report)?.name;
  const title = `REPAIR: ${marker} at fret ${hole.fret}${named === undefined ? "" : `, ${named}`}`;
  const verdict =
    diameter === null
      ? "No bit of the rack does."
      : `Drill again with a bit of ${unit.bit(diameter)} ${unit.short}.`;
  return layPage([
    headLines(title, verdict, unit),
    report ? stepLines("STEPS", repairSteps(repair, report, unit)) : [],
    bitLines(repair, unit),
    report ? cautionLines(cautionsHere(hole)) : [],
  ]);
}

/** The holes that are drilled again: the one, and in a pair the other too, so that they stay alike. */
function drilledAgain({ path }: Hole, { holes }: Report): Hole[] {
  const again = holes.filter((hole) => isPair(hole.path, path));
  return again.sort((a, b) => Number(b.path === path) - Number(a.path === path));
}

function repairSteps({ hole }: Repair, report: Report, unit: Unit): Step[] {
  const [again, other] = drilledAgain(hole, report);
  if (again === undefined) return [];
  const index = report.holes.indexOf(again);
  const [tool] = listTools(report.holes, [index], unit);
  const bit = `the ${tool?.name}`;
  const stop = report.stops.settings.find(({ holes }) => holes.includes(index))?.stop;
  const touch = touchWords(tool ? [tool] : [], stop, unit);
  const both = other
    ? ` Drill ${nameHole(other)} again with it too, to ${travelWords(other, unit)}: so the pair stays alike.`
    : "";
  return [
    {
      text: "Fill the old hole flush, with epoxy or a glued plug of wood, and let it cure as its maker says.",
    },
    { text: `Mark the place anew and prick it: ${placeWords(again, unit)}.` },
    ...pointStep(again, bit, unit),
    {
      text: `Set the stop to ${travelWords(again, unit)}: ${touch}, zero the stop there, then set the travel. Try it in scrap. ${zeroingWords(stop, unit)}`,
    },
    { text: `Drill ${nameHole(again)} again with ${bit}.${both}` },
    { text: fillWords(again, other, unit) },
  ];
}

function nameHole(hole: Hole): string {
  return listNames([holeName(hole)]);
}

function placeWords({ along, offset }: Hole, unit: Unit): string {
  const side = offset < 0 ? "the bass side" : "the treble side";
  const aside =
    offset === 0 ? "on the centre line" : `${unit.full(Math.abs(offset))} off it to ${side}`;
  return `${unit.full(along)} from the nut along the centre line, ${aside}`;
}

/** A larger bit has a point of its own. */
function pointStep({ lead, bit }: Hole, name: string, unit: Unit): Step[] {
  if (bit === undefined || !(lead > 0)) return [];
  const taken =
    bit.kind === "twist"
      ? `${bit.angle} degrees, as the smaller one has, are assumed: then its tip lies ${unit.full(lead)} below its full diameter`
      : `${unit.full(lead)}, as the smaller one has, is assumed`;
  const text = `Measure the point of ${name}: ${taken}. Travel = depth + your point.`;
  return [{ text }];
}

/** The travel to set, and the depth that it comes to. */
function travelWords({ planned, window }: Hole, unit: Unit): string {
  if (planned?.travel === undefined) return "no travel: no depth suits it";
  const { travel, depth } = planned;
  const toTravel = travel - depth;
  const set = unit.set(travel, window.min + toTravel, window.max + toTravel);
  return `a travel of ${set.text} ${unit.short} (floor ${unit.full(set.mm - toTravel)} deep)`;
}

function fillWords({ fill, diameter = 0 }: Hole, other: Hole | undefined, unit: Unit): string {
  const size = `${unit.bit(diameter)} ${unit.short}`;
  const what = other ? "both holes" : "the hole";
  return fill.kind === "poured"
    ? `Pour ${what} anew, let the epoxy cure as its maker says, and go on as the card says.`
    : `Dry-fit and glue ${other ? "dots" : "a dot"} of ${size} into ${what}, let the glue set as its maker says, and go on as the card says.`;
}

/** What the new bit must be, and what speaks against each that is large enough. */
function bitLines({ least, ruledOut, diameter: bit }: Repair, unit: Unit): string[] {
  const needs = `It takes ${unit.least(least)} ${unit.short} or more to swallow the old hole: its own size, and twice both its error and the tolerance of layout.`;
  const large = ruledOut.filter(({ diameter }) => diameter >= least);
  const lines = large.flatMap(({ diameter, findings, why }) => {
    // of a pair the worse speaks for both
    const worst = findings.filter(
      ({ code }, i) => findings.findIndex((other) => other.code === code) === i,
    );
    const reasons = findings.length > 0 ? worst.map((finding) => tell(finding, unit)) : why;
    return wrapped(`Not ${unit.bit(diameter)} ${unit.short}: ${reasons.join(" ")}`, "  ", "    ");
  });
  const none = lines.length === 0 && bit === null ? ["  Every bit of the rack is smaller."] : [];
  return ["BITS", ...wrapped(needs, "  "), ...lines, ...none];
}

/** Of the one hole; a larger bit grabs harder. */
function cautionsHere({ fill, bit }: Hole): string[] {
  const groups = bit === undefined ? [] : [{ fill, bit, drilled: false }];
  return [
    ...cautionsFor({ groups }),
    "A larger bit grabs harder: clamp the work, feed slowly (common practice, no source).",
  ];
}
