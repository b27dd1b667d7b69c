/** A hole off its mark: filled, and drilled again on the mark with a bit that swallows the old hole. Lengths in mm. */
import type { Marker, Side } from "../board/markers.js";
import type { Design } from "../design/design.js";
import { DESIGN } from "../design/fields.js";
import { newReading, readField } from "../design/read.js";
import { checkHoles } from "../drilling/holes.js";
import { type Neck, readNeck, type Work, workOut } from "../drilling/work.js";
import { DesignError, type DesignIssue, makeIssue } from "../errors/errors.js";
import { readItems } from "../errors/unknown.js";
import { elementAt } from "../geometry/element-at.js";
import { quoted } from "../text/nearest-name.js";
import { findAll } from "./findings.js";
import { type Finding, type Hole, type Report, reportOn, toFinding } from "./report.js";

/** A hole that was drilled off its mark: its path in the report, or its fret and side, and how far off it is. */
export type MisdrilledHole = (
  | {
      /** The hole's path, as in the report. */
      readonly path: string;
    }
  | {
      /** The fret whose space it lies in. */
      readonly fret: number;
      /** Which one, where the fret has more than one. */
      readonly side?: Side | undefined;
    }
) & {
  /** How far off the mark its centre is, in any direction, mm. */
  readonly error: number;
};

/** A bit that will not do, and why. */
export interface RuledOut {
  /** Its diameter, mm. */
  readonly diameter: number;
  /** What speaks against it, one sentence each. */
  readonly why: readonly string[];
  /** What the check found with it; empty for a bit that is too small to swallow the old hole. */
  readonly findings: readonly Finding[];
}

/** What to drill a misdrilled hole again with. */
export interface Repair {
  /** The hole as the design has it. */
  readonly hole: Hole;
  /** The least diameter that swallows the old hole, mm: D + 2 · (error + layout error). */
  readonly least: number;
  /** The smallest bit that does, mm, or null. */
  readonly diameter: number | null;
  /** The whole report with that bit in that hole, and in its pair; null without a bit. */
  readonly report: Report | null;
  /** Each smaller bit of the rack, or every one where none does. */
  readonly ruledOut: readonly RuledOut[];
}

const MOST_BITS = 1000;
const PLACE = DESIGN.fields.markers.item.variants[0].cases;
const DIAMETER = DESIGN.fields.markers.item.variants[1].cases.dot.fields.diameter;

/**
 * The next bit for a hole that was drilled off its mark: the hole is filled and drilled again on the mark, with a
 * diameter of at least D + 2 · (error + layout error), so that nothing of the old hole is left to see.
 *
 * The new hole must pass the whole check at the depth in use (the planned one, or that of the setting that serves the
 * hole). Of a pair both are drilled alike. An off-centre hole is filled and drilled again with the next larger bit:
 * common practice, no source.
 *
 * @param design the neck; a larger bit is taken to have the point that the design states for the smaller one
 * @param hole the hole: its path, or its fret and its side where the fret has several, and its error, mm
 * @param rack diameters of the bits at hand, mm, in any order; 1000 at most
 * @returns the bit, the report with it, and what ruled out each smaller one
 * @throws DesignError where the design, the hole or the rack cannot be read
 * @example
 * // an invented neck
 * const design = {
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
 *   radius: 254,
 *   markers: [{ frets: [12], diameter: 6, arrangement: "double" }],
 * };
 * const repair = repairHole(design, { fret: 12, side: "bass", error: 0.4 }, [6, 7, 8, 9]);
 * repair.least.toFixed(1) // "7.3"
 * repair.diameter // 8
 */
export function repairHole(design: Design, hole: MisdrilledHole, rack: readonly number[]): Repair {
  const neck = readNeck(design);
  const issues: DesignIssue[] = [];
  const bits = readRack(rack, issues);
  const misdrilled = readMisdrilled(neck, hole, issues);
  if (issues.length > 0 || bits === undefined || misdrilled === undefined)
    throw new DesignError(issues);
  const { index, error } = misdrilled;
  const work = workOut(neck);
  const { marker, planned } = elementAt(neck.holes, index);
  const least = marker.width + 2 * (error + neck.spec.tolerance.layout.limit);
  const depth = planned ?? work.recommended[index];
  const ruledOut: RuledOut[] = [];
  const found = (diameter: number | null, report: Report | null): Repair => {
    const before = elementAt(reportOn(work).holes, index);
    return { hole: before, least, diameter, report, ruledOut };
  };
  for (const diameter of bits) {
    if (!(diameter >= least)) {
      ruledOut.push({ diameter, why: ["It does not swallow the old hole."], findings: [] });
      continue;
    }
    const again = drillAgain(neck, marker, diameter, depth);
    if (again === undefined) {
      const why = ["The finished surface does not reach so far from the centre line."];
      ruledOut.push({ diameter, why, findings: [] });
      continue;
    }
    const findings = findAbout(again, findPair(neck, marker));
    if (findings.length === 0) return found(diameter, reportOn(again));
    ruledOut.push({ diameter, why: findings.map(({ message }) => message), findings });
  }
  return found(null, null);
}

