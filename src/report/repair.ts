/** A hole off its mark: filled, and drilled again on the mark with a bit that swallows the old hole. Lengths in mm. */

import type { Marker } from "../board/markers.js";
import type { Design } from "../design/design.js";
import {
  readFields,
  readItems,
  readNumber,
  readWord,
  SIZE,
  SIZE_OR_ZERO,
  wholeUpTo,
} from "../design/read-fields.js";
import { type Examined, examine, settingDepths } from "../drilling/examine.js";
import { type Neck, prepare } from "../drilling/neck.js";
import { boundsOf } from "../drilling/windows.js";
import { type DesignIssue, issueOf, whole } from "../errors/errors.js";
import { elementAt } from "../geometry/element-at.js";
import { MILLIMETRES } from "../text/length-text.js";
import { type FindingFacts, findingsOf } from "./findings.js";
import { type Finding, type Report, reportOn, toldOf } from "./report.js";

/** A hole that was drilled off its mark. */
export interface StrayHole {
  readonly fret: number;
  /** Which one, where the fret has more than one. */
  readonly side?: "bass" | "centre" | "treble";
  /** How far off the mark its centre is, in any direction, mm. */
  readonly error: number;
}

/** A bit that will not do, and why. */
export interface RuledOut {
  readonly diameter: number;
  readonly why: readonly string[];
  /** What the check found with it; empty for a bit that is too small to swallow the old hole. */
  readonly findings: readonly Finding[];
}

/** What to drill a stray hole again with. */
export interface Repair {
  /** The hole that is drilled again, and its index in the report. */
  readonly hole: {
    readonly fret: number;
    readonly side: "bass" | "centre" | "treble";
    readonly index: number;
  };
  /** The least diameter that swallows the old hole: D + 2 · error. */
  readonly least: number;
  /** The smallest bit that does, or null. */
  readonly diameter: number | null;
  /** The whole report with that bit in that hole, at the depth in use; null without a bit. */
  readonly report: Report | null;
  /** Each smaller bit of the rack, or every one where none does. */
  readonly ruledOut: readonly RuledOut[];
}

const MOST_BITS = 1000;

/**
 * The next bit for a hole that was drilled off its mark: the hole is filled and drilled again on the mark, with a
 * diameter of at least D + 2 · error, so that nothing of the old hole is left to see.
 *
 * The new hole must pass the whole check: its window holds the depth in use (the planned depth, or the stop setting
 * that serves the hole), and it stays clear of slots, edge and neighbour.
 * An off-centre hole is filled and drilled again with the next larger bit: common practice, no source.
 *
 * @param design the neck
 * @param hole the stray hole: its fret, its side where the fret has two, and its error, mm
 * @param rack diameters of the bits at hand, mm, in any order; 1000 at most
 * @returns the bit, the report with it, and what ruled out each smaller one
 * @throws DesignError where the design, the hole or the rack cannot be read
 * @example
 * const design = {
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
 *   radius: 254,
 *   markers: [{ frets: [12], diameter: 6, arrangement: "double" }],
 * };
 * const repair = repairHole(design, { fret: 12, side: "bass", error: 0.4 }, WHOLE_MILLIMETRES);
 * repair.least.toFixed(1) // "6.8"
 * repair.diameter // 7
 */
export function repairHole(design: Design, hole: StrayHole, rack: readonly number[]): Repair {
  const neck = prepare(design);
  const issues: DesignIssue[] = [];
  const bits = readRack(rack, issues);
  const stray = readStray(neck, hole, issues);
  const read = whole({ bits, stray }, issues);
  const { index, error } = read.stray;
  const { fret, side, diameter: was } = elementAt(neck.markers, index);
  const least = was + 2 * error;
  const depth = depthInUse(examine(neck), index);
  const again = { fret, side, index };
  const ruledOut: RuledOut[] = [];
  for (const diameter of read.bits) {
    if (!(diameter >= least)) {
      const why = [`Too small: ${MILLIMETRES.full(least)} is needed to swallow the old hole.`];
      ruledOut.push({ diameter, why, findings: [] });
      continue;
    }
    const redrilled = withHole(neck, index, diameter, depth);
    if (redrilled === undefined) {
      const why = ["The finished surface does not reach so far from the centre line."];
      ruledOut.push({ diameter, why, findings: [] });
      continue;
    }
    const findings = findingsAbout(redrilled, index);
    if (findings.length === 0) {
      return { hole: again, least, diameter, report: reportOn(redrilled), ruledOut };
    }
    ruledOut.push({ diameter, why: findings.map(({ message }) => message), findings });
  }
  return { hole: again, least, diameter: null, report: null, ruledOut };
}

/** The neck with one hole drilled again; undefined where the surface does not reach the new hole. */
function withHole(
  neck: Neck,
  index: number,
  diameter: number,
  depth: number | undefined,
): Neck | undefined {
  const markers = neck.markers.map((marker, i): Marker => {
    if (i !== index) return marker;
    return { ...marker, diameter, group: { ...marker.group, diameter, depth } };
  });
  const worst = boundsOf(neck.board, neck.spec, elementAt(markers, index));
  if (!(worst.removal < Infinity)) return undefined;
  return { ...neck, markers, bounds: neck.bounds.map((was, i) => (i === index ? worst : was)) };
}

/** What the check finds of the hole itself, and of its meeting another. */
function findingsAbout(neck: Neck, index: number): Finding[] {
  const examined = examine(neck);
  const fret = elementAt(neck.markers, index).fret;
  const isAbout = ({ hole, code, fret: at }: FindingFacts) =>
    hole === index || (code === "dots-overlap" && at === fret);
  return findingsOf(examined)
    .filter(isAbout)
    .map((facts) => toldOf(facts, examined));
}

/** The planned depth, or that of the setting that serves the hole. */
function depthInUse(examined: Examined, index: number): number | undefined {
  return elementAt(examined.neck.markers, index).group.depth ?? settingDepths(examined)[index];
}

function readRack(rack: unknown, issues: DesignIssue[]): number[] | undefined {
  const items = readItems(rack, "rack", "bit diameters", MOST_BITS, issues);
  if (items?.length === 0) issues.push(issueOf("rack", rack, "one bit or more"));
  const bits = items?.map((item, i) => readNumber(item, `rack.${i}`, SIZE, issues));
  // where one could not be read, nothing comes of the rack
  return (bits as number[] | undefined)?.sort((a, b) => a - b);
}

function readStray(neck: Neck, hole: unknown, issues: DesignIssue[]) {
  const before = issues.length;
  const fields = readFields(hole, "hole", ["fret", "side", "error"], issues);
  if (fields === undefined) return undefined;
  const frets = wholeUpTo(neck.board.slots.length - 1);
  const fret = readNumber(fields.fret, "hole.fret", frets, issues);
  const error = readNumber(fields.error, "hole.error", SIZE_OR_ZERO, issues);
  const side =
    fields.side === undefined
      ? undefined
      : readWord(fields.side, "hole.side", ["bass", "centre", "treble"], issues);
  if (issues.length > before) return undefined;
  const found = neck.markers.flatMap((marker, i) =>
    marker.fret === fret && (side ?? marker.side) === marker.side ? [i] : [],
  );
  const [index] = found;
  if (index === undefined) issues.push(issueOf("hole", hole, "a hole that the design has"));
  else if (found.length > 1) issues.push(issueOf("hole.side", side, `which hole at fret ${fret}`));
  else if (elementAt(neck.markers, index).outline)
    issues.push(issueOf("hole", hole, "a dot, not a pocket"));
  else return { index, error: error as number };
  return undefined;
}
