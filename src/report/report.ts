/** The whole check of a design, as one report of plain data. Lengths in mm. */
import type { Wood } from "../board/board.js";
import type { Side } from "../board/markers.js";
import type { Design } from "../design/design.js";
import type { BitSpec, ChannelSpec, FillSpec } from "../design/spec.js";
import { type Edge, finishedAt, topAt } from "../drilling/edges.js";
import type { CheckedHole } from "../drilling/holes.js";
import type { StopSetting } from "../drilling/plan.js";
import type { Pour } from "../drilling/pour.js";
import type { SlotPlan } from "../drilling/slots.js";
import type { Common } from "../drilling/stops.js";
import { type DepthWindow, markerLeft, woodLeft } from "../drilling/windows.js";
import { readNeck, type Work, workOut } from "../drilling/work.js";
import type { Polygon } from "../geometry/polygon.js";
import { valueAt } from "../geometry/track.js";
import { cautionsFor } from "./cautions.js";
import { type FindingFacts, findAll } from "./findings.js";
import { tell } from "./sentences.js";

/** What is wrong with a design, or wants care, with its sentence for a builder. */
export interface Finding extends FindingFacts {
  /** One plain sentence, lengths in mm. */
  readonly message: string;
}

/** What a travel, or a depth, leaves in the worst case. */
export interface Outcome {
  /** How far the tip goes down from the touch, mm; none for what is drilled already. */
  readonly travel?: number;
  /** Depth of the floor, mm below the top at the hole. */
  readonly depth: number;
  /** Marker that is left after the radius, mm; negative where it is gone. */
  readonly markerLeft: number;
  /** Wood that is left under every part of the bit, mm; negative where it breaks through. */
  readonly woodLeft: number;
}

/** What the radius removes at a hole, mm, without tolerances. */
export interface Removal {
  /** At the rim nearest the centre line. */
  readonly inner: number;
  /** At the hole's centre. */
  readonly centre: number;
  /** At the rim farthest out; of a pocket, at its worst corner. */
  readonly outer: number;
}

/** One hole, laid out and checked. */
export interface Hole {
  /** Which hole of the design it is, whatever the order: "markers.1.frets.0", a double's "….bass". */
  readonly path: string;
  /** The fret whose space it lies in: one more than there are slots toward the nut. */
  readonly fret: number;
  /** Which part of the board it lies on. */
  readonly side: Side;
  /** Distance from the nut along the centre line, mm. */
  readonly along: number;
  /** Distance from the centre line, mm, bass negative. */
  readonly offset: number;
  /** Of a dot, mm; a pocket has an outline. */
  readonly diameter?: number;
  /** A pocket's corners in order, mm; a dot has a diameter. */
  readonly outline?: Polygon;
  /** Across the board, mm. */
  readonly width: number;
  /** What fills it. */
  readonly fill: FillSpec;
  /** What drills it; none where it is drilled already. */
  readonly bit?: BitSpec;
  /** It is in the board already. */
  readonly drilled?: true;
  /** Finished radius there, mm; none where flat. */
  readonly radius?: number;
  /** What sanding takes off along the centre line there, mm. */
  readonly sanding: number;
  /** The board's own thickness there, mm. */
  readonly thickness: number;
  /** Wood of the neck under the board there, mm, where a neck is stated. */
  readonly neck?: number;
  /** The rod channel there, mm, where one runs under the board at this place. */
  readonly channel?: {
    /** Across the board. */
    readonly width: number;
    /** From the board's underside up into the board. */
    readonly depth: number;
  };
  /** What the radius removes there, mm. */
  readonly removal: Removal;
  /** Depths of the floor that keep the marker and the board; min > max where none does. */
  readonly window: DepthWindow;
  /** How far the tip lies below the floor, mm. */
  readonly lead: number;
  /** How much deeper below the top the tip lies than the travel says, mm. */
  readonly rise: number;
  /** What the setting that serves it comes to; `setting` is its index. */
  readonly recommended?: Outcome & {
    /** Index of the setting in `stops.settings`. */
    readonly setting: number;
  };
  /** What the planned depth or travel comes to. */
  readonly planned?: Outcome;
}

/** The stop plan. */
export interface Stops {
  /** The travels that suit every hole that is to be drilled, where they have one stop; null where there are none. */
  readonly common: Common | null;
  /** The fewest settings; holes are indices into the report's. */
  readonly settings: readonly StopSetting[];
}

/** What `checkDesign` finds. */
export interface Report {
  /** What the design is called. */
  readonly name?: string;
  /** No finding is an error. */
  readonly ok: boolean;
  /** Errors first, then by how far past the limit. */
  readonly findings: readonly Finding[];
  /** By fret, then along the board, bass before treble. */
  readonly holes: readonly Hole[];
  /** The nut, each fret on the board, the end. */
  readonly edges: readonly Edge[];
  /** The rod channel under the board, mm, where one is stated. */
  readonly channel?: {
    /** Across the board. */
    readonly width: number;
    /** Where it begins, from the nut. */
    readonly from: number;
    /** Where it ends, from the nut. */
    readonly to: number;
  };
  /** The stop plan. */
  readonly stops: Stops;
  /** Saw depths of the fret slots, measured from the crest. */
  readonly slots?: SlotPlan;
  /** The epoxy to mix, waste included. */
  readonly pour?: Pour;
  /** How far off what is set at the bench may be, ± mm. */
  readonly tolerance: {
    /** Of the depth that the stop holds. */
    readonly stop: number;
    /** Of the point's length. */
    readonly point: number;
  };
  /** Every default that was used, by its path in the design. */
  readonly assumed: Readonly<Record<string, number | string>>;
  /** The cautions that the work calls for. */
  readonly cautions: readonly string[];
}