/** The holes that must look alike: both of a pair. */
function findPair({ holes }: Neck, { path }: Marker): number[] {
  return holes.flatMap(({ marker }, i) => (isPair(marker.path, path) ? [i] : []));
}

/** Two holes, by their paths, are one or the two of a pair. */
export function isPair(path: string, other: string): boolean {
  return cutSide(path) === cutSide(other);
}

function cutSide(path: string): string {
  return path.replace(/\.(bass|treble|nut|end)$/, "");
}

/** All the work with a hole and its pair drilled again; undefined where the surface does not reach the new hole. */
function drillAgain(
  neck: Neck,
  marker: Marker,
  width: number,
  depth: number | undefined,
): Work | undefined {
  const { spec, board } = neck;
  const again = findPair(neck, marker);
  const group = { ...marker.group, diameter: width };
  const markers = neck.holes.map(({ marker: was }, i) =>
    again.includes(i) ? { ...was, group, width, depth, travel: undefined } : was,
  );
  const issues: DesignIssue[] = [];
  const holes = checkHoles(board, { ...spec, groups: [...spec.groups, group] }, markers, issues);
  return issues.length > 0 ? undefined : workOut({ spec, board, holes });
}

/** What stands against the new holes; a warning of what is assumed or of settings is no reason. */
function findAbout(work: Work, holes: readonly number[]): Finding[] {
  return findAll(work)
    .filter(({ code, hole = -1, other = -1 }) => {
      return (
        (holes.includes(hole) || holes.includes(other)) && !/^assumed-|^near-channel$/.test(code)
      );
    })
    .map(toFinding);
}

function readRack(rack: unknown, issues: DesignIssue[]): number[] | undefined {
  const expected = `an array of bit diameters, ${MOST_BITS} at most`;
  const items = readItems(rack, "rack", expected, MOST_BITS, issues);
  if (items?.length === 0) issues.push(makeIssue("rack", rack, "one bit or more"));
  const reading = { ...newReading(issues), keys: ["rack"] as (string | number)[] };
  const bits = items?.map((item, i) => {
    reading.keys[1] = i;
    return readField(DIAMETER, item, reading) as number;
  });
  return bits?.sort((a, b) => a - b);
}

const FIELDS = {
  path: { kind: "text", optional: true, says: "" },
  fret: { ...PLACE.frets.fields.frets.item, optional: true, says: "" },
  side: { kind: "word", words: ["bass", "centre", "treble"], optional: true, says: "" },
  error: { ...DESIGN.fields.slot.fields.tang, orZero: true },
} as const;

function readMisdrilled({ board, holes }: Neck, hole: unknown, issues: DesignIssue[]) {
  const before = issues.length;
  const reading = { ...newReading(issues), keys: ["hole"], frets: board.slots.length };
  const form = { kind: "object", fields: FIELDS } as const;
  const read = readField(form, hole, reading) as
    | { path?: string; fret?: number; side?: Side; error: number }
    | undefined;
  if (issues.length > before || read === undefined) return undefined;
  const { path, fret, side, error } = read;
  if (path === undefined && fret === undefined) {
    issues.push(makeIssue("hole.fret", fret, "the fret of the hole, or its path"));
    return undefined;
  }
  const found = holes.flatMap(({ marker }, i) => {
    const isMeant = path === undefined ? marker.fret === fret : marker.path === path;
    return isMeant && (side ?? marker.side) === marker.side ? [i] : [];
  });
  const [index] = found;
  const paths = found.map((i) => elementAt(holes, i).marker.path);
  if (index === undefined) issues.push(makeIssue("hole", hole, "a hole that the design has"));
  else if (found.length > 1) issues.push(severalHoles(holes, found, fret, side, paths));
  else if (elementAt(holes, index).marker.outline) {
    issues.push(makeIssue("hole", hole, "a dot, not a pocket"));
  } else return { index, error };
  return undefined;
}

/** `side` tells the holes of a fret apart, or else their paths do. */
function severalHoles(
  holes: Neck["holes"],
  found: readonly number[],
  fret: number | undefined,
  side: Side | undefined,
  paths: readonly string[],
): DesignIssue {
  const sides = new Set(found.map((i) => elementAt(holes, i).marker.side));
  return side === undefined && sides.size === found.length
    ? makeIssue(
        "hole.side",
        side,
        `a side: fret ${fret} has ${found.length} holes, ${quoted([...sides])}`,
      )
    : makeIssue(
        "hole.path",
        undefined,
        `a path: fret ${fret} has several such holes, ${quoted(paths)}`,
      );
}