/**
 * Checks a neck design: what the radius removes at each marker and edge, each hole's depth window, the fewest settings
 * of the depth stop, and what fails and why.
 *
 * All bounds hold in the worst case of the stated tolerances. They are never on the wrong side of the true extreme over
 * a hole, and within 0.01 mm of it on ordinary boards, 0.023 mm where the board has a radius already.
 *
 * @param design the neck, lengths in mm, angles in degrees; it is read once and not changed
 * @returns the report, plain data; what is wrong with the work is in its `findings`
 * @throws DesignError where the design cannot be read; `issues` lists every problem
 * @example
 * // an invented neck
 * const report = checkDesign({
 *   scale: { length: 648, frets: 22 },
 *   board: { length: 482, width: { nut: 43, end: 57 }, thickness: 6 },
 *   radius: 254,
 *   markers: [
 *     { frets: [3, 5, 7, 9, 15, 17, 19, 21], diameter: 6.35 },
 *     { frets: [12], diameter: 6.35, arrangement: "double" },
 *   ],
 * });
 * report.ok // true
 * report.stops.settings.length // 1
 */
export function checkDesign(design: Design): Report {
  return reportOn(workOut(readNeck(design)));
}

/** The report on all the work of a neck. */
export function reportOn(work: Work): Report {
  const { spec, holes, edges, plan, slots, pour } = work;
  const findings = findAll(work);
  const report: Writable<Report> = {
    ok: findings.every(({ severity }) => severity !== "error"),
    findings: findings.map(toFinding),
    holes: holes.map((hole, i) => holeReport(work, hole, i)),
    edges,
    stops: { common: plan.common, settings: plan.settings },
    tolerance: { stop: spec.tolerance.stop.limit, point: spec.tolerance.point.limit },
    assumed: spec.assumed,
    cautions: cautionsFor(spec, pour?.volume),
  };
  if (spec.name !== undefined) report.name = spec.name;
  if (spec.channel) report.channel = channelReport(spec.channel);
  if (slots) report.slots = slots;
  if (pour) report.pour = pour;
  return report;
}

function channelReport({ width, from, to }: ChannelSpec): NonNullable<Report["channel"]> {
  return { width, from, to };
}

/** A report or a hole while it is being put together. Spreading its parts instead is many times slower. */
type Writable<T> = { -readonly [Key in keyof T]: T[Key] };

/** A finding with its sentence. */
export function toFinding(facts: FindingFacts): Finding {
  return { ...facts, message: tell(facts) };
}

function holeReport(work: Work, checked: CheckedHole, index: number): Hole {
  const { board } = work;
  const { marker, bounds, window, planned } = checked;
  const { path, fret, side, along, offset, width, outline, group } = marker;
  const hole: Writable<Hole> = {
    path,
    fret,
    side,
    along: plain(along),
    offset: plain(offset),
    width,
    fill: group.fill,
    sanding: valueAt(board.nominal.sanded.sanding, along),
    thickness: valueAt(board.wood.thickness, along),
    removal: removalsAt(work, checked),
    window,
    lead: bounds.lead,
    rise: plain(bounds.rise),
  };
  if (work.spec.neck !== undefined) hole.neck = valueAt(board.wood.whole, along) - hole.thickness;
  const channel = channelAt(board.wood, along);
  if (channel) hole.channel = channel;
  if (outline) hole.outline = outline;
  else hole.diameter = width;
  if (group.drilled) hole.drilled = true;
  else hole.bit = group.bit;
  const radius = valueAt(board.nominal.sanded.radius, along);
  if (radius < Infinity) hole.radius = radius;
  const depth = work.recommended[index];
  if (depth !== undefined) {
    const setting = work.plan.settings.findIndex(({ holes }) => holes.includes(index));
    hole.recommended = {
      setting,
      travel: depth + checked.toTravel,
      depth,
      markerLeft: markerLeft(bounds, depth),
      woodLeft: woodLeft(bounds, depth),
    };
  }
  if (planned !== undefined) hole.planned = outcomeAt(checked, planned);
  return hole;
}

/** The rod channel where it runs under a place. */
function channelAt({ channel, thickness }: Wood, along: number): Hole["channel"] {
  if (channel === undefined || along < channel.from || along > channel.to) return undefined;
  const { half, over } = channel;
  return { width: 2 * half, depth: plain(valueAt(thickness, along) - valueAt(over, along)) };
}

/** −0 is no number to show. */
function plain(value: number): number {
  return value + 0;
}

/** What a depth leaves. */
function outcomeAt({ bounds, toTravel, marker }: CheckedHole, depth: number): Outcome {
  const marked = markerLeft(bounds, depth);
  const wood = woodLeft(bounds, depth);
  return marker.group.drilled
    ? { depth, markerLeft: marked, woodLeft: wood }
    : { travel: depth + toTravel, depth, markerLeft: marked, woodLeft: wood };
}

/** Nearest the centre line, at the centre, and farthest out; of a pocket, at its corners. */
function removalsAt({ board: { nominal } }: Work, { marker }: CheckedHole): Removal {
  const { along, offset, width, outline } = marker;
  const removed = (s: number, x: number) => finishedAt(nominal, s, x) - topAt(nominal, s, x);
  const aside = Math.abs(offset);
  const inner = removed(along, Math.max(0, aside - width / 2));
  const centre = removed(along, aside);
  const outer = outline
    ? Math.max(...outline.map((corner) => removed(corner.along, corner.offset)))
    : removed(along, aside + width / 2);
  return { inner, centre, outer };
}
